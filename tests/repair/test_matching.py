"""Positions of one match group get the same part; where none fits all, none, and the sentence says so."""

from dataclasses import replace
from typing import Any

import duckdb
import pytest
from repair.common import position, repair

from subsearch.repair.choosing import Choice, choose
from subsearch.repair.positions import Position, Rating
from subsearch.search.candidates import find
from subsearch.search.near_misses import where_few

V63 = Rating(63.0, False)
ALIKE: dict[str, Any] = {
    "marking": "47n", "role": "timing", "capacitance_f": 47e-9, "rated_voltage": V63, "old_technology": "film PET",
    "section": "chassis", "match_group": "phase shift",
}  # fmt: skip


def place(reference: str, **values: Any) -> Position:
    return position(**(ALIKE | {"reference": reference} | values))


def chosen(con: duckdb.DuckDBPyConnection, *positions: Position) -> list[Choice]:
    return choose(con, repair(*positions))


def name(choice: Choice) -> str | None:
    return choice.candidate.name if choice.candidate else None


@pytest.fixture(scope="module")
def rooms(demo_con: duckdb.DuckDBPyConnection) -> tuple[Position, Position, Position]:
    """Three positions alike but for their room, of which the roomiest alone would take another part than the next."""
    wide, low = place("C1", headroom_mm=30.0, hole_spacing_mm=7.5), place("C2", headroom_mm=9.0)
    third = place("C3", headroom_mm=9.0, hole_spacing_mm=7.5, card="main")
    names = {name(one) for one in chosen(demo_con, *(replace(one, match_group=None) for one in (wide, low, third)))}
    assert None not in names and len(names) > 1
    return wide, low, third


def test_the_same_part_for_all(demo_con: duckdb.DuckDBPyConnection, rooms: tuple[Position, ...]) -> None:
    told = chosen(demo_con, *rooms)
    assert len({name(one) for one in told}) == 1 and name(told[0])
    for choice, others in zip(told, ("C2, C3 (main)", "C1, C3 (main)", "C1, C2"), strict=True):
        assert choice.candidate is not None and choice.found is not None
        start = f"The same part as {others} (match group phase shift): best of "
        assert choice.sentence.startswith(start)
        assert choice.sentence.endswith(f" place {choice.candidate.place} of {choice.found.kept_count} here.")
        assert not choice.candidate.pinned and choice.found.pinned is None
        assert choice.found.requirement.pinned_part_number is None


def test_the_answer_is_the_one_to_the_position_itself(
    demo_con: duckdb.DuckDBPyConnection, rooms: tuple[Position, ...]
) -> None:
    for choice in chosen(demo_con, *rooms):
        assert choice.found is not None
        again = find(demo_con, [choice.found.requirement], 10)[0]
        assert (again.kept, again.open, dict(again.parameters)) == (
            choice.found.kept,
            choice.found.open,
            dict(choice.found.parameters),
        )


def test_words_of_a_group_are_compared_without_needless_spaces(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = chosen(demo_con, place("C1"), place("C2", match_group=" phase   shift "), place("C3", match_group="other"))
    assert [one.sentence.startswith("The same part as") for one in told] == [True, True, False]
    assert told[2].sentence.startswith("Best of ")


def test_where_no_part_fits_all_nothing_is_chosen(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = chosen(demo_con, place("C1"), place("C2", capacitance_f=15e-9), place("C3", match_group=None))
    assert [name(one) for one in told][:2] == [None, None]
    for choice, other in zip(told, ("C2", "C1"), strict=False):
        assert choice.sentence.startswith(
            f"Nothing is chosen: no part fits here and in {other} (match group phase shift). Here alone "
        )
        assert choice.found is not None and choice.found.kept
    assert told[2].candidate is not None


def test_near_misses_stand_for_each_position(demo_con: duckdb.DuckDBPyConnection) -> None:
    squeezed = place("C2", headroom_mm=4.0)
    told = chosen(demo_con, place("C1"), squeezed)
    assert [name(one) for one in told] == [None, None]
    assert "Nothing fits. Nearest is " in told[1].sentence
    alone = chosen(demo_con, replace(squeezed, match_group=None))
    near, lone = (where_few(demo_con, [one.found for one in some if one.found]) for some in (told[1:], alone))
    assert near[0].sentences and near[0].sentences == lone[0].sentences


def test_the_others_follow_a_pin_that_fits_them(demo_con: duckdb.DuckDBPyConnection) -> None:
    first = chosen(demo_con, place("C1"), place("C2"))[0].found
    assert first is not None
    other = first.kept[1]
    pinned = place("C1", pinned_maker=other.part["maker"], pinned_part_number=other.part["part_number"])
    told = chosen(demo_con, pinned, place("C2"), place("C3"))
    assert [name(one) for one in told] == [other.name] * 3
    assert told[0].sentence.startswith("Pinned in positions.csv; it fits")
    assert told[1].sentence == (
        f"The same part as C1, C3 (match group phase shift), as pinned; it fits, as place 2 of {first.kept_count}."
    )
    assert told[1].found is not None and told[1].found.requirement.pinned_part_number is None


def test_a_pin_that_does_not_fit_another_is_told(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = chosen(demo_con, place("C1", match_group=None))[0].candidate
    assert found is not None
    pinned = place("C1", pinned_maker=found.part["maker"], pinned_part_number=found.part["part_number"])
    told = chosen(demo_con, pinned, place("C2", headroom_mm=2.0))
    assert [name(one) for one in told] == [found.name, None]
    assert told[1].sentence.startswith(
        f"Nothing is chosen: {found.name}, pinned for C1 (match group phase shift), does not fit here: "
        "body in the space (body "
    )


def test_pins_that_contradict_each_other_are_told(demo_con: duckdb.DuckDBPyConnection) -> None:
    first = chosen(demo_con, place("C1"), place("C2"))[0].found
    assert first is not None
    one, two = (
        place(f"C{at}", pinned_maker=part.part["maker"], pinned_part_number=part.part["part_number"])
        for at, part in enumerate(first.kept[:2], 1)
    )
    told = chosen(demo_con, one, two, place("C3"))
    assert [name(choice) for choice in told] == [first.kept[0].name, first.kept[1].name, None]
    assert told[0].sentence.endswith("Match group phase shift is pinned to different parts: compare C2, C3.")
    assert told[2].sentence == (
        "Nothing is chosen: match group phase shift is pinned to different parts "
        f"(C1 to {first.kept[0].name}; C2 to {first.kept[1].name})."
    )


def test_a_pin_the_catalog_does_not_have_is_told(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = chosen(demo_con, place("C1", pinned_part_number="Hollow 9"), place("C2"))
    assert [name(one) for one in told] == [None, None]
    assert told[1].sentence == "Nothing is chosen: the catalog has no offer of Hollow 9, pinned for C1."


def test_a_position_that_is_not_asked_is_in_no_group(demo_con: duckdb.DuckDBPyConnection) -> None:
    told = chosen(demo_con, place("C1"), place("C2", capacitance_f=None, rated_voltage=None))
    assert told[0].sentence.startswith("Best of ")
    assert told[1].candidate is None
    classless = {"mains": True, "role": None, "rated_voltage": Rating(275.0, True), "capacitance_f": 47e-9}
    told = chosen(demo_con, place("C1"), place("C2", **classless))
    assert told[0].sentence.startswith("Best of ")
    assert "Fill in safety_class" in told[1].sentence
