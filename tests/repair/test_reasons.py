"""The reasons behind the choices, asked all at once, are those that each search gives by itself."""

from dataclasses import replace

import duckdb
import pytest

from subsearch.repair.choosing import Choice, choose
from subsearch.repair.folder import read_repair
from subsearch.repair.reasons import FEW, MOST_OPEN, RUNNERS_UP, Reasons, reasons
from subsearch.search.answers import part_name
from subsearch.search.several import TOLD
from subsearch.search.weights import Weights
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
            assert (behind.refused_by, behind.nearest, behind.near, behind.two) == ((), (), (), ())
            continue
        few += 1
        assert dict(behind.refused_by) == {name: count for name, count in choice.found.refused_by().items() if count}
        assert [count for _, count in behind.refused_by] == sorted((n for _, n in behind.refused_by), reverse=True)
        assert [one.name for one in behind.nearest] == [part_name(*name) for name in choice.found.nearest(5)]
        if choice.asked.position.rated_voltage is None or choice.asked.position.dc_lowest_v is not None:
            assert behind.near == (choice.found.near_misses().sentences if choice.found.few else ())
        assert all(one.answers and all(answer.answer is False for answer in one.answers) for one in behind.nearest)
        is_asked = choice.found.few and not choice.asked.position.mains
        told_of_two = choice.found.several(TOLD).sentences if is_asked else ()
        assert behind.two == told_of_two
    assert few >= 4


def test_two_in_place_of_one_but_never_on_the_mains(told: Told, demo_con: duckdb.DuckDBPyConnection) -> None:
    choice, behind = next((choice, behind) for choice, behind in zip(*told, strict=True) if behind.two)
    assert choice.asked.position.reference == "C201" and choice.candidate is None
    assert behind.two[0].startswith("Two in parallel: ") and "of the 40 µF asked" in behind.two[0]
    live = replace(choice, asked=replace(choice.asked, position=replace(choice.asked.position, mains=True)))
    on_the_mains, as_it_is = reasons(demo_con, [live, choice])
    assert on_the_mains.near == behind.near and on_the_mains.two == () and as_it_is == behind


def test_how_firmly_the_chosen_part_stands(told: Told, demo_con: duckdb.DuckDBPyConnection) -> None:
    firmly = 0
    for choice, behind in zip(*told, strict=True):
        if choice.found and choice.candidate is not None and choice.found.kept[:1] == (choice.candidate,):
            assert behind.stability == str(choice.found.stability())
            firmly += 1
        else:
            assert behind.stability == ""
    assert firmly > 20


def test_a_repairs_own_weights_order_its_choices(demo_con: duckdb.DuckDBPyConnection) -> None:
    organ = read_repair(shipped("catalog_demo") / "organ")
    weights = Weights({"price": 5})
    own = choose(demo_con, replace(organ, weights=weights, temperature_uncertain_k=7.0))
    usual = choose(demo_con, organ)
    assert {one.found.weights == weights for one in own if one.found} == {True}
    assert {one.found.requirement.temperature_uncertain_k for one in own if one.found} == {7.0}
    names = [[one.candidate.name if one.candidate else None for one in some] for some in (own, usual)]
    assert names[0] != names[1]
    assert [one is None for one in names[0]] == [one is None for one in names[1]]
    for choice, behind in zip(own, reasons(demo_con, own), strict=True):
        if behind.stability and choice.found:
            assert behind.stability == str(choice.found.stability())


def test_a_voltage_that_was_not_measured_begins_with_what_is_marked(demo_con: duckdb.DuckDBPyConnection) -> None:
    repair = read_repair(shipped("catalog_demo") / "organ")
    position = next(one for one in repair.positions if one.name.startswith("C404"))
    choice = choose(demo_con, replace(repair, positions=(position,)))
    near = reasons(demo_con, choice)[0].near
    assert any("Marked 160 V, nothing measured: if it measures 80 V or less" in one for one in near), near
    given = choose(demo_con, replace(repair, positions=(replace(position, dc_lowest_v=0.0, ac_peak_v=100.0),)))
    assert not any("nothing measured" in one for one in reasons(demo_con, given)[0].near)


def test_every_position_without_a_choice_gets_a_near_miss_or_an_open_part(told: Told) -> None:
    without = [
        (choice.found, behind)
        for choice, behind in zip(*told, strict=True)
        if choice.candidate is None and choice.found is not None and not choice.found.kept
    ]
    assert len(without) >= 2
    assert all(behind.near or behind.opened for _, behind in without)


def test_nothing_asked_gives_no_reasons(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert reasons(demo_con, []) == []
