"""Ways of mounting: more room never loses a fit, a larger body never gains, and what is not known is not answered."""

from collections.abc import Callable
from dataclasses import fields, replace
from itertools import product
from math import inf, isnan, nan
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas.fits import Body, Fit, HolePair, fit_of
from subsearch.formulas.geometry import outline_round_margin_mm
from subsearch.formulas.mounting import formed, formed_to_one_side, turned, upright
from subsearch.formulas.mounting_axial import axial_flat, on_end
from subsearch.formulas.mounting_cautions import is_vented
from subsearch.formulas.mounting_flat import folded_flat, laid_flat
from subsearch.formulas.mounting_together import inside_old_can, pair_in_space
from subsearch.formulas.spaces import (
    Space,
    chord_mm,
    least_shift_mm,
    middle_shift_mm,
    rectangle_margin_mm,
    rectangular_space,
    round_in_sides_mm,
    shifted_side_margin_mm,
)

BOARD_MM = 3.0
WAYS: dict[str, Callable[[Body, Space, HolePair], Fit]] = {
    "upright": upright,
    "formed": formed,
    "formed to one side": formed_to_one_side,
    "turned": turned,
    "laid flat": lambda body, space, holes: laid_flat(body, space, holes, 0.5)[0],
    "folded flat": lambda body, space, holes: folded_flat(body, space, holes, 0.5),
    "axial flat": lambda body, space, holes: axial_flat(body, space, holes, 0.5),
    "on end": lambda body, space, holes: on_end(body, space, holes)[0],
    "pair": lambda body, space, holes: pair_in_space(body, Body(6, 6, 12), space),
    "inside a can": lambda body, space, holes: inside_old_can(body, space.free_diameter_mm, space.headroom_mm, 1),
}
every_way = pytest.mark.parametrize("way", WAYS)
half_as_many = settings(max_examples=100)  # ten ways are enough examples
lengths, rooms = some.floats(2, 20), some.floats(2, 30)
spaces = some.builds(Space, rooms, rooms, rooms, rooms, some.floats(5, 50), some.just(inf) | some.floats(10, 80))
boxes = some.builds(
    Body, lengths, lengths, lengths, some.sampled_from(["box", "axial"]), some.floats(1.5, 10),
    some.sampled_from([0.5, 0.6, 0.8, 1.0]), some.just(inf) | some.floats(4, 40), lengths,
)  # fmt: skip
bodies = boxes | boxes.map(lambda body: replace(body, across_mm=body.along_mm, shape="can"))
hole_pairs = some.builds(HolePair, some.floats(2, 25), some.just(BOARD_MM))
SIDES = [one.name for one in fields(Space)]
SIZES = ["along_mm", "across_mm", "tall_mm", "nominal_along_mm"]
# Where a size not stated counts as the least there is, or as the largest.
LEAST_TAKEN = {
    "axial flat": {"nominal_along_mm", "lead_diameter_mm"},
    **{way: {"lead_diameter_mm"} for way in ("formed", "formed to one side", "turned")},
}
ORDER = {False: 0, None: 1, True: 2}


def asked(way: str, space: Space) -> Space:
    """A space whose free diameter is known, where the way needs it."""
    return replace(space, free_diameter_mm=min(space.free_diameter_mm, 80)) if way == "inside a can" else space


def with_size(body: Body, name: str, size: float) -> Body:
    values: dict[str, Any] = {name: size}
    return replace(body, **values)


@every_way
@half_as_many
@given(bodies, spaces, hole_pairs, some.floats(0, 10))
def test_more_room_never_loses_a_fit_nor_a_margin(
    way: str, body: Body, space: Space, holes: HolePair, more: float
) -> None:
    space = asked(way, space)
    before = WAYS[way](body, space, holes)
    for side in SIDES:
        after = WAYS[way](body, replace(space, **{side: getattr(space, side) + more}), holes)
        assert not after.tightest_mm < before.tightest_mm - 1e-9, side  # unknown only for two bodies in a round space
        assert ORDER[after.fits] >= ORDER[before.fits], side


@every_way
@half_as_many
@given(bodies, spaces, hole_pairs, some.floats(0, 10))
def test_a_larger_body_never_gains(way: str, body: Body, space: Space, holes: HolePair, more: float) -> None:
    space = asked(way, space)
    before = WAYS[way](body, space, holes)
    for size in SIZES:
        if (way == "axial flat" and size == "along_mm") or (body.shape == "can" and size in ("along_mm", "across_mm")):
            continue  # a longer body leaves its leads less of a way; a can is as wide as it is long
        after = WAYS[way](with_size(body, size, getattr(body, size) + more), space, holes)
        assert not after.tightest_mm > before.tightest_mm + 1e-9, size
        assert ORDER[after.fits] <= ORDER[before.fits], size
    wider = replace(body, along_mm=body.along_mm + more, across_mm=body.across_mm + more, lead_length_mm=inf)
    thin = replace(body, lead_length_mm=inf)
    assert not WAYS[way](wider, space, holes).tightest_mm > WAYS[way](thin, space, holes).tightest_mm + 1e-9


@every_way
@half_as_many
@given(bodies, spaces, hole_pairs)
def test_a_size_not_known_is_answered_neither_yes_nor_no_for_it(
    way: str, body: Body, space: Space, holes: HolePair
) -> None:
    """Where a value fits, not knowing it is no refusal; where not knowing it is a yes, no value refuses."""
    space = asked(way, space)
    known = WAYS[way](body, space, holes).fits
    unknown = [WAYS[way](body, replace(space, **{side: nan}), holes) for side in SIDES]
    for name in {*SIZES, "spacing_mm", "lead_diameter_mm", "lead_length_mm"} - LEAST_TAKEN.get(way, set()):
        unknown.append(WAYS[way](with_size(body, name, nan), space, holes))
    unknown.append(WAYS[way](body, space, replace(holes, spacing_mm=nan)))
    for fit in unknown:
        assert not (known is True and fit.fits is False)
        assert not (known is False and fit.fits is True)
        assert (fit.fits is None) <= isnan(fit.tightest_mm)
        assert isnan(fit.tightest_mm) == any(isnan(margin) for _, margin in fit.margins)
    room = replace(space, left_mm=nan)
    if way != "inside a can":
        assert WAYS[way](body, room, holes).fits is not True


@given(bodies, spaces, hole_pairs)
def test_straight_leads_are_formed_ones_that_need_no_forming(body: Body, space: Space, holes: HolePair) -> None:
    body = replace(body, spacing_mm=holes.spacing_mm)
    straight, same = upright(body, space, holes), formed(body, space, holes)
    assert same.added_mm == 0
    drop = {"straight leads", "forming"}
    assert [one for one in straight.margins if one[0] not in drop] == [
        one for one in same.margins if one[0] not in drop
    ]


@given(bodies, spaces, hole_pairs)
def test_both_leads_to_one_side_is_never_worse_than_centred(body: Body, space: Space, holes: HolePair) -> None:
    assert formed_to_one_side(body, space, holes).tightest_mm >= formed(body, space, holes).tightest_mm


def margins_at(body: Body, space: Space, holes: HolePair, along: float, across: float) -> float:
    """The tightest margin at a shift, worked out once more: rooms, leads at 45 degrees, corner or rim in a circle."""
    moves = [np.hypot((holes.spacing_mm - body.spacing_mm) / 2 * side - along, across) for side in (-1, 1)]
    offset = max(moves)
    straight = max(0.8, body.lead_diameter_mm) if offset > 0.3 + 1e-6 else 0
    rise = offset if straight else 0
    left = space.left_mm + along - body.along_mm / 2, space.right_mm - along - body.along_mm / 2
    deep = space.front_mm + across - body.across_mm / 2, space.back_mm - across - body.across_mm / 2
    edge = np.hypot(along, across) + body.across_mm / 2
    corner = max(
        np.hypot(along + s * body.along_mm / 2, across + t * body.across_mm / 2) for s in (-1, 1) for t in (-1, 1)
    )
    far = edge if body.shape == "can" else corner
    lead = body.lead_length_mm - (straight + np.hypot(offset, rise) + holes.board_mm)
    top = space.headroom_mm - body.tall_mm - straight - rise
    return float(min(*left, *deep, top, 2.6 - offset, lead, space.free_diameter_mm - 2 * far))


@pytest.mark.parametrize("seed", range(60))
def test_no_grid_of_shifts_finds_more(seed: int) -> None:
    r = np.random.default_rng(seed)
    a, b = r.uniform(4, 12, 2)
    shape = "can" if seed % 2 else "box"
    body = Body(a, a if seed % 2 else b, 15, shape, r.uniform(2, 5), 0.6, r.choice([inf, 7.0]))
    free = inf if seed % 3 else r.uniform(10, 30)
    left, right, front, back = r.uniform(2, 8, 4)
    space = Space(left, right, front, back, r.uniform(15, 20), free)
    holes = HolePair(r.uniform(2, 6), BOARD_MM)
    fit = formed_to_one_side(body, space, holes)
    assert fit.tightest_mm == pytest.approx(margins_at(body, space, holes, *fit.shift_mm), abs=1e-9)
    grid = np.arange(-3, 3.01, 0.15)
    tried = max(margins_at(body, space, holes, x, y) for x, y in product(grid, grid))
    assert tried <= fit.tightest_mm + 1e-9


def test_what_a_shift_may_still_mend_is_not_refused() -> None:
    """Room on the left, or the length of the body, is not known; the other short side goes with a shift."""
    body, holes = Body(10, 10, 15, spacing_mm=5), HolePair(5, BOARD_MM)
    fit = formed_to_one_side(body, Space(left_mm=nan, right_mm=4), holes)
    assert fit.fits is None and fit.shift_mm[0] < -1
    assert formed_to_one_side(replace(body, along_mm=nan), Space(9, 9, 4, 9), holes).fits is None
    assert formed_to_one_side(body, Space(left_mm=nan, right_mm=2), holes).fits is False  # 3 mm: more than leads allow


@given(rooms, rooms, lengths)
def test_the_least_shift_is_the_least(left: float, right: float, size: float) -> None:
    assume(left + right >= size)
    shift = least_shift_mm(left, right, size)
    assert shifted_side_margin_mm(left, size, shift) >= -1e-9 and shifted_side_margin_mm(right, size, -shift) >= -1e-9
    less = shift * 0.99
    short = min(shifted_side_margin_mm(left, size, less), shifted_side_margin_mm(right, size, -less))
    assert shift == 0 or short < 1e-9
    middle = middle_shift_mm(left, right, 100)
    assert shifted_side_margin_mm(left, size, middle) == pytest.approx(shifted_side_margin_mm(right, size, -middle))
    assert abs(middle_shift_mm(left, right, 1.0)) <= 1


@given(some.floats(5, 60), some.floats(1, 60))
def test_a_round_space_holds_its_rectangle_and_no_larger_one(free: float, side: float) -> None:
    other = chord_mm(free, side)
    if side < free:
        assert outline_round_margin_mm(free, side, other) == pytest.approx(0, abs=1e-6)
    else:
        assert other == 0


@given(rooms, rooms, rooms, rooms, lengths)
def test_one_space_as_the_other(left: float, right: float, front: float, back: float, size: float) -> None:
    """A can fits four sides exactly where it fits the largest round space in them."""
    body, holes = Body(size, size, 10, spacing_mm=5), HolePair(5, BOARD_MM)
    sides = upright(body, Space(left, right, front, back), holes)
    free = round_in_sides_mm(left, right, front, back)
    assert upright(body, Space(free_diameter_mm=free), holes).fits is sides.fits
    assert rectangular_space(left, right, 9) == Space(left / 2, left / 2, right / 2, right / 2, 9)


@given(lengths, lengths, rooms, rooms)
def test_turning_rectangle_and_body_changes_nothing(along: float, across: float, wide: float, deep: float) -> None:
    margin = rectangle_margin_mm(wide, deep, along, across)
    assert margin == rectangle_margin_mm(deep, wide, across, along) == rectangle_margin_mm(wide, deep, across, along)
    body, holes = Body(along, across, 10, "box", 5), HolePair(5, BOARD_MM)
    as_it_is = upright(body, rectangular_space(wide, deep, 20), holes).fits
    around = upright(replace(body, along_mm=across, across_mm=along), rectangular_space(deep, wide, 20), holes).fits
    assert as_it_is is around
    assert as_it_is is not True or margin >= -1e-6


def rounded(fit: Fit) -> dict[str, float]:
    return {name: round(margin, 6) for name, margin in fit.margins}


SPACE = Space(12, 20, 9, 30, 25, 50)
CAN = Body(10.5, 10.5, 21.5, "can", 5, 0.6, 20)  # its bend reaches 1.7 mm from its end, and rises 2 mm over it
AXIAL = Body(18.5, 8.5, 8.5, "axial", lead_diameter_mm=0.6, lead_length_mm=36, nominal_along_mm=18)


def test_laid_flat_by_hand() -> None:
    """To the front or back 23.2 mm deep; to the left or right 25.7 mm from the midpoint; 11 mm high."""
    fits = {fit.way: rounded(fit) for fit in laid_flat(CAN, SPACE, HolePair(5, BOARD_MM), 0.5)}
    assert list(fits) == [f"laid flat to the {side}" for side in ("back", "right", "left", "front")]
    shallow, corner = 50 - 2 * np.hypot(5.25, 23.2), 50 - 2 * np.hypot(25.7, 5.25)
    aside = {"left": 6.75, "right": 14.75, "free diameter": round(shallow, 6), "headroom": 14}
    leads = {"forming": 2.6, "lead length": 9.55}
    assert fits["laid flat to the back"] == {**aside, "front": 9, "back": 6.8, **leads}
    assert fits["laid flat to the front"] == {**aside, "front": -14.2, "back": 30, **leads}
    in_line = {"front": 3.75, "back": 24.75, "free diameter": round(corner, 6), "headroom": 14, "lead length": 2.05}
    assert fits["laid flat to the left"] == {"left": -13.7, "right": 17.5, **in_line}
    assert fits["laid flat to the right"] == {"left": 9.5, "right": -5.7, **in_line}


def test_between_the_holes_of_an_axial_part_by_hand() -> None:
    folded = folded_flat(CAN, replace(SPACE, free_diameter_mm=inf), HolePair(30, BOARD_MM), 0.5)
    assert rounded(folded) == {
        **{"left": 1.25, "right": 9.25, "front": 3.15, "back": 24.15},
        **{"headroom": 14, "hole spacing": 3.5, "lead length": -35.55},
    }
    lying = axial_flat(AXIAL, replace(SPACE, free_diameter_mm=30), HolePair(25, BOARD_MM), 0.5)
    assert rounded(lying) == {
        **{"left": 2.75, "right": 10.75, "front": 4.75, "back": 25.75},
        **{"free diameter": round(30 - float(np.hypot(18.5, 8.5)), 6), "headroom": 16},
        **{"hole spacing": 2, "lead length": 25},
    }


def test_on_end_by_hand() -> None:
    fits = {fit.way: fit for fit in on_end(AXIAL, SPACE, HolePair(10, BOARD_MM))}
    assert list(fits) == [f"axial, on end over the {side} hole" for side in ("left", "right")]
    both = {"front": 4.75, "back": 25.75, "free diameter": 31.5, "headroom": 4.5, "hole spacing": 4.95}
    left, right = fits.values()
    assert rounded(left) == {"left": 2.75, "right": 14.7, **both, "lead length": 1.1}
    assert rounded(right) == {"left": 6.7, "right": 10.75, **both, "lead length": 1.1}
    assert (left.added_mm, left.shift_mm, right.shift_mm) == (2, (-5, 0), (5, 0))


def test_standing_by_hand() -> None:
    box = Body(7.5, 3.5, 8, "box", 5, 0.6, 6)
    fit = turned(box, Space(2, 3, 4, 5, 12, 9), HolePair(2.5, BOARD_MM))
    move = float(np.hypot(5, 2.5)) / 2
    assert rounded(fit) == {
        **{"left": 0.25, "right": 1.25, "front": 0.25, "back": 1.25, "free diameter": round(9 - np.hypot(7.5, 3.5), 6)},
        **{"headroom": round(3.2 - move, 6), "forming": round(2.6 - move, 6)},
        "lead length": round(5.2 - BOARD_MM - move * 2**0.5, 6),
    }
    straight = upright(box, SPACE, HolePair(5, BOARD_MM))
    assert rounded(straight)["straight leads"] == 0.3
    unknown = upright(replace(box, shape=None), SPACE, HolePair(5, BOARD_MM))
    assert unknown.fits is None and isnan(dict(unknown.margins)["free diameter"])


def test_together_by_hand() -> None:
    small = Body(8, 8, 14, "can")
    pair = pair_in_space(Body(10, 10, 20), small, Space(7, 10, 9, 10, 25))
    assert rounded(pair) == {"around and between": 1, "headroom": 5}
    pair = pair_in_space(Body(10, 10, 20), small, Space(headroom_mm=25, free_diameter_mm=21))
    assert rounded(pair)["around and between, round"] == 1 and pair.fits is True
    box = pair_in_space(replace(small, shape="box"), small, Space(headroom_mm=25, free_diameter_mm=21))
    assert box.fits is True and rounded(box)["around and between, round"] > 0  # the corners inside, 21 mm apart
    tight = pair_in_space(replace(small, shape="box"), small, Space(headroom_mm=25, free_diameter_mm=18.05))
    sentence = "Whether both bodies stay inside the free diameter can't be calculated: try it with the parts."
    assert tight.fits is None and tight.cautions[1] == sentence
    axial = inside_old_can(AXIAL, 12.1, 22, 1)  # 8.5 mm, a lead of 0.6 in a sleeve of 0.5 beside it, 2 mm over it
    assert rounded(axial) == {"around and between": 1, "inner height": 1.5}
    assert inside_old_can(replace(AXIAL, lead_diameter_mm=nan), 50, 50, 1).fits is None
    boxed = inside_old_can(Body(12, 5, 9, "box"), 15, 10, 1)
    assert rounded(boxed) == {"around and between": 1, "inner height": 1}
    assert inside_old_can(replace(CAN, shape=None), 30, 30, 1).fits is None


def test_cautions() -> None:
    can, holes = Body(10.5, 10.5, 20, "can", 5, 0.6), HolePair(5, BOARD_MM)
    assert upright(can, Space(headroom_mm=21), holes).cautions == ("The vent has 1 mm above it and should have 2 mm.",)
    assert upright(can, Space(headroom_mm=22), holes).cautions == ()
    assert upright(can, Space(headroom_mm=nan), holes).cautions == ("The vent should have 2 mm above it.",)
    assert upright(replace(can, vented=False), Space(headroom_mm=21), holes).cautions == ()
    careful = formed(can, Space(), HolePair(9, BOARD_MM)).cautions
    assert careful == ("The leads move by 2.0 mm each: form them with care, so that no force reaches the seal.",)
    assert formed(can, Space(), HolePair(8, BOARD_MM)).cautions == ()
    lying = (
        "Support the body against vibration.",
        "The case of a wet can is not insulated from its minus: no tracks or metal under it.",
        "The vent points sideways: turn it away from hot parts, tracks and faces.",
    )
    crossing = "Sleeve the upper lead: it crosses the lower one."
    for fit in laid_flat(can, Space(), holes, 0):
        assert fit.cautions == ((crossing, *lying) if fit.way.endswith(("left", "right")) else lying)
    assert [is_vented(Body(16.5, 16.5, 9, nominal_across_mm=n)) for n in (5, 6.3, nan)] == [False, True, True]
    nominal = Body(16.5, 16.5, 20, spacing_mm=5, nominal_across_mm=16)
    assert upright(nominal, Space(headroom_mm=22), holes).cautions == ()


def test_a_vent_that_is_not_known_is_said_to_be_looked_for() -> None:
    unstated, holes = Body(10, 10, 20, None, 5), HolePair(5, BOARD_MM)
    assert [is_vented(one) for one in (unstated, Body(nan, nan, 20), replace(unstated, across_mm=5))] == [
        None,
        None,
        False,
    ]
    look = "Whether it has a vent is not known: look, and"
    assert upright(unstated, Space(headroom_mm=21), holes).cautions == (f"{look} keep the room above it free.",)
    assert upright(unstated, Space(headroom_mm=22), holes).cautions == ()
    assert (
        f"{look} turn its end away from hot parts, tracks and faces."
        in laid_flat(unstated, Space(), holes, 0)[0].cautions
    )
    stated = upright(Body(nan, nan, 20, vented=True), Space(headroom_mm=21), holes).cautions
    assert stated == ("Keep the room above the vent free: how much it needs is not known.",)
    end = "Keep the vent's end free, and turned away from faces."
    assert end in on_end(replace(AXIAL, vented=True), SPACE, holes)[0].cautions
    assert end not in on_end(AXIAL, SPACE, holes)[0].cautions
    way_out = "Leave the vents inside a way out of the old can."
    assert way_out in inside_old_can(unstated, 30, 30, 1).cautions
    opened = inside_old_can(Body(5, 5, 9), 30, 30, 1).cautions
    assert opened[0].startswith("Never open an oil-filled part: it may hold PCB. Otherwise") and way_out not in opened


def test_what_is_said_of_a_body_lying_on_the_board() -> None:
    support, case = "Support the body against vibration.", "The case of a wet can is not insulated from its minus"
    on_board, lifted = (axial_flat(AXIAL, SPACE, HolePair(25, BOARD_MM), lift).cautions for lift in (0, 0.5))
    assert on_board[0] == support and on_board[1].startswith(case) and lifted == (support,)
    box, holes = Body(18, 6, 12, "box", 15, 0.8), HolePair(15, BOARD_MM)  # its lower lead 1.5 mm high, its bend 1.6
    low = "Lift the body by 0.1 mm more: its lower lead leaves it too low to be bent down."
    for fit in laid_flat(box, Space(), holes, 0):
        assert (low in fit.cautions) == fit.way.endswith(("left", "right"))
    assert all(low not in fit.cautions for fit in laid_flat(box, Space(), holes, 0.1))


def test_a_folded_lead_goes_round_the_body() -> None:
    """13 mm by 22 mm: the shortest way is about 46.9 mm, so 39 mm do not reach."""
    body, holes = Body(13, 13, 22, "can", 5, 0.6, 39), HolePair(27, BOARD_MM)
    assert folded_flat(body, Space(), holes, 0.5).fits is False
    needed = 39 - dict(folded_flat(body, Space(), holes, 0.5).margins)["lead length"]
    assert 46.9 < needed == pytest.approx(56.3)
    longer = "The lead must be lengthened."
    for length, said in ((39, True), (57, False), (inf, True), (nan, True)):
        assert (longer in folded_flat(replace(body, lead_length_mm=length), Space(), holes, 0.5).cautions) is said
    thick = folded_flat(Body(9, 9, 18.5, "can", 5, 1.0), Space(), HolePair(23.5, BOARD_MM), 0.5)
    assert dict(thick.margins)["hole spacing"] == pytest.approx(-1)  # 24.5 are needed
    box = Body(10, 5, 11, "box", 7.5, 0.6)
    assert rounded(folded_flat(box, Space(), holes, 0))["forming"] == -1.15
    assert folded_flat(replace(box, shape=None), Space(), holes, 0).fits is None


def test_a_thick_lead_takes_more_than_the_usual_room() -> None:
    body = Body(18.5, 8.5, 8.5, "axial", lead_diameter_mm=1.0, nominal_along_mm=18)
    fit = axial_flat(body, Space(), HolePair(23, BOARD_MM), 0)
    assert fit.fits is False and rounded(fit) == {"hole spacing": -1.5}
    assert axial_flat(body, Space(), HolePair(24.5, BOARD_MM), 0).fits is True
    assert axial_flat(replace(body, lead_diameter_mm=nan), Space(), HolePair(23, BOARD_MM), 0).fits is True
    largest = replace(body, lead_diameter_mm=nan, nominal_along_mm=nan)
    assert [axial_flat(largest, Space(), HolePair(far, BOARD_MM), 0).fits for far in (23.4, 23.5)] == [False, True]


def test_the_slope_of_a_lying_lead_and_its_care() -> None:
    """Holes 9 mm apart for leads 5 mm apart: 2 mm each, a slope of 2.83 mm on 2 mm more of room."""
    fits = {fit.way: fit for fit in laid_flat(CAN, SPACE, HolePair(9, BOARD_MM), 0.5)}
    back = fits["laid flat to the back"]
    assert rounded(back)["lead length"] == round(20 - (1.7 + 5.25 + 0.5 + BOARD_MM + 8**0.5), 6)
    assert rounded(back)["back"] == 30 - 21.5 - 1.7 - 2
    care = "The leads move by 2.0 mm each: form them with care, so that no force reaches the seal."
    assert care in back.cautions and care not in fits["laid flat to the left"].cautions


def test_the_straight_piece_before_a_bend_counts() -> None:
    space = Space(headroom_mm=20)
    for lead, straight in ((1.0, 1.0), (0.6, 0.8), (nan, 0.8)):
        body = Body(5.5, 5.5, 12, "can", 2, lead, 10)
        fit = formed(body, space, HolePair(5, BOARD_MM))
        assert fit.added_mm == pytest.approx(1.5 + straight)
        assert rounded(fit)["headroom"] == round(6.5 - straight, 6)
        assert rounded(fit)["lead length"] == round(7 - straight - 1.5 * 2**0.5, 6)
        assert formed(body, space, HolePair(2.5, BOARD_MM)).added_mm == 0


def test_two_bodies_in_a_round_space_off_the_middle_of_the_sides() -> None:
    """The circle is about the holes: of 2 mm on the left and 22 on the right, 14 lie in 24 mm, and 20 are needed."""
    can = Body(10, 10, 20, "can")
    assert pair_in_space(can, can, Space(2, 22, 6, 6, 25, 24)).fits is False
    assert pair_in_space(can, can, Space(12, 12, 6, 6, 25, 24)).fits is True
    assert pair_in_space(can, can, Space(12, 12, 11, 11, 25, 24)).fits is True
    wide = replace(can, along_mm=11.8, across_mm=11.8)
    corners = pair_in_space(wide, wide, Space(12, 12, 11, 11, 25, 24))
    assert corners.fits is None
    assert corners.cautions[1] == (
        "Whether both bodies stay inside the free diameter can't be calculated: try it with the parts."
    )
    box = Body(6, 6, 10, "box")
    assert pair_in_space(box, box, Space(9, 9, 3.5, 3.5, 25, 24)).fits is True
    assert pair_in_space(box, box, Space(9, 9, 3.5, 3.5, 25, 13)).fits is None
    assert pair_in_space(can, can, Space(nan, 12, 11, 11, 25, 24)).fits is None


@given(bodies, bodies, spaces)
def test_a_pair_that_fits_sides_and_circle_fits_each_alone(one: Body, other: Body, space: Space) -> None:
    both = pair_in_space(one, other, space)
    if both.fits:
        assert pair_in_space(one, other, replace(space, free_diameter_mm=inf)).fits is True
        assert pair_in_space(one, other, Space(free_diameter_mm=space.free_diameter_mm)).fits is not False


def test_fits_within_a_millionth_of_a_millimetre() -> None:
    assert fit_of("upright", [("left", -1e-7)]).fits is True
    assert fit_of("upright", [("left", -1e-5)]).fits is False
    assert fit_of("upright", [("left", nan), ("right", -1)]).fits is False
    assert fit_of("upright", [("left", nan), ("right", 1)]).fits is None
    assert fit_of("upright", [("left", inf)]) == Fit("upright", (), True, inf)


def test_nonsense_is_refused() -> None:
    with pytest.raises(UnknownNameError, match=r'"axail" is not a shape\. Did you mean "axial"\?'):
        Body(1, 1, 1, "axail")
    with pytest.raises(RequirementError, match=r"5 bodies inside the old can can't be calculated: only 1 to 4"):
        inside_old_can(Body(5, 5, 9), 30, 30, 5)
    with pytest.raises(RequirementError, match="2 bodies inside the old can can't"):
        inside_old_can(Body(5, 5, 9, "box"), 30, 30, 2)
