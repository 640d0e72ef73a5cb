"""The few steps of a law that are more than arithmetic, for every carrier of a number.

A carrier is a float, a numpy array, a frame column, or a stored DuckDB column. Unknown is NaN in the first three and
NULL in the last. Arithmetic keeps unknown unknown by itself; so does every step here, but for `pick`, which says what
it does. `search/derived.py` teaches `pick` and `step` the fourth carrier, so that this room knows no database.
"""

from collections.abc import Callable, Sequence
from functools import singledispatch
from math import ceil, isnan, log2, nan
from typing import Any, TypeAlias

Carrier: TypeAlias = Any  # no narrower type lets mypy add a float to a stored column
PLAIN: dict[str, Callable[[float], float]] = {"abs": abs, "ceil": lambda x: float(ceil(x)), "log2": log2}


@singledispatch
def pick(condition: Carrier, yes: Carrier, no: Carrier = nan) -> Carrier:
    """One of two values, by a condition: `no` also where the condition can't be told.

    Args:
        condition: [yes or no] a comparison of carriers.
        yes, no: [both in one unit] the values, each any carrier; without `no`, unknown.

    Returns:
        [their unit] the value picked, in the carrier of the condition; for a frame column an array in its order.

    Holds for conditions whose unknowns `no` also leaves unknown; that is for the law to see to.

    >>> pick(3 < 4, 1.5, 2.5)
    1.5
    >>> pick(nan < 4, 1.5)
    nan
    """
    if getattr(condition, "ndim", 0):
        import numpy as np  # here, so that the command line need not load it

        return np.where(condition, yes, no)
    return yes if condition else no


@singledispatch
def step(x: Carrier, name: str) -> Carrier:
    """An elementary function by the name that SQL and numpy share.

    Args:
        x: [any unit] any carrier.
        name: abs, ceil or log2.

    Returns:
        [the unit of x; for log2 none] the function of x; unknown where x is.

    Raises:
        KeyError: another name.
        ValueError: log2 of a plain number that is not above 0.

    Holds for every x; log2 for x above 0.

    >>> step(2.1, "ceil")
    3.0
    """
    if getattr(x, "ndim", 0):
        import numpy as np

        return getattr(np, name)(x)
    return nan if isnan(x) else PLAIN[name](x)


def least(a: Carrier, b: Carrier) -> Carrier:
    """The smaller of two (SQL's least() and Python's min() would answer with the known one).

    Args:
        a, b: [both in one unit] each any carrier.

    Returns:
        [their unit] the smaller; unknown if either is.

    Holds for every a and b.

    >>> least(4, 3)
    3
    >>> least(4, nan)
    nan
    """
    return pick(a <= b, a, pick(a > b, b))


def most(a: Carrier, b: Carrier) -> Carrier:
    """The larger of two.

    Args:
        a, b: [both in one unit] each any carrier.

    Returns:
        [their unit] the larger; unknown if either is.

    Holds for every a and b.

    >>> most(4, 3)
    4
    """
    return pick(a >= b, a, pick(a < b, b))


def staircase(x: Carrier, steps: Sequence[tuple[float, float]]) -> Carrier:
    """The value of the first step whose bound is not below x: a published table.

    Args:
        x: [any unit] any carrier.
        steps: [pairs of the unit of x and the unit of the result] bounds, rising, and the value up to each.

    Returns:
        [the unit of the values] the value of the step; unknown where x is, and above the last bound.

    Holds for tables whose bounds belong to the step below them.

    >>> staircase(16, ((10, 0.20), (16, 0.16), (25, 0.14)))
    0.16
    >>> staircase(40, ((10, 0.20), (16, 0.16), (25, 0.14)))
    nan
    """
    value: Carrier = nan
    for bound, here in reversed(steps):
        value = pick(x <= bound, here, value)
    return value
