"""What to say about a body that is mounted: its vent, its case, its support and its leads."""

from collections.abc import Iterator
from math import inf, isnan

from subsearch.formulas.cans import LONGER_LEAD_MM
from subsearch.formulas.envelope import VENTED_FROM_MM, vent_clearance_mm
from subsearch.formulas.fits import Body, counted_mm
from subsearch.formulas.geometry import NEAR_MM
from subsearch.formulas.leads import forming_class

SUPPORT = "Support the body against vibration."
SIDEWAYS = "The vent points sideways: turn it away from hot parts, tracks and faces."
CASE = "The case of a wet can is not insulated from its minus: no tracks or metal under it."
SLEEVE = "Sleeve the lead that runs back beside the body."
CROSSING = "Sleeve the upper lead: it crosses the lower one."
VENT_END = "Keep the vent's end free, and turned away from faces."
NOT_KNOWN = "Whether it has a vent is not known: look, and"
LENGTHENED = "The lead must be lengthened."


def is_vented(body: Body) -> bool | None:
    """Whether a body is to be treated as vented.

    Args:
        body: [mm] the body.

    Returns:
        [none] what is stated, else yes for cans from VENTED_FROM_MM on; None where shape or size is not stated.

    Holds for cans; other shapes have a vent only where it is stated.
    Source: cans with a vent

    >>> is_vented(Body(10.5, 10.5, 22)), is_vented(Body(5.5, 5.5, 12)), is_vented(Body(8.5, 8.5, 12, None))
    (True, False, None)
    """
    if body.vented is not None:
        return body.vented
    if body.shape in ("box", "axial"):
        return False
    across = counted_mm(body.nominal_across_mm, body.across_mm)
    if across < VENTED_FROM_MM:
        return False
    return None if body.shape is None or isnan(across) else True


def vent_cautions(body: Body, headroom_margin_mm: float) -> Iterator[str]:
    """What the vent of an upright body asks for.

    Args:
        body: [mm] the body.
        headroom_margin_mm: [mm] free height above it.

    Returns:
        A sentence where the free height is below the clearance [mm], or not known.

    Holds for vents in the top.
    Source: vent clearance, vent clearance in large cans, vent position

    >>> list(vent_cautions(Body(10.5, 10.5, 22), 1.5))
    ['The vent has 1.5 mm above it and should have 2 mm.']
    """
    clearance = vent_clearance_mm(counted_mm(body.nominal_across_mm, body.across_mm))
    vented = is_vented(body)
    if vented is False or headroom_margin_mm >= clearance - NEAR_MM:
        return
    if vented is None:
        yield f"{NOT_KNOWN} keep the room above it free."
    elif isnan(clearance):
        yield "Keep the room above the vent free: how much it needs is not known."
    elif isnan(headroom_margin_mm):
        yield f"The vent should have {clearance:g} mm above it."
    else:
        yield f"The vent has {max(round(headroom_margin_mm, 1), 0):g} mm above it and should have {clearance:g} mm."


def lying_cautions(body: Body, lift_mm: float) -> Iterator[str]:
    """What a body that lies on the board, or above it, asks for.

    Args:
        body: [mm] the body.
        lift_mm: [mm] gap between body and board.

    Returns:
        The sentences [none]; an axial body has one for its case where it touches the board.

    Holds for cans, boxes and axial bodies.
    Source: laid flat, vent position

    >>> list(lying_cautions(Body(18, 8, 8, "axial"), 0.5))
    ['Support the body against vibration.']
    """
    yield SUPPORT
    if body.shape == "can" or (body.shape == "axial" and not lift_mm > NEAR_MM):
        yield CASE
    vented = is_vented(body)
    if vented:
        yield SIDEWAYS
    elif vented is None:
        yield f"{NOT_KNOWN} turn its end away from hot parts, tracks and faces."


def on_end_cautions(body: Body) -> Iterator[str]:
    """What an axial body on end asks for.

    Args:
        body: [mm] the body.

    Returns:
        The sentences [none].

    Holds for axial bodies with wire leads.
    Source: on end, vent position

    >>> list(on_end_cautions(Body(18, 8, 8, "axial", vented=True)))[-1]
    "Keep the vent's end free, and turned away from faces."
    """
    yield SLEEVE
    yield SUPPORT
    vented = is_vented(body)
    if vented:
        yield VENT_END
    elif vented is None:
        yield f"{NOT_KNOWN} keep both ends free."


def forming_cautions(offset_mm: float) -> Iterator[str]:
    """What leads ask for that are formed to other holes.

    Args:
        offset_mm: [mm] the larger offset of the leads.

    Returns:
        A sentence where they are formed with caution, with the offset [mm].

    Holds for round leads.
    Source: formed leads

    >>> list(forming_cautions(2.0))
    ['The leads move by 2.0 mm each: form them with care, so that no force reaches the seal.']
    """
    if forming_class(offset_mm) == "formed with caution":
        yield f"The leads move by {offset_mm:.1f} mm each: form them with care, so that no force reaches the seal."


def length_cautions(body: Body, needed_mm: float) -> Iterator[str]:
    """What a lead asks for that reaches farther than usual ones are long.

    Args:
        body: [mm] the body.
        needed_mm: [mm] length of lead needed, from the body on.

    Returns:
        A sentence where the length stated is too short, or none is stated and usual ones are; of those the shorter
        print counts [mm].

    Holds for uncut leads; a length not known is one not stated.
    Source: can leads

    >>> list(length_cautions(Body(8, 8, 12), 30))
    ['The lead must be lengthened.']
    """
    stated = body.lead_length_mm < inf
    if not needed_mm <= (body.lead_length_mm if stated else LONGER_LEAD_MM[0]) + NEAR_MM:
        yield LENGTHENED


def low_lead_cautions(lead_height_mm: float, bend_mm: float) -> Iterator[str]:
    """What the lower lead of a body laid in the line of its holes asks for, where it leaves too low to bend.

    Args:
        lead_height_mm: [mm] height of that lead over the board where it leaves the body.
        bend_mm: [mm] radius of its bend, to its midline.

    Returns:
        A sentence with what the body must be lifted by [mm].

    Holds for leads one above the other.
    Source: lead bends, plane geometry

    >>> list(low_lead_cautions(1.5, 1.6))
    ['Lift the body by 0.1 mm more: its lower lead leaves it too low to be bent down.']
    """
    if bend_mm - lead_height_mm > NEAR_MM:
        short = max(round(bend_mm - lead_height_mm + 0.05 - NEAR_MM, 1), 0.1)  # rounded up to a tenth
        yield f"Lift the body by {short:g} mm more: its lower lead leaves it too low to be bent down."
