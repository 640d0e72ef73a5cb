"""What the lifetime of one part is calculated from: what its maker states, and what it meets in its place."""

from dataclasses import dataclass
from math import nan

from subsearch.errors import RequirementError
from subsearch.formulas.life import CEILING_Y, RATED_RISE_K
from subsearch.formulas.ripple import BENDING_LAW_ENDS_K

LOWEST_C, HIGHEST_C = -100.0, 300.0  # no capacitor is kept beyond them, and laws of heat run out of numbers there
CORRECT_IT = "Correct it; where you don't know it, give float('nan')."


@dataclass(frozen=True)
class StatedLife:
    """What a maker states of a part's life; NaN, or None in words, where it is not stated.

    `basis` is endurance, load life or useful life; `reference` is ambient or case.
    """

    base_life_h: float
    rated_c: float
    rated_ripple_a: float = nan
    basis: str | None = None
    reference: str | None = None
    rated_rise_k: float = RATED_RISE_K

    def __post_init__(self) -> None:
        check_stated_life(self.base_life_h)
        _between(LOWEST_C, HIGHEST_C, "rated temperature", self.rated_c)
        _above(0, "rated ripple current", self.rated_ripple_a)
        _between(
            0, BENDING_LAW_ENDS_K - 1, "rise of the core temperature at the rated ripple current", self.rated_rise_k
        )


@dataclass(frozen=True)
class Duty:
    """What the part meets in its place; `ripple_a` is None where no ripple is asked about, NaN where it is unknown."""

    working_c: float
    hours_a_day: float
    ripple_a: float | None = None
    voltage_factor: float = 1.0
    ceiling_y: float = CEILING_Y

    def __post_init__(self) -> None:
        _between(LOWEST_C, HIGHEST_C, "working temperature", self.working_c)
        check_hours_a_day(self.hours_a_day)
        if self.ripple_a is not None:
            _between(0, 1e5, "ripple current", self.ripple_a)
        _above(0, "voltage factor", self.voltage_factor)
        _above(0, "ceiling in years", self.ceiling_y)


def check_stated_life(life_h: float) -> None:
    """Refuse a life that is none.

    Args:
        life_h: [h] a stated life.

    Returns:
        [none] nothing.

    Raises:
        RequirementError: a life that is not above 0.

    Holds for an unknown life too, which passes.
    Source: hours in years

    >>> check_stated_life(1000)
    """
    _above(0, "life", life_h)


def check_hours_a_day(hours_a_day: float) -> None:
    """Refuse hours that no day has.

    Args:
        hours_a_day: [h] hours switched on a day.

    Returns:
        [none] nothing.

    Raises:
        RequirementError: hours that are not above 0, or are above 24.

    Holds for unknown hours too, which pass.
    Source: hours in years

    >>> check_hours_a_day(8)
    """
    _above(0, "number of hours a day", hours_a_day)
    _between(0, 24, "number of hours a day", hours_a_day)


def _above(bound: float, what: str, number: float) -> None:
    if number <= bound:
        raise RequirementError(f"The {what} is {number:g}, but must be above {bound:g}. {CORRECT_IT}")


def _between(low: float, high: float, what: str, number: float) -> None:
    if number < low or number > high:
        raise RequirementError(f"The {what} is {number:g}, but must lie between {low:g} and {high:g}. {CORRECT_IT}")
