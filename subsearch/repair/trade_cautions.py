"""What the trade knows of a part chosen for a position: each rule says when it is called for, and why."""

from collections.abc import Callable
from datetime import date

from subsearch.formulas.as_written import SLACK
from subsearch.formulas.practice import LONG_FILM_MM, TWICE, USED_BEFORE
from subsearch.formulas.voltage import TANTALUM_TIMES
from subsearch.repair.ageing import stored
from subsearch.repair.asking import Asked
from subsearch.search.answers import Candidate
from subsearch.terms import CLASS_2, FILM_PET, FILM_PP, TANTALUM, WITHOUT_POLARITY
from subsearch.units import show

SENSITIVE = ("coupling", "timing", "filter or equaliser")
FIRE = "Tantalum burns when it fails or is fitted the wrong way round: limit the current."
PULLED = (
    "Pulled from used equipment: nobody knows its hours or its heat, and makers advise against using it again. Measure "
    "capacitance, ESR and leakage before you fit it."
)
BIASED = (
    "Class 2 ceramic: it loses capacitance under d.c. voltage and with age, and turns knocks into noise. Look up "
    "what is left of it at this voltage."
)


def trade_cautions(asked: Asked, candidate: Candidate, today: date) -> list[str]:
    """What to be careful of with this part in this position."""
    said = [text for rule in RULES if (text := rule(asked, candidate))]
    return [*said, *stored(candidate.part, candidate.offer, today)]


def _tantalum(asked: Asked, candidate: Candidate) -> str:
    """Fire, and too little voltage in reserve where a pin has let it in."""
    part, need = candidate.part, asked.requirement
    if part["technology"] != TANTALUM:
        return ""
    needed_v = None if need is None else need.rated_v
    if needed_v is None or (part["rated_v"] or 0.0) >= TANTALUM_TIMES * needed_v * (1 - SLACK):
        return FIRE
    wanted = f"{show(TANTALUM_TIMES * needed_v, 'V')}, {TANTALUM_TIMES:g} times the {show(needed_v, 'V')} needed"
    if part["rated_v"] is None:
        return f"{FIRE} Its rated voltage is not stated: common practice is {wanted}."
    return f"{FIRE} Rated {show(part['rated_v'], 'V')}, it has too little in reserve: common practice is {wanted}."


def _larger(asked: Asked, candidate: Candidate) -> str:
    """More capacitance than the old part where that has a price."""
    old_f, new_f, role = asked.position.capacitance_f, candidate.part["capacitance_f"], asked.position.role
    if old_f is None or new_f is None or new_f <= old_f * (1 + SLACK):
        return ""
    over_twice = new_f > TWICE * old_f * (1 + SLACK)
    more = f"{show(new_f, 'F')} in place of {show(old_f, 'F')} ({show(round(100 * (new_f / old_f - 1), 1), '')} % more)"
    if role == "reservoir":
        limit = " It is over twice the old value: look up the surge limit of the rectifier first." if over_twice else ""
        return (
            f"Larger reservoir: {more}. A stronger current rushes in through rectifier and fuse when it is switched "
            f"on. Never answer a blown fuse with a larger one.{limit}"
        )
    if role == "feedback leg" and over_twice:
        return f"Larger feedback leg: {more}. It settles more slowly after switch-on; wait before you measure offset."
    return ""


def _bipolar(asked: Asked, candidate: Candidate) -> str:
    part = candidate.part
    is_bipolar = part["polarity"] == "bipolar" and part["technology"] not in WITHOUT_POLARITY
    if asked.position.polarity != "polar" or not is_bipolar:
        return ""
    return "Bipolar part in a polar position: it works either way round, but is larger and leaks more than a polar one."


def _long_film(asked: Asked, candidate: Candidate) -> str:
    """A film body long enough to pick up hum in a stage that would amplify it."""
    part = candidate.part
    longest = max((part[side] for side in ("along_mm", "across_mm", "tall_mm") if part[side] is not None), default=0.0)
    if part["technology"] not in (FILM_PET, FILM_PP) or asked.position.role not in SENSITIVE or longest <= LONG_FILM_MM:
        return ""
    return (
        f"Film body {show(longest, 'mm')} long in a sensitive stage: it picks up hum. Turn its outer foil to the side "
        "of lower impedance, and keep it away from transformer and mains leads."
    )


def _class_2(asked: Asked, candidate: Candidate) -> str:
    return BIASED if candidate.part["technology"] == CLASS_2 else ""


def _pulled(asked: Asked, candidate: Candidate) -> str:
    """Refused unless the builder lets such parts in."""
    return PULLED if candidate.offer["condition"] == USED_BEFORE else ""


RULES: tuple[Callable[[Asked, Candidate], str], ...] = (_tantalum, _larger, _bipolar, _long_film, _class_2, _pulled)
