"""Which positions a list names: single references, lists of them and ranges, as the trade writes them."""

import re
import unicodedata
from dataclasses import dataclass
from itertools import pairwise

from subsearch.errors import QuantityError
from subsearch.reading.marking_units import MADE_OF
from subsearch.reading.quoting import quoted
from subsearch.reading.reference_names import ONE

MOST = 1000  # positions that one range may name: a longer one is a slip
LONGEST = 20_000  # signs of one cell
BULLETS = "-–—•·▪"  # before the first reference of a line
AROUND = " \t\r\n\u00a0,;:=()[]{}*"
LEADERS = re.compile(r"^(?:[-\u2013\u2014\u2022\u00b7\u25aa\u2026\u2192>\s]|\.{2,})+")  # from a reference to its value
LOOK_ALIKES = str.maketrans("СсВЕКМНРТХАО", "CcBEKMHPTXAO")  # Cyrillic letters that stand for the Latin ones
UNIT = rf"\s*(?i:{MADE_OF}|k?V(?!\w))"  # behind a number it makes a value of it: C1 - 47 µF is no range
MORE = re.compile(rf"(?P<number>\d{{1,6}})(?P<suffix>[A-Ea-e])?(?![\w%]|{UNIT})")
GLUED = re.compile(r"\d{1,6}(?:[,/\u2013-]\d{1,6})+(?=\s*(?:$|[:;=]))")  # C1,4,7: with no space, so no decimals
DECIMAL = re.compile(r"[.,]\d")
LETTER = re.compile(r"[A-Za-z](?![A-Za-z0-9])")
RANGE = re.compile(
    r"\s*(?:[-\u2010-\u2015\u2212~\u301c\uff5e÷]|\u2026|\.{2,3}|(?<=\s)(?:through|thru|to|bis|à|a|al|t/m|tot|do|až|по|до)"
    r"(?=\s)|から|至|到)\s*",
    re.IGNORECASE,
)
BETWEEN = re.compile(r"\s*(?:[,;/&+、，；・]|\b(?:and|und|et|e|y|en|i|a|и)\b(?=\s))\s*|\s+", re.IGNORECASE)


@dataclass(frozen=True)
class References:
    """The references that a text names, in its order; what of the text was not read; doubts about it."""

    names: tuple[str, ...] = ()
    unread: str = ""
    doubts: tuple[str, ...] = ()


@dataclass(frozen=True)
class _Name:
    board: str
    letters: str
    number: str
    suffix: str

    def __str__(self) -> str:
        return f"{self.board}{self.letters}{self.number}{self.suffix}"


def read_references(text: str) -> References:
    """The references that a cell names: `C1`, `C1, C2, C5`, `C1-C4`, `C1…C4`, `C1 to 4`, `C101A/B` and mixtures.

    text: the cell. Result: References; reading stops where something else begins, which is then unread. A Cyrillic
    С counts as a Latin C. Raises QuantityError: a range with other letters at its end, or of more than MOST positions.

    >>> read_references("C1-C3, C7 C9").names, read_references("C101A…C, 105").names
    (('C1', 'C2', 'C3', 'C7', 'C9'), ('C101A', 'C101B', 'C101C', 'C105'))
    >>> read_references("C1 47 µF").unread
    '47 µF'
    """
    if len(text) > LONGEST:
        raise QuantityError(f"The cell has {len(text)} signs; references take at most {LONGEST}. Split the line.")
    names, doubts, at = _read(text)
    return References(names, text[at:].strip(AROUND), doubts)


def _read(text: str) -> tuple[tuple[str, ...], tuple[str, ...], int]:
    """Names, doubts, and the place in the text up to which it was read."""
    tidy = "".join(map(_plain, text))
    names: list[str] = []
    doubts: list[str] = []
    last: _Name | None = None
    at, mark = len(tidy) - len(tidy.lstrip(AROUND + BULLETS)), ""
    while found := _next(tidy, at, last, mark):
        last, after = found
        if upto := _range_end(tidy, after, last):
            end, after = upto
            names += _between(last, end, tidy[at:after], doubts)
            last = end
        else:
            names.append(str(last))
        separator = BETWEEN.match(tidy, after)
        at, mark = (separator.end(), separator[0].strip()) if separator else (after, "")
        if not separator:
            break
    return tuple(dict.fromkeys(names)), tuple(doubts), at


def _plain(sign: str) -> str:
    """A sign as in Latin print, where it stands for one sign there: full-width and Cyrillic ones."""
    plain = unicodedata.normalize("NFKC", sign).translate(LOOK_ALIKES)
    return plain if len(plain) == 1 and sign != "µ" else sign


def is_references(text: str) -> bool:
    """Whether a cell names references and nothing else.

    >>> is_references("C1, C2"), is_references("C1 47n"), is_references("47n"), is_references("C0G")
    (True, False, False, False)
    """
    if len(text) > LONGEST:
        return False
    try:
        found = read_references(text)
    except QuantityError:  # a range that is none is still meant as references
        return True
    return bool(found.names) and not found.unread


def split_references(text: str) -> tuple[str, str]:
    """The references at the start or the end of a text, and the rest of it; ("", text) where there are none.

    >>> split_references("C1, C2: 47 µF 25 V"), split_references("C3 - .1 µF"), split_references("100n  C5 C7")
    (('C1, C2', '47 µF 25 V'), ('C3', '.1 µF'), ('C5 C7', '100n'))
    """
    try:
        names, _, at = _read(text[:LONGEST])
    except QuantityError:
        return "", text
    if names and (rest := text[at:].strip(AROUND)):
        return text[:at].strip(AROUND + BULLETS), LEADERS.sub("", rest)
    for start in re.finditer(r"(?<=[\s:=])(?=[A-ZСc])", text[:LONGEST]):
        if is_references(text[start.end() :]):
            return text[start.end() :].strip(AROUND), text[: start.end()].strip(AROUND)
    return "", text


def _next(text: str, at: int, last: _Name | None, mark: str) -> tuple[_Name, int] | None:
    """The next name, whole or shortened to what differs from the one before: `C1, 2` and `C1A/B`."""
    if whole := ONE.match(text, at):
        letters = whole["letters"].upper()
        suffix = (whole["suffix"] or "").strip()
        return _Name(whole["board"] or "", letters, whole["number"], suffix), whole.end()
    if last is None or not mark:
        return None
    more = MORE.match(text, at)
    if more and not _is_decimal(text, more, last):
        return _Name(last.board, last.letters, more["number"], more["suffix"] or ""), more.end()
    if last.suffix and (letter := LETTER.match(text, at)):
        return _Name(last.board, last.letters, last.number, letter[0]), letter.end()
    return None


def _is_decimal(text: str, more: re.Match[str], last: _Name) -> bool:
    """Whether a bare number is the whole part of a value: "4,7" behind "C1, " is one, but not the "4,7" of "C1,4,7"."""
    if not DECIMAL.match(text, more.end()) or len(more["number"]) == len(last.number) > 1:
        return False
    if text[more.start() - 1] in " \t" or not (glued := GLUED.match(text, more.start())):
        return True
    numbers = [int(last.number), *map(int, re.findall(r"\d+", glued[0]))]
    return any(after <= before for before, after in pairwise(numbers))


def _range_end(text: str, at: int, first: _Name) -> tuple[_Name, int] | None:
    mark = RANGE.match(text, at)
    return _next(text, mark.end(), first, "-") if mark else None


def _between(first: _Name, end: _Name, text: str, doubts: list[str]) -> list[str]:
    """All names from the first to the last of a range."""
    if (first.board, first.letters) != (end.board, end.letters):
        raise QuantityError(
            f"{quoted(text)} goes from {first} to {end}, which is no range. Write the references one by one."
        )
    if first.number == end.number and len(first.suffix) == len(end.suffix) == 1:
        low, high = sorted((first.suffix, end.suffix))
        return [
            str(_Name(first.board, first.letters, first.number, chr(one))) for one in range(ord(low), ord(high) + 1)
        ]
    start, stop = int(first.number), int(end.number)
    if stop <= start and not text.strip().endswith(str(end)):  # C101-3 is C101 to C103, but C12-1 one position
        stop = int(first.number[: -len(end.number)] + end.number)
        if stop <= start:
            return [f"{first}-{end.number}"]
        doubts.append(f"{quoted(text)} was read as {first} to {first.letters}{stop}.")
    if first.suffix or end.suffix:
        raise QuantityError(f"{quoted(text)} is no range that can be counted. Write the references one by one.")
    if stop < start:
        start, stop = stop, start
        doubts.append(f"{quoted(text)} runs backwards; it was read as {first.letters}{start} to {first.letters}{stop}.")
    if stop - start >= MOST:
        raise QuantityError(
            f"{quoted(text)} would be {stop - start + 1} positions; one range may name up to {MOST}. Look at its end."
        )
    width = len(first.number) if first.number.startswith("0") else 0
    return [f"{first.board}{first.letters}{number:0{width}d}" for number in range(start, stop + 1)]
