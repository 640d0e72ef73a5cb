"""One list in bulk: every cell staged as text, every distinct text of a column read once, the readings joined back."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial

import duckdb

from subsearch.catalog.frames import into_table
from subsearch.catalog.heading_cells import Column
from subsearch.catalog.layouts import Layout
from subsearch.errors import QuantityError
from subsearch.reading.cells import OWN_WORDS, PLAIN_NUMBERS, Stated, Value, reader_of
from subsearch.reading.descriptions import read_description
from subsearch.reading.numerals import decimal_mark, settled
from subsearch.reading.spaces import NEEDLESS
from subsearch.terms import TERMS

FAULT_TERM = {
    "tolerance": "tolerance_low_pct",
    "size": "along_mm",
    "style": "shape",
    "temperatures": "rated_c",
    "description": "capacitance_f",
}
LISTING_TYPES = "select column_name, data_type from duckdb_columns() where table_name = 'listing'"
OTHER_TYPES = {
    "unit_price": "DECIMAL(14, 6)",
    "from_quantity": "INTEGER",
    "price_breaks": "VARCHAR",
    "value_doubt": "VARCHAR",
}


@dataclass(frozen=True)
class Piece:
    """One thing a staged column states: its name, the column, and where SQL finds it."""

    name: str
    column: Column

    @property
    def sql(self) -> str:
        """The column of its lookup table; a text that states itself stands in none."""
        place = self.column.place
        if self.column.kind in OWN_WORDS:
            return f"if(r{place}.text is null, nullif(s.c{place}, ''), r{place}.{self.name})"
        return f"r{place}.{self.name}"


@dataclass(frozen=True)
class Read:
    """What one distinct text of a column came to: what it states, or its fault and the sentence for it."""

    text: str
    stated: Stated
    fault: str | None = None
    reason: str | None = None


def read_columns(con: duckdb.DuckDBPyConnection, layout: Layout) -> tuple[Piece, ...]:
    """Put the readings of each column of the temporary table `staged` into `reading_<place>`.

    con: connection on which the list's lines were staged. Result: what the columns state.
    """
    texts = {column: _distinct(con, column) for column in layout.columns}
    numbers = (text for column in layout.columns if _is_number(column) for text in texts[column])
    mark = layout.decimal_mark or decimal_mark(numbers)
    listing = dict(con.execute(LISTING_TYPES).fetchall())
    known: dict[tuple[str, str, str], dict[str, Read]] = {}  # prices from 1 and from 100 are often the same texts
    pieces = []
    for column in layout.columns:
        its = mark if column.kind == "description" else ""
        if _is_number(column):
            its = mark or decimal_mark(texts[column])  # a sheet's own numbers have a point
        alike = known.setdefault((column.kind, column.hint, its), {})
        reads = _read_all(column, texts[column], its, alike)
        pieces += [Piece(name, column) for name in _store(con, column, reads, listing)]
    return tuple(pieces)


def clear_staged(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    """Drop the temporary tables of a list; their memory is free once the load is committed."""
    for table in (
        "staged",
        "damaged",
        "said",
        "doubtful",
        "faults",
        *(f"reading_{column.place}" for column in layout.columns),
    ):
        con.execute(f"drop table {table}")


def _is_number(column: Column) -> bool:
    term = TERMS.get(column.kind)
    return column.kind in ("unit_price", *PLAIN_NUMBERS) or (
        column.kind not in FAULT_TERM and (not term or bool(term.unit))
    )


def _distinct(con: duckdb.DuckDBPyConnection, column: Column) -> list[str]:
    name, values = f"c{column.place}", {}
    some = f"{name} <> ''"
    if column.kind in OWN_WORDS:
        some, values = f"regexp_matches({name}, $needless)", {"needless": NEEDLESS}
    return [text for (text,) in con.execute(f"select distinct {name} from staged where {some}", values).fetchall()]


def _read_all(column: Column, texts: Sequence[str], mark: str, known: dict[str, Read]) -> list[Read]:
    """What these texts came to; `known` are those that were read already, in another column of the same kind."""
    described = column.kind == "description"  # in a sentence a comma is more than a mark
    reader = (
        partial(read_description, only=column.hint, mark=mark) if described else reader_of(column.kind, column.hint)
    )

    def read(text: str) -> Read:
        try:
            return Read(text, reader(text if described else settled(text, mark)))
        except QuantityError as error:
            return Read(text, {}, error.fault, str(error))

    known |= {text: read(text) for text in texts if text not in known}
    return [known[text] for text in texts]


def _store(
    con: duckdb.DuckDBPyConnection, column: Column, reads: Sequence[Read], listing: Mapping[str, str]
) -> list[str]:
    """Make the lookup table of a column; the names of what it states."""
    own = {column.kind} if column.kind in OWN_WORDS else set()
    names = sorted({name for read in reads for name in read.stated} | own)
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
