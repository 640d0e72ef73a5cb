"""A tolerance as lists write it: per cent, a letter, or both; what depends on the capacitance is said and refused."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.quantities import Stated, in_range
from subsearch.reading.spelling import one_spelling
from subsearch.reading.tolerance_letters import SMALL_F, SYMMETRIC_PCT, UNEVEN_PCT, tolerance_letter_pct
from subsearch.terms import TERMS
from subsearch.units import read_quantity

NUMBER = r"\d+(?:[.,]\d+)?"
LETTERS = {letter: int(SYMMETRIC_PCT[letter]) for letter in "FGHJKMN"}
PER_CENT = re.compile(r"%|percent|per cent|prozent|pct\.?|％", re.IGNORECASE)
ONE = re.compile(rf"(?:±|\+/-|\+-|-/\+|\+\\-)?({NUMBER})")
TWO = re.compile(rf"([-+]?{NUMBER})(?:[/…;~]|\.\.\.?|to|bis|a|à)?([-+]?{NUMBER})")


def read_tolerance(text: str) -> Stated:
    """Give the lower and upper tolerance [%] that a cell states.

    Raises QuantityError, also where a letter and a number contradict each other.

    >>> read_tolerance("M (±20 %)"), read_tolerance("+80-20%")
    ({'tolerance_low_pct': -20.0, 'tolerance_high_pct': 20.0}, {'tolerance_low_pct': -20.0, 'tolerance_high_pct': 80.0})
    """
    tidy = one_spelling(text)
    if re.fullmatch(rf"(?:±|\+/-)?\s*{NUMBER}\s*[pn]F", tidy, re.IGNORECASE):
        raise QuantityError(f'"{text}" is a tolerance in farads, which hangs on the value. Write it in %, like ±5 %.')
    bare = re.sub(r"[\s()\[\],]*(?<!\d)[\s()\[\]]|[\s()\[\]]", "", PER_CENT.sub("", tidy))
    letter, rest = (bare[:1], bare[1:]) if bare[:1].isalpha() else ("", bare)
    if not letter and bare[-1:].isalpha():
        letter, rest = bare[-1], bare[:-1]
    ends = {_letter(letter, text)} if letter.isupper() else set()
    ends |= {_numbers(rest, text)} if rest or not letter.isupper() else set()
    if len(ends) > 1:
        raise QuantityError(f'"{text}" states two tolerances: the letter {letter} and the number differ.')
    ((low, high),) = ends
    if low == high:
        raise _unreadable(text)  # no part is made to ±0 %
    in_range(TERMS["tolerance_low_pct"], low, text)
    in_range(TERMS["tolerance_high_pct"], high, text)
    return {"tolerance_low_pct": low + 0.0, "tolerance_high_pct": high}


def _letter(letter: str, text: str) -> tuple[float, float]:
    if letter in SMALL_F and letter not in LETTERS:
        raise QuantityError(
            f'"{text}" may be ±{SYMMETRIC_PCT[letter]:g} % or, up to 10 pF, a tolerance in pF. Write it in %.'
        )
    if letter in LETTERS or letter in UNEVEN_PCT:
        return tolerance_letter_pct(letter)
    raise _unreadable(text)


def _numbers(bare: str, text: str) -> tuple[float, float]:
    if one := ONE.fullmatch(bare):
        size = read_quantity(one[1], "%")
        return -size, size
    if two := TWO.fullmatch(bare):
        first, second = (read_quantity(part, "%") for part in two.groups())
        apart = re.match(r"[-+]", two[2]) or not bare[len(two[1])].isdigit()
        is_range = two[1][0].isdigit() and bare[len(two[1])] == "-" and first < -second  # 10-20; but 80-20 is +80-20
        if apart and not is_range:
            return min(first, second), max(first, second)
    raise _unreadable(text)


def _unreadable(text: str) -> QuantityError:
    return QuantityError(f'"{text}" is not a tolerance. Write it like ±20 % or -10/+50 %.')
