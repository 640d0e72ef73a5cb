"""The space a body stands in: round, rectangular, or measured from the midpoint of the holes, one as the other.

Left and right are in the line of the holes, front and back across it. A body may stand beside the midpoint: `shift` is
how far, above 0 to the right, and to the back.
"""

from dataclasses import dataclass
from math import inf

from subsearch.formulas.carriers import Carrier, least, most, step
from subsearch.formulas.geometry import can_round_margin_mm, outline_round_margin_mm, side_margin_mm


@dataclass(frozen=True)
class Space:
    """The free room about the midpoint of the holes [mm]: infinite where nothing is asked, NaN where not known."""

    left_mm: float = inf
    right_mm: float = inf
    front_mm: float = inf
    back_mm: float = inf
    headroom_mm: float = inf
    free_diameter_mm: float = inf


def rectangular_space(free_along_mm: float, free_across_mm: float, headroom_mm: float) -> Space:
    """A rectangle that is centred on the midpoint of the holes.

    Args:
        free_along_mm: [mm] free room in the line of the holes, both sides together.
        free_across_mm: [mm] free room across that line, both sides together.
        headroom_mm: [mm] free height above the board.

    Returns:
        The space [mm].

    Holds for rectangles that lie along the line of the holes.
    Source: plane geometry

    >>> rectangular_space(20, 12, 25).left_mm
    10.0
    """
    along, across = free_along_mm / 2, free_across_mm / 2
    return Space(along, along, across, across, headroom_mm)


def chord_mm(free_diameter_mm: Carrier, size_mm: Carrier) -> Carrier:
    """The other side of the longest rectangle that a round space holds about its midpoint.

    Args:
        free_diameter_mm: [mm] free diameter around the midpoint of the holes; any carrier.
        size_mm: [mm] one side of the rectangle; any carrier.

    Returns:
        [mm] the other side, 0 where the one is no smaller than the space; unknown where an input is.

    Holds for either side.
    Source: plane geometry

    >>> chord_mm(10, 6), chord_mm(10, 12)
    (8.0, 0.0)
    """
    return most(free_diameter_mm**2 - size_mm**2, 0) ** 0.5


def round_in_sides_mm(left_mm: Carrier, right_mm: Carrier, front_mm: Carrier, back_mm: Carrier) -> Carrier:
    """The largest round space about the midpoint of the holes that the four sides hold.

    Args:
        left_mm, right_mm: [mm] free room from the midpoint in the line of the holes; any carrier.
        front_mm, back_mm: [mm] free room from the midpoint across that line; any carrier.

    Returns:
        [mm] its diameter; unknown where an input is.

    Holds for round bodies that stand centred; one beside the midpoint may be larger.
    Source: plane geometry

    >>> round_in_sides_mm(6, 9, 5, 7)
    10
    """
    return 2 * least(least(left_mm, right_mm), least(front_mm, back_mm))


def rectangle_margin_mm(
    free_along_mm: Carrier, free_across_mm: Carrier, along_mm: Carrier, across_mm: Carrier
) -> Carrier:
    """What a body in the middle of a rectangle leaves on its tighter side, in the better of two directions.

    Args:
        free_along_mm: [mm] one side of the rectangle; any carrier.
        free_across_mm: [mm] the other side of the rectangle; any carrier.
        along_mm: [mm] one side of the body; any carrier.
        across_mm: [mm] the other side of the body; any carrier.

    Returns:
        [mm] the margin on each side; unknown where an input is.

    Holds for bodies turned by a quarter or not at all.
    Source: plane geometry

    >>> rectangle_margin_mm(12, 30, 20, 10)
    1.0
    """
    as_it_is = least(free_along_mm - along_mm, free_across_mm - across_mm)
    turned = least(free_along_mm - across_mm, free_across_mm - along_mm)
    return most(as_it_is, turned) / 2


def shifted_side_margin_mm(side_mm: Carrier, size_mm: Carrier, away_mm: Carrier) -> Carrier:
    """What a body that stands beside the midpoint leaves of the space on one side.

    Args:
        side_mm: [mm] free space from the midpoint of the holes to that side; any carrier.
        size_mm: [mm] size of the body in that direction, both sides together; any carrier.
        away_mm: [mm] how far the body stands away from that side, below 0 towards it; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for left and right with along, front and back with across.
    Source: plane geometry

    >>> shifted_side_margin_mm(6, 10, 1.5)
    2.5
    """
    return side_margin_mm(side_mm, size_mm) + away_mm


def least_shift_mm(left_mm: Carrier, right_mm: Carrier, size_mm: Carrier) -> Carrier:
    """The smallest shift by which a body that is too wide on one side gets out of its neighbour's way.

    Args:
        left_mm: [mm] free room to the left of the midpoint, or to the front; any carrier.
        right_mm: [mm] free room to the right, or to the back; any carrier.
        size_mm: [mm] size of the body in that direction; any carrier.

    Returns:
        [mm] the shift, above 0 to the right, 0 where the body fits centred; unknown where an input is.

    Holds for every body; one wider than both sides together fits with no shift.
    Source: plane geometry

    >>> least_shift_mm(4, 8, 10), least_shift_mm(8, 4, 10), least_shift_mm(6, 6, 10)
    (1.0, -1.0, 0.0)
    """
    return most(size_mm / 2 - left_mm, 0.0) - most(size_mm / 2 - right_mm, 0.0)


def middle_shift_mm(left_mm: Carrier, right_mm: Carrier, most_shift_mm: Carrier) -> Carrier:
    """The shift towards the middle of the free room, as far as the leads let the body go.

    Args:
        left_mm: [mm] free room to the left of the midpoint, or to the front; any carrier.
        right_mm: [mm] free room to the right, or to the back; any carrier.
        most_shift_mm: [mm] the largest shift that the leads allow, 0 or above; any carrier.

    Returns:
        [mm] the shift, above 0 to the right, with the largest margins left and right; unknown where an input is.

    Holds for shifts whose height and lead length do not matter; a smaller shift costs less of both.
    Source: plane geometry

    >>> middle_shift_mm(4, 8, 2.6), middle_shift_mm(12, 4, 2.6)
    (2.0, -2.6)
    """
    return most(least((right_mm - left_mm) / 2, most_shift_mm), -most_shift_mm)


def shifted_can_round_margin_mm(
    free_diameter_mm: Carrier, across_mm: Carrier, shift_along_mm: Carrier, shift_across_mm: Carrier
) -> Carrier:
    """What a can that stands beside the midpoint leaves of a round space, over the whole diameter.

    Args:
        free_diameter_mm: [mm] free diameter around the midpoint of the holes; any carrier.
        across_mm: [mm] diameter of the can; any carrier.
        shift_along_mm, shift_across_mm: [mm] shift of the can in the line of the holes and across it; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for upright cans; twice the shift is lost.
    Source: plane geometry

    >>> shifted_can_round_margin_mm(20, 8, 1.5, 2)
    7.0
    """
    shift = (shift_along_mm**2 + shift_across_mm**2) ** 0.5
    return can_round_margin_mm(free_diameter_mm, across_mm) - 2 * shift


def shifted_outline_round_margin_mm(
    free_diameter_mm: Carrier, along_mm: Carrier, across_mm: Carrier, shift_along_mm: Carrier, shift_across_mm: Carrier
) -> Carrier:
    """What a rectangular outline beside the midpoint leaves of a round space, over the whole diameter.

    Args:
        free_diameter_mm: [mm] free diameter around the midpoint of the holes; any carrier.
        along_mm, across_mm: [mm] sizes of the body in the line of the holes and across it; any carrier.
        shift_along_mm, shift_across_mm: [mm] shift of the body in the same two directions; any carrier.

    Returns:
        [mm] the margin beyond the outermost corner; unknown where an input is.

    Holds for boxes, axial bodies and bodies laid flat.
    Source: plane geometry

    >>> shifted_outline_round_margin_mm(15, 4, 4, 1, 2)
    5.0
    """
    along = along_mm + 2 * step(shift_along_mm, "abs")
    return outline_round_margin_mm(free_diameter_mm, along, across_mm + 2 * step(shift_across_mm, "abs"))
