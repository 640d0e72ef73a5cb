"""What the command line prints: summaries and tables in words, on the terminal or into a file."""

from __future__ import annotations

from decimal import Decimal
from itertools import groupby
from typing import TYPE_CHECKING

from rich.table import Table

from subsearch.display.asked import unasked
from subsearch.display.scored import beside_the_table, score_table, score_text
from subsearch.display.terminal import FULL_WIDTH, visible
from subsearch.display.terminal import console as _console
from subsearch.display.terminal import say as _say
from subsearch.display.words import life_text, margin_text, money_text, mounted_texts
from subsearch.reading.reference_names import runs
from subsearch.search.answers import SAID, body, part_name, value_text
from subsearch.search.criteria import LABELS
from subsearch.units import counted

if TYPE_CHECKING:  # `find` must not wait for the rooms that only `load` and `repair` enter
    from collections.abc import Sequence
    from pathlib import Path

    from subsearch.catalog.facts import Refusal
    from subsearch.catalog.intake import Intake
    from subsearch.catalog.rates import Rate
    from subsearch.repair.choosing import Choice
    from subsearch.repair.folder import Repair
    from subsearch.repair.reasons import Reasons
    from subsearch.search.answers import Answer, Candidate
    from subsearch.search.candidates import Found
    from subsearch.search.requirement import Requirement
    from subsearch.shopping.plan import ShoppingList

REASONS = 3  # so many refusals of a list are told; all stand in the catalog
WIDTHS = {"Position": 8, "Part": 27, "Value": 20, "Body": 20, "Margin": 7, "Life": 19, "Cost": 6, "Score": 5}


def print_intakes(intakes: Sequence[Intake], refusals: Sequence[Sequence[Refusal]], catalog: Path) -> None:
    """What came of each list: read, kept and refused lines with the first reasons, headings left out, notes."""
    for one, its_refusals in zip(intakes, refusals, strict=True):
        _say(
            f"{one.supplier}: {counted(one.lines_read, 'line')} read, {one.kept} kept, {one.refused} refused"
            f" (intake {one.number} of the catalog)"
        )
        for refusal in its_refusals[:REASONS]:
            _say(f"  line {refusal.line}{f', {refusal.heading}' if refusal.heading else ''}: {refusal.reason}")
        if len(its_refusals) > REASONS:
            _say(f"  and {len(its_refusals) - REASONS} more faults; all are kept in the catalog")
        if one.skipped_headings:
            _say(f"  headings not understood and left out: {', '.join(one.skipped_headings)}")
        for note in one.notes:
            _say(f"  {note}")
    _say(f"Catalog: {catalog}")


def print_rates(rates: Sequence[Rate], catalog: Path) -> None:
    """What each currency is worth."""
    own = next(rate.currency for rate in rates if rate.worth == 1)
    for rate in rates:
        if rate.currency != own:
            dated = f" ({rate.dated})" if rate.dated else ""
            _say(f"1 {rate.currency} = {rate.worth} {own}{dated}")
    _say(f"Your own currency is {own}. Catalog: {catalog}")


def print_found(found: Found, catalog: Path, best: int, score: bool = False) -> None:
    """The best kept and the open parts of one position, and the counts; with `score`, what each contribution adds."""
    if shown := found.kept[:best]:
        _console().print(_table(shown))
        for sentence in beside_the_table(found, shown):
            _say(sentence)
        if score:
            _console().print(score_table(found, shown))
    if found.open:
        _say("\nOpen, because something is not stated:")
        for one in found.open[:5]:
            _say(f"  {one.name}: not stated is {', '.join(LABELS[name] for name in one.not_stated)}")
    _say(f"\nFitting: {found.kept_count}. Open: {found.open_count}. Refused: {found.refused_count}.")
    _print_unasked(found.requirement)
    nearest = [] if found.kept else found.nearest(5)
    if not found.kept:
        _say("Nothing fits. The nearest refusals:" if nearest else "Nothing fits.")
        for maker, number in nearest:
            against = [answer for answer in found.why(maker, number) if answer.answer is False]
            _say(f"  {part_name(maker, number)}: {'; '.join(f'{LABELS[one.name]}: {one.sentence}' for one in against)}")
    near = found.near_misses().sentences if found.few else ()
    for line in ("Near misses:", *(f"  {sentence}" for sentence in near)) if near else ():
        _say(line)
    two = found.several().sentences if found.few else ()
    for line in ("Two in place of one:", *(f"  {sentence}" for sentence in two)) if two else ():
        _say(line)
    _say(f"Catalog: {catalog}")


def _print_unasked(asked: Requirement) -> None:
    """What a builder might take for asked, and is not."""
    for what in unasked(asked):
        _say(f"The {what} was not asked: look at it before you take a part.")
    if asked.life_wanted_y is None and asked.working_c is not None:
        _say("Life is shown, but neither asked nor ranked: say with --years how long it should last.")
    if asked.life_wanted_y is not None and asked.working_c is None:
        _say("Life was not asked: say with --temperature how hot it gets.")


def _table(kept: Sequence[Candidate]) -> Table:
    table = _columns("Part", "Value", "Technology", "Body", "Margin", "Life", "Cost", "Score")
    for one in kept:
        cost = "not stated" if one.made["cost"] is None else f"{one.made['cost']:.2f}"
        technology = one.part["technology"] or "not stated"
        _add(table, one.name, value_text(one.part), technology, *_sizes(one), cost, score_text(one))
    return table


def _columns(*headings: str) -> Table:
    """A table with these columns; where the screen has room, the same column is as wide in every table."""
    table = Table(box=None, pad_edge=False)
    room = _console().width >= FULL_WIDTH
    for heading in headings:
        right = heading in ("Margin", "Cost", "Score")
        width = WIDTHS.get(heading) if room else None
        table.add_column(heading, justify="right" if right else "left", min_width=width, overflow="fold")
    return table


def _add(table: Table, *cells: str) -> None:
    table.add_row(*map(visible, cells))


def _sizes(one: Candidate) -> tuple[str, str, str]:
    return body(one.part), margin_text(one), life_text(one)


def print_why(named: tuple[str, str], answers: Sequence[Answer]) -> None:
    """Every condition asked, answered for one part."""
    _say(" ".join(named))
    for one in answers:
        _say(f"  {SAID[one.answer]:<10}  {LABELS[one.name]}: {one.sentence}")


def print_repair(
    repair: Repair, told: Sequence[tuple[Choice, Reasons]], shopping: ShoppingList, catalog: Path, files: Sequence[Path]
) -> None:
    """What was found for a whole repair: choices, what has none and why, the shopping list, and the files."""
    choices = [choice for choice, _ in told]
    pieces = sum(choice.asked.requirement.pieces for choice in choices if choice.asked.requirement)
    chosen = sum(choice.candidate is not None for choice in choices)
    _say(
        f"{repair.name}: {counted(len(choices), 'position')}, {counted(pieces, 'capacitor')} asked for. "
        f"A part is chosen for {chosen}."
    )
    for card in dict.fromkeys(choice.asked.position.card for choice in choices):
        its = [(choice, reasons) for choice, reasons in told if choice.asked.position.card == card]
        _print_card(card or "no card named", repair.card_counts.get(card or "", 1), its)
    _print_shopping(shopping)
    _say("Mains, stored charge and polarity can hurt: read the cautions on the page before you begin.")
    for file in files:
        _say(f"Written: {file}")
    _say(f"Catalog: {catalog}")


def _print_card(card: str, count: int, told: Sequence[tuple[Choice, Reasons]]) -> None:
    """The positions of one card: a table of what was chosen, then a sentence for each that has nothing."""
    _say(f"\n{card}{f', {count} of them' if count > 1 else ''}")
    table = _columns("Position", "Part", "Value", "Body", "Margin", "Life")
    for choice, _ in told:
        if choice.candidate is not None:
            one = choice.candidate
            _add(table, choice.asked.position.reference, one.name, value_text(one.part), *_sizes(one))
    if table.rows:
        _console().print(table)
    for choice, reasons in told:
        for sentence in mounted_texts([choice.candidate] if choice.candidate else []):
            _say(f"{choice.asked.position.reference}: {sentence}")
        if choice.candidate is None or choice.candidate.answer is not True:
            _say(f"{choice.asked.position.reference}: {choice.sentence}")
        for sentence in (*reasons.near, *reasons.two) if choice.candidate is None else ():
            _say(f"  {sentence}")
    _print_unasked_of([choice for choice, _ in told if choice.candidate is not None])


def _print_unasked_of(chosen: Sequence[Choice]) -> None:
    """The same of several positions at once, each named."""
    for what in ("capacitance", "voltage"):
        asked = [one.asked for one in chosen]
        names = [one.position.reference for one in asked if one.requirement and what in unasked(one.requirement)]
        if names:
            _say(f"The {what} was not asked of {runs(names)}: look at it before you take the part.")


def _print_shopping(shopping: ShoppingList) -> None:
    _say("\nShopping list")
    for supplier, grouped in groupby(shopping.lines, key=lambda line: line.offer.printed["supplier"]):
        lines = list(grouped)
        ordered = sum(line.purchase.ordered for line in lines)
        bought = f"{counted(len(lines), 'line')}, {counted(ordered, 'piece')}"
        known = [line.own_cost for line in lines if line.own_cost is not None]
        cost = [money_text(sum(known, Decimal(0)), shopping.currency)] if known else []
        foreign = [
            money_text(line.purchase.cost, line.offer.printed["currency"]) for line in lines if line.own_cost is None
        ]
        _say(f"  {supplier}: {bought}, {' + '.join([*cost, *foreign])}")
    _say(f"  In all {money_text(shopping.total, shopping.currency)}, without postage.")
    if shopping.without_rate:
        left = counted(len(shopping.without_rate), "line")
        _say(f"  Not in this sum: {left} in a currency without a rate. Say what it is worth with `subsearch rates`.")
    for sentence in shopping.short:
        _say(f"  {sentence}")
