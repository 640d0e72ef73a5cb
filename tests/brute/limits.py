"""Limits of heat, life, ripple and series resistance drawn close to what one part answers: met, or just not met."""

from decimal import Decimal
from random import Random
from typing import Any

from brute.conditions import leaks, years
from brute.laws import CEILING_Y, series_resistance
from brute.merged import Claims

LIFE_CLAIMS = ("life_h", "rated_c", "life_basis", "life_reference", "ripple_a", "ripple_hz")
LEAKAGE_CLAIMS = ("capacitance_f", "rated_v", "leakage_factor", "leakage_plus_a", "leakage_floor_a")
ESR_CLAIMS = ("esr_ohm", "esr_hz", "tan_delta", "tan_delta_hz", "capacitance_f")
NEAR = [Decimal(text) for text in ("1", "0.9999999999", "1.0000000005", "0.99999", "1.00001", "0.9", "0.7", "1.2")]
USUAL_C = ("25", "40", "45", "50", "55", "60", "70", "85", "105")


def heat(dice: Random, part: Claims) -> dict[str, Any]:
    """Temperature, hours a day, ripple, and the years wanted."""
    asked: dict[str, Any] = {}
    if dice.random() < 0.7:
        own = part["rated_c"] or Decimal(85)
        asked["working_c"] = Decimal(dice.choice(USUAL_C)) if dice.random() < 0.75 else own + dice.choice([0, 0, -5, 1])
    if dice.random() < 0.6:
        asked["hours_a_day"] = Decimal(dice.choice(["0.5", "2", "4", "8", "12", "24"]))
    asked |= ripple(dice, part)
    if dice.random() < 0.65:
        asked["life_wanted_y"] = wanted(dice, part, asked)
    return asked


def ripple(dice: Random, part: Claims) -> dict[str, Any]:
    """A ripple current near the rated one, at a frequency near the rated one."""
    asked: dict[str, Any] = {}
    rated = part["ripple_a"] or Decimal("0.1")
    if dice.random() < 0.4:
        asked["ripple_a"] = rated * dice.choice([*NEAR, Decimal("0.5"), Decimal("0.2")])
    own = part["ripple_hz"] or Decimal(120)
    near = [own, own / Decimal("1.25"), own / Decimal("1.25") - Decimal("0.5"), own * 2, Decimal(100), Decimal(100_000)]
    if dice.random() < (0.7 if asked else 0.05):
        asked["ripple_hz"] = dice.choice(near)
    return asked


def wanted(dice: Random, part: Claims, asked: dict[str, Any]) -> Decimal:
    """Years wanted: round ones, or close to what the part lasts."""
    need = {"ripple_a": None, "ripple_hz": None, "hours_a_day": Decimal(24), **asked}
    found = years(need, *(part[name] for name in LIFE_CLAIMS)) if "working_c" in asked else None
    if found is None or dice.random() < 0.35:
        return Decimal(dice.choice(["1", "5", "10", "15"]))
    return min(found * dice.choice(NEAR), Decimal(CEILING_Y))


def leaking(dice: Random, part: Claims) -> dict[str, Any]:
    """A limit of the leakage current near the part's own."""
    if dice.random() > 0.3:
        return {}
    found = leaks(*(part[name] for name in LEAKAGE_CLAIMS)) or Decimal("3e-6")
    return {"leakage_most_a": found * dice.choice([*NEAR, Decimal("0.3"), Decimal(3)])}


def resistance(dice: Random, part: Claims) -> dict[str, Any]:
    """A band of series resistance at the frequency of the part's own claim, or at another one."""
    if dice.random() > (0.6 if part["esr_ohm"] is not None else 0.2):
        return {}
    stated = [hz for hz in (part["esr_hz"], part["tan_delta_hz"]) if hz is not None]
    hz = dice.choice([*stated, *stated, *stated, Decimal(120), Decimal(100_000)])
    found = series_resistance(hz, *(part[name] for name in ESR_CLAIMS)) or Decimal("0.5")
    least, most = found * dice.choice(NEAR[:2]), found * dice.choice([*NEAR[:3], Decimal(2)])
    band = dice.random()
    if band < 0.3:
        return {"esr_hz": hz, "esr_least_ohm": found * dice.choice(NEAR)}
    if band < 0.6:
        return {"esr_hz": hz, "esr_most_ohm": found * dice.choice(NEAR)}
    return {"esr_hz": hz, "esr_least_ohm": min(least, most) / dice.choice([1, 3]), "esr_most_ohm": most}
