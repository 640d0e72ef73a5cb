"""Preferred values against a library made by others: the series, the range, and the neighbours of any value.

Its nearest goes by difference and ours by ratio; they part only between the geometric and the arithmetic mean.
"""

import random
from math import isclose

import pytest
from eseries import (
    E3,
    E6,
    E12,
    E24,
    E48,
    E96,
    erange,
    find_greater_than_or_equal,
    find_less_than_or_equal,
    find_nearest,
)

from subsearch.formulas.preferred import (
    nearest_preferred_f,
    preferred_at_or_above_f,
    preferred_at_or_below_f,
    preferred_values_f,
)

KEYS = {"E3": E3, "E6": E6, "E12": E12, "E24": E24, "E48": E48, "E96": E96}


@pytest.mark.parametrize("series", KEYS)
def test_the_same_values_in_every_decade(series: str) -> None:
    for power in range(-12, 0):
        low, high = float(f"1e{power}"), float(f"1e{power + 1}")
        theirs = list(erange(KEYS[series], low * 0.999, high * 1.001))
        ours = preferred_values_f(series, low, high)
        assert len(ours) == len(theirs)
        assert all(isclose(one, other, rel_tol=1e-12) for one, other in zip(ours, theirs, strict=True))


@pytest.mark.parametrize("series", KEYS)
def test_the_same_neighbours_of_random_values(series: str) -> None:
    r = random.Random(60063)
    differ = 0
    for _ in range(500):
        value = 10 ** r.uniform(-11, -1)
        below, above = preferred_at_or_below_f(value, series), preferred_at_or_above_f(value, series)
        assert isclose(below, find_less_than_or_equal(KEYS[series], value), rel_tol=1e-12)
        assert isclose(above, find_greater_than_or_equal(KEYS[series], value), rel_tol=1e-12)
        ours, theirs = nearest_preferred_f(value, series), find_nearest(KEYS[series], value)
        if (below * above) ** 0.5 <= value <= (below + above) / 2:
            differ += not isclose(ours, theirs, rel_tol=1e-12)
        else:
            assert isclose(ours, theirs, rel_tol=1e-12), value
    assert differ < 75
