"""Preferred values and ratings: exact decimals, nothing nearer in the series, and what must hold of any numbers."""

from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import pairwise
from math import isnan, isqrt, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas.as_written import SLACK, as_written
from subsearch.formulas.preferred import (
    nearest_preferred_f,
    nearest_preferred_within_f,
    preferred_at_or_above_f,
    preferred_at_or_below_f,
    preferred_values_f,
)
from subsearch.formulas.preferred_series import PREFERRED_SERIES, decade, per_decade
from subsearch.formulas.ratings import (
    STANDARD_V,
    USUAL_V,
    next_rated_v,
    old_as_modern_v,
    surge_quarter_printed_v,
    surge_quarter_v,
    surge_to_100_v,
    surge_to_315_v,
)
from subsearch.formulas.voltage import modern_v

names = some.sampled_from(sorted(PREFERRED_SERIES))
capacitances = some.one_of(
    some.floats(1e-13, 10),
    some.builds(lambda figures, power: float(f"{figures}e{power}"), some.integers(1, 9999), some.integers(-15, -3)),
)
volts = some.floats(0.1, 2000)
# The printed lists written out once more, so that a slip in one of the two is seen.
PRINTED = {
    "E3": "10 22 47",
    "E6": "10 15 22 33 47 68",
    "E12": "10 12 15 18 22 27 33 39 47 56 68 82",
    "E24": "10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91",
}


@cache
def every(series: str) -> list[Fraction]:
    return sorted(
        Fraction(figures) * Fraction(10) ** power / (100 if figures > 99 else 10)
        for figures in decade(series)
        for power in range(-17, 4)
    )


def brute(series: str, around: float) -> list[Fraction]:
    """Every value from a tenth to ten times of a capacitance, as a fraction."""
    return [one for one in every(series) if around * 0.1 < float(one) < around * 10]


def exact(value: float) -> Fraction:
    return Fraction(Decimal(repr(value)))


def apart(one: Fraction, other: Fraction) -> Fraction:
    return max(one / other, other / one)


def test_the_series_are_the_printed_ones() -> None:
    for series, figures in PRINTED.items():
        assert " ".join(map(str, decade(series))) == figures
        assert per_decade(series) == len(figures.split()) == int(series[1:])
    assert set(decade("E3")) < set(decade("E6")) < set(decade("E12")) < set(decade("E24"))
    assert set(decade("E48")) < set(decade("E96"))
    assert decade("E96")[:4] == (100, 102, 105, 107) and decade("E96")[-2:] == (953, 976)


def test_no_finite_decimal_lies_exactly_between_two_values() -> None:
    """A tie would be the square root of two neighbours' product, and that is never a whole number of figures."""
    for series in PREFERRED_SERIES:
        figures = [*decade(series), 10 * decade(series)[0]]
        products = [one * other for one, other in pairwise(figures)]
        assert not [product for product in products if isqrt(product) ** 2 == product], series


@pytest.mark.parametrize("series", PREFERRED_SERIES)
def test_every_value_is_the_float_that_its_digits_are(series: str) -> None:
    values = preferred_values_f(series, 1e-8, 1e-4)
    assert len(values) == 4 * per_decade(series) + 1
    assert list(values) == sorted(set(values))
    assert all(len(repr(value).replace(".", "").split("e")[0].strip("0")) <= 3 for value in values)
    assert [nearest_preferred_f(value, series) for value in values] == list(values)
    assert [preferred_at_or_above_f(value, series) for value in values] == list(values)
    assert [preferred_at_or_below_f(value, series) for value in values] == list(values)


def test_values_that_float_arithmetic_would_miss() -> None:
    wanted = (1e-06, 1.5e-06, 2.2e-06, 3.3e-06, 4.7e-06, 6.8e-06, 1e-05)
    assert preferred_values_f("E6", 1e-6, 1e-5) == wanted
    assert preferred_values_f("E6", 0.1 * 3 * 1e-5 / 3, 1e-5) == wanted  # a hair above 1 µF
    assert preferred_values_f("E6", 9.99999999999e-06, 9.9999999999999e-06) == (1e-05,)  # in the next decade
    assert preferred_values_f("E6", 10.0000000001e-6, 11e-6) == (1e-05,)
    assert preferred_values_f("E6", 10.000001e-6, 11e-6) == ()
    assert preferred_values_f("E6", 2e-6, 1e-6) == ()
    assert preferred_at_or_above_f(1.0000000000000002e-06, "E6") == 1e-06


@given(capacitances, names)
def test_nearest_is_what_trying_every_value_finds(capacitance: float, series: str) -> None:
    found = nearest_preferred_f(capacitance, series)
    best = min(apart(exact(capacitance), one) for one in brute(series, capacitance))
    assert apart(exact(capacitance), exact(found)) == best


@given(capacitances, names, some.floats(0.5, 1), some.floats(1, 2))
def test_within_limits_is_what_trying_every_value_finds(c: float, series: str, down: float, up: float) -> None:
    low, high = c * down, c * up
    slack = Fraction(1, 10**9)
    inside = [one for one in brute(series, c) if exact(low) * (1 - slack) <= one <= exact(high) * (1 + slack)]
    assert preferred_values_f(series, low, high) == tuple(map(float, inside))
    found = nearest_preferred_within_f(c, series, low, high)
    assert (found is None) == (not inside)
    if found is not None:
        assert apart(exact(found), exact(c)) == min(apart(one, exact(c)) for one in inside)


@given(capacitances, names)
def test_above_and_below_stand_on_both_sides_of_nearest(capacitance: float, series: str) -> None:
    below, above = preferred_at_or_below_f(capacitance, series), preferred_at_or_above_f(capacitance, series)
    assert below * (1 - 1e-9) <= capacitance <= above * (1 + 1e-9)
    assert nearest_preferred_f(capacitance, series) in (below, above)
    assert len(preferred_values_f(series, below, above)) == (1 if below == above else 2)


@given(capacitances, capacitances, names)
def test_more_capacitance_never_gives_a_smaller_value(one: float, other: float, series: str) -> None:
    small, large = sorted((one, other))
    for law in (nearest_preferred_f, preferred_at_or_above_f, preferred_at_or_below_f):
        assert law(small, series) <= law(large, series)


def test_unknown_in_unknown_out() -> None:
    for law in (nearest_preferred_f, preferred_at_or_above_f, preferred_at_or_below_f):
        assert isnan(law(nan, "E6"))
    for numbers in ((nan, 1, 2), (1, nan, 2), (1, 1, nan)):
        c, low, high = (float(number) for number in numbers)
        found = nearest_preferred_within_f(c, "E6", low, high)
        assert found is not None and isnan(found)


def test_nonsense_is_refused() -> None:
    for wrong in (0.0, -1e-6, float("inf")):
        for law in (nearest_preferred_f, preferred_at_or_above_f, preferred_at_or_below_f):
            with pytest.raises(RequirementError, match=r"is no capacitance to look for\. Give one above 0"):
                law(wrong, "E6")
    with pytest.raises(RequirementError, match=r"nan F is no capacitance"):
        preferred_values_f("E6", nan, 1e-6)
    for law in (nearest_preferred_f, preferred_at_or_above_f, preferred_at_or_below_f):
        with pytest.raises(UnknownNameError) as caught:
            law(1e-6, "E13")
        assert str(caught.value) == (
            '"E13" is not a preferred series. Did you mean "E3"? Allowed are E3, E6, E12, E24, E48 or E96.'
        )


@given(volts, volts)
def test_ratings_never_lie_below_the_need_and_never_fall(one: float, other: float) -> None:
    low, high = sorted((one, other))
    for law, table, counts_as in ((next_rated_v, STANDARD_V, float), (old_as_modern_v, USUAL_V, modern_v)):
        for asked in (low, high):
            above = [rating for rating in table if rating >= counts_as(asked)]
            found = law(asked)
            assert found == min(above) if above else isnan(found)
        assert not law(low) > law(high)
    assert all(next_rated_v(rating) == rating for rating in STANDARD_V)


def test_the_two_old_ratings_beside_modern_ones() -> None:
    assert (old_as_modern_v(6.4), old_as_modern_v(64)) == (6.3, 63)
    assert (old_as_modern_v(6.5), old_as_modern_v(65)) == (10, 100)
    assert (next_rated_v(6.4), next_rated_v(64)) == (10, 80)
    assert list(STANDARD_V) == sorted(set(STANDARD_V)) and set(USUAL_V) < set(STANDARD_V)


@given(some.sampled_from(STANDARD_V))
def test_surge_lies_above_the_rating_and_a_quarter_is_the_most(rating: float) -> None:
    quarter = surge_quarter_v(rating)
    assert quarter <= surge_quarter_printed_v(rating) < quarter + 1
    assert rating < surge_to_315_v(rating) < quarter
    by_100 = surge_to_100_v(rating)
    assert isnan(by_100) == (100 < rating < 160 or rating > 450)
    assert isnan(by_100) or rating < by_100 <= surge_to_315_v(rating)


@given(some.integers(1, 10**15 - 1), some.integers(-30, 30))
def test_a_number_comes_back_as_it_was_written(figures: int, power: int) -> None:
    written = Decimal(figures).scaleb(power)
    assert as_written(float(written)) == written
    assert 0 < SLACK * 1e6 < 1 / 96  # far below the steps of the closest series, far above the noise of a sum
