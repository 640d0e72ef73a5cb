"""One position without a folder gets the same cautions and the same shopping list as in a repair."""

import duckdb

from subsearch.repair.single import alone, taken
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement
from subsearch.shopping.plan import plan


def test_a_taken_part_is_bought_for_its_position(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [Requirement(reference="C9", pieces=3, capacitance_f=100e-6, rated_v=25)])[0]
    choice = taken(found, found.kept[1])
    assert choice.sentence == f"Place 2 of {found.kept_count} that fit."
    shopping = plan(demo_con, [choice])
    assert [(line.part["part_number"], line.needed, line.positions) for line in shopping.lines] == [
        (found.kept[1].part["part_number"], 3, ("C9",))
    ]


def test_an_open_part_says_what_is_not_settled(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [Requirement(capacitance_f=100e-6, rated_v=25, headroom_mm=15)])[0]
    part = next(one for one in found.open if one.not_stated == ("body",))
    assert taken(found, part).sentence.startswith("Not settled, because it is not stated: body in the space. Look")


def test_a_reservoir_calls_for_its_discharge(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [Requirement(role="reservoir", capacitance_f=1000e-6, rated_v=63)])[0]
    assert any(one.startswith("Reservoir: discharge it") for one in taken(found, found.kept[0]).cautions)


def test_a_rating_in_a_c_and_a_class_are_carried_over() -> None:
    asked = Requirement(capacitance_f=1e-7, rated_ac_v=275, safety_class="X2", role="interference suppression")
    position = alone(asked).position
    assert position.rated_voltage is not None
    assert (position.rated_voltage.ac, position.safety_class, position.polarity) == (True, "X2", None)
    assert alone(Requirement(capacitance_f=1e-6, reverses=True)).position.polarity == "bipolar"
