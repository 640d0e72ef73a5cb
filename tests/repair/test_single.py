"""One position without a folder gets the same cautions and the same shopping list as in a repair."""

from dataclasses import replace

import duckdb
import pytest

from subsearch.errors import RequirementError
from subsearch.repair.cautions import NO_CLASS
from subsearch.repair.single import alone, looked_at, taken
from subsearch.repair.trial import Trial, ask_trial
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


RESERVOIR = Trial(
    {
        "reference": "C301", "role": "reservoir", "capacitance": "1000 µF", "rated_voltage": "63 V",
        "polarity": "polar", "supply_rail": "62 V", "plus_towards": "rectifier", "old_technology": "oil paper",
        "mains": "yes",
    }
)  # fmt: skip


def test_what_is_recorded_of_a_position_calls_for_its_cautions(demo_con: duckdb.DuckDBPyConnection) -> None:
    asked = ask_trial(RESERVOIR)
    assert asked.requirement is not None
    found = find(demo_con, [asked.requirement])[0]
    choice = taken(found, found.kept[0], asked)
    assert choice.asked == asked and choice.candidate == found.kept[0]
    assert choice.sentence == taken(found, found.kept[0]).sentence
    beside = " ".join(choice.cautions)
    for said in ("Mains: unplug", "The old part is oil-filled", "from 62 V to", "The old plus faced rectifier."):
        assert said in beside, said
        assert said not in " ".join(taken(found, found.kept[0]).cautions)


def test_the_corner_is_told_where_the_resistances_are_recorded(demo_con: duckdb.DuckDBPyConnection) -> None:
    asked = ask_trial(Trial({"role": "coupling", "capacitance": "1 µF", "rated_voltage": "25 V", "load_ohm": "47 k"}))
    assert asked.requirement is not None
    found = find(demo_con, [asked.requirement])[0]
    assert any(note.startswith("Low tones: with ") for note in taken(found, found.kept[0], asked).asked.notes)


@pytest.mark.parametrize("role", ["", "interference suppression"])
def test_on_the_mains_nothing_is_taken_without_its_class(role: str, demo_con: duckdb.DuckDBPyConnection) -> None:
    trial = Trial({"reference": "C9", "role": role, "capacitance": "0.1 µF", "rated_voltage": "250 V", "mains": "yes"})
    asked = ask_trial(trial)
    assert asked.requirement is not None
    found = find(demo_con, [asked.requirement])[0]
    part = (*found.kept, *found.open)[0]
    assert NO_CLASS in looked_at(found, part, asked).cautions
    with pytest.raises(RequirementError) as caught:
        taken(found, part, asked)
    assert str(caught.value) == (
        f"C9: no part is taken. {NO_CLASS} Fill in safety_class; or its role, where it is there for something else "
        "than to suppress interference."
    )


@pytest.mark.parametrize(
    ("cells", "wanted", "against"),
    [
        ({"polarity": "bipolar"}, "part.polarity = 'polar' and part.rated_v = 25", "polarity: no"),
        (
            {"safety_class": "X2", "mains": "yes"},
            "part.safety_class = 'none' and technology = 'film PP'",
            "safety class: no",
        ),
    ],
)
def test_a_part_that_can_hurt_is_never_taken(
    cells: dict[str, str], wanted: str, against: str, demo_con: duckdb.DuckDBPyConnection
) -> None:
    maker, number = demo_con.execute(f"select maker, part_number from part where {wanted} limit 1").fetchall()[0]
    pin = {"pinned_maker": maker, "pinned_part_number": number}
    asked = ask_trial(Trial({"reference": "C9", "capacitance": "10 µF", "rated_voltage": "25 V", **cells, **pin}))
    assert asked.requirement is not None
    found = find(demo_con, [asked.requirement])[0]
    assert found.pinned is not None and found.pinned.answer is False
    assert looked_at(found, found.pinned, asked).sentence.startswith("It does not fit: ")
    with pytest.raises(RequirementError, match=f"C9: {maker} {number} is not taken, since it can hurt: {against} "):
        taken(found, found.pinned, asked)


def test_another_part_that_does_not_fit_is_the_builders_own_decision(demo_con: duckdb.DuckDBPyConnection) -> None:
    maker, number = demo_con.execute(
        "select maker, part_number from part where tall_mm > 30 and polarity = 'bipolar' limit 1"
    ).fetchall()[0]
    pin = {"pinned_maker": maker, "pinned_part_number": number, "headroom_mm": "3"}
    asked = ask_trial(Trial({"capacitance": "10 µF", "polarity": "bipolar", **pin}))
    assert asked.requirement is not None
    found = find(demo_con, [asked.requirement])[0]
    assert found.pinned is not None
    choice = taken(found, found.pinned, asked)
    assert choice.candidate == found.pinned
    assert "body in the space: no" in choice.sentence and "polarity" not in choice.sentence


def test_what_was_searched_for_something_else_is_not_taken(demo_con: duckdb.DuckDBPyConnection) -> None:
    asked = ask_trial(RESERVOIR)
    assert asked.requirement is not None
    other = find(demo_con, [replace(asked.requirement, headroom_mm=60.0)])[0]
    with pytest.raises(RequirementError, match=r"C301 asks something else now than was searched for. Search again."):
        looked_at(other, other.kept[0], asked)
    pinned = find(demo_con, [replace(asked.requirement, pinned_maker="Mill", pinned_part_number="x")])[0]
    assert looked_at(pinned, pinned.kept[0], asked).candidate == pinned.kept[0]
