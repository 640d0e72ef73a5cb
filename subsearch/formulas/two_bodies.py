"""Two bodies in one rectangle, seen from above: how much room is left where they stand as far apart as they can.

The margin is the smallest of the gap between them and the gaps to the walls. Each outline is a core that a round rim
surrounds: a can has a core of no size, a box no rim. However they stand, two such outlines with their sides along the
walls are farthest apart in opposite corners, so that diagonal places and a can beside a box are exact as well. Boxes
turned by other angles than a quarter are not tried.
"""

from dataclasses import dataclass
from itertools import product
from math import isnan, nan

from subsearch.formulas.carriers import Carrier, least, most, pick


@dataclass(frozen=True)
class Outline:
    """A body seen from above [mm]: of a can the larger size counts both ways."""

    along_mm: float
    across_mm: float
    is_round: bool


@dataclass(frozen=True)
class Placement:
    """Where two bodies stand: the margin, which of them is turned by a quarter, and the midpoint of each.

    Midpoints are along and across from one corner of the rectangle [mm].
    """

    margin_mm: float
    turned: tuple[bool, bool]
    first_mm: tuple[float, float]
    second_mm: tuple[float, float]


def corner_margin_mm(spare_along_mm: Carrier, spare_across_mm: Carrier, rim_mm: Carrier) -> Carrier:
    """The margin of two bodies in opposite corners, as far as the gap between them limits it.

    Args:
        spare_along_mm: [mm] what both bodies in a row along leave of the rectangle, below 0 too; any carrier.
        spare_across_mm: [mm] what both bodies in a row across leave of it, below 0 too; any carrier.
        rim_mm: [mm] the radii of those bodies that are round, together; any carrier.

    Returns:
        [mm] the margin m where the gap between both is m and the walls are m away; unknown where an input is.

    Holds for cans and for boxes along the walls.
    Source: two bodies in a rectangle

    >>> corner_margin_mm(3, -8, 0), round(corner_margin_mm(0, 0, 10), 2)
    (1.0, 1.08)
    """
    wide = most(spare_along_mm, spare_across_mm) + rim_mm  # between the cores, walls touched
    narrow = least(spare_along_mm, spare_across_mm) + rim_mm
    in_a_row = most(spare_along_mm, spare_across_mm) / 3
    half = 2 * (wide + narrow) + rim_mm  # (wide − 2m)² + (narrow − 2m)² = (rim + m)²
    root = most(half**2 - 7 * (wide**2 + narrow**2 - rim_mm**2), 0) ** 0.5
    return pick(narrow <= 2 * in_a_row, in_a_row, (half - root) / 7)


def walls_margin_mm(free_along_mm: Carrier, free_across_mm: Carrier, along_mm: Carrier, across_mm: Carrier) -> Carrier:
    """The margin of two bodies in opposite corners, as far as the walls limit it: the larger of them in the middle.

    Args:
        free_along_mm: [mm] one side of the rectangle; any carrier.
        free_across_mm: [mm] the other side of the rectangle; any carrier.
        along_mm: [mm] the larger size along of the two bodies; any carrier.
        across_mm: [mm] the larger size across of the two bodies; any carrier.

    Returns:
        [mm] half of what the tighter side leaves; unknown where an input is.

    Holds for cans and for boxes along the walls.
    Source: two bodies in a rectangle

    >>> walls_margin_mm(23, 12, 10, 10)
    1.0
    """
    return least(free_along_mm - along_mm, free_across_mm - across_mm) / 2


def two_cans_margin_mm(
    free_along_mm: Carrier, free_across_mm: Carrier, first_mm: Carrier, second_mm: Carrier
) -> Carrier:
    """What two cans leave of a rectangle, in a row or diagonally.

    Args:
        free_along_mm: [mm] one side of the rectangle; any carrier.
        free_across_mm: [mm] the other side of the rectangle; any carrier.
        first_mm: [mm] diameter of one can; any carrier.
        second_mm: [mm] diameter of the other can; any carrier.

    Returns:
        [mm] the smallest gap at the best places; unknown where an input is.

    Holds for upright cans.
    Source: two bodies in a rectangle

    >>> two_cans_margin_mm(23, 12, 10, 10)
    1.0
    """
    both = first_mm + second_mm
    between = corner_margin_mm(free_along_mm - both, free_across_mm - both, both / 2)
    larger = most(first_mm, second_mm)
    return least(between, walls_margin_mm(free_along_mm, free_across_mm, larger, larger))


def two_cans_round_margin_mm(free_diameter_mm: Carrier, first_mm: Carrier, second_mm: Carrier) -> Carrier:
    """What two cans leave of a round space.

    Args:
        free_diameter_mm: [mm] free diameter; any carrier.
        first_mm: [mm] diameter of one can; any carrier.
        second_mm: [mm] diameter of the other can; any carrier.

    Returns:
        [mm] the smallest gap at the best places; unknown where an input is.

    Holds for upright cans, in a row on one diameter.
    Source: plane geometry

    >>> two_cans_round_margin_mm(25, 12, 10)
    1.0
    """
    in_a_row = (free_diameter_mm - first_mm - second_mm) / 3
    return least(in_a_row, (free_diameter_mm - most(first_mm, second_mm)) / 2)


def two_bodies(first: Outline, second: Outline, free_along_mm: float, free_across_mm: float) -> Placement:
    """The best places for two bodies in a rectangle.

    Args:
        first: [mm] one body seen from above.
        second: [mm] the other body.
        free_along_mm: [mm] one side of the rectangle.
        free_across_mm: [mm] the other side of the rectangle.

    Returns:
        Where they stand, and the margin [mm], below 0 where they don't fit; unknown where a size is.

    Holds for bodies turned by a quarter or not at all; of equal margins, the fewest turned.
    Source: two bodies in a rectangle

    >>> best = two_bodies(Outline(18, 6, False), Outline(9, 9, True), 21, 22)
    >>> best.margin_mm, best.turned, best.first_mm, best.second_mm
    (2.0, (True, False), (5.0, 11.0), (14.5, 15.5))
    """
    sizes = (first.along_mm, first.across_mm, second.along_mm, second.across_mm, free_along_mm, free_across_mm)
    if any(map(isnan, sizes)):
        return Placement(nan, (False, False), (nan, nan), (nan, nan))
    ways = product(*((False,) if body.is_round else (False, True) for body in (first, second)))
    found = [_in_corners(first, second, (free_along_mm, free_across_mm), (one, other)) for one, other in ways]
    return min(found, key=lambda placed: (-placed.margin_mm, sum(placed.turned)))


def _in_corners(first: Outline, second: Outline, free: tuple[float, float], turned: tuple[bool, bool]) -> Placement:
    (a, b), (c, d) = map(_sides, (first, second), turned)
    rim = sum(max(body.along_mm, body.across_mm) / 2 for body in (first, second) if body.is_round)
    alone = walls_margin_mm(*free, max(a, c), max(b, d))
    margin = float(min(corner_margin_mm(free[0] - a - c, free[1] - b - d, rim), alone))
    far = free[0] - margin - c / 2, free[1] - margin - d / 2
    return Placement(margin, turned, (margin + a / 2, margin + b / 2), far)


def _sides(body: Outline, turned: bool) -> tuple[float, float]:
    if body.is_round:
        return max(body.along_mm, body.across_mm), max(body.along_mm, body.across_mm)
    return (body.across_mm, body.along_mm) if turned else (body.along_mm, body.across_mm)
