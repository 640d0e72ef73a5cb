"""One position by itself, asked without a repair's folder: the same cautions, choice and list as in a whole repair."""

from collections.abc import Collection
from dataclasses import replace

from subsearch.errors import RequirementError
from subsearch.repair.asking import Asked
from subsearch.repair.cautions import NO_CLASS, cautions, needs_its_class
from subsearch.repair.choosing import NEVER_PINNED, Choice
from subsearch.repair.corner import corner_note
from subsearch.repair.positions import Position, Rating
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found
from subsearch.search.criteria import LABELS
from subsearch.search.requirement import Requirement


def alone(requirement: Requirement) -> Asked:
    """A requirement as a position of its own: what it says of the place, and nothing that it does not say.

    >>> alone(Requirement(reference="C7", capacitance_f=47e-6, rated_v=25)).position.rated_voltage
    Rating(volts=25, ac=False)
    """
    d_c, a_c = requirement.rated_v, requirement.rated_ac_v
    rating = Rating(d_c, False) if d_c is not None else None if a_c is None else Rating(a_c, True)
    position = Position(
        reference=requirement.reference,
        role=requirement.role,
        safety_class=requirement.safety_class,
        capacitance_f=requirement.capacitance_f,
        rated_voltage=rating,
        polarity="bipolar" if requirement.reverses else None,
        hole_spacing_mm=requirement.hole_spacing_mm,
        headroom_mm=requirement.headroom_mm,
        temperature_c=requirement.working_c,
    )
    return Asked(position, requirement, ())


def looked_at(found: Found, candidate: Candidate, asked: Asked | None = None) -> Choice:
    """A part among those found, as if it were taken: how it stands, and the cautions it calls for.

    Args:
        found: what was found for the position; open to ask again where the part is refused.
        candidate: one of its parts.
        asked: the position with all that is recorded of it, which more cautions follow from; else what the
            requirement says.

    Raises:
        RequirementError: the position asks something else than what was searched for.
    """
    asked = alone(found.requirement) if asked is None else asked
    if asked.requirement is None or _searched(asked.requirement) != _searched(found.requirement):
        raise RequirementError(f"{asked.position.name} asks something else now than was searched for. Search again.")
    noted = replace(asked, notes=(*asked.notes, *corner_note(asked.position, candidate)))
    return Choice(noted, found, candidate, _standing(found, candidate), cautions(asked, candidate))


def taken(found: Found, candidate: Candidate, asked: Asked | None = None) -> Choice:
    """The builder's own choice among the parts found: as `looked_at`, unless it can hurt.

    Raises:
        RequirementError: the position stands on the mains without its safety class, the part is refused for its
            polarity or its class, or as `looked_at`.
    """
    choice = looked_at(found, candidate, asked)
    if needs_its_class(choice.asked):
        raise RequirementError(
            f"{choice.name}: no part is taken. {NO_CLASS} Fill in safety_class; or its role, where it is there for "
            "something else than to suppress interference."
        )
    if candidate.answer is False and (hurts := _against(found, candidate, NEVER_PINNED)):
        raise RequirementError(f"{choice.name}: {candidate.name} is not taken, since it can hurt: {hurts}.")
    return choice


def _searched(requirement: Requirement) -> Requirement:
    """The requirement without the part that is to come back whether it fits or not."""
    return replace(requirement, pinned_maker=None, pinned_part_number=None)


def _standing(found: Found, candidate: Candidate) -> str:
    if candidate.answer is True:
        return f"Place {candidate.place} of {found.kept_count} that fit."
    if candidate.answer is False:
        return f"It does not fit: {_against(found, candidate)}."
    open_ones = ", ".join(LABELS[name] for name in candidate.not_stated)
    return f"Not settled, because it is not stated: {open_ones}. Look it up or ask the supplier before you buy."


def _against(found: Found, candidate: Candidate, names: Collection[str] = tuple(LABELS)) -> str:
    """What refuses a part, among the conditions of these names."""
    answers = found.why(candidate.part["maker"], candidate.part["part_number"])
    return "; ".join(str(one) for one in answers if one.answer is False and one.name in names)
