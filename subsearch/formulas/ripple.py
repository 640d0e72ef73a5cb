"""What the heat of a ripple current does to life, by each published law, and how currents of several tones add up.

The law that serves by default, by the core's rise, is `life_with_ripple_h` of `life.py`; `conventions.py` says which
base life each one takes.
"""

from collections.abc import Sequence

from subsearch.errors import RequirementError, known_word
from subsearch.formulas.carriers import Carrier, least, pick, staircase

# Rise of the core temperature at the rated ripple current [K]. Source: core rise
RATED_RISES_K = {"usual": 5.0, "85 °C low-cost": 10.0, "one very small type": 3.5}
# Class [°C], least and most rise [K] at the rated ripple current, by another source. Source: range of core rises
RATED_RISE_RANGES_K = ((85.0, 3.5, 10.0), (105.0, 3.5, 5.0))
# Temperature [°C] and the multiple of the rated ripple current up to it. Source: ripple temperature coefficients
RIPPLE_COEFFICIENTS = {
    "85 °C low-cost": ((65.0, 1.3), (85.0, 1.0)),
    "85 °C": ((50.0, 2.0), (70.0, 1.6), (85.0, 1.0)),
    "105 °C": ((65.0, 2.1), (85.0, 1.7), (105.0, 1.0)),
}
BENDING_LAW_ENDS_K = 40.0  # its denominator 10 - rise / 4 reaches 0. Source: bending ripple law


def rated_rise_by_kind_k(kind: str) -> float:
    """The rise of the core temperature at the rated ripple current that one source prints for a kind of capacitor.

    Args:
        kind: usual, 85 °C low-cost, or one very small type.

    Returns:
        [K] the rise over the ambient.

    Raises:
        UnknownNameError: another kind; the text names the nearest.

    Holds for wet aluminium parts whose maker states no rise; another source prints ranges (RATED_RISE_RANGES_K).
    Source: core rise

    >>> rated_rise_by_kind_k("85 °C low-cost")
    10.0
    """
    return RATED_RISES_K[known_word(kind, RATED_RISES_K, "a kind of capacitor")]


def steeper_ripple_life_h(life_h: Carrier, rise_k: Carrier, rated_rise_k: Carrier, rated_c: Carrier) -> Carrier:
    """Life with ripple, run with the rated one: above that current twice as steep a fall, but in the 85 °C class.

    Args:
        life_h: [h] life at the working temperature; any carrier.
        rise_k: [K] rise of the core temperature at the ripple current that flows; any carrier.
        rated_rise_k: [K] that rise at the rated ripple current; any carrier.
        rated_c: [°C] rated temperature, which is the part's class; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for the classes of 85 and 105 °C; a class above 85 °C is taken as that of 105 °C.
    Source: ripple factor

    >>> [steeper_ripple_life_h(1000, *rises, 105) for rises in ((0, 10), (10, 10), (20, 10))]
    [2000.0, 1000.0, 250.0]
    """
    by_current = pick(rise_k > rated_rise_k, 2.0, 1.0)  # 2 for a base of 4 where 1 is for a base of 2
    by_class = pick(rated_c > 85, 2.0, pick(rated_c <= 85, 1.0))
    return life_h * 2 ** (least(by_current, by_class) * (rated_rise_k - rise_k) / 10)


def five_degree_life_h(life_h: Carrier, rise_k: Carrier) -> Carrier:
    """Life with ripple, run without: half of it for every 5 degrees of rise.

    Args:
        life_h: [h] life at the working temperature; any carrier.
        rise_k: [K] rise of the core temperature at the ripple current that flows; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for small wet aluminium parts.
    Source: five-degree ripple law

    >>> five_degree_life_h(1000, 10)
    250.0
    """
    return life_h * 2 ** (-rise_k / 5)


def bending_ripple_life_h(life_h: Carrier, rise_k: Carrier, rated_rise_k: Carrier) -> Carrier:
    """Life with ripple, run with the rated one: the hotter the core, the fewer degrees halve it.

    Args:
        life_h: [h] life at the working temperature; any carrier.
        rise_k: [K] rise of the core temperature at the ripple current that flows; any carrier.
        rated_rise_k: [K] that rise at the rated ripple current, well below 40; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for rises well below 40 K, where this law leaves no life at all; above 39 K it stays at next to nothing.
    Source: bending ripple law

    >>> round(bending_ripple_life_h(1000, 0, 5))
    1486
    """
    return life_h * 2 ** (_bent(rated_rise_k) - _bent(rise_k))


def _bent(rise_k: Carrier) -> Carrier:
    """How often a rise halves the life by the bending law; a hair below its end it would be too large a number."""
    rise_k = least(rise_k, 0 * rise_k + BENDING_LAW_ENDS_K - 1)
    return rise_k / (10 - 0.25 * rise_k)


def at_rated_frequency_a(ripple_a: Carrier, frequency_multiplier: Carrier) -> Carrier:
    """The current of the rated frequency that heats as much as a current of another frequency.

    Args:
        ripple_a: [A] ripple current that flows, rms; any carrier.
        frequency_multiplier: [none] how much more current its frequency allows than the rated one; any carrier.

    Returns:
        [A] the current at the rated frequency, rms; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain multiplier of 0.

    Holds for multipliers that belong to the part's own rated frequency.
    Source: ripple of several tones

    >>> at_rated_frequency_a(1.5, 1.25)
    1.2
    """
    return ripple_a / frequency_multiplier


def equivalent_ripple_a(ripples_a: Sequence[float], frequency_multipliers: Sequence[float]) -> float:
    """The current of the rated frequency that heats as much as currents of several frequencies together.

    Args:
        ripples_a: [A] ripple current of each tone, rms.
        frequency_multipliers: [none] how much more current its frequency allows than the rated one, for each tone.

    Returns:
        [A] the current at the rated frequency, rms; 0 for no tones; unknown where an input is.

    Raises:
        RequirementError: not as many multipliers as currents, or a multiplier that is not above 0.

    Holds for tones of different frequencies.
    Source: ripple of several tones

    >>> equivalent_ripple_a([3.0, 5.0], [1.0, 1.25])
    5.0
    """
    if len(ripples_a) != len(frequency_multipliers):
        raise RequirementError(
            f"There are {len(ripples_a)} ripple currents and {len(frequency_multipliers)} multipliers, but each "
            "current needs its own. Give as many of both; 1 stands for the rated frequency."
        )
    for multiplier in frequency_multipliers:
        if multiplier <= 0:
            raise RequirementError(
                f"A frequency multiplier is {multiplier:g}, but it must be above 0. Take it from the part's table."
            )
    tones = zip(ripples_a, frequency_multipliers, strict=True)
    return float(sum(at_rated_frequency_a(*tone) ** 2 for tone in tones) ** 0.5)


def ripple_coefficient(working_c: Carrier, ripple_class: str) -> Carrier:
    """How much more than the rated ripple current a cooler part may carry at unchanged life.

    Args:
        working_c: [°C] ambient temperature; any carrier.
        ripple_class: 85 °C low-cost, 85 °C, or 105 °C.

    Returns:
        [none] the multiple of the rated ripple current; unknown where the input is and above the class's temperature.

    Raises:
        UnknownNameError: another class; the text names the nearest.

    Holds for either more ripple or a longer life: who takes the larger current must not also claim the longer life.
    Between two printed temperatures the value of the hotter one.
    Source: ripple temperature coefficients

    >>> ripple_coefficient(60, "85 °C low-cost"), ripple_coefficient(66, "85 °C low-cost")
    (1.3, 1.0)
    """
    known_word(ripple_class, RIPPLE_COEFFICIENTS, "a class of capacitors")
    return staircase(working_c, RIPPLE_COEFFICIENTS[ripple_class])
