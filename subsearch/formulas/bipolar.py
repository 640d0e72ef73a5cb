"""Bipolar parts: the alternating current and heat of a signal across them; what polar ones bear in reverse."""

from math import tau

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier

# What is said of a polar part in reverse [V]: the sources disagree, so these are for comparison, never a margin.
REVERSE_LIMITS = {
    "short time": (1.5, 2.0),  # Source: reverse for a short time, reverse of large cans
    "at most": (1.5,),  # Source: reverse at most
    "as a range": (1.0, 1.5),  # Source: reverse as a range
    "test of the standard": (1.0,),  # Source: reverse test
}


def signal_current_a(rms_v: Carrier, frequency_hz: Carrier, capacitance_f: Carrier) -> Carrier:
    """The alternating current through a capacitor with a signal across it.

    Args:
        rms_v: [V] alternating voltage across the part, rms; any carrier.
        frequency_hz: [Hz] frequency of the signal; any carrier.
        capacitance_f: [F] capacitance; any carrier.

    Returns:
        [A] the current, rms; unknown where an input is.

    Holds for frequencies well below self-resonance and small losses.
    Source: reactive current

    >>> round(signal_current_a(10, 1000, 4.7e-6), 5)
    0.29531
    """
    return tau * frequency_hz * capacitance_f * rms_v


def signal_heat_w(rms_v: Carrier, current_a: Carrier, tan_delta: Carrier) -> Carrier:
    """The heat made in a capacitor by the current of a signal; its rise is left to the law of the core rise.

    Args:
        rms_v: [V] alternating voltage across the part, rms; any carrier.
        current_a: [A] current through it, rms; any carrier.
        tan_delta: [none] loss factor at that frequency; any carrier.

    Returns:
        [W] the heat; unknown where an input is.

    Holds for small losses, up to about 0.3; a loss factor printed for 120 Hz says nothing about 1 kHz.
    Source: heat of losses

    >>> signal_heat_w(10, 0.25, 0.1)
    0.25
    """
    return rms_v * current_a * tan_delta


def reverse_limits_v(reverse_case: str) -> tuple[float, ...]:
    """What published sources let a polar electrolytic part bear in reverse: to compare, not to rely on.

    Args:
        reverse_case: a word of REVERSE_LIMITS.

    Returns:
        [V] each figure that is stated for the case.

    Raises:
        UnknownNameError: no such case; the text names the nearest.

    Holds for wet aluminium parts; the sources disagree, and none lets a signal reverse a part day by day.
    Source: reverse for a short time, reverse at most, reverse of large cans, reverse as a range, reverse test

    >>> reverse_limits_v("short time")
    (1.5, 2.0)
    """
    return REVERSE_LIMITS[known_word(reverse_case, REVERSE_LIMITS, "a case of reverse voltage")]
