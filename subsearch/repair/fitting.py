"""What the way of mounting asks of the builder's hands: leads to form, a hole to open, the height that this costs."""

from collections.abc import Iterator
from math import inf, nan

from subsearch.formulas.fits import Body
from subsearch.formulas.geometry import NEAR_MM
from subsearch.formulas.holes import EITHER, OPEN_UNPLATED
from subsearch.formulas.leads import bend_radius_mm, formed_height_mm, forming_class, straight_before_bend_mm
from subsearch.formulas.mounting_cautions import (
    CROSSING,
    SLEEVE,
    forming_cautions,
    length_cautions,
    low_lead_cautions,
    lying_cautions,
    on_end_cautions,
)
from subsearch.search.answers import Candidate
from subsearch.search.derived_ways import LIFT_MM
from subsearch.search.requirement import Requirement
from subsearch.search.ways import ASIDE, BENT_NAMES, BY_NAME, FOLDED, FORMED_NAMES, LAID_NAMES
from subsearch.units import show

MEASURE = "The diameter of its leads is not stated: measure them, and open the hole if they are too thick."
PLATED_TOO = " A plated hole must not be opened: look whether it is plated."
OFF_BOARD = f", {show(LIFT_MM, 'mm')} off the board"
BESIDE = LAID_NAMES[:2]  # the leads side by side


def free_above_mm(candidate: Candidate) -> float | None:
    """The headroom left above the top of a part that stands [mm]; None where none is asked or it can't be told.

    The top of one that is laid flat, and with it its vent, points sideways.
    """
    if candidate.made["way"] in BENT_NAMES:
        return None
    way = BY_NAME[candidate.made["way"]]
    left: float | None = candidate.made[next(one.made for one in way.margins if one.asked_by == "headroom_mm")]
    return left


def fitting_cautions(requirement: Requirement | None, candidate: Candidate) -> Iterator[str]:
    """The sentences that a part's way of mounting and the holes call for."""
    made = candidate.made
    if made["way"] in FORMED_NAMES and made["worked_mm"] is not None:
        yield from _forming(candidate)
    if made["way"] in BENT_NAMES:
        yield from _bent(candidate)
    if requirement is not None and requirement.hole_diameter_mm is not None and requirement.hole_plated is not True:
        yield from _hole(made["hole_margin_mm"], requirement.hole_plated)


def _forming(candidate: Candidate) -> Iterator[str]:
    made, offset = candidate.made, candidate.made["worked_mm"]
    if forming_class(offset) != "straight":
        rise = formed_height_mm(offset) + straight_before_bend_mm(candidate.part["lead_diameter_mm"] or 0.0)
        move, higher = (show(round(size, 2), "mm") for size in (offset, rise))
        to = "its hole"
        if made["way"] == ASIDE.name:
            to = f"its hole: {_moved(made['aside_along_mm'], made['aside_across_mm'])}"
        yield f"Form each lead by up to {move} to meet {to}; the body then stands at least {higher} higher."
    yield from forming_cautions(offset)


def _moved(right_mm: float, back_mm: float) -> str:
    """How far the body stands beside the holes' midpoint, and to which side."""
    along = f"{show(round(abs(right_mm), 2), 'mm')} to the {'right' if right_mm > 0 else 'left'}"
    across = f"{show(round(abs(back_mm), 2), 'mm')} to the {'back' if back_mm > 0 else 'front'}"
    moves = [words for words, size in ((along, right_mm), (across, back_mm)) if round(abs(size), 2)]
    return f"the body stands {' and '.join(moves)} of their midpoint" if moves else "the body stays between them"


def _hole(margin_mm: float | None, plated: bool | None) -> Iterator[str]:
    if margin_mm is None:
        yield MEASURE if plated is False else MEASURE + PLATED_TOO
    elif margin_mm < -NEAR_MM:
        yield from ((OPEN_UNPLATED,) if plated is False else EITHER)


def _bent(candidate: Candidate) -> Iterator[str]:
    """How a part that is laid flat or stood on end is held, insulated and turned, and what its leads need."""
    part, made, body = candidate.part, candidate.made, _body(candidate)
    lies = made["way"] in LAID_NAMES
    yield f"Mounted {BY_NAME[made['way']].sentence}{OFF_BOARD if lies else ''}."
    needed = made[_lead_of(made["way"])]
    if needed is not None:
        yield f"Its leads need {show(round(needed, 1), 'mm')} from the body on."
        yield from length_cautions(body, needed)
    if part["lead_diameter_mm"] is None and made["thick_mm"] is not None:
        yield f"The diameter of its leads is not stated: their bends are reckoned for {show(made['thick_mm'], 'mm')}."
    if not lies:
        yield from on_end_cautions(body)
        return
    yield from lying_cautions(body, LIFT_MM)
    if made["way"] in BESIDE and made["offset_mm"] is not None:
        yield from forming_cautions(made["offset_mm"])
    elif made["way"] == FOLDED.name:
        yield SLEEVE
    elif made["way"] not in BESIDE:
        yield CROSSING
        if made["thick_mm"] is not None and made["spacing_mm"] is not None:
            height = LIFT_MM + (body.along_mm - made["spacing_mm"]) / 2
            yield from low_lead_cautions(height, bend_radius_mm(made["thick_mm"]) + made["thick_mm"] / 2)


def _lead_of(way: str) -> str:
    if way not in LAID_NAMES:
        return "on_end_lead_mm"
    return "side_lead_mm" if way in BESIDE else "folded_lead_mm" if way == FOLDED.name else "end_lead_mm"


def _body(candidate: Candidate) -> Body:
    """The part as the laws of mounting take it: what is not stated is NaN there."""
    part, made = candidate.part, candidate.made
    along, across, tall = (_known(made[f"{side}_max_mm"]) for side in ("along", "across", "tall"))
    vented = None if part["vent"] is None else part["vent"] != "none"
    length = inf if part["lead_length_mm"] is None else part["lead_length_mm"]
    return Body(
        *(along, across, tall, part["shape"]),
        lead_length_mm=length,
        nominal_across_mm=_known(part["across_mm"]),
        vented=vented,
    )


def _known(size_mm: float | None) -> float:
    return nan if size_mm is None else size_mm
