"""How long a capacitor lasts: temperature, ripple, and the calendar."""

from subsearch.formulas.carriers import Carrier, least

CEILING_Y = 15.0  # the seal ages switched on or off. Source: calendar ceiling
# The usual rise of the core temperature at the rated ripple current, unless a maker states another. Source: core rise
RATED_RISE_K = 5.0


def life_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier) -> Carrier:
    """Life at the working temperature: twice as long for every 10 degrees cooler.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for wet aluminium and hybrid parts, best from 70 to 90 °C; below 40 °C and above 105 °C an extrapolation.
    Source: ten-degree rule, ten-degree range

    >>> life_h(1000, 105, 45)
    64000.0
    """
    return base_life_h * 2 ** ((rated_c - working_c) / 10)


def rise_k(rated_rise_k: Carrier, ripple_a: Carrier, rated_ripple_a: Carrier) -> Carrier:
    """Rise of the core temperature over the ambient at a ripple current: it goes with the square of the current.

    Args:
        rated_rise_k: [K] that rise at the rated ripple current; any carrier.
        ripple_a: [A] ripple current that flows, rms; any carrier.
        rated_ripple_a: [A] rated ripple current at the same frequency, rms, above 0; any carrier.

    Returns:
        [K] the rise; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain rated ripple current of 0.

    Holds for currents of one frequency; the equivalent one of several tones will do.
    Source: core rise

    >>> rise_k(5, 0.5, 1)
    1.25
    """
    return rated_rise_k * (ripple_a / rated_ripple_a) ** 2


def life_with_ripple_h(life_h: Carrier, rise_k: Carrier, rated_rise_k: Carrier, with_ripple: Carrier) -> Carrier:
    """Life with the heat of the ripple current: the convention of the base life is data, not a branch.

    Args:
        life_h: [h] life at the working temperature; any carrier.
        rise_k: [K] rise of the core temperature at the ripple current that flows; any carrier.
        rated_rise_k: [K] that rise at the rated ripple current; any carrier.
        with_ripple: [1 or 0] 1 where the base life was run with rated ripple, else 0; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for ripple up to about the rated current; above it other published laws fall faster. For a base life run
    without ripple (with_ripple = 0) the five-degree law falls faster at any rise.
    Source: ripple on the core, ripple factor, five-degree ripple law

    >>> life_with_ripple_h(24000, 20, 5, 0)
    6000.0
    """
    return life_h * 2 ** ((with_ripple * rated_rise_k - rise_k) / 10)


def life_y(life_h: Carrier, hours_a_day: Carrier, ceiling_y: Carrier = CEILING_Y) -> Carrier:
    """Life in calendar years at so many hours a day, never above the ceiling.

    Args:
        life_h: [h] life in working hours; any carrier.
        hours_a_day: [h] hours switched on a day, above 0; any carrier.
        ceiling_y: [years] calendar age at which the seal gives up; any carrier.

    Returns:
        [years] the life; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain 0 hours a day.

    Holds for parts with a rubber seal; years of 365 days.
    Source: hours in years, calendar ceiling

    >>> life_y(14600, 8)
    5.0
    >>> life_y(1_000_000, 8)
    15.0
    """
    return least(life_h / (365 * hours_a_day), ceiling_y)


def ceiling_h(ceiling_y: Carrier = CEILING_Y) -> Carrier:
    """The ceiling of life in hours of the calendar, which pass switched on or off.

    Args:
        ceiling_y: [years] calendar age at which the seal gives up; any carrier.

    Returns:
        [h] the ceiling; unknown where the input is.

    Holds for parts with a rubber seal; years of 365 days.
    Source: hours in years, calendar ceiling

    >>> ceiling_h()
    131400.0
    """
    return 8760 * ceiling_y
