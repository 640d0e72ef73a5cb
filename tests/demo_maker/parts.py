"""All invented parts: numbered, with gaps in what is stated, and the few that the demonstration repair needs."""

from dataclasses import dataclass
from decimal import Decimal

from demo_maker.cans import can_parts
from demo_maker.dice import Dice
from demo_maker.families import FAMILIES
from demo_maker.films import FILMS, SUPPRESSORS, film_parts, rolled_parts
from demo_maker.small import bead_parts, ceramic_parts
from demo_maker.values import Claims

GAP_SHARE = 0.055
HELD_BACK = 160


@dataclass(frozen=True)
class Stock:
    """The parts that are listed, and those held back for lines that are spoiled on purpose."""

    listed: list[Claims]
    held_back: list[Claims]


def make_parts(seed: int) -> Stock:
    """Every part with its number; some say nothing of height, lead spacing or endurance."""
    dice = Dice(seed, "parts")
    found: list[Claims] = []
    for family in FAMILIES:
        found += can_parts(family, dice)
    for film in (*FILMS, *SUPPRESSORS):
        found += film_parts(film, dice)
    found += [*rolled_parts(dice), *ceramic_parts(dice), *bead_parts(dice)]
    numbered = number_parts(found, Dice(seed, "numbers"))
    held = set(range(len(numbered) // HELD_BACK // 2, len(numbered), len(numbered) // HELD_BACK))
    gaps = Dice(seed, "gaps")
    listed = [with_gaps(part, gaps) for index, part in enumerate(numbered) if index not in held]
    return Stock([*listed, only_open()], [numbered[index] for index in sorted(held)])


def number_parts(found: list[Claims], dice: Dice) -> list[Claims]:
    """The parts with running numbers behind their series word."""
    last: dict[object, int] = {}
    for claims in found:
        series = claims["series"]
        last[series] = last.get(series, dice.between(80, 200)) + dice.between(1, 4)
        claims["part_number"] = f"{series} {last[series]:04d}"
    return found


def with_gaps(claims: Claims, dice: Dice) -> Claims:
    """The claims without some that the maker's sheet leaves out."""
    draws = [dice.chance(GAP_SHARE) for _ in range(4)]
    gone: set[str] = set()
    if draws[0] and claims["shape"] == "can":
        gone |= {"tall_mm", "tall_plus_mm"}
    if draws[1] and claims["shape"] != "axial":
        gone |= {"lead_spacing_mm", "delivered_spacing_mm"}
    if draws[2] and claims.get("life_h"):
        gone |= {"life_h", "life_basis", "life_reference"}
    if draws[3]:
        gone |= {"lead_diameter_mm", "vent"}
    return {term: value for term, value in claims.items() if term not in gone}


def only_open() -> Claims:
    """The one part that suits the organ's vibrato timing, but for a height nobody printed."""
    return {
        **{"maker": "Silberweide", "series": "Ryebarrow", "part_number": "Ryebarrow 9039"},
        **{"technology": "wet aluminium", "polarity": "polar", "capacitance_f": Decimal("0.000039")},
        **{"tolerance_low_pct": Decimal(-10), "tolerance_high_pct": Decimal(10), "rated_v": Decimal(50)},
        **{"lowest_c": Decimal(-40), "rated_c": Decimal(105), "life_h": Decimal(5000), "life_basis": "load life"},
        **{"life_reference": "ambient", "tan_delta": Decimal("0.1"), "tan_delta_hz": Decimal(120)},
        **{"ripple_a": Decimal("0.18"), "ripple_hz": Decimal(120), "leakage_rule": "0.002·C·V after 5 min"},
        **{"shape": "can", "along_mm": Decimal("6.3"), "across_mm": Decimal("6.3"), "lead_spacing_mm": Decimal("2.5")},
        **{"lead_diameter_mm": Decimal("0.5"), "lead_form": "straight", "lead_length_mm": Decimal(14)},
        **{"vent": "none", "life_cycle": "active"},
    }
