"""Ways of mounting with the leads down: straight, formed to other holes, both formed to one side, a box turned.

A box stands with the line of its leads in the line of the holes, since the holes fix it; half a turn changes nothing.
A quarter turn needs both leads formed, and is a way of its own.
"""

from collections.abc import Iterable
from math import inf, isnan
from typing import NamedTuple

from subsearch.formulas.carriers import Carrier
from subsearch.formulas.fits import Body, Fit, Footprint, HolePair, fit_of, lead_length_margins, room_margins
from subsearch.formulas.geometry import STRAIGHT_OFFSET_MM, lead_offset_mm
from subsearch.formulas.leads import (
    CAUTION_OFFSET_MM,
    formed_height_mm,
    forming_margin_mm,
    needed_lead_mm,
    straight_before_bend_mm,
    worst_offset_mm,
)
from subsearch.formulas.mounting_cautions import forming_cautions, vent_cautions
from subsearch.formulas.spaces import Space, least_shift_mm

HALVINGS = 40  # of the search for the best shift: finer than a millionth of a millimetre
ROUNDING_MM = 1e-9
TO_ONE_SIDE = "both leads formed to one side"
Shift = tuple[float, float]


class Leads(NamedTuple):
    """What the leads leave, each margin by its name, and the larger offset of the two [mm]."""

    margins: list[tuple[str, float]]
    offset_mm: float


def turned_offset_mm(spacing_mm: Carrier, hole_spacing_mm: Carrier) -> Carrier:
    """Offset of each lead of a body that stands turned by a quarter over its holes.

    Args:
        spacing_mm: [mm] lead spacing of the part, as delivered; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.

    Returns:
        [mm] the offset of each lead; unknown where an input is.

    Holds for a body centred on its holes.
    Source: plane geometry

    >>> turned_offset_mm(3, 4)
    2.5
    """
    return (spacing_mm**2 + hole_spacing_mm**2) ** 0.5 / 2


def upright(body: Body, space: Space, holes: HolePair) -> Fit:
    """A body as it was made, centred on its holes, its leads straight.

    Args:
        body: [mm] the body.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.

    Returns:
        The fit, with its margins [mm].

    Holds for cans and boxes with wire leads.
    Source: plane geometry, leads into other holes

    >>> upright(Body(10.5, 10.5, 22, spacing_mm=5), Space(headroom_mm=25), HolePair(5, 3)).tightest_mm
    0.3
    """
    offset = float(lead_offset_mm(body.spacing_mm, holes.spacing_mm))
    margins = [("straight leads", STRAIGHT_OFFSET_MM - offset), *lead_length_margins(body, holes.board_mm)]
    taken = Footprint(body.along_mm, body.across_mm, body.tall_mm, _is_round(body))
    return _standing("upright", body, space, taken, Leads(margins, 0.0))


def formed(body: Body, space: Space, holes: HolePair) -> Fit:
    """A body centred on its holes, its leads formed to their spacing.

    Args:
        body: [mm] the body.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.

    Returns:
        The fit, with its margins and the height it adds [mm].

    Holds for cans and boxes with wire leads, not for the tags of snap-in cans. The rise is a floor: the straight piece
    before the bend, 0.8 mm where the lead diameter is not stated, and then the offset.
    Source: formed leads, straight before a bend

    >>> round(formed(Body(5.5, 5.5, 12, spacing_mm=2), Space(headroom_mm=20), HolePair(5, 3)).added_mm, 6)
    2.3
    """
    return _formed("leads formed", body, space, holes, (0.0, 0.0))


def formed_to_one_side(body: Body, space: Space, holes: HolePair) -> Fit:
    """A body beside its holes, both leads formed to one side: at the shift that leaves the largest tightest margin.

    Args:
        body: [mm] the body.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.

    Returns:
        The fit, with its margins, its shift and the height it adds [mm].

    Holds for shifts in either direction or both. If a margin is to be left on every side, the least shift that leaves
    it is the best one, since every other margin only falls with the shift; so the margin is found by halving.
    Source: formed leads, plane geometry

    >>> body = Body(10, 10, 20, spacing_mm=5)
    >>> fit = formed_to_one_side(body, Space(left_mm=4, right_mm=9), HolePair(5, 3))
    >>> round(fit.shift_mm[0], 6), round(fit.tightest_mm, 6)
    (1.8, 0.8)
    """
    best = low = _formed(TO_ONE_SIDE, body, space, holes, (0.0, 0.0))
    sides = [margin for name, margin in low.margins if name in ("left", "right", "front", "back")]
    least, high = _known_least(sides), CAUTION_OFFSET_MM
    for _ in range(HALVINGS if least < high else 0):
        middle = (least + high) / 2
        tried = _formed(TO_ONE_SIDE, body, space, holes, _shift_leaving(middle, body, space))
        left_over = _known_least(margin for _, margin in tried.margins)
        least, high = (middle, high) if left_over >= middle - ROUNDING_MM else (least, middle)
        if left_over > _known_least(margin for _, margin in best.margins):
            best = tried
    return best


def turned(body: Body, space: Space, holes: HolePair) -> Fit:
    """A body turned by a quarter over its holes, its leads formed to them.

    Args:
        body: [mm] the body.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.

    Returns:
        The fit, with its margins and the height it adds [mm].

    Holds for boxes with wire leads; a can gains nothing by it.
    Source: formed leads, plane geometry

    >>> turned(Body(7, 3, 7, "box", spacing_mm=2.5), Space(left_mm=2), HolePair(2.5, 3)).fits
    True
    """
    offset = float(turned_offset_mm(body.spacing_mm, holes.spacing_mm))
    taken = Footprint(body.across_mm, body.along_mm, body.tall_mm + _rise(body, offset), _is_round(body))
    return _standing("turned by a quarter", body, space, taken, _forming(body, offset, holes))


def _shift_leaving(margin: float, body: Body, space: Space) -> Shift:
    """The least shift; a side that is not known may be as free as the shift needs, and stays not known."""
    left, right, front, back = (
        inf if isnan(side) else side for side in (space.left_mm, space.right_mm, space.front_mm, space.back_mm)
    )
    along = float(least_shift_mm(left, right, body.along_mm + 2 * margin))
    across = float(least_shift_mm(front, back, body.across_mm + 2 * margin))
    return (0.0 if isnan(along) else along), (0.0 if isnan(across) else across)


def _known_least(margins: Iterable[float]) -> float:
    return min((margin for margin in margins if not isnan(margin)), default=inf)


def _formed(way: str, body: Body, space: Space, holes: HolePair, shift: Shift) -> Fit:
    offset = float(worst_offset_mm(body.spacing_mm, holes.spacing_mm, *shift))
    tall = body.tall_mm + _rise(body, offset)
    taken = Footprint(body.along_mm, body.across_mm, tall, _is_round(body), shift)
    return _standing(way, body, space, taken, _forming(body, offset, holes))


def _forming(body: Body, offset: float, holes: HolePair) -> Leads:
    needed = float(needed_lead_mm(offset, holes.board_mm)) + _straight(body, offset)
    return Leads([("forming", float(forming_margin_mm(offset))), *lead_length_margins(body, needed)], offset)


def _rise(body: Body, offset: float) -> float:
    return float(formed_height_mm(offset)) + _straight(body, offset)


def _straight(body: Body, offset: float) -> float:
    """The piece before the bend of a lead that is formed; of a lead not stated, the least there is."""
    lead = 0.0 if isnan(body.lead_diameter_mm) else body.lead_diameter_mm
    return 0.0 if formed_height_mm(offset) == 0 else float(straight_before_bend_mm(lead))


def _standing(way: str, body: Body, space: Space, taken: Footprint, leads: Leads) -> Fit:
    margins = [*room_margins(space, taken), *leads.margins]
    cautions = [*vent_cautions(body, dict(margins).get("headroom", inf)), *forming_cautions(leads.offset_mm)]
    return fit_of(way, margins, cautions, taken.tall_mm - body.tall_mm, taken.shift_mm)


def _is_round(body: Body) -> bool | None:
    return None if body.shape is None else body.shape == "can"
