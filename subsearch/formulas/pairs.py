"""The nearest pair of values one can buy for a value one can't: in parallel, in series, or two alike back to back.

Decimals are taken as they are written, so that ties are true ties.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import isfinite, isnan, nan

from subsearch.errors import RequirementError, known_word
from subsearch.formulas.as_written import as_written
from subsearch.formulas.carriers import Carrier, pick
from subsearch.formulas.combining import parallel_f, series_f

IN_PARALLEL, IN_SERIES, BACK_TO_BACK = "parallel", "series", "back to back"
WAYS_TO_JOIN = (IN_PARALLEL, IN_SERIES, BACK_TO_BACK)


@dataclass(frozen=True)
class ValuePair:
    """Two values, the smaller first, what they make together, and how far that is off the value asked."""

    one_f: float
    other_f: float
    together_f: float
    off_pct: float


def parallel_partner_f(target_f: Carrier, one_f: Carrier) -> Carrier:
    """What must stand in parallel with one capacitor to make a value.

    Args:
        target_f: [F] the value to be made; any carrier.
        one_f: [F] capacitance of the one at hand; any carrier.

    Returns:
        [F] the partner, 0 or below where none is needed; unknown where an input is.

    Holds for every two.
    Source: parallel and series

    >>> parallel_partner_f(32, 10)
    22
    """
    return target_f - one_f


def series_partner_f(target_f: Carrier, one_f: Carrier) -> Carrier:
    """What must stand in series with one capacitor to make a smaller value.

    Args:
        target_f: [F] the value to be made, above 0; any carrier.
        one_f: [F] capacitance of the one at hand; any carrier.

    Returns:
        [F] the partner; unknown where an input is, and where the one at hand is not above the value.

    Raises:
        ZeroDivisionError: a plain value equal to the one at hand: no finite partner makes it.

    Holds for every two.
    Source: parallel and series

    >>> series_partner_f(6.875, 10)
    22.0
    """
    return pick(one_f > target_f, one_f * target_f / (one_f - target_f))


def nearest_pair(target_f: float, values_f: Sequence[float], joined: str) -> ValuePair:
    """The two of the values on sale that come nearest to a value together, by ratio.

    Of pairs equally near, the two most alike, which share the voltage most evenly; of those, the larger.

    Args:
        target_f: [F] the value to be made, above 0.
        values_f: [F] the values on sale, above 0, in any order; each can be bought twice.
        joined: parallel, series (any two), or back to back (two alike).

    Returns:
        The pair [F], and how far it is off [%]; all unknown where an input is.

    Raises:
        RequirementError: no values, or one that is not a finite number above 0.
        UnknownNameError: another way to join them.

    Holds for nominal values; tolerances and shares of the voltage are other laws.
    Source: parallel and series

    >>> nearest_pair(4.7e-6, [4.7e-6, 10e-6, 22e-6], "back to back")
    ValuePair(one_f=1e-05, other_f=1e-05, together_f=5e-06, off_pct=6.382978723404255)
    """
    known_word(joined, WAYS_TO_JOIN, "a way to join two")
    if isnan(target_f) or any(map(isnan, values_f)):
        return ValuePair(nan, nan, nan, nan)
    _check(target_f, values_f)
    target = _exact(target_f)
    likely = _likely(target, sorted(set(map(_exact, values_f))), joined)
    one, other = min(likely, key=lambda pair: _rank(target, pair, joined))
    together = _together(one, other, joined)
    return ValuePair(float(one), float(other), float(together), float(100 * (together / target - 1)))


def _likely(target: Fraction, values: list[Fraction], joined: str) -> Iterator[tuple[Fraction, Fraction]]:
    """For each value as the smaller one, the larger ones on both sides of the exact partner: no other can be nearer."""
    for at, one in enumerate(values):
        if joined == BACK_TO_BACK:
            yield one, one
            continue
        beyond = len(values)  # in series, a value below the target wants the largest partner there is
        if joined == IN_PARALLEL or one > target:
            partner = parallel_partner_f if joined == IN_PARALLEL else series_partner_f
            beyond = bisect_left(values, partner(target, one), lo=at)
        yield from ((one, other) for other in values[max(at, beyond - 1) : beyond + 1])


def _rank(target: Fraction, pair: tuple[Fraction, Fraction], joined: str) -> tuple[Fraction, Fraction, Fraction]:
    one, other = pair
    ratio = _together(one, other, joined) / target
    return max(ratio, 1 / ratio), other / one, -one


def _together(one: Fraction, other: Fraction, joined: str) -> Fraction:
    made: Fraction = parallel_f(one, other) if joined == IN_PARALLEL else series_f(one, other)
    return made


def _exact(value_f: float) -> Fraction:
    return Fraction(as_written(value_f))


def _check(target_f: float, values_f: Sequence[float]) -> None:
    if not values_f:
        raise RequirementError("There are no values to pair. Give at least one that can be bought.")
    for what, value in (("The value to be made", target_f), *(("A value on sale", value) for value in values_f)):
        if not isfinite(value) or value <= 0:
            raise RequirementError(f"{what} is {value:g} F, but a capacitance is a number above 0. Correct it.")
