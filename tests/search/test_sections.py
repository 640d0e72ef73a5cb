"""Singles for a can of several sections: all find room whichever is chosen, by distances reckoned here."""

from dataclasses import replace
from itertools import combinations
from math import cos, hypot, pi, sin

import duckdb
import pytest

from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement
from subsearch.search.sections import TO_MIND, singles

CAN = Requirement(reference="C9", rated_v=35, free_diameter_mm=36.0, headroom_mm=60.0, working_c=45, life_wanted_y=5)
FOUR = {1: [(0.0, 0.0)]} | {
    many: [(cos(2 * pi * at / many), sin(2 * pi * at / many)) for at in range(many)] for many in (2, 3, 4)
}


@pytest.mark.parametrize("values", [(47e-6, 47e-6), (100e-6, 47e-6), (47e-6, 47e-6, 22e-6), (22e-6,) * 4])
def test_all_bodies_find_room_beside_each_other(demo_con: duckdb.DuckDBPyConnection, values: tuple[float, ...]) -> None:
    told = singles(demo_con, CAN, values)
    assert told.complete and told.place_mm is not None
    wide = max(
        part.made["across_max_mm"]
        if part.part["shape"] == "can"
        else hypot(*(part.made[f"{side}_max_mm"] for side in ("along", "across")))
        for _, found in told.found
        for part in found.kept
    )
    centres = [((36.0 - told.place_mm) / 2 * x, (36.0 - told.place_mm) / 2 * y) for x, y in FOUR[len(values)]]
    assert all(hypot(*at) + wide / 2 <= 18 + 1e-6 for at in centres)
    assert all(hypot(a[0] - b[0], a[1] - b[1]) >= wide - 1e-6 for a, b in combinations(centres, 2))


def test_each_section_is_asked_as_a_position_of_its_own(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = singles(demo_con, replace(CAN, capacitance_f=1.0, pieces=3, hole_spacing_mm=5.0), (47e-6, 22e-6, 47e-6))
    assert [(count, found.requirement.pieces) for count, found in told.found] == [(2, 6), (1, 3)]
    for value, (_, found) in zip((47e-6, 22e-6), told.found, strict=True):
        alone = Requirement(
            reference="C9", pieces=found.requirement.pieces, capacitance_f=value, rated_v=35, working_c=45,
            free_diameter_mm=told.place_mm, headroom_mm=60.0, life_wanted_y=5,
        )  # fmt: skip
        assert find(demo_con, [alone], 1)[0].kept == found.kept


def test_the_set_lasts_as_long_as_its_shortest_and_costs_all(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = singles(demo_con, replace(CAN, working_c=85, life_wanted_y=None), (100e-6, 4.7e-6))
    best = [found.kept[0] for _, found in told.found]
    years = min(one.made["years"] for one in best if not one.made["not_worn_by_heat"])
    assert f"the set lasts {years:.1f} years" in told.sentence and told.sentence.endswith(TO_MIND)
    assert f"{sum(one.made['cost'] for one in best):.2f} for all" in told.sentence


def test_a_section_without_a_part_is_named(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = singles(demo_con, replace(CAN, headroom_mm=3.0), (47e-6, 22e-6))
    assert not told.complete
    assert "nothing fits for 47 µF; nothing fits for 22 µF." in told.sentence and TO_MIND not in told.sentence
