"""The price of one piece, with its currency before or behind it, also where it is printed for a hundred pieces."""

import re
from decimal import ROUND_HALF_EVEN, Decimal

from subsearch.errors import QuantityError
from subsearch.reading.currencies import currency_beside, currency_of
from subsearch.reading.quantities import Stated, in_range
from subsearch.reading.spelling import one_spelling
from subsearch.terms import TERMS
from subsearch.units import read_quantity

PLACES = Decimal("0.000001")  # as the catalog keeps it
PIECE = (
    r"(?:(?:pcs?|pieces?|piece|ea|each|units?|stk|stück|st|pi[eè]ces?|u|pz|pezzi|uds?|ud|stuks?|szt|ks|шт|個|个|개)\.?)"
)
MANY = re.compile(
    rf"\s*(?:(?:/|\bper\b|\bje\b|\bpro\b|\bpar\b|\bpor\b|\bza\b|\bза\b|\bpour\b)\s*(?P<many>1|10|100|1\.?000|1k)?"
    rf"\s*{PIECE}?|(?P<mille>‰)\s*{PIECE}?|\b(?:each|ea)\.?)$",
    re.IGNORECASE,
)
LIKE = "Write it like 0.35 or 0.35 EUR (three-letter currency)."


def read_unit_price(text: str, hint: str = "") -> tuple[Decimal, str]:
    """Give the price of one piece, to six decimals, and its currency, or "" where neither cell nor heading says it.

    hint: what the heading says: a currency, and behind a slash for how many pieces its prices are: "EUR/100".
    The division is exact. Raises QuantityError.

    >>> read_unit_price("12,50 €/100"), read_unit_price("2", "GBP"), read_unit_price("12.35", "/1000")
    ((Decimal('0.125000'), 'EUR'), (Decimal('2.000000'), 'GBP'), (Decimal('0.012350'), ''))
    """
    said, _, per = hint.partition("/")
    bare, currency = _parted(one_spelling(text), said)
    if found := MANY.search(bare):
        per = "1000" if found["mille"] else (found["many"] or "1").replace(".", "").replace("k", "000")
        bare, currency = _parted(bare[: found.start()].strip(), said, currency)
    bare = re.sub(r"(?<=\d)[.,]-{1,2}$", "", bare)
    if not re.fullmatch(r"[-+]?[\d.,' ]+", bare):
        raise QuantityError(f'"{text}" is not a price. {LIKE}')
    try:
        price = read_quantity(re.sub(r"'(?=\d{3}(?!\d))", "", bare), "")  # 1'250; but 3'50 is no 350
    except QuantityError as error:
        raise QuantityError(f'The price {error} "1,250" may be either; write 1.25 or 1250.', error.fault) from error
    for_one = Decimal(repr(price)) / int(per or 1)
    in_range(TERMS["unit_price"], float(for_one), text)
    own = currency if currency is not None else "" if said.startswith("~") else said
    return for_one.quantize(PLACES, ROUND_HALF_EVEN), own


def _parted(text: str, said: str, before: str | None = None) -> tuple[str, str | None]:
    """The number, and the currency beside it; None where none is written."""
    bare, sign = currency_beside(text)
    return (bare, currency_of(sign, said)) if sign else (text, before)


def price_stated(price: Decimal, currency: str) -> Stated:
    """Give a price as what a cell states.

    >>> price_stated(Decimal("0.5"), "")
    {'unit_price': Decimal('0.5')}
    """
    return {"unit_price": price, **({"currency": currency} if currency else {})}
