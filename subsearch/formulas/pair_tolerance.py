"""How far two capacitors together can be off: at worst, and by chance."""

from subsearch.formulas.carriers import Carrier, pick
from subsearch.formulas.combining import series_f


def parallel_pct(one_f: Carrier, one_pct: Carrier, other_f: Carrier, other_pct: Carrier) -> Carrier:
    """How far two in parallel are off when each is off by so much: the worst case, with the limits of both.

    Args:
        one_f: [F] nominal capacitance of the one, above 0; any carrier.
        one_pct: [%] how far the one is off, with its sign; any carrier.
        other_f: [F] nominal capacitance of the other, above 0; any carrier.
        other_pct: [%] how far the other is off; any carrier.

    Returns:
        [%] how far both together are off; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for every two: equal tolerances stay what they are.
    Source: worst case

    >>> parallel_pct(10, -20, 30, -10)
    -12.5
    """
    return (one_f * one_pct + other_f * other_pct) / (one_f + other_f)


def series_pct(one_f: Carrier, one_pct: Carrier, other_f: Carrier, other_pct: Carrier) -> Carrier:
    """How far two in series are off when each is off by so much: the worst case, with the limits of both.

    Args:
        one_f: [F] nominal capacitance of the one, above 0; any carrier.
        one_pct: [%] how far the one is off, with its sign, above -100; any carrier.
        other_f: [F] nominal capacitance of the other, above 0; any carrier.
        other_pct: [%] how far the other is off; any carrier.

    Returns:
        [%] how far both together are off; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0, or of nothing left.

    Holds for every two: equal tolerances stay what they are; the smaller capacitance counts for more.
    Source: worst case

    >>> round(series_pct(22, -20, 22, -20), 9)
    -20.0
    """
    made_f = series_f(one_f * (1 + one_pct / 100), other_f * (1 + other_pct / 100))
    return 100 * (made_f / series_f(one_f, other_f) - 1)


def parallel_sigma_pct(one_f: Carrier, one_sigma_pct: Carrier, other_f: Carrier, other_sigma_pct: Carrier) -> Carrier:
    """Standard deviation of two in parallel whose values scatter by chance.

    Args:
        one_f: [F] nominal capacitance of the one, above 0; any carrier.
        one_sigma_pct: [%] its standard deviation; any carrier.
        other_f: [F] nominal capacitance of the other, above 0; any carrier.
        other_sigma_pct: [%] its standard deviation; any carrier.

    Returns:
        [%] the standard deviation of both together; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for values that know nothing of each other; parts of one batch often lie off to the same side.
    Source: chance

    >>> round(parallel_sigma_pct(10, 20, 10, 20), 4)
    14.1421
    """
    return ((one_f * one_sigma_pct) ** 2 + (other_f * other_sigma_pct) ** 2) ** 0.5 / (one_f + other_f)


def series_sigma_pct(one_f: Carrier, one_sigma_pct: Carrier, other_f: Carrier, other_sigma_pct: Carrier) -> Carrier:
    """Standard deviation of two in series whose values scatter by chance: the smaller capacitance counts for more.

    Args:
        one_f: [F] nominal capacitance of the one, above 0; any carrier.
        one_sigma_pct: [%] its standard deviation; any carrier.
        other_f: [F] nominal capacitance of the other, above 0; any carrier.
        other_sigma_pct: [%] its standard deviation; any carrier.

    Returns:
        [%] the standard deviation of both together; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for deviations up to about 10 %, to the first order, of values that know nothing of each other.
    Source: chance

    >>> series_sigma_pct(30, 4, 10, 4 / 3)
    1.4142135623730951
    """
    return ((other_f * one_sigma_pct) ** 2 + (one_f * other_sigma_pct) ** 2) ** 0.5 / (one_f + other_f)


def equal_sigma_pct(sigma_pct: Carrier, pieces: Carrier) -> Carrier:
    """Standard deviation of so many equal ones whose values scatter by chance; the worst case stays that of one.

    Args:
        sigma_pct: [%] standard deviation of each; any carrier.
        pieces: [none] how many, 1 or more; any carrier.

    Returns:
        [%] the standard deviation of all together; unknown where an input is, and for no pieces.

    Holds for equal ones in parallel; in series to the first order; and for values that know nothing of each other.
    Source: chance

    >>> equal_sigma_pct(20, 4)
    10.0
    """
    return sigma_pct / pick(pieces > 0, pieces) ** 0.5
