"""Quantities read and printed the trade's way. Prefixes live here and nowhere else.

A decimal point is shifted in the text, never by float multiplication: 4.7 µF is exactly the float 4.7e-6.
"""

import re
from collections.abc import Mapping
from decimal import Decimal
from math import isfinite

from subsearch.errors import QuantityError

PREFIXES: Mapping[str, int] = {
    "p": -12, "n": -9, "µ": -6, "μ": -6, "u": -6, "m": -3, "": 0, "k": 3, "K": 3, "M": 6,
}  # fmt: skip
SPELLINGS: Mapping[str, tuple[str, ...]] = {
    "F": ("F",),
    "V": ("V", "Vdc", "VDC", "V d.c.", "V DC", "V dc", "V=", "Vac", "VAC", "V a.c.", "V AC", "V ac", "V~"),
    "A": ("A",),
    "Ω": ("Ω", "\u2126", "ohm", "Ohm", "ohms", "R"),
    "Hz": ("Hz",),
    "mm": ("mm",),
    "°C": ("°C", "℃", "C", "deg C", "degC"),
    "h": ("h", "hours", "hrs", "hr", "Std", "Std.", "Stunden"),
    "%": ("%", "percent"),
    "K": ("K",),
    "": ("pcs", "pieces", "Stk", "Stück"),
}
EXAMPLES: Mapping[str, str] = {
    "F": "4.7 µF", "V": "63 V", "A": "350 mA", "Ω": "0.2 Ω", "Hz": "120 Hz", "mm": "12.5 mm",
    "°C": "105 °C", "h": "2000 h", "%": "20 %", "K": "8 K", "": "10",
}  # fmt: skip
PLAIN_ONLY = ("mm", "°C", "h", "%", "K", "")  # units that the trade writes without a prefix
SHOWN: Mapping[str, tuple[tuple[float, str, int], ...]] = {
    "F": ((0.99995e-7, "µF", 6), (0.99995e-9, "nF", 9), (0, "pF", 12)),
    "A": ((0.99995, "A", 0), (0.99995e-3, "mA", 3), (0, "µA", 6)),
    "Ω": ((0.99995e6, "MΩ", -6), (0.99995e3, "kΩ", -3), (0.99995, "Ω", 0), (0, "mΩ", 3)),
    "Hz": ((0.99995e6, "MHz", -6), (0.99995e3, "kHz", -3), (0, "Hz", 0)),
}
NUMBER = r"[-+]?(?:\d+(?:[.,]\d+)*|[.,]\d+)(?:[eE][-+]?\d{1,2})?"


def read_quantity(text: str, unit: str, default_prefix: str = "") -> float:
    """The value in SI units of a quantity as the trade writes it.

    Args:
        text: "4.7 µF", "4,7uF", "4u7", "6V3", "-20 °C", "2000 h"; a bare number is in `default_prefix` + `unit`.
        unit: the unit wanted, one of the keys of SPELLINGS; mm, °C and h are kept as they are.
        default_prefix: the prefix meant where the text has no unit, such as "µ" under a heading "Cap uF".

    Raises:
        QuantityError: with `fault` "unreadable", or "wrong_unit" where the text has a unit of another kind.

    >>> read_quantity("4,7 uF", "F"), read_quantity("6V3", "V"), read_quantity("47", "F", "µ")
    (4.7e-06, 6.3, 4.7e-05)
    """
    tidy = re.sub(r"(?<=\d)[ ](?=\d{3}(?!\d))", "", _plain(text))
    if letter := re.fullmatch(r"([-+]?\d*)(\D{1,2}?)(\d+)\s*(\D*)", tidy):
        whole, mark, part, after = letter.groups()
        prefix = "" if mark in SPELLINGS[unit] else mark
        if prefix in PREFIXES and (not prefix or unit not in PLAIN_ONLY) and after in ("", *SPELLINGS[unit]):
            return _shift(f"{whole or 0}.{part}", PREFIXES[prefix])
    if not (found := re.fullmatch(rf"({NUMBER})\s*(.*)", tidy)):
        raise QuantityError(f'"{text}" is not {_kind(unit)}. Write it like {EXAMPLES[unit]}.')
    number, written = _point(found[1], text), found[2].strip()
    return _shift(number, PREFIXES[_prefix(written, unit, default_prefix, text)])


def _plain(text: str) -> str:
    spaces = re.sub(r"[\s\u00a0\u2009\u202f]+", " ", text).strip()
    return spaces.replace("\u2212", "-").replace("\u2013", "-")


def _point(number: str, text: str) -> str:
    """The number with a decimal point, where its separators leave no doubt."""
    marks = re.findall(r"[.,]", number)
    if re.fullmatch(r"[-+]?[1-9]\d{0,2}(?:\.\d{3})+,\d+|[-+]?[1-9]\d{0,2}(?:,\d{3})+\.\d+", number):
        return number.replace(marks[0], "").replace(",", ".")  # 1.500,5 and 1,500.5: the last is the decimal mark
    if marks == [","] and re.fullmatch(r"[-+]?[1-9]\d{0,2},\d{3}", number):
        raise QuantityError(f'"{text}" may mean thousands or a decimal comma. Write it without the separator.')
    if len(marks) <= 1:
        return number.replace(",", ".")
    raise QuantityError(f'"{text}" has more than one decimal mark. Write it with one, like 1500.5.')


def _prefix(written: str, unit: str, default_prefix: str, text: str) -> str:
    """The prefix before the unit that is written behind the number."""
    if not written:
        if unit == "F" and not default_prefix:  # nobody sells farads: without its unit a value may be µF, nF or pF
            raise QuantityError(f'"{text}" has no unit. Write it like {EXAMPLES[unit]}.')
        return default_prefix
    if written in SPELLINGS[unit]:
        return ""
    prefixed = unit not in PLAIN_ONLY and (written in PREFIXES or written[1:].strip() in SPELLINGS[unit])
    if prefixed and written[0] in PREFIXES:
        return written[0]
    wanted = f"{_kind(unit)} is wanted here, like {EXAMPLES[unit]}"
    if _is_a_unit(written):
        raise QuantityError(f'"{text}" has the unit "{written}", but {wanted}.', "wrong_unit")
    raise QuantityError(f'"{text}" can\'t be read from "{written}" on: {wanted}.')


def _kind(unit: str) -> str:
    return f"a quantity in {unit}" if unit else "a plain number"


def _is_a_unit(written: str) -> bool:
    every = {spelling for spellings in SPELLINGS.values() for spelling in spellings} | {"W", "H", "cm", "in", '"', "g"}
    return written in every or (written[0] in PREFIXES and written[1:].strip() in every | {""})


def _shift(number: str, places: int) -> float:
    return float(Decimal(number).scaleb(places))


def show(value: float | None, unit: str) -> str:
    """A value in SI units as the trade prints it, to four figures; None is "not stated".

    >>> show(4.7e-6, "F"), show(47e-9, "F"), show(0.35, "A"), show(10_000e-6, "F"), show(None, "mm")
    ('4.7 µF', '47 nF', '350 mA', '10000 µF', 'not stated')
    """
    if value is None:
        return "not stated"
    if not isfinite(value):
        return f"{value} {unit}".strip()
    for bound, name, places in SHOWN.get(unit, ()):
        if abs(value) >= bound:
            return f"{_figures(Decimal(repr(float(value))).scaleb(places))} {name}"
    return f"{_figures(Decimal(repr(float(value))))} {unit}".strip()


def _figures(number: Decimal) -> str:
    """Four significant figures, no exponent, no trailing zeros; whole thousands keep all their digits."""
    if abs(number) >= 1000:
        return f"{number:.0f}"
    text = f"{number:.4g}"
    plain = f"{Decimal(text):f}"
    return plain.rstrip("0").rstrip(".") if "." in plain else plain


def counted(number: int, word: str) -> str:
    """A number with its word in the singular or plural.

    >>> counted(1, "position"), counted(3, "line")
    ('1 position', '3 lines')
    """
    return f"{number} {word}{'' if number == 1 else 's'}"
