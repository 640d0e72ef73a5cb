"""Where a part stands with its leads down: as made, its leads formed, both formed to one side, turned by a quarter."""

from math import isnan
from typing import NamedTuple

from subsearch.formulas.geometry import NEAR_MM, STRAIGHT_OFFSET_MM, lead_offset_mm
from subsearch.formulas.leads import formed_height_mm, straight_before_bend_mm, worst_offset_mm
from subsearch.formulas.mounting import turned_offset_mm
from subsearch.formulas.spaces import least_shift_mm
from subsearch.repair.body_sizes import Sized, Sizes
from subsearch.repair.in_place import (
    BACK,
    FRONT,
    LEFT,
    RIGHT,
    Lead,
    Point,
    Room,
    Solid,
    Span,
    Stand,
    about,
    through_board,
)


class Lifted(NamedTuple):
    """How much higher a body stands, how far to the right and to the back [mm], and whether it is turned."""

    rise_mm: float = 0.0
    right_mm: float = 0.0
    back_mm: float = 0.0
    turned: bool = False


ON_BOARD = Lifted()


def upright(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A part as it was made, centred on its holes; leads that are too far from them go straight down beside them."""
    offset = float(lead_offset_mm(part.spacing_mm, holes_mm))
    meets = offset <= STRAIGHT_OFFSET_MM + NEAR_MM
    ends = holes_mm if meets else part.spacing_mm
    leads = tuple(
        through_board(part.lead_mm, (at * part.spacing_mm / 2, 0.0, 0.0), (at * ends / 2, 0.0, 0.0)) for at in (-1, 1)
    )
    return _standing(name, part, leads)


def formed(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A part centred on its holes, its leads formed to their spacing."""
    offset = float(lead_offset_mm(part.spacing_mm, holes_mm))
    return _formed(name, part, holes_mm, Lifted(_rise(part, offset)))


def aside(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A part beside its holes, both leads formed to one side by as little as the sides ask."""
    along, across, _ = part.largest
    shift = (
        float(least_shift_mm(room.left_mm, room.right_mm, along)),
        float(least_shift_mm(room.front_mm, room.back_mm, across)),
    )
    offset = float(worst_offset_mm(part.spacing_mm, holes_mm, *shift))
    return _formed(name, part, holes_mm, Lifted(_rise(part, offset), *shift))


def turned(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A part turned by a quarter over its holes: the lead at its front goes to the left hole."""
    offset = float(turned_offset_mm(part.spacing_mm, holes_mm))
    rise = _rise(part, offset)
    starts = [(0.0, at * part.spacing_mm / 2, rise) for at in (-1, 1)]
    return _standing(name, part, _slopes(starts, part, holes_mm), Lifted(rise, turned=True))


def _formed(name: str, part: Sized, holes_mm: float, lifted: Lifted) -> Stand:
    starts = [(lifted.right_mm + at * part.spacing_mm / 2, lifted.back_mm, lifted.rise_mm) for at in (-1, 1)]
    return _standing(name, part, _slopes(starts, part, holes_mm), lifted)


def _rise(part: Sized, offset_mm: float) -> float:
    """How much higher the body stands; a lead not stated counts as the thinnest, so that it is a floor."""
    height = float(formed_height_mm(offset_mm))
    return height if height == 0 else height + straight_before_bend_mm(0.0 if isnan(part.lead_mm) else part.lead_mm)


def _slopes(starts: list[Point], part: Sized, holes_mm: float) -> tuple[Lead, ...]:
    """Leads that run straight down and then at 45 degrees, each to its hole."""
    leads = []
    for (x, y, z), at in zip(starts, (-1, 1), strict=True):
        hole = (at * holes_mm / 2, 0.0, 0.0)
        away = ((hole[0] - x) ** 2 + y**2) ** 0.5
        leads.append(through_board(part.lead_mm, (x, y, z), (x, y, float(formed_height_mm(away))), hole))
    return tuple(leads)


def _standing(name: str, part: Sized, leads: tuple[Lead, ...], lifted: Lifted = ON_BOARD) -> Stand:
    largest = _stood(part, part.largest, lifted)
    vented = part.shape == "can" and part.vented and not isnan(part.vent_mm)
    return Stand(
        name=name,
        nominal=_stood(part, part.nominal, lifted),
        largest=largest,
        taken=largest._replace(z=Span(0.0, largest.z.high)),
        leads=leads,
        lead_sides=(FRONT, BACK) if lifted.turned else (LEFT, RIGHT),
        rise_mm=lifted.rise_mm,
        vent_mm=part.vent_mm if vented else 0.0,
    )


def _stood(part: Sized, sizes: Sizes, lifted: Lifted) -> Solid:
    along, across, tall = sizes
    wide, deep = (across, along) if lifted.turned else (along, across)
    up = Span(lifted.rise_mm, lifted.rise_mm + tall)
    return Solid(about(lifted.right_mm, wide), about(lifted.back_mm, deep), up, "z" if part.shape == "can" else "")
