"""Why not: asked for apart, since carrying every refusal back costs more than the search itself."""

from collections.abc import Sequence
from difflib import get_close_matches
from functools import partial

import duckdb

from subsearch.errors import UnknownNameError
from subsearch.search import explaining
from subsearch.search.answers import Answer, sentences
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.criteria import CRITERION_NAMES
from subsearch.search.requirement import Requirement

NOES = " + ".join(f"coalesce(not answer.{name}, false)::integer" for name in CRITERION_NAMES)


def why(
    con: duckdb.DuckDBPyConnection, asked: Sequence[tuple[Requirement, str | None, str]]
) -> list[tuple[Answer, ...]]:
    """For each requirement with a maker and part number, every condition asked, answered in words: in one statement.

    Raises:
        UnknownNameError: the catalog has no such part; the text names the nearest part number of that maker.
    """
    if not asked:
        return []
    named = [{"number": at, "maker": maker, "part_number": part} for at, (_, maker, part) in enumerate(asked)]
    rows = rows_of(con, *asked_of(explaining.explain, [requirement for requirement, _, _ in asked], named=named))
    by_number = {row["number"]: row for row in rows}
    for number, (_, maker, part_number) in enumerate(asked):
        if number not in by_number:
            raise UnknownNameError(_unknown(con, maker, part_number))
    return [sentences(by_number[number], requirement) for number, (requirement, _, _) in enumerate(asked)]


def _unknown(con: duckdb.DuckDBPyConnection, maker: str | None, part_number: str) -> str:
    rows = con.execute("select distinct maker, part_number from part").fetchall()
    names = {f"{one or ''} {number}".lower(): f'maker "{one or ""}", part number "{number}"' for one, number in rows}
    close = get_close_matches(f"{maker or ''} {part_number}".lower(), names, n=1, cutoff=0.6)
    hint = f"Did you mean {names[close[0]]}?" if close else "Look them up in the list it was loaded from."
    return f'The catalog has no part "{part_number}" of the maker "{maker or ""}". {hint}'


def nearest_refused(
    con: duckdb.DuckDBPyConnection, requirements: Sequence[Requirement], most: int = 5
) -> list[list[tuple[str | None, str]]]:
    """For each requirement, maker and part number of the refused parts that come nearest.

    Nearest are those that fail the fewest conditions, among them those with the nearest value.
    """
    nearest = (
        "select number, maker, part_number from (select number, maker, part_number, row_number() over "
        f"(partition by number order by {NOES}, distance nulls last, maker, part_number) as place from answers "
        f"where {NOES} > 0) where place <= $most order by number, place"
    )
    found: list[list[tuple[str | None, str]]] = [[] for _ in requirements]
    if requirements:
        sql, values = asked_of(partial(explaining.answers, last=nearest), requirements, most=most)
        for number, maker, part in con.execute(sql, values).fetchall():
            found[number].append((maker, part))
    return found


def refused_by(con: duckdb.DuckDBPyConnection, requirements: Sequence[Requirement]) -> list[dict[str, int]]:
    """For each requirement, how many parts each condition refuses, whatever the others say."""
    counts = ", ".join(f"count(*) filter (where not answer.{name}) as {name}" for name in CRITERION_NAMES)
    each = partial(explaining.answers, last=f"select number, {counts} from answers group by number")
    rows = rows_of(con, *asked_of(each, requirements)) if requirements else []
    by_number = {row["number"]: row for row in rows}  # without a row where the catalog is empty
    return [
        {name: by_number[number][name] if number in by_number else 0 for name in CRITERION_NAMES}
        for number in range(len(requirements))
    ]


def answers(
    con: duckdb.DuckDBPyConnection, requirement: Requirement
) -> dict[tuple[str | None, str], dict[str, bool | None]]:
    """Every condition's answer on every part of the catalog, by maker and part number."""
    every = partial(explaining.answers, last="select maker, part_number, answer from answers")
    sql, values = asked_of(every, [requirement])
    return {(maker, number): answer for maker, number, answer in con.execute(sql, values).fetchall()}
