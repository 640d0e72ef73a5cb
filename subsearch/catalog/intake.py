"""Suppliers' lists into the catalog: all of them or none, and every line either kept or refused with its reason."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from hashlib import sha256
from pathlib import Path

import duckdb

from subsearch.catalog.faults import find_faults
from subsearch.catalog.layouts import Layout, find_layout
from subsearch.catalog.lines import join_lines
from subsearch.catalog.merging import rebuild
from subsearch.catalog.staging import clear_staged, stage
from subsearch.catalog.store import open_to_write
from subsearch.errors import ListError
from subsearch.reading.cells import reader_of
from subsearch.reading.rows import Table, read_table
from subsearch.terms import OFFER_TERMS, PART_TERMS

Progress = Callable[[str, int, int], None]


@dataclass(frozen=True)
class Intake:
    """What came of one list: kept and refused lines together are the lines read."""

    number: int
    supplier: str
    file: str
    lines_read: int
    kept: int
    refused: int
    skipped_headings: tuple[str, ...]
    notes: tuple[str, ...]


def load(  # noqa: PLR0913 - each is a separate thing a builder may say of a list
    path: Path,
    files: Sequence[Path],
    *,
    supplier: str | None = None,
    seen: date | None = None,
    currency: str | None = None,
    progress: Progress | None = None,
) -> list[Intake]:
    """Give what came of loading these lists into a catalog; parts and offers are rebuilt from all lists.

    path: the catalog file, made if absent. files: CSV or XLSX lists. supplier: whose lists they are; None: the
    file's name with - and _ as spaces. seen: the day the lists were seen. currency: of prices that state none.
    progress: called with what is being done, how many steps are done, and of how many. Anything raised leaves the
    catalog as it was: ListError for a list that can't be used as a whole, CatalogError for the catalog file,
    QuantityError for a currency that is none.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "grey-shed.csv"
    ...     _ = file.write_text("Part number;Cap uF;Voltage;Price\\nHollow 1;4,7;63 V;0,12\\nHollow 2;4,7;63 A;0,12\\n")
    ...     [(i.supplier, i.lines_read, i.kept, i.refused) for i in load(Path(folder) / "c", [file], currency="EUR")]
    [('grey shed', 2, 1, 1)]
    """
    if not files:
        raise ListError("No list was named. Name at least one CSV or XLSX file.")
    if supplier is not None and not supplier.strip():
        raise ListError("The supplier's name is empty. Give a name, or leave it out to take it from the file's name.")
    if currency is not None:
        currency = str(reader_of("currency")(currency or "(nothing)")["currency"])
    tell = progress or (lambda what, done, of: None)
    steps = len(files) + 1
    intakes = []
    with open_to_write(path) as con:
        for done, file in enumerate(map(Path, files)):
            tell(file.name, done, steps)
            name = supplier or " ".join(file.stem.replace("-", " ").replace("_", " ").split())
            intakes.append(take_in(con, read_table(file), file.read_bytes(), name, seen, currency))
        tell("parts and offers", steps - 1, steps)
        rebuild(con)
    tell("done", steps, steps)
    return intakes


def take_in(  # noqa: PLR0913 - what is said of a list, and the list
    con: duckdb.DuckDBPyConnection, table: Table, raw: bytes, supplier: str, seen: date | None, currency: str | None
) -> Intake:
    """Give what came of one list, whose lines are stored but not yet merged into parts and offers.

    con: connection to a catalog, inside a transaction. raw: what the list is known again by. Others: as for load.
    """
    layout = find_layout(table.file.name, table.rows)
    rows = [row for row in table.rows if row.line > layout.line]
    width = len(layout.headings)
    damaged = [row for row in rows if table.ragged and len(row.cells) != width]
    whole = [row for row in rows if not table.ragged or len(row.cells) == width]
    pieces = stage(con, layout, whole)
    join_lines(con, layout, pieces, supplier, currency)
    find_faults(con, layout, damaged)
    number, kept, refused = _keep(con)
    again, mark = _fingerprint(con, raw)
    con.execute(
        "insert into intake values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
        [
            number, supplier, table.file.name, mark, datetime.now(UTC).replace(tzinfo=None), seen,
            list(layout.headings), list(layout.skipped), len(rows), kept, refused,
        ],
    )  # fmt: skip
    clear_staged(con, layout)
    notes = (*table.notes, *again, *_notes(con, layout, number))
    return Intake(number, supplier, table.file.name, len(rows), kept, refused, layout.skipped, notes)


def _keep(con: duckdb.DuckDBPyConnection) -> tuple[int, int, int]:
    """Store the kept lines and the faults of the others; the number of the intake, lines kept, lines refused."""
    (number,) = con.execute("select coalesce(max(intake), 0) + 1 from intake").fetchall()[0]
    names = ", ".join(term.name for term in (*PART_TERMS, *OFFER_TERMS))
    con.execute(
        f"""insert into listing select $1, line, printed, {names}, prices from typed
        where line not in (select line from faults) order by line""",
        [number],
    )
    con.execute("insert into refusal select $1, faults.* from faults order by line, heading, term", [number])
    (kept,) = con.execute("select count(*) from listing where intake = $1", [number]).fetchall()[0]
    (refused,) = con.execute("select count(distinct line) from faults").fetchall()[0]
    return number, kept, refused


def _fingerprint(con: duckdb.DuckDBPyConnection, raw: bytes) -> tuple[tuple[str, ...], str]:
    mark = sha256(raw).hexdigest()
    before = con.execute("select max(intake) from intake where sha256 = $1", [mark]).fetchall()[0][0]
    return ((f"The very same file was loaded before, as intake {before}.",) if before else ()), mark


def _notes(con: duckdb.DuckDBPyConnection, layout: Layout, number: int) -> list[str]:
    kinds = {column.kind for column in layout.columns}
    notes = []
    if "condition" not in kinds:
        notes.append('The list has no column for the condition; all its lines count as "new".')
    (bare,) = con.execute("select count(*) from listing where intake = $1 and currency is null", [number]).fetchall()[0]
    if bare:
        notes.append(f"{bare} kept lines state no currency; name it with the load to compare their prices.")
    return notes
