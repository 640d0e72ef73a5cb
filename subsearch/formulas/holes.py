"""Whether a lead goes through its hole, and how large a plated hole must be."""

from dataclasses import dataclass
from math import isnan

from subsearch.errors import RequirementError, known_word
from subsearch.formulas.carriers import Carrier
from subsearch.formulas.geometry import NEAR_MM

LEAD_CLEARANCE_MM = 0.15  # a hole takes a lead thinner than itself by this. Source: lead in its hole
PLATED_CLEARANCE_MM = {"A": 0.25, "B": 0.20, "C": 0.15}  # by producibility level of IPC-2222. Source: plated hole
OPEN_UNPLATED = "The lead is too thick for its hole: open the hole."
REFUSED_PLATED = "The lead is too thick for its plated hole."
EITHER = ("Look whether the hole is plated. Unplated: open the hole.", "Plated: this lead is too thick.")


def smallest_hole_mm(lead_max_mm: Carrier, hole_level: str) -> Carrier:
    """The smallest finished plated hole for a lead.

    Args:
        lead_max_mm: [mm] largest diameter of the lead, tolerance included; any carrier.
        hole_level: producibility level of IPC-2222: A, B or C.

    Returns:
        [mm] the diameter of the hole; unknown where the lead is.

    Raises:
        UnknownNameError: no such level; the text names the nearest.

    Holds for round leads in plated holes.
    Source: plated hole

    >>> smallest_hole_mm(0.5, "A")
    0.75
    """
    return lead_max_mm + PLATED_CLEARANCE_MM[known_word(hole_level, PLATED_CLEARANCE_MM, "a producibility level")]


def thickest_lead_mm(hole_diameter_mm: Carrier) -> Carrier:
    """The thickest lead that a hole takes as it is.

    Args:
        hole_diameter_mm: [mm] finished diameter of the hole; any carrier.

    Returns:
        [mm] the diameter of the lead; unknown where the input is.

    Holds for round leads in round holes.
    Source: lead in its hole

    >>> thickest_lead_mm(1.0)
    0.85
    """
    return hole_diameter_mm - LEAD_CLEARANCE_MM


def lead_hole_margin_mm(hole_diameter_mm: Carrier, lead_diameter_mm: Carrier) -> Carrier:
    """What a lead leaves of its hole.

    Args:
        hole_diameter_mm: [mm] finished diameter of the hole; any carrier.
        lead_diameter_mm: [mm] diameter of the lead; any carrier.

    Returns:
        [mm] the margin beyond the clearance a lead needs; unknown where an input is.

    Holds for round leads in round holes.
    Source: lead in its hole

    >>> round(lead_hole_margin_mm(1.0, 0.6), 6)
    0.25
    """
    return thickest_lead_mm(hole_diameter_mm) - lead_diameter_mm


@dataclass(frozen=True)
class HoleAnswer:
    """Whether a hole takes a lead, None where that is not known, and the sentences that go with it."""

    answer: bool | None
    sentences: tuple[str, ...] = ()


def hole_answer(hole_diameter_mm: float, lead_diameter_mm: float, plated: float) -> HoleAnswer:
    """Whether a hole takes a lead; an unplated hole can be opened, a plated one can not.

    Args:
        hole_diameter_mm: [mm] finished diameter of the hole.
        lead_diameter_mm: [mm] diameter of the lead.
        plated: [1 or 0] 1 where the hole is plated, 0 where it is not, unknown where that is not stated.

    Returns:
        [none] True, False or, where a diameter is unknown, None; with what is to be done or looked at.

    Raises:
        RequirementError: a plated that is neither 1 nor 0, a diameter not above 0.

    Holds for round leads in round holes, within NEAR_MM.
    Source: lead in its hole

    >>> hole_answer(0.8, 0.8, 0).sentences
    ('The lead is too thick for its hole: open the hole.',)
    >>> hole_answer(0.8, 0.8, 1).answer
    False
    """
    if plated not in (0, 1) and not isnan(plated):
        raise RequirementError(f"Plated is {plated:g}, but allowed are 1 and 0. Leave it unknown if you can't tell.")
    if hole_diameter_mm <= 0 or lead_diameter_mm <= 0:
        text = f"A lead of {lead_diameter_mm:g} mm in a hole of {hole_diameter_mm:g} mm: diameters are above 0 mm. "
        raise RequirementError(text + "Correct them.")
    margin = lead_hole_margin_mm(hole_diameter_mm, lead_diameter_mm)
    if isnan(margin):
        return HoleAnswer(None)
    if margin >= -NEAR_MM:
        return HoleAnswer(True)
    if isnan(plated):
        return HoleAnswer(True, EITHER)
    return HoleAnswer(False, (REFUSED_PLATED,)) if plated else HoleAnswer(True, (OPEN_UNPLATED,))
