"""Temperatures and life as lists write them: a range, an upper end, hours with the temperature they are stated at."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.quantities import Stated, number_of, quantity
from subsearch.reading.spelling import one_spelling
from subsearch.reading.unit_words import in_our_units

DEGREES = re.compile(r"\s*(?:°\s*[CС]?|(?<=\d)\s*[CС])(?![a-z])|\bdeg\.?\s*C?\b", re.IGNORECASE)
BETWEEN = r"(?:\.\.\.?|[/~;…〜÷]|to|bis|à|au|do|tot|hasta|до|至|から|-)"
NUMBER = r"[-+]?\d+(?:[.,]\d+)?"
CATEGORY = re.compile(r"(\d{2})/(\d{2,3})/\d{2}")  # climatic category: cold, heat, days of damp heat
UP_TO = re.compile(r"^(?:max\.?|up to|bis|jusqu'à|до|≤|<|<=)\s*(?=[+\d])|\s*max\.?$", re.IGNORECASE)
AT = re.compile(
    r"[(/,;]?\s*(?:@|at|bei|bij|à|a|при|w)?\s*\+?(?P<heat>\d{2,3})\s*°?\s*[CС](?![a-z])\s*[)/,;:]?"
    r"|[(/,;]?\s*@\s*\+?(?P<bare>\d{2,3})\s*°?\s*\)?",
    re.IGNORECASE,
)


def read_temperatures(kind: str, text: str, prefix: str = "") -> Stated:
    """Give the category temperatures [°C] that a cell states.

    kind: temperatures, lowest_c or rated_c, which says what a single number is; under "temperatures" a single one is
    the upper. Raises QuantityError.

    >>> read_temperatures("temperatures", "-40…+105 °C"), read_temperatures("rated_c", "105C")
    ({'lowest_c': -40.0, 'rated_c': 105.0}, {'rated_c': 105.0})
    """
    tidy = UP_TO.sub("", one_spelling(text).removeprefix("от "))
    bare = DEGREES.sub("", tidy).strip()
    if category := CATEGORY.fullmatch(bare):
        return {"lowest_c": quantity("lowest_c", f"-{category[1]}"), "rated_c": quantity("rated_c", category[2])}
    if both := re.fullmatch(rf"({NUMBER})\s*{BETWEEN}\s*({NUMBER})", bare, re.IGNORECASE):
        low, high = sorted(both.groups(), key=lambda part: float(part.replace(",", ".")))
        return {"lowest_c": quantity("lowest_c", low), "rated_c": quantity("rated_c", high)}
    if kind != "temperatures":
        return {kind: quantity(kind, tidy if re.search(r"\d", tidy) else text, prefix)}
    if re.fullmatch(r"\+?\d+(?:[.,]\d+)?", bare):
        return {"rated_c": quantity("rated_c", bare)}
    raise QuantityError(f'"{text}" is not a range of temperatures. Write it like -40/+105 °C.')


def read_life(text: str, prefix: str = "") -> Stated:
    """Give the hours of life that a cell states, and the temperature they are stated at, where it says so.

    prefix: what a bare number is in. Raises QuantityError.

    >>> read_life("2000h @105°C"), read_life("5k h"), read_life("≥ 2.000 Std.")
    ({'life_h': 2000.0, 'life_at_c': 105.0}, {'life_h': 5000.0}, {'life_h': 2000.0})
    """
    tidy = re.sub(r"^(?:[>≥~]=?|min\.?|ca\.?|mind\.?)\s*(?=\d)", "", one_spelling(text), flags=re.IGNORECASE)
    heat = AT.search(tidy)
    rest = f"{tidy[: heat.start()]} {tidy[heat.end() :]}".strip(" ,;/()") if heat else tidy
    stated = {"life_at_c": quantity("life_at_c", heat["heat"] or heat["bare"])} if heat else {}
    thousands = re.fullmatch(r"(\d+(?:[.,]\d+)?\s*k)\s*(\D*)", rest, re.IGNORECASE)
    hours = f"{number_of(thousands[1])} {thousands[2] or 'h'}" if thousands else rest
    return {"life_h": quantity("life_h", in_our_units(hours, "h"), prefix), **stated}
