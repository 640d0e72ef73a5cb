"""Requirements as the bound parameters of a statement, and its rows back by name."""

from collections.abc import Callable, Sequence
from dataclasses import asdict
from typing import Any

import duckdb

from subsearch.search.requirement import Requirement
from subsearch.search.stated import UNASKED, Stated, parameters, stated


def needs(requirements: Sequence[Requirement]) -> list[dict[str, Any]]:
    """The list of needs that is bound to a statement."""
    return [_need(number, requirement) for number, requirement in enumerate(requirements)]


def _need(number: int, requirement: Requirement) -> dict[str, Any]:
    values = {name: value for name, value in asdict(requirement).items() if name not in UNASKED}
    lists = {name: list(value) for name, value in values.items() if isinstance(value, tuple)}
    return {"number": number, **values, **lists}


def asked(
    statement: Callable[[Stated], str], requirements: Sequence[Requirement], **others: Any
) -> tuple[str, dict[str, Any]]:
    """The text of a statement for these requirements, and the values that it binds."""
    bound = needs(requirements)
    sql = statement(stated(bound))
    return sql, parameters(sql, bound, others)


def rows_of(con: duckdb.DuckDBPyConnection, sql: str, values: dict[str, Any]) -> list[dict[str, Any]]:
    """The rows of a statement, by column name."""
    cursor = con.execute(sql, values)
    names = [column[0] for column in cursor.description or ()]
    return [dict(zip(names, row, strict=True)) for row in cursor.fetchall()]
