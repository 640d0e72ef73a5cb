"""The life that a search calculates in the database is what the laws give in plain Python, unknowns included."""

import random
from math import isnan, nan

import duckdb
import pytest

from subsearch.formulas.life import RATED_RISE_K, life_h, life_with_ripple_h, life_y, rise_k
from subsearch.search.derived import OF_PAIR, YEARS
from subsearch.terms import C0G, FILM_PP, HYBRID, POLYMER, TANTALUM, WET

ROWS = 10_000
UNKNOWN = 0.15


def random_rows(seed: int) -> list[dict[str, float | str | None]]:
    """Parts and needs in one row each, with 15 % of every claim not stated."""
    pick = random.Random(seed)

    def maybe(value: float | str) -> float | str | None:
        return None if pick.random() < UNKNOWN else value

    return [
        {
            "technology": maybe(pick.choice([WET, WET, WET, HYBRID, POLYMER, TANTALUM, FILM_PP, C0G])),
            "life_h": maybe(pick.choice([1000.0, 2000.0, 5000.0, 10_000.0])),
            "rated_c": maybe(pick.choice([85.0, 105.0, 125.0])),
            "life_basis": maybe(pick.choice(["endurance", "load life", "useful life"])),
            "life_reference": maybe(pick.choice(["ambient", "case"])),
            "part_ripple_a": maybe(pick.uniform(0.05, 3)),
            "part_ripple_hz": maybe(pick.choice([100.0, 120.0, 10_000.0, 100_000.0])),
            "working_c": pick.uniform(20, 80),
            "hours_a_day": pick.choice([2.0, 4.0, 8.0, 24.0]),
            "need_ripple_a": pick.choice([None, pick.uniform(0.01, 4)]),
            "need_ripple_hz": maybe(pick.choice([100.0, 120.0, 50_000.0])),
        }
        for _ in range(ROWS)
    ]


def in_python(row: dict[str, float | str | None]) -> float:
    """Life [h] by the laws, one row at a time; NaN where it can't be told or the rule does not serve the part."""
    if row["technology"] not in (WET, HYBRID, POLYMER):
        return nan
    base, rated, ripple, rating = (_known(row[n]) for n in ("life_h", "rated_c", "need_ripple_a", "part_ripple_a"))
    cool: float = life_h(base, rated, row["working_c"])
    if row["need_ripple_a"] is None:
        return cool
    if row["need_ripple_hz"] is not None and not _known(row["part_ripple_hz"]) <= 1.25 * _known(row["need_ripple_hz"]):
        rating = nan
    inside = row["life_basis"] in ("load life", "useful life") and row["life_reference"] != "case"
    hot: float = life_with_ripple_h(cool, rise_k(RATED_RISE_K, ripple, rating), RATED_RISE_K, float(inside))
    return hot


def _known(value: float | str | None) -> float:
    return value if isinstance(value, float) else nan


@pytest.mark.parametrize("seed", [1, 2])
def test_sql_and_python_give_the_same_life(seed: int) -> None:
    rows = random_rows(seed)
    con = duckdb.connect()
    con.execute("create table part (nr integer, technology varchar, life_h double, rated_c double, life_basis varchar,"
                " life_reference varchar, ripple_a double, ripple_hz double)")  # fmt: skip
    con.execute(
        "create table need (nr integer, working_c double, hours_a_day double, ripple_a double, ripple_hz double)"
    )
    con.execute(
        "insert into part select n, technology, life_h, rated_c, life_basis, life_reference, part_ripple_a,"
        " part_ripple_hz from (select unnest($rows, recursive := true), unnest(range(len($rows))) as n)",
        {"rows": rows},
    )
    con.execute(
        "insert into need select n, working_c, hours_a_day, need_ripple_a, need_ripple_hz"
        " from (select unnest($rows, recursive := true), unnest(range(len($rows))) as n)",
        {"rows": rows},
    )
    found = con.execute(
        f"select life_at_work_h, {YEARS} from (select *, {OF_PAIR['life_at_work_h']} as life_at_work_h "
        "from part join need using (nr)) as part join need using (nr) order by nr"
    ).fetchall()
    unknown = 0
    for row, (in_sql, years_in_sql) in zip(rows, found, strict=True):
        expected = in_python(row)
        years = life_y(expected, row["hours_a_day"])
        if isnan(expected):
            unknown += 1
            assert in_sql is None and years_in_sql is None, row
        else:
            assert in_sql == pytest.approx(expected, rel=1e-9), row
            assert years_in_sql == pytest.approx(years, rel=1e-9), row
    assert ROWS * 0.2 < unknown < ROWS * 0.8  # both kinds were met
