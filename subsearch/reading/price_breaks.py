"""Price breaks in one cell: 1: 0.50 / 10: 0.40, or 10+ 0,40; 10@0.40; 0.50 (1), 0.40 (10)."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.prices import PIECE, price_stated, read_unit_price
from subsearch.reading.quantities import Stated, whole
from subsearch.reading.spelling import one_spelling

QUANTITY = r"\d{1,3}(?:[.,' ]?\d{3})*|\d+"
PRICE = r"[^\d\s]{0,5}\s?\d[\d.,']*(?:\s?[^\d\s:+@()]{1,5})?(?:\s?/\s?1000?)?"
FROM = r"(?:from|ab|od|от|dès|vanaf|da|desde|>=|≥)"
QUANTITY_FIRST = re.compile(
    rf"(?P<from>{FROM})?\s*(?P<n>{QUANTITY})(?:\s*-\s*\d+)?\s*(?:{PIECE})?\s*"
    rf"(?:(?P<mark>\+\s*[:=@]?|[:=]|@|à|x)|(?<=[a-zü.])\s)\s*(?P<p>{PRICE})",
    re.IGNORECASE,
)
FROM_FIRST = re.compile(rf"{FROM}\s*(?P<n>{QUANTITY})\s*(?:{PIECE})?\s*[:=]?\s+(?P<p>{PRICE})", re.IGNORECASE)
PRICE_FIRST = re.compile(
    rf"(?P<p>{PRICE})\s*(?:\(\s*(?:{FROM}|x)?\s*(?P<n>{QUANTITY})\s*\+?\s*(?:{PIECE})?\s*\)"
    rf"|{FROM}\s*(?P<m>{QUANTITY})\s*(?:{PIECE})?)",
    re.IGNORECASE,
)
PRICE_AT = re.compile(rf"(?P<p>\d+[.,]\d+)\s*@\s*(?P<n>{QUANTITY})(?:\s*{PIECE})?", re.IGNORECASE)
CUTS = (r"\s*[;|\n]\s*", r"\s+/\s+", r",\s+", r"\s*/\s*", r"\s{2,}", r"\s+(?=\d+\s*[+:@=])")
NUMBERS = re.compile(r"\d[\d.,' ]*")
LIKE = "Write them like 1: 0.50 / 10: 0.40."


def read_price(text: str, hint: str = "") -> Stated:
    """Give what a price cell states: a unit price, or several from so many pieces on, and their currency.

    hint: as for `read_unit_price`. Breaks come as text, "1:0.5 10:0.4", quantities ascending. Raises QuantityError.

    >>> read_price("0,35 €"), read_price("10+ 0,40; 1+ 0,50")
    ({'unit_price': Decimal('0.350000'), 'currency': 'EUR'}, {'price_breaks': '1:0.500000 10:0.400000'})
    """
    pairs = _pairs(text)
    if not pairs:
        if re.search(r"\d\s*[;|]\s*[^\d\s]{0,3}\s?\d|\d\s+/\s+[^\d\s]{0,3}\s?\d+[.,]", text):
            raise QuantityError(f'"{text}" holds several prices, but not from how many pieces each holds. {LIKE}')
        return price_stated(*read_unit_price(text, hint))
    found = sorted((whole("from_quantity", number), *read_unit_price(price, hint)) for number, price in pairs)
    quantities = [number for number, _, _ in found]
    if len(set(quantities)) < len(quantities):
        raise QuantityError(f'"{text}" gives two prices from the same number of pieces. {LIKE}')
    currencies = {currency for _, _, currency in found if currency}
    if len(currencies) > 1:
        raise QuantityError(f'"{text}" holds prices in several currencies: {" and ".join(sorted(currencies))}.')
    breaks = " ".join(f"{number}:{price}" for number, price, _ in found)
    return {"price_breaks": breaks, **({"currency": currencies.pop()} if currencies else {})}


def _pairs(text: str) -> list[tuple[str, str]]:
    """Number of pieces and price of each break; empty where the cell is not written so."""
    if len(NUMBERS.findall(text)) < 2:
        return []
    for cut in CUTS:
        items = [one_spelling(item) for item in re.split(cut, text.strip(" ;,/|")) if item.strip()]
        if pairs := [pair for item in items if (pair := _pair(item))]:
            if len(pairs) == 1 and len(items) == 1 and _may_be_per(items[0]):
                raise QuantityError(f'"{text}" may be a price from so many pieces on, or of so many. {LIKE}')
            if len(pairs) == len(items):
                return pairs
    return []


def _may_be_per(item: str) -> bool:
    """Whether a single pair may be what so many cost together: "0.12 (100)", "100 pcs 4.50", "10 x 0.40"."""
    if re.search(rf"{FROM}|\+", item, re.IGNORECASE):
        return False
    if found := QUANTITY_FIRST.fullmatch(item):
        return found["n"] != "1" and (found["mark"] or "x").casefold() in ("x", "=")
    found = PRICE_FIRST.fullmatch(item)
    return bool(found and found["n"] in ("10", "100", "1000"))


def _pair(item: str) -> tuple[str, str] | None:
    if at := PRICE_AT.fullmatch(item):
        return (at["n"], at["p"]) if not re.search(r"[.,]\d{1,2}$", at["n"]) else None
    for pattern in (QUANTITY_FIRST, FROM_FIRST):
        if found := pattern.fullmatch(item):
            return found["n"], found["p"]
    if found := PRICE_FIRST.fullmatch(item):
        return found["n"] or found["m"], found["p"]
    return None
