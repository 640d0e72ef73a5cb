"""The numbers of mounting: the laws of body, leads and room put to the columns of a part and a need.

Each stage is made of the ones before it, whose numbers then stand in the part's row: so each is written once, however
often it is used. Sizes are envelopes unless they are said to be nominal; a side that no need states is free.
"""

from math import inf

import duckdb

from subsearch.formulas import axials, geometry, holes, laid_flat, leads, mounting, on_end, spaces
from subsearch.formulas.carriers import Carrier, least, pick
from subsearch.search.derived import by_shape, of_need, of_part, stated_or, texts
from subsearch.search.way import WITHIN_MM

BOARD_MM = 3.0  # a board of 1.6 mm, and what stands out of it to be soldered
LIFT_MM = 0.5  # keeps a lying case off the tracks
NOTHING = duckdb.lit(0.0)

ALONG, ACROSS, TALL = (of_part(f"{side}_max_mm") for side in ("along", "across", "tall"))
SPACING, THICK, LENGTH = of_part("spacing_mm"), of_part("thick_mm"), of_part("lead_length_mm")
HOLES, HEADROOM, FREE = of_need("hole_spacing_mm"), of_need("headroom_mm"), of_need("free_diameter_mm")
LEFT, RIGHT, FRONT, BACK = (of_need(f"{side}_mm") for side in ("left", "right", "front", "back"))
IS_RADIAL = of_part("shape").isin(duckdb.lit("can"), duckdb.lit("box"))  # what has no shape stated may be axial
# A lead of a diameter not stated is taken as the thinnest where it is formed: the rise is a floor.
BENT = stated_or(of_part("lead_diameter_mm"), NOTHING)


def _free(side: Carrier) -> Carrier:
    return stated_or(side, duckdb.lit(inf))


def _straight(offset: Carrier) -> Carrier:
    """The straight piece before the bend of a formed lead."""
    up = leads.formed_height_mm(offset)
    return pick(up > NOTHING, leads.straight_before_bend_mm(BENT), up)


def _rise(offset: Carrier, straight: Carrier) -> Carrier:
    return leads.formed_height_mm(offset) + straight


def _headroom_left(rise: Carrier) -> Carrier:
    """What is left above a body that its leads lift; where their rise is not known, only that the body is too tall."""
    alone = geometry.headroom_margin_mm(HEADROOM, TALL)
    lifted = geometry.headroom_margin_mm(HEADROOM, TALL + rise)
    return stated_or(lifted, pick(alone < duckdb.lit(-WITHIN_MM), alone, None))


def _length_left(offset: Carrier, straight: Carrier) -> Carrier:
    return leads.lead_length_margin_mm(LENGTH, offset, BOARD_MM) - straight


def _round(along: Carrier, across: Carrier, shift_along: Carrier, shift_across: Carrier) -> Carrier:
    return spaces.shifted_outline_round_margin_mm(FREE, along, across, shift_along, shift_across)


OFFSETS = texts(
    {
        "offset_mm": pick(IS_RADIAL, geometry.lead_offset_mm(SPACING, HOLES), None),
        "turned_offset_mm": mounting.turned_offset_mm(SPACING, HOLES),
        "aside_along_mm": spaces.least_shift_mm(_free(LEFT), _free(RIGHT), ALONG),
        "aside_across_mm": spaces.least_shift_mm(_free(FRONT), _free(BACK), ACROSS),
        "reach_mm": laid_flat.bend_reach_mm(THICK),
    }
)
OFFSET, TURNED, REACH = of_part("offset_mm"), of_part("turned_offset_mm"), of_part("reach_mm")
SHIFT_ALONG, SHIFT_ACROSS = of_part("aside_along_mm"), of_part("aside_across_mm")
DOWN = laid_flat.lying_lead_mm(ACROSS, LIFT_MM, REACH, BOARD_MM)
WIDE = ALONG + 2 * THICK

LEADS = texts(
    {
        "aside_offset_mm": leads.worst_offset_mm(SPACING, HOLES, SHIFT_ALONG, SHIFT_ACROSS),
        "straight_mm": _straight(OFFSET),
        "turned_straight_mm": _straight(TURNED),
        "far_side_mm": laid_flat.lying_length_mm(TALL, REACH + leads.formed_height_mm(OFFSET)),
        "far_end_mm": laid_flat.lying_reach_mm(HOLES, TALL, REACH),
        "near_end_mm": HOLES / duckdb.lit(2.0),
        "side_lead_mm": laid_flat.lying_lead_mm(ACROSS, LIFT_MM, REACH, leads.needed_lead_mm(OFFSET, BOARD_MM)),
        "end_lead_mm": laid_flat.upper_lead_mm(
            laid_flat.lying_lead_mm(ALONG, LIFT_MM, REACH, BOARD_MM), HOLES, SPACING
        ),
        "folded_lead_mm": laid_flat.folded_lead_mm(DOWN, HOLES, REACH, WIDE),
        "folded_wide_mm": WIDE,
        "on_end_lead_mm": on_end.end_lead_mm(ALONG, HOLES, REACH, BOARD_MM),
        "on_end_tall_mm": on_end.on_end_tall_mm(ALONG, laid_flat.bend_height_mm(THICK)),
        "body_reach_mm": on_end.end_reach_mm(HOLES, ACROSS),
        "lead_reach_mm": on_end.end_reach_mm(HOLES, THICK),
    }
)
ASIDE, STRAIGHT, TURNED_STRAIGHT = (of_part(f"{name}_mm") for name in ("aside_offset", "straight", "turned_straight"))
FAR_SIDE, FAR_END, NEAR_END = (of_part(f"{name}_mm") for name in ("far_side", "far_end", "near_end"))

SPAN_MARGIN = geometry.hole_span_margin_mm(HOLES, of_part("along_mm"))

RISES = texts(
    {
        "rise_mm": _rise(OFFSET, STRAIGHT),
        "aside_straight_mm": _straight(ASIDE),
        "turned_rise_mm": _rise(TURNED, TURNED_STRAIGHT),
    }
)
ASIDE_STRAIGHT = of_part("aside_straight_mm")

MARGINS = texts(
    {
        "left_margin_mm": geometry.side_margin_mm(LEFT, ALONG),
        "right_margin_mm": geometry.side_margin_mm(RIGHT, ALONG),
        "front_margin_mm": geometry.side_margin_mm(FRONT, ACROSS),
        "back_margin_mm": geometry.side_margin_mm(BACK, ACROSS),
        "headroom_margin_mm": geometry.headroom_margin_mm(HEADROOM, TALL),
        "round_margin_mm": by_shape(
            geometry.can_round_margin_mm(FREE, ACROSS), geometry.outline_round_margin_mm(FREE, ALONG, ACROSS)
        ),
        "offset_margin_mm": geometry.STRAIGHT_OFFSET_MM - OFFSET,
        "lead_margin_mm": LENGTH - BOARD_MM,
        "hole_margin_mm": holes.lead_hole_margin_mm(of_need("hole_diameter_mm"), of_part("lead_diameter_mm")),
        "span_margin_mm": SPAN_MARGIN + stated_or(of_need("bent_nearer_mm"), NOTHING),
        # leads formed to the holes, the body centred on them
        "forming_margin_mm": leads.forming_margin_mm(OFFSET),
        "formed_headroom_margin_mm": _headroom_left(of_part("rise_mm")),
        "formed_lead_margin_mm": _length_left(OFFSET, STRAIGHT),
        # both leads formed to one side, by as little as the sides ask
        "aside_left_margin_mm": spaces.shifted_side_margin_mm(LEFT, ALONG, SHIFT_ALONG),
        "aside_right_margin_mm": spaces.shifted_side_margin_mm(RIGHT, ALONG, -SHIFT_ALONG),
        "aside_front_margin_mm": spaces.shifted_side_margin_mm(FRONT, ACROSS, SHIFT_ACROSS),
        "aside_back_margin_mm": spaces.shifted_side_margin_mm(BACK, ACROSS, -SHIFT_ACROSS),
        "aside_round_margin_mm": by_shape(
            spaces.shifted_can_round_margin_mm(FREE, ACROSS, SHIFT_ALONG, SHIFT_ACROSS),
            _round(ALONG, ACROSS, SHIFT_ALONG, SHIFT_ACROSS),
        ),
        "aside_headroom_margin_mm": _headroom_left(_rise(ASIDE, ASIDE_STRAIGHT)),
        "aside_forming_margin_mm": leads.forming_margin_mm(ASIDE),
        "aside_lead_margin_mm": _length_left(ASIDE, ASIDE_STRAIGHT),
        # a box turned by a quarter
        "turned_left_margin_mm": geometry.side_margin_mm(LEFT, ACROSS),
        "turned_right_margin_mm": geometry.side_margin_mm(RIGHT, ACROSS),
        "turned_front_margin_mm": geometry.side_margin_mm(FRONT, ALONG),
        "turned_back_margin_mm": geometry.side_margin_mm(BACK, ALONG),
        "turned_headroom_margin_mm": _headroom_left(of_part("turned_rise_mm")),
        "turned_forming_margin_mm": leads.forming_margin_mm(TURNED),
        "turned_lead_margin_mm": _length_left(TURNED, TURNED_STRAIGHT),
        # laid flat to the front or the back, the leads side by side
        "side_front_margin_mm": FRONT - FAR_SIDE,
        "side_back_margin_mm": BACK - FAR_SIDE,
        "side_near_front_mm": FRONT,
        "side_near_back_mm": BACK,
        "side_round_margin_mm": _round(ALONG, FAR_SIDE, NOTHING, FAR_SIDE / 2),
        "side_headroom_margin_mm": HEADROOM - laid_flat.lying_tall_mm(ACROSS, LIFT_MM),
        "side_lead_margin_mm": LENGTH - of_part("side_lead_mm"),
        # laid flat to the left or the right, one lead above the other
        "end_left_margin_mm": LEFT - FAR_END,
        "end_right_margin_mm": RIGHT - FAR_END,
        "end_near_left_mm": LEFT - NEAR_END,
        "end_near_right_mm": RIGHT - NEAR_END,
        "end_round_margin_mm": _round(NEAR_END + FAR_END, ACROSS, (FAR_END - NEAR_END) / 2, NOTHING),
        "end_headroom_margin_mm": HEADROOM - laid_flat.lying_tall_mm(ALONG, LIFT_MM),
        "end_lead_margin_mm": LENGTH - of_part("end_lead_mm"),
        # a radial can between the holes of an axial part
        "folded_left_margin_mm": geometry.side_margin_mm(LEFT, TALL),
        "folded_right_margin_mm": geometry.side_margin_mm(RIGHT, TALL),
        "folded_front_margin_mm": geometry.side_margin_mm(FRONT, of_part("folded_wide_mm")),
        "folded_back_margin_mm": geometry.side_margin_mm(BACK, of_part("folded_wide_mm")),
        "folded_round_margin_mm": geometry.outline_round_margin_mm(FREE, TALL, of_part("folded_wide_mm")),
        "folded_span_margin_mm": least(
            geometry.hole_span_margin_mm(HOLES, TALL), HOLES - axials.bent_span_mm(TALL, THICK)
        ),
        "folded_lead_margin_mm": LENGTH - of_part("folded_lead_mm"),
        # an axial part on end over one hole
        "body_left_margin_mm": LEFT - of_part("body_reach_mm"),
        "body_right_margin_mm": RIGHT - of_part("body_reach_mm"),
        "lead_left_margin_mm": LEFT - of_part("lead_reach_mm"),
        "lead_right_margin_mm": RIGHT - of_part("lead_reach_mm"),
        "on_end_round_margin_mm": spaces.shifted_can_round_margin_mm(FREE, ACROSS, NEAR_END, NOTHING),
        "on_end_headroom_margin_mm": geometry.headroom_margin_mm(HEADROOM, of_part("on_end_tall_mm")),
        "on_end_span_margin_mm": on_end.end_span_margin_mm(HOLES, ACROSS, THICK),
        "on_end_lead_margin_mm": LENGTH - of_part("on_end_lead_mm"),
    }
)
SIMPLER = {("span_margin_mm", "bent_nearer_mm"): str(SPAN_MARGIN)}
STAGES = (OFFSETS, LEADS, RISES, MARGINS)
