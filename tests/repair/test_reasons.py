"""The reasons behind the choices, asked all at once, are those that each search gives by itself."""

from dataclasses import replace

import duckdb
import pytest

from subsearch.repair.choosing import Choice, choose
from subsearch.repair.folder import read_repair
from subsearch.repair.reasons import FEW, MOST_OPEN, RUNNERS_UP, Reasons, reasons
from subsearch.search.answers import part_name
from subsearch.shipped import shipped

Told = tuple[list[Choice], list[Reasons]]


@pytest.fixture(scope="module")
def told(demo_con: duckdb.DuckDBPyConnection) -> Told:
    choices = choose(demo_con, read_repair(shipped("catalog_demo") / "organ"))
    return choices, reasons(demo_con, choices)


def test_runners_up_follow_the_choice(told: Told) -> None:
    for choice, behind in zip(*told, strict=True):
        kept = choice.found.kept if choice.found else ()
        assert behind.runners_up == kept[1 : 1 + RUNNERS_UP]


def test_a_pinned_part_is_no_runner_up(told: Told, demo_con: duckdb.DuckDBPyConnection) -> None:
    choice = next(one for one in told[0] if one.found and one.found.kept_count > 5)
    assert choice.found is not None
    pinned = replace(choice, candidate=choice.found.kept[2])
    names = [one.name for one in reasons(demo_con, [pinned])[0].runners_up]
    assert names == [choice.found.kept[place].name for place in (0, 1, 3)]


def test_open_parts_come_with_what_is_not_stated(told: Told) -> None:
    seen = 0
    for choice, behind in list(zip(*told, strict=True))[::6]:
        opened = choice.found.open[:MOST_OPEN] if choice.found else ()
        assert [one.name for one in behind.opened] == [one.name for one in opened]
        for one, against in zip(opened, behind.opened, strict=True):
            assert choice.found is not None
            why = choice.found.why(one.part["maker"], one.part["part_number"])
            assert against.answers == tuple(answer for answer in why if answer.answer is None)
            assert {answer.name for answer in against.answers} == set(one.not_stated)
            seen += 1
    assert seen > 5


def test_refusals_are_told_where_few_parts_fit(told: Told) -> None:
    few = 0
    for choice, behind in zip(*told, strict=True):
        if choice.found is None or (choice.candidate is not None and choice.found.kept_count >= FEW):
            assert (behind.refused_by, behind.nearest) == ((), ())
            continue
        few += 1
        assert dict(behind.refused_by) == {name: count for name, count in choice.found.refused_by().items() if count}
        assert [count for _, count in behind.refused_by] == sorted((n for _, n in behind.refused_by), reverse=True)
        assert [one.name for one in behind.nearest] == [part_name(*name) for name in choice.found.nearest(5)]
        assert all(one.answers and all(answer.answer is False for answer in one.answers) for one in behind.nearest)
    assert few >= 4


def test_nothing_asked_gives_no_reasons(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert reasons(demo_con, []) == []
