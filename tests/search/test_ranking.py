"""The order of the kept parts: a sum one can read, in which every contribution matters somewhere."""

from collections.abc import Callable

import duckdb
import pytest

from subsearch.repair.asking import ask
from subsearch.repair.folder import read_repair
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found, find
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.stated import EVERYTHING
from subsearch.shipped import shipped

EVERYONE = 100_000


@pytest.fixture(scope="module")
def demo_found(demo_con: duckdb.DuckDBPyConnection) -> list[Found]:
    """Every kept part of every position of the demo's repair."""
    repair = read_repair(shipped("catalog_demo") / "organ")
    asked = [ask(repair, position).requirement for position in repair.positions]
    return find(demo_con, [one for one in asked if one is not None], EVERYONE)


def first_without(found: Found, name: str | None) -> Candidate:
    """The first place when one contribution is left out, ties as the search breaks them."""

    def rank(one: Candidate) -> tuple[float, str, str]:
        left = sum(value or 0.0 for its, value in one.contributions.items() if its != name)
        return -round(left, 9), one.part["maker"], one.part["part_number"]

    return min(found.kept, key=rank)


def test_contributions_add_up_and_decide_the_order(demo_found: list[Found]) -> None:
    for found in demo_found:
        for one in (*found.kept, *found.open):
            assert one.total == pytest.approx(sum(value or 0.0 for value in one.contributions.values()), abs=1e-9)
        ranked = sorted(found.kept, key=lambda one: (-round(one.total, 9), one.part["maker"], one.part["part_number"]))
        assert [one.part["pk"] for one in found.kept] == [one.part["pk"] for one in ranked]
        assert [one.place for one in found.kept] == list(range(1, found.kept_count + 1))
        if found.kept:
            assert first_without(found, None) == found.kept[0]


@pytest.mark.parametrize("name", [one.name for one in CONTRIBUTIONS])
def test_each_contribution_changes_the_first_place_of_a_demo_position(demo_found: list[Found], name: str) -> None:
    changed = [
        found.requirement.reference
        for found in demo_found
        if found.kept and first_without(found, name).part["pk"] != found.kept[0].part["pk"]
    ]
    assert changed, f"{name} decides nothing in the demo"


def test_what_is_not_stated_adds_nothing(demo_found: list[Found]) -> None:
    unknown: dict[str, Callable[[Candidate], bool]] = {
        "life": lambda one: one.made["life_at_work_h"] is None and not one.made["not_worn_by_heat"],
        "clearance": lambda one: one.made["tightest_mm"] is None,
        "price": lambda one: one.made["cost"] is None,
    }
    everyone = [(found.requirement, one) for found in demo_found for one in (*found.kept, *found.open)]
    for name, is_unknown in unknown.items():
        asked = [one for need, one in everyone if is_unknown(one) and (name != "clearance" or need.headroom_mm)]
        assert asked, f"the demo has no candidate whose {name} can't be told"
        assert all(one.contributions[name] is None for one in asked), name


def test_a_rating_that_is_not_stated_adds_nothing() -> None:
    voltage = next(one for one in CONTRIBUTIONS if one.name == "voltage")
    sql = (
        f"select {voltage.value(EVERYTHING)} from (select null::double as rated_v) part, (select 25e0 as rated_v) need"
    )
    assert duckdb.connect().execute(sql, {voltage.parameter: 1.0}).fetchall() == [(None,)]


def test_best_parts_only_but_counts_of_all(demo_con: duckdb.DuckDBPyConnection, demo_found: list[Found]) -> None:
    requirements = [found.requirement for found in demo_found]
    for few, everyone in zip(find(demo_con, requirements, 3), demo_found, strict=True):
        assert few.kept == everyone.kept[:3]
        assert few.open == everyone.open[:3]
        assert (few.kept_count, few.open_count, few.refused_count) == (
            everyone.kept_count,
            everyone.open_count,
            everyone.refused_count,
        )


def test_asking_all_at_once_is_asking_one_by_one(demo_con: duckdb.DuckDBPyConnection, demo_found: list[Found]) -> None:
    for found in demo_found:
        alone = find(demo_con, [found.requirement], EVERYONE)[0]
        assert (alone.kept, alone.open) == (found.kept, found.open)
        assert (alone.kept_count, alone.open_count) == (found.kept_count, found.open_count)


def test_the_answer_carries_its_question(demo_con: duckdb.DuckDBPyConnection, demo_found: list[Found]) -> None:
    found = next(one for one in demo_found if one.kept)
    names = [column[0] for column in demo_con.execute(found.sql, dict(found.parameters)).description or ()]
    rows = [dict(zip(names, row, strict=True)) for row in demo_con.fetchall()]
    assert [row["fact"]["pk"] for row in rows if row["answer"]] == [one.part["pk"] for one in found.kept]


def test_nothing_asked_of_nothing(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert find(demo_con, []) == []
