"""Columns of Python values made into a temporary table, in bulk."""

from collections.abc import Mapping, Sequence

import duckdb


def into_table(
    con: duckdb.DuckDBPyConnection,
    table: str,
    types: Mapping[str, str],
    columns: Mapping[str, Sequence[object]],
    more: bool = False,
) -> None:
    """Make a temporary table of these columns, or with `more` add them to it.

    table and the names in `types`: identifiers made from terms and numbers, never from a list. types: SQL type of
    each column. columns: values by the same names, None for null; they travel as data, whatever they hold.

    >>> con = duckdb.connect()
    >>> types = {"text": "VARCHAR", "rated_v": "DOUBLE"}
    >>> into_table(con, "small", types, {"text": ["6V3", "'"], "rated_v": ["6.3", None]})
    >>> con.execute("from small").fetchall()
    [('6V3', 6.3), ("'", None)]
    """
    from pandas import DataFrame

    cast = ", ".join(f'"{name}"::{type_} as "{name}"' for name, type_ in types.items())
    frame = DataFrame({name: list(columns[name]) for name in types}, dtype=object)
    con.register("incoming", frame)
    try:
        start = f'insert into "{table}"' if more else f'create or replace temp table "{table}" as'
        con.execute(f"{start} select {cast} from incoming")
    finally:
        con.unregister("incoming")
