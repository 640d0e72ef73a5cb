"""The trade's size table, value down and voltage across with a body size in the cell, made into lines of parts.

Such a table has neither part numbers nor prices. Each filled cell becomes a line: a part with its capacitance, voltage
and size, named after the table's title, and without an offer.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import duckdb

from subsearch.catalog.heading_cells import Column, hint_of
from subsearch.catalog.layouts import HEADING_ROWS, Layout
from subsearch.errors import QuantityError
from subsearch.reading.descriptions import TITLE
from subsearch.reading.numerals import decimal_mark, settled, without_thousands
from subsearch.reading.quantities import quantity
from subsearch.reading.ratings import read_voltages
from subsearch.reading.rows import Row, Table
from subsearch.reading.sizes import read_size
from subsearch.reading.spelling import one_spelling, plain_words
from subsearch.units import show

HEADINGS = ("Part number", "Capacitance", "Rated voltage", "Size", "Title")
KINDS = ("part_number", "capacitance_f", "rated_v", "size", "description")
NOTHING = ("", "-", "--", "—", "–", "/", "x", "n/a", "…", "...")
UNIT = re.compile(r"([pnuµm]F|MFD|мкФ|нФ|пФ)(?![a-z])", re.IGNORECASE)
FACTOR = 1000  # a cell is told by its line and its column: line 7, column 4 is 7004
LONGEST_TITLE = 60


@dataclass(frozen=True)
class SizeTable:
    """What was made of a table: its lines, their layout, and notes on what was taken for what."""

    rows: list[Row]
    layout: Layout
    notes: tuple[str, ...]


@dataclass(frozen=True)
class _Head:
    """A heading line: its row, the voltage of each column by its place, the words before it."""

    row: Row
    volts: dict[int, str]
    said: tuple[str, ...]

    def unit(self) -> str:
        """The unit of bare capacitances, as the corner or the words before the table say it."""
        for text in (self.row.cells[0], *reversed(self.said)):
            if found := UNIT.search(one_spelling(text)):
                return found[1]
        return ""


def as_lines(table: Table, title: str) -> SizeTable | None:
    """Give a size table as lines of parts; None for any other list.

    table: the list. title: what it is called where nothing stands above it. It is known by its shape: a line whose
    cells but the first are voltages, below it capacitances in the first cell and body sizes in others.

    >>> from pathlib import Path
    >>> cells = [("Hollow",), ("µF", "16 V", "25 V"), ("47", "5x11", "-"), ("100", "6.3x11", "8x11")]
    >>> made = as_lines(Table(Path("a.csv"), [Row(n, c) for n, c in enumerate(cells, 1)], (), True), "a")
    >>> [row.cells[:4] for row in made.rows][0], len(made.rows)
    (('Hollow 47 µF 16 V 5x11', '47 µF', '16 V', '5x11'), 3)
    """
    start = next((place for place in range(min(len(table.rows), HEADING_ROWS)) if _is_head(table.rows, place)), None)
    if start is None:
        return None
    mark = _mark(table.rows[start:], [row for row in table.rows[start:] if _volts(row)])
    rows: list[Row] = []
    heads: list[_Head] = []
    said: list[str] = []
    for place, row in enumerate(table.rows):
        filled = [cell for cell in row.cells if cell.strip()]
        if place >= start and (volts := _volts(row)) and _is_head(table.rows, place):
            heads.append(_Head(row, volts, tuple(said)))
            said = []
        elif not heads or (len(filled) == 1 and row.cells[0].strip() and not _is_capacitance(row.cells[0])):
            said += filled
        else:
            rows += _lines(heads[-1], row, title, mark)
    columns = tuple(
        Column(place, heading, kind, TITLE if kind == "description" else "")
        for place, (heading, kind) in enumerate(zip(HEADINGS, KINDS, strict=True))
    )
    layout = Layout(heads[0].row.line, HEADINGS, columns, ())
    return SizeTable(rows, layout, _notes(heads, title))


def _is_head(rows: Sequence[Row], place: int) -> bool:
    """Whether a row is a line of voltages with at least one capacitance that has a size below it."""
    volts = _volts(rows[place])
    return bool(volts) and any(
        _is_capacitance(row.cells[0]) and any(_is_size(row.cells[at]) for at in volts if at < len(row.cells))
        for row in rows[place + 1 : place + 1 + HEADING_ROWS]
    )


def _volts(row: Row) -> dict[int, str]:
    """The voltages of a heading line by their place; empty where another cell than the first is none."""
    cells = {at: without_thousands(one_spelling(cell)) for at, cell in enumerate(row.cells) if at and cell.strip()}
    if len(cells) < 2 or not all(_is_voltage(cell) for cell in cells.values()):
        return {}
    return cells


def _is_voltage(text: str) -> bool:
    try:
        return len(read_voltages("rated_v", text)) == 1
    except QuantityError:
        return False


def _is_capacitance(text: str) -> bool:
    try:
        quantity("capacitance_f", one_spelling(text), "µ")
    except QuantityError:
        return False
    return True


def _is_size(text: str) -> bool:
    try:
        return bool(text.strip()) and bool(read_size(text))
    except QuantityError:
        return False


def _lines(head: _Head, row: Row, title: str, mark: str) -> Iterator[Row]:
    value = _settled(one_spelling(row.cells[0]), mark)
    capacitance = f"{value} {head.unit()}".strip() if value and not UNIT.search(value) else value
    for at, cell in enumerate(row.cells):
        if not at or cell.strip().casefold() in NOTHING:
            continue
        volts = _settled(head.volts.get(at, ""), mark)
        rating = f"{volts} V" if re.fullmatch(r"[\d.]+", volts) else volts
        number = " ".join(f"{_title(head, title)} {_shown(capacitance)} {_rated(rating)} {_sized(cell)}".split())
        yield Row(row.line * FACTOR + at + 1, (number, capacitance, rating, cell, _words(head)))


def _mark(rows: Sequence[Row], heads: Sequence[Row]) -> str:
    """The decimal mark of values and voltages, or else of the sizes."""
    own = decimal_mark([*(row.cells[0] for row in rows), *(cell for head in heads for cell in head.cells[1:])])
    return own or decimal_mark(cell for row in rows for cell in row.cells[1:])


def _settled(text: str, mark: str) -> str:
    """A value or voltage without thousands: 1.000 below 470 is 1000, where nothing speaks for a decimal point.

    A table with three decimals would begin with a 0.100, which says it.
    """
    return settled(text, mark) if mark or text.startswith("0") else without_thousands(text)


def _shown(capacitance: str) -> str:
    """The capacitance in one spelling, so that 0,1 µF and 100 nF name one part."""
    try:
        return show(quantity("capacitance_f", capacitance), "F")
    except QuantityError:
        return capacitance


def _rated(rating: str) -> str:
    """The voltage in one spelling."""
    if not rating:
        return ""
    ((kind, volts),) = read_voltages("rated_v", rating).items()
    return f"{volts:g} V{'' if kind == 'rated_v' else '~'}"


def _sized(cell: str) -> str:
    """The size in one spelling."""
    try:
        return "x".join(f"{extent:g}" for name, extent in read_size(cell).items() if name != "lead_spacing_mm")
    except QuantityError:
        return one_spelling(cell)


def _title(head: _Head, title: str) -> str:
    said = next((text for text in head.said if not hint_of("capacitance_f", text) and plain_words(text)), title)
    return " ".join(re.split(r"[,;:|]\s", said)[0].split())[:LONGEST_TITLE].strip()


def _words(head: _Head) -> str:
    return "; ".join(" ".join(text.split()) for text in head.said)


def _notes(heads: Sequence[_Head], title: str) -> tuple[str, ...]:
    names = ", ".join(f'"{_title(head, title)}"' for head in heads)
    return (
        f"This is a size table: voltages stand in line {heads[0].row.line}, sizes below. Every filled cell is a line; "
        f"its parts are known with their sizes, but nobody offers them. They are named after {names}, as in "
        f'"{_title(heads[0], title)} 47 µF 16 V 10x16".',
    )


def tell_cells(con: duckdb.DuckDBPyConnection) -> None:
    """Say in each fault of a size table which cell it stands in. con: connection with the table `faults`."""
    con.execute(
        f"""update faults set reason = reason || format(' It stands in line {{}}, column {{}} of the file.',
            line // {FACTOR}, line % {FACTOR})"""
    )
