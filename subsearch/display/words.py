"""How numbers that a person compares are put into words, the same on the screen and in print."""

from decimal import Decimal

from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import Candidate, printed


def life_text(candidate: Candidate) -> str:
    """Years of life at the working temperature, or why there is no such number."""
    if candidate.made["not_worn_by_heat"]:
        return "not limited by heat"
    years = candidate.made["years"]
    if years is None:
        return "not stated"
    return f"{years:.0f} years (ceiling)" if years >= CEILING_Y else f"{years:.1f} years"


def margin_text(candidate: Candidate) -> str:
    """The tightest margin around the body; empty where none is asked or can be told."""
    tightest = candidate.made["tightest_mm"]
    return "" if tightest is None else printed("tightest_mm", round(tightest, 2) + 0.0)


def money_text(amount: Decimal, currency: str | None) -> str:
    """Money to the cent with its currency.

    >>> money_text(Decimal("12.345"), "EUR")
    '12.34 EUR'
    """
    return f"{amount.quantize(Decimal('0.01'))} {currency or '(currency not stated)'}"
