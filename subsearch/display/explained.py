"""What the panel says of one part, as markup in which every text from a list is escaped."""

from collections.abc import Iterable, Sequence
from dataclasses import fields
from html import escape

from subsearch.display.words import money_text
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.search.answers import SAID, Answer, Candidate
from subsearch.search.criteria import LABELS
from subsearch.search.requirement import Requirement
from subsearch.search.several import Several
from subsearch.shopping.files import described
from subsearch.shopping.plan import ShoppingList

FOLLOWS = ("technologies", "capacitance_low_f", "capacitance_high_f")


def text(*parts: str) -> str:
    """Markup in the panel's own dress."""
    return f'<div class="subs-text">{"".join(parts)}</div>'


def listed(sentences: Iterable[str]) -> str:
    """Sentences as a list.

    >>> listed(["a < b"])
    '<ul><li>a &lt; b</li></ul>'
    """
    return f"<ul>{''.join(f'<li>{escape(one)}</li>' for one in sentences)}</ul>"


def why_it_fits(candidate: Candidate, answers: Sequence[Answer], standing: str) -> str:
    """One part: how it stands, every condition asked with its answer, and the sum that gives its place."""
    asked = "".join(
        f"<tr><th>{escape(LABELS[one.name])}</th><td>{SAID[one.answer]}</td><td>{escape(one.sentence)}</td></tr>"
        for one in answers
    )
    return text(
        f"<h4>Why {escape(candidate.name)}</h4>",
        f"<p>{escape(described(candidate.part))}. {escape(standing)}</p><table>{asked}</table>",
    )


def its_score(candidate: Candidate) -> str:
    """The contributions that add up to the score."""
    named = {name: "not stated" if worth is None else f"{worth:.2f}" for name, worth in candidate.contributions.items()}
    named["together"] = f"{candidate.total:.2f}"
    names, worths = (
        "".join(f"<{tag}>{escape(one)}</{tag}>" for one in row) for tag, row in (("th", named), ("td", named.values()))
    )
    return text(f'<h4>Its score</h4><table class="subs-sum"><tr>{names}</tr><tr>{worths}</tr></table>')


def before_you_take(choice: Choice) -> str:
    """The cautions beside the button: first those that this part in this place calls for, then those for all work."""
    unsettled = () if choice.candidate is None or choice.candidate.answer is True else (choice.sentence,)
    said = (*unsettled, *choice.cautions)
    own = f'<h4>For this part</h4><div class="subs-own">{listed(said)}</div>' if said else ""
    return text(own, f"<h4>For all work of this kind</h4>{listed(GENERAL)}")


def taken_sentences(choices: Iterable[Choice]) -> list[str]:
    """What has been taken so far, a sentence a position."""
    return [
        f"{one.name}: {one.found.requirement.pieces} × {one.candidate.name}, {described(one.candidate.part)}"
        for one in choices
        if one.candidate is not None and one.found is not None
    ]


def cost_sentence(shopping: ShoppingList | None) -> str:
    """What the list comes to, and what can't be had."""
    if shopping is None or not (shopping.lines or shopping.short):
        return "Nothing is on it yet."
    cost = f"In all {money_text(shopping.total, shopping.currency)}, without postage."
    without = f"Without a rate, so not in the sum: {len(shopping.without_rate)}." if shopping.without_rate else ""
    return " ".join(filter(None, (cost, without, *shopping.short)))


def in_python(requirement: Requirement, best: int) -> str:
    """The line of Python that gives what the panel shows.

    >>> in_python(Requirement(reference="C7", rated_v=25.0), 50)
    "find(open_to_read(catalog), [Requirement(reference='C7', rated_v=25.0)], best=50)[0]"
    """
    said = {one.name: getattr(requirement, one.name) for one in fields(requirement)}
    said = {name: value for name, value in said.items() if value != getattr(Requirement, name)}
    for name in FOLLOWS:  # what follows from the role and the value need not be said
        shorter = {other: value for other, value in said.items() if other != name}
        said = shorter if Requirement(**shorter) == requirement else said
    asked = ", ".join(f"{name}={value!r}" for name, value in said.items())
    return f"find(open_to_read(catalog), [Requirement({asked})], best={best})[0]"


def two_in_place(several: Several, drawings: Sequence[str]) -> str:
    """The best pairs in words, each way's best one drawn; never chosen by itself."""
    if not several.sentences:
        return text("<p>No two parts together fit either, or the position does not allow two.</p>")
    drawn = "".join(f"<div>{one}</div>" for one in drawings)
    return text("<p>For you to decide; never chosen by itself.</p>", listed(several.sentences), drawn)
