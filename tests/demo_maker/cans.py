"""Aluminium capacitors made out of a family: the can grows with C·V, the ripple rating with the surface."""

from decimal import Decimal
from math import ceil, pi, sqrt

from demo_maker import bodies
from demo_maker.bodies import Size
from demo_maker.dice import Dice
from demo_maker.families import Family
from demo_maker.values import Claims, figures, preferred

LOSS = {
    **{
        "4": 0.26,
        "6.3": 0.23,
        "10": 0.2,
        "16": 0.16,
        "25": 0.14,
        "35": 0.12,
        "40": 0.11,
        "50": 0.1,
        "63": 0.09,
        "80": 0.08,
    },
    **{"100": 0.08, "160": 0.16, "200": 0.18, "250": 0.18, "350": 0.2, "400": 0.22, "450": 0.22},
}
SMALLEST_UF = {"4": 47.0, "6.3": 22.0, "10": 10.0, "16": 10.0, "25": 4.7, "35": 2.2}
STYLES = {"axial": "axial", "snap": "snap-in"}
HEAT_W_PER_MM2K = 2.5e-5


def can_parts(family: Family, dice: Dice) -> list[Claims]:
    """Every part of a family, without part numbers yet."""
    made: list[Claims] = []
    for volts in family.volts:
        for uf in preferred(family.values, family.low_uf, family.high_uf):
            size = bodies.smallest(bodies.SIZES[family.bodies], needed_volume(family, uf, volts))
            too_little = float(uf) < SMALLEST_UF.get(volts, 0) and family.polarity == "polar"
            if size and not too_little and not (family.bodies == "snap" and loose(family, uf, volts)):
                made += [can_part(family, uf, volts, size, form) | fate(dice) for form in forms(family, size)]
    return made


def needed_volume(family: Family, uf: Decimal, volts: str) -> float:
    """Volume [mm³] that the wound foil takes."""
    return float(family.k * (float(uf) * float(volts)) ** 0.75)


def loose(family: Family, uf: Decimal, volts: str) -> bool:
    """Whether the foil would rattle in the smallest snap-in can, so that nobody makes it."""
    return needed_volume(family, uf, volts) < bodies.can_volume(bodies.SNAP[0]) / 2


def forms(family: Family, size: Size) -> tuple[str, ...]:
    """The lead forms a body is sold with: tape only holds small cans, a snap-in has tags."""
    if family.bodies == "snap":
        return ("snap-in",)
    return tuple(form for form in family.forms if form != "formed" or float(size[0]) <= 8)


def can_part(family: Family, uf: Decimal, volts: str, size: Size, form: str) -> Claims:
    """The claims a maker prints for one part."""
    style = STYLES.get(family.bodies, "radial")
    claims: Claims = {
        "maker": family.maker,
        "series": family.series,
        "technology": family.technology,
        "polarity": family.polarity,
        "capacitance_f": uf.scaleb(-6),
        "tolerance_low_pct": Decimal(family.tolerance[0]),
        "tolerance_high_pct": Decimal(family.tolerance[1]),
        "rated_v": Decimal(volts),
        "lowest_c": Decimal(family.lowest_c),
        "rated_c": Decimal(family.rated_c),
        "life_h": Decimal(family.life[sum(float(size[0]) > limit for limit in (6.3, 10))]),
        "life_basis": family.basis,
        "life_reference": family.reference,
        "leakage_rule": family.leakage,
        "vent": "vented" if float(size[0]) > 6.3 else "none",
    }
    return {**claims, **electrical(family, uf, volts, size), **outline(family, size, style, form)}


def electrical(family: Family, uf: Decimal, volts: str, size: Size) -> Claims:
    """Loss factor, series resistance and rated ripple current."""
    loss = LOSS[volts] * (1.2 if family.polarity == "bipolar" else 1.0) + (0.04 if family.bodies == "low" else 0)
    loss = (0.12 if family.technology == "polymer aluminium" else loss) + 0.02 * max(ceil(float(uf) / 1000 - 1), 0)
    farads = float(uf) * 1e-6
    watts = HEAT_W_PER_MM2K * bodies.can_surface(size) * (10 if family.rated_c == "85" else 5)
    claims: Claims = {"tan_delta": figures(loss, 2), "tan_delta_hz": Decimal(family.hz)}
    if not family.low_esr:
        ohm = loss / (2 * pi * float(family.hz) * farads)
        return {**claims, "ripple_a": figures(sqrt(watts / ohm), 2), "ripple_hz": Decimal(family.hz)}
    ohm = 0.4 * (216 / bodies.can_volume(size)) ** 1.1 * (1 + float(volts) / 150)
    ohm = ohm / 8 if family.technology == "polymer aluminium" else ohm / 3 if "hybrid" in family.technology else ohm
    esr, fast = figures(ohm, 2), Decimal(100_000)
    return {**claims, "esr_ohm": esr, "esr_hz": fast, "ripple_a": figures(sqrt(watts / ohm), 3), "ripple_hz": fast}


def outline(family: Family, size: Size, style: str, form: str) -> Claims:
    """Body, leads and the way they are delivered."""
    diameter, length = Decimal(size[0]), Decimal(size[1])
    spacing, wire = bodies.leads(style, size[0])
    along, tall = (length, diameter) if style == "axial" else (diameter, length)
    claims: Claims = {
        "shape": "axial" if style == "axial" else "can",
        "along_mm": along,
        "across_mm": diameter,
        "tall_mm": tall,
        "lead_spacing_mm": spacing,
        "lead_diameter_mm": wire,
        "lead_form": form,
        "lead_length_mm": Decimal({"straight": "14", "formed": "12", "cut": "3.5", "snap-in": "4"}[form]),
    }
    if form == "formed":
        claims["delivered_spacing_mm"] = Decimal("2.5") if size[0] == "4" else Decimal(5)
    if family.plus:
        plus = Decimal(family.plus[0]) if diameter < 20 else Decimal(1)
        claims |= {"along_plus_mm": plus, "across_plus_mm": plus}
        claims["tall_plus_mm"] = Decimal(family.plus[1]) if length < 20 else Decimal(2)
    return claims


def fate(dice: Dice) -> Claims:
    """What the maker says of the part's future."""
    number = dice.between(1, 100)
    return {"life_cycle": "active" if number <= 82 else "not for new designs" if number <= 93 else "discontinued"}
