"""One reader for each kind of column: the text of a cell in, what it states out, or an error that names its fault.

A kind is a term, or something a list prints in one cell that states several terms: a tolerance, a size, a style.
"""

import datetime
import re
from collections.abc import Callable, Mapping
from decimal import Decimal
from functools import partial

from subsearch.errors import QuantityError
from subsearch.reading.leakage_rules import read_leakage_limit
from subsearch.reading.numerals import without_thousands
from subsearch.reading.words import MEANT, read_word
from subsearch.terms import TERMS, Term
from subsearch.units import read_quantity, show

Value = float | int | bool | str | Decimal | datetime.date
Stated = Mapping[str, Value]
Reader = Callable[[str], Stated]

BODY = dict.fromkeys(("diameter_mm", "length_mm", "width_mm", "height_mm"), "along_mm")
BODY_PLUS = dict.fromkeys(("diameter_plus_mm", "length_plus_mm"), "along_plus_mm")
SIZES = ("size_1_mm", "size_2_mm", "size_3_mm")
PLAIN_NUMBERS = ("tan_delta", "leakage_factor")  # without a unit
COUNTS = ("minimum", "pack", "from_quantity")
DATES = ("date_seen", "date_bought")
NOTHING_LEFT = (
    "on order",
    "auf bestellung",
    "bestellt",
    "back order",
    "backorder",
    "out of stock",
    "none",
    "ausverkauft",
)
CURRENCIES = {"€": "EUR", "£": "GBP", "US$": "USD", "¥": "JPY", "Fr.": "CHF"}
LETTERS = {"F": 1, "G": 2, "H": 3, "J": 5, "K": 10, "M": 20, "N": 30}
DAYS = {"": 1, "d": 1, "day": 1, "days": 1, "tag": 1, "tage": 1, "week": 7, "weeks": 7, "woche": 7, "wochen": 7}


def reader_of(kind: str, hint: str = "") -> Reader:
    """Give the reader for a kind of column: a function from a cell's text to what it states, by name.

    kind: name of a term, or tolerance, size, style, temperatures, diameter_mm, length_mm, width_mm, height_mm,
    diameter_plus_mm, length_plus_mm. hint: what the heading says of bare numbers, a prefix or a currency.
    The reader raises QuantityError with .fault; an empty cell states nothing.

    >>> reader_of("capacitance_f", "µ")("47"), reader_of("size")("10x16")
    ({'capacitance_f': 4.7e-05}, {'size_1_mm': 10.0, 'size_2_mm': 16.0})
    """
    special: Mapping[str, Reader] = {
        "tolerance": _tolerance,
        "size": _size,
        "style": _style,
        "temperatures": _temperatures,
        "leakage_rule": _leakage,
        "rated_v": partial(_voltage, hint),
        "stock": _stock,
        "lead_time_days": _lead_time,
        "unit_price": partial(_price, hint),
        "currency": _currency,
        "traceable": lambda text: {"traceable": read_word("traceable", text) == "yes"},
    }
    if kind in special:
        read = special[kind]
    elif kind in MEANT:
        read = lambda text: {kind: read_word(kind, text)}  # noqa: E731
    elif kind in COUNTS:
        read = lambda text: {kind: _whole(kind, text)}  # noqa: E731
    elif kind in DATES:
        read = lambda text: {kind: _date(text)}  # noqa: E731
    elif kind in PLAIN_NUMBERS or _term(kind).unit:
        read = lambda text: {kind: _quantity(kind, text, hint)}  # noqa: E731
    else:
        read = lambda text: {kind: " ".join(text.split())}  # noqa: E731
    return lambda text: read(text.strip()) if text.strip() else {}


def _term(kind: str) -> Term:
    return TERMS[BODY.get(kind) or BODY_PLUS.get(kind) or kind]


def _quantity(kind: str, text: str, prefix: str = "") -> float:
    term = _term(kind)
    bare = without_thousands(text) if kind == "life_h" else text  # no life is so short that this could be a fraction
    meant = "a body size" if kind in BODY else "a plus tolerance of the body" if kind in BODY_PLUS else ""
    return _in_range(term, read_quantity(bare, term.unit, prefix), text, meant)


def _in_range(term: Term, value: float, text: str, meant: str = "") -> float:
    low, high = term.low, term.high
    if low is not None and high is not None and not low <= value <= high:
        raise QuantityError(
            f'"{text}" is outside the sane range of {meant or f"{term.name} ({term.meaning})"}: '
            f"{show(low, term.unit)} to {show(high, term.unit)}. Check the cell and the unit in the heading.",
            "out_of_range",
        )
    return value


def _whole(kind: str, text: str) -> int:
    value = read_quantity(without_thousands(text), "")
    if value != int(value):
        raise QuantityError(f'"{text}" is not a whole number, which {kind} ({TERMS[kind].meaning}) must be.')
    return int(_in_range(TERMS[kind], value, text))


def _leakage(text: str) -> Stated:
    """The limit as written, and its numbers where they can be read: an odd wording refuses no line."""
    limit = read_leakage_limit(text)
    return {"leakage_rule": " ".join(text.split()), **(vars(limit) if limit else {})}


def _stock(text: str) -> Stated:
    if re.sub(r"[\s-]+", " ", text.casefold()) in NOTHING_LEFT:
        return {"stock": 0}
    return {"stock": _whole("stock", text.strip(">+ \u2265"))}


def _lead_time(text: str) -> Stated:
    found = re.fullmatch(r"(.*\d)\s*([a-zA-Z]*)", text)
    if not found or found[2].casefold() not in DAYS:
        raise QuantityError(f'"{text}" is not a lead time. Write it in days, like 14.')
    days = _whole("lead_time_days", found[1]) * DAYS[found[2].casefold()]
    return {"lead_time_days": int(_in_range(TERMS["lead_time_days"], days, text))}


def _voltage(prefix: str, text: str) -> Stated:
    """A rating printed as a.c. in the column of d.c. ratings states the a.c. one."""
    kind = "rated_ac_v" if re.search(r"~|a\.?c\.?$", text, re.IGNORECASE) else "rated_v"
    return {kind: _quantity(kind, text, prefix)}


def _price(currency: str, text: str) -> Stated:
    bare, sign = text, currency
    for mark in (*CURRENCIES, *sorted(set(CURRENCIES.values()))):
        if bare.startswith(mark) or bare.endswith(mark):
            bare, sign = bare.removeprefix(mark).removesuffix(mark).strip(), CURRENCIES.get(mark, mark)
            break
    if not re.fullmatch(r"[-+\u2212]?[\d.,' \u00a0\u202f]+", bare):
        raise QuantityError(f'"{text}" is not a price. Write it like 0.35 or 0.35 EUR (three-letter currency).')
    try:
        price = read_quantity(bare.replace("'", ""), "")
    except QuantityError as error:
        raise QuantityError(f'The price {error} "1,250" may be either; write 1.25 or 1250.', error.fault) from error
    exact = Decimal(repr(_in_range(TERMS["unit_price"], price, text))).quantize(Decimal("0.000001"))
    return {"unit_price": exact, **({"currency": sign} if sign else {})}


def _currency(text: str) -> Stated:
    name = CURRENCIES.get(text, text.upper())
    if not re.fullmatch(r"[A-Z]{3}", name):
        raise QuantityError(f'"{text}" is not a currency. Write its three letters, like EUR.', "unknown_word")
    return {"currency": name}


def _date(text: str) -> datetime.date:
    if german := re.fullmatch(r"(\d{1,2})\.(\d{1,2})\.(\d{4})", text):
        text = f"{german[3]}-{german[2]:0>2}-{german[1]:0>2}"
    try:
        return datetime.date.fromisoformat(text.partition(" ")[0])
    except ValueError as error:
        raise QuantityError(f'"{text}" is not a date. Write it as year-month-day, like 2026-10-03.') from error


def _tolerance(text: str) -> Stated:
    bare = re.sub(r"\s", "", text).replace("\u2212", "-").replace("\u2013", "-").rstrip("%")
    if bare in LETTERS:
        low, high = -float(LETTERS[bare]), float(LETTERS[bare])
    elif one := re.fullmatch(r"(?:±|\+/-|\+-)?(\d+(?:[.,]\d+)?)", bare):
        low, high = (sign * read_quantity(one[1], "%") for sign in (-1, 1))
    elif two := re.fullmatch(r"([-+]?\d+(?:[.,]\d+)?)%?[/…;]([-+]?\d+(?:[.,]\d+)?)", bare):
        low, high = sorted(read_quantity(part, "%") for part in two.groups())
    else:
        raise QuantityError(f'"{text}" is not a tolerance. Write it like ±20 % or -10/+50 %.')
    _in_range(TERMS["tolerance_low_pct"], low, text)
    _in_range(TERMS["tolerance_high_pct"], high, text)
    return {"tolerance_low_pct": low + 0.0, "tolerance_high_pct": high}


def _size(text: str) -> Stated:
    bare = re.sub(r"\s|mm", "", text)
    parts = re.split(r"[x×X*]", bare.lstrip("ØøD⌀"))
    if len(parts) > 3 or (len(parts) == 1 and bare[:1] not in "ØøD⌀"):
        raise QuantityError(f'"{text}" is not a body size in mm. Write it like 10x16, 18x9x15 or Ø10.')
    return {name: _quantity("length_mm", part) for name, part in zip(SIZES, parts, strict=False)}


def _style(text: str) -> Stated:
    shape = read_word("shape", text)
    return {"shape": shape, "lead_form": "snap-in"} if re.match(r"snap", text, re.IGNORECASE) else {"shape": shape}


def _temperatures(text: str) -> Stated:
    parts = re.split(r"\s*(?:…|\.\.\.?|/|~|\bto\b|\bbis\b)\s*", text)
    if len(parts) != 2:
        raise QuantityError(f'"{text}" is not a range of temperatures. Write it like -40/+105 °C.')
    return {kind: _quantity(kind, part) for kind, part in zip(("lowest_c", "rated_c"), parts, strict=True)}
