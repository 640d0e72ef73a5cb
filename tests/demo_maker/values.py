"""Exact numbers: preferred values, rounding to figures, plain digits."""

from datetime import date
from decimal import Decimal

Value = Decimal | str | date | None
Claims = dict[str, Value]
PREFERRED = {
    "E3": ("1.0", "2.2", "4.7"),
    "E6": ("1.0", "1.5", "2.2", "3.3", "4.7", "6.8"),
    "E12": ("1.0", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2"),
}


def preferred(family: str, low: str, high: str) -> list[Decimal]:
    """The preferred values of a family from low to high, both included, in the unit of the limits."""
    first, last = Decimal(low), Decimal(high)
    figures = [Decimal(figure) for figure in PREFERRED[family]]
    values = [figure.scaleb(decade) for decade in range(-8, 7) for figure in figures]
    return [value for value in values if first <= value <= last]


def figures(value: float, digits: int) -> Decimal:
    """The value rounded to so many significant figures, exactly as printed."""
    return tidy(Decimal(f"{value:.{digits - 1}e}"))


def tidy(value: Decimal) -> Decimal:
    """The same number without idle zeros or an exponent."""
    return Decimal(plain(value))


def plain(value: Decimal) -> str:
    """The digits as a person writes them: no exponent, no idle zeros."""
    text = format(value, "f")
    return (text.rstrip("0").rstrip(".") or "0") if "." in text else text


def number(claims: Claims, term: str) -> Decimal:
    """The stated number of a claim that must be there."""
    value = claims[term]
    if not isinstance(value, Decimal):
        raise TypeError(f"{term} is not a number but {value!r}")
    return value
