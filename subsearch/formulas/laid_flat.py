"""A body with radial leads laid flat beside its holes, or between the holes of an axial part.

The leads leave the body straight, bend down and go into the holes. To the front or to the back both leads lie side by
side; to the left or to the right they lie one above the other and the upper one reaches over to the far hole.
"""

from subsearch.formulas.carriers import Carrier
from subsearch.formulas.leads import bend_radius_mm, straight_before_bend_mm


def bend_reach_mm(lead_diameter_mm: Carrier) -> Carrier:
    """Room from the end of a body to the hole of a lead that is bent down at once.

    Args:
        lead_diameter_mm: [mm] diameter of the lead; any carrier.

    Returns:
        [mm] the straight piece and the bend, to the midline of the lead; unknown where the input is.

    Holds for round leads bent by a quarter turn.
    Source: straight before a bend, lead bends

    >>> bend_reach_mm(1.0)
    3.0
    """
    return straight_before_bend_mm(lead_diameter_mm) + bend_radius_mm(lead_diameter_mm) + lead_diameter_mm / 2


def bend_height_mm(lead_diameter_mm: Carrier) -> Carrier:
    """Room that a bent lead takes beyond the end of a body.

    Args:
        lead_diameter_mm: [mm] diameter of the lead; any carrier.

    Returns:
        [mm] the straight piece and the bend, to the outside of the lead; unknown where the input is.

    Holds for round leads bent by a quarter turn or back beside the body.
    Source: straight before a bend, lead bends

    >>> bend_height_mm(1.0)
    3.5
    """
    return bend_reach_mm(lead_diameter_mm) + lead_diameter_mm / 2


def lying_length_mm(tall_mm: Carrier, bend_reach_mm: Carrier) -> Carrier:
    """How far a body laid to the front or the back reaches from its holes.

    Args:
        tall_mm: [mm] height of the body when it stands; any carrier.
        bend_reach_mm: [mm] room from its end to the holes; any carrier.

    Returns:
        [mm] the room needed from the line of the holes; unknown where an input is.

    Holds for both leads bent down side by side.
    Source: plane geometry, laid flat

    >>> lying_length_mm(20, 2.5)
    22.5
    """
    return tall_mm + bend_reach_mm


def lying_reach_mm(hole_spacing_mm: Carrier, tall_mm: Carrier, bend_reach_mm: Carrier) -> Carrier:
    """How far a body laid in the line of its holes reaches from their midpoint.

    Args:
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        tall_mm: [mm] height of the body when it stands; any carrier.
        bend_reach_mm: [mm] room from its end to the nearer hole; any carrier.

    Returns:
        [mm] the room needed from the midpoint of the holes; unknown where an input is.

    Holds for leads one above the other.
    Source: plane geometry, laid flat

    >>> lying_reach_mm(5, 20, 2.5)
    25.0
    """
    return hole_spacing_mm / 2 + lying_length_mm(tall_mm, bend_reach_mm)


def lying_tall_mm(size_mm: Carrier, lift_mm: Carrier) -> Carrier:
    """Height over the board of a body laid flat.

    Args:
        size_mm: [mm] size of the body that is upright when it lies: of a can the diameter; any carrier.
        lift_mm: [mm] gap between body and board; any carrier.

    Returns:
        [mm] the height; unknown where an input is.

    Holds for every body; the lift keeps an uninsulated case off tracks.
    Source: plane geometry, laid flat

    >>> lying_tall_mm(10, 0.5)
    10.5
    """
    return size_mm + lift_mm


def lying_lead_mm(size_mm: Carrier, lift_mm: Carrier, bend_reach_mm: Carrier, board_mm: Carrier) -> Carrier:
    """Length of lead that a body laid flat needs: out of the body, down, through the board.

    Args:
        size_mm: [mm] size of the body that is upright when it lies; any carrier.
        lift_mm: [mm] gap between body and board; any carrier.
        bend_reach_mm: [mm] room from its end to the holes; any carrier.
        board_mm: [mm] thickness of the board, with what is to stand out of it; any carrier.

    Returns:
        [mm] the length from the body on, never too short: the bend is taken as a corner; unknown where an input is.

    Holds for leads in the middle of the end of the body.
    Source: plane geometry, laid flat

    >>> lying_lead_mm(10, 0.5, 2.5, 2)
    10.0
    """
    return bend_reach_mm + size_mm / 2 + lift_mm + board_mm


def upper_lead_mm(lying_lead_mm: Carrier, hole_spacing_mm: Carrier, spacing_mm: Carrier) -> Carrier:
    """Length of lead that the upper one needs where they lie one above the other.

    Args:
        lying_lead_mm: [mm] length needed by a lead in the middle, to the nearer hole; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        spacing_mm: [mm] lead spacing of the part; any carrier.

    Returns:
        [mm] the length from the body on; unknown where an input is.

    Holds for a body laid in the line of its holes.
    Source: plane geometry, laid flat

    >>> upper_lead_mm(10, 5, 5)
    17.5
    """
    return lying_lead_mm + hole_spacing_mm + spacing_mm / 2


def folded_lead_mm(
    lying_lead_mm: Carrier, hole_spacing_mm: Carrier, bend_reach_mm: Carrier, wide_mm: Carrier
) -> Carrier:
    """Length of the lead that is folded back beside a lying body, to the hole at its other end.

    Args:
        lying_lead_mm: [mm] length needed by the lead that is bent down at once; any carrier.
        hole_spacing_mm: [mm] spacing of the holes; any carrier.
        bend_reach_mm: [mm] room from an end of the body to the midline of a bent lead; any carrier.
        wide_mm: [mm] width of the lying body with a lead on either side of it; any carrier.

    Returns:
        [mm] the length from the body on, never too short; unknown where an input is.

    Holds for a radial part that lies between the holes of an axial one: out and around one end, back along the body,
    and around the other end to its middle.
    Source: plane geometry, laid flat

    >>> folded_lead_mm(10, 25, 2.5, 12)
    52.0
    """
    return lying_lead_mm + hole_spacing_mm + 2 * bend_reach_mm + wide_mm
