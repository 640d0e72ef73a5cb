"""Life under a mixed temperature profile: every hour wears by the life at its own temperature, and the wear adds up."""

from collections.abc import Sequence
from math import fsum, inf

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import Carrier, step
from subsearch.formulas.life import life_h as ten_degree_life_h


def mixed_life_h(hours_h: Sequence[float], lives_h: Sequence[float]) -> float:
    """Life under a profile whose hours each wear at a rate of their own.

    Args:
        hours_h: [h] hours of each entry of the profile, in any proportion; a sequence.
        lives_h: [h] life if every hour were like those of that entry, by any law; a sequence as long.

    Returns:
        [h] the life: all hours over the sum of the wear; unknown where any entry is.

    Raises:
        RequirementError: no entries, sequences of two lengths, hours below 0 or none at all, a life not above 0 or
            without end.

    Holds for wear that adds up whatever its order (Miner's sum).
    Source: sum of wear

    >>> round(mixed_life_h([8, 8, 8], [64000, 32000, 16000]), 1)
    27428.6
    """
    _refuse_bad_hours(hours_h, len(lives_h))
    for life in lives_h:
        if life <= 0 or life == inf:
            raise RequirementError(f"A life in the profile is {life} h, but must be above 0 and finite. Correct it.")
    return fsum(hours_h) / fsum(hours / life for hours, life in zip(hours_h, lives_h, strict=True))


def equivalent_c(base_life_h: Carrier, rated_c: Carrier, life_h: Carrier) -> Carrier:
    """The one temperature at which a part would last as long, by the ten-degree rule.

    Args:
        base_life_h: [h] life at the rated temperature, above 0; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        life_h: [h] the life to be matched, above 0; any carrier.

    Returns:
        [°C] the equivalent temperature; unknown where an input is.

    Raises:
        ValueError: a plain life that is not above 0.
        ZeroDivisionError: a plain base life of 0.

    Holds for parts that follow the ten-degree rule.
    Source: equivalent temperature

    >>> round(equivalent_c(1000, 105, 27428.57), 1)
    57.2
    """
    return rated_c - 10 * step(life_h / base_life_h, "log2")


def profile_c(hours_h: Sequence[float], working_c: Sequence[float]) -> float:
    """The one temperature that wears a part as a profile does, by the ten-degree rule; it needs no base life.

    Args:
        hours_h: [h] hours at each temperature, in any proportion; a sequence.
        working_c: [°C] the temperatures; a sequence as long.

    Returns:
        [°C] the equivalent temperature, at or above the mean over the hours; unknown where any entry is.

    Raises:
        RequirementError: no entries, sequences of two lengths, hours below 0 or none at all.

    Holds for parts that follow the ten-degree rule.
    Source: sum of wear, equivalent temperature

    >>> round(profile_c([8, 8, 8], [45, 55, 65]), 1)
    57.2
    """
    _refuse_bad_hours(hours_h, len(working_c))
    hottest = max(working_c)
    lives = [ten_degree_life_h(1.0, hottest, here) for here in working_c]
    return float(equivalent_c(1.0, hottest, mixed_life_h(hours_h, lives)))


def _refuse_bad_hours(hours_h: Sequence[float], entries: int) -> None:
    if len(hours_h) != entries:
        raise RequirementError(
            f"The profile has {len(hours_h)} hours but {entries} temperatures or lives. Give as many of both."
        )
    if not entries:
        raise RequirementError("The profile is empty, so nothing wears the part. Give at least one entry.")
    for hours in hours_h:
        if hours < 0 or hours == inf:
            raise RequirementError(f"The profile has {hours} h, but hours must be 0 or more and finite. Correct it.")
    if fsum(hours_h) == 0:
        raise RequirementError("The profile has 0 h in all, so nothing wears the part. Give hours above 0.")
