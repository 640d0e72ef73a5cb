"""The two views of one position: which axis runs where, what lies in them, and how far they reach [mm]."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf, isinf, isnan

from subsearch.display.outlines import Outline
from subsearch.repair.in_place import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Placed, Solid, Span, Stand

FAR = 1.1  # a wall farther from what is drawn than so many times its size is told, not drawn
LEAST_MM = 6.0  # the least size that counts there
BOARD_DRAWN_MM = 1.6  # only in the picture: the usual board


@dataclass(frozen=True)
class View:
    """One view: its title, the axes to the right and up, and the sides that lie there and towards the eye."""

    title: str
    u: str
    v: str
    left: str
    right: str
    down: str
    up: str
    near: str

    def outline(self, solid: Solid) -> Outline:
        """A solid as it is seen here."""
        u, v = solid.span(self.u), solid.span(self.v)
        return Outline((u.low, u.high), (v.low, v.high), solid.axis not in ("", self.u, self.v))

    def flat(self, point: tuple[float, float, float]) -> tuple[float, float]:
        """A point as it is seen here."""
        at = dict(zip("xyz", point, strict=True))
        return at[self.u], at[self.v]


ABOVE = View("from above", "x", "y", LEFT, RIGHT, FRONT, BACK, UP)
SIDES = {
    FRONT: View("from the side, seen from the front", "x", "z", LEFT, RIGHT, DOWN, UP, FRONT),
    RIGHT: View("from the side, seen from the right", "y", "z", FRONT, BACK, DOWN, UP, RIGHT),
}


def side_view(placed: Placed) -> View:
    """The side view that shows the most."""
    return SIDES[placed.stands[0].looks_from if placed.stands else FRONT]


def room_outline(placed: Placed, view: View) -> Outline:
    """The free room as it is seen here, infinite where it is open."""
    room = placed.room
    ends = {
        "x": (-room.left_mm, room.right_mm),
        "y": (-room.front_mm, room.back_mm),
        "z": (-inf, room.headroom_mm),
    }
    radius = room.free_diameter_mm / 2
    if view.v == "y":
        return Outline(ends["x"], ends["y"], rim_mm=radius)
    low, high = ends[view.u]
    return Outline((max(low, -radius), min(high, radius)), ends["z"])


def bounds(placed: Placed, view: View) -> Outline:
    """What the picture must hold: bodies, leads, holes, and the walls of the room that are near enough."""
    u, v = _hull(placed, view)
    reach = max(u.size, v.size, LEAST_MM)
    room = room_outline(placed, view)
    rim = room.rim_mm if room.rim_mm < inf else -inf
    walls = [(room.u[0], -rim), (room.u[1], rim), (room.v[0], -rim), (room.v[1], rim)]
    ends = [u.low, u.high, v.low, v.high]
    for at, wall_and_rim in enumerate(walls):
        for wall in wall_and_rim:
            if not isinf(wall) and (not placed.stands or abs(wall - ends[at]) <= FAR * reach):
                ends[at] = max(ends[at], wall) if at % 2 else min(ends[at], wall)
    return Outline((ends[0], ends[1]), (ends[2], ends[3]))


def _hull(placed: Placed, view: View) -> tuple[Span, Span]:
    us, vs = [-1.0, 1.0], [0.0]
    if view.v == "z":
        vs.append(-BOARD_DRAWN_MM)
    else:
        vs += [-1.0, 1.0]  # so that a picture of nothing has a size
    if not isnan(placed.hole_spacing_mm):
        radius = 0.0 if isnan(placed.hole_diameter_mm) else placed.hole_diameter_mm / 2
        half = placed.hole_spacing_mm / 2 + radius
        us += [-half, half] if view.u == "x" else [-radius, radius]
        vs += [-radius, radius] if view.v == "y" else []
    for stand in placed.stands:
        for u, v in _points(stand, view):
            us += [] if isnan(u) else [u]
            vs += [] if isnan(v) else [v]
    return Span(min(us), max(us)), Span(min(vs), max(vs))


def _points(stand: Stand, view: View) -> Iterator[tuple[float, float]]:
    for solid in (stand.nominal, stand.largest, stand.taken):
        u, v = solid.span(view.u), solid.span(view.v)
        yield u.low, v.low
        yield u.high, v.high
    for lead in stand.leads:
        yield from map(view.flat, lead.points)
    if stand.vent_mm and view.v == "z":
        yield stand.largest.span(view.u).low, stand.largest.z.high + stand.vent_mm
