"""What the heading of a parts list's column says: what the column holds, and the unit of its bare numbers."""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import zip_longest

from subsearch.reading.parts_list_words import HEADINGS, MEASURED, UNITS, words_of
from subsearch.units import PREFIXES, SPELLINGS

LONGEST = 60  # signs of a heading; a longer cell is a sentence
UNIT = re.compile(r"\s*(?:[\[(]\s*([^\])]{1,8}?)\s*[\])]|(?:(?<=\s)|(?<=[,/]))(?:in\s+)?([pnuµμm]?F|k?V|mm|%))\s*$")
EACH = re.compile(r"(?<=\w) (?:per|pro|par|je|por|na|на) .*")  # "Qty per board" is no board


@dataclass(frozen=True)
class Heading:
    """What a heading means: a kind of HEADINGS, and the unit it gives to bare numbers ("" where none)."""

    kind: str
    unit: str = ""


@lru_cache(maxsize=8192)
def plain(text: str) -> str:
    """A text as headings and words are compared: no case, marks or double spaces.

    >>> plain("  Ref. Des.: "), plain("Q.tà"), plain("Stück-Zahl")
    ('ref des', 'q tà', 'stück zahl')
    """
    text = unicodedata.normalize("NFKC", text).casefold()
    return " ".join(re.sub(r"[._:;,?!\-/'\u2019*\u00b7\"()\[\]]+", " ", text).split())


MEASURED_WORDS = {plain(word) for word in words_of(MEASURED)}
KINDS = {plain(word) or word: kind for kind, words in HEADINGS.items() for word in words_of(words)}


@lru_cache(maxsize=4096)
def read_heading(text: str) -> Heading | None:
    """What a heading means; None where it is none that is known.

    text: the cell. A unit in brackets or at the end belongs to bare numbers below it; of several words the known ones
    count, the last before the first.

    >>> read_heading("Cap. [µF]"), read_heading("Working voltage DC"), read_heading("C12")
    (Heading(kind='value', unit='µF'), Heading(kind='voltage', unit='V'), None)
    """
    if len(text) > LONGEST or not text.strip():
        return None
    name, unit = _unit(text.strip())
    kind = _kind(plain(name)) or (_kind(plain(text)) if unit else "")
    if not kind and name.endswith("."):
        kind = _shortened(plain(name))
    if not kind and len(plain(name)) <= 2 and name.strip() not in PREFIXES and not re.search(r"\d", name):
        unit = unit or text.strip()  # C [µF], U (V), or a unit alone
        kind = _kind_of_unit(unit)
    return Heading(kind, unit or UNITS.get(kind, "")) if kind else None


def _kind(name: str) -> str:
    name = EACH.sub("", name)
    if name in KINDS:
        return KINDS[name]
    words = name.split()
    if len(words) > 1 and MEASURED_WORDS & set(words):
        return "unused"
    if not 2 <= len(words) <= 4 or any(char.isdigit() for char in name):
        return ""
    tails = [" ".join(words[start:]) for start in range(1, len(words))]
    starts = [" ".join(words[:end]) for end in range(len(words) - 1, 0, -1)]
    return next((KINDS[phrase] for phrase in (*tails, *starts) if phrase in KINDS and len(phrase) > 1), "")


def _shortened(name: str) -> str:
    """The kind that a shortened heading can only mean, like "Spann."."""
    kinds = {kind for word, kind in KINDS.items() if word.startswith(name)} if len(name) > 2 else set()
    return kinds.pop() if len(kinds) == 1 else ""


def _unit(text: str) -> tuple[str, str]:
    """A heading without the unit it ends with, and that unit."""
    found = UNIT.search(text)
    unit = (found[1] or found[2]) if found else ""
    if found and _kind_of_unit(unit):
        return text[: found.start()].strip(" ,/"), unit
    return text, ""


def _kind_of_unit(unit: str) -> str:
    """The kind of column that a unit belongs to."""
    if unit in PREFIXES and unit not in ("", "k", "K", "M"):
        return "value"
    for kind, base in (("value", "F"), ("voltage", "V"), ("tolerance", "%"), ("lead_spacing", "mm")):
        prefixed = kind in ("value", "voltage") and unit[:1] in PREFIXES and unit[1:] in SPELLINGS[base]
        if unit in SPELLINGS[base] or prefixed:
            return kind
    return ""


def is_units(cells: Sequence[str]) -> bool:
    """Whether a row below a heading line holds nothing but units.

    >>> is_units(["", "[µF]", "V"]), is_units(["C1", "47", "25"]), is_units(["", ""])
    (True, False, False)
    """
    filled = [cell.strip(" []()") for cell in cells if cell.strip()]
    return bool(filled) and all(_kind_of_unit(cell) for cell in filled)


def with_units(rows: Sequence[Sequence[str]]) -> list[str]:
    """The headings of a heading line, each with the unit that stands below it.

    >>> with_units([["Ref", "Cap"], ["", "[µF]"]]), with_units([["Ref", "Cap"]])
    (['Ref', 'Cap [µF]'], ['Ref', 'Cap'])
    """
    if len(rows) < 2:
        return [cell for row in rows for cell in row]
    units = [cell.strip(" []()") for cell in rows[1]]
    return [f"{cell} [{unit}]" if unit else cell for cell, unit in zip_longest(rows[0], units, fillvalue="")]
