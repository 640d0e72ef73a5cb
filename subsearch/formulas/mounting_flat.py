"""Ways of mounting in which a body with radial leads lies. Lying is offered where a position allows it.

A lying can presents its side to the board and its vent to a neighbour: both are said as cautions.
"""

from collections.abc import Iterable, Iterator
from math import nan

from subsearch.formulas.fits import (
    Body,
    Fit,
    Footprint,
    HolePair,
    best_first,
    fit_of,
    lead_length_margins,
    room_margins,
)
from subsearch.formulas.geometry import lead_offset_mm
from subsearch.formulas.laid_flat import (
    bend_reach_mm,
    folded_lead_mm,
    lying_lead_mm,
    lying_length_mm,
    lying_reach_mm,
    lying_tall_mm,
    upper_lead_mm,
)
from subsearch.formulas.leads import (
    bend_radius_mm,
    formed_height_mm,
    forming_margin_mm,
    needed_lead_mm,
)
from subsearch.formulas.mounting_axial import bent_holes_margin_mm
from subsearch.formulas.mounting_cautions import (
    CROSSING,
    SLEEVE,
    forming_cautions,
    length_cautions,
    low_lead_cautions,
    lying_cautions,
)
from subsearch.formulas.spaces import Space


def laid_flat(body: Body, space: Space, holes: HolePair, lift_mm: float) -> tuple[Fit, ...]:
    """A body with radial leads laid beside its holes, in each of the four directions, the best first.

    Args:
        body: [mm] the body, its leads down.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.
        lift_mm: [mm] gap between body and board, 0 or above.

    Returns:
        The fits, with their margins [mm]; those that hold before those not known, then by the tightest margin.

    Holds for cans and boxes with wire leads, where the position allows lying; the room counts from the leads on.
    Source: laid flat, vent position, straight before a bend, lead bends

    >>> body = Body(8.5, 8.5, 13, spacing_mm=3.5, lead_diameter_mm=0.6)
    >>> [fit.way for fit in laid_flat(body, Space(5, 5, 16, 4, 10), HolePair(3.5, 3), 0.5) if fit.fits]
    ['laid flat to the front']
    """
    fits = [*_side_by_side(body, space, holes, lift_mm), *_one_above_other(body, space, holes, lift_mm)]
    return best_first(fits)


def folded_flat(body: Body, space: Space, holes: HolePair, lift_mm: float) -> Fit:
    """A radial body laid between the holes of an axial part, one lead folded back beside it.

    Args:
        body: [mm] the body, its leads down.
        space: [mm] the free room about the midpoint of the holes.
        holes: [mm] the holes.
        lift_mm: [mm] gap between body and board, 0 or above.

    Returns:
        The fit, with its margins [mm].

    Holds for cans and boxes with wire leads, where the position allows lying; room for the lead is taken on both sides.
    The leads of a box lie side by side and are formed to its middle; a can is turned until both lie there.
    Source: laid flat, axial hole span, lead bends, vent position

    >>> body = Body(8.5, 8.5, 13, spacing_mm=3.5, lead_diameter_mm=0.6)
    >>> folded_flat(body, Space(headroom_mm=12), HolePair(25, 3), 0.5).tightest_mm
    3.0
    """
    reach = bend_reach_mm(body.lead_diameter_mm)
    wide = body.along_mm + 2 * body.lead_diameter_mm
    down = lying_lead_mm(body.across_mm, lift_mm, reach, holes.board_mm)
    lead = float(folded_lead_mm(down, holes.spacing_mm, reach, wide))
    taken = Footprint(body.tall_mm, wide, lying_tall_mm(body.across_mm, lift_mm))
    margins = [
        *room_margins(space, taken),
        ("hole spacing", bent_holes_margin_mm(body.tall_mm, body.tall_mm, body.lead_diameter_mm, holes)),
        *_box_forming(body),
        *lead_length_margins(body, lead),
    ]
    cautions = (SLEEVE, *length_cautions(body, lead), *lying_cautions(body, lift_mm))
    return fit_of("laid flat between the holes, one lead folded back", margins, cautions)


def _box_forming(body: Body) -> Iterator[tuple[str, float]]:
    if body.shape != "can":
        left = float(forming_margin_mm(body.spacing_mm / 2))
        yield "forming", nan if body.shape is None and left < 0 else left


def _side_by_side(body: Body, space: Space, holes: HolePair, lift_mm: float) -> Iterator[Fit]:
    offset = float(lead_offset_mm(body.spacing_mm, holes.spacing_mm))
    reach = bend_reach_mm(body.lead_diameter_mm)
    far, tall = lying_length_mm(body.tall_mm, reach + formed_height_mm(offset)), lying_tall_mm(body.across_mm, lift_mm)
    lead = float(lying_lead_mm(body.across_mm, lift_mm, reach, needed_lead_mm(offset, holes.board_mm)))
    more = [("forming", float(forming_margin_mm(offset))), *lead_length_margins(body, lead)]
    cautions = [*lying_cautions(body, lift_mm), *forming_cautions(offset)]
    for side, to in (("front", -1), ("back", 1)):
        taken = Footprint(body.along_mm, far, tall, shift_mm=(0.0, to * far / 2))
        yield _lying(f"laid flat to the {side}", space, taken, more, cautions)


def _one_above_other(body: Body, space: Space, holes: HolePair, lift_mm: float) -> Iterator[Fit]:
    thick, apart = body.lead_diameter_mm, holes.spacing_mm
    reach = bend_reach_mm(thick)
    lead = float(upper_lead_mm(lying_lead_mm(body.along_mm, lift_mm, reach, holes.board_mm), apart, body.spacing_mm))
    near, far = apart / 2, lying_reach_mm(apart, body.tall_mm, reach)
    tall = lying_tall_mm(body.along_mm, lift_mm)
    low = low_lead_cautions(lift_mm + (body.along_mm - body.spacing_mm) / 2, bend_radius_mm(thick) + thick / 2)
    cautions = [CROSSING, *lying_cautions(body, lift_mm), *low]
    for side, to in (("left", -1), ("right", 1)):
        taken = Footprint(near + far, body.across_mm, tall, shift_mm=(to * (far - near) / 2, 0.0))
        yield _lying(f"laid flat to the {side}", space, taken, lead_length_margins(body, lead), cautions)


def _lying(
    way: str, space: Space, taken: Footprint, leads: Iterable[tuple[str, float]], cautions: Iterable[str]
) -> Fit:
    return fit_of(way, [*room_margins(space, taken), *leads], cautions, shift_mm=taken.shift_mm)
