"""Whether a body fits its space and its leads their holes: margins in millimetres.

A margin is what is left over; below 0 it does not fit. Bodies stand with their leads down, centred on the midpoint of
the two holes. Sizes for margins are envelopes unless they are said to be nominal.
"""

from subsearch.formulas.carriers import Carrier, step

STRAIGHT_OFFSET_MM = 0.3  # a lead takes this offset without being formed. Source: leads into other holes
AXIAL_LEADS_MM = 5.0  # an axial part needs this much beside its length for both bends. Source: axial hole span
NEAR_MM = 1e-6  # sizes that differ by less count as equal, so that sums of tenths meet their limits


def side_margin_mm(side_mm: Carrier, size_mm: Carrier) -> Carrier:
    """What a body leaves of the space on one side of the holes.

    Args:
        side_mm: [mm] free space from the midpoint of the holes to that side; any carrier.
        size_mm: [mm] size of the body in that direction, both sides together; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for a body centred on the midpoint of the holes: left and right with along, front and back with across.
    Source: plane geometry

    >>> side_margin_mm(6, 10.5)
    0.75
    """
    return side_mm - size_mm / 2


def headroom_margin_mm(headroom_mm: Carrier, tall_mm: Carrier) -> Carrier:
    """What a body leaves of the headroom.

    Args:
        headroom_mm: [mm] free height above the board; any carrier.
        tall_mm: [mm] height of the body above the board; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for a body that sits on the board; clearance for a vent is not taken off.
    Source: plane geometry

    >>> headroom_margin_mm(20, 18)
    2
    """
    return headroom_mm - tall_mm


def can_round_margin_mm(free_diameter_mm: Carrier, across_mm: Carrier) -> Carrier:
    """What a can leaves of a round space, over the whole diameter.

    Args:
        free_diameter_mm: [mm] free diameter around the midpoint of the holes; any carrier.
        across_mm: [mm] diameter of the can; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for an upright can centred on the midpoint of the holes.
    Source: plane geometry

    >>> can_round_margin_mm(12, 10.5)
    1.5
    """
    return free_diameter_mm - across_mm


def outline_round_margin_mm(free_diameter_mm: Carrier, along_mm: Carrier, across_mm: Carrier) -> Carrier:
    """What a rectangular outline leaves of a round space, over the whole diameter.

    Args:
        free_diameter_mm: [mm] free diameter around the midpoint of the holes; any carrier.
        along_mm: [mm] size of the body in the line of the leads; any carrier.
        across_mm: [mm] size of the body across that line; any carrier.

    Returns:
        [mm] the margin beyond the diagonal; unknown where an input is.

    Holds for boxes and axial bodies seen from above, centred on the midpoint of the holes.
    Source: plane geometry

    >>> outline_round_margin_mm(6, 4, 3)
    1.0
    """
    return free_diameter_mm - (along_mm**2 + across_mm**2) ** 0.5


def lead_offset_mm(spacing_mm: Carrier, hole_spacing_mm: Carrier) -> Carrier:
    """How far each lead must move sideways to meet its hole.

    Args:
        spacing_mm: [mm] lead spacing of the part, as delivered; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.

    Returns:
        [mm] the offset of each lead, inwards or outwards; unknown where an input is.

    Holds for a part centred on its holes; up to STRAIGHT_OFFSET_MM it goes in unformed.
    Source: plane geometry, leads into other holes

    >>> lead_offset_mm(2.0, 5.0)
    1.5
    """
    return step(spacing_mm - hole_spacing_mm, "abs") / 2


def axial_span_mm(along_mm: Carrier) -> Carrier:
    """Least spacing of the holes for an axial part that lies on the board.

    Args:
        along_mm: [mm] nominal length of the body; any carrier.

    Returns:
        [mm] the spacing: the length and AXIAL_LEADS_MM; unknown where the input is.

    Holds for both leads bent straight down; from leads of 0.8 mm on a body at its largest needs more, its bent span.
    Source: axial hole span

    >>> axial_span_mm(18)
    23.0
    """
    return along_mm + AXIAL_LEADS_MM


def hole_span_margin_mm(hole_spacing_mm: Carrier, along_mm: Carrier) -> Carrier:
    """What an axial part with both leads bent down leaves of the hole spacing.

    Args:
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        along_mm: [mm] nominal length of the body; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for axial parts lying on the board.
    Source: plane geometry, axial hole span

    >>> hole_span_margin_mm(25, 18)
    2.0
    """
    return hole_spacing_mm - axial_span_mm(along_mm)
