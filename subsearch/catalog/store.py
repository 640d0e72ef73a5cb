"""The catalog file: opened to be read, or opened to be written in one transaction. Nobody else opens it."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from importlib.resources import files
from pathlib import Path

import duckdb

from subsearch.errors import CatalogError

EDITION = 2
# Rows go to the file as soon as one group of them (122,880) is full, instead of several being held back; and beyond so
# much memory a load goes on in a temporary file beside the catalog: ten million lines load in less than 3 GB.
FRUGAL = ("set write_buffer_row_group_count = 1", "set memory_limit = '2GB'")


def open_to_read(path: Path) -> duckdb.DuckDBPyConnection:
    """Give a read-only connection to a catalog.

    path: the catalog file. Result: an open connection, for the caller to close. Raises CatalogError.

    >>> open_to_read(Path("none"))
    Traceback (most recent call last):
    subsearch.errors.CatalogError: There is no catalog "none". Load a supplier's list first, or check the path.
    """
    path = Path(path)
    if not path.exists():
        raise CatalogError(f'There is no catalog "{path}". Load a supplier\'s list first, or check the path.')
    con = _connected(path, read_only=True)
    try:
        _check_edition(con, path)
    except CatalogError:
        con.close()
        raise
    return con


@contextmanager
def open_to_write(path: Path) -> Iterator[duckdb.DuckDBPyConnection]:
    """Give a connection inside one transaction; a new file gets the tables.

    path: the catalog file, which need not exist. Anything raised inside leaves the file as it was, or absent if it
    was absent. Raises CatalogError.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder, open_to_write(Path(folder) / "new.catalog") as con:
    ...     con.execute("select count(*) from part").fetchall()
    [(0,)]
    """
    path = Path(path)
    if not path.parent.is_dir():
        raise CatalogError(f'There is no folder "{path.parent}" for the catalog. Make it first, or check the path.')
    absent = not path.exists()
    con = _connected(path, read_only=False)
    # Another process may have made the file meanwhile: only now that it is ours alone can it be told.
    new = absent and not con.execute("select 1 from duckdb_tables() limit 1").fetchone()
    kept = False
    try:
        if not new:
            _check_edition(con, path)
        for setting in FRUGAL:
            con.execute(setting)
        con.execute("begin")
        if new:
            _create(con)
        yield con
        con.execute("commit")
        kept = True
    finally:
        con.close()  # an open transaction is rolled back
        if new and not kept:
            path.unlink(missing_ok=True)
            path.with_name(path.name + ".wal").unlink(missing_ok=True)


@cache
def tables() -> dict[str, str]:
    """Give the statement that creates each table, by the table's name.

    >>> sorted(tables())
    ['catalog_edition', 'currency_rate', 'intake', 'listing', 'offer', 'part', 'refusal']
    """
    schema = (files("subsearch.catalog") / "schema.sql").read_text(encoding="utf-8")
    return {
        name: f"create table {name} (\n{body})"
        for name, body in re.findall(r"(?ms)^CREATE TABLE (\w+) \(\n(.*?)^\);", schema)
    }


def empty_again(con: duckdb.DuckDBPyConnection, table: str) -> None:
    """Drop a table and create it anew, for the tables that are rebuilt at each load."""
    con.execute(f"drop table {table}")
    con.execute(tables()[table])


def in_words(error: Exception) -> CatalogError | None:
    """Give what the database says of a catalog it can't use, as a sentence; None for an error of another kind.

    error: anything raised while a catalog was open.

    >>> print(in_words(duckdb.IOException("IO Error: short file")))
    The catalog can't be used (IO Error: short file). Load the lists again into a new file.
    """
    if not isinstance(error, duckdb.Error):
        return None
    first = str(error).splitlines()[0]
    return CatalogError(f"The catalog can't be used ({first}). Load the lists again into a new file.")


def _create(con: duckdb.DuckDBPyConnection) -> None:
    for statement in tables().values():
        con.execute(statement)
    con.execute("insert into catalog_edition values ($1)", [EDITION])


def _connected(path: Path, read_only: bool) -> duckdb.DuckDBPyConnection:
    try:
        con = duckdb.connect(path, read_only=read_only)
        con.execute("set enable_progress_bar = false")  # it would stand between what the command line prints
        return con
    except duckdb.Error as error:
        text = str(error)
    if "Could not set lock" in text or "different configuration" in text:
        process = re.search(r"PID \d+", text)
        raise CatalogError(
            f'The catalog "{path}" is held by another process{f" ({process[0]})" if process else ""}. '
            "Wait until its load has ended, or close it there."
        )
    raise CatalogError(
        f'"{path}" can\'t be opened as a catalog ({text.splitlines()[0]}). Check the path, or load into a new file.'
    )


def _check_edition(con: duckdb.DuckDBPyConnection, path: Path) -> None:
    found = con.execute("select 1 from duckdb_tables() where table_name = 'catalog_edition'").fetchone()
    if not found:
        raise CatalogError(f'"{path}" is a database, but not a catalog of ours. Load into a new file.')
    held = {name for (name,) in con.execute("select table_name from duckdb_tables()").fetchall()}
    if missing := sorted(set(tables()) - held):
        raise CatalogError(
            f'The catalog "{path}" is damaged: it has no table {", ".join(missing)}. '
            "Load the lists again into a new file."
        )
    edition = con.execute("select max(edition) from catalog_edition").fetchall()[0][0]
    if edition != EDITION:
        raise CatalogError(
            f'The catalog "{path}" follows edition {edition} of the tables, this program edition {EDITION}. '
            "Load the lists again into a new file."
        )
