"""A maker's leakage limit as printed, such as "0.01·C·V or 3 µA, the greater, after 2 min", read into numbers.

The trade prints C in µF and the current in µA. Only one form is read, the one that can be reckoned with: so much for
each µF·V and so much on top, but at least so much. What else may stand there (the lesser of two, a root, a line for
each range of values) states no number.
"""

import re
from contextlib import suppress
from dataclasses import dataclass

from subsearch.errors import QuantityError
from subsearch.terms import TERMS
from subsearch.units import read_quantity

NUMBER = r"\d+(?:[.,]\d+)?"
CURRENT = rf"({NUMBER}\s*(?:[mµμun]?A|\([mµμun]?A\))?)"
TIMES = r"\s*[·*×x⋅∙]?\s*"
UNIT = r"(?:\s*[(\[][µμu]?[FVA][)\]])?"  # a unit behind a symbol, as in C(µF)
RATED = r"(?:_?[RN])?"
SLOPE = re.compile(rf"({NUMBER}){TIMES}C{RATED}{UNIT}{TIMES}[VU]{RATED}{UNIT}(?:\s*\(?[µμu]A\)?)?", re.IGNORECASE)
PLUS = re.compile(rf"\s*\+\s*{CURRENT}")
OR_AT_LEAST = r"(?:[,;/]\s*)?(?:(?:or|oder|and|und|but|aber)\s*)?(?:(?:at least|min\.?|mindestens)\s*)?"
FLOOR = re.compile(rf"\s*(?=[a-z,;/]){OR_AT_LEAST}{CURRENT}", re.IGNORECASE)
NAMED = re.compile(
    rf"(?:(?:d\.?c\.? )?leakage(?: current)?|reststrom|leckstrom|dcl|lc|i(?:_?(?:l|r|lk|leak))?){UNIT}\s*(?=[≤<=:])",
    re.IGNORECASE,
)
AT_MOST = re.compile(r"[≤<=:\s]+|(?:max\.?|at most|höchstens)(?=[\s\d])\s*", re.IGNORECASE)
# When and how it is read is left aside: the limit is one at rated voltage and 20 °C all the same.
READ_AT = rf"{NUMBER}\s*(?:min(?:utes?|uten)?|sec|s|°\s*C|ohm|k?Ω)\b\.?"
CONDITION = re.compile(
    rf"[\s,;]*(?:\b(?:after|nach|at|bei|through|über)\s+{READ_AT}|\(\s*{READ_AT}\s*\))", re.IGNORECASE
)
GREATER = re.compile(
    r"[\s,;(]*(?:(?:whichever(?: value)? is|je nachdem,? was|es gilt der|the|der)\s+)?"
    r"(?:the )?(?:greater|larger|higher|größere|grössere|höhere|größer|höher)(?: (?:one|value|wert|ist))?[\s)]*$",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class LeakageLimit:
    """So many µA for each µF·V, and so many amperes on top, but at least so many amperes."""

    leakage_factor: float
    leakage_plus_a: float = 0.0
    leakage_floor_a: float = 0.0


def read_leakage_limit(text: str) -> LeakageLimit | None:
    """The numbers of a leakage limit as a maker prints it; None where it is not of the form that is read.

    >>> read_leakage_limit("0.01·C·V or 3 µA, the greater, after 2 min")
    LeakageLimit(leakage_factor=0.01, leakage_plus_a=0.0, leakage_floor_a=3e-06)
    >>> read_leakage_limit("I ≤ 0,06 CV + 10 µA").leakage_plus_a, read_leakage_limit("0.02CV or 3 mA, the smaller")
    (1e-05, None)
    """
    with suppress(QuantityError):
        limit = _limit(_bare(text))
        if limit is not None and all(_is_sane(name, value) for name, value in vars(limit).items()):
            return limit
    return None


def _limit(rule: str) -> LeakageLimit | None:
    slope = SLOPE.match(rule)
    if slope is None:
        only = re.fullmatch(CURRENT, rule)
        return LeakageLimit(0.0, 0.0, _amperes(rule)) if only and "A" in rule else None
    factor, rest = read_quantity(slope[1], ""), rule[slope.end() :]
    if plus := PLUS.fullmatch(rest):
        return LeakageLimit(factor, _amperes(plus[1]))
    if floor := FLOOR.fullmatch(rest):
        return LeakageLimit(factor, 0.0, _amperes(floor[1]))
    return None if rest.strip() else LeakageLimit(factor)


def _bare(text: str) -> str:
    """The rule without the words before and behind it."""
    rule = CONDITION.sub("", " ".join(text.split())).strip(" .,;")
    for before in (NAMED, AT_MOST):
        if found := before.match(rule):
            rule = rule[found.end() :]
    return GREATER.sub("", rule).strip(" .,;")


def _amperes(text: str) -> float:
    """A current, in µA where no unit is printed."""
    return read_quantity(text.replace("(", "").replace(")", ""), "A", "µ")


def _is_sane(name: str, value: float) -> bool:
    low, high = TERMS[name].low, TERMS[name].high
    return low is not None and high is not None and low <= value <= high
