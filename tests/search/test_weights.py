"""The builder's own weights: checked, bound, and what the order follows."""

from dataclasses import FrozenInstanceError, replace
from math import inf, nan
from random import Random

import duckdb
import pytest

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.search.asking import rows_of
from subsearch.search.candidates import find
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.weights import MOST, USUAL, Weights

EVERYONE = 100_000
ASKED = Requirement(
    role="rail decoupling", capacitance_f=100e-6, rated_v=25, hole_spacing_mm=3.5, headroom_mm=16, working_c=55,
    hours_a_day=4, life_wanted_y=10, pieces=12,
)  # fmt: skip


def drawn(seed: int) -> Weights:
    dice = Random(seed)
    return Weights({one.name: dice.choice([0, 0.1, 0.5, 1, 3, 20]) for one in CONTRIBUTIONS if dice.random() < 0.8})


def test_what_is_not_said_keeps_its_usual_weight() -> None:
    assert Weights().by_name == USUAL == {one.name: one.weight for one in CONTRIBUTIONS}
    assert Weights({"lead spacing": 0}).by_name == {**USUAL, "lead spacing": 0.0}


def test_a_weight_is_frozen() -> None:
    given = {"life": 2.0}
    weights = Weights(given)
    given["life"] = 3.0
    assert weights.by_name["life"] == 2
    with pytest.raises(FrozenInstanceError):
        weights.by_name = {}  # type: ignore[misc]
    with pytest.raises(TypeError):
        weights.by_name["life"] = 3  # type: ignore[index]


def test_an_unknown_name_is_told_the_nearest() -> None:
    with pytest.raises(UnknownNameError) as told:
        Weights({"lif": 2})
    assert str(told.value) == (
        '"lif" is not a contribution to the score. Did you mean "life"? Allowed are clearance, capacitance, voltage, '
        "lead spacing, life, price or stock."
    )


@pytest.mark.parametrize(("weight", "said"), [(-0.1, "-0.1"), (inf, "inf"), (nan, "nan"), (2 * MOST, "2e+06")])
def test_a_weight_that_nothing_can_be_reckoned_with(weight: float, said: str) -> None:
    with pytest.raises(RequirementError) as told:
        Weights({"life": weight})
    assert str(told.value) == (
        f"The weight of life is {said}; allowed is 0 to 1,000,000. 0 leaves it out, 0.5 is usual."
    )


@pytest.mark.parametrize("seed", range(12))
def test_the_order_follows_the_weights(demo_con: duckdb.DuckDBPyConnection, seed: int) -> None:
    usual, weights = find(demo_con, [ASKED], EVERYONE)[0], drawn(seed)
    own = find(demo_con, [ASKED], EVERYONE, weights)[0]
    worth = {one.name: {its: (added or 0.0) / USUAL[its] for its, added in one.contributions.items()}
             for one in usual.kept}  # fmt: skip
    assert {one.name for one in own.kept} == worth.keys()
    totals = {
        name: sum(weights.by_name[its] * one for its, one in its_worth.items()) for name, its_worth in worth.items()
    }
    for one in own.kept:
        assert one.total == pytest.approx(totals[one.name], abs=1e-9)
    ranked = sorted(own.kept, key=lambda one: (-round(one.total, 9), one.part["maker"], one.part["part_number"]))
    assert [one.name for one in own.kept] == [one.name for one in ranked]
    assert (own.weights, own.sql) == (weights, usual.sql)


def test_some_weights_change_the_first_place(demo_con: duckdb.DuckDBPyConnection) -> None:
    firsts = {find(demo_con, [ASKED], 1, drawn(seed))[0].kept[0].name for seed in range(12)}
    assert len(firsts) > 2


def test_the_weights_are_bound_and_reproduce_the_answer(demo_con: duckdb.DuckDBPyConnection) -> None:
    own = find(demo_con, [ASKED], 5, Weights({"price": 7.25}))[0]
    assert "7.25" not in own.sql
    again = [row for row in rows_of(demo_con, own.sql, dict(own.parameters)) if row["answer"]]
    assert [row["total"] for row in again] == [one.total for one in own.kept]


def test_ties_fall_the_same_way_every_time(demo_con: duckdb.DuckDBPyConnection) -> None:
    nothing = Weights(dict.fromkeys(USUAL, 0.0))
    asked = [replace(ASKED, headroom_mm=headroom) for headroom in (12, 16, 20)]
    first = [found.kept for found in find(demo_con, asked, EVERYONE, nothing)]
    assert min(map(len, first)) > 3
    for kept in first:
        assert {one.total for one in kept} == {0.0}
        names = [(one.part["maker"], one.part["part_number"]) for one in kept]
        assert names == sorted(names)
    (threads,) = demo_con.execute("select current_setting('threads')").fetchall()[0]
    try:
        for number in (1, 2, 4, 1):
            demo_con.execute(f"set threads = {number}")
            assert [found.kept for found in find(demo_con, asked, EVERYONE, nothing)] == first
    finally:
        demo_con.execute(f"set threads = {threads}")


def test_the_table_of_contributions(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED], 5, Weights({"price": 2}))[0]
    table = found.contributions()
    assert [(row.name, row.weight, row.meaning) for row in table] == [
        (one.name, 2.0 if one.name == "price" else one.weight, one.meaning) for one in CONTRIBUTIONS
    ]
    for at, one in enumerate(found.kept):
        assert sum(row.added[at] or 0.0 for row in table) == pytest.approx(one.total, abs=1e-9)
