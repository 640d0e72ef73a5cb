"""One reader for each kind of column: the text of a cell in, what it states out, or an error that names its fault.

A kind is a term, or something a list prints in one cell that states several terms: a tolerance, a size, a style, a
description. What each kind of cell may look like stands in the file named after it.
"""

import datetime
import re
from collections.abc import Mapping
from functools import partial

from subsearch.errors import QuantityError
from subsearch.reading.currencies import read_currency
from subsearch.reading.descriptions import marked, read_capacitance, read_description
from subsearch.reading.heat_and_life import read_life, read_temperatures
from subsearch.reading.leakage_rules import read_leakage_limit
from subsearch.reading.price_breaks import read_price
from subsearch.reading.quantities import BODY, BODY_PLUS, Reader, Stated, Value, quantity, term_of, whole
from subsearch.reading.ratings import read_voltages
from subsearch.reading.sizes import SIZES, read_size, read_spacing
from subsearch.reading.spaces import tidy
from subsearch.reading.spelling import plain_words
from subsearch.reading.stock_words import read_lead_time, read_stock
from subsearch.reading.tolerances import LETTERS, read_tolerance
from subsearch.reading.words import MEANT, read_word

__all__ = [
    "BODY",
    "BODY_PLUS",
    "LETTERS",
    "OWN_WORDS",
    "PLAIN_NUMBERS",
    "SIZES",
    "Reader",
    "Stated",
    "Value",
    "reader_of",
]
PLAIN_NUMBERS = ("tan_delta", "leakage_factor")  # without a unit
COUNTS = ("minimum", "pack", "from_quantity")
DATES = ("date_seen", "date_bought")
# A cell of these states its own words: a text without needless spaces need not pass the reader to be known.
OWN_WORDS = ("maker", "part_number", "series", "supplier", "supplier_number", "date_code")
SPACINGS = ("lead_spacing_mm", "delivered_spacing_mm")
VOLTAGES = ("rated_v", "rated_ac_v")
HEATS = ("temperatures", "lowest_c", "rated_c")
THROUGH_HOLE = ("through hole", "thru hole", "tht", "th", "pth", "leaded", "bedrahtet", "traversant", "插件", "直插")


def reader_of(kind: str, hint: str = "") -> Reader:
    """Give the reader for a kind of column: a function from a cell's text to what it states, by name.

    kind: name of a term, or tolerance, size, style, temperatures, description, diameter_mm, length_mm, width_mm,
    height_mm, diameter_plus_mm, length_plus_mm. hint: what the heading says of bare numbers: a prefix, a currency
    and for how many pieces a price is, the order of a size, the unit of a time.
    The reader raises QuantityError with .fault; an empty cell states nothing.

    >>> reader_of("capacitance_f", "µ")("47"), reader_of("size")("10x16")
    ({'capacitance_f': 4.7e-05}, {'size_1_mm': 10.0, 'size_2_mm': 16.0})
    """
    read = _reader(kind, hint)
    return lambda text: read(text.strip()) if text.strip() else {}


def _reader(kind: str, hint: str) -> Reader:
    special: Mapping[str, Reader] = {
        "capacitance_f": partial(read_capacitance, prefix=hint),
        "tolerance": read_tolerance,
        "size": partial(read_size, order=hint),
        "style": _style,
        "leakage_rule": _leakage,
        "life_h": partial(read_life, prefix=hint),
        "stock": read_stock,
        "lead_time_days": partial(read_lead_time, unit=hint),
        "unit_price": partial(read_price, hint=hint),
        "currency": lambda text: {"currency": read_currency(text)},
        "description": partial(read_description, only=hint),
        **{name: partial(read_voltages, name, prefix=hint) for name in VOLTAGES},
        **{name: partial(read_spacing, name, prefix=hint) for name in SPACINGS},
        **{name: partial(read_temperatures, name, prefix=hint) for name in HEATS},
    }
    if kind in special:
        return special[kind]
    if kind in MEANT:
        return partial(_word, kind)
    if kind in COUNTS:
        return lambda text: {kind: whole(kind, text)}
    if kind in DATES:
        return lambda text: {kind: _date(text)}
    if kind in PLAIN_NUMBERS or term_of(kind).unit:
        return lambda text: {kind: quantity(kind, text, hint)}
    return lambda text: {kind: tidy(text)}


def _word(kind: str, text: str) -> Stated:
    """Our word for it; where the table has none, what the reader of markings makes of the cell."""
    try:
        word = read_word(kind, text)
    except QuantityError:
        if kind not in ("technology", "polarity") or not (word := marked(kind, text)):
            raise
    return {kind: word == "yes" if kind == "traceable" else word}


def _leakage(text: str) -> Stated:
    """The limit as written, and its numbers where they can be read: an odd wording refuses no line."""
    limit = read_leakage_limit(text)
    return {"leakage_rule": " ".join(text.split()), **(vars(limit) if limit else {})}


def _date(text: str) -> datetime.date:
    if german := re.fullmatch(r"(\d{1,2})\.(\d{1,2})\.(\d{4})", text):
        text = f"{german[3]}-{german[2]:0>2}-{german[1]:0>2}"
    try:
        return datetime.date.fromisoformat(text.partition(" ")[0])
    except ValueError as error:
        raise QuantityError(f'"{text}" is not a date. Write it as year-month-day, like 2026-10-03.') from error


def _style(text: str) -> Stated:
    """The outline; that a part has leads at all says nothing of it."""
    if plain_words(text) in THROUGH_HOLE:
        return {}
    shape = read_word("shape", text)
    return {"shape": shape, "lead_form": "snap-in"} if re.match(r"snap", text, re.IGNORECASE) else {"shape": shape}
