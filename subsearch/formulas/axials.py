"""Usual sizes of axial cans, their leads, and the holes they span, where a maker states none."""

from math import hypot, isnan, nan

from subsearch.formulas.carriers import Carrier, pick
from subsearch.formulas.laid_flat import bend_reach_mm

# Diameter and length, in mm. Source: axial sizes
PRINTED_AXIAL_SIZES = (
    (3.3, 11.0), (4.5, 10.0), (6.5, 18.0), (8.0, 11.0), (8.0, 18.0), (10.0, 18.0), (10.0, 25.0), (10.0, 30.0),
    (15.0, 30.0), (21.0, 38.0),
)  # fmt: skip
MORE_AXIAL_SIZES = ((6.0, 10.0), (12.5, 30.0), (18.0, 30.0), (18.0, 38.0))  # Source: more axial sizes
AXIAL_SIZES = tuple(sorted(PRINTED_AXIAL_SIZES + MORE_AXIAL_SIZES))


def axial_lead_mm(diameter_mm: Carrier) -> Carrier:
    """Usual lead diameter of an axial can.

    Args:
        diameter_mm: [mm] nominal diameter of the can; any carrier.

    Returns:
        [mm] the diameter of a lead: 0.6 to 8 mm, 0.8 from 10 mm; unknown between, and where the input is.

    Holds for axial electrolytic cans.
    Source: axial leads

    >>> axial_lead_mm(8), axial_lead_mm(10)
    (0.6, 0.8)
    """
    return pick(diameter_mm <= 8, 0.6, pick(diameter_mm >= 10, 0.8))


def bent_span_mm(along_mm: Carrier, lead_diameter_mm: Carrier) -> Carrier:
    """Least spacing of the holes for an axial part by the rules for bends.

    Args:
        along_mm: [mm] length of the body; any carrier.
        lead_diameter_mm: [mm] diameter of the leads; any carrier.

    Returns:
        [mm] the spacing, from the middle of one lead to that of the other; unknown where an input is.

    Holds for both leads bent straight down, each with its shortest straight piece and its smallest radius.
    Source: straight before a bend, lead bends, plane geometry

    >>> round(bent_span_mm(18, 0.6), 6)
    21.4
    """
    return along_mm + 2 * bend_reach_mm(lead_diameter_mm)


def nearest_axial_size(diameter_mm: float, along_mm: float) -> tuple[float, float]:
    """The usual size of an axial can nearest to one.

    Args:
        diameter_mm: [mm] diameter.
        along_mm: [mm] length of the body.

    Returns:
        [mm] diameter and length of the usual size, the smaller of two equally near; both unknown where an input is.

    Holds for axial electrolytic cans.
    Source: axial sizes, more axial sizes

    >>> nearest_axial_size(10, 26)
    (10.0, 25.0)
    """
    if isnan(diameter_mm + along_mm):
        return nan, nan
    return min(AXIAL_SIZES, key=lambda size: hypot(size[0] - diameter_mm, size[1] - along_mm))
