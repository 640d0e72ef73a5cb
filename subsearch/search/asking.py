"""Requirements as the bound parameter of a statement, and its rows back by name."""

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

import duckdb

from subsearch.search.requirement import Requirement
from subsearch.search.statements import UNASKED


def needs(requirements: Sequence[Requirement], best: int = 1) -> list[dict[str, Any]]:
    """The list of needs that is bound to a statement as one parameter."""
    return [_need(number, requirement, best) for number, requirement in enumerate(requirements)]


def _need(number: int, requirement: Requirement, best: int) -> dict[str, Any]:
    values = {name: value for name, value in asdict(requirement).items() if name not in UNASKED}
    lists = {name: list(value) for name, value in values.items() if isinstance(value, tuple)}
    return {"number": number, "most": best, **values, **lists}


def rows_of(con: duckdb.DuckDBPyConnection, sql: str, parameters: dict[str, Any]) -> list[dict[str, Any]]:
    """The rows of a statement, by column name."""
    cursor = con.execute(sql, parameters)
    names = [column[0] for column in cursor.description or ()]
    return [dict(zip(names, row, strict=True)) for row in cursor.fetchall()]
