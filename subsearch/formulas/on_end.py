"""An axial body on end: it stands upright over one hole, and its upper lead bent back down to the other."""

from subsearch.formulas.carriers import Carrier, most
from subsearch.formulas.leads import bend_radius_mm

SLEEVE_MM = 0.5  # thickness of the sleeve on the lead beside the body. Source: on end


def on_end_tall_mm(along_mm: Carrier, bend_height_mm: Carrier) -> Carrier:
    """Height of an axial part on end.

    Args:
        along_mm: [mm] length of the body; any carrier.
        bend_height_mm: [mm] room that the bent lead takes above it; any carrier.

    Returns:
        [mm] the height; unknown where an input is.

    Holds for a body that stands on the board.
    Source: plane geometry, on end

    >>> on_end_tall_mm(20, 2.5)
    22.5
    """
    return along_mm + bend_height_mm


def end_span_margin_mm(hole_spacing_mm: Carrier, across_mm: Carrier, lead_diameter_mm: Carrier) -> Carrier:
    """What an axial part on end leaves of the hole spacing.

    Args:
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        across_mm: [mm] diameter of the body; any carrier.
        lead_diameter_mm: [mm] diameter of the leads; any carrier.

    Returns:
        [mm] the margin; unknown where an input is.

    Holds for a body centred over one of the holes: the sleeved lead passes beside it, and turns back by two bends.
    Source: plane geometry, on end, lead bends

    >>> end_span_margin_mm(10, 9, 1.0), end_span_margin_mm(5, 3, 1.0)
    (4.5, 1.0)
    """
    beside = across_mm / 2 + lead_diameter_mm / 2 + SLEEVE_MM
    return hole_spacing_mm - most(beside, 2 * (bend_radius_mm(lead_diameter_mm) + lead_diameter_mm / 2))


def end_reach_mm(hole_spacing_mm: Carrier, across_mm: Carrier) -> Carrier:
    """How far what stands over one hole reaches from the midpoint of the holes, on its own side.

    Args:
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        across_mm: [mm] diameter of what stands there, of the body or of the lead; any carrier.

    Returns:
        [mm] the room needed from the midpoint; unknown where an input is.

    Holds for the body on its side and for the lead beside it on the other.
    Source: plane geometry

    >>> end_reach_mm(10, 9)
    9.5
    """
    return (hole_spacing_mm + across_mm) / 2


def end_lead_mm(along_mm: Carrier, hole_spacing_mm: Carrier, bend_reach_mm: Carrier, board_mm: Carrier) -> Carrier:
    """Length of the upper lead that an axial part on end needs: up, over, down beside the body, through the board.

    Args:
        along_mm: [mm] length of the body; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        bend_reach_mm: [mm] room from the body's end to the midline of the bent lead; any carrier.
        board_mm: [mm] thickness of the board, with what is to stand out of it; any carrier.

    Returns:
        [mm] the length from the body on, never too short: bends are taken as corners; unknown where an input is.

    Holds for a body that stands on the board.
    Source: plane geometry, on end

    >>> end_lead_mm(20, 10, 2.5, 2)
    37.0
    """
    return 2 * bend_reach_mm + hole_spacing_mm + along_mm + board_mm
