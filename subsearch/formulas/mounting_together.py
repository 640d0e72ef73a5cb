"""Ways of mounting more than one body: two in a free room, or one to four equal ones inside an emptied old can."""

from math import cos, inf, isinf, isnan, nan, radians, sin

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import least, most
from subsearch.formulas.fits import Body, Fit, fit_of
from subsearch.formulas.geometry import NEAR_MM, headroom_margin_mm
from subsearch.formulas.inside_can import PACKING, box_inside_can_margin_mm, inside_can_margin_mm
from subsearch.formulas.laid_flat import bend_height_mm
from subsearch.formulas.mounting_cautions import SLEEVE, is_vented, vent_cautions
from subsearch.formulas.on_end import SLEEVE_MM, on_end_tall_mm
from subsearch.formulas.spaces import Space
from subsearch.formulas.two_bodies import Outline, two_bodies, two_cans_round_margin_mm

JOINED = (
    "The leads of both go to one pair of holes: see that all of them reach and go through, "
    "and never open a plated hole."
)
EMPTIED = (
    "Never open an oil-filled part: it may hold PCB. "
    "Otherwise empty and clean the old can, and insulate the new bodies from it and from each other."
)
WAY_OUT = "Leave the vents inside a way out of the old can."
OUTSIDE_ROUND = "Whether both bodies stay inside the free diameter can't be calculated: try it with the parts."
ANGLES = range(2, 90, 2)  # degrees; rectangles from long and flat to narrow and deep
Outlines = tuple[Outline, Outline]


def pair_in_space(first: Body, second: Body, space: Space) -> Fit:
    """Two upright bodies in the free room, at their best places.

    Args:
        first: [mm] one body.
        second: [mm] the other body.
        space: [mm] the free room about the midpoint of the holes.

    Returns:
        The fit; its gap [mm] is the smallest between the bodies and to each wall. Where sides and a free diameter are
        asked, the places that suit the sides must lie inside the diameter too, or the fit is not known.

    Holds for bodies that need not stand over their holes.
    Source: two bodies in a rectangle, plane geometry

    >>> can = Body(10, 10, 20)
    >>> pair_in_space(can, can, Space(11, 12, 6, 6, 25)).margins
    (('around and between', 1.0), ('headroom', 5.0))
    """
    one, other = (Outline(body.along_mm, body.across_mm, body.shape == "can") for body in (first, second))
    left, right, front, back = _cut_sides(space)
    placed = two_bodies(one, other, left + right, front + back)
    margins, cautions = [("around and between", placed.margin_mm)], [JOINED]
    if not isinf(space.free_diameter_mm):
        gap = _round_gap((one, other), space)
        margins.append(("around and between, round", gap))
        if isnan(gap):
            cautions.append(OUTSIDE_ROUND)
    tall = float(most(first.tall_mm, second.tall_mm))
    margins.append(("headroom", headroom_margin_mm(space.headroom_mm, tall)))
    for body in (first, second):
        cautions += vent_cautions(body, headroom_margin_mm(space.headroom_mm, body.tall_mm))
    return fit_of("two bodies", margins, dict.fromkeys(cautions))


def inside_old_can(body: Body, inner_diameter_mm: float, inner_tall_mm: float, cans: int) -> Fit:
    """One body, or up to four equal cans, upright inside the emptied can of an old capacitor.

    Args:
        body: [mm] the new body, of which there are as many as said.
        inner_diameter_mm: [mm] inner diameter of the old can.
        inner_tall_mm: [mm] free height inside it.
        cans: [none] how many equal bodies go in, 1 to 4; of boxes and axial bodies 1.

    Returns:
        The fit; its gap [mm] is the smallest between the bodies and to the wall.

    Raises:
        RequirementError: another number of bodies.

    Holds for round cans; an axial body stands on end, its upper lead bent back down in a sleeve beside it.
    Source: equal circles in a circle, on end, plane geometry

    >>> inside_old_can(Body(11, 11, 20), 25, 40, 2).margins
    (('around and between', 1.0), ('inner height', 20.0))
    """
    if cans not in range(1, (len(PACKING) if body.shape in {"can", None} else 1) + 1):
        raise RequirementError(
            f"{cans} bodies inside the old can can't be calculated: only 1 to {len(PACKING)} equal cans, "
            "or 1 box or axial body. Give one of these."
        )
    across, tall = float(most(body.along_mm, body.across_mm)), body.tall_mm
    cautions = [EMPTIED]
    if body.shape == "axial":
        across = float(most(body.across_mm, body.tall_mm)) + body.lead_diameter_mm + 2 * SLEEVE_MM
        tall = float(on_end_tall_mm(body.along_mm, bend_height_mm(body.lead_diameter_mm)))
        cautions.append(SLEEVE)
    gap = float(inside_can_margin_mm(inner_diameter_mm, across, cans)) if body.shape is not None else nan
    if body.shape == "box":
        gap = float(box_inside_can_margin_mm(inner_diameter_mm, body.along_mm, body.across_mm))
    height = float(headroom_margin_mm(inner_tall_mm, tall))
    cautions += [*([] if is_vented(body) is False else [WAY_OUT]), *vent_cautions(body, height)]
    return fit_of("inside the old can", [("around and between", gap), ("inner height", height)], cautions)


def _cut_sides(space: Space) -> tuple[float, float, float, float]:
    """The four sides, no farther than the free diameter reaches, which is centred as they are."""
    left, right, front, back = (
        float(least(side, space.free_diameter_mm / 2)) if space.free_diameter_mm < inf else side
        for side in (space.left_mm, space.right_mm, space.front_mm, space.back_mm)
    )
    return left, right, front, back


def _round_gap(pair: Outlines, space: Space) -> float:
    """The gap to the free diameter and between the bodies; unknown where no places are found that keep inside it.

    Two cans with no side nearer than the diameter have a law of their own. Else the bodies are placed in rectangles
    inside the round space, as far as the sides leave them; so a wider space never loses a place.
    """
    free = space.free_diameter_mm
    sides = (space.left_mm, space.right_mm, space.front_mm, space.back_mm)
    if all(body.is_round for body in pair):
        alone = float(two_cans_round_margin_mm(free, pair[0].across_mm, pair[1].across_mm))
        if alone < -NEAR_MM or all(side >= free / 2 for side in sides):
            return alone
    gap = max((_gap_in(pair, space, radians(angle)) for angle in ANGLES), key=lambda gap: -inf if isnan(gap) else gap)
    return gap if gap >= -NEAR_MM else nan


def _gap_in(pair: Outlines, space: Space, angle: float) -> float:
    """The gap in the rectangle whose corners lie on the free diameter at an angle, cut by the sides."""
    along, across = (space.free_diameter_mm / 2 * turn(angle) for turn in (cos, sin))
    left, right = (float(least(side, along)) for side in (space.left_mm, space.right_mm))
    front, back = (float(least(side, across)) for side in (space.front_mm, space.back_mm))
    return two_bodies(*pair, left + right, front + back).margin_mm
