"""The largest sizes a body may have, and the free height its vent needs.

The usual plus tolerances are for bodies whose maker states none: which of them serves a part is not for this room.
"""

from subsearch.formulas.carriers import Carrier, pick

VENTED_FROM_MM = 6.3  # a can whose vent is not stated is taken as vented from here. Source: cans with a vent


def can_plus_mm(diameter_mm: Carrier) -> Carrier:
    """Plus tolerance on the diameter of a can whose maker states none.

    Args:
        diameter_mm: [mm] nominal diameter; any carrier.

    Returns:
        [mm] the tolerance: 0.5 below 20 mm, 1.0 from there; unknown where the input is.

    Holds for cans with leads, not for snap-in cans.
    Source: can tolerance, large can tolerance

    >>> can_plus_mm(8), can_plus_mm(20)
    (0.5, 1.0)
    """
    return pick(diameter_mm < 20, 0.5, pick(diameter_mm >= 20, 1.0))


def can_tall_plus_mm(tall_mm: Carrier) -> Carrier:
    """Plus tolerance on the height of a can whose maker states none.

    Args:
        tall_mm: [mm] nominal height; any carrier.

    Returns:
        [mm] the tolerance: 1.5 below 20 mm, 2.0 from there; unknown where the input is.

    Holds for cans with leads and snap-in cans.
    Source: can tolerance, short can tolerance, large can tolerance

    >>> can_tall_plus_mm(11), can_tall_plus_mm(25)
    (1.5, 2.0)
    """
    return pick(tall_mm < 20, 1.5, pick(tall_mm >= 20, 2.0))


def snap_in_plus_mm(diameter_mm: Carrier) -> Carrier:
    """Plus tolerance on the diameter of a snap-in can whose maker states none.

    Args:
        diameter_mm: [mm] nominal diameter, above 0; any carrier.

    Returns:
        [mm] the tolerance, always 1.0; unknown where the input is.

    Holds for snap-in cans of every size.
    Source: large can tolerance

    >>> snap_in_plus_mm(18)
    1.0
    """
    return pick(diameter_mm > 0, 1.0)


def box_plus_mm(size_mm: Carrier) -> Carrier:
    """Plus tolerance on each size of a box or an axial body whose maker states none.

    Args:
        size_mm: [mm] nominal size, along, across or tall, above 0; any carrier.

    Returns:
        [mm] the tolerance, always 0.5; unknown where the input is.

    Holds for boxes and axial bodies, each of the three ways.
    Source: box and axial tolerance

    >>> box_plus_mm(18)
    0.5
    """
    return pick(size_mm > 0, 0.5)


def envelope_mm(nominal_mm: Carrier, plus_mm: Carrier) -> Carrier:
    """The largest size a body may have.

    Args:
        nominal_mm: [mm] nominal size; any carrier.
        plus_mm: [mm] plus tolerance on it, the maker's or else the usual one; any carrier.

    Returns:
        [mm] the largest size; unknown where an input is.

    Holds for each of the three ways on its own.
    Source: plane geometry

    >>> envelope_mm(8, 0.5)
    8.5
    """
    return nominal_mm + plus_mm


def vent_clearance_mm(diameter_mm: Carrier) -> Carrier:
    """Free height that the vent of a can needs above it.

    Args:
        diameter_mm: [mm] nominal diameter; any carrier.

    Returns:
        [mm] the clearance: 2 up to 16 mm, 3 below 40 mm, 5 from there; unknown where the input is.

    Holds for vented cans; it counts from the largest height, not from the nominal one.
    Source: vent clearance, vent clearance in large cans

    >>> vent_clearance_mm(16), vent_clearance_mm(18), vent_clearance_mm(40)
    (2.0, 3.0, 5.0)
    """
    return pick(diameter_mm <= 16, 2.0, pick(diameter_mm < 40, 3.0, pick(diameter_mm >= 40, 5.0)))
