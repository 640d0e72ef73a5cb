"""The preferred value that lies nearest to a capacitance, or next above or below it.

Values are put together from decimal figures, never by float multiplication: 4.7 µF is exactly the float 4.7e-6.
Near means near by ratio, as the series themselves are spaced.
"""

from bisect import bisect_left
from decimal import Decimal
from fractions import Fraction
from math import isfinite, isnan, nan

from subsearch.errors import RequirementError
from subsearch.formulas.as_written import SLACK, as_written
from subsearch.formulas.preferred_series import decade

BELOW, ABOVE = 1 - as_written(SLACK), 1 + as_written(SLACK)


def preferred_values_f(series: str, lowest_f: float, highest_f: float) -> tuple[float, ...]:
    """The values of a preferred series within two limits, both included.

    Args:
        series: E3, E6, E12, E24, E48 or E96.
        lowest_f: [F] lower limit, above 0.
        highest_f: [F] upper limit, above 0.

    Returns:
        [F] the values, rising; none where the upper limit is below the lower.

    Raises:
        UnknownNameError: no such series; the text names the nearest.
        RequirementError: a limit that is not a capacitance above 0; an unknown one too, for it has no list.

    Holds for every decade; a limit is met within a billionth of it.
    Source: preferred values, closer series

    >>> preferred_values_f("E6", 4.7e-6, 15e-6)
    (4.7e-06, 6.8e-06, 1e-05, 1.5e-05)
    """
    low, high = _exact(lowest_f) * BELOW, _exact(highest_f) * ABOVE
    powers = range(_exact(lowest_f).adjusted() - 1, _exact(highest_f).adjusted() + 2)
    values = (_value(figures, power) for power in powers for figures in decade(series))
    return tuple(float(value) for value in values if low <= value <= high)


def nearest_preferred_f(capacitance_f: float, series: str) -> float:
    """The value of a preferred series that is nearest by ratio; of two equally near, the larger.

    Args:
        capacitance_f: [F] any capacitance above 0.
        series: E3, E6, E12, E24, E48 or E96.

    Returns:
        [F] the preferred value; unknown where the input is.

    Raises:
        UnknownNameError: no such series; the text names the nearest.
        RequirementError: not a capacitance above 0.

    Holds for every decade. No capacitance of a finite number of figures lies exactly between two values.
    Source: preferred values, closer series

    >>> nearest_preferred_f(8e-6, "E6"), nearest_preferred_f(125e-6, "E12")
    (6.8e-06, 0.00012)
    """
    return _nearest(capacitance_f, _around(capacitance_f, series))


def preferred_at_or_above_f(capacitance_f: float, series: str) -> float:
    """The lowest value of a preferred series that is not below a capacitance.

    Args:
        capacitance_f: [F] any capacitance above 0.
        series: E3, E6, E12, E24, E48 or E96.

    Returns:
        [F] the preferred value; unknown where the input is.

    Raises:
        UnknownNameError: no such series; the text names the nearest.
        RequirementError: not a capacitance above 0.

    Holds for every decade; the capacitance is met within a billionth of it.
    Source: preferred values, closer series

    >>> preferred_at_or_above_f(8e-6, "E6"), preferred_at_or_above_f(10e-6, "E6")
    (1e-05, 1e-05)
    """
    values = _around(capacitance_f, series)
    return min((one for one in values if _exact(one) >= _exact(capacitance_f) * BELOW), default=nan)


def preferred_at_or_below_f(capacitance_f: float, series: str) -> float:
    """The highest value of a preferred series that is not above a capacitance.

    Args:
        capacitance_f: [F] any capacitance above 0.
        series: E3, E6, E12, E24, E48 or E96.

    Returns:
        [F] the preferred value; unknown where the input is.

    Raises:
        UnknownNameError: no such series; the text names the nearest.
        RequirementError: not a capacitance above 0.

    Holds for every decade; the capacitance is met within a billionth of it.
    Source: preferred values, closer series

    >>> preferred_at_or_below_f(8e-6, "E6")
    6.8e-06
    """
    values = _around(capacitance_f, series)
    return max((one for one in values if _exact(one) <= _exact(capacitance_f) * ABOVE), default=nan)


def nearest_preferred_within_f(capacitance_f: float, series: str, lowest_f: float, highest_f: float) -> float | None:
    """The value of a preferred series within two limits that is nearest by ratio to a capacitance.

    Args:
        capacitance_f: [F] any capacitance above 0.
        series: E3, E6, E12, E24, E48 or E96.
        lowest_f: [F] lower limit, above 0.
        highest_f: [F] upper limit, above 0.

    Returns:
        [F] the preferred value; None where there is none within the limits; unknown where an input is.

    Raises:
        UnknownNameError: no such series; the text names the nearest.
        RequirementError: a number that is not a capacitance above 0.

    Holds for every decade; a limit is met within a billionth of it.
    Source: preferred values, closer series

    >>> nearest_preferred_within_f(8e-6, "E6", 8e-6, 16e-6)
    1e-05
    """
    if isnan(capacitance_f) or isnan(lowest_f) or isnan(highest_f):
        return nan
    values = preferred_values_f(series, lowest_f, highest_f)
    return _nearest(capacitance_f, values) if values else None


def _nearest(capacitance_f: float, values: tuple[float, ...]) -> float:
    def apart(value: float) -> tuple[Fraction, float]:
        ratio = Fraction(_exact(value)) / Fraction(_exact(capacitance_f))
        return max(ratio, 1 / ratio), -value

    return min(values, key=apart, default=nan)


def _around(capacitance_f: float, series: str) -> tuple[float, ...]:
    """The values next to a capacitance, two on each side; none for an unknown one."""
    figures = decade(series)
    if isnan(capacitance_f):
        return ()
    exact = _exact(capacitance_f)
    powers = range(exact.adjusted() - 1, exact.adjusted() + 2)
    values = [_value(one, power) for power in powers for one in figures]
    place = bisect_left(values, exact)
    return tuple(map(float, values[place - 2 : place + 2]))


def _value(figures: int, power: int) -> Decimal:
    """The decimal number with these figures, the first of which stands for that power of ten."""
    return Decimal(figures).scaleb(power + 1 - len(str(figures)))


def _exact(capacitance_f: float) -> Decimal:
    """The capacitance as it is written."""
    if not isfinite(capacitance_f) or capacitance_f <= 0:
        raise RequirementError(f"{capacitance_f} F is no capacitance to look for. Give one above 0, like 4.7e-6.")
    return as_written(capacitance_f)
