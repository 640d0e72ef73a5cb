"""Every value of the series E24, in every prefix and style of writing, comes back as the value it was written from.

The values are those of the eseries library (IEC 60063), the expected farads are worked out in decimals.
"""

from collections.abc import Callable
from decimal import Decimal

import pytest
from eseries import E24, series

from subsearch.reading.markings import read_marking

FIGURES = sorted({Decimal(str(value)).normalize().scaleb(0) / 10 for value in series(E24)})  # 1.0 to 9.1
CYRILLIC = {"p": "пФ", "n": "нФ", "µ": "мкФ"}
OLD = {"p": "mmfd", "n": "nF", "µ": "MFD"}
PREFIXES = {"p": -12, "n": -9, "µ": -6}
SMALLEST_PF = 10  # below it a code of three digits is rarely used, and needs 9 for its power


def plain(value: Decimal) -> str:
    return f"{value.normalize():f}"


def placed(value: Decimal, prefix: str) -> str:
    """The prefix in place of the decimal mark: 4n7, 47n, 470n, n47."""
    whole, _, part = plain(value).partition(".")
    return f"{'' if whole == '0' else whole}{prefix}{part}"


def coded(value: Decimal, prefix: str) -> str:
    """Three digits in pF and a letter, beside a voltage."""
    picofarads = value.scaleb(PREFIXES[prefix] + 12)
    if picofarads < SMALLEST_PF:
        return f"{plain(value)}{prefix}F"
    exponent = picofarads.adjusted() - 1
    return f"{plain(picofarads.scaleb(-exponent))}{exponent}J 100V"


STYLES: dict[str, Callable[[Decimal, str], str]] = {
    "plain": lambda value, prefix: f"{plain(value)}{prefix}F",
    "spaced, with a voltage": lambda value, prefix: f"{plain(value)} {prefix}F 63 V",
    "comma": lambda value, prefix: f"{plain(value).replace('.', ',')} {prefix}F/63V",
    "u for µ, without F": lambda value, prefix: f"{plain(value)}{prefix.replace('µ', 'u')} 100V",
    "placed": placed,
    "placed, voltage before": lambda value, prefix: f"16V {placed(value, prefix)}",
    "placed, tolerance and voltage behind": lambda value, prefix: f"{placed(value, prefix)}J63",
    "capitals": lambda value, prefix: f"{plain(value)}{prefix.replace('µ', 'U').upper()}F 50V",
    "leading point": lambda value, prefix: f"{plain(value).removeprefix('0')}{prefix}F",
    "Cyrillic": lambda value, prefix: f"{plain(value)} {CYRILLIC[prefix]} 63В",
    "old units": lambda value, prefix: f"{plain(value)} {OLD[prefix]} 400 WVDC",
    "other µ": lambda value, prefix: f"{plain(value)}{prefix.replace('µ', 'μ')}F",
    "full width": lambda value, prefix: f"{plain(value)}{prefix}F".translate(
        {n: n + 0xFEE0 for n in range(0x21, 0x7F)}
    ),
    "in a sentence": lambda value, prefix: f"C12: Elko {plain(value)}{prefix}F, RM 5, ±20 %",
    "code": coded,
}


@pytest.mark.parametrize("prefix", PREFIXES)
@pytest.mark.parametrize("style", STYLES)
def test_every_value_comes_back(style: str, prefix: str) -> None:
    for decade in (-1, 0, 1, 2):
        for figure in FIGURES:
            value = figure.scaleb(decade)
            text = STYLES[style](value, prefix)
            reading = read_marking(text)
            assert reading.capacitance_f == float(value.scaleb(PREFIXES[prefix])), text
            in_full = style == "code" and f"{figure.normalize():f}0J" in text
            assert not reading.doubted("capacitance_f") or in_full or _may_be_a_code(text), text


def _may_be_a_code(text: str) -> bool:
    """A code whose last digit is 0 may also be the value in full."""
    return "0J 100V" in text


def test_the_series_is_whole() -> None:
    assert len(FIGURES) == 24
    assert FIGURES[0] == 1
    assert FIGURES[-1] == Decimal("9.1")
