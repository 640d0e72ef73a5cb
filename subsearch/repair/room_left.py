"""What bodies at their largest leave of the room on every side that is asked: the margins of the search."""

from math import inf, isinf, nan

from subsearch.formulas.spaces import shifted_can_round_margin_mm, shifted_outline_round_margin_mm
from subsearch.repair.in_place import Gap, Room, Solid, Stand

ROUND, HEADROOM, BETWEEN = "free diameter", "headroom", "between both"


def gaps_of_one(room: Room, stand: Stand, shape: str | None) -> tuple[Gap, ...]:
    """The gaps of one part with its leads; across a free diameter over the whole of it [mm]."""
    round_mm = nan if shape is None else _round_mm(room.free_diameter_mm, stand)
    return (*_walls(room, stand.taken), *_asked(Gap(ROUND, round_mm), room.free_diameter_mm), *_above(room, stand))


def gaps_of_two(room: Room, one: Stand, other: Stand) -> tuple[Gap, ...]:
    """The smaller gap of two bodies on each side, and the one between them [mm]."""
    pairs = zip(_walls(room, one.taken), _walls(room, other.taken), strict=True)
    walls = [min(pair, key=lambda gap: gap.left_mm) for pair in pairs]
    rims = [Gap(ROUND, _round_mm(room.free_diameter_mm, stand)) for stand in (one, other)]
    heads = [gap for stand in (one, other) for gap in _above(room, stand)]
    return (
        *walls,
        *_asked(min(rims, key=lambda gap: gap.left_mm), room.free_diameter_mm),
        Gap(BETWEEN, between_mm(one.largest, other.largest)),
        *sorted(heads, key=lambda gap: gap.left_mm)[:1],
    )


def between_mm(one: Solid, other: Solid) -> float:
    """The gap between two upright bodies, seen from above [mm]; below 0 where they overlap."""
    rims = [body.x.size / 2 if body.axis == "z" else 0.0 for body in (one, other)]
    cores = [(body.x.size / 2 - rim, body.y.size / 2 - rim) for body, rim in zip((one, other), rims, strict=True)]
    along = abs(one.x.middle - other.x.middle) - cores[0][0] - cores[1][0]
    across = abs(one.y.middle - other.y.middle) - cores[0][1] - cores[1][1]
    apart = (max(along, 0.0) ** 2 + max(across, 0.0) ** 2) ** 0.5 or max(along, across)
    return float(apart - sum(rims))


def _walls(room: Room, taken: Solid) -> tuple[Gap, ...]:
    sides = (
        ("left", room.left_mm, -taken.x.low),
        ("right", room.right_mm, taken.x.high),
        ("front", room.front_mm, -taken.y.low),
        ("back", room.back_mm, taken.y.high),
    )
    return tuple(Gap(name, free - reach) for name, free, reach in sides if not isinf(free))


def _above(room: Room, stand: Stand) -> tuple[Gap, ...]:
    return _asked(Gap(HEADROOM, room.headroom_mm - stand.taken.z.high), room.headroom_mm)


def _asked(gap: Gap, free_mm: float) -> tuple[Gap, ...]:
    return () if free_mm == inf else (gap,)


def _round_mm(free_mm: float, stand: Stand) -> float:
    body, taken = stand.largest, stand.taken
    if body.axis == "z":
        return float(shifted_can_round_margin_mm(free_mm, body.y.size, body.x.middle, body.y.middle))
    sizes = (taken.x.size, taken.y.size, taken.x.middle, taken.y.middle)
    return float(shifted_outline_round_margin_mm(free_mm, *sizes))
