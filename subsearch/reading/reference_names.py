"""A single reference: what it is made of, in what order references stand, and how many are told in few words."""

import re
from itertools import pairwise

ONE = re.compile(
    r"(?!C0[GH]|[XYZ][2-8][PRSTUV](?![A-Za-z0-9]))(?P<board>\d{1,2}|[ABD-Z]\d{1,2}|(?!C\d)[A-Z]\w{0,9}[:_](?=[A-Z]))?(?P<letters>[A-Z]{1,4}|c[a-z]?)[-_.]?\s?"
    r"(?P<number>\d{1,6})(?P<suffix>[A-Z](?![A-Za-z0-9])|\s[LR](?=\s*(?:$|[,;/]))|[a-z](?![A-Za-z0-9])|[._]\d{1,2}(?!\d))?(?![A-Za-z0-9µμΩ%])"
)


def prefix_of(name: str) -> str:
    """The letters of a reference that say what kind of part it is.

    >>> prefix_of("C101A"), prefix_of("A1CE3"), prefix_of("12")
    ('C', 'CE', '')
    """
    found = ONE.fullmatch(name.partition("-")[0])
    return found["letters"].upper() if found else ""


def in_order(name: str) -> tuple[str, str, int, str]:
    """What references are sorted by, so that C2 comes before C10.

    >>> sorted(["C10", "C2", "C2A", "CE1"], key=in_order)
    ['C2', 'C2A', 'C10', 'CE1']
    """
    bare, _, part = name.partition("-")
    found = ONE.fullmatch(bare)
    if not found:
        number = int(name) if name.isdecimal() else 0
        return "", name if not number else "", number, name
    return found["board"] or "", found["letters"].upper(), int(found["number"]), (found["suffix"] or "") + part


def runs(names: list[str]) -> str:
    """References in the shortest words, with neighbours as ranges.

    names: sorted as by `in_order`.

    >>> runs(["C1", "C2", "C3", "C7", "C8"])
    'C1–C3, C7, C8'
    """
    groups: list[list[str]] = [names[:1]]
    for before, name in pairwise(names):
        (*same, count, suffix), (*then, following, end) = in_order(before), in_order(name)
        neighbours = same == then and not suffix and not end and following == count + 1
        groups[-1].append(name) if neighbours else groups.append([name])
    return ", ".join(f"{one[0]}–{one[-1]}" if len(one) > 2 else ", ".join(one) for one in groups)
