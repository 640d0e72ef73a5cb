"""Ways of mounting of an axial body: lying between its holes, or on end over one of them."""

from math import isnan

from subsearch.formulas.axials import bent_span_mm
from subsearch.formulas.fits import (
    Body,
    Fit,
    Footprint,
    HolePair,
    best_first,
    counted_mm,
    fit_of,
    lead_length_margins,
    room_margins,
)
from subsearch.formulas.geometry import hole_span_margin_mm
from subsearch.formulas.laid_flat import bend_height_mm, bend_reach_mm, lying_tall_mm
from subsearch.formulas.mounting_cautions import lying_cautions, on_end_cautions
from subsearch.formulas.on_end import end_lead_mm, end_reach_mm, end_span_margin_mm, on_end_tall_mm
from subsearch.formulas.spaces import Space


def bent_holes_margin_mm(nominal_mm: float, largest_mm: float, lead_diameter_mm: float, holes: HolePair) -> float:
    """What a body between its holes, a lead bent down at each end, leaves of their spacing.

    Args:
        nominal_mm: [mm] nominal length of the body.
        largest_mm: [mm] largest length of the body.
        lead_diameter_mm: [mm] diameter of the leads; where it is unknown only the usual room for bends counts.
        holes: [mm] the holes.

    Returns:
        [mm] the smaller margin of both rules; unknown where a length is.

    Holds for bodies that lie.
    Source: axial hole span, straight before a bend, lead bends

    >>> bent_holes_margin_mm(18, 18.5, 1.0, HolePair(23, 3))
    -1.5
    """
    usual = float(hole_span_margin_mm(holes.spacing_mm, nominal_mm))
    if isnan(lead_diameter_mm) or isnan(usual):
        return usual
    return min(usual, float(holes.spacing_mm - bent_span_mm(largest_mm, lead_diameter_mm)))


def axial_flat(body: Body, space: Space, holes: HolePair, lift_mm: float) -> Fit:
    """An axial body lying between its holes, both leads bent down.

    Args:
        body: [mm] the body; its nominal length counts for the hole spacing, and where the lead diameter is stated its
            largest one with both bends, too.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.
        lift_mm: [mm] gap between body and board, 0 or above.

    Returns:
        The fit, with its margins [mm].

    Holds for axial parts.
    Source: axial hole span, lead bends, vent position, plane geometry

    >>> body = Body(18.5, 8.5, 8.5, "axial", lead_diameter_mm=0.8, nominal_along_mm=18)
    >>> round(axial_flat(body, Space(headroom_mm=12), HolePair(25, 3), 0).tightest_mm, 6)
    1.7
    """
    tall = lying_tall_mm(body.tall_mm, lift_mm)
    counted = counted_mm(body.nominal_along_mm, body.along_mm)
    margins = [
        *room_margins(space, Footprint(body.along_mm, body.across_mm, tall)),
        ("hole spacing", bent_holes_margin_mm(counted, body.along_mm, body.lead_diameter_mm, holes)),
        *lead_length_margins(body, (holes.spacing_mm - body.along_mm) / 2 + tall - body.tall_mm / 2 + holes.board_mm),
    ]
    return fit_of("axial, lying", margins, lying_cautions(body, lift_mm), lift_mm)


def on_end(body: Body, space: Space, holes: HolePair) -> tuple[Fit, ...]:
    """An axial body upright over either hole, its upper lead bent back down beside it, the better hole first.

    Args:
        body: [mm] the axial body.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.

    Returns:
        Both fits, with their margins [mm].

    Holds for axial parts with wire leads.
    Source: on end, straight before a bend, lead bends

    >>> body = Body(18.5, 8.5, 8.5, "axial", lead_diameter_mm=1.0)
    >>> [fit.way for fit in on_end(body, Space(left_mm=12, right_mm=6, headroom_mm=30), HolePair(10, 3)) if fit.fits]
    ['axial, on end over the left hole']
    """
    return best_first(_on_end(body, space, holes, side) for side in ("left", "right"))


def _on_end(body: Body, space: Space, holes: HolePair, side: str) -> Fit:
    reach = bend_reach_mm(body.lead_diameter_mm)
    tall = on_end_tall_mm(body.along_mm, bend_height_mm(body.lead_diameter_mm))
    shift = holes.spacing_mm / 2 * (-1 if side == "left" else 1)
    taken = Footprint(body.across_mm, body.across_mm, tall, True, (shift, 0.0))
    room = dict(room_margins(space, taken))
    other, free = ("right", space.right_mm) if side == "left" else ("left", space.left_mm)
    if other in room:
        room[other] = free - end_reach_mm(holes.spacing_mm, body.lead_diameter_mm)
    lead = end_lead_mm(body.along_mm, holes.spacing_mm, reach, holes.board_mm)
    span = ("hole spacing", end_span_margin_mm(holes.spacing_mm, body.across_mm, body.lead_diameter_mm))
    margins = [*room.items(), span, *lead_length_margins(body, lead)]
    way, added = f"axial, on end over the {side} hole", tall - body.along_mm
    return fit_of(way, margins, on_end_cautions(body), added, taken.shift_mm)
