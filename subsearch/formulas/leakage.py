"""Limits of the leakage current by class, as published: read after a stated time at rated voltage and 20 °C.

The formulas are printed with C in µF and the current in µA; both stay inside this file.
"""

from dataclasses import dataclass
from math import inf, nan, nextafter

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier, least, most, pick

MICRO = 1e-6
ABOVE_100_V = nextafter(100, inf)  # a rating of 100 V has the limits of the lower voltages
MINUTE_S = 60.0


@dataclass(frozen=True)
class LeakageRule:
    """The least of some lines [µA for each µF·V, and µA], but at least a floor [µA].

    The time [s] is that after which it is read, the end of it where a range is stated: the current only falls.
    Unknown: not stated. The resistance [Ω] is the one in series while charging. The voltages [V] are the rated ones
    for which the rule is stated, both ends included.
    """

    lines: tuple[tuple[float, float], ...]
    floor_ua: float
    after_s: float
    lowest_v: float = 0.0
    highest_v: float = inf
    series_ohm: float = nan


LEAKAGE_RULES = {
    # Source: leakage up to 100 V, leakage up to 100 V in another sheet
    "up to 100 V": LeakageRule(((0.01, 0.0),), 3.0, 2 * MINUTE_S, highest_v=100),
    # Source: leakage after 1 minute
    "up to 100 V after 1 minute": LeakageRule(((0.03, 0.0),), 4.0, 1 * MINUTE_S, highest_v=100),
    # No range of voltages is stated. Source: leakage through 1000 ohm
    "3 minutes through 1000 ohm": LeakageRule(((0.01, 0.0),), 4.0, 3 * MINUTE_S, series_ohm=1000),
    # The two lines meet at 1000 µF·V, where one takes over from the other. Source: leakage above 100 V
    "above 100 V": LeakageRule(((0.03, 15.0), (0.02, 25.0)), 0.0, 5 * MINUTE_S, lowest_v=ABOVE_100_V),
    # Source: leakage above 100 V of standard 85
    "above 100 V after 2 minutes": LeakageRule(((0.06, 10.0),), 0.0, 2 * MINUTE_S, lowest_v=ABOVE_100_V),
    # Source: leakage of 160 to 450 V
    "160 to 450 V": LeakageRule(((0.02, 10.0),), 0.0, nan, lowest_v=160, highest_v=450),
    # Source: leakage of bipolar 105
    "bipolar 105 °C": LeakageRule(((0.03, 3.0),), 0.0, 5 * MINUTE_S),
    # Source: leakage of bipolar 85
    "bipolar 85 °C": LeakageRule(((0.04, 4.0),), 0.0, 5 * MINUTE_S),
    # After 2 to 5 minutes. Source: leakage of common bipolar
    "common bipolar": LeakageRule(((0.03, 0.0),), 3.0, 5 * MINUTE_S),
}


def leakage_rule(leakage_class: str) -> LeakageRule:
    """The published rule of a class, with the time after which the current is read.

    Args:
        leakage_class: a word of LEAKAGE_RULES.

    Returns:
        [s and V and Ω] time, rated voltages and series resistance, beside the lines and the floor.

    Raises:
        UnknownNameError: no such class; the text names the nearest.

    Holds for new parts at rated voltage and 20 °C.
    Source: leakage up to 100 V, leakage above 100 V, leakage of bipolar 105

    >>> leakage_rule("up to 100 V").after_s
    120.0
    """
    return LEAKAGE_RULES[known_word(leakage_class, LEAKAGE_RULES, "a class of leakage limits")]


def _charge_uc(capacitance_f: Carrier, rated_v: Carrier) -> Carrier:
    """C in µF times V; unknown where one is not above 0, for which a floor would still give a limit."""
    return pick(capacitance_f > 0, capacitance_f) / MICRO * pick(rated_v > 0, rated_v)


def leakage_limit_a(capacitance_f: Carrier, rated_v: Carrier, leakage_class: str) -> Carrier:
    """The largest leakage current of a new part of a class.

    Args:
        capacitance_f: [F] nominal capacitance; any carrier.
        rated_v: [V] rated voltage, at which it is read; any carrier.
        leakage_class: a word of LEAKAGE_RULES.

    Returns:
        [A] the limit; unknown where an input is or is not above 0, and outside the rated voltages of the rule.

    Raises:
        UnknownNameError: no such class.

    Holds for 20 °C, after the time of the rule; a part long without voltage reads more until it is reformed.
    Source: leakage up to 100 V, leakage above 100 V, leakage of bipolar 105

    >>> leakage_limit_a(100e-6, 25, "up to 100 V")
    2.5e-05
    """
    rule = leakage_rule(leakage_class)
    charge = _charge_uc(capacitance_f, rated_v)
    limit_ua: Carrier = inf
    for slope, plus_ua in rule.lines:
        limit_ua = least(slope * charge + plus_ua, limit_ua)
    in_range = pick(rated_v <= rule.highest_v, most(limit_ua, rule.floor_ua))
    return pick(rated_v >= rule.lowest_v, in_range) * MICRO


def stated_leakage_a(
    capacitance_f: Carrier, rated_v: Carrier, leakage_factor: Carrier, plus_a: Carrier, floor_a: Carrier
) -> Carrier:
    """The largest leakage current of a new part by the limit that its maker states.

    Args:
        capacitance_f: [F] nominal capacitance, above 0; any carrier.
        rated_v: [V] rated voltage, at which it is read, above 0; any carrier.
        leakage_factor: [none] µA for each µF·V; any carrier.
        plus_a: [A] what the limit adds to that; any carrier.
        floor_a: [A] what may leak however small the part; any carrier.

    Returns:
        [A] the limit; unknown where an input is.

    Holds for rated voltage and 20 °C, after the time the maker states: hot, a part leaks several times as much.
    Source: leakage up to 100 V, leakage of bipolar 105

    >>> stated_leakage_a(100e-6, 25, 0.01, 0.0, 3e-6), stated_leakage_a(1e-6, 50, 0.03, 3e-6, 0.0)
    (2.5e-05, 4.5e-06)
    """
    return most(leakage_factor * (capacitance_f * rated_v) + plus_a, floor_a)


def power_law_leakage_a(capacitance_f: Carrier, rated_v: Carrier) -> Carrier:
    """The largest leakage current by a power of capacitance and voltage, read after 5 minutes.

    Args:
        capacitance_f: [F] nominal capacitance; any carrier.
        rated_v: [V] rated voltage, at which it is read; any carrier.

    Returns:
        [A] the limit; unknown where an input is or is not above 0.

    Holds for large cans at 20 °C; from memory, so for comparison only.
    Source: power-law leakage

    >>> round(power_law_leakage_a(1000e-6, 25) * 1e6, 3)
    363.484
    """
    return (0.3 * _charge_uc(capacitance_f, rated_v) ** 0.7 + 4) * MICRO
