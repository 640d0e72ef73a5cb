"""What to know of a lifetime, in short sentences: where its rule is stretched, and what was not stated."""

from collections.abc import Iterator, Mapping
from math import isnan

from subsearch.formulas.lifetime_inputs import Duty, StatedLife

COOL_C, HOT_CLASS_C = 40.0, 105.0  # outside them the ten-degree rule is stretched. Source: ten-degree range

COOL = "Below 40 °C the rule has not been proved: take the life as a rough guess."
HOT_CLASS = "Above a rating of 105 °C the rule has not been proved: take the life as a rough guess."
NO_SUCH_CLASS = "Published ripple laws know classes of 85 and 105 °C; for this higher one the law of 105 °C was taken."
NO_BASIS = "What the stated life means is not known: it was taken as run without ripple, and the span allows for both."
OVER_RIPPLE = "The ripple current is above the rated one, where published laws differ most."
NO_RIPPLE = "No ripple current is given, so its heat is left out, on both sides."
CEILING = "The age of the rubber seal sets the limit, whether the equipment is on or off."
TWO_LAWS = (
    "Two laws are published for polymer parts: the figure takes the shorter (life doubles every 10 °C cooler), "
    "the span reaches to the longer (tenfold every 20 °C)."
)
NOT_LIMITED = "Heat and ripple do not limit this kind of part by a rule of life, so no hours are given."
FILM_OPTION = "The hours are by a power of the voltage, known from memory: an option, not a maker's figure."
NOT_STATED = "Not stated: {}."


def heat_notes(stated: StatedLife, duty: Duty) -> Iterator[str]:
    """Where the rule of temperature is stretched, and what the stated life leaves open.

    Args:
        stated: [none] what the maker states.
        duty: [none] what the part meets in its place.

    Returns:
        [none] the sentences that apply.

    Holds for parts worn by heat: wet aluminium, hybrid and polymer ones.
    Source: ten-degree range

    >>> list(heat_notes(StatedLife(1000, 85, basis="load life"), Duty(39.9, 8, 0.1)))
    ['Below 40 °C the rule has not been proved: take the life as a rough guess.']
    """
    if duty.working_c < COOL_C:
        yield COOL
    if stated.rated_c > HOT_CLASS_C:
        yield HOT_CLASS
    if stated.basis is None and duty.ripple_a is not None:
        yield NO_BASIS
    if duty.ripple_a is None:
        yield NO_RIPPLE
    elif duty.ripple_a > stated.rated_ripple_a:
        yield OVER_RIPPLE


def unknown_notes(stated: StatedLife, duty: Duty) -> Iterator[str]:
    """Which of the numbers that are needed is not stated.

    Args:
        stated: [none] what the maker states.
        duty: [none] what the part meets in its place.

    Returns:
        [none] one sentence that names them, or none.

    Holds for parts worn by heat: wet aluminium, hybrid and polymer ones.
    Source: ten-degree rule, core rise

    >>> list(unknown_notes(StatedLife(1000, 85), Duty(float("nan"), 8, 0.1)))
    ['Not stated: the working temperature, the rated ripple current.']
    """
    needed = {
        "the life": stated.base_life_h,
        "the rated temperature": stated.rated_c,
        "the working temperature": duty.working_c,
        "the hours a day": duty.hours_a_day,
        "the voltage factor": duty.voltage_factor,
        "the ceiling": duty.ceiling_y,
    }
    if duty.ripple_a is not None:
        needed |= {
            "the ripple current": duty.ripple_a,
            "the rated ripple current": stated.rated_ripple_a,
            "the rise of the core temperature at the rated ripple current": stated.rated_rise_k,
        }
    yield from not_stated(needed)


def not_stated(needed: Mapping[str, float]) -> Iterator[str]:
    """Which of some numbers are unknown.

    Args:
        needed: [none] the numbers by their names, each in its own unit.

    Returns:
        [none] one sentence that names them, or none.

    Holds for all numbers.
    Source: hours in years

    >>> list(not_stated({"the life": float("nan")}))
    ['Not stated: the life.']
    """
    missing = [name for name, number in needed.items() if isnan(number)]
    if missing:
        yield NOT_STATED.format(", ".join(missing))
