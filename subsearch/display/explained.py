"""What the panel says of one part, as markup in which every text from a list is escaped."""

from collections.abc import Iterable, Mapping, Sequence
from html import escape
from typing import Any

from subsearch.display.words import money_text
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.search.answers import SAID, Answer, Candidate
from subsearch.search.criteria import LABELS
from subsearch.search.requirement import Requirement
from subsearch.shopping.files import described
from subsearch.shopping.plan import ShoppingList


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
    own = f'<h4>For this part</h4><div class="subs-own">{listed(choice.cautions)}</div>' if choice.cautions else ""
    return text(own, f"<h4>For all work of this kind</h4>{listed(GENERAL)}")


def the_list(choices: Iterable[Choice], shopping: ShoppingList | None, written: str) -> str:
    """What has been taken so far, what it comes to, and where it was written."""
    rows = "".join(
        f"<tr><td>{escape(one.name)}</td><td>{one.found.requirement.pieces}\N{NO-BREAK SPACE}×</td>"
        f"<td>{escape(one.candidate.name)}</td><td>{escape(described(one.candidate.part))}</td></tr>"
        for one in choices
        if one.candidate is not None and one.found is not None
    )
    if not rows or shopping is None:
        return text("<h4>Your list</h4><p>Nothing is on it yet.</p>")
    cost = f"In all {money_text(shopping.total, shopping.currency)}, without postage."
    without = f" Without a rate, so not in the sum: {len(shopping.without_rate)}." if shopping.without_rate else ""
    return text(
        f"<h4>Your list</h4><table>{rows}</table><p>{escape(cost + without)}</p>",
        listed(shopping.short),
        f"<p><b>{escape(written)}</b></p>",
    )


def as_code(asked: Mapping[str, Any], best: int) -> str:
    """The line of Python that gives what the panel shows.

    >>> as_code({"reference": "C7", "rated_v": 25.0}, 50)
    "find(open_to_read(catalog), [Requirement(reference='C7', rated_v=25.0)], best=50)[0]"
    """
    fields = ", ".join(
        f"{name}={value!r}" for name, value in asked.items() if value != getattr(Requirement, name, None)
    )
    return f"find(open_to_read(catalog), [Requirement({fields})], best={best})[0]"
