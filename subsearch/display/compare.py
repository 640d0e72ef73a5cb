"""Parts side by side: one row a thing to compare, one column a part; which does best is said by a word."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape

from subsearch.display.explained import text
from subsearch.display.words import life_text, margin_text, span_text, uncapped_text
from subsearch.search.answers import Candidate, body, printed, volts_needed
from subsearch.search.criteria import LABELS
from subsearch.search.requirement import Requirement
from subsearch.shopping.files import money
from subsearch.units import show

NOT_STATED = "not stated"
Told = Callable[[Candidate, Requirement], str]
Number = Callable[[Candidate], float | None]


@dataclass(frozen=True)
class Compared:
    """A row: its label, what it says of a part, and, where more or less is better, the number and the word for it."""

    label: str
    told: Told
    number: Number | None = None
    word: str = ""


def compared(candidates: Sequence[Candidate], requirement: Requirement) -> list[tuple[str, list[str]]]:
    """The rows, each a label and a cell for each part; those in which no part states anything are left out.

    candidates: any parts that one search found. requirement: what was asked of them. Where several parts differ, the
    cell of the one that does best ends in a word for it, like "(longest)".

    >>> compared([], Requirement())
    []
    """
    rows = []
    for row in ROWS:
        cells = [row.told(one, requirement) or NOT_STATED for one in candidates]
        if any(cell != NOT_STATED for cell in cells):
            rows.append((row.label, _marked(row, cells, candidates)))
    return rows


def compare_table(candidates: Sequence[Candidate], requirement: Requirement) -> str:
    """The rows as markup in the panel's dress; bold where the parts differ. Every text is escaped."""
    names = "".join(f'<th scope="col">{escape(one.name)}</th>' for one in candidates)
    rows = "".join(
        f'<tr><th scope="row">{escape(label)}</th>{"".join(_cell(cell, differ(cells)) for cell in cells)}</tr>'
        for label, cells in compared(candidates, requirement)
    )
    table = f"<table><thead><tr><td></td>{names}</tr></thead><tbody>{rows}</tbody></table>"
    return text(
        "<h4>Side by side</h4>", f"<p>{SAID}</p>" if rows else "<p>No part is picked.</p>", table if rows else ""
    )


SAID = "Bold where the parts differ. A word in brackets marks what does best in its row."


def differ(cells: Sequence[str]) -> bool:
    """Whether the parts are not all told the same."""
    return len(set(cells)) > 1


def _cell(cell: str, bold: bool) -> str:
    return f"<td><b>{escape(cell)}</b></td>" if bold else f"<td>{escape(cell)}</td>"


def _marked(row: Compared, cells: Sequence[str], candidates: Sequence[Candidate]) -> list[str]:
    """The cells, with the word behind each that does best, unless all are told the same."""
    numbers = [row.number(one) if row.number else None for one in candidates]
    known = [one for one in numbers if one is not None]
    if len(known) < 2 or not differ(cells):
        return list(cells)
    best = (min if row.word == LEAST else max)(known)
    told = {cell for cell, number in zip(cells, numbers, strict=True) if number == best}
    return [f"{cell} ({row.word})" if cell in told else cell for cell in cells]


def _place(one: Candidate, _: Requirement) -> str:
    if one.answer is True:
        return f"place {one.place}"
    return (
        f"open, not stated: {', '.join(LABELS[name] for name in one.not_stated)}" if one.answer is None else "refused"
    )


def _largest(one: Candidate, _: Requirement) -> str:
    sizes = {f"{side}_mm": one.made[f"{side}_max_mm"] for side in ("along", "across", "tall")}
    return "" if None in sizes.values() else body({"shape": one.part["shape"], **sizes})


def _body(one: Candidate, _: Requirement) -> str:
    return "" if one.part["along_mm"] is None else body(one.part)


def _volts(one: Candidate, need: Requirement) -> str:
    rated, needed = one.part["rated_v"], volts_needed(one.part["technology"], need.rated_v)
    if rated is None:
        return ""
    if needed is None:
        return show(rated, "V")
    away, how = abs(rated - needed), "above" if rated > needed else "below"
    against = f"{show(away, 'V')} {how} the {show(needed, 'V')} needed" if away else "just what is needed"
    return f"{show(rated, 'V')}, {against}"


def _life(one: Candidate, need: Requirement) -> str:
    span = span_text(one, need.temperature_uncertain_k)
    return f"{life_text(one)}{f'; {span}' if span else ''}"


def _esr(one: Candidate, need: Requirement) -> str:
    at_need = one.made["esr_at_ohm"]
    if at_need is not None and need.esr_hz is not None:
        return f"{show(at_need, 'Ω')} at {show(need.esr_hz, 'Hz')}"
    return _at(one, "esr_ohm", "esr_hz")


def _at(one: Candidate, name: str, hz: str) -> str:
    """A value with the frequency at which it is stated."""
    if one.part[name] is None:
        return ""
    frequency = "a frequency not stated" if one.part[hz] is None else printed(hz, one.part[hz])
    return f"{printed(name, one.part[name])} at {frequency}"


def _temperatures(one: Candidate, _: Requirement) -> str:
    low, high = one.part["lowest_c"], one.part["rated_c"]
    return "" if low is None and high is None else f"{printed('lowest_c', low)} to {printed('rated_c', high)}"


def offered(one: Candidate) -> str:
    """The supplier of the best offer, with its own number and its prices."""
    number = f" ({one.offer['supplier_number']})" if one.offer["supplier_number"] else ""
    return f"{one.offer['supplier']}{number}: {_price(one)}"


def _price(one: Candidate) -> str:
    """The price breaks as the supplier states them."""
    currency = one.offer["currency"] or "(currency not stated)"
    steps = [f"{money(step['price'])} {currency} from {step['from']}" for step in one.offer["prices"] or ()]
    return "; ".join(steps)


def _sold(one: Candidate, _: Requirement) -> str:
    """From how many pieces and in which lots; a single one needs no words."""
    least, pack = (one.offer[name] or 1 for name in ("minimum", "pack"))
    lots = [f"from {least} pieces" if least > 1 else "", f"in packs of {pack}" if pack > 1 else ""]
    return ", ".join(lot for lot in lots if lot) or "singly"


def _cost(one: Candidate, need: Requirement) -> str:
    return "" if one.made["cost"] is None else f"{one.made['cost']:.2f}, for {need.pieces}"


def _of_part(name: str) -> Told:
    return lambda one, _: printed(name, one.part[name])


def _of_offer(name: str) -> Told:
    return lambda one, _: printed(name, one.offer[name])


def _made(name: str) -> Number:
    return lambda one: None if one.made[name] is None else float(one.made[name])


LEAST = "least"
ROWS = (
    Compared("how it stands", _place),
    Compared("value", _of_part("capacitance_f")),
    Compared("technology", _of_part("technology")),
    Compared("polarity", _of_part("polarity")),
    Compared("body, nominal", _body),
    Compared("body, at its largest", _largest),
    Compared("lead spacing", lambda one, _: printed("spacing_mm", one.made["spacing_mm"])),
    Compared("lead diameter", _of_part("lead_diameter_mm")),
    Compared("room left", lambda one, _: margin_text(one), _made("tightest_mm"), "most"),
    Compared("mounted", lambda one, _: one.made["way"] or ""),
    Compared("rated voltage", _volts),
    Compared("rated a.c. voltage", _of_part("rated_ac_v")),
    Compared("life", _life, _made("years"), "longest"),
    Compared("life without the ceiling", lambda one, _: uncapped_text(one), _made("life_at_work_h"), "longest"),
    Compared("ESR", _esr),
    Compared("rated ripple current", lambda one, _: _at(one, "ripple_a", "ripple_hz")),
    Compared("temperatures", _temperatures),
    Compared("price of one", lambda one, _: _price(one)),
    Compared("sold", _sold),
    Compared("cost of all, in your currency", _cost, _made("cost"), LEAST),
    Compared("supplier", _of_offer("supplier")),
    Compared("in stock", _of_offer("stock")),
    Compared("condition", _of_offer("condition")),
    Compared("life cycle", _of_part("life_cycle")),
    Compared("score", lambda one, _: f"{one.total:.2f}", lambda one: one.total, "highest"),
)
