"""Which column of a supplier's list states which term: the heading line found, each heading read by its meaning."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from subsearch.catalog.heading_cells import Column, read_heading
from subsearch.catalog.headings import SPOKEN
from subsearch.errors import ListError, one_of
from subsearch.reading.rows import Row
from subsearch.reading.spelling import plain_words

HEADING_ROWS = 20
NEEDED = {
    "part_number": "a part number",
    "capacitance_f": "a capacitance",
    "rated_v": "a rated voltage (d.c. or a.c.)",
    "unit_price": "a price",
}
INSTEAD = {"rated_v": {"rated_ac_v", "description"}, "capacitance_f": {"description"}}  # what may state it too
BREAK = re.compile(r"\D{0,4}\d+\s*\+?")


@dataclass(frozen=True)
class Layout:
    """The heading line, the columns that were understood and the headings that were not.

    decimal_mark: what a saved layout says of the list's numbers; "" leaves it to the numbers themselves. shape: what it
    says of bodies whose lines state no shape.
    """

    line: int
    headings: tuple[str, ...]
    columns: tuple[Column, ...]
    skipped: tuple[str, ...]
    decimal_mark: str = ""
    shape: str = ""

    @property
    def kinds(self) -> frozenset[str]:
        """The kinds of its columns."""
        return frozenset(column.kind for column in self.columns)

    def headings_of(self, *kinds: str) -> str:
        """The headings of the columns of these kinds, as one text."""
        return " / ".join(column.heading for column in self.columns if column.kind in kinds)


def find_layout(name: str, rows: Sequence[Row]) -> Layout:
    """Give the layout of a list: among its first rows the one with most known headings is the heading line.

    name: the file's name, for sentences. rows: the list's rows. A heading line may go over two rows, the unit or
    the number of pieces below the name. Raises ListError when a needed heading is missing or two headings state
    the same term.

    >>> rows = [Row(1, ("Invented",)), Row(2, ("Part number", "Cap uF", "Voltage", "Price 10+", "Shelf"))]
    >>> layout = find_layout("list.csv", rows)
    >>> [(column.kind, column.hint, column.from_quantity) for column in layout.columns][1:]
    [('capacitance_f', 'u', None), ('rated_v', '', None), ('unit_price', '', 10)]
    >>> layout.line, layout.skipped
    (2, ('Shelf',))
    """
    best = best_layout(rows)
    check(name, best)
    return best


def best_layout(rows: Sequence[Row]) -> Layout:
    """Give the layout with most known headings among the first rows, checked for nothing.

    >>> best_layout([Row(1, ("Cap.", "Voltage")), Row(2, ("[nF]", "[V]")), Row(3, ("47", "63"))]).columns[0].hint
    'n'
    """
    first = rows[:HEADING_ROWS]
    layouts = [_layout(row.line, row.cells) for row in first]
    layouts += [_layout(low.line, cells) for high, low in pairwise(first) if (cells := two_rows(high, low))]
    return max(layouts, key=_understood)


def _understood(layout: Layout) -> tuple[int, int]:
    """Columns first; of as many, the layout that says more of them; a tie keeps the first."""
    return len(layout.columns), sum(bool(column.hint or column.from_quantity) for column in layout.columns)


def _layout(line: int, cells: Sequence[str]) -> Layout:
    headings = tuple(cell.strip() for cell in cells)
    read = _one_description([read_heading(place, heading) for place, heading in enumerate(headings)])
    skipped = tuple(heading for heading, column in zip(headings, read, strict=True) if heading and not column)
    return Layout(line, headings, _prices_of_many(tuple(column for column in read if column)), skipped)


def _prices_of_many(columns: tuple[Column, ...]) -> tuple[Column, ...]:
    """Beside another price, one for a hundred pieces is what a hundred cost: it holds from that many on."""

    def held(column: Column) -> Column:
        many = column.hint.partition("/")[2]
        alone = column.kind != "unit_price" or column.from_quantity or not many
        return column if alone else replace(column, from_quantity=int(many))

    several = sum(column.kind == "unit_price" for column in columns) > 1
    return tuple(map(held, columns)) if several else columns


def _one_description(columns: list[Column | None]) -> list[Column | None]:
    """Of several descriptions, like a product's name beside it, only the one that is called so most plainly."""
    words = [plain_words(word) for word in ("description", *SPOKEN["description"])]
    found = [column for column in columns if column and column.kind == "description"]
    kept = min(found, key=lambda column: words.index(plain_words(column.heading)), default=None)
    return [None if column in found and column is not kept else column for column in columns]


def two_rows(high: Row, low: Row) -> tuple[str, ...]:
    """Give two rows as the cells of one heading line, or nothing where the lower one is a line of data.

    >>> two_rows(Row(1, ("Cap.", "Price", "")), Row(2, ("[nF]", "1+", "10+")))
    ('Cap. [nF]', 'Price 1+', 'Price 10+')
    """
    width = max(len(high.cells), len(low.cells))
    above, below = (row.cells + ("",) * (width - len(row.cells)) for row in (high, low))
    together, carried = [], ""
    for top, bottom in zip(above, below, strict=True):
        carried = top.strip() or carried
        price = read_heading(0, carried)
        is_break = bool(price and price.kind == "unit_price" and BREAK.fullmatch(bottom.strip()))
        if re.search(r"\d", bottom) and not is_break:
            return ()
        together.append(f"{carried if is_break else top.strip()} {bottom.strip()}".strip())
    return tuple(together)


def check(name: str, layout: Layout) -> None:
    """Raise ListError where two columns of a list state the same term or a needed one is missing."""
    _check_twice(name, layout)
    _check_needed(name, layout)


def twice(layout: Layout) -> list[tuple[Column, Column]]:
    """Give the columns that state a term again, each with the one that states it first.

    >>> twice(best_layout([Row(1, ("Cap uF", "Capacitance [nF]"))]))[0][1].place
    1
    """
    seen: dict[tuple[str, int | None], Column] = {}
    pairs = [(seen.setdefault((column.kind, column.from_quantity), column), column) for column in layout.columns]
    return [(first, column) for first, column in pairs if first is not column]


def _check_twice(name: str, layout: Layout) -> None:
    for first, column in twice(layout):
        raise ListError(
            f'"{name}", line {layout.line}: the headings "{first.heading}" (column {first.place + 1}) and '
            f'"{column.heading}" (column {column.place + 1}) both mean {column.kind}. '
            "Rename the one that does not, or leave it out in a layout: subsearch layout writes one."
        )


def missing(layout: Layout) -> list[str]:
    """Give what no column of a list states although every line needs it.

    >>> missing(best_layout([Row(1, ("Part number", "Description"))]))
    ['a price']
    """
    return [what for kind, what in NEEDED.items() if not layout.kinds & {kind, *INSTEAD.get(kind, ())}]


def _check_needed(name: str, layout: Layout) -> None:
    if lacking := missing(layout):
        found = ", ".join(f'"{heading}"' for heading in layout.headings if heading)
        raise ListError(
            f'"{name}" has no heading for {one_of(lacking)}. Line {layout.line} was taken as the heading line: '
            f'{found[:1500]}. Name such a column, like "Capacitance [µF]", "Rated voltage", "Part number", '
            '"Price 10+", or say what each heading means in a layout: subsearch layout writes one.'
        )
