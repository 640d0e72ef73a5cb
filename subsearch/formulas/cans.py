"""Usual sizes of upright cans, their lead spacing and their leads, where a maker states none.

What is usual is a guess about a part, never a claim of its maker: a stated size always comes first.
"""

from math import hypot, isnan, nan

from subsearch.formulas.carriers import Carrier, pick, staircase

# Diameter, lead spacing, thinnest and thickest usual lead, in mm.
CAN_LEADS = (
    (4.0, 1.5, 0.45, 0.45),  # Source: leads of other cans
    (5.0, 2.0, 0.5, 0.5),  # Source: can leads
    (6.3, 2.5, 0.5, 0.5),
    (8.0, 3.5, 0.6, 0.6),
    (10.0, 5.0, 0.6, 0.6),
    (12.5, 5.0, 0.6, 0.6),
    (13.0, 5.0, 0.6, 0.6),  # Source: leads of other cans
    (16.0, 7.5, 0.8, 0.8),  # Source: can leads
    (18.0, 7.5, 0.8, 0.8),
    (20.0, 10.0, 0.8, 1.0),  # Source: leads of large cans
    (22.0, 10.0, 0.8, 0.8),  # one maker's. Source: leads of other cans
    (25.0, 10.0, 0.8, 1.0),  # 12.5 as well. Source: leads of large cans
)
# Spacings that also exist, native or by taping and forming, by diameter.
OTHER_SPACINGS = (
    (5.0, (2.5, 5.0)),  # by taping and forming. Source: formed small cans
    (8.0, (2.5,)),  # short ones. Source: leads of large cans
    (25.0, (12.5,)),  # Source: leads of large cans
)
SPACING_WITHIN_MM = 0.5  # plus and minus. Source: can leads
LEAD_WITHIN_MM = 0.05  # plus and minus. Source: can leads
SNAP_IN_SPACING_MM = 10.0  # of snap-in cans from 22 to 35 mm. Source: snap-in leads
SNAP_IN_WITHIN_MM = 0.1  # plus and minus. Source: snap-in leads
SNAP_IN_TAG_MM = 1.5  # width of a tag. Source: snap-in leads
LONGER_LEAD_MM = (14.0, 15.0)  # at the least, as two makers print it. Source: can leads, leads of other cans
SHORTER_BY_MM = (3.0, 5.0)  # the other lead, as the same two print it. Source: can leads, leads of other cans
# Source: can sizes
CAN_SIZES = (
    (5.0, 11.0), (6.3, 11.0), (8.0, 11.5), (8.0, 12.0), (8.0, 16.0), (8.0, 20.0), (10.0, 12.5), (10.0, 16.0),
    (10.0, 20.0), (10.0, 25.0), (12.5, 16.0), (12.5, 20.0), (12.5, 25.0), (16.0, 20.0), (16.0, 25.0), (16.0, 31.5),
    (18.0, 20.0), (18.0, 25.0), (18.0, 31.5), (18.0, 35.5), (18.0, 40.0), (22.0, 35.0), (22.0, 40.0),
    (22.0, 45.0), (22.0, 50.0),
)  # fmt: skip


def _usual(diameter_mm: Carrier, column: int) -> Carrier:
    table = staircase(diameter_mm, [(row[0], row[column]) for row in CAN_LEADS])
    return pick(diameter_mm >= CAN_LEADS[0][0], table)


def can_spacing_mm(diameter_mm: Carrier) -> Carrier:
    """Usual lead spacing of a can.

    Args:
        diameter_mm: [mm] nominal diameter of the can; any carrier.

    Returns:
        [mm] the spacing, that of the next diameter of the table; unknown below 4 and above 25 mm.

    Holds for cans with wire leads, not taped or formed; other spacings stand in OTHER_SPACINGS.
    Source: can leads, leads of other cans, leads of large cans

    >>> can_spacing_mm(5), can_spacing_mm(8)
    (2.0, 3.5)
    """
    return _usual(diameter_mm, 1)


def can_lead_mm(diameter_mm: Carrier) -> Carrier:
    """Usual lead diameter of a can, the thinner where two are usual.

    Args:
        diameter_mm: [mm] nominal diameter of the can; any carrier.

    Returns:
        [mm] the diameter of a lead, that of the next can of the table; unknown below 4 and above 25 mm.

    Holds for cans with wire leads; short 8 mm cans may have 0.45 to 0.5.
    Source: can leads, leads of other cans, leads of large cans

    >>> can_lead_mm(5), can_lead_mm(16)
    (0.5, 0.8)
    """
    return _usual(diameter_mm, 2)


def can_lead_max_mm(diameter_mm: Carrier) -> Carrier:
    """Thickest lead that a can may have: the thicker where two are usual, with its tolerance.

    Args:
        diameter_mm: [mm] nominal diameter of the can; any carrier.

    Returns:
        [mm] the largest diameter of a lead; unknown below 4 and above 25 mm.

    Holds for cans with wire leads.
    Source: can leads, leads of other cans, leads of large cans

    >>> can_lead_max_mm(20)
    1.05
    """
    return _usual(diameter_mm, 3) + LEAD_WITHIN_MM


def snap_in_spacing_mm(diameter_mm: Carrier) -> Carrier:
    """Usual spacing of the tags of a snap-in can.

    Args:
        diameter_mm: [mm] nominal diameter of the can; any carrier.

    Returns:
        [mm] the spacing, always SNAP_IN_SPACING_MM; unknown below 22 and above 35 mm.

    Holds for snap-in cans with two tags.
    Source: snap-in leads

    >>> snap_in_spacing_mm(30)
    10.0
    """
    return pick(diameter_mm >= 22, pick(diameter_mm <= 35, SNAP_IN_SPACING_MM))


def shorter_lead_mm(longer_mm: Carrier, shorter_by_mm: Carrier) -> Carrier:
    """Length of the shorter lead of a can, the minus.

    Args:
        longer_mm: [mm] length of the longer lead, the plus; any carrier.
        shorter_by_mm: [mm] how much shorter the other is; any carrier.

    Returns:
        [mm] the length of the shorter lead; unknown where an input is.

    Holds for cans with uncut leads; of two least lengths it is about that long, not at the least.
    Source: can leads, leads of other cans

    >>> shorter_lead_mm(14, 3)
    11
    """
    return longer_mm - shorter_by_mm


def can_spacings_mm(diameter_mm: float) -> tuple[float, ...]:
    """Every lead spacing that cans of a diameter come with, the usual one first.

    Args:
        diameter_mm: [mm] nominal diameter of the can.

    Returns:
        [mm] the spacings; none where the diameter is unknown or outside the table.

    Holds for cans with wire leads, taped and formed ones included.
    Source: can leads, leads of other cans, leads of large cans, formed small cans

    >>> can_spacings_mm(5)
    (2.0, 2.5, 5.0)
    """
    usual = can_spacing_mm(diameter_mm)
    return () if isnan(usual) else (usual, *dict(OTHER_SPACINGS).get(diameter_mm, ()))


def nearest_can_size(diameter_mm: float, tall_mm: float) -> tuple[float, float]:
    """The usual can size nearest to one.

    Args:
        diameter_mm: [mm] diameter.
        tall_mm: [mm] height.

    Returns:
        [mm] diameter and height of the usual size, the smaller of two equally near; both unknown where an input is.

    Holds for cans with wire leads from 5 to 22 mm.
    Source: can sizes

    >>> nearest_can_size(10, 17)
    (10.0, 16.0)
    """
    if isnan(diameter_mm + tall_mm):
        return nan, nan
    return min(CAN_SIZES, key=lambda size: hypot(size[0] - diameter_mm, size[1] - tall_mm))
