"""A whole repair in a notebook: what was found, what was not, what to mind, and what to buy, as tables and lists."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from html import escape
from itertools import groupby
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pandas as pd
from pandas.io.formats.style import Styler

from subsearch.display.asked import conditions
from subsearch.display.explained import listed
from subsearch.display.words import life_text, margin_text, money_text
from subsearch.errors import UnknownNameError, nearest, one_of
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.repair.reasons import Reasons
from subsearch.search.answers import Candidate, part_name
from subsearch.shopping.files import described, money
from subsearch.shopping.plan import Line, ShoppingList
from subsearch.units import counted

TOLD = ("value", "space")  # of what is asked: the rest stands in the report
DRESS: Any = [{"selector": "th, td", "props": "vertical-align: top; text-align: left; font-size: 12px"}]
TOGETHER = str.maketrans(" ", "\N{NO-BREAK SPACE}")  # a number and its unit stay on one line


@dataclass(frozen=True)
class Told:
    """Markup that a notebook shows; every text from a list or a folder is escaped in it."""

    markup: str

    def _repr_html_(self) -> str:
        return self.markup


def found_table(choices: Sequence[Choice], currency: str | None) -> Styler:
    """What each position asks and the part chosen for it, or the sentence that says why there is none.

    Args:
        choices: one for each position of a repair.
        currency: of the costs; None where no rates are kept.
    """
    rows = []
    for card, its in groupby(choices, key=lambda choice: choice.asked.position.card or ""):
        named = [card]  # beside its first position
        rows += [{"Card": named.pop() if named else "", **_found(choice, currency)} for choice in its]
    return _styled(pd.DataFrame(rows))


def _found(choice: Choice, currency: str | None) -> dict[str, str]:
    need, one = choice.asked.requirement, choice.candidate
    asked = dict(conditions(need)) if need else {}
    return {
        "Position": choice.asked.position.reference,
        "Pieces": str(need.pieces) if need else "",
        "Asked": "; ".join(asked[label] for label in TOLD if label in asked),
        "Part": f"{one.name}: {described(one.part)}" if one else choice.sentence,
        "Life": life_text(one) if one else "",
        "Tightest margin": margin_text(one).translate(TOGETHER) if one else "",
        "Cost": _cost(one, currency) if one else "",
    }


def _cost(one: Candidate, currency: str | None) -> str:
    """Of its pieces by themselves: on the list a part may cost less for several positions together."""
    cost = one.made["cost"]
    return "not stated" if cost is None else money_text(Decimal(str(cost)), currency).translate(TOGETHER)


def position_named(choices: Sequence[Choice], name: str) -> Choice:
    """The choice for one position, by its reference, with its card where several cards have the same.

    Raises:
        UnknownNameError: no position has that name, or several have that reference.
    """
    exactly = [one for one in choices if one.name == name]
    found = exactly or [one for one in choices if one.asked.position.reference == name]
    if len(found) == 1:
        return found[0]
    names = [one.name for one in found or choices]
    if found:
        raise UnknownNameError(f"{len(found)} positions are called {name}. Add the card: {one_of(names)}.")
    raise UnknownNameError(
        f'The repair has no position "{name}".{nearest(name, names)} Write its reference and card, like "{names[0]}".'
    )


def without_a_part(choices: Sequence[Choice], reasons: Sequence[Reasons]) -> Told:
    """For each position without a part why there is none, and what one small concession would open up."""
    told = [
        f"<h4>{escape(choice.name)}</h4><p>{escape(choice.sentence)}</p>{listed((*why.near, *why.two))}"
        for choice, why in zip(choices, reasons, strict=True)
        if choice.candidate is None
    ]
    return Told("".join(told) or "<p>Every position has a part.</p>")


def cautions_of(choices: Sequence[Choice]) -> Told:
    """The cautions for all work of this kind, then those of each position, folded."""
    own = [f"<h4>{escape(one.name)}</h4>{listed(one.cautions)}" for one in choices if one.cautions]
    summary = f"<summary>And at {counted(len(own), 'position')}: what to mind there</summary>"
    return Told(listed(GENERAL) + (f"<details>{summary}{''.join(own)}</details>" if own else ""))


def shopping_table(shopping: ShoppingList) -> Styler:
    """The shopping list by supplier; costs in the builder's own currency, or in the offer's where no rate is kept."""
    rows = []
    for supplier, lines in groupby(shopping.lines, key=lambda line: line.offer.printed["supplier"]):
        named = [supplier]  # beside its first line
        rows += [(named.pop() if named else "", *_bought(line, shopping.currency)) for line in lines]
    return _styled(
        pd.DataFrame(rows, columns=["Supplier", "Part", "Described", "Needed", "Order", "Each", "Cost", "For"])
    )


def _bought(line: Line, currency: str | None) -> tuple[str, ...]:
    its_currency, own = line.offer.printed["currency"], line.own_cost
    each = f"{money(line.purchase.unit_price)} {its_currency or '(currency not stated)'}"
    cost = money_text(line.purchase.cost, its_currency) if own is None else money_text(own, currency)
    return (
        part_name(line.part["maker"], line.part["part_number"]),
        described(line.part),
        str(line.needed),
        str(line.purchase.ordered),
        each.translate(TOGETHER),
        cost.translate(TOGETHER),
        ", ".join(line.positions),
    )


def in_all(shopping: ShoppingList) -> str:
    """What the list comes to, what is not in that sum, and what can't be ordered."""
    pieces = sum(line.purchase.ordered for line in shopping.lines)
    cost = f"{money_text(shopping.total, shopping.currency)} in all, without postage."
    said = [f"{counted(len(shopping.lines), 'line')}, {counted(pieces, 'piece')}, {cost}"]
    if shopping.without_rate:
        said.append(f"Not in this sum: {counted(len(shopping.without_rate), 'line')} in a currency without a rate.")
    return " ".join([*said, *shopping.short])


def written(files: Iterable[Path]) -> Told:
    """Links to files beside a notebook.

    >>> written([Path("organ/report.html")]).markup
    '<ul><li>Written: <a href="organ/report.html" target="_blank">organ/report.html</a></li></ul>'
    """
    links = (f'<a href="{quote(one.as_posix())}" target="_blank">{escape(one.as_posix())}</a>' for one in files)
    return Told(f"<ul>{''.join(f'<li>Written: {link}</li>' for link in links)}</ul>")


def _styled(table: pd.DataFrame) -> Styler:
    """Text that stays text, at the left, without a column of line numbers."""
    return (
        table.style.format(escape="html").format_index(escape="html", axis=1).hide(axis="index").set_table_styles(DRESS)
    )
