"""Why a position's answer is what it is, for the report: runners-up, what is open, and what refused the rest.

Asked for apart from the choices and all at once, since each statement costs far more than one more row of it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import duckdb

from subsearch.repair.choosing import Choice
from subsearch.search import candidates, near_misses, refusals, several
from subsearch.search.answers import Answer, Candidate, part_name
from subsearch.search.candidates import Found
from subsearch.search.stability import stabilities
from subsearch.units import show

RUNNERS_UP, MOST_OPEN, MOST_REFUSED = 3, 3, 5
FEW = candidates.FEW


@dataclass(frozen=True)
class Against:
    """A part that was not taken, and the answers that stand against it."""

    name: str
    answers: tuple[Answer, ...]


@dataclass(frozen=True)
class Reasons:
    """What stands behind one position's choice; `refused_by`, `nearest`, `near` and `two` are empty where enough fit.

    `opened` holds open parts with what is not stated, `refused_by` how many parts each condition refuses, `nearest`
    the refusals that come nearest with what refuses them, `near` the near misses in sentences, `two` what two parts
    can do in place of one, `stability` how firmly the best ranked part stands first where it is the one chosen.
    """

    runners_up: tuple[Candidate, ...] = ()
    opened: tuple[Against, ...] = ()
    refused_by: tuple[tuple[str, int], ...] = ()
    nearest: tuple[Against, ...] = ()
    near: tuple[str, ...] = ()
    two: tuple[str, ...] = ()
    stability: str = ""


def reasons(con: duckdb.DuckDBPyConnection, choices: Sequence[Choice]) -> list[Reasons]:
    """The reasons for each choice, in a fixed number of statements however many choices there are."""
    opened = _opened(con, choices)
    few = [choice for choice in choices if choice.found and _is_few(choice, choice.found)]
    asked = [choice.found.requirement for choice in few if choice.found]
    counts = [tuple(sorted(_some(one).items(), key=_most_first)) for one in refusals.refused_by(con, asked)]
    near = refusals.nearest_refused(con, asked, MOST_REFUSED)
    told = iter(refusals.why(con, [(need, *name) for need, names in zip(asked, near, strict=True) for name in names]))
    nearest = [tuple(_against(part_name(*name), next(told), False) for name in names) for names in near]
    misses = near_misses.where_few(con, [choice.found for choice in few if choice.found])
    sentences = [_in_its_words(choice, one.sentences) for choice, one in zip(few, misses, strict=True)]
    two = _two(con, few)
    behind = {id(choice): told for choice, *told in zip(few, counts, nearest, sentences, two, strict=True)}
    return [
        replace(Reasons(_runners_up(choice), its_open, *behind.get(id(choice), ((), (), (), ()))), stability=firmly)
        for choice, its_open, firmly in zip(choices, opened, _stabilities(con, choices), strict=True)
    ]


def _two(con: duckdb.DuckDBPyConnection, choices: Sequence[Choice]) -> list[tuple[str, ...]]:
    """What two parts can do for each choice; nothing on the mains, where one may have to be of a safety class."""
    asked = [choice.found for choice in choices if choice.found and not choice.asked.position.mains]
    told = iter(several.where_few(con, asked, weights=asked[0].weights if asked else None))
    return [next(told).sentences if choice.found and not choice.asked.position.mains else () for choice in choices]


def _stabilities(con: duckdb.DuckDBPyConnection, choices: Sequence[Choice]) -> list[str]:
    """A sentence for each choice that is the first of its position; nothing for the others."""
    firsts = [one.found if one.found and one.candidate in one.found.kept[:1] else None for one in choices]
    found = [one for one in firsts if one]
    told = iter(stabilities(con, [one.requirement for one in found], found[0].weights if found else None))
    return [str(next(told)) if first else "" for first in firsts]


def _in_its_words(choice: Choice, sentences: tuple[str, ...]) -> tuple[str, ...]:
    """The sentences; one that leans on a measurement begins with what is marked, since nothing was measured."""
    position, rating = choice.asked.position, choice.asked.position.rated_voltage
    measured = position.dc_lowest_v, position.dc_highest_v, position.ac_peak_v, position.fault_v
    if rating is None or rating.ac or measured != (None, None, None, None):
        return sentences
    marked = f"Marked {show(rating.volts, 'V')}, nothing measured: if it measures "
    return tuple(one.replace("If it measures ", marked, 1) for one in sentences)


def _is_few(choice: Choice, found: Found) -> bool:
    if choice.asked.position.sections:  # what one part lacks says nothing of several
        return False
    return choice.candidate is None or found.kept_count < FEW


def _some(counts: dict[str, int]) -> dict[str, int]:
    return {name: count for name, count in counts.items() if count}


def _most_first(counted: tuple[str, int]) -> tuple[int, str]:
    return -counted[1], counted[0]


def _runners_up(choice: Choice) -> tuple[Candidate, ...]:
    kept = choice.found.kept if choice.found else ()
    return tuple(one for one in kept if choice.candidate is None or one.name != choice.candidate.name)[:RUNNERS_UP]


def _opened(con: duckdb.DuckDBPyConnection, choices: Sequence[Choice]) -> list[tuple[Against, ...]]:
    first = [choice.found.open[:MOST_OPEN] if choice.found else () for choice in choices]
    asked = [
        (choice.found.requirement, one.part["maker"], one.part["part_number"])
        for choice, its_open in zip(choices, first, strict=True)
        if choice.found
        for one in its_open
    ]
    told = iter(refusals.why(con, asked))
    return [tuple(_against(one.name, next(told), None) for one in its_open) for its_open in first]


def _against(name: str, answers: Sequence[Answer], wanted: bool | None) -> Against:
    return Against(name, tuple(one for one in answers if one.answer is wanted))
