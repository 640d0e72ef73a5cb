"""Which column of a supplier's list states which term: headings read by meaning, with the unit of bare numbers."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from subsearch.catalog.headings import NAMES, PRICE_WORDS, UNITS
from subsearch.errors import ListError, one_of
from subsearch.reading.cells import CURRENCIES
from subsearch.reading.rows import Row
from subsearch.terms import TERMS
from subsearch.units import PREFIXES, SPELLINGS

HEADING_ROWS = 20
NEEDED = {
    "part_number": "a part number",
    "capacitance_f": "a capacitance",
    "rated_v": "a rated voltage (d.c. or a.c.)",
    "unit_price": "a price",
}


@dataclass(frozen=True)
class Column:
    """One understood column: where it stands, what kind of cell it holds, what its heading says of bare numbers.

    `hint` is a prefix for quantities or a currency for prices; `from_quantity` is set for price breaks in columns.
    """

    place: int
    heading: str
    kind: str
    hint: str = ""
    from_quantity: int | None = None


@dataclass(frozen=True)
class Layout:
    """The heading line, the columns that were understood and the headings that were not."""

    line: int
    headings: tuple[str, ...]
    columns: tuple[Column, ...]
    skipped: tuple[str, ...]

    def headings_of(self, *kinds: str) -> str:
        """The headings of the columns of these kinds, as one text."""
        return " / ".join(column.heading for column in self.columns if column.kind in kinds)


def find_layout(name: str, rows: Sequence[Row]) -> Layout:
    """Give the layout of a list: among its first rows the one with most known headings is the heading line.

    name: the file's name, for sentences. rows: the list's rows. Raises ListError when a needed heading is missing
    or two headings state the same term.

    >>> rows = [Row(1, ("Invented",)), Row(2, ("Part number", "Cap uF", "Voltage", "Price 10+", "Shelf"))]
    >>> layout = find_layout("list.csv", rows)
    >>> [(column.kind, column.hint, column.from_quantity) for column in layout.columns][1:]
    [('capacitance_f', 'u', None), ('rated_v', '', None), ('unit_price', '', 10)]
    >>> layout.line, layout.skipped
    (2, ('Shelf',))
    """
    layouts = [_layout(row) for row in rows[:HEADING_ROWS]]
    best = max(layouts, key=lambda layout: len(layout.columns))
    _check_twice(name, best)
    _check_needed(name, best)
    return best


def _layout(row: Row) -> Layout:
    headings = tuple(cell.strip() for cell in row.cells)
    read = [read_heading(place, heading) for place, heading in enumerate(headings)]
    skipped = tuple(heading for heading, column in zip(headings, read, strict=True) if heading and not column)
    return Layout(row.line, headings, tuple(column for column in read if column), skipped)


def read_heading(place: int, heading: str) -> Column | None:
    """Give what a heading says of its column, or None when it names nothing known.

    place: number of the column from 0. heading: as printed.

    >>> read_heading(3, "Preis ab 10 [EUR]")
    Column(place=3, heading='Preis ab 10 [EUR]', kind='unit_price', hint='EUR', from_quantity=10)
    """
    plain = _plain(heading)
    if plain in NAMES:
        return Column(place, heading, NAMES[plain][0])
    if (price := _price(plain)) is not None and (price[1] or 1) <= (TERMS["from_quantity"].high or 0):
        hint, quantity = price
        return Column(place, heading, "unit_price", hint, quantity)
    for name, unit in _split(heading):
        for kind in NAMES.get(_plain(name), ()):
            prefix = _prefix(unit, UNITS.get(kind, ""))
            if prefix is not None:
                return Column(place, heading, kind, prefix)
    return None


def _plain(heading: str) -> str:
    tidy = heading.casefold().replace("\u2019", "'").replace("\u03bc", "µ").replace(".", " ").replace("_", " ")
    return " ".join(tidy.split()).strip(" :")


def _split(heading: str) -> list[tuple[str, str]]:
    """The ways to see a name and a unit in a heading: the unit in brackets, or as the last word."""
    if bracket := re.fullmatch(r"(.*?)\s*[\[(]([^\])]*)[\])]\s*(.*)", heading.strip()):
        return [(f"{bracket[1]} {bracket[3]}".strip(), bracket[2].strip())]
    name, _, unit = heading.strip().rpartition(" ")
    return [(name.rstrip(" ,/"), unit)] if name else []


def _prefix(written: str, unit: str) -> str | None:
    """The prefix a heading writes before the unit of its kind; None when the unit is of another kind."""
    if unit == "days":
        return "" if written.casefold() in ("days", "day", "d", "tage", "tagen") else None
    if unit in ("", "K") or written in SPELLINGS[unit]:
        return "" if written in SPELLINGS[unit] else None
    return written[:1] if written[:1] in PREFIXES and written[1:].strip() in SPELLINGS[unit] else None


def _price(plain: str) -> tuple[str, int | None] | None:
    """Currency and from-quantity of a heading that means a price."""
    currency = ""
    for sign in (*CURRENCIES, *CURRENCIES.values()):
        if re.search(rf"(?:^|[\s\[(]){re.escape(sign.casefold())}(?:$|[\s\])/])", plain):
            currency = CURRENCIES.get(sign, sign)
            plain = " ".join(plain.replace(sign.casefold(), " ").split())
    bare = " ".join(re.sub(r"[\[\]()/,:@]", " ", plain).split())
    words = "|".join(sorted(PRICE_WORDS, key=len, reverse=True))
    found = re.fullmatch(
        rf"(?P<word>{words})?\s*(?P<from>from|ab|for|bei|at)?\s*(?P<n>\d+)?\s*(?P<plus>\+)?(?: ?(?:pcs|stk|pieces))?",
        bare,
    )
    if not found or not (found["word"] or (found["n"] and (found["plus"] or found["from"] == "ab"))):
        return None
    quantity = int(found["n"]) if found["n"] else None
    return None if quantity == 0 else (currency, quantity)


def _check_twice(name: str, layout: Layout) -> None:
    seen: dict[tuple[str, int | None], Column] = {}
    for column in layout.columns:
        first = seen.setdefault((column.kind, column.from_quantity), column)
        if first is not column:
            raise ListError(
                f'"{name}", line {layout.line}: the headings "{first.heading}" (column {first.place + 1}) and '
                f'"{column.heading}" (column {column.place + 1}) both mean {column.kind}. '
                "Rename the one that does not."
            )


def _check_needed(name: str, layout: Layout) -> None:
    kinds = {column.kind for column in layout.columns}
    kinds |= {"rated_v"} if "rated_ac_v" in kinds else set()
    missing = [what for kind, what in NEEDED.items() if kind not in kinds]
    if missing:
        found = ", ".join(f'"{heading}"' for heading in layout.headings if heading)
        raise ListError(
            f'"{name}" has no heading for {one_of(missing)}. Line {layout.line} was taken as the heading line: '
            f'{found[:1500]}. Name such a column, like "Capacitance [µF]", "Rated voltage", "Part number", "Price 10+".'
        )
