"""What a capacitor holds, how to empty it, how long that takes, and how hard the resistor works at first."""

from math import log

from subsearch.formulas.carriers import Carrier, most, pick, step

LN_2 = log(2)  # step knows log2 only: the one logarithm that every carrier names alike
BLEED_OHM_PER_V = 25.0  # the rule says 5 to 50 ohm per volt of rating. Source: bleed resistor


def stored_energy_j(capacitance_f: Carrier, held_v: Carrier) -> Carrier:
    """Energy that a charged capacitor holds.

    Args:
        capacitance_f: [F] capacitance; any carrier.
        held_v: [V] voltage it is charged to; any carrier.

    Returns:
        [J] the energy; unknown where an input is.

    Holds for every capacitance that does not change with the voltage.
    Source: stored energy

    >>> stored_energy_j(400e-6, 200)
    8.0
    """
    return capacitance_f * held_v**2 / 2


def time_constant_s(resistance_ohm: Carrier, capacitance_f: Carrier) -> Carrier:
    """Time in which a capacitor falls to the e-th part of its voltage through a resistor.

    Args:
        resistance_ohm: [Ω] the resistor across it; any carrier.
        capacitance_f: [F] capacitance; any carrier.

    Returns:
        [s] the time; unknown where an input is.

    Holds for a supply that is off; after five of them less than a hundredth is left.
    Source: discharge through a resistor

    >>> time_constant_s(5000, 400e-6)
    2.0
    """
    return resistance_ohm * capacitance_f


def left_v(resistance_ohm: Carrier, capacitance_f: Carrier, start_v: Carrier, after_s: Carrier) -> Carrier:
    """Voltage left on a capacitor after it has emptied through a resistor for some time.

    Args:
        resistance_ohm: [Ω] the resistor across it, above 0; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.
        start_v: [V] voltage at the start; any carrier.
        after_s: [s] the time, 0 or above; any carrier.

    Returns:
        [V] the voltage; unknown where an input is, for a time below 0, and for a resistance or capacitance of 0.

    Holds for a supply that is off; afterwards some voltage comes back by itself, so measure.
    Source: discharge through a resistor, powers of two

    >>> round(left_v(5000, 400e-6, 200, 10), 5)
    1.34759
    """
    constant_s = time_constant_s(resistance_ohm, capacitance_f)
    halvings = pick(after_s >= 0, after_s) / (LN_2 * pick(constant_s > 0, constant_s))
    return start_v * 2**-halvings


def discharge_s(resistance_ohm: Carrier, capacitance_f: Carrier, start_v: Carrier, threshold_v: Carrier) -> Carrier:
    """Time until a capacitor has fallen to a threshold through a resistor.

    Args:
        resistance_ohm: [Ω] the resistor across it; any carrier.
        capacitance_f: [F] capacitance; any carrier.
        start_v: [V] voltage at the start, 0 or above; any carrier.
        threshold_v: [V] voltage to reach, above 0; any carrier.

    Returns:
        [s] the time, 0 where the start is not above the threshold; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain threshold of 0, which is never reached.

    Holds for a supply that is off; afterwards some voltage comes back by itself, so measure.
    Source: discharge through a resistor

    >>> round(discharge_s(5000, 400e-6, 200, 60), 3)
    2.408
    """
    return time_constant_s(resistance_ohm, capacitance_f) * LN_2 * step(most(start_v / threshold_v, 1), "log2")


def bleed_ohm(rated_v: Carrier) -> Carrier:
    """A resistor to discharge a capacitor with, by its rated voltage.

    Args:
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [Ω] the resistance; unknown where the input is.

    Holds for reservoirs and the like, discharged by hand; the resistor must withstand the voltage and the power.
    Source: bleed resistor

    >>> bleed_ohm(200)
    5000.0
    """
    return BLEED_OHM_PER_V * rated_v


def start_w(start_v: Carrier, resistance_ohm: Carrier) -> Carrier:
    """Power in the discharge resistor at the start, when it is largest.

    Args:
        start_v: [V] voltage at the start; any carrier.
        resistance_ohm: [Ω] the resistor, above 0; any carrier.

    Returns:
        [W] the power; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain resistance of 0.

    Holds for the first moment; the power falls to a seventh within one time constant.
    Source: discharge through a resistor

    >>> start_w(200, 5000)
    8.0
    """
    return start_v**2 / resistance_ohm
