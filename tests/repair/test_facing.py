"""Which way round: the plus at a hole only where it is recorded, and the mark where it then is."""

from typing import Any

import pytest
from repair.common import candidate

from subsearch.repair.facing import EITHER_WAY, NOT_RECORDED, NOT_STATED
from subsearch.repair.in_place import Placed
from subsearch.repair.placing import placed
from subsearch.search.requirement import Requirement
from subsearch.terms import FILM_PET, POLYMER, TANTALUM

NEED = Requirement(hole_spacing_mm=5.0, may_lie_flat=True)
AXIAL: dict[str, Any] = {"shape": "axial", "along_mm": 18.0, "across_mm": 6.5, "tall_mm": 6.5, "lead_diameter_mm": 0.6}
RADIAL: dict[str, Any] = {"lead_spacing_mm": 2.5, "lead_diameter_mm": 0.5}
AXIAL_NEED = Requirement(hole_spacing_mm=25.0)


@pytest.mark.parametrize(
    "text", ["left", " Left ", "the left hole", "to the left", "left-hand side", "towards the left"]
)
def test_words_for_a_hole(text: str) -> None:
    told = placed(NEED, candidate(**RADIAL), text)
    assert told.plus_at == "left"
    assert "Plus at the left hole, as recorded." in told.notes


@pytest.mark.parametrize("text", ["edge connector", "left and right", "right-hand transistor", "front", "leftover pin"])
def test_other_words_are_said_and_no_hole_is_guessed(text: str) -> None:
    told = placed(NEED, candidate(**RADIAL), text)
    assert (told.plus_at, told.stands[0].mark_faces) == ("", "")
    assert f"Plus towards {text}, as recorded: look on the board which hole that is." in told.notes


@pytest.mark.parametrize("text", [None, "", "  "])
def test_nothing_recorded_is_said(text: str | None) -> None:
    told = placed(NEED, candidate(**RADIAL), text)
    assert told.plus_at == ""
    assert NOT_RECORDED in told.notes


@pytest.mark.parametrize(
    ("way", "part", "left_plus", "right_plus"),
    [
        # the stripe of a can is minus: away from the plus
        ("upright", RADIAL, "right", "left"),
        ("leads formed", RADIAL, "right", "left"),
        ("both leads formed to one side", RADIAL, "right", "left"),
        ("turned by a quarter", RADIAL, "back", "front"),
        ("laid flat to the front", RADIAL, "right", "left"),
        ("laid flat to the back", RADIAL, "right", "left"),
        ("laid flat to the left", RADIAL, "up", "down"),  # the lower lead goes to the nearer hole
        ("laid flat to the right", RADIAL, "down", "up"),
        ("laid flat between the holes", RADIAL, "up", "down"),
        # the mark of a tantalum bead and the groove end of an axial can are plus: at the plus
        ("upright", RADIAL | {"technology": TANTALUM}, "left", "right"),
        ("lying between its holes", AXIAL, "left", "right"),
        ("on end over the left hole", AXIAL, "down", "up"),
        ("on end over the right hole", AXIAL, "up", "down"),
    ],
)
def test_where_the_mark_is(way: str, part: dict[str, Any], left_plus: str, right_plus: str) -> None:
    def faces(plus: str) -> str:
        one = placed(AXIAL_NEED if part["lead_diameter_mm"] == 0.6 else NEED, candidate({"way": way}, **part), plus)
        _lead_at_the_mark(one, plus)
        return one.stands[0].mark_faces

    assert (faces("left"), faces("right")) == (left_plus, right_plus)


def _lead_at_the_mark(told: Placed, plus: str) -> None:
    """The lead on the marked side of the body is the one that ends in the hole of the mark's sign."""
    stand = told.stands[0]
    assert stand.mark is not None
    at_plus = stand.leads[0 if plus == "left" else 1]
    others = stand.leads[1 if plus == "left" else 0]
    marked, other = (at_plus, others) if stand.mark.sign == "plus" else (others, at_plus)
    axis, sign = {"left": (0, -1), "right": (0, 1), "front": (1, -1), "back": (1, 1), "down": (2, -1), "up": (2, 1)}[
        stand.mark_faces
    ]
    assert sign * (marked.points[0][axis] - other.points[0][axis]) > 0


@pytest.mark.parametrize("part", [{"polarity": "bipolar"}, {"technology": FILM_PET, "polarity": None}])
def test_what_has_no_polarity_has_no_plus(part: dict[str, Any]) -> None:
    told = placed(NEED, candidate(**RADIAL, **part), "left")
    assert (told.plus_at, told.stands[0].mark, told.stands[0].polar) == ("", None, False)
    assert EITHER_WAY in told.notes


def test_a_mark_without_a_rule_is_looked_up_and_a_polarity_not_stated_is_said() -> None:
    told = placed(NEED, candidate(**RADIAL, technology=POLYMER), "left")
    assert (told.plus_at, told.stands[0].mark) == ("left", None)
    assert "Look up what the mark on the case means." in told.notes
    assert NOT_STATED in placed(NEED, candidate(**RADIAL, polarity=None), "left").notes


def test_an_empty_space_keeps_the_old_plus_unless_the_voltage_reverses() -> None:
    assert placed(NEED, None, "right").plus_at == "right"
    assert placed(Requirement(reverses=True), None, "right").plus_at == ""
