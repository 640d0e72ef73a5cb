"""How far apart two bodies can stand in a rectangle, by halving: no formula for the answer, only for a given place."""

from decimal import Decimal
from itertools import product

from brute.laws import Number

STEPS = 60
NEVER = Decimal(-1)
Sizes = tuple[Decimal, Decimal]


def gap_between(apart: Sizes, first: Sizes, second: Sizes, radii: Decimal) -> Decimal:
    """From body to body where their midpoints are so far apart: a can is a point with a radius, a box a rectangle.

    Below 0 where they run into each other.
    """
    beside, behind = (away - (one + other) / 2 for away, one, other in zip(apart, first, second, strict=True))
    if max(beside, behind) <= 0:
        return max(beside, behind) - radii
    beside, behind = max(beside, Decimal(0)), max(behind, Decimal(0))
    return (beside * beside + behind * behind).sqrt() - radii


def leaves(margin: Decimal, room: Sizes, first: Sizes, second: Sizes, round_ones: tuple[bool, bool]) -> bool:
    """Whether both stand that far from the walls, in opposite corners, and from each other."""
    if any(side - 2 * margin < size for body in (first, second) for side, size in zip(room, body, strict=True)):
        return False
    apart = [r - 2 * margin - (a + b) / 2 for r, a, b in zip(room, first, second, strict=True)]
    cores = [(Decimal(0), Decimal(0)) if is_round else body for body, is_round in
             zip((first, second), round_ones, strict=True)]  # fmt: skip
    radii = sum(
        (body[0] / 2 for body, is_round in zip((first, second), round_ones, strict=True) if is_round), Decimal(0)
    )
    return gap_between((apart[0], apart[1]), cores[0], cores[1], radii) >= margin


def most_margin(
    along: Number, across: Number, first: Sizes, second: Sizes, round_ones: tuple[bool, bool]
) -> Decimal | None:
    """The largest margin of the best places, −1 where not even that one is short; None where nothing limits it.

    A side of the room that is None is as long as one likes: there both stand in a row.
    """
    best: Decimal | None = NEVER
    turns = [((False,) if is_round else (False, True)) for is_round in round_ones]
    for turned in product(*turns):
        one, other = (body[::-1] if turn else body for body, turn in zip((first, second), turned, strict=True))
        found = _margin(along, across, one, other, round_ones)
        best = None if found is None or best is None else max(best, found)
    return best


def _margin(along: Number, across: Number, one: Sizes, other: Sizes, round_ones: tuple[bool, bool]) -> Decimal | None:
    if along is None or across is None:
        limits = [(room - max(one[at], other[at])) / 2 for at, room in enumerate((along, across)) if room is not None]
        return min(limits) if limits else None
    low, high = NEVER, max(along, across)
    if not leaves(low, (along, across), one, other, round_ones):
        return NEVER
    for _ in range(STEPS):
        middle = (low + high) / 2
        low, high = (middle, high) if leaves(middle, (along, across), one, other, round_ones) else (low, middle)
    return low
