"""Small catalogs drawn from the demo's parts, and requirements that two of them may answer together."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal, localcontext
from random import Random

from brute.laws import DIGITS
from brute.limits import heat
from brute.merged import Claims
from brute.needs import Asked, more, times
from brute.several import FREE, gap, leakage, pairs, resistance, round_gap
from brute.shaken import OFFER_POOLS, PART_POOLS, shake

MANY, TWINS = 18, 6
NOT_SHAKEN = ("capacitance_f", "safety_class")
EXACT = ("1", "1", "0.9999999999", "1.0000000005")


@dataclass(frozen=True)
class Small:
    """A few parts, each with its offers in `sold`, and what is asked of them."""

    parts: list[Claims]
    offers: list[Claims]
    asked: list[Asked]


def small(parts: Sequence[Claims], offers: Sequence[Claims], seed: int, needs: int) -> Small:
    """A small catalog and so many requirements; every other one is of parts with claims missing or at odds."""
    dice = Random(f"several {seed}")
    some = near_in_value(parts, dice)
    keys = {(part["maker"], part["part_number"]) for part in some}
    its = [offer for offer in offers if (offer["maker"], offer["part_number"]) in keys]
    twins, twin_offers = doubles(some, its, dice)
    some, its = [*some, *twins], [*its, *twin_offers]
    if seed % 2:
        pools = {term: pool for term, pool in PART_POOLS.items() if term not in NOT_SHAKEN}
        some, its = shake(some, pools, dice)[0], shake(its, OFFER_POOLS, dice)[0]
        some[0]["capacitance_f"] = None
    told = [{**part, "sold": [offer for offer in its if same(offer, part)]} for part in some]
    with localcontext(prec=DIGITS):
        return Small(told, its, [question(dice, told, number) for number in range(needs)])


def same(offer: Claims, part: Claims) -> bool:
    return bool(offer["maker"] == part["maker"] and offer["part_number"] == part["part_number"])


def near_in_value(parts: Sequence[Claims], dice: Random) -> list[Claims]:
    """Parts of about one value and somewhat less, some of them of one kind."""
    ordered = sorted(parts, key=lambda part: (part["maker"], part["part_number"]))
    first = dice.choice([part for part in ordered if part["capacitance_f"] is not None])
    value = first["capacitance_f"]
    near = [p for p in ordered if p["capacitance_f"] is not None and value / 5 <= p["capacitance_f"] <= value * 2]
    kind = [part for part in near if part["technology"] == first["technology"]]
    chosen = [first, *dice.sample(kind, min(len(kind), MANY * 2 // 3)), *dice.sample(near, min(len(near), MANY // 3))]
    return list({(part["maker"], part["part_number"]): dict(part) for part in chosen}.values())


def doubles(parts: list[Claims], offers: list[Claims], dice: Random) -> tuple[list[Claims], list[Claims]]:
    """The same parts and offers once more under other names, some a little thinner: ties between bodies too."""
    chosen = dice.sample(parts, min(TWINS, len(parts)))
    names = {(part["maker"], part["part_number"]): f"{part['part_number']} {dice.choice('AZ')}" for part in chosen}
    twins = [
        {**part, **thinner(part, dice), "part_number": names[part["maker"], part["part_number"]]} for part in chosen
    ]
    its = [offer for offer in offers if (offer["maker"], offer["part_number"]) in names]
    again = [
        {
            **offer,
            "part_number": names[offer["maker"], offer["part_number"]],
            "supplier_number": f"{offer['supplier_number']} again",
        }
        for offer in its
    ]
    return twins, again


def thinner(part: Claims, dice: Random) -> Claims:
    """The sizes of a body a tenth of a millimetre smaller, or as they are."""
    sizes = ("along_mm", "across_mm", "tall_mm") if dice.random() < 0.5 else ()
    return {size: part[size] - Decimal("0.1") for size in sizes if part[size] is not None}


def question(dice: Random, parts: list[Claims], number: int) -> Asked:
    """One requirement around two of the parts; nine in ten are drawn until any two may answer it, most until two do."""
    worth = {"EUR": Decimal(1), "GBP": Decimal(1)}
    wanted = dice.choice([0, *[1] * 3, *[2] * 6])
    for _ in range(40):
        asked = drawn(dice, parts, number)
        found = pairs(asked, parts, worth).values() if wanted else ()
        if wanted == 0 or any(one.kept or (wanted == 1 and one.left_open) for one in found):
            break
    return asked


def drawn(dice: Random, parts: list[Claims], number: int) -> Asked:
    known = [part for part in parts if part["capacitance_f"] is not None]
    one = dice.choice(known)
    other = one if dice.random() < 0.3 else dice.choice(known)
    polar = [part for part in known if part["polarity"] == "polar"]
    asked: Asked = {"reference": f"S{number}", "pieces": dice.choice([1, 1, 2, 6, 48])}
    if dice.random() < 0.35 and polar:
        one = other = dice.choice(polar)
        asked |= {"reverses": True, **value(dice, one["capacitance_f"] / 2)}
    else:
        asked |= {"reverses": dice.random() < 0.1, **value(dice, one["capacitance_f"] + other["capacitance_f"])}
    for asking in (volts, words, buying):
        asked |= asking(dice, one, other)
    asked |= heat(dice, one) if dice.random() < 0.6 else {}
    if "ripple_a" in asked:
        asked["ripple_a"] *= dice.choice([1, (one["capacitance_f"] + other["capacitance_f"]) / one["capacitance_f"]])
    asked |= series_resistance(dice, asked, one, other)
    asked |= leaking(dice, asked, one, other)
    asked |= holes(dice, one)
    return asked | room(dice, one, other)


def value(dice: Random, both_f: Decimal) -> Asked:
    """A window around what both make, often met exactly; with the old value or without."""
    low, high = both_f * Decimal(dice.choice([*EXACT, "0.9", "0.6"])), both_f * Decimal(dice.choice([*EXACT, "1.3"]))
    draw = dice.random()
    if draw < 0.05:
        return {"capacitance_high_f": high}
    if draw < 0.15:
        return {"capacitance_low_f": low}
    asked = {"capacitance_low_f": min(low, high), "capacitance_high_f": max(low, high)}
    return asked | ({"capacitance_f": both_f * Decimal(dice.choice(["1", "0.9", "1.1"]))} if draw < 0.8 else {})


def volts(dice: Random, one: Claims, other: Claims) -> Asked:
    rated = [part["rated_v"] for part in (one, other) if part["rated_v"] is not None]
    if not rated or dice.random() < 0.2:
        return {}
    return {"rated_v": times(dice, min(rated), "1", "1", "0.63", "1.01")}


def words(dice: Random, one: Claims, other: Claims) -> Asked:
    style = "axial" if one["shape"] == "axial" else "snap-in" if one["lead_form"] == "snap-in" else "radial"
    asked: Asked = {"lead_style": style} if dice.random() < 0.3 else {}
    draw = dice.random()
    if draw < 0.06:
        asked["role"] = "interference suppression"
    elif draw < 0.1:
        asked["safety_class"] = "X2"
    elif draw < 0.4:
        asked["role"] = dice.choice(["coupling", "rail decoupling", "reservoir"])
    elif draw < 0.6:
        asked["technologies"] = tuple(dict.fromkeys(part["technology"] or "paper" for part in (one, other)))
    return asked


def buying(dice: Random, one: Claims, other: Claims) -> Asked:
    asked: Asked = {}
    stocks = [int(offer["stock"]) for offer in one["sold"] if offer["stock"]]
    if stocks and dice.random() < 0.4:
        asked["pieces"] = max(1, dice.choice([stock + step for stock in (*stocks, *(s // 2 for s in stocks))
                                              for step in (0, 0, 1)]))  # fmt: skip
    if dice.random() < 0.3:
        asked["in_stock"] = dice.random() < 0.5
    if dice.random() < 0.2:
        asked["conditions"] = dice.choice([("new",), ("new", "old stock", "pulled")])
    return asked


def series_resistance(dice: Random, asked: Asked, one: Claims, other: Claims) -> Asked:
    hz = one["esr_hz"] or one["tan_delta_hz"]
    if hz is None or dice.random() < 0.7:
        return {}
    way = "two back to back" if asked["reverses"] else "two in parallel"
    ohm = resistance({"esr_hz": hz}, way, one, other) or Decimal("0.5")
    ends = {"esr_most_ohm": ohm * Decimal(dice.choice([*EXACT, "2"]))}
    return {"esr_hz": hz} | ends | ({"esr_least_ohm": ohm / 3} if dice.random() < 0.3 else {})


def leaking(dice: Random, asked: Asked, one: Claims, other: Claims) -> Asked:
    """A leakage that both just allow, or a little more or less."""
    most = leakage("two back to back" if asked["reverses"] else "two in parallel", one, other)
    return {"leakage_most_a": times(dice, most, *EXACT, "0.8", "1.5")} if most and dice.random() < 0.4 else {}


def holes(dice: Random, one: Claims) -> Asked:
    """Holes as far apart as an axial body needs, or a little less; a plated one as wide as its lead needs, or less."""
    asked: Asked = {}
    if one["shape"] == "axial" and one["along_mm"] is not None and dice.random() < 0.5:
        asked["hole_spacing_mm"] = one["along_mm"] + Decimal(dice.choice(["5", "5", "4.9", "7"]))
    if dice.random() < 0.15:
        wide = (one["lead_diameter_mm"] or Decimal("0.6")) + Decimal(dice.choice(["0.15", "0.1", "0.3"]))
        asked |= {"hole_diameter_mm": wide, "hole_plated": dice.random() < 0.8}
    return asked


def room(dice: Random, one: Claims, other: Claims) -> Asked:
    """The free room, often to the tenth of a millimetre what both need at their largest, in a row or diagonally."""
    sides = [[part[f"{side}_mm"] or Decimal(5) for part in (one, other)] for side in ("along", "across", "tall")]
    steps = ("0", "0", "0.5", "1", "1.5", "3", "-0.5")
    asked: Asked = {}
    if dice.random() < 0.5:
        asked["headroom_mm"] = more(dice, max(sides[2]), *steps)
    draw = dice.random()
    along, across = sum(sides[0]), max(sides[1])
    if draw < 0.35:
        along, across = max(sides[0]), sum(sides[1])
    elif draw < 0.55:
        along, across = sum(sides[0]) * Decimal("0.85"), sum(sides[1]) * Decimal("0.85")
    if draw < 0.75:
        left, front = (more(dice, Decimal(size) / 2, *steps) for size in (along, across))
        asked |= {"left_mm": left, "right_mm": left, "front_mm": front, "back_mm": front}
        for side in dice.sample(["left_mm", "right_mm", "front_mm", "back_mm"], dice.choice([0, 0, 0, 1, 2])):
            del asked[side]
    if draw < 0.1 or 0.75 <= draw < 0.9:
        asked["free_diameter_mm"] = more(dice, Decimal(sum(sides[1])), *steps)
    if dice.random() < 0.3:
        asked = exactly(asked, one, other)
    return asked


def exactly(asked: Asked, one: Claims, other: Claims) -> Asked:
    """The same room grown or shrunk so that these two just fit."""
    need = {**dict.fromkeys(("left_mm", "right_mm", "front_mm", "back_mm", "free_diameter_mm", "headroom_mm")), **asked}
    found = round_gap(need, one, other) if need["free_diameter_mm"] is not None else gap(need, one, other)
    if found is None or not Decimal("-0.9") < found < FREE:
        return asked
    by = {"free_diameter_mm": 3 * found, **dict.fromkeys(("left_mm", "right_mm", "front_mm", "back_mm"), found)}
    moved = {name: size - by.get(name, Decimal(0)) for name, size in asked.items()}
    return moved if all(size > 0 for size in moved.values()) else asked
