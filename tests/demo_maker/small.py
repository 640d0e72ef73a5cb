"""Ceramics and tantalum beads."""

from decimal import Decimal
from math import pi, sqrt

from demo_maker.cans import fate
from demo_maker.dice import Dice
from demo_maker.films import boxed
from demo_maker.values import Claims, figures, preferred

CERAMIC_BOX = ("5", "5.5", "3.2", "6")
NARROW_BOX = ("2.5", "4", "2.6", "4")
BEADS = (("4.5", "8"), ("5.5", "10"), ("6.5", "11"), ("8", "13"), ("9", "15"))


def ceramic_parts(dice: Dice) -> list[Claims]:
    """C0G and class 2 ceramics in two outlines."""
    made: list[Claims] = []
    kinds = (
        ("Umbrafell", "Pebblewhit", "ceramic C0G", ("50", "100"), ("E12", "0.00001", "0.01"), "5", "0.001"),
        ("Pellwright", "Claymote", "ceramic class 2", ("50", "100"), ("E3", "0.001", "1"), "10", "0.025"),
    )
    for maker, series, technology, volts, span, tolerance, loss in kinds:
        for volt in volts:
            for uf in preferred(*span):
                box = NARROW_BOX if float(uf) * float(volt) < 0.1 or dice.chance(0.2) else CERAMIC_BOX
                claims: Claims = {
                    **{"maker": maker, "series": series, "technology": technology, "polarity": "bipolar"},
                    **boxed(uf, box, tolerance),
                    **{"rated_v": Decimal(volt), "lowest_c": Decimal(-55), "rated_c": Decimal(125)},
                    **{"tan_delta": Decimal(loss), "tan_delta_hz": Decimal(1000), "lead_form": "straight"},
                    **{"lead_diameter_mm": Decimal("0.5"), "lead_length_mm": Decimal(25), "vent": "none"},
                }
                made.append(claims | fate(dice))
    return made


def bead_parts(dice: Dice) -> list[Claims]:
    """Tantalum beads."""
    made: list[Claims] = []
    for volts in ("6.3", "10", "16", "25", "35"):
        for uf in preferred("E6", "0.47", "100"):
            charge = float(uf) * float(volts)
            if not 10 <= charge <= 900:
                continue
            diameter, length = BEADS[sum(charge > limit for limit in (60, 150, 300, 600))]
            ohm = 0.06 / (2 * pi * 120 * float(uf) * 1e-6)
            across = Decimal(diameter)
            claims: Claims = {
                **{"maker": "Brackenhall", "series": "Beadlarch", "technology": "tantalum", "polarity": "polar"},
                **boxed(uf, ("2.5", diameter, diameter, length), "10" if dice.chance(0.5) else "20"),
                **{"shape": "can", "along_mm": across, "across_mm": across, "rated_v": Decimal(volts)},
                **{
                    "lowest_c": Decimal(-55),
                    "rated_c": Decimal(85),
                    "life_h": Decimal(2000),
                    "life_basis": "endurance",
                },
                **{"tan_delta": Decimal("0.06"), "tan_delta_hz": Decimal(120), "lead_form": "straight"},
                **{"lead_diameter_mm": Decimal("0.5"), "lead_length_mm": Decimal(16), "vent": "none"},
                **{"ripple_a": figures(sqrt(0.02 / ohm), 2), "ripple_hz": Decimal(120)},
                "leakage_rule": "0.01·C·V or 0.5 µA, the greater, after 3 min",
            }
            made.append(claims | fate(dice))
    return made
