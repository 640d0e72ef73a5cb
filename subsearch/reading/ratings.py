"""Rated voltages as lists write them: d.c. and a.c., in one cell or two."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.quantities import Stated, in_range, quantity
from subsearch.reading.spelling import one_spelling
from subsearch.reading.unit_words import in_our_units
from subsearch.terms import TERMS
from subsearch.units import read_quantity

ALTERNATING = r"~|≈|a\.?\s?c\.?(?![a-z])|rms|eff\.?|~ac"
DIRECT = r"=|⎓|d\.?\s?c\.?(?![a-vx-z])"
SAID = rf"(?:{ALTERNATING}|{DIRECT})"
RATING = re.compile(
    rf"(?:(?P<before>{SAID}|W\.?V\.?|U[rn]?\b)\s*:?\s*)?"
    r"(?P<number>\d+V\d+|\d[\d.,' ]*?)\s*"
    r"(?P<unit>k?\s*(?:W\.?\s?)?V(?:olts?)?\.?)?(?P<ends>W\.?(?![a-z]))?\s*"
    rf"\(?(?P<after>{SAID})?\)?\s*(?:W\.?|wkg\.?|working)?",
    re.IGNORECASE,
)


def read_voltages(kind: str, text: str, prefix: str = "") -> Stated:
    """Give the rated voltages that a cell states, by name: rated_v, rated_ac_v, or both.

    kind: the one that its heading announces. prefix: what a bare number is in. A cell that says a.c. or d.c. itself
    states that one. Raises QuantityError, also for two voltages of one kind.

    >>> read_voltages("rated_v", "630 VDC / 250 VAC"), read_voltages("rated_v", "WV 16")
    ({'rated_v': 630.0, 'rated_ac_v': 250.0}, {'rated_v': 16.0})
    """
    parts = re.split(r"\s*[/;]\s*", one_spelling(text))
    if len(parts) == 2 and all(RATING.fullmatch(in_our_units(part, "V")) for part in parts):
        first, second = (_one(kind, part, prefix) for part in parts)
        if first.keys() & second.keys():
            raise QuantityError(f'"{text}" states two voltages of one kind. Write only the rated one.')
        return {**first, **second}
    return _one(kind, text, prefix)


def _one(kind: str, text: str, prefix: str) -> Stated:
    tidy = in_our_units(text, "V")
    if not (found := RATING.fullmatch(tidy)):
        return {kind: quantity(kind, text, prefix)}  # reads what is left, or says what is wrong with it
    said = f"{found['before'] or ''} {found['after'] or ''}"
    if re.search(ALTERNATING, said, re.IGNORECASE):
        kind = "rated_ac_v"
    elif re.search(DIRECT, said, re.IGNORECASE):
        kind = "rated_v"
    unit = found["unit"] or ""
    volts = "kV" if unit[:1] in ("k", "K") else "V" if unit else ""
    value = read_quantity(f"{found['number'].strip().upper()} {volts}".strip(), "V", prefix)
    return {kind: in_range(TERMS[kind], value, text)}
