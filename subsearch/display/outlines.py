"""Plane shapes of a drawing [mm], and the lines that hatch what of one lies outside another."""

from collections.abc import Iterator
from math import inf, isnan
from typing import NamedTuple

Flat = tuple[float, float]
Line = tuple[Flat, Flat]


class Outline(NamedTuple):
    """A rectangle, or the circle in it; as the room also what both leave, infinite where a side is open [mm]."""

    u: Flat
    v: Flat
    is_round: bool = False
    rim_mm: float = inf  # radius about the origin that bounds it too

    @property
    def known(self) -> bool:
        """Whether all of its sides are known."""
        return not any(isnan(end) for end in (*self.u, *self.v))


def outside(shape: Outline, room: Outline, step_mm: float) -> Iterator[Line]:
    """Slanting lines, so far apart, over what of a shape lies outside the room.

    >>> room = Outline((-5, 5), (-5, 5))
    >>> [line for line in outside(Outline((0, 3), (0, 3)), room, 1)]
    []
    >>> all(end[0] >= 5 for line in outside(Outline((0, 8), (0, 3)), room, 1) for end in line)
    True
    """
    first, last = shape.u[0] + shape.v[0], shape.u[1] + shape.v[1]
    rows = int((last - first) / step_mm / 2**0.5)
    for row in range(rows + 1):
        across = first + (row + 0.5) * step_mm * 2**0.5  # points with u + v equal to this
        low, high = _within(shape, across)
        free = _within(room, across)
        parts = [(low, high)] if free[0] >= free[1] else [(low, min(high, free[0])), (max(low, free[1]), high)]
        yield from (((a, across - a), (b, across - b)) for a, b in parts if b - a > 1e-6)


def _within(shape: Outline, across: float) -> Flat:
    """From which u to which u the points with that sum of u and v lie in a shape."""
    low, high = max(shape.u[0], across - shape.v[1]), min(shape.u[1], across - shape.v[0])
    if shape.is_round:
        middle = (sum(shape.u) / 2, sum(shape.v) / 2)
        low, high = _in_circle((low, high), across, middle, (shape.u[1] - shape.u[0]) / 2)
    if shape.rim_mm < inf:
        low, high = _in_circle((low, high), across, (0.0, 0.0), shape.rim_mm)
    return low, high


def _in_circle(ends: Flat, across: float, middle: Flat, radius: float) -> Flat:
    away = across - middle[0] - middle[1]
    half = radius**2 / 2 - away**2 / 4
    if half <= 0:
        return ends[0], ends[0]
    at, reach = middle[0] + away / 2, half**0.5
    return max(ends[0], at - reach), min(ends[1], at + reach)
