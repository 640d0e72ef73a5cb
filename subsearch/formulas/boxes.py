"""Usual sizes of film boxes by their lead spacing, where a maker states none."""

from math import nan

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier, pick, step
from subsearch.formulas.geometry import STRAIGHT_OFFSET_MM

# What the columns are, each in mm.
BOX_SIZES = ("along least", "along most", "across least", "across most", "tall least", "tall most", "lead least",
             "lead most")  # fmt: skip
# Lead spacing, then the columns. Source: film box sizes, film spacings of one maker, film spacings of another
FILM_BOXES = (
    (5.0, 7.2, 7.2, 2.5, 7.2, 6.5, 13.0, 0.5, 0.5),
    (7.5, 10.0, 10.3, 3.0, 6.0, 8.0, 13.0, 0.5, 0.6),
    (10.0, 13.0, 13.0, 4.0, 6.0, 9.0, 12.0, 0.6, 0.6),
    (15.0, 18.0, 18.0, 5.0, 9.0, 11.0, 18.5, 0.8, 0.8),
    (22.5, 26.5, 26.5, 6.0, 11.0, 15.0, 21.0, 0.8, 0.8),
    (27.5, 31.5, 32.0, 9.0, 21.0, 17.0, 31.0, 0.8, 0.8),
    (37.5, 41.5, 41.5, 9.0, 30.0, 19.0, 45.0, 1.0, 1.0),
)
BOX_SPACINGS_MM = tuple(row[0] for row in FILM_BOXES)
INCH_SPACINGS_MM = (10.2, 15.2, 20.3, 22.5, 25.4)  # of older boxes. Source: inch spacings
LONGER_MM = (2.5, 4.5)  # a box is longer than its lead spacing by about this. Source: film box sizes


def film_box_mm(spacing_mm: Carrier, box_size: str) -> Carrier:
    """A usual size of a film box with a lead spacing.

    Args:
        spacing_mm: [mm] lead spacing; any carrier.
        box_size: which size: one of BOX_SIZES.

    Returns:
        [mm] that size; unknown where no spacing of the table is within STRAIGHT_OFFSET_MM.

    Raises:
        UnknownNameError: no such size; the text names the nearest.

    Holds for boxed film parts; thinner and higher ones exist.
    Source: film box sizes

    >>> film_box_mm(5, "along most"), film_box_mm(15.2, "lead most")
    (7.2, 0.8)
    """
    column = 1 + BOX_SIZES.index(known_word(box_size, BOX_SIZES, "a size of a box"))
    size: Carrier = nan
    for row in FILM_BOXES:
        size = pick(step(spacing_mm - row[0], "abs") <= STRAIGHT_OFFSET_MM, row[column], size)
    return size


def box_along_least_mm(spacing_mm: Carrier) -> Carrier:
    """About how short a box with a lead spacing can be.

    Args:
        spacing_mm: [mm] lead spacing; any carrier.

    Returns:
        [mm] the length; unknown where the input is.

    Holds for boxed film parts from 7.5 mm on, roughly; the usual 5 mm box is 0.3 mm shorter still.
    Source: film box sizes

    >>> box_along_least_mm(7.5)
    10.0
    """
    return spacing_mm + LONGER_MM[0]


def box_along_most_mm(spacing_mm: Carrier) -> Carrier:
    """About how long a box with a lead spacing can be.

    Args:
        spacing_mm: [mm] lead spacing; any carrier.

    Returns:
        [mm] the length; unknown where the input is.

    Holds for boxed film parts, roughly; spacings in inches too.
    Source: film box sizes

    >>> box_along_most_mm(27.5)
    32.0
    """
    return spacing_mm + LONGER_MM[1]
