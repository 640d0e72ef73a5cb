"""What the way of mounting asks of the builder's hands, in words."""

import pytest
from repair.common import candidate

from subsearch.repair.fitting import MEASURE, PLATED_TOO, fitting_cautions, free_above_mm
from subsearch.search.requirement import Requirement

FORM = "Form each lead by up to {0} mm to meet its hole; the body then stands at least {1} mm higher."
CARE = "The leads move by 2.1 mm each: form them with care, so that no force reaches the seal."
OPEN = "The lead is too thick for its hole: open the hole."
LOOK = ("Look whether the hole is plated. Unplated: open the hole.", "Plated: this lead is too thick.")


@pytest.mark.parametrize(
    ("offset", "said"),
    [(0.2, []), (1.25, [FORM.format("1.25", "2.05")]), (2.1, [FORM.format("2.1", "2.9"), CARE])],
)
def test_formed_leads_are_said_with_their_height(offset: float, said: list[str]) -> None:
    formed = candidate({"way": "leads formed", "worked_mm": offset})
    assert list(fitting_cautions(Requirement(hole_spacing_mm=5.0), formed)) == said
    straight = candidate({"worked_mm": offset})
    assert list(fitting_cautions(Requirement(hole_spacing_mm=5.0), straight)) == []


@pytest.mark.parametrize(
    ("margin", "plated", "said"),
    [
        (-1e-9, False, ()),
        (-0.1, False, (OPEN,)),
        (-0.1, None, LOOK),
        (-0.1, True, ()),
        (None, False, (MEASURE,)),
        (None, None, (MEASURE + PLATED_TOO,)),
    ],
)
def test_a_hole_to_be_opened_is_said(margin: float | None, plated: bool | None, said: tuple[str, ...]) -> None:
    need = Requirement(hole_diameter_mm=0.8, hole_plated=plated)
    assert tuple(fitting_cautions(need, candidate({"hole_margin_mm": margin}))) == said
    assert tuple(fitting_cautions(Requirement(), candidate({"hole_margin_mm": None}))) == ()
    assert tuple(fitting_cautions(None, candidate({"hole_margin_mm": None}))) == ()


def test_the_vent_has_what_the_way_leaves() -> None:
    made = {"headroom_margin_mm": 3.0, "formed_headroom_margin_mm": 1.0}
    assert free_above_mm(candidate({"way": "leads formed"} | made)) == 1.0
    assert free_above_mm(candidate(made)) == 3.0


@pytest.mark.parametrize(
    ("side", "lead", "crossing"), [("front", "side_lead_mm", False), ("left", "end_lead_mm", True)]
)
def test_a_part_laid_flat_is_held_and_turned_and_its_vent_is_not_above(side: str, lead: str, crossing: bool) -> None:
    sizes = {
        "along_max_mm": 10.5,
        "across_max_mm": 10.5,
        "tall_max_mm": 17.5,
        "offset_mm": 0.0,
        lead: 22.34,
        "thick_mm": 0.6,
        "spacing_mm": 5.0,
    }
    lying = candidate(
        {"way": f"laid flat to the {side}"} | sizes, across_mm=10.0, lead_diameter_mm=0.6, lead_spacing_mm=5.0
    )
    said = list(fitting_cautions(Requirement(hole_spacing_mm=5.0, may_lie_flat=True), lying))
    assert said[:2] == [
        f"Mounted laid flat to the {side} of its holes, its leads bent down, 0.5 mm off the board.",
        "Its leads need 22.3 mm from the body on.",
    ]
    assert "Support the body against vibration." in said
    assert any("vent" in one for one in said)
    assert any("crosses" in one for one in said) is crossing
    assert free_above_mm(lying) is None
