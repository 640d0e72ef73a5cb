"""One list in bulk: every cell staged as text, every distinct text of a column read once, the readings joined back."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import duckdb

from subsearch.catalog.frames import into_table
from subsearch.catalog.layouts import Column, Layout
from subsearch.errors import QuantityError
from subsearch.reading.cells import PLAIN_NUMBERS, Stated, Value, reader_of
from subsearch.reading.numerals import decimal_mark, settled
from subsearch.reading.rows import Row
from subsearch.terms import TERMS

FAULT_TERM = {"tolerance": "tolerance_low_pct", "size": "along_mm", "style": "shape", "temperatures": "rated_c"}
AT_ONCE = 20_000  # lines staged at once: bounds what is held in memory twice
LISTING_TYPES = "select column_name, data_type from duckdb_columns() where table_name = 'listing'"
OTHER_TYPES = {"unit_price": "DECIMAL(14, 6)", "from_quantity": "INTEGER"}


@dataclass(frozen=True)
class Piece:
    """One thing a staged column states: its name, the column, and where SQL finds it."""

    name: str
    column: Column

    @property
    def sql(self) -> str:
        """The column of its lookup table."""
        return f"r{self.column.place}.{self.name}"


@dataclass(frozen=True)
class Read:
    """What one distinct text of a column came to: what it states, or its fault and the sentence for it."""

    text: str
    stated: Stated
    fault: str | None = None
    reason: str | None = None


def stage(con: duckdb.DuckDBPyConnection, layout: Layout, rows: Sequence[Row]) -> tuple[Piece, ...]:
    """Put the rows' cells into the temporary table `staged`, each column's readings into `reading_<place>`.

    con: connection to a catalog, inside a transaction. rows: the data rows. Result: what the columns state.
    """
    _stage_cells(con, max([len(layout.headings), *(len(row.cells) for row in rows)]), rows)
    texts = {column: _distinct(con, column) for column in layout.columns}
    mark = decimal_mark(text for column in layout.columns if _is_number(column) for text in texts[column])
    listing = dict(con.execute(LISTING_TYPES).fetchall())
    return tuple(
        Piece(name, column)
        for column in layout.columns
        for name in _store(con, column, _read_all(column, texts[column], mark), listing)
    )


def clear_staged(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    """Drop the temporary tables of a list, so that its cells do not stay in memory while parts are merged."""
    for table in ("staged", "typed", "faults", *(f"reading_{column.place}" for column in layout.columns)):
        con.execute(f"drop table {table}")


def _stage_cells(con: duckdb.DuckDBPyConnection, width: int, rows: Sequence[Row]) -> None:
    types = {"line": "INTEGER", **{f"c{place}": "VARCHAR" for place in range(width)}}
    for start in range(0, len(rows) or 1, AT_ONCE):
        some = rows[start : start + AT_ONCE]
        padded = (
            row.cells if len(row.cells) == width else row.cells + ("",) * (width - len(row.cells)) for row in some
        )
        cells = list(zip(*padded, strict=True)) or [()] * width
        columns = dict(zip(types, [[row.line for row in some], *cells], strict=True))
        into_table(con, "staged", types, columns, more=start > 0)


def _is_number(column: Column) -> bool:
    term = TERMS.get(column.kind)
    return column.kind in ("unit_price", *PLAIN_NUMBERS) or (
        column.kind not in FAULT_TERM and (not term or bool(term.unit))
    )


def _distinct(con: duckdb.DuckDBPyConnection, column: Column) -> list[str]:
    name = f"c{column.place}"
    return [text for (text,) in con.execute(f"select distinct {name} from staged where {name} <> ''").fetchall()]


def _read_all(column: Column, texts: Sequence[str], mark: str) -> list[Read]:
    reader = reader_of(column.kind, column.hint)
    mark = mark if _is_number(column) else ""

    def read(text: str) -> Read:
        try:
            return Read(text, reader(settled(text, mark)))
        except QuantityError as error:
            return Read(text, {}, error.fault, str(error))

    return [read(text) for text in texts]


def _store(
    con: duckdb.DuckDBPyConnection, column: Column, reads: Sequence[Read], listing: Mapping[str, str]
) -> list[str]:
    """Make the lookup table of a column; the names of what it states."""
    names = sorted({name for read in reads for name in read.stated})
    types = {name: listing.get(name) or OTHER_TYPES.get(name, "DOUBLE") for name in names}
    term = FAULT_TERM.get(column.kind, column.kind)
    columns: dict[str, Sequence[object]] = {name: [_as_text(read.stated.get(name)) for read in reads] for name in names}
    columns |= {
        "text": [read.text for read in reads],
        "fault": [read.fault for read in reads],
        "fault_term": [term if read.fault else None for read in reads],
        "reason": [read.reason for read in reads],
    }
    into_table(
        con,
        f"reading_{column.place}",
        types | dict.fromkeys(("text", "fault", "fault_term", "reason"), "VARCHAR"),
        columns,
    )
    return names


def _as_text(value: Value | None) -> str | None:
    """Text that SQL casts back to the very same value."""
    if value is None:
        return None
    return repr(value) if isinstance(value, float) else str(value)
