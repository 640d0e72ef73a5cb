"""Numbers in a marking: which mark is the decimal one, and what else the number may be where that is left open."""

import re
from dataclasses import dataclass
from decimal import Decimal

from subsearch.reading.numerals import decimal_mark

LETTERS = "A-Za-z\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f9-\u024f\u0370-\u03ff\u0400-\u04ff"
START = rf"(?<![0-9{LETTERS}])(?<![0-9],)(?<!\s,)(?<!\.)"
END = rf"(?![0-9{LETTERS}%])"
WORD_START, WORD_END = rf"(?<![0-9{LETTERS}])", rf"(?![0-9{LETTERS}])"
NUM = (
    r"(?:\d{1,3}(?:[.,']\d{3})+(?:[.,]\d{1,2})?(?!\d)"  # thousands with a mark
    r"|\d{1,3}(?: 000)+(?!\d)|[1-9] [1-9]00(?!\d)"  # or with a space, where no second number can be meant
    r"|\d{1,7}(?:[.,]\d{1,6})?|(?<![^\s(/,;:=])[.,]\d{1,6})"
)
ROUND = re.compile(r"[1-9]0*(?:\.0)?|[1-9]\d0*(?:\.0)?|[1-9]\d?\.\d{1,2}|0?\.0*[1-9]\d{0,2}|125|640|0\.0*[1-9]\d?")
FEW = 5  # signs of a number such as 1.500
UNMARKED = re.compile(r"(?<=[A-Za-z)])[.,](?=\d)")


@dataclass(frozen=True)
class Number:
    """A number, and the other one it may mean."""

    value: Decimal
    other: Decimal | None = None


def mark_of(text: str) -> str:
    """Give the decimal mark of a text whose numbers leave no doubt of it, else "".

    >>> mark_of("3,300uF 6.3V"), mark_of("47uF,63V"), mark_of("1.500 6,3")
    ('.', '', ',')
    """
    return decimal_mark([UNMARKED.sub(" ", text)])


def number(text: str, mark: str = "") -> Number:
    """Give what a number says; a mark before three digits means thousands or decimals, as the other marks decide.

    text: as NUM finds it. mark: the decimal mark of the whole text, or "" where it is open; then a number such as
    1.500 is taken as 1500, since nobody prints noughts that say nothing, and 1.125 as it stands.

    >>> number("3,300", "."), number("0,100").value, number("1.500").other
    (Number(value=Decimal('3300'), other=None), Decimal('0.100'), Decimal('1.500'))
    """
    bare = re.sub(r"[ ']", "", text)
    marks = re.findall(r"[.,]", bare)
    if len(set(marks)) > 1:
        return Number(Decimal(bare.replace(marks[0], "").replace(marks[-1], ".")))
    if len(marks) > 1:
        return Number(Decimal(bare.replace(marks[0], "")))
    if not marks or not re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", bare):
        return Number(Decimal(bare.replace(",", ".")))
    decimals, thousands = Decimal(bare.replace(",", ".")), Decimal(bare.replace(marks[0], ""))
    if mark:
        return Number(decimals if marks[0] == mark else thousands)
    if len(bare) > FEW and bare.endswith("000"):
        return Number(thousands)  # nobody prints 10 µF as 10.000 µF
    return Number(thousands, decimals) if bare.endswith("00") else Number(decimals, thousands)


def is_round(text: str) -> bool:
    """Whether a number without a unit looks like a nominal value: one or two figures and noughts.

    >>> [is_round(text) for text in ("47", "3300", "0,47", "1206", "2222")]
    [True, True, True, False, False]
    """
    return bool(ROUND.fullmatch(re.sub(r"[ ']", "", text).replace(",", ".")))
