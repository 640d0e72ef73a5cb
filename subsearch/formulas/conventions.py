"""What a stated life means, by each published convention: run with ripple or without, in degrees of the air or the can.

One row each, all laws in one form, so that they can be compared. By default the first that fits serves, and the others
make its span (`life_span.py`). Above the rated ripple current they part; a nomogram published for twice that current
reads between the laws.
Source: nomogram above the rated current
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier
from subsearch.formulas.case_rise import life_with_allowance_h
from subsearch.formulas.life import life_h, life_with_ripple_h
from subsearch.formulas.ripple import bending_ripple_life_h, five_degree_life_h, steeper_ripple_life_h

# base life [h], rated temperature [°C], ambient [°C], rise and rise at the rated ripple current [K] → life [h]
Law: TypeAlias = Callable[[Carrier, Carrier, Carrier, Carrier, Carrier], Carrier]

ENDURANCE, WITH_RIPPLE = "endurance", ("load life", "useful life")
BASES = (ENDURANCE, *WITH_RIPPLE)
REFERENCES = AMBIENT, AT_CASE = "ambient", "case"


@dataclass(frozen=True)
class Convention:
    """How a life is calculated from a stated one.

    `with_ripple`: the base life was run with the rated ripple current. `reference`: where temperatures are taken; at
    the "case", the rise is the can's over the air, else the core's. `source`: a key of the sources.
    """

    name: str
    says: str
    with_ripple: bool
    reference: str
    law: Law
    source: str


def _whole_rise(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return life_with_ripple_h(life_h(base, rated, working), rise, rated_rise, 0.0)


def _rise_beyond(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return life_with_ripple_h(life_h(base, rated, working), rise, rated_rise, 1.0)


def _steeper(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return steeper_ripple_life_h(life_h(base, rated, working), rise, rated_rise, rated)


def _bending(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return bending_ripple_life_h(life_h(base, rated, working), rise, rated_rise)


def _five_degrees(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return five_degree_life_h(life_h(base, rated, working), rise)


def _at_case(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return life_h(base, rated, working + rise)


def _at_case_allowed(base: Carrier, rated: Carrier, working: Carrier, rise: Carrier, rated_rise: Carrier) -> Carrier:
    return life_with_allowance_h(base, rated, working + rise)


CONVENTIONS = (
    Convention(
        "rise beyond the rated one",
        "the rated ripple's heat is in the base life: only the difference counts",
        with_ripple=True,
        reference=AMBIENT,
        law=_rise_beyond,
        source="ripple on the core",
    ),
    Convention(
        "whole rise",
        "the base life knows no ripple: its whole heat counts",
        with_ripple=False,
        reference=AMBIENT,
        law=_whole_rise,
        source="ripple on the core",
    ),
    Convention(
        "steeper above the rated current",
        "above it, in the 105 °C class, life falls twice as steeply",
        with_ripple=True,
        reference=AMBIENT,
        law=_steeper,
        source="ripple factor",
    ),
    Convention(
        "bending",
        "the hotter the core, the fewer degrees halve the life",
        with_ripple=True,
        reference=AMBIENT,
        law=_bending,
        source="bending ripple law",
    ),
    Convention(
        "five degrees",
        "the base life knows no ripple: every 5 degrees of its heat halve the life",
        with_ripple=False,
        reference=AMBIENT,
        law=_five_degrees,
        source="five-degree ripple law",
    ),
    Convention(
        "at the case",
        "temperatures are the can's, whatever warms it",
        with_ripple=False,
        reference=AT_CASE,
        law=_at_case,
        source="case temperature rule",
    ),
    Convention(
        "at the case, 10 degrees allowed",
        "at its highest temperature the can was 10 K warmer by the rated ripple",
        with_ripple=True,
        reference=AT_CASE,
        law=_at_case_allowed,
        source="case allowance",
    ),
)


def conventions_for(basis: str | None, reference: str | None) -> tuple[Convention, ...]:
    """The conventions that fit what a maker says of a life, the one that serves by default first.

    Args:
        basis: [none] endurance, load life or useful life; None where not stated, which is taken as run without ripple.
        reference: [none] ambient or case; None where not stated, which is taken as the ambient.

    Returns:
        [none] the conventions; at the case, that of the can's temperature comes first, which gives the shorter life.

    Raises:
        UnknownNameError: another word; the text names the nearest.

    Holds for wet aluminium and hybrid parts.
    Source: ends of life, case temperature rule, case allowance

    >>> [one.name for one in conventions_for("endurance", None)]
    ['whole rise', 'five degrees']
    >>> [one.name for one in conventions_for("useful life", "case")]
    ['at the case', 'at the case, 10 degrees allowed']
    """
    if basis is not None:
        known_word(basis, BASES, "a meaning of a stated life")
    if reference is not None:
        known_word(reference, REFERENCES, "a place where a temperature is taken")
    with_ripple = basis in WITH_RIPPLE
    if reference == AT_CASE:  # the can's own temperature serves every life, the allowance only one run with ripple
        return tuple(one for one in CONVENTIONS if one.reference == AT_CASE and one.with_ripple <= with_ripple)
    return tuple(one for one in CONVENTIONS if one.reference == AMBIENT and one.with_ripple == with_ripple)


def with_ripple_inside(basis: str | None, reference: str | None) -> float:
    """Whether only the rise beyond the rated one counts, by the convention that serves by default.

    Args:
        basis: [none] endurance, load life or useful life; None where not stated.
        reference: [none] ambient or case; None where not stated.

    Returns:
        [1 or 0] 1 where the rated ripple's heat is inside the base life and its temperature, else 0.

    Raises:
        UnknownNameError: another word; the text names the nearest.

    Holds for wet aluminium and hybrid parts; what is not stated is read as the shorter life.
    Source: ends of life, ripple on the core

    >>> with_ripple_inside("load life", None), with_ripple_inside("load life", "case"), with_ripple_inside(None, None)
    (1.0, 0.0, 0.0)
    """
    return float(conventions_for(basis, reference)[0].with_ripple)
