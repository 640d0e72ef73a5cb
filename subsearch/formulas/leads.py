"""Leads formed to other holes: how far each must move, what that costs in height and length, how tightly it may bend.

A formed lead runs at 45 degrees, so the body stands higher by its offset at least. Snap-in tags are not formed.
"""

from math import isnan

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import Carrier, most, pick
from subsearch.formulas.geometry import NEAR_MM, STRAIGHT_OFFSET_MM

FORMED_OFFSET_MM = 1.6  # forming is common up to this offset of each lead. Source: formed leads
CAUTION_OFFSET_MM = 2.6  # and done with care up to this one. Source: formed leads
SHORTEST_STRAIGHT_MM = 0.8  # a thin lead stays straight this far from the body. Source: straight before a bend
CLASSES = ("straight", "formed", "formed with caution", "too far")  # and "not stated"


def formed_height_mm(offset_mm: Carrier) -> Carrier:
    """Standing height added when a lead is formed by an offset.

    Args:
        offset_mm: [mm] offset of each lead, 0 or above; any carrier.

    Returns:
        [mm] the height: 0 up to STRAIGHT_OFFSET_MM, else at least the offset; unknown where the input is.

    Holds for round leads formed at 45 degrees. It is a floor: the straight piece before the bend comes on top.
    Source: leads into other holes, formed leads

    >>> formed_height_mm(0.25), formed_height_mm(1.5)
    (0.0, 1.5)
    """
    return pick(offset_mm <= STRAIGHT_OFFSET_MM + NEAR_MM, 0.0, offset_mm)


def needed_lead_mm(offset_mm: Carrier, board_mm: Carrier) -> Carrier:
    """Length of lead that each needs: along the slope, then through the board.

    Args:
        offset_mm: [mm] offset of each lead, 0 or above; any carrier.
        board_mm: [mm] thickness of the board, with what is to stand out of it; any carrier.

    Returns:
        [mm] the length from the body on; unknown where an input is.

    Holds for leads formed at 45 degrees. It is a floor: straight pieces and the roundness of the bends come on top.
    Source: formed leads, plane geometry

    >>> needed_lead_mm(0, 1.6)
    1.6
    """
    return (offset_mm**2 + formed_height_mm(offset_mm) ** 2) ** 0.5 + board_mm


def lead_length_margin_mm(lead_length_mm: Carrier, offset_mm: Carrier, board_mm: Carrier) -> Carrier:
    """What a stated lead length leaves over the length needed.

    Args:
        lead_length_mm: [mm] length of the shorter lead; any carrier.
        offset_mm: [mm] offset of each lead, 0 or above; any carrier.
        board_mm: [mm] thickness of the board, with what is to stand out of it; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for leads formed at 45 degrees, as the length needed does.
    Source: formed leads, plane geometry

    >>> lead_length_margin_mm(5, 0, 1.5)
    3.5
    """
    return lead_length_mm - needed_lead_mm(offset_mm, board_mm)


def forming_margin_mm(offset_mm: Carrier) -> Carrier:
    """What an offset leaves of the largest one that leads are formed by.

    Args:
        offset_mm: [mm] offset of each lead, 0 or above; any carrier.

    Returns:
        [mm] the margin to CAUTION_OFFSET_MM; unknown where the input is.

    Holds for round leads; from the plain offset of a centred part it is also how far the body may shift along.
    Source: formed leads

    >>> forming_margin_mm(0.6)
    2.0
    """
    return CAUTION_OFFSET_MM - offset_mm


def shifted_offset_mm(
    spacing_mm: Carrier, hole_spacing_mm: Carrier, shift_along_mm: Carrier, shift_across_mm: Carrier
) -> Carrier:
    """Offset of the right lead of a body that stands beside its holes: both leads formed to one side.

    Args:
        spacing_mm: [mm] lead spacing of the part, as delivered; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        shift_along_mm: [mm] shift of the body in the line of the holes, above 0 to the right; any carrier.
        shift_across_mm: [mm] shift of the body across that line, either way; any carrier.

    Returns:
        [mm] the offset; of the left lead with the sign of `shift_along_mm` turned; unknown where an input is.

    Holds for a body that is shifted and not turned.
    Source: plane geometry

    >>> shifted_offset_mm(5, 5, 1.5, 2), shifted_offset_mm(5, 8, 1.5, 0), shifted_offset_mm(5, 8, -1.5, 0)
    (2.5, 0.0, 3.0)
    """
    return (((spacing_mm - hole_spacing_mm) / 2 + shift_along_mm) ** 2 + shift_across_mm**2) ** 0.5


def worst_offset_mm(
    spacing_mm: Carrier, hole_spacing_mm: Carrier, shift_along_mm: Carrier, shift_across_mm: Carrier
) -> Carrier:
    """The larger offset of the two leads of a body that stands beside its holes.

    Args:
        spacing_mm: [mm] lead spacing of the part, as delivered; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        shift_along_mm: [mm] shift of the body in the line of the holes, either way; any carrier.
        shift_across_mm: [mm] shift of the body across that line, either way; any carrier.

    Returns:
        [mm] the larger offset, which decides over height, length and class; unknown where an input is.

    Holds for a body that is shifted and not turned.
    Source: plane geometry

    >>> worst_offset_mm(5, 8, 1.5, 0)
    3.0
    """
    right = shifted_offset_mm(spacing_mm, hole_spacing_mm, shift_along_mm, shift_across_mm)
    return most(right, shifted_offset_mm(spacing_mm, hole_spacing_mm, -shift_along_mm, shift_across_mm))


def straight_before_bend_mm(lead_diameter_mm: Carrier) -> Carrier:
    """Shortest straight piece between the body and a bend.

    Args:
        lead_diameter_mm: [mm] diameter of the lead; any carrier.

    Returns:
        [mm] the length: one diameter, at least 0.8; unknown where the input is.

    Holds for round leads.
    Source: straight before a bend

    >>> straight_before_bend_mm(0.6), straight_before_bend_mm(1.0)
    (0.8, 1.0)
    """
    return most(lead_diameter_mm, SHORTEST_STRAIGHT_MM)


def bend_radius_mm(lead_diameter_mm: Carrier) -> Carrier:
    """Smallest inside radius of a bend.

    Args:
        lead_diameter_mm: [mm] diameter of the lead; any carrier.

    Returns:
        [mm] the radius: 1 diameter below 0.8 mm, 1.5 to 1.2 mm, 2 above; unknown where the input is.

    Holds for round leads.
    Source: lead bends

    >>> bend_radius_mm(0.5), bend_radius_mm(1.0)
    (0.5, 1.5)
    """
    return lead_diameter_mm * pick(lead_diameter_mm < 0.8, 1.0, pick(lead_diameter_mm <= 1.2, 1.5, 2.0))


def forming_class(offset_mm: float) -> str:
    """How leads meet holes at an offset of each.

    Args:
        offset_mm: [mm] offset of each lead, 0 or above.

    Returns:
        [none] one of CLASSES, or "not stated" where the offset is unknown.

    Raises:
        RequirementError: an offset below 0.

    Holds for round leads, within NEAR_MM of each limit.
    Source: leads into other holes, formed leads

    >>> forming_class(1.54), forming_class(2.58)
    ('formed', 'formed with caution')
    """
    if offset_mm < 0:
        raise RequirementError(f"The offset is {offset_mm:g} mm, but it can't be negative. Give 0 or more.")
    if isnan(offset_mm):
        return "not stated"
    limits = (STRAIGHT_OFFSET_MM, FORMED_OFFSET_MM, CAUTION_OFFSET_MM)
    return CLASSES[sum(offset_mm > limit + NEAR_MM for limit in limits)]
