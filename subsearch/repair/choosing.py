"""The whole repair at once: all positions asked in one statement; for each a choice, or why there is none."""

from dataclasses import dataclass, replace

import duckdb

from subsearch.repair.asking import Asked, ask
from subsearch.repair.cautions import NO_CLASS, cautions, needs_its_class
from subsearch.repair.corner import corner_note
from subsearch.repair.folder import Repair
from subsearch.repair.matching import Match, beside_a_pin, followed, following, is_pinned, matches, same_part
from subsearch.repair.sections import told_of_sections
from subsearch.search.answers import Answer, Candidate, part_name
from subsearch.search.candidates import Found, find
from subsearch.search.criteria import LABELS
from subsearch.units import counted

RUNNERS_UP = 10
NEVER_PINNED = ("polarity", "safety")  # a pin is the builder's own decision, but not against these


@dataclass(frozen=True)
class Choice:
    """One position: what was asked, what was found, what was chosen (None: nothing), why, and the cautions for it."""

    asked: Asked
    found: Found | None
    candidate: Candidate | None
    sentence: str
    cautions: tuple[str, ...]

    @property
    def name(self) -> str:
        """The position's reference with its card."""
        return self.asked.position.name


def choose(con: duckdb.DuckDBPyConnection, repair: Repair) -> list[Choice]:
    """A choice for every position: the pinned part, else the best ranked kept one; never one that is only open.

    Positions of one match group get the same part.
    """
    all_asked = [ask(repair, position) for position in repair.positions]
    groups = matches(con, all_asked, repair.weights)
    requirements = [
        following(asked.requirement, match)
        for asked, match in zip(all_asked, groups, strict=True)
        if asked.requirement is not None
    ]
    answered = iter(find(con, requirements, RUNNERS_UP, repair.weights))
    return [
        _choice(
            asked,
            next(answered) if asked.requirement is not None else None,
            match,
            told_of_sections(con, asked, repair.weights),
        )
        for asked, match in zip(all_asked, groups, strict=True)
    ]


def _choice(asked: Asked, found: Found | None, match: Match | None, of_can: str) -> Choice:
    if found is None or asked.requirement is None:
        return Choice(asked, None, None, asked.notes[0], cautions(asked, None))
    if is_pinned(asked):
        candidate, sentence = _pinned(asked, found)
        sentence += beside_a_pin(match)
        sentence += " The can holds several: this part stands in for one section only." if of_can else ""
    elif of_can and not needs_its_class(asked):
        candidate, sentence = None, of_can
    elif match is not None:
        found, part = followed(found, asked.requirement)
        candidate, sentence = same_part(match, found, part)
        sentence += "" if candidate or found.kept else f" {_nothing(found)}"
    elif needs_its_class(asked):
        candidate, sentence = None, f"Nothing is chosen. {NO_CLASS} Fill in safety_class, or pin a part."
    elif found.kept:
        candidate = found.kept[0]
        sentence = f"Best of {counted(found.kept_count, 'part')} that {'fits' if found.kept_count == 1 else 'fit'}."
    else:
        candidate, sentence = None, _nothing(found)
    noted = replace(asked, notes=(*asked.notes, *corner_note(asked.position, candidate)))
    return Choice(noted, found, candidate, sentence, cautions(asked, candidate))


def _pinned(asked: Asked, found: Found) -> tuple[Candidate | None, str]:
    named = f"{asked.position.pinned_maker or '(no maker)'} {asked.position.pinned_part_number or '(no part number)'}"
    if found.pinned is None:
        return (
            None,
            f"Pinned to {named}, but the catalog has no offer of it. Correct the pin or load the list it is in.",
        )
    if found.pinned.answer is True:
        return found.pinned, f"Pinned in positions.csv; it fits, as place {found.pinned.place} of {found.kept_count}."
    answers = found.why(found.pinned.part["maker"], found.pinned.part["part_number"])
    against = "; ".join(str(one) for one in answers if one.answer is not True)
    if any(one.answer is False and one.name in NEVER_PINNED for one in answers):
        return None, f"Pinned to {named}, but not taken, since it can hurt: {against}."
    return found.pinned, f"Pinned in positions.csv, although not everything is answered yes: {against}."


def _nothing(found: Found) -> str:
    """Why there is no choice, and what would settle it."""
    if found.open:
        best = found.open[0]
        answers = found.why(best.part["maker"], best.part["part_number"])
        rest = f", the first of {found.open_count}" if found.open_count > 1 else ""
        return (
            f"Nothing is certain to fit. {best.name} might{rest}; not settled: "
            f"{_told([one for one in answers if one.answer is None])}. Look it up or ask the supplier, then pin it."
        )
    return f"Nothing fits. {_nearest(found)}"


def _nearest(found: Found) -> str:
    near = found.nearest(1)
    if not near:
        return "The catalog is empty: load a supplier's list first."
    maker, number = near[0]
    against = [one for one in found.why(maker, number) if one.answer is False]
    return f"Nearest is {part_name(maker, number)}, refused for {_told(against)}."


def _told(answers: list[Answer]) -> str:
    return "; ".join(f"{LABELS[one.name]} ({one.sentence})" for one in answers)
