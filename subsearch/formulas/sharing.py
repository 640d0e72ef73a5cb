"""How two in series share the voltage across them, and what the pair withstands.

At first, and for a.c., the capacitances decide; afterwards, for d.c., the leakage does, or resistors across each.
"""

from subsearch.formulas.carriers import Carrier, least


def initial_share_v(whole_v: Carrier, capacitance_f: Carrier, other_f: Carrier) -> Carrier:
    """Voltage across one of two in series, for a.c. and when d.c. is switched on: the smaller takes more.

    Args:
        whole_v: [V] voltage across both; any carrier.
        capacitance_f: [F] capacitance of the one asked about, above 0; any carrier.
        other_f: [F] capacitance of the other, above 0; any carrier.

    Returns:
        [V] its share; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for parts that were empty before; with d.c. the leakage takes over within minutes.
    Source: shares of a series pair

    >>> round(initial_share_v(100, 17.6, 26.4), 9)
    60.0
    """
    return whole_v * other_f / (capacitance_f + other_f)


def steady_share_v(whole_v: Carrier, leakage_ohm: Carrier, other_leakage_ohm: Carrier) -> Carrier:
    """Voltage across one of two in series, long after d.c. was switched on: the one that leaks less takes more.

    Args:
        whole_v: [V] voltage across both; any carrier.
        leakage_ohm: [Ω] leakage resistance of the one asked about, above 0; any carrier.
        other_leakage_ohm: [Ω] leakage resistance of the other, above 0; any carrier.

    Returns:
        [V] its share; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain resistances of 0.

    Holds for leakage in proportion to the voltage, and for a resistor across each that carries much more than it.
    Source: balancing

    >>> steady_share_v(100, 3e6, 1e6)
    75.0
    """
    return whole_v * leakage_ohm / (leakage_ohm + other_leakage_ohm)


def share_balanced_v(whole_v: Carrier, balancing_ohm: Carrier, leakage_a: Carrier, other_leakage_a: Carrier) -> Carrier:
    """Voltage across one of two in series with an equal balancing resistor across each.

    Args:
        whole_v: [V] voltage across both; any carrier.
        balancing_ohm: [Ω] resistor across each; any carrier.
        leakage_a: [A] leakage current of the one asked about; any carrier.
        other_leakage_a: [A] leakage current of the other; any carrier.

    Returns:
        [V] its share; unknown where an input is.

    Holds for leakage currents that do not change with the share: take limits, and it is the worst case.
    Source: balancing, currents of a balanced pair

    >>> share_balanced_v(100, 100_000, 0, 0.0002)
    60.0
    """
    return (whole_v + balancing_ohm * (other_leakage_a - leakage_a)) / 2


def largest_balancing_ohm(rated_v: Carrier, whole_v: Carrier, leakage_a: Carrier) -> Carrier:
    """The largest balancing resistor across each of two in series that keeps the share of either within its rating.

    Args:
        rated_v: [V] rated voltage of each; any carrier.
        whole_v: [V] voltage across both; any carrier.
        leakage_a: [A] by how much the leakage currents can differ, above 0: at most the limit; any carrier.

    Returns:
        [Ω] the resistance; not above 0 where no resistor will do; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain difference of 0.

    Holds for two of one kind in series; the resistor's own tolerance is not counted.
    Source: balancing, currents of a balanced pair

    >>> largest_balancing_ohm(60, 100, 0.0002)
    100000.0
    """
    return (2 * rated_v - whole_v) / leakage_a


def initial_pair_v(one_f: Carrier, one_rated_v: Carrier, other_f: Carrier, other_rated_v: Carrier) -> Carrier:
    """Voltage that two in series withstand, for a.c. and when d.c. is switched on.

    Args:
        one_f: [F] capacitance of the one, above 0; any carrier.
        one_rated_v: [V] its rated voltage; any carrier.
        other_f: [F] capacitance of the other, above 0; any carrier.
        other_rated_v: [V] its rated voltage; any carrier.

    Returns:
        [V] the voltage across both at which the first share reaches its rating; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain capacitance of 0.

    Holds for parts with poles one way or without polarity; back to back it is `back_to_back_v`.
    Source: shares of a series pair

    >>> round(initial_pair_v(17.6, 63, 26.4, 63), 9)
    105.0
    """
    both_f = one_f + other_f
    return least(one_rated_v * both_f / other_f, other_rated_v * both_f / one_f)


def steady_pair_v(
    one_leakage_ohm: Carrier, one_rated_v: Carrier, other_leakage_ohm: Carrier, other_rated_v: Carrier
) -> Carrier:
    """Voltage that two in series withstand, long after d.c. was switched on.

    Args:
        one_leakage_ohm: [Ω] leakage resistance of the one, above 0; any carrier.
        one_rated_v: [V] its rated voltage; any carrier.
        other_leakage_ohm: [Ω] leakage resistance of the other, above 0; any carrier.
        other_rated_v: [V] its rated voltage; any carrier.

    Returns:
        [V] the voltage across both at which the first share reaches its rating; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain resistance of 0.

    Holds for leakage as in `steady_share_v`; the pair must also withstand the voltage at first.
    Source: balancing

    >>> steady_pair_v(3e6, 60, 1e6, 60)
    80.0
    """
    both_ohm = one_leakage_ohm + other_leakage_ohm
    return least(one_rated_v * both_ohm / one_leakage_ohm, other_rated_v * both_ohm / other_leakage_ohm)
