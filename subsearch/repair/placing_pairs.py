"""Where two parts stand together in one room: at the places that leave the most between them and to the walls."""

from collections.abc import Sequence
from math import inf, isinf, isnan

from subsearch.formulas.carriers import least
from subsearch.formulas.two_bodies import Outline, two_bodies, two_cans_round_margin_mm
from subsearch.repair.body_sizes import Sized, Sizes
from subsearch.repair.in_place import Room, Solid, Span, Stand, about

Middle = tuple[float, float]


def two_stands(room: Room, names: Sequence[str], parts: Sequence[Sized]) -> tuple[Stand, Stand]:
    """Both parts at their best places."""
    places, turned = _places(room, *map(_outline, parts))
    one, other = (
        _stand(name, part, middle, turn) for name, part, middle, turn in zip(names, parts, places, turned, strict=True)
    )
    return one, other


def _outline(part: Sized) -> Outline:
    along, across, _ = part.largest
    return Outline(along, across, part.shape == "can")


def _places(room: Room, one: Outline, other: Outline) -> tuple[tuple[Middle, Middle], tuple[bool, bool]]:
    """The midpoint of each, and which of them is turned by a quarter."""
    if room.free_diameter_mm < inf and one.is_round and other.is_round:
        return _on_a_diameter(room.free_diameter_mm, one, other), (False, False)
    left, right, front, back = (
        float(least(side, room.free_diameter_mm / 2))
        for side in (room.left_mm, room.right_mm, room.front_mm, room.back_mm)
    )
    best = two_bodies(one, other, left + right, front + back)
    gap = 0.0 if isinf(best.margin_mm) else max(best.margin_mm, 0.0)
    (a, b), (c, d) = (
        (body.across_mm, body.along_mm) if turn else (body.along_mm, body.across_mm)
        for body, turn in zip((one, other), best.turned, strict=True)
    )
    x = _axis((left, right), (best.first_mm[0], best.second_mm[0]), (a, c), gap)
    y = _axis((front, back), (best.first_mm[1], best.second_mm[1]), (b, d), gap)
    if isinf(left + right) and isinf(front + back):
        y = (0.0, 0.0)
    return ((x[0], y[0]), (x[1], y[1])), best.turned


def _axis(
    free: tuple[float, float], from_corner: tuple[float, float], sizes: tuple[float, float], gap: float
) -> tuple[float, float]:
    """The midpoints on one axis: where that is open they stand in a row, from the side that is asked on."""
    low, high = free
    if not isinf(low + high):
        return from_corner[0] - low, from_corner[1] - low
    row = sizes[0] + gap + sizes[1]
    start = gap - low if not isinf(low) else high - gap - row if not isinf(high) else -row / 2
    return start + sizes[0] / 2, start + row - sizes[1] / 2


def _on_a_diameter(free_mm: float, one: Outline, other: Outline) -> tuple[Middle, Middle]:
    gap = float(two_cans_round_margin_mm(free_mm, one.across_mm, other.across_mm))
    ends = (one.across_mm / 2 + gap - free_mm / 2, free_mm / 2 - gap - other.across_mm / 2)
    return (ends[0], 0.0), (ends[1], 0.0)


def _stand(name: str, part: Sized, middle: Middle, turn: bool) -> Stand:
    nominal, largest = (_stood(part, sizes, middle, turn) for sizes in (part.nominal, part.largest))
    vent_mm = part.vent_mm if part.shape == "can" and part.vented and not isnan(part.vent_mm) else 0.0
    return Stand(name, nominal, largest, largest, vent_mm=vent_mm)


def _stood(part: Sized, sizes: Sizes, middle: Middle, turn: bool) -> Solid:
    along, across, tall = sizes
    wide, deep = (across, along) if turn else (along, across)
    axis = {"can": "z", "axial": "y" if turn else "x"}.get(part.shape or "", "")
    return Solid(about(middle[0], wide), about(middle[1], deep), Span(0.0, tall), axis)
