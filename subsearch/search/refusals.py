"""Why not: asked for apart, since carrying every refusal back costs more than the search itself."""

from difflib import get_close_matches

import duckdb

from subsearch.errors import UnknownNameError
from subsearch.search.answers import Answer, sentences
from subsearch.search.asking import needs, rows_of
from subsearch.search.criteria import CRITERION_NAMES
from subsearch.search.requirement import Requirement
from subsearch.search.statements import ANSWERS, EXPLAIN

NOES = " + ".join(f"coalesce(not answer.{name}, false)::integer" for name in CRITERION_NAMES)


def why(
    con: duckdb.DuckDBPyConnection, requirement: Requirement, maker: str | None, part_number: str
) -> tuple[Answer, ...]:
    """Every condition that is asked, answered for one named part in words and numbers.

    Raises:
        UnknownNameError: the catalog has no such part; the text names the nearest part number of that maker.
    """
    named = {"maker": maker, "part_number": part_number}
    rows = rows_of(con, EXPLAIN, {"needs": needs([requirement]), **named})
    if not rows:
        raise UnknownNameError(_unknown(con, maker, part_number))
    return sentences(rows[0])


def _unknown(con: duckdb.DuckDBPyConnection, maker: str | None, part_number: str) -> str:
    rows = con.execute("select distinct maker, part_number from part").fetchall()
    names = {f"{one} {number}".lower(): f'maker "{one or ""}", part number "{number}"' for one, number in rows}
    close = get_close_matches(f"{maker} {part_number}".lower(), names, n=1, cutoff=0.6)
    hint = f"Did you mean {names[close[0]]}?" if close else "Look them up in the list it was loaded from."
    return f'The catalog has no part "{part_number}" of the maker "{maker}". {hint}'


def nearest_refused(
    con: duckdb.DuckDBPyConnection, requirement: Requirement, most: int = 5
) -> list[tuple[str | None, str]]:
    """Maker and part number of the refused parts that come nearest: fewest conditions failed, then nearest value."""
    sql = (
        f"with {ANSWERS} select maker, part_number from answers where {NOES} > 0 "
        f"order by {NOES}, distance nulls last, maker, part_number limit $most"
    )
    return con.execute(sql, {"needs": needs([requirement]), "most": most}).fetchall()


def refused_by(con: duckdb.DuckDBPyConnection, requirement: Requirement) -> dict[str, int]:
    """How many parts each condition refuses, whatever the others say."""
    counts = ", ".join(f"count(*) filter (where not answer.{name}) as {name}" for name in CRITERION_NAMES)
    return rows_of(con, f"with {ANSWERS} select {counts} from answers", {"needs": needs([requirement])})[0]


def answers(
    con: duckdb.DuckDBPyConnection, requirement: Requirement
) -> dict[tuple[str | None, str], dict[str, bool | None]]:
    """Every condition's answer on every part of the catalog, by maker and part number."""
    sql = f"with {ANSWERS} select maker, part_number, answer from answers"
    rows = con.execute(sql, {"needs": needs([requirement])}).fetchall()
    return {(maker, number): answer for maker, number, answer in rows}
