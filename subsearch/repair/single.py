"""One position by itself, asked without a repair's folder: the same cautions, choice and list as in a whole repair."""

from subsearch.repair.asking import Asked
from subsearch.repair.cautions import cautions
from subsearch.repair.choosing import Choice
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


def taken(found: Found, candidate: Candidate) -> Choice:
    """The builder's own choice among the parts found: how it stands, and the cautions it calls for."""
    asked = alone(found.requirement)
    return Choice(asked, found, candidate, _standing(found, candidate), cautions(asked, candidate))


def _standing(found: Found, candidate: Candidate) -> str:
    if candidate.answer is True:
        return f"Place {candidate.place} of {found.kept_count} that fit."
    open_ones = ", ".join(LABELS[name] for name in candidate.not_stated)
    return f"Not settled, because it is not stated: {open_ones}. Look it up or ask the supplier before you buy."
