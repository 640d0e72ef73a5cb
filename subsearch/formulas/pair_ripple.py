"""The ripple current through each of two capacitors together, and the series resistance of both."""

from subsearch.formulas.carriers import Carrier


def shared_ripple_a(ripple_a: Carrier, capacitance_f: Carrier, other_f: Carrier) -> Carrier:
    """What one of two in parallel carries of a ripple current: its share of the capacitance.

    Args:
        ripple_a: [A] the current that flows, rms; any carrier.
        capacitance_f: [F] capacitance of the one asked about, above 0; any carrier.
        other_f: [F] capacitance of the other; any carrier.

    Returns:
        [A] its share, rms; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for frequencies at which the capacitance, not the series resistance, limits the current. In series, so
    back to back as well, each carries the whole of it.
    Source: parallel and series

    >>> shared_ripple_a(1.2, 220, 440)
    0.4
    """
    return ripple_a * capacitance_f / (capacitance_f + other_f)


def parallel_ohm(one_ohm: Carrier, other_ohm: Carrier) -> Carrier:
    """Series resistance of two in parallel.

    Args:
        one_ohm: [Ω] series resistance of the one, above 0; any carrier.
        other_ohm: [Ω] series resistance of the other at the same frequency, above 0; any carrier.

    Returns:
        [Ω] the resistance of both, below either; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain resistances of 0.

    Holds for two alike, and for others where the resistance, not the capacitance, limits the current.
    Source: parallel and series

    >>> parallel_ohm(0.5, 0.5)
    0.25
    """
    return one_ohm * other_ohm / (one_ohm + other_ohm)


def back_to_back_ohm(resistance_ohm: Carrier) -> Carrier:
    """Series resistance of two alike back to back, one after the other.

    Args:
        resistance_ohm: [Ω] series resistance of each; any carrier.

    Returns:
        [Ω] the resistance of both; unknown where the input is.

    Holds for two of the same part.
    Source: parallel and series

    >>> back_to_back_ohm(0.5)
    1.0
    """
    return 2 * resistance_ohm
