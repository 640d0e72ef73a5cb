"""Every search on the demo's catalog against plain Python: kept, open, counts, and every answer on every part."""

from dataclasses import replace

import duckdb
import pytest

from brute.asking import EVERYTHING, assert_same_answers, assert_same_found, requirement
from brute.needs import Asked
from brute.oracle import FIELDS, WINDOWS, Oracle, Told, completed
from subsearch.search.candidates import Found, find
from subsearch.search.weights import Weights


@pytest.fixture(scope="module")
def together(demo_con: duckdb.DuckDBPyConnection, needs: list[Asked]) -> list[Found]:
    return find(demo_con, [requirement(need) for need in needs], best=EVERYTHING)


def test_kept_and_open(together: list[Found], needs: list[Asked], told: list[Told]) -> None:
    for found, wanted, need in zip(together, told, needs, strict=True):
        assert_same_found(found, wanted, need)


def test_one_by_one(
    demo_con: duckdb.DuckDBPyConnection, together: list[Found], needs: list[Asked], told: list[Told]
) -> None:
    for number in range(0, len(needs), 3):  # a statement of its own takes its time, and 3 meets every kind of part
        alone, one = find(demo_con, [requirement(needs[number])], best=EVERYTHING)[0], together[number]
        assert_same_found(alone, told[number], needs[number])
        assert alone.requirement == one.requirement
        assert (alone.kept, alone.open) == (one.kept, one.open)


def test_every_answer(
    demo_con: duckdb.DuckDBPyConnection, needs: list[Asked], oracle: Oracle, told: list[Told]
) -> None:
    for need, wanted in zip(needs, told, strict=True):
        assert_same_answers(demo_con, need, oracle, wanted)


def test_neither_weights_nor_uncertainty_keep_or_refuse(
    demo_con: duckdb.DuckDBPyConnection, needs: list[Asked], told: list[Told]
) -> None:
    asked = [replace(requirement(need), temperature_uncertain_k=20.0) for need in needs]
    weights = Weights({"life": 0, "price": 9, "stock": 0.5})
    for found, wanted, need in zip(find(demo_con, asked, EVERYTHING, weights), told, needs, strict=True):
        assert_same_found(found, wanted, need)


@pytest.mark.parametrize("role", WINDOWS)
@pytest.mark.parametrize("old_tolerance_pct", [None, (-2, 3), (-10, 50)])
def test_what_a_role_asks(role: str | None, old_tolerance_pct: tuple[int, int] | None) -> None:
    asked: Asked = {"role": role, "old_tolerance_pct": old_tolerance_pct, "capacitance_f": 47}
    found, wanted = requirement(asked), completed(asked)
    ends = (wanted["capacitance_low_f"], wanted["capacitance_high_f"])
    assert (found.capacitance_low_f, found.capacitance_high_f) == pytest.approx(ends, rel=1e-12)
    assert set(found.technologies or ()) == set(wanted["technologies"])


def test_the_needs_tell_something(needs: list[Asked], told: list[Told]) -> None:
    assert {name for need in needs for name in need} == set(FIELDS)
    assert sum(bool(one.kept or one.left_open) for one in told) > 0.8 * len(needs)
    assert sum(bool(one.left_open) for one in told) > 0.5 * len(needs)
    assert sorted(len(one.kept) for one in told)[len(needs) // 2] in range(1, 30)
