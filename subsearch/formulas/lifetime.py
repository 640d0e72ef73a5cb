"""The lifetime of one part in one place: the figure, its span over the published laws, years, and what to know of it.

Which law serves which technology is not decided here. All numbers are plain; unknown is NaN.
"""

from dataclasses import dataclass
from math import inf, nan

from subsearch.formulas.carriers import least, most
from subsearch.formulas.conventions import AT_CASE, ENDURANCE, WITH_RIPPLE, with_ripple_inside
from subsearch.formulas.life import life_h, life_with_ripple_h, life_y, rise_k
from subsearch.formulas.life_span import (
    least_factor_with_ripple,
    least_factor_without_ripple,
    longest_at_case_h,
    longest_cool_h,
    longest_polymer_h,
    most_factor_with_ripple,
    most_factor_without_ripple,
    shortest_cool_h,
    shortest_polymer_h,
)
from subsearch.formulas.lifetime_inputs import Duty, StatedLife, check_hours_a_day, check_stated_life
from subsearch.formulas.lifetime_notes import (
    CEILING,
    FILM_OPTION,
    HOT_CLASS_C,
    NO_SUCH_CLASS,
    NOT_LIMITED,
    TWO_LAWS,
    heat_notes,
    not_stated,
    unknown_notes,
)
from subsearch.formulas.polymer import twofold_life_h

SERVICE_LIFE_Y = 10.0  # what is commonly regarded as a service life, and some cut results at. Source: service life
SEAL_LIFE_Y = (10.0, 15.0)  # the real life of a rubber seal. Source: seal life


@dataclass(frozen=True)
class Lifetime:
    """How long a part lasts: hours without a ceiling [h], years under it, and the span over the published laws [h].

    Numbers are NaN where an input is unknown, and where the part is not `limited` by a rule; the notes say which.
    """

    life_h: float
    life_y: float
    shortest_h: float
    longest_h: float
    ceiling_y: float
    limited: bool
    notes: tuple[str, ...]


@dataclass(frozen=True)
class _Heat:
    """What a ripple current adds [K]: its rise, the rated one, and 1 where that one is inside the base life."""

    rise_k: float = 0.0
    rated_rise_k: float = 0.0
    inside: float = 0.0


def wet_lifetime(stated: StatedLife, duty: Duty) -> Lifetime:
    """The lifetime of a wet aluminium or hybrid part, by the ten-degree rule and the rise of its core temperature.

    Args:
        stated: [none] what its maker states.
        duty: [none] what it meets in its place.

    Returns:
        [none] the lifetime; unknown where a number is that its law needs.

    Raises:
        UnknownNameError: another word for the basis or the reference.

    Holds for the range of the ten-degree rule; a note says where it is left. At the case the core's rise is taken for
    the can's, which is the shorter reading.
    Source: ten-degree rule, ripple on the core, Arrhenius, calendar ceiling

    >>> found = wet_lifetime(StatedLife(2000, 105, 1.0, "load life"), Duty(55, 8, ripple_a=0.5))
    >>> round(found.life_h), found.life_y, round(found.shortest_h), round(found.longest_h)
    (82998, 15.0, 82998, 220322)
    """
    heat = _heat(stated, duty)
    cool = life_h(stated.base_life_h, stated.rated_c, duty.working_c)
    figure = life_with_ripple_h(cool, heat.rise_k, heat.rated_rise_k, heat.inside)
    by_class = duty.ripple_a is not None and stated.basis != ENDURANCE and stated.reference != AT_CASE
    above = [NO_SUCH_CLASS] if by_class and stated.rated_c > HOT_CLASS_C else []
    shortest, longest = _wet_span_h(stated, duty, heat)
    return _lifetime(stated, duty, (shortest, figure, longest), above)


def polymer_lifetime(stated: StatedLife, duty: Duty) -> Lifetime:
    """The lifetime of a solid polymer part: twofold for 10 degrees is the figure, tenfold for 20 the other end.

    Args:
        stated: [none] what its maker states.
        duty: [none] what it meets in its place.

    Returns:
        [none] the lifetime; unknown where a number is that its law needs.

    Raises:
        UnknownNameError: another word for the basis or the reference.

    Holds for solid polymer parts; hybrid ones age as wet ones do.
    Source: twofold polymer rule, twenty-degree rule, ripple on the core, calendar ceiling

    >>> found = polymer_lifetime(StatedLife(2000, 105), Duty(85, 24))
    >>> found.life_h, found.longest_h, round(found.life_y, 2)
    (8000.0, 20000.0, 0.91)
    """
    heat = _heat(stated, duty)
    core_c = coolest_c = duty.working_c + heat.rise_k - heat.inside * heat.rated_rise_k
    if stated.basis is None and stated.reference != AT_CASE:
        coolest_c = core_c - heat.rated_rise_k  # the base life may as well have been run with ripple
    at_rated = stated.base_life_h, stated.rated_c
    shortest, longest = shortest_polymer_h(*at_rated, core_c), longest_polymer_h(*at_rated, coolest_c)
    hours = shortest, twofold_life_h(*at_rated, core_c), longest
    return _lifetime(stated, duty, hours, [TWO_LAWS] if core_c < stated.rated_c else [])


def unlimited_lifetime(film_h: float | None = None, hours_a_day: float = 24.0) -> Lifetime:
    """The lifetime of a film or ceramic part: not limited by this rule, so no hours unless an option is asked for.

    Args:
        film_h: [h] for film, and only as an option: life by a power of the voltage, as `film_life_h` gives it.
        hours_a_day: [h] hours switched on a day, above 0 and up to 24.

    Returns:
        [none] the lifetime, with a note that says it is not limited, or that the hours are an option; no ceiling.

    Raises:
        RequirementError: hours that no day has, or a life that is not above 0.

    Holds for film and ceramic parts within their ratings.
    Source: film life, hours in years

    >>> unlimited_lifetime().life_h, unlimited_lifetime().limited
    (nan, False)
    >>> unlimited_lifetime(29200, 8).life_y
    10.0
    """
    check_hours_a_day(hours_a_day)
    if film_h is None:
        return Lifetime(nan, nan, nan, nan, nan, False, (NOT_LIMITED,))
    check_stated_life(film_h)
    notes = (FILM_OPTION, *not_stated({"the life": film_h, "the hours a day": hours_a_day}))
    return Lifetime(film_h, life_y(film_h, hours_a_day, inf), film_h, film_h, nan, False, notes)


def _heat(stated: StatedLife, duty: Duty) -> _Heat:
    """No ripple stated: no rise, and no credit for the one in the base life."""
    inside = with_ripple_inside(stated.basis, stated.reference)
    if duty.ripple_a is None:
        return _Heat()
    return _Heat(rise_k(stated.rated_rise_k, duty.ripple_a, stated.rated_ripple_a), stated.rated_rise_k, inside)


def _wet_span_h(stated: StatedLife, duty: Duty, heat: _Heat) -> tuple[float, float]:
    """The shortest and the longest life of a wet part over the laws that fit."""
    at_rated = stated.base_life_h, stated.rated_c
    if duty.ripple_a is None or stated.reference == AT_CASE:
        allowed = duty.ripple_a is not None and stated.basis != ENDURANCE
        at_c = duty.working_c + heat.rise_k
        return shortest_cool_h(*at_rated, at_c), (longest_at_case_h if allowed else longest_cool_h)(*at_rated, at_c)
    low, high = _ripple_span(stated, heat)
    return shortest_cool_h(*at_rated, duty.working_c) * low, longest_cool_h(*at_rated, duty.working_c) * high


def _ripple_span(stated: StatedLife, heat: _Heat) -> tuple[float, float]:
    """The least and the most ripple factor; over both meanings where the base life's is not known."""
    inside = (
        least_factor_with_ripple(heat.rise_k, heat.rated_rise_k, stated.rated_c),
        most_factor_with_ripple(heat.rise_k, heat.rated_rise_k),
    )
    outside = least_factor_without_ripple(heat.rise_k), most_factor_without_ripple(heat.rise_k)
    if stated.basis is None:
        return least(inside[0], outside[0]), most(inside[1], outside[1])
    return inside if stated.basis in WITH_RIPPLE else outside


def _lifetime(stated: StatedLife, duty: Duty, hours: tuple[float, float, float], more_notes: list[str]) -> Lifetime:
    """From the shortest life, the figure and the longest one."""
    shortest, figure, longest = (one * duty.voltage_factor for one in hours)
    if life_y(figure, duty.hours_a_day, inf) >= duty.ceiling_y:
        more_notes = [*more_notes, CEILING]
    notes = (*heat_notes(stated, duty), *more_notes, *unknown_notes(stated, duty))
    years = life_y(figure, duty.hours_a_day, duty.ceiling_y)
    return Lifetime(figure, years, shortest, longest, duty.ceiling_y, True, notes)
