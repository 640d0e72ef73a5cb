"""The capacitance cells of a messy list as numbers: each distinct text by our reader, or all of them by pandas."""

from collections.abc import Callable
from math import isnan

import duckdb
import numpy
import pandas

from subsearch.catalog.heading_cells import Column
from subsearch.catalog.layouts import Layout
from subsearch.catalog.staging import read_columns

POWERS = {"p": "e-12", "n": "e-9", "u": "e-6", "µ": "e-6", "\u03bc": "e-6", "m": "e-3"}


def by_reader(con: duckdb.DuckDBPyConnection) -> int:
    """Read the distinct texts of `staged` as an intake does and join them to their lines; how many state nothing."""
    read_columns(con, Layout(1, ("Capacitance",), (Column(0, "Capacitance", "capacitance_f"),), ()))
    con.execute(
        """create or replace temp table stated as
        select line, capacitance_f, fault from staged left join reading_0 on c0 = text"""
    )
    (count,) = con.execute("select count(*) from stated where capacitance_f is null").fetchall()[0]
    return int(count)


def by_pandas(cells: "pandas.Series[str]") -> "pandas.Series[float]":
    """The same by pandas' text operations: the usual notation first, a prefix for the decimal mark where it is not."""
    usual = cells.str.extract(r"^\s*(\d+(?:[.,]\d+)?)\s*([pnuµ\u03bcm])F\s*$")
    number, prefix = usual[0].str.replace(",", "."), usual[1]
    other = cells[number.isna()].str.extract(r"^\s*(\d*)([pnuµ\u03bcm])(\d+)\s*$")
    number = number.fillna("0" + other[0] + "." + other[2])
    return pandas.to_numeric(number + prefix.fillna(other[1]).map(POWERS))


def by_pandas_distinct(cells: "pandas.Series[str]") -> "pandas.Series[float]":
    """That once for each distinct text."""
    codes, texts = pandas.factorize(cells)
    return pandas.Series(by_pandas(pandas.Series(texts)).to_numpy()[codes])


def parsing(cells: list[str]) -> dict[str, Callable[[], object]]:
    """Give ours and its rivals on these cells, each where it has them; their answers are asserted equal."""
    con, series = duckdb.connect(), pandas.Series(cells)
    con.register("given", pandas.DataFrame({"line": range(len(cells)), "c0": series}))
    con.execute("create temp table staged as from given")
    by_reader(con)
    ours = con.execute("select capacitance_f from stated order by line").fetchnumpy()["capacitance_f"]
    for rival in (by_pandas(series), by_pandas_distinct(series)):
        numpy.testing.assert_allclose(numpy.ma.filled(ours, numpy.nan), rival.to_numpy(), rtol=1e-12)
    return {
        "our reader, distinct texts": lambda: by_reader(con),
        "pandas, cell by cell": lambda: sum(map(isnan, by_pandas(series))),
        "pandas, distinct texts": lambda: sum(map(isnan, by_pandas_distinct(series))),
    }
