"""Headings of prices: the word, from how many pieces on, for how many pieces, and the currency, in any order."""

import re

from subsearch.catalog.headings import price_words
from subsearch.reading.currencies import EVERY, SHARED, currency_of
from subsearch.reading.spelling import one_spelling, plain_words, small_letters
from subsearch.terms import TERMS

WEAK = ("for", "at", "bei", "bij", "przy", "pri", "при")  # with a number they mean a price only beside its word


def _either(words: tuple[str, ...]) -> str:
    """Alternatives: a word of letters that are written with spaces must stand alone."""
    alone = [word for word in words if re.match(r"[a-z\u0400-\u04ff]", word)]
    joined = [word for word in words if word not in alone]
    either = rf"\b(?:{'|'.join(alone)})(?![^\W\d_])" if alone else ""
    return "|".join(part for part in (either, *joined) if part)


PER = re.compile(
    rf"(?:/|(?:{_either(price_words('per'))}))\s*(?P<n>1000|1[., ]000|100|10|1k)(?!\s*\+|\d)"
    rf"|(?P<mille>‰)|(?P<cent>%)(?=\s*(?:{_either(price_words('pieces'))}))"
)
TOKENS = re.compile(
    rf"\s*(?:(?P<word>{_either(price_words('words'))})|(?P<n>\d{{1,3}}(?: \d{{3}})+|\d+)(?P<k>k\b)?(?P<plus>\s*\+)?"
    rf"|(?P<pieces>{_either(price_words('pieces'))})|(?P<start>≥|@|{_either(price_words('from'))})"
    rf"|(?P<per>{_either(price_words('per'))}))\s*"
)
RANGE = re.compile(r"(\d+)\s*(?:-|to|bis|à|до)\s*(\d+)")


def price_heading(heading: str) -> tuple[str, int | None] | None:
    """Give what a heading of prices says: the hint for its cells, and from how many pieces on; None for any other.

    The hint is a currency and, behind a slash, for how many pieces the prices are. A sign that several currencies
    share names none.

    >>> price_heading("Prix dès 100 (€)"), price_heading("Price per 100 [GBP]"), price_heading("Cap uF")
    (('EUR', 100), ('GBP/100', None), None)
    """
    text, currency = _without_currency(one_spelling(heading).casefold())
    text, per = small_letters(text), 1
    if found := PER.search(text):
        per = (
            100
            if found["cent"]
            else 1000
            if found["mille"]
            else int(re.sub("[., ]", "", found["n"].replace("k", "000")))
        )
        text = f"{text[: found.start()]} {text[found.end() :]}"
    text = RANGE.sub(lambda two: two[1] if int(two[2]) > int(two[1]) else two[0], text)
    if (tokens := _tokens(plain_words(text))) is None:
        return None
    numbers = [int(token["n"].replace(" ", "")) * (1000 if token["k"] else 1) for token in tokens if token["n"]]
    starts = [token["start"] for token in tokens if token["start"]]
    said = any(token["word"] for token in tokens)
    strong = any(token["plus"] for token in tokens) or any(start not in WEAK for start in starts)
    if said and len(tokens) == 2 and not strong and any(2000 < number < 2100 for number in numbers):
        numbers = []  # Price 2026: a year
    for_some = currency is not None and not numbers and (per > 1 or any(token["pieces"] for token in tokens))
    if len(numbers) > 1 or not (said or (numbers and strong) or for_some):
        return None
    if numbers and not 1 <= numbers[0] <= (TERMS["from_quantity"].high or 0):
        return None
    return f"{currency or ''}{f'/{per}' if per > 1 else ''}", numbers[0] if numbers else None


def _without_currency(text: str) -> tuple[str, str | None]:
    """The heading without its currency, and that: "" for a sign that several share, None where there is none."""
    for sign in EVERY:
        if found := re.search(rf"(?<![^\W\d_]){re.escape(sign.casefold())}(?![^\W\d_])", text):
            rest = f"{text[: found.start()]} {text[found.end() :]}"
            return rest, "" if sign in SHARED else currency_of(sign)
    return text, None


def _tokens(plain: str) -> list[re.Match[str]] | None:
    """The words of a heading one by one; None where one is none of a price's."""
    found, place = [], 0
    while place < len(plain):
        token = TOKENS.match(plain, place)
        if not token or token.end() == place:
            return None
        found.append(token)
        place = token.end()
    return found
