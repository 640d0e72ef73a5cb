"""Life of the parts that come back, in plain numbers: the same laws as in SQL, whose text would slow every search."""

from collections.abc import Mapping
from functools import lru_cache
from math import nan
from typing import Any

from subsearch.formulas import life
from subsearch.formulas.lifetime import polymer_lifetime, wet_lifetime
from subsearch.formulas.lifetime_inputs import Duty, StatedLife
from subsearch.search.derived import known
from subsearch.search.requirement import Requirement
from subsearch.terms import HYBRID, POLYMER, WET


def years(hours: float | None, need: Requirement) -> float | None:
    """A life [h] as years [years] of the hours a day that are worked, under the ceiling; None where not known."""
    y: float | None = None if hours is None else life.life_y(hours, need.hours_a_day)
    return y


SPAN_LAWS = {WET: wet_lifetime, HYBRID: wet_lifetime, POLYMER: polymer_lifetime}


def life_span_y(
    part: Mapping[str, Any], made: Mapping[str, Any], need: Requirement
) -> tuple[float | None, float | None]:
    """The shortest and the longest life [years] over the published laws and over the temperature's uncertainty.

    Under the same ceiling as the figure, which lies between them. None where an input is not stated, or where heat
    does not limit the part. Of the parts shown only, in plain numbers: the same laws as SQL would make every search
    slower, since the text of a statement takes longer to read than its rows.
    """
    if part["technology"] not in SPAN_LAWS or need.working_c is None:
        return None, None
    numbers = (part["life_h"], part["rated_c"], made["usable_ripple_a"])
    base_h, rated_c, ripple_a = (nan if one is None else one for one in numbers)
    stated = StatedLife(base_h, rated_c, ripple_a, part["life_basis"], part["life_reference"])
    duties = (Duty(need.working_c + k * need.temperature_uncertain_k, 24, need.ripple_a) for k in (1, -1))
    hours = _span_h(part["technology"], stated, *duties)
    shortest, longest = (known(life.life_y(one, need.hours_a_day)) for one in hours)
    return shortest, longest


@lru_cache(maxsize=10_000)
def _span_h(technology: str, stated: StatedLife, hottest: Duty, coolest: Duty) -> tuple[float, float]:
    """The shortest life [h], where it is as hot as may be, and the longest, where it is as cool; NaN where unknown."""
    law = SPAN_LAWS[technology]
    return law(stated, hottest).shortest_h, law(stated, coolest).longest_h
