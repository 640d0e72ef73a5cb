"""Usual bodies: cans, axials and film boxes, with the lead spacing that goes with each size."""

from decimal import Decimal
from math import pi

Size = tuple[str, str]
SMALL = (
    *(("5", "11"), ("6.3", "11"), ("8", "11.5"), ("8", "16"), ("10", "12.5"), ("8", "20"), ("10", "16")),
    *(("10", "20"), ("10", "25"), ("12.5", "20"), ("12.5", "25"), ("16", "20"), ("16", "25"), ("16", "31.5")),
    *(("18", "31.5"), ("18", "35.5"), ("18", "40"), ("22", "35"), ("22", "40"), ("22", "45"), ("22", "50")),
)
LOW = (("4", "5"), ("4", "7"), ("5", "7"), ("6.3", "7"), ("8", "7"), ("8", "9"), ("10", "9"))
AXIAL = (
    *(("6.5", "18"), ("8", "18"), ("10", "18"), ("10", "25"), ("10", "30"), ("12.5", "30"), ("15", "30")),
    *(("18", "30"), ("18", "38"), ("21", "38")),
)
SNAP = (
    *(("22", "25"), ("22", "30"), ("22", "35"), ("25", "30"), ("25", "35"), ("25", "40"), ("30", "30")),
    *(("30", "35"), ("30", "40"), ("30", "50"), ("35", "40"), ("35", "50"), ("35", "60")),
)
POLYMER = (("5", "7"), ("5", "9"), ("6.3", "8"), ("6.3", "11"), ("8", "8"), ("8", "11.5"), ("10", "12.5"))
SIZES = {"small": SMALL, "low": LOW, "axial": AXIAL, "snap": SNAP, "polymer": POLYMER}
SPACING = {
    **{"4": "1.5", "5": "2", "6.3": "2.5", "8": "3.5", "10": "5", "12.5": "5"},
    **{"16": "7.5", "18": "7.5", "22": "10"},
}
WIRE = {"4": "0.45", "5": "0.5", "6.3": "0.5", "8": "0.6", "10": "0.6", "12.5": "0.6", "16": "0.8", "18": "0.8"}
BOXES = {
    "5": ("7.2", "2.5x6.5 3x7.5 3.5x8.5 4.5x9.5 5x10 6x11 7.2x13", "0.5"),
    "7.5": ("10", "3x8 4x9 5x10.5 6x12 6x13", "0.6"),
    "10": ("13", "4x9 5x11 6x12", "0.6"),
    "15": ("18", "5x11 6x12 7x13.5 7.5x14.5 8.5x15 9x17.5", "0.8"),
    "22.5": ("26.5", "6x15 7x16.5 8.5x18 10x19 11x21", "0.8"),
    "27.5": ("31.5", "9x17 11x21 13x24 15x26 18x28 21x31", "0.8"),
    "37.5": ("41.5", "13x24 16x28 19x32 24x36 30x45", "1"),
}


def can_volume(size: Size) -> float:
    """Volume [mm³] of a can or an axial body (diameter, length)."""
    return pi / 4 * float(size[0]) ** 2 * float(size[1])


def can_surface(size: Size) -> float:
    """Surface [mm²] of a can or an axial body without the end that holds the leads."""
    diameter, length = float(size[0]), float(size[1])
    return pi * diameter * length + pi / 4 * diameter**2


def smallest(sizes: tuple[Size, ...], volume: float) -> Size | None:
    """The smallest body that holds the volume [mm³], or None when none does."""
    fitting = [size for size in sizes if can_volume(size) >= volume]
    return min(fitting, key=can_volume) if fitting else None


def boxes(pitches: tuple[str, ...]) -> list[tuple[str, str, str, str]]:
    """All boxes of the pitches, the smallest first: (spacing, length, width, height) [mm]."""
    found = [(pitch, BOXES[pitch][0], *size.split("x")) for pitch in pitches for size in BOXES[pitch][1].split()]
    return sorted([(one[0], one[1], one[2], one[3]) for one in found], key=box_volume)


def box_volume(box: tuple[str, str, str, str]) -> float:
    """Volume [mm³] of a box."""
    return float(box[1]) * float(box[2]) * float(box[3])


def leads(style: str, diameter: str) -> tuple[Decimal | None, Decimal]:
    """Native lead spacing and lead diameter [mm] of a can or axial body."""
    if style == "axial":
        return None, Decimal("0.6") if float(diameter) <= 8 else Decimal("0.8")
    if style == "snap-in":
        return Decimal(10), Decimal("1.5")
    return Decimal(SPACING[diameter]), Decimal(WIRE.get(diameter, "0.8"))
