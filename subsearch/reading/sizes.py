"""A body size in one cell: diameter by length, three extents, letters in any order, a lead spacing beside them."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.quantities import Stated, quantity
from subsearch.reading.spelling import one_spelling

SIZES = ("size_1_mm", "size_2_mm", "size_3_mm")
NAMED = {
    "D": "diameter_mm", "Ø": "diameter_mm", "L": "length_mm", "W": "width_mm", "B": "width_mm", "T": "width_mm",
    "H": "height_mm",
}  # fmt: skip
ROUND = re.compile(r"[øφϕΦ⌀∅]|\bdia(?:m(?:eter)?)?\b\.?", re.IGNORECASE)
INCHES = re.compile(r"\d\s*(?:\"|″|′′|''|in\b|inch|zoll|pouces?)", re.IGNORECASE)
NUMBER = r"\d+(?:[.,]\d+)?"
SPACING = re.compile(rf"[\s,;/x]*(?:\b(?:RM|LS|P|RASTER|PITCH))\s*[=:]?\s*({NUMBER})", re.IGNORECASE)
BESIDE = r"(?:RM|R\.M\.|LS|R|P|E|F|pitch|raster(?:maß|mass)?|lead spacing|spacing|pas|passo|paso|steek|шаг|間距|脚距)"
PART = re.compile(rf"(?P<before>[DØLWBTH]?)[=:]?(?P<number>{NUMBER})(?P<after>[DØLWBTH]?)")
LIKE = "Write it like 10x16, 18x9x15 or Ø10."


def read_size(text: str, order: str = "") -> Stated:
    """Give the extents [mm] that a cell states: by the letters beside them or of the heading, else in their order.

    order: letters of the heading, like LWH. Raises QuantityError.

    >>> read_size("10 x 16 mm"), read_size("L16 D10 RM5"), read_size("6x11x18", "BHL")["length_mm"]
    ({'size_1_mm': 10.0, 'size_2_mm': 16.0}, {'length_mm': 16.0, 'diameter_mm': 10.0, 'lead_spacing_mm': 5.0}, 18.0)
    """
    tidy = one_spelling(text)
    if INCHES.search(tidy):
        raise QuantityError(f'"{text}" is in inches; sizes are kept in mm. {LIKE}', "wrong_unit")
    tidy = re.sub(r"mm\.?(?![a-z])", " ", ROUND.sub("Ø", tidy).replace("×", "x"), flags=re.IGNORECASE)
    stated: dict[str, float] = {}
    if spacing := SPACING.search(tidy):
        stated["lead_spacing_mm"] = quantity("lead_spacing_mm", spacing[1])
        tidy = tidy[: spacing.start()] + tidy[spacing.end() :]
    parts = [PART.fullmatch(part) for part in _parts(tidy.upper())]
    found = [part for part in parts if part]
    if len(found) < len(parts) or not 1 <= len(found) <= 3:
        raise QuantityError(f'"{text}" is not a body size in mm. {LIKE}')
    names = _names([part["before"] or part["after"] for part in found], order, text)
    return {name: quantity("length_mm", part["number"]) for name, part in zip(names, found, strict=True)} | stated


def _parts(tidy: str) -> list[str]:
    """The extents one by one: cut at x and *, or between letters."""
    joined = re.sub(r"\s*[X*]\s*", "x", tidy.strip(" ,;/"))
    joined = re.sub(r"(?<=[DØLWBTH])\s*[=:]?\s*(?=\d)|(?<=\d)\s+(?=[DØLWBTH](?![\d=: ]|$))", "", joined)
    joined = re.sub(r"[\s,;/]+(?=[DØLWBTH]\d)|(?<=[DØLWBTH])[\s,;/]+(?=\d)|(?<=\d)(?=[DØLWBTH]\d)", "x", joined)
    return joined.split("x")


def _names(letters: list[str], order: str, text: str) -> list[str]:
    if not any(letters) and len(order) == len(letters):
        letters = list(order)
    if all(letters) and not (len(letters) == 1 and letters[0] in "DØ"):
        names = [NAMED[letter] for letter in letters]
        if len(set(names)) < len(names):
            raise QuantityError(f'"{text}" states one extent twice. {LIKE}')
        return names
    if any(letters[2:]) or letters[0] not in ("", "D", "Ø") or (len(letters) > 1 and letters[1] not in ("", "L", "H")):
        raise QuantityError(f'"{text}" gives a letter to some extents only. {LIKE}')
    if len(letters) == 1 and not letters[0]:
        raise QuantityError(f'"{text}" is not a body size in mm. {LIKE}')
    return list(SIZES[: len(letters)])


def read_spacing(kind: str, text: str, prefix: str = "") -> Stated:
    """Give a lead spacing [mm], also where the cell names it: RM5, P=5.

    kind: the term. prefix: what a bare number is in. Raises QuantityError.

    >>> read_spacing("lead_spacing_mm", "RM 5,0"), read_spacing("lead_spacing_mm", "5 mm pitch")
    ({'lead_spacing_mm': 5.0}, {'lead_spacing_mm': 5.0})
    """
    tidy = re.sub(rf"^{BESIDE}\s*[=:]?\s*(?=\d)|(?<=[\dm])\s*{BESIDE}$", "", one_spelling(text), flags=re.IGNORECASE)
    return {kind: quantity(kind, tidy, prefix)}
