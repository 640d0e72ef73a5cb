"""The conditions but the one on the body: yes, no, or None for not stated.

A function's first argument is the need; the others are the part's claims by name.
"""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from brute import laws
from brute.laws import CERAMICS, FILMS, Answer, Number, all_of, fits, reaches, within

Need = Mapping[str, Any]
Offers = tuple[tuple[str | None, Number, bool | None], ...]

TAKEN = {
    "X1": ("X1", "Y1", "Y2"),
    "X2": ("X1", "X2", "Y1", "Y2"),
    "Y1": ("Y1",),
    "Y2": ("Y1", "Y2"),
}


def capacitance(need: Need, capacitance_f: Number) -> Answer:
    low, high = need["capacitance_low_f"], need["capacitance_high_f"]
    return all_of(
        [low is None or reaches(capacitance_f, low), high is None or within(capacitance_f, high)],
    )


def voltage(need: Need, technology: str | None, rated_v: Number) -> Answer:
    if need["rated_v"] is None:
        return True
    return reaches(rated_v, need["rated_v"] * (2 if technology == "tantalum" else 1))


def voltage_ac(need: Need, rated_ac_v: Number) -> Answer:
    if need["rated_ac_v"] is None or need["safety_class"] is not None:
        return True
    return reaches(rated_ac_v, need["rated_ac_v"])


def polarity(need: Need, technology: str | None, polarity: str | None) -> Answer:
    if not need["reverses"] or technology in (*FILMS, *CERAMICS, "paper"):
        return True
    return None if polarity is None else polarity == "bipolar"


def technology(need: Need, technology: str | None) -> Answer:
    if need["technologies"] is None:
        return True
    return None if technology is None else technology in need["technologies"]


def hole(need: Need, lead_diameter_mm: Number) -> Answer:
    if need["hole_diameter_mm"] is None or not need["hole_plated"]:
        return True
    return fits(need["hole_diameter_mm"] - Decimal("0.15"), lead_diameter_mm)


def lead_style(need: Need, shape: str | None, lead_form: str | None) -> Answer:
    if need["lead_style"] is None:
        return True
    if shape is None:
        return None
    style = "axial" if shape == "axial" else "snap-in" if lead_form == "snap-in" else "radial"
    return bool(style == need["lead_style"])


def temperature(need: Need, rated_c: Number) -> Answer:
    return need["working_c"] is None or reaches(rated_c, need["working_c"])


def years(
    need: Need,
    life_h: Number,
    rated_c: Number,
    life_basis: str | None,
    life_reference: str | None,
    ripple_a: Number,
    ripple_hz: Number,
) -> Number:
    """Years that a part worn by heat lasts."""
    hours = laws.worn_life_h(life_h, rated_c, need["working_c"])
    if need["ripple_a"] is not None and hours is not None:
        usable = laws.usable_ripple(ripple_a, ripple_hz, need["ripple_hz"])
        with_ripple = life_basis in ("load life", "useful life") and life_reference != "case"
        factor = laws.ripple_factor(need["ripple_a"], usable, with_ripple)
        hours = None if factor is None else hours * factor
    return None if hours is None else min(hours / (365 * need["hours_a_day"]), Decimal(laws.CEILING_Y))


def life(
    need: Need,
    technology: str | None,
    life_h: Number,
    rated_c: Number,
    life_basis: str | None,
    life_reference: str | None,
    ripple_a: Number,
    ripple_hz: Number,
) -> Answer:
    if need["life_wanted_y"] is None or need["working_c"] is None or technology in (*FILMS, *CERAMICS):
        return True
    if technology in (None, "tantalum", "paper"):
        return None
    return reaches(years(need, life_h, rated_c, life_basis, life_reference, ripple_a, ripple_hz), need["life_wanted_y"])


def ripple(need: Need, technology: str | None, ripple_a: Number, ripple_hz: Number) -> Answer:
    if need["ripple_a"] is None or technology in (*FILMS, *CERAMICS):
        return True
    return reaches(laws.usable_ripple(ripple_a, ripple_hz, need["ripple_hz"]), need["ripple_a"])


def esr(
    need: Need,
    esr_ohm: Number,
    esr_hz: Number,
    tan_delta: Number,
    tan_delta_hz: Number,
    capacitance_f: Number,
) -> Answer:
    least, most = need["esr_least_ohm"], need["esr_most_ohm"]
    if least is None and most is None:
        return True
    found = laws.series_resistance(need["esr_hz"], esr_ohm, esr_hz, tan_delta, tan_delta_hz, capacitance_f)
    return all_of([least is None or reaches(found, least), most is None or within(found, most)])


def leaks(capacitance_f: Number, rated_v: Number, factor: Number, plus_a: Number, floor_a: Number) -> Number:
    """The leakage current [A] that the maker's limit allows."""
    if capacitance_f is None or rated_v is None or factor is None or plus_a is None or floor_a is None:
        return None
    return max(factor * capacitance_f * rated_v + plus_a, floor_a)


def leakage(
    need: Need,
    technology: str | None,
    capacitance_f: Number,
    rated_v: Number,
    leakage_factor: Number,
    leakage_plus_a: Number,
    leakage_floor_a: Number,
) -> Answer:
    if need["leakage_most_a"] is None or technology in (*FILMS, *CERAMICS):
        return True
    found = leaks(capacitance_f, rated_v, leakage_factor, leakage_plus_a, leakage_floor_a)
    return within(found, need["leakage_most_a"])


def safety(need: Need, safety_class: str | None, rated_ac_v: Number) -> Answer:
    if need["safety_class"] is None:
        return True
    rated = need["rated_ac_v"] is None or reaches(rated_ac_v, need["rated_ac_v"]) is True
    return safety_class in TAKEN[need["safety_class"]] and rated


def offer(need: Need, offers: Offers) -> Answer:
    told = [one_offer(need, *one) for one in offers]
    if True in told:
        return True
    return None if None in told else False


def one_offer(need: Need, condition: str | None, stock: Number, traceable: bool | None) -> Answer:
    """Whether one offer answers all that is asked of offers."""
    return all_of(
        [
            None if condition is None else condition in need["conditions"],
            not need["in_stock"] or reaches(stock, Decimal(need["pieces"])),
            need["safety_class"] is None or traceable is True,
        ]
    )
