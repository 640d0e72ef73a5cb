"""Two parts for one position, in plain Python with Decimal: every pair is tried."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from itertools import combinations_with_replacement
from typing import Any

from brute import conditions as on
from brute import laws
from brute.body import envelope
from brute.conditions import Need
from brute.laws import Answer, Number, all_of
from brute.merged import Claims, words
from brute.oracle import completed
from brute.two_bodies import most_margin

ALONE = (on.voltage, on.voltage_ac, on.technology, on.lead_style, on.temperature, on.hole)
LIFE = words("technology life_h rated_c life_basis life_reference ripple_a ripple_hz")
ESR = words("esr_ohm esr_hz tan_delta tan_delta_hz capacitance_f")
LEAKAGE = words("capacitance_f rated_v leakage_factor leakage_plus_a leakage_floor_a")
BODY = words("shape lead_form along_mm across_mm tall_mm along_plus_mm across_plus_mm tall_plus_mm")
NO_POLES = (*laws.FILMS, *laws.CERAMICS, "paper")
NINTH = Decimal("1e-9")
FREE = Decimal("Infinity")
SIDES = words("left_mm right_mm front_mm back_mm")
Names = tuple[tuple[str, str], tuple[str, str]]


@dataclass(frozen=True)
class Pairs:
    """The pairs that fit, best first, each with its score; and how many may fit."""

    kept: list[tuple[Names, Decimal]]
    left_open: int


def pairs(asked: Need, parts: list[Claims], worth: Mapping[str, Decimal]) -> dict[str, Pairs]:
    """What two of the parts can do for a need, by the way they are joined; a way without any pair is left out."""
    need = completed(asked)
    kept: dict[str, list[tuple[Names, Decimal]]] = {}
    left_open: dict[str, int] = {}
    if need["safety_class"] is not None or need["role"] == "interference suppression":
        return {}
    stated = [part for part in parts if part["capacitance_f"] is not None and alone(need, part) is not False]
    for one, other in combinations_with_replacement(stated, 2):
        for way, answer in joined(need, one, other):
            if answer is True:
                names = tuple(sorted((part["maker"], part["part_number"]) for part in (one, other)))
                kept.setdefault(way, []).append(((names[0], names[1]), score(need, way, one, other, worth)))
            elif answer is None:
                left_open[way] = left_open.get(way, 0) + 1
    return {
        way: Pairs(sorted(kept.get(way, []), key=lambda pair: (-pair[1], pair[0])), left_open.get(way, 0))
        for way in kept.keys() | left_open.keys()
    }


def asked_of(answer: Any, need: Need, part: Claims) -> Answer:
    """A condition answered on a part."""
    names = answer.__code__.co_varnames[1 : answer.__code__.co_argcount]
    told: Answer = answer(need, *(part[name] for name in names))
    return told


def alone(need: Need, part: Claims) -> Answer:
    """What each of two is asked as a single part is."""
    tall = envelope(*(part[name] for name in BODY))[2]
    high = True if need["headroom_mm"] is None else laws.fits(need["headroom_mm"], tall)
    return all_of([*(asked_of(answer, need, part) for answer in ALONE), high, between_holes(need, part)])


def between_holes(need: Need, part: Claims) -> Answer:
    """Whether an axial part finds room between the holes; another one has leads that are led to them."""
    if need["hole_spacing_mm"] is None or part["shape"] not in (None, "axial"):
        return True
    if part["shape"] is None:
        return None
    return laws.fits(need["hole_spacing_mm"], None if part["along_mm"] is None else part["along_mm"] + 5)


def joined(need: Need, one: Claims, other: Claims) -> Iterator[tuple[str, Answer]]:
    """Whether they fit, in each way in which two can be joined."""
    if one is other and need["reverses"]:
        half = {**one, "capacitance_f": one["capacitance_f"] / 2}
        own = [polar(one), asked_of(on.capacitance, need, half), bought(need, one, 2)]
        yield "two back to back", all_of([*own, *both(need, "two back to back", one, other)])
    if need["capacitance_low_f"] is not None and not any(
        laws.reaches(part["capacitance_f"], need["capacitance_low_f"]) for part in (one, other)
    ):
        both_f = {**one, "capacitance_f": one["capacitance_f"] + other["capacitance_f"]}
        own = [asked_of(on.capacitance, need, both_f), *(asked_of(on.polarity, need, part) for part in (one, other))]
        times = 2 if one is other else 1
        own += [bought(need, part, times) for part in (one, other)]
        yield "two in parallel", all_of([*own, *both(need, "two in parallel", one, other)])


def polar(part: Claims) -> Answer:
    """Whether it is a polar part."""
    if part["technology"] in NO_POLES or part["polarity"] == "bipolar":
        return False
    return True if part["polarity"] == "polar" else None


def bought(need: Need, part: Claims, times: int) -> Answer:
    """Whether so many for each position can be bought of one offer."""
    told = [sells(need, offer, times) for offer in part["sold"]]
    return True if True in told else None if None in told else False


def sells(need: Need, offer: Claims, times: int) -> Answer:
    more = {**need, "pieces": times * need["pieces"]}
    return on.one_offer(more, offer["condition"], offer["stock"], offer["traceable"])


def both(need: Need, way: str, one: Claims, other: Claims) -> Iterator[Answer]:
    """What is asked of both together: the body, heat and ripple of each, the series resistance."""
    yield alone(need, one)
    yield alone(need, other)
    yield from bodies(need, one, other)
    for part, partner in ((one, other), (other, one)):
        its = shared(need, way, part, partner)
        yield asked_of(on.ripple, its, part)
        yield asked_of(on.life, its, part)
    if need["leakage_most_a"] is not None:
        yield laws.within(leakage(way, one, other), need["leakage_most_a"])
    least, most = need["esr_least_ohm"], need["esr_most_ohm"]
    if least is not None or most is not None:
        ohm = resistance(need, way, one, other)
        yield least is None or laws.reaches(ohm, least)
        yield most is None or laws.within(ohm, most)


def leaked(part: Claims) -> Number:
    """What the maker's limit lets a part leak [A]; film and ceramic next to nothing."""
    if part["technology"] in (*laws.FILMS, *laws.CERAMICS):
        return Decimal(0)
    return on.leaks(*(part[name] for name in LEAKAGE))


def leakage(way: str, one: Claims, other: Claims) -> Number:
    """What both leak: one behind the other no more than one, side by side the sum."""
    its, others = leaked(one), leaked(other)
    return its if way == "two back to back" else None if its is None or others is None else its + others


def shared(need: Need, way: str, part: Claims, partner: Claims) -> dict[str, Any]:
    """The need with the ripple that this one carries."""
    if need["ripple_a"] is None or way == "two back to back":
        return dict(need)
    both_f = part["capacitance_f"] + partner["capacitance_f"]
    return {**need, "ripple_a": need["ripple_a"] * part["capacitance_f"] / both_f}


def resistance(need: Need, way: str, one: Claims, other: Claims) -> Number:
    """Series resistance of both."""
    ohms = [laws.series_resistance(need["esr_hz"], *(part[name] for name in ESR)) for part in (one, other)]
    if ohms[0] is None or ohms[1] is None:
        return None
    return ohms[0] + ohms[1] if way == "two back to back" else 1 / (1 / ohms[0] + 1 / ohms[1])


def free(need: Need) -> tuple[Number, Number]:
    """The rectangle of the free room, no side farther than the free diameter reaches; None: no end."""
    diameter = need["free_diameter_mm"]
    reach = [
        min((limit for limit in (need[side], diameter and diameter / 2) if limit is not None), default=None)
        for side in SIDES
    ]
    along, across = (None if one is None or other is None else one + other for one, other in (reach[:2], reach[2:]))
    return along, across


def gap(need: Need, one: Claims, other: Claims) -> Number:
    """The room between and around both in the rectangle; infinite where none is asked, None where it is not known."""
    along, across = free(need)
    if along is None and across is None:
        return FREE
    flat = [outline(part) for part in (one, other)]
    if flat[0] is None or flat[1] is None:
        return None
    return most_margin(along, across, flat[0], flat[1], (one["shape"] == "can", other["shape"] == "can"))


def outline(part: Claims) -> tuple[Decimal, Decimal] | None:
    """The largest body from above; of a can the larger size counts both ways; None where it is not known."""
    along, across, _ = envelope(*(part[name] for name in BODY))
    if part["shape"] is None or along is None or across is None:
        return None
    return (max(along, across), max(along, across)) if part["shape"] == "can" else (along, across)


def round_gap(need: Need, one: Claims, other: Claims) -> Number:
    """The same of two cans in the round space; None where it is not known."""
    if {one["shape"], other["shape"]} != {"can"}:
        return None
    first, second = outline(one), outline(other)
    if first is None or second is None:
        return None
    diameter: Decimal = need["free_diameter_mm"]
    return min((diameter - first[0] - second[0]) / 3, (diameter - max(first[0], second[0])) / 2)


def bodies(need: Need, one: Claims, other: Claims) -> Iterator[Answer]:
    room = gap(need, one, other)
    yield None if room is None else room >= -laws.MM_NEAR
    if need["free_diameter_mm"] is not None:
        inside = round_gap(need, one, other)
        short = inside is not None and inside < -laws.MM_NEAR
        nearer = any(need[side] is not None and need[side] < need["free_diameter_mm"] / 2 for side in SIDES)
        yield False if short else None if inside is None or nearer else True


def score(need: Need, way: str, one: Claims, other: Claims, worth: Mapping[str, Decimal]) -> Decimal:
    """Room and value of both, and half of what each is worth by itself."""
    each = [own(shared(need, way, *pair), pair[0], 2 if one is other else 1, worth) for pair in
            ((one, other), (other, one))]  # fmt: skip
    value = Decimal(0)
    if need["capacitance_f"] is not None:
        one_f, other_f = one["capacitance_f"], other["capacitance_f"]
        both_f = one_f / 2 if way == "two back to back" else one_f + other_f
        value = 1 - abs((both_f / need["capacitance_f"]).ln() / Decimal(2).ln())
    heat = (each[0][1] + each[1][1]) / 2 if need["ripple_a"] is not None else Decimal(0)
    half = [each[at][0] + (each[at][1] if need["ripple_a"] is None else 0) for at in (0, 1)]
    owned = ninth(half[0]) if one is other else ninth(half[0] / 2) + ninth(half[1] / 2)
    return ninth(clearance(need, one, other) + value + heat) + owned


def ninth(x: Decimal) -> Decimal:
    """To the ninth place."""
    return x.quantize(NINTH, ROUND_HALF_UP)


def clearance(need: Need, one: Claims, other: Claims) -> Decimal:
    tall = [envelope(*(part[name] for name in BODY))[2] for part in (one, other)]
    margins = [need["headroom_mm"] - size for size in tall if need["headroom_mm"] is not None and size is not None]
    room = gap(need, one, other)
    margins += [room] if room is not None and room < FREE else []
    inside = round_gap(need, one, other) if need["free_diameter_mm"] is not None else None
    margins += [inside] if inside is not None else []
    return min(min(margins) / 2, Decimal(1)) if margins else Decimal(0)


def own(need: Need, part: Claims, times: int, worth: Mapping[str, Decimal]) -> tuple[Decimal, Decimal]:
    """What one part is worth by itself: volts, price and stock; and its life."""
    added = Decimal(0)
    if need["rated_v"] is not None and part["rated_v"] is not None:
        added += min((part["rated_v"] / need["rated_v"] - 1) / Decimal("0.5"), Decimal(1)) / 2
    pieces = times * need["pieces"]
    offer, price = best_offer(need, part, times, worth)
    if price is not None:
        added += 1 / (1 + price / pieces)
    if offer["stock"] is not None:
        deep = Decimal(offer["stock"]) / pieces
        times_stock = max(Decimal(-3), min(Decimal(3), deep.ln() / Decimal(2).ln())) / 3 if deep > 0 else Decimal(-1)
        added += times_stock / 4
    return added, heat(need, part)


def heat(need: Need, part: Claims) -> Decimal:
    if need["life_wanted_y"] is None or need["working_c"] is None:
        return Decimal(0)
    if part["technology"] in (*laws.FILMS, *laws.CERAMICS):
        return Decimal(3) / 2
    uncapped = uncapped_years(need, part)
    if uncapped is None:
        return Decimal(0)
    wanted: Decimal = need["life_wanted_y"]
    return min(Decimal(3), (uncapped / wanted).ln() / Decimal(2).ln()) / 2


def uncapped_years(need: Need, part: Claims) -> Number:
    if part["technology"] not in ("wet aluminium", "polymer aluminium", "hybrid aluminium"):
        return None
    hours = laws.worn_life_h(part["life_h"], part["rated_c"], need["working_c"])
    if need["ripple_a"] is not None and hours is not None:
        usable = laws.usable_ripple(part["ripple_a"], part["ripple_hz"], need["ripple_hz"])
        with_ripple = part["life_basis"] in ("load life", "useful life") and part["life_reference"] != "case"
        factor = laws.ripple_factor(need["ripple_a"], usable, with_ripple)
        hours = None if factor is None else hours * factor
    return None if hours is None else hours / (365 * need["hours_a_day"])


def best_offer(need: Need, part: Claims, times: int, worth: Mapping[str, Decimal]) -> tuple[Claims, Number]:
    """The offer that can be bought and costs least, and what all pieces cost."""
    pieces = times * need["pieces"]
    found = [(sells(need, offer, times), cost(offer, pieces, worth), offer) for offer in part["sold"]]
    ranked = [
        (answer is not True, price is None, price or Decimal(0), offer["supplier"], offer["supplier_number"] or "")
        for answer, price, offer in found
    ]
    at = min((place for place, one in enumerate(found) if one[0] is not False), key=lambda place: ranked[place])
    return found[at][2], found[at][1]


def cost(offer: Claims, pieces: int, worth: Mapping[str, Decimal]) -> Number:
    """What they cost in one's own currency."""
    pack = Decimal(offer["pack"] or 1)
    sums = [
        (max(Decimal(pieces), Decimal(offer["minimum"] or 1), Decimal(quantity)) / pack).to_integral_value(
            ROUND_CEILING
        )
        * pack
        * price
        for quantity, price in offer["prices"]
    ]
    least = min(sums)
    return Decimal(0) if least == 0 else least * worth[offer["currency"]] if offer["currency"] in worth else None
