"""New bodies inside the emptied can of an old one: one body, or up to four equal cans standing side by side."""

from subsearch.formulas.carriers import Carrier, staircase
from subsearch.formulas.geometry import outline_round_margin_mm

# Diameter of the smallest round space that holds 1, 2, 3, 4 equal cans, in diameters of one of them.
# Source: equal circles in a circle
PACKING = ((1, 1.0), (2, 2.0), (3, 1 + 2 / 3**0.5), (4, 1 + 2**0.5))


def packing_ratio(cans: Carrier) -> Carrier:
    """How much wider than one can a round space must be for some equal ones.

    Args:
        cans: [none] how many equal cans stand in it, 1 to 4; any carrier.

    Returns:
        [none] the ratio of the diameters; unknown where the input is, and above 4.

    Holds for whole numbers.
    Source: equal circles in a circle

    >>> packing_ratio(2)
    2.0
    """
    return staircase(cans, PACKING)


def inside_can_margin_mm(inner_diameter_mm: Carrier, across_mm: Carrier, cans: Carrier) -> Carrier:
    """What equal cans leave between each other and to the wall of a round space.

    Args:
        inner_diameter_mm: [mm] inner diameter of the old can; any carrier.
        across_mm: [mm] diameter of each new can; any carrier.
        cans: [none] how many stand in it, 1 to 4; any carrier.

    Returns:
        [mm] the smallest gap where all are spread as far as they go; unknown where an input is, and above 4 cans.

    Holds for upright cans of one diameter.
    Source: equal circles in a circle

    >>> inside_can_margin_mm(25, 11, 2)
    1.0
    """
    ratio = packing_ratio(cans)  # cans and wall grow by half a gap each, and so does the ratio hold
    return (inner_diameter_mm - ratio * across_mm) / (1 + ratio)


def box_inside_can_margin_mm(inner_diameter_mm: Carrier, along_mm: Carrier, across_mm: Carrier) -> Carrier:
    """What one box leaves to the wall of a round space, at its corners.

    Args:
        inner_diameter_mm: [mm] inner diameter of the old can; any carrier.
        along_mm: [mm] one side of the box; any carrier.
        across_mm: [mm] the other side of the box; any carrier.

    Returns:
        [mm] the gap; unknown where an input is.

    Holds for a box in the middle.
    Source: plane geometry

    >>> box_inside_can_margin_mm(12, 8, 6)
    1.0
    """
    return outline_round_margin_mm(inner_diameter_mm, along_mm, across_mm) / 2
