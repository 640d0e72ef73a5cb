"""What was recognised of a supplier's list, written as a layout file for the builder to correct."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from subsearch.catalog.heading_cells import Column, read_heading
from subsearch.catalog.headings import NAMES, SPOKEN, UNITS
from subsearch.catalog.layouts import Layout, best_layout, missing, twice
from subsearch.catalog.size_tables import as_lines
from subsearch.errors import ListError
from subsearch.reading.numerals import decimal_mark
from subsearch.reading.rows import Table, read_table
from subsearch.reading.spelling import plain_words

TERMS_A_LINE = 100
NEAR = 0.8  # so alike that a slip is likely


@dataclass(frozen=True)
class Recognised:
    """What was recognised of a list: its layout, and by heading why a column is left out; what is still missing."""

    supplier: str
    list_name: str
    layout: Layout
    left_out: Mapping[int, str]
    missing: tuple[str, ...]
    decimal_mark: str

    @property
    def kept(self) -> tuple[Column, ...]:
        """The columns that are read."""
        return tuple(column for column in self.layout.columns if column.place not in self.left_out)


def recognise(file: Path, supplier: str) -> Recognised:
    """Give what is recognised of a list, also where it can't be loaded as it is.

    file: CSV or XLSX. supplier: whose list it is. Raises ListError for what is no list, and for a size table.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "grey.csv"
    ...     _ = file.write_text("Wert;Spannung;Regal\\n4,7 uF;63;9\\n")
    ...     found = recognise(file, "Grey")
    >>> [column.kind for column in found.kept], found.left_out, found.missing
    (['capacitance_f', 'rated_v'], {2: 'not understood'}, ('a part number', 'a price'))
    """
    table = read_table(file)
    if as_lines(table, supplier):
        raise ListError(f'"{file.name}" is a size table, which needs no layout. Load it as it is.')
    layout = best_layout(table.rows)
    understood = {column.place for column in layout.columns}
    why = {
        place: _why(layout, heading)
        for place, heading in enumerate(layout.headings)
        if heading and place not in understood
    }
    why |= {
        column.place: f'means {column.kind}, as "{first.heading}" does; leave out the one that does not'
        for first, column in twice(layout)
    }
    return Recognised(supplier, file.name, layout, why, tuple(missing(layout)), _mark(table, layout))


def _why(layout: Layout, heading: str) -> str:
    """Why a heading is left out: a second description, or a word that is not known."""
    column = read_heading(0, heading)
    if column and column.kind == "description":
        return f'means description, as "{layout.headings_of("description")}" does; leave out the one that does not'
    return f"not understood{_near(heading)}"


def _near(heading: str) -> str:
    close = get_close_matches(plain_words(heading), NAMES, n=1, cutoff=NEAR)
    return f'; near to "{close[0]}", which means {NAMES[close[0]][0]}' if close else ""


def _mark(table: Table, layout: Layout) -> str:
    places = [column.place for column in layout.columns if UNITS.get(column.kind) or column.kind == "unit_price"]
    rows = (row for row in table.rows if row.line > layout.line)
    return decimal_mark(row.cells[place] for row in rows for place in places if place < len(row.cells))


def write_layout(found: Recognised, file: Path) -> None:
    """Write a layout file. Raises ListError where one stands there already: the builder may have corrected it."""
    if file.exists():
        raise ListError(
            f'"{file}" stands there already, so nothing was written. Name another file with --out, or move it.'
        )
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text("\n".join(_text(found)) + "\n", encoding="utf-8")


def _text(found: Recognised) -> Iterator[str]:
    yield f"# How the lists of {_plain(found.supplier)} are read, as recognised in {_plain(found.list_name)}."
    yield "# Correct it by hand: each column has its heading as it stands in the list, the term that its cells state,"
    yield "# and the unit of bare numbers."
    yield "# A price may have from_quantity = 10, and a unit like EUR, or EUR/100 where it is for a hundred pieces."
    yield from _terms()
    yield f"heading_line = {found.layout.line}"
    yield f"{'' if found.decimal_mark else '# '}decimal_mark = {_quoted(found.decimal_mark or ',')}"
    yield '# currency = "EUR"  # of prices that state none'
    yield '# shape = "can"  # of bodies whose lines state none: can, box or axial'
    yield "columns = ["
    columns = {column.place: column for column in found.kept}
    for place, heading in enumerate(found.layout.headings):
        if place in columns:
            yield f"  {_entry(columns[place])},"
        elif heading:
            yield f"  {{ heading = {_quoted(heading)}, leave_out = true }},  # {_plain(found.left_out[place])}"
    yield "]"


def _terms() -> Iterator[str]:
    line = "# Terms:"
    for number, kind in enumerate(SPOKEN):
        line += f" {kind}{',' if number < len(SPOKEN) - 1 else ''}"
        if len(line) > TERMS_A_LINE:
            yield line
            line = "#"
    yield line


def _entry(column: Column) -> str:
    said = [f"heading = {_quoted(column.heading)}", f"term = {_quoted(column.kind)}"]
    if unit := unit_of(column):
        said.append(f"unit = {_quoted(unit)}")
    if column.from_quantity:
        said.append(f"from_quantity = {column.from_quantity}")
    return f"{{ {', '.join(said)} }}"


def unit_of(column: Column) -> str:
    """Give the unit of a column's bare numbers in words, or "" where it has none or its cells must say it.

    >>> unit_of(Column(0, "Cap uF", "capacitance_f", "u")), unit_of(Column(0, "Spannung", "rated_v"))
    ('uF', 'V')
    """
    if column.kind in ("unit_price", "lead_time_days"):
        return column.hint or UNITS.get(column.kind, "")
    if column.kind == "size" and column.hint:
        return " x ".join(column.hint)
    if column.kind == "capacitance_f" and not column.hint:
        return ""
    return f"{column.hint}{UNITS.get(column.kind, '')}"


def _quoted(text: str) -> str:
    """A text as TOML writes it: as JSON does, but for one sign."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _plain(text: str) -> str:
    """A text that ends no comment."""
    return "".join(sign if sign.isprintable() else " " for sign in text)
