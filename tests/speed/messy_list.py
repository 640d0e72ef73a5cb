"""An invented list as untidy as the trade's: every notation a cell may have, one line in a hundred that can't be kept.

Numbers of different texts are as in a real list: part and order numbers are all different, quantities some thousands.
"""

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from random import Random

HEADINGS = (
    "Order code", "Maker", "Part number", "Technology", "Capacitance", "Tolerance", "Voltage", "Size", "Style",
    "Lead spacing", "Life", "Price 1+", "Price 100+", "Stock",
)  # fmt: skip
MAKERS = ("Grisbeck", "Holmwater", "Ravensike", "Tarnfield", "Ostermoor GmbH", "Pellbrook & Weir")
E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91)
UNITS = {"pF": -12, "nF": -9, "µF": -6, "uF": -6, "\u03bcF": -6, "mF": -3}
TOLERANCES = ("±20 %", "20%", "+/-20", "M", "-10/+50 %")
SPOILT = 100  # one line in so many is refused

# kind: words for the technology, decades of picofarads, rated voltages, words for the style, words for life
WET = (("Elko", "Al electrolytic", "aluminium", "wet  electrolytic"), (5, 9), ("6.3", "10", "16", "25", "50", "63"))
FILM = (("film PET", "PET-Folie", "polyester"), (3, 7), ("63", "100", "250", "400", "630"))


def write_messy(path: Path, lines: int, seed: int = 1, prefix: str = "Z") -> list[str]:
    """Write an invented list of that many lines; the capacitance cells, as they stand in it.

    prefix: begins each order code. Every hundredth line is refused, each time for another reason.
    """
    dice, cells = Random(seed), []
    spoils = tuple(SPOILS.values())
    with path.open("w", encoding="utf-8") as file:
        file.write(";".join(HEADINGS) + "\n")
        for line in range(lines):
            row = _row(dice, line, prefix)
            if line % SPOILT == SPOILT - 1:
                spoils[line // SPOILT % len(spoils)](row)
            cells.append(row["Capacitance"])
            file.write(";".join(row.values()) + "\n")
    return cells


def spoilt(lines: int) -> int:
    """How many of so many lines are refused."""
    return lines // SPOILT


def _row(dice: Random, line: int, prefix: str) -> dict[str, str]:
    can = dice.random() < 0.5
    words, decades, volts = WET if can else FILM
    spacing = Decimal(dice.choice(("2.5", "3.5", "5", "7.5") if can else ("5", "7.5", "10", "15")))
    price = Decimal(f"{Decimal(dice.randint(5, 2500)) / 100:.3g}")
    cells = (
        f"{prefix}{line}", dice.choice(MAKERS), f"H{line:07d}", dice.choice(words),
        capacitance(dice, dice.choice(E24), dice.randrange(*decades)), dice.choice(TOLERANCES),
        voltage(dice, dice.choice(volts)), can_size(dice, spacing) if can else box_size(dice, spacing),
        dice.choice(("radial", "Radial", "can") if can else ("box", "radial box", "Quader")), length(dice, spacing),
        life(dice) if can else "", money(dice, price), money(dice, price * Decimal("0.8")), stock(dice),
    )  # fmt: skip
    return dict(zip(HEADINGS, cells, strict=True))


def marked(dice: Random, number: Decimal) -> str:
    """A number with a decimal point or, mostly, a comma."""
    text = f"{number.normalize():f}"
    return text.replace(".", ",") if dice.random() < 0.7 else text


def spaced(dice: Random) -> str:
    """What stands between a number and its unit."""
    return dice.choice(("", " ", " ", "\u00a0", "  "))


def capacitance(dice: Random, digits: int, decade: int) -> str:
    """One of many ways to write digits · 10^(decade − 1) pF."""
    exponent = decade - 13
    if dice.random() < 0.2:
        letter, shift = dice.choice((("p", -12), ("n", -9), ("u", -6), ("µ", -6), ("m", -3)))
        number = f"{Decimal(digits).scaleb(exponent - shift).normalize():f}"
        whole, _, part = number.partition(".")
        if part and len(part) < 3:
            return f"{whole.lstrip('0')}{letter}{part}"
    usual = {name: power for name, power in UNITS.items() if -4 <= exponent - power <= 4}
    unit = dice.choice(tuple(usual))
    return f"{marked(dice, Decimal(digits).scaleb(exponent - usual[unit]))}{spaced(dice)}{unit}"


def voltage(dice: Random, volts: str) -> str:
    """One of many ways to write a rated d.c. voltage."""
    if "." in volts and dice.random() < 0.4:
        return volts.replace(".", "V")
    return f"{marked(dice, Decimal(volts))}{dice.choice(('', ' V', 'V', ' Vdc', ' VDC', ' V d.c.', 'V='))}"


def length(dice: Random, mm: Decimal) -> str:
    """A length in mm, with or without its unit."""
    return f"{marked(dice, mm)}{dice.choice(('', ' mm', 'mm'))}"


def can_size(dice: Random, spacing: Decimal) -> str:
    """Diameter and length of a can that is wider than its lead spacing."""
    wide, tall = spacing * 2 + dice.randint(0, 5), Decimal(dice.randint(11, 40))
    sign, times = dice.choice(("", "Ø", "ø", "D")), dice.choice(("x", "×", " x ", "X"))
    return f"{sign}{marked(dice, wide)}{times}{marked(dice, tall)}"


def box_size(dice: Random, spacing: Decimal) -> str:
    """Length, width and height of a box that is longer than its lead spacing."""
    times = dice.choice(("x", "×", " x ", "*"))
    sides = (spacing + 3, Decimal(dice.randint(6, 18)) / 2, Decimal(dice.randint(6, 16)))
    return times.join(marked(dice, side) for side in sides) + dice.choice(("", " mm", "mm"))


def life(dice: Random) -> str:
    """Hours of life."""
    hours = dice.choice(("1000", "2000", "3000", "5000", "10000", "1.000", "2,000", "10 000"))
    return f"{hours}{dice.choice(('', ' h', 'h', ' hrs', ' Std.'))}"


def money(dice: Random, price: Decimal) -> str:
    """A price in euros, with two decimals or four: three might mean thousands."""
    number = f"{price:.{2 if price == round(price, 2) else 4}f}".replace(".", dice.choice((",", ",", ".")))
    return dice.choice((f"{number} €", f"€ {number}", f"{number} EUR", f"EUR {number}", f"{number}€"))


def stock(dice: Random) -> str:
    """How many are in stock."""
    pieces = dice.choice((dice.randint(0, 300), dice.randint(0, 3_000), 100 * dice.randint(1, 500)))
    return dice.choice((f"{pieces}", f"{pieces}", f"{pieces} pcs", f">{pieces}", f"{pieces} Stk", "on order"))


def _put(**cells: str) -> Callable[[dict[str, str]], None]:
    return lambda row: row.update({name.replace("_", " "): text for name, text in cells.items()})


SPOILS: dict[str, Callable[[dict[str, str]], None]] = {
    "in words": _put(Capacitance="to be agreed"),
    "no value": _put(Capacitance=""),
    "wrong unit": _put(Capacitance="4,7 kΩ"),
    "out of range": _put(Voltage="0 V"),
    "letter for a digit": _put(Voltage="1OO V"),
    "unknown word": _put(Technology="assorted"),
    "no size": _put(Size="large"),
    "leads outside": _put(**{"Lead spacing": "95 mm"}),
    "dearer in bulk": _put(**{"Price 1+": "0,10 €", "Price 100+": "0,20 €"}),
    "said twice": lambda row: row.update({"Order code": row["Order code"][:-1] + "8"}),  # that of the line before
    "a cell is missing": lambda row: row.__delitem__("Stock"),
}
