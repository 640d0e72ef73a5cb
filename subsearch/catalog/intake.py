"""Suppliers' lists into the catalog: all of them or none, and every line either kept or refused with its reason."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from hashlib import file_digest
from pathlib import Path

import duckdb

from subsearch.catalog.faults import find_faults
from subsearch.catalog.laid_out import LaidOut, lay_out
from subsearch.catalog.layout_files import read_layout, standing_layout
from subsearch.catalog.lines import say, typed_sql
from subsearch.catalog.merging import rebuild
from subsearch.catalog.saved_layouts import SavedLayout
from subsearch.catalog.size_tables import tell_cells
from subsearch.catalog.staged_lines import stage_lines
from subsearch.catalog.staging import clear_staged, read_columns
from subsearch.catalog.store import open_to_write
from subsearch.errors import ListError
from subsearch.reading.cells import reader_of
from subsearch.reading.plain_files import PlainFile, plain_file
from subsearch.reading.rows import Table, read_table
from subsearch.terms import OFFER_TERMS, PART_TERMS
from subsearch.units import counted

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
    layout: Path | None = None,
    progress: Progress | None = None,
) -> list[Intake]:
    """Give what came of loading these lists into a catalog; parts and offers are rebuilt from all lists.

    path: the catalog file, made if absent. files: CSV or XLSX lists. supplier: whose lists they are; None: the
    file's name with - and _ as spaces. seen: the day the lists were seen. currency: of prices that state none.
    layout: a layout file for these lists; None: the one that stands beside the catalog for the supplier, if any.
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
            name = supplier or supplier_of(file)
            saved = read_layout(layout) if layout else standing_layout(path, name)
            with plain_file(file) as plain:
                source, mark = plain or read_table(file), _fingerprint(file)
                intakes.append(take_in(con, source, mark, name, seen, currency, saved))
        tell("parts and offers", steps - 1, steps)
        rebuild(con)
    tell("done", steps, steps)
    return intakes


def supplier_of(file: Path) -> str:
    """Give the supplier's name that a list's file says.

    >>> supplier_of(Path("grey-shed_2026.csv"))
    'grey shed 2026'
    """
    return " ".join(file.stem.replace("-", " ").replace("_", " ").split())


def take_in(  # noqa: PLR0913 - what is said of a list, and the list
    con: duckdb.DuckDBPyConnection,
    table: Table | PlainFile,
    mark: str,
    supplier: str,
    seen: date | None,
    currency: str | None,
    saved: SavedLayout | None = None,
) -> Intake:
    """Give what came of one list, whose lines are stored but not yet merged into parts and offers.

    con: connection to a catalog, inside a transaction. mark: what the list is known again by. Others: as for load.
    """
    currency = currency or (saved.currency if saved else None)
    laid = lay_out(table, supplier, saved, currency)
    layout = laid.layout
    lines = stage_lines(con, laid.source, layout)
    if lines is None:
        return take_in(con, read_table(table.file), mark, supplier, seen, currency, saved)
    say(con, supplier, currency)
    pieces = read_columns(con, layout)
    find_faults(con, layout, pieces)
    if laid.by_cell:
        tell_cells(con)
    number, kept, refused = _keep(con, typed_sql(con, layout, pieces))
    again = _loaded_before(con, mark)
    con.execute(
        "insert into intake values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
        [
            number, supplier, table.file.name, mark, datetime.now(UTC).replace(tzinfo=None), seen,
            list(layout.headings), list(layout.skipped), lines, kept, refused,
        ],
    )  # fmt: skip
    clear_staged(con, layout)
    notes = (*table.notes, *again, *laid.notes, *_notes(con, laid, number))
    return Intake(number, supplier, table.file.name, lines, kept, refused, layout.skipped, notes)


def _keep(con: duckdb.DuckDBPyConnection, typed: str) -> tuple[int, int, int]:
    """Store the kept lines and the faults of the others; the number of the intake, lines kept, lines refused."""
    (number,) = con.execute("select coalesce(max(intake), 0) + 1 from intake").fetchall()[0]
    names = ", ".join(term.name for term in (*PART_TERMS, *OFFER_TERMS))
    con.execute(
        f"""insert into listing select $1, line, printed, {names}, prices from ({typed})
        where line not in (select line from faults)""",
        [number],
    )
    con.execute("insert into refusal select $1, faults.* from faults order by line, heading, term", [number])
    (kept,) = con.execute("select count(*) from listing where intake = $1", [number]).fetchall()[0]
    (refused,) = con.execute("select count(distinct line) from faults").fetchall()[0]
    return number, kept, refused


def _fingerprint(file: Path) -> str:
    with file.open("rb") as content:
        return file_digest(content, "sha256").hexdigest()


def _loaded_before(con: duckdb.DuckDBPyConnection, mark: str) -> list[str]:
    before = con.execute("select max(intake) from intake where sha256 = $1", [mark]).fetchall()[0][0]
    return [f"The very same file was loaded before, as intake {before}."] if before else []


def _notes(con: duckdb.DuckDBPyConnection, laid: LaidOut, number: int) -> list[str]:
    bodies = _without_shape(con, laid, number)
    if laid.by_cell:
        return bodies
    notes = bodies
    if "condition" not in laid.layout.kinds:
        notes.append('The list has no column for the condition; all its lines count as "new".')
    (bare,) = con.execute("select count(*) from listing where intake = $1 and currency is null", [number]).fetchall()[0]
    if bare:
        notes.append(f"{bare} kept lines state no currency; name it with the load to compare their prices.")
    notes += [
        f"The stock of {counted(words, 'kept line')} is said in words without a number; it counts as not stated."
        for words in _in_words(con, laid, number)
    ]
    return notes


def _in_words(con: duckdb.DuckDBPyConnection, laid: LaidOut, number: int) -> list[int]:
    """How many kept lines say of their stock that there is some, or whom to ask."""
    counts = [
        con.execute(
            "select count(*) from listing where intake = $1 and stock is null and trim(printed[$2]) <> ''",
            [number, column.place + 1],
        ).fetchall()[0][0]
        for column in laid.layout.columns
        if column.kind == "stock"
    ]
    return [count for count in counts if count]


def _without_shape(con: duckdb.DuckDBPyConnection, laid: LaidOut, number: int) -> list[str]:
    """What to know where a size is printed, but not of which shape."""
    places = [column.place + 1 for column in laid.layout.columns if column.kind == "size"]
    (lines,) = con.execute(
        """select count(*) from listing where intake = $1 and shape is null and along_mm is null
            and len(list_filter($2::integer[], lambda place: trim(printed[place]) <> '')) > 0""",
        [number, places],
    ).fetchall()[0]
    said = f"{counted(lines, 'kept line')} with a size, but without its shape, so the body is not known. "
    said += "Write radial or axial in the title." if laid.by_cell else "A layout can say the shape for the whole list."
    return [said] if lines else []
