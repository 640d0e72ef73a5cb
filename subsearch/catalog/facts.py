"""Small questions about what a catalog holds."""

from dataclasses import dataclass
from datetime import date

import duckdb


@dataclass(frozen=True)
class Counts:
    """How much a catalog holds; `refusals` counts refused lines, not their single faults."""

    parts: int
    offers: int
    lines: int
    refusals: int


@dataclass(frozen=True)
class Refusal:
    """One fault of one line, as the table `refusal` has it; heading and term are "" where the whole line is meant."""

    line: int
    heading: str
    term: str
    found: str
    fault: str
    reason: str


def counts(con: duckdb.DuckDBPyConnection) -> Counts:
    """Give how many parts, offers, kept lines and refused lines a catalog holds; con: an open connection.

    >>> from pathlib import Path
    >>> from tempfile import TemporaryDirectory
    >>> from subsearch.catalog.store import open_to_write
    >>> with TemporaryDirectory() as folder, open_to_write(Path(folder) / "new.catalog") as con:
    ...     counts(con)
    Counts(parts=0, offers=0, lines=0, refusals=0)
    """
    rows = con.execute(
        """select (select count(*) from part), (select count(*) from offer), (select count(*) from listing),
            (select count(*) from (select distinct intake, line from refusal))"""
    ).fetchall()
    return Counts(*rows[0])


def refusals(con: duckdb.DuckDBPyConnection, intake: int) -> list[Refusal]:
    """Give the faults found in one list, in order of its lines; con: an open connection, intake: its number."""
    rows = con.execute(
        """select line, heading, term, found, fault, reason from refusal where intake = $1
        order by line, heading, term, fault""",
        [intake],
    ).fetchall()
    return [Refusal(*row) for row in rows]


@dataclass(frozen=True)
class Loaded:
    """One list that was loaded: whose, which file, the day it was seen (None: not stated), and its lines."""

    supplier: str
    file: str
    seen: date | None
    kept: int
    refused: int
    current: bool


def loaded(con: duckdb.DuckDBPyConnection) -> list[Loaded]:
    """Give every list that was loaded, in order of supplier and intake; con: an open connection.

    `current` is true where no list of the same supplier was loaded later.

    >>> from pathlib import Path
    >>> from tempfile import TemporaryDirectory
    >>> from subsearch.catalog.store import open_to_write
    >>> with TemporaryDirectory() as folder, open_to_write(Path(folder) / "new.catalog") as con:
    ...     loaded(con)
    []
    """
    rows = con.execute(
        """select supplier, file, seen, lines_kept, lines_refused, intake = max(intake) over (partition by supplier)
        from intake order by supplier, intake"""
    ).fetchall()
    return [Loaded(*row) for row in rows]
