"""Loss factor and series resistance, one from the other, their heat, and the adder to a loss factor above 1000 µF."""

from math import tau

from subsearch.formulas.as_written import SLACK
from subsearch.formulas.carriers import Carrier, most, step

ADDER = 0.02  # for each 1000 µF above the first. Source: adder above 1000 µF
THOUSAND_F = 1000e-6


def esr_ohm(tan_delta: Carrier, frequency_hz: Carrier, capacitance_f: Carrier) -> Carrier:
    """Series resistance from the loss factor.

    Args:
        tan_delta: [none] loss factor; any carrier.
        frequency_hz: [Hz] frequency at which it is stated, above 0; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.

    Returns:
        [Ω] the series resistance at that frequency; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain frequency or capacitance of 0.

    Holds for that frequency only: neither number may be carried to another.
    Source: loss factor

    >>> round(esr_ohm(0.1, 120, 10e-6), 4)
    13.2629
    """
    return tan_delta / (tau * frequency_hz * capacitance_f)


def tan_delta(esr_ohm: Carrier, frequency_hz: Carrier, capacitance_f: Carrier) -> Carrier:
    """Loss factor from the series resistance.

    Args:
        esr_ohm: [Ω] series resistance; any carrier.
        frequency_hz: [Hz] frequency at which it is stated; any carrier.
        capacitance_f: [F] capacitance; any carrier.

    Returns:
        [none] the loss factor at that frequency; unknown where an input is.

    Holds for that frequency only: neither number may be carried to another.
    Source: loss factor

    >>> round(tan_delta(13.2629, 120, 10e-6), 6)
    0.1
    """
    return tau * frequency_hz * capacitance_f * esr_ohm


def quality_factor(tan_delta: Carrier) -> Carrier:
    """Quality factor from the loss factor: one over it.

    Args:
        tan_delta: [none] loss factor, above 0; any carrier.

    Returns:
        [none] the quality factor at the frequency of the loss factor; unknown where the input is.

    Raises:
        ZeroDivisionError: a plain loss factor of 0.

    Holds for that frequency only.
    Source: quality factor

    >>> quality_factor(0.125)
    8.0
    """
    return 1 / tan_delta


def esr_heat_w(current_a: Carrier, esr_ohm: Carrier) -> Carrier:
    """Heat that an alternating current makes in a series resistance.

    Args:
        current_a: [A] current, rms; any carrier.
        esr_ohm: [Ω] series resistance at its frequency; any carrier.

    Returns:
        [W] the heat; unknown where an input is.

    Holds for one frequency; the heat of several adds up.
    Source: heat in a resistance

    >>> esr_heat_w(2, 0.05)
    0.2
    """
    return current_a**2 * esr_ohm


def started_thousands(capacitance_f: Carrier) -> Carrier:
    """How many times 1000 µF are begun above the first: none at 1000 µF itself, one up to and with 2000 µF.

    Args:
        capacitance_f: [F] nominal capacitance; any carrier.

    Returns:
        [none] a whole number; unknown where the capacitance is.

    Holds for adders printed "for every 1000 µF", read as steps; 2000 µF made of two parts, a rounding above, count
    as 2000 µF.
    Source: adder above 1000 µF

    >>> started_thousands(1000e-6), started_thousands(2200e-6)
    (0.0, 2.0)
    """
    return most(step(capacitance_f / THOUSAND_F - 1 - SLACK, "ceil"), 0.0)


def stepped_tan_delta(tan_delta: Carrier, capacitance_f: Carrier) -> Carrier:
    """A limit of the loss factor with the adder above 1000 µF in steps: the tolerant reading, for limits.

    Args:
        tan_delta: [none] limit up to 1000 µF; any carrier.
        capacitance_f: [F] nominal capacitance; any carrier.

    Returns:
        [none] the limit; unknown where an input is.

    Holds for published tables that print such an adder.
    Source: adder above 1000 µF

    >>> round(stepped_tan_delta(0.16, 4700e-6), 6)
    0.24
    """
    return tan_delta + ADDER * started_thousands(capacitance_f)


def continuous_tan_delta(tan_delta: Carrier, capacitance_f: Carrier) -> Carrier:
    """A loss factor with the adder above 1000 µF in proportion: for estimates.

    Args:
        tan_delta: [none] loss factor up to 1000 µF; any carrier.
        capacitance_f: [F] nominal capacitance; any carrier.

    Returns:
        [none] the loss factor; unknown where an input is.

    Holds for published tables that print such an adder; never above the stepped one.
    Source: adder above 1000 µF

    >>> round(continuous_tan_delta(0.14, 2200e-6), 6)
    0.164
    """
    return tan_delta + ADDER * most(capacitance_f / THOUSAND_F - 1, 0.0)
