"""Loss factor and series resistance, one from the other."""

from math import tau

from subsearch.formulas.carriers import Carrier


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
