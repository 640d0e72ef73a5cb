"""Numbers of a cell with their unit, within the sane range of their term."""

import datetime
import re
from collections.abc import Callable, Mapping
from decimal import Decimal

from subsearch.errors import QuantityError
from subsearch.reading.numerals import without_thousands
from subsearch.reading.unit_words import in_our_units
from subsearch.terms import TERMS, Term
from subsearch.units import read_quantity, show

Value = float | int | bool | str | Decimal | datetime.date
Stated = Mapping[str, Value]
Reader = Callable[[str], Stated]

BODY = dict.fromkeys(("diameter_mm", "length_mm", "width_mm", "height_mm"), "along_mm")
BODY_PLUS = dict.fromkeys(("diameter_plus_mm", "length_plus_mm"), "along_plus_mm")
EXTRA = {"life_at_c": "rated_c"}  # what a cell states beside the terms, and the term whose range it shares


def term_of(kind: str) -> Term:
    """Give the term that a kind of cell belongs to.

    >>> term_of("diameter_mm").name
    'along_mm'
    """
    return TERMS[BODY.get(kind) or BODY_PLUS.get(kind) or EXTRA.get(kind) or kind]


def quantity(kind: str, text: str, prefix: str = "") -> float:
    """Give the value of a quantity in SI units (°C, mm and hours as they are), checked against the term's sane range.

    kind: what the cell states. text: the cell. prefix: what a bare number is in. Raises QuantityError.

    >>> quantity("length_mm", "12,5"), quantity("rated_v", "63 В")
    (12.5, 63.0)
    """
    term = term_of(kind)
    bare = without_thousands(text) if kind == "life_h" else text  # no life is so short that this could be a fraction
    meant = "a body size" if kind in BODY else "a plus tolerance of the body" if kind in BODY_PLUS else ""
    return in_range(term, read_quantity(in_our_units(bare, term.unit), term.unit, prefix), text, meant)


def whole(kind: str, text: str) -> int:
    """Give a whole number of pieces or days, checked against the term's sane range. Raises QuantityError.

    >>> whole("minimum", "1.000")
    1000
    """
    value = read_quantity(without_thousands(text), "")
    if value != int(value):
        raise QuantityError(f'"{text}" is not a whole number, which {kind} ({TERMS[kind].meaning}) must be.')
    return int(in_range(TERMS[kind], value, text))


def in_range(term: Term, value: float, text: str, meant: str = "") -> float:
    """Give the value itself where it is sane. meant: what it is, in place of the term. Raises QuantityError.

    >>> in_range(TERMS["rated_v"], 63.0, "63 V")
    63.0
    """
    low, high = term.low, term.high
    if low is not None and high is not None and not low <= value <= high:
        raise QuantityError(
            f'"{text}" is outside the sane range of {meant or f"{term.name} ({term.meaning})"}: '
            f"{show(low, term.unit)} to {show(high, term.unit)}. Check the cell and the unit in the heading.",
            "out_of_range",
        )
    return value


def number_of(text: str) -> str:
    """Give a number with its k written out: 5k is 5000.

    >>> number_of("2.5k"), number_of("12")
    ('2500', '12')
    """
    if found := re.fullmatch(r"(\d+(?:[.,]\d+)?)\s*[kK]", text.strip()):
        return f"{(Decimal(found[1].replace(',', '.')) * 1000).normalize():f}"
    return text
