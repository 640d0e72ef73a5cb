"""Sizes and leads: what must hold whatever the numbers are, and words and errors of the functions on plain numbers."""

from collections.abc import Callable
from math import hypot, isnan, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas import axials, boxes, cans, holes, leads
from subsearch.formulas.geometry import AXIAL_LEADS_MM, axial_span_mm, lead_offset_mm
from subsearch.formulas.leaning import lead_angle_deg

Law = Callable[[float], float]
EITHER = ("Look whether the hole is plated. Unplated: open the hole.", "Plated: this lead is too thick.")
offsets = some.one_of(some.floats(0, 5), some.sampled_from([0.0, 0.25, 0.3, 0.3000001, 1.6, 2.6]))
spacings, shifts = some.floats(0.5, 40), some.floats(-5, 5)
diameters = some.one_of(some.floats(0.3, 3), some.sampled_from([0.45, 0.5, 0.6, 0.8, 1.0, 1.2]))
boards = some.floats(0.5, 5)


@given(offsets, offsets, boards)
def test_a_larger_offset_never_needs_a_shorter_lead_nor_stands_lower(one: float, other: float, board: float) -> None:
    small, large = sorted((one, other))
    assert leads.formed_height_mm(large) >= leads.formed_height_mm(small) >= 0
    assert leads.needed_lead_mm(large, board) >= leads.needed_lead_mm(small, board) >= board
    assert leads.forming_margin_mm(large) <= leads.forming_margin_mm(small)
    assert leads.lead_length_margin_mm(15, large, board) <= leads.lead_length_margin_mm(15, small, board)
    ranks = [leads.CLASSES.index(leads.forming_class(offset)) for offset in (small, large)]
    assert ranks == sorted(ranks)


@given(offsets, boards)
def test_class_height_and_margin_tell_the_same(offset: float, board: float) -> None:
    word, height = leads.forming_class(offset), leads.formed_height_mm(offset)
    assert (word == "straight") == (height < offset or offset == 0)
    assert (word == "too far") == (leads.forming_margin_mm(offset) < -1e-6)
    assert hypot(offset, height) + board == pytest.approx(leads.needed_lead_mm(offset, board))


@given(spacings, spacings, shifts, shifts)
def test_a_shift_costs_the_same_either_way_and_none_is_the_plain_offset(
    spacing: float, holes_apart: float, along: float, across: float
) -> None:
    plain = lead_offset_mm(spacing, holes_apart)
    worst = leads.worst_offset_mm(spacing, holes_apart, along, across)
    assert leads.worst_offset_mm(spacing, holes_apart, 0, 0) == pytest.approx(plain)
    assert leads.worst_offset_mm(spacing, holes_apart, -along, -across) == worst
    assert leads.worst_offset_mm(holes_apart, spacing, along, across) == pytest.approx(worst)
    assert worst >= plain - 1e-9
    assert worst == pytest.approx(hypot(plain + abs(along), across))


@given(spacings, spacings, shifts, shifts)
def test_offsets_are_the_distances_from_leads_to_holes(
    spacing: float, holes_apart: float, along: float, across: float
) -> None:
    """By points in the plane, the holes on one line about 0."""
    right = hypot(along + spacing / 2 - holes_apart / 2, across)
    left = hypot(along - spacing / 2 + holes_apart / 2, across)
    assert leads.shifted_offset_mm(spacing, holes_apart, along, across) == pytest.approx(right, abs=1e-9)
    assert leads.shifted_offset_mm(spacing, holes_apart, -along, across) == pytest.approx(left, abs=1e-9)
    assert leads.worst_offset_mm(spacing, holes_apart, along, across) == pytest.approx(max(left, right), abs=1e-9)


@given(some.floats(0, 30), some.floats(0, 30))
def test_tenths_of_a_millimetre_meet_their_limits(spacing: float, farther: float) -> None:
    """Spacings on a grid of 0.1 mm: a limit that is met to the last digit is met, whatever the float says."""
    spacing = round(spacing, 1)
    limits = ((0.6, "straight"), (3.2, "formed"), (5.2, "formed with caution"))
    for twice, word in limits:
        assert leads.forming_class(lead_offset_mm(spacing, round(spacing + twice, 1))) == word
        assert leads.forming_class(lead_offset_mm(spacing, round(spacing + twice + 0.1, 1))) != word
    assert leads.formed_height_mm(lead_offset_mm(spacing, round(spacing + 0.6, 1))) == 0


@given(diameters, diameters)
def test_a_thicker_lead_never_has_a_smaller_hole_nor_a_tighter_bend(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    for level in holes.PLATED_CLEARANCE_MM:
        assert holes.smallest_hole_mm(thick, level) >= holes.smallest_hole_mm(thin, level) > thin
    assert holes.smallest_hole_mm(thin, "A") > holes.smallest_hole_mm(thin, "B") > holes.smallest_hole_mm(thin, "C")
    assert holes.lead_hole_margin_mm(2, thick) <= holes.lead_hole_margin_mm(2, thin)
    assert leads.bend_radius_mm(thick) >= leads.bend_radius_mm(thin) >= thin
    assert leads.straight_before_bend_mm(thick) >= leads.straight_before_bend_mm(thin) >= thin
    assert axials.bent_span_mm(18, thick) >= axials.bent_span_mm(18, thin) > 18


@given(diameters, some.sampled_from("ABC"))
def test_the_smallest_plated_hole_takes_its_lead(lead: float, level: str) -> None:
    hole = holes.smallest_hole_mm(lead, level)
    assert holes.hole_answer(hole, lead, 1) == holes.HoleAnswer(True)
    assert holes.thickest_lead_mm(hole) >= lead - 1e-9
    assert holes.lead_hole_margin_mm(hole, holes.thickest_lead_mm(hole)) == pytest.approx(0, abs=1e-9)


@given(diameters, diameters)
def test_a_hole_that_is_too_small_is_opened_or_refused(lead: float, hole: float) -> None:
    plain, plated, either = (holes.hole_answer(hole, lead, told) for told in (0, 1, nan))
    if holes.lead_hole_margin_mm(hole, lead) >= -1e-6:
        assert plain == plated == either == holes.HoleAnswer(True)
    else:
        assert plain == holes.HoleAnswer(True, ("The lead is too thick for its hole: open the hole.",))
        assert plated == holes.HoleAnswer(False, ("The lead is too thick for its plated hole.",))
        assert either == holes.HoleAnswer(True, EITHER)


@given(offsets, some.floats(0.1, 20), some.floats(0.1, 20))
def test_a_longer_straight_lead_leans_less(offset: float, one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert 0 <= lead_angle_deg(offset, long) <= lead_angle_deg(offset, short) < 90
    assert lead_angle_deg(short, short) == pytest.approx(45)


@pytest.mark.parametrize(
    "law", [cans.can_spacing_mm, cans.can_lead_mm, axials.axial_lead_mm, cans.snap_in_spacing_mm, axial_span_mm]
)
@given(one=some.floats(1, 45), other=some.floats(1, 45))
def test_tables_rise(law: Law, one: float, other: float) -> None:
    small, large = sorted((one, other))
    if not isnan(law(small) + law(large)):
        assert law(large) >= law(small) > 0


@given(some.floats(4, 25))
def test_the_thickest_lead_is_at_least_the_usual_one(diameter: float) -> None:
    assert cans.can_lead_max_mm(diameter) > cans.can_lead_mm(diameter)
    assert cans.can_spacing_mm(diameter) == cans.can_spacings_mm(diameter)[0] < diameter


def test_the_tables_of_bodies_rise_and_agree() -> None:
    for rows in (cans.CAN_LEADS, boxes.FILM_BOXES, cans.CAN_SIZES, axials.AXIAL_SIZES):
        assert list(rows) == sorted(set(rows))
    for spacing, *sizes in boxes.FILM_BOXES:
        assert all(low <= high for low, high in zip(sizes[::2], sizes[1::2], strict=True))
        assert boxes.box_along_least_mm(spacing) - 0.3 <= sizes[0] + 1e-9  # 5 mm boxes are 0.3 mm shorter still
        assert sizes[1] <= boxes.box_along_most_mm(spacing)
    for column in range(1, 9):
        values = [row[column] for row in boxes.FILM_BOXES if row[0] != 10]  # their widths and heights overlap
        assert column in (3, 4, 5, 6) or values == sorted(values)
    for diameter, _ in axials.AXIAL_SIZES:
        assert axials.bent_span_mm(0, axials.axial_lead_mm(diameter)) <= AXIAL_LEADS_MM


@given(some.floats(3, 30), some.floats(5, 60))
def test_the_nearest_size_is_what_trying_each_finds(diameter: float, length: float) -> None:
    for nearest, sizes in ((cans.nearest_can_size, cans.CAN_SIZES), (axials.nearest_axial_size, axials.AXIAL_SIZES)):
        found = nearest(diameter, length)
        away = [hypot(across - diameter, along - length) for across, along in sizes]
        assert hypot(found[0] - diameter, found[1] - length) == min(away)


def test_unknown_stays_unknown() -> None:
    assert leads.forming_class(nan) == "not stated"
    for one, other in ((nan, 3.0), (3.0, nan)):
        assert isnan(lead_angle_deg(one, other))
        assert all(map(isnan, cans.nearest_can_size(one, other)))
        assert all(map(isnan, axials.nearest_axial_size(one, other)))
        for plated in (0.0, 1.0, nan):
            assert holes.hole_answer(one, other, plated) == holes.HoleAnswer(None)
    assert cans.can_spacings_mm(nan) == cans.can_spacings_mm(3) == cans.can_spacings_mm(30) == ()


@pytest.mark.parametrize(
    ("ask", "kind", "sentence"),
    [
        (
            lambda: leads.forming_class(-0.1),
            RequirementError,
            "The offset is -0.1 mm, but it can't be negative. Give 0 or more.",
        ),
        (
            lambda: lead_angle_deg(1, -3),
            RequirementError,
            "The offset is 1 mm over -3 mm, but neither can be negative. Give 0 or more for both.",
        ),
        (
            lambda: holes.smallest_hole_mm(0.6, "a"),
            UnknownNameError,
            '"a" is not a producibility level. Did you mean "A"? Allowed are A, B or C.',
        ),
        (
            lambda: boxes.film_box_mm(5, "along mots"),
            UnknownNameError,
            '"along mots" is not a size of a box. Did you mean "along most"? Allowed are along least, along most, '
            "across least, across most, tall least, tall most, lead least or lead most.",
        ),
        (
            lambda: holes.hole_answer(1, 0.6, 2),
            RequirementError,
            "Plated is 2, but allowed are 1 and 0. Leave it unknown if you can't tell.",
        ),
        (
            lambda: holes.hole_answer(0, 0.6, 1),
            RequirementError,
            "A lead of 0.6 mm in a hole of 0 mm: diameters are above 0 mm. Correct them.",
        ),
    ],
)
def test_nonsense_is_refused(ask: Callable[[], object], kind: type[Exception], sentence: str) -> None:
    with pytest.raises(kind) as caught:
        ask()
    assert str(caught.value) == sentence
