"""Currencies by their letters, signs and words; a sign that several of them share is said, never guessed."""

import re
from collections.abc import Mapping

from subsearch.errors import QuantityError, one_of
from subsearch.reading.spelling import one_spelling

CODES = (
    "EUR GBP USD JPY CNY CHF PLN CZK RUB DKK NOK SEK ISK HUF RON BGN TRY UAH KRW TWD HKD SGD INR THB MYR IDR PHP VND "
    "AUD NZD CAD MXN BRL ARS CLP ZAR ILS AED SAR EGP RSD BYN KZT"
)
KNOWN = tuple(CODES.split())
SIGNS: Mapping[str, str] = {
    "€": "EUR", "£": "GBP", "US$": "USD", "U$S": "USD", "A$": "AUD", "AU$": "AUD", "C$": "CAD", "CA$": "CAD",
    "NZ$": "NZD", "HK$": "HKD", "NT$": "TWD", "S$": "SGD", "R$": "BRL", "JP¥": "JPY", "CN¥": "CNY", "RMB": "CNY",
    "Fr.": "CHF", "SFr.": "CHF", "SFr": "CHF", "zł": "PLN", "zl": "PLN", "Kč": "CZK", "Kc": "CZK", "руб.": "RUB",
    "руб": "RUB", "р.": "RUB", "₽": "RUB", "元": "CNY", "人民币": "CNY", "円": "JPY", "日元": "JPY", "₩": "KRW",
    "원": "KRW", "Ft": "HUF", "lei": "RON", "лв": "BGN", "₴": "UAH", "грн": "UAH", "₺": "TRY", "₹": "INR",
    "euros": "EUR", "euro": "EUR", "DKr": "DKK", "SKr": "SEK", "NKr": "NOK",
}  # fmt: skip
SHARED: Mapping[str, tuple[str, ...]] = {
    "$": ("USD", "AUD", "CAD", "NZD", "HKD", "SGD", "TWD", "MXN"),
    "¥": ("JPY", "CNY"),
    "kr.": ("SEK", "DKK", "NOK", "ISK"),
    "kr": ("SEK", "DKK", "NOK", "ISK"),
}
EVERY = sorted((*KNOWN, *SIGNS, *SHARED), key=len, reverse=True)
BY_SIGN = {sign.casefold(): code for sign, code in (*SIGNS.items(), *((code, code) for code in KNOWN))}
SMALL = tuple((sign, sign.casefold()) for sign in EVERY)
ELSEWHERE = "~"  # before a currency, or alone: the list says its currency elsewhere


def currency_beside(text: str) -> tuple[str, str]:
    """Give a price without the currency before or behind it, and that currency as it is written, or "".

    >>> currency_beside("0,12 €"), currency_beside("US$0.12"), currency_beside("12")
    (('0,12', '€'), ('0.12', 'US$'), ('12', ''))
    """
    if text[:1].isdigit() and text[-1:].isdigit():
        return text, ""
    whole = text.casefold()
    for sign, small in SMALL:
        if whole.startswith(small):
            return text[len(sign) :].strip(), text[: len(sign)]
        if whole.endswith(small) and (not sign[0].isalpha() or not text[: -len(sign)][-1:].isalpha()):
            return text[: -len(sign)].strip(), text[-len(sign) :]
    return text, ""


def currency_of(sign: str, said: str = "") -> str:
    """Give the three letters of a currency that is written with a sign, or "" where the list says it elsewhere.

    sign: as written. said: what the heading says of prices: a currency; ~ before one, or alone, where the list or the
    load says it elsewhere. Raises QuantityError with fault "unknown_word" where the sign belongs to several.

    >>> currency_of("zł"), currency_of("kr", "SEK"), currency_of("kr", "~")
    ('PLN', 'SEK', '')
    """
    small = sign.casefold()
    if small in BY_SIGN:
        return BY_SIGN[small]
    shared = SHARED[small]
    code = said.removeprefix(ELSEWHERE)
    if code in shared or said == ELSEWHERE:
        return "" if said.startswith(ELSEWHERE) else code
    raise QuantityError(
        f'"{sign}" is the sign of several currencies: {one_of(shared)}. Write the three letters, or name the currency '
        "with the load.",
        "unknown_word",
    )


def read_currency(text: str) -> str:
    """Give the three letters of a currency. Raises QuantityError with fault "unknown_word".

    >>> read_currency("£"), read_currency("eur")
    ('GBP', 'EUR')
    """
    tidy = one_spelling(text)
    if tidy.casefold() in BY_SIGN or tidy.casefold() in SHARED:
        return currency_of(tidy)
    if not re.fullmatch(r"[A-Z]{3}", tidy.upper()):
        raise QuantityError(f'"{text}" is not a currency. Write its three letters, like EUR.', "unknown_word")
    return tidy.upper()
