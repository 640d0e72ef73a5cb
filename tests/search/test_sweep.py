"""The same parts at other temperatures."""

from dataclasses import replace

import duckdb

from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement
from subsearch.search.sweep import life_over

ASKED = Requirement(
    role="rail decoupling", capacitance_f=100e-6, rated_v=25, working_c=55, hours_a_day=4, headroom_mm=15
)


def test_each_part_goes_to_its_own_upper_temperature_and_never_lasts_longer_hotter(
    demo_con: duckdb.DuckDBPyConnection,
) -> None:
    parts = find(demo_con, [ASKED], 20)[0].kept
    lives = life_over(demo_con, ASKED, parts)
    for part in parts:
        its = [one for one in lives if one.name == part.name]
        assert [one.working_c for one in its] == sorted(one.working_c for one in its)
        assert (its[0].working_c, its[-1].working_c) == (30, part.part["rated_c"])
        years = [one.years for one in its if one.years is not None]
        assert years == sorted(years, reverse=True)
        assert bool(years) is (part.made["years"] is not None)
    assert {part.part["rated_c"] for part in parts} >= {85.0, 105.0}


def test_each_point_is_what_a_search_at_that_temperature_gives(demo_con: duckdb.DuckDBPyConnection) -> None:
    part = find(demo_con, [ASKED], 1)[0].kept[0]
    at_75 = next(one for one in life_over(demo_con, ASKED, [part]) if one.working_c == 75)
    pin = {"pinned_maker": part.part["maker"], "pinned_part_number": part.part["part_number"]}
    pinned = find(demo_con, [replace(ASKED, working_c=75, **pin)])[0].pinned
    assert pinned is not None
    assert at_75.years == pinned.made["years"]


def test_the_temperature_that_is_asked_is_told_as_the_search_tells_it(demo_con: duckdb.DuckDBPyConnection) -> None:
    asked = replace(ASKED, working_c=57.5, temperature_uncertain_k=4)
    parts = find(demo_con, [asked], 20)[0].kept
    here = {one.name: one for one in life_over(demo_con, asked, parts) if one.working_c == 57.5}
    for part in parts:
        its = here[part.name]
        assert (its.years, its.shortest_y, its.longest_y) == tuple(
            part.made[name] for name in ("years", "shortest_y", "longest_y")
        )
    assert any(one.shortest_y != one.longest_y for one in here.values())


def test_a_span_holds_its_figure_at_every_temperature(demo_con: duckdb.DuckDBPyConnection) -> None:
    lives = life_over(demo_con, ASKED, find(demo_con, [ASKED], 20)[0].kept)
    spans = [one for one in lives if one.shortest_y is not None and one.longest_y is not None]
    assert len(spans) > 50
    assert all((one.shortest_y or 0) <= (one.years or 0) <= (one.longest_y or 0) for one in spans)


def test_no_part_is_asked_hotter_than_it_or_a_requirement_may_be(demo_con: duckdb.DuckDBPyConnection) -> None:
    part = find(demo_con, [ASKED], 1)[0].kept[0]
    too_hot = replace(ASKED, working_c=part.part["rated_c"] + 2)
    assert max(one.working_c for one in life_over(demo_con, too_hot, [part])) == part.part["rated_c"]
    very_hot = replace(part, part={**part.part, "rated_c": 175.0})
    assert max(one.working_c for one in life_over(demo_con, ASKED, [very_hot])) == 150


def test_no_parts_no_rows(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert life_over(demo_con, ASKED, []) == []
