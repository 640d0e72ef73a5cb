"""The letter that stands for a tolerance; the same letter may mean different things on different parts."""

from collections.abc import Mapping
from math import nan

from subsearch.errors import QuantityError, nearest, one_of
from subsearch.reading.quoting import quoted
from subsearch.terms import HYBRID, POLYMER, TANTALUM, TECHNOLOGIES, WET
from subsearch.units import show

ELECTROLYTIC = (WET, POLYMER, HYBRID, TANTALUM)
# Plus and minus so many %. Source: tolerance letters, tolerance letter H
SYMMETRIC_PCT: Mapping[str, float] = {
    "E": 0.005, "L": 0.01, "P": 0.02, "W": 0.05, "B": 0.1, "C": 0.25, "D": 0.5, "F": 1, "G": 2, "H": 3, "J": 5,
    "K": 10, "M": 20, "N": 30,
}  # fmt: skip
# Source: tolerance letter Q, tolerance letter T, tolerance letter S, tolerance letter Z
UNEVEN_PCT: Mapping[str, tuple[float, float]] = {"Q": (-10, 30), "T": (-10, 50), "S": (-20, 50), "Z": (-20, 80)}
# Older charts; P and W clash with the table above. Source: older tolerance letters
OLDER_PCT: Mapping[str, tuple[float, float]] = {"P": (0, 100), "W": (0, 200), "X": (-20, 40)}
# Plus and minus so many pF, up to 10 pF. Source: tolerance letters in pF, tolerance letter G in pF
SMALL_F: Mapping[str, float] = {"B": 0.1e-12, "C": 0.25e-12, "D": 0.5e-12, "F": 1e-12, "G": 2e-12}
SMALL_UP_TO_F = 10e-12  # Source: tolerance letters in pF
UNKNOWN: Mapping[str, str] = {
    "A": "means that the tolerance is agreed between maker and buyer, so it states none",
    "U": "is read as −10/+75 % by some, but no standard was found that says so",
}
EVERY = sorted({*SYMMETRIC_PCT, *UNEVEN_PCT, *OLDER_PCT})
TOO_CLOSE_PCT = 1.0  # what reads so on an electrolytic is another code. Source: closest electrolytics
SLACK = 1e-9  # 10 pF made by float arithmetic may lie a rounding above 10 pF


def tolerance_letter_pct(letter: str, technology: str = "", capacitance_f: float = nan) -> tuple[float, float]:
    """The lower and upper tolerance [%] that a letter stands for.

    Args:
        letter: one capital letter.
        technology: as in the terms; P and W mean 0/+100 % and 0/+200 % on an electrolytic, ±0.02 % and ±0.05 % on any
            other, and are an error where the technology is not stated.
        capacitance_f: nominal capacitance [F]; up to 10 pF the letters B, C, D, F and G stand for so many pF. Not
            stated (nan), more than 10 pF is taken.

    Raises:
        QuantityError: no such letter; A and U, which state none; a letter whose meaning hangs on what is not stated.

    Source: tolerance letters, older tolerance letters, tolerance letters in pF

    >>> tolerance_letter_pct("J"), tolerance_letter_pct("T"), tolerance_letter_pct("P", "wet aluminium")
    ((-5.0, 5.0), (-10.0, 50.0), (0.0, 100.0))
    >>> tolerance_letter_pct("C", "ceramic C0G", 5e-12)
    (-5.0, 5.0)
    """
    bare = letter.strip()
    if bare not in EVERY:
        raise QuantityError(_no_letter(letter, bare))
    if bare in SMALL_F and capacitance_f <= SMALL_UP_TO_F * (1 + SLACK):
        return _small(bare, capacitance_f)
    low, high = _older_or_not(bare, technology)
    if technology in ELECTROLYTIC and high <= TOO_CLOSE_PCT:
        raise QuantityError(
            f'"{bare}" would be ±{high:g} %, but no electrolytic is made so close. Read the marking again.'
        )
    return float(low), float(high)


def tolerance_letter_f(letter: str) -> float:
    """The tolerance [F], up and down alike, that a letter stands for on a part of up to 10 pF.

    Raises:
        QuantityError: a letter that stands for no tolerance in pF.

    Source: tolerance letters in pF, tolerance letter G in pF

    >>> tolerance_letter_f("C")
    2.5e-13
    """
    bare = letter.strip()
    if bare not in SMALL_F:
        allowed = ", ".join(f"{name} for ±{show(size, 'F')}" for name, size in SMALL_F.items())
        raise QuantityError(
            f"{quoted(letter)} is no tolerance in pF. Up to 10 pF there are {allowed}. Give one of them."
        )
    return SMALL_F[bare]


def _no_letter(letter: str, bare: str) -> str:
    if bare in UNKNOWN:
        return f'The letter "{bare}" {UNKNOWN[bare]}. Leave the tolerance empty, or write it in %.'
    return (
        f"{quoted(letter)} is no tolerance letter.{nearest(bare[:2], EVERY)} Allowed are {one_of(EVERY)}. "
        "Or write the tolerance in %, like ±20 %."
    )


def _small(letter: str, capacitance_f: float) -> tuple[float, float]:
    spread_f = SMALL_F[letter]
    if not 0 < capacitance_f >= spread_f:
        raise QuantityError(
            f'"{letter}" would be ±{show(spread_f, "F")}, more than the capacitance of {show(capacitance_f, "F")} '
            "itself. Check the capacitance."
        )
    percent = round(100 * spread_f / capacitance_f, 9)  # the noise of binary fractions is no tolerance
    return -percent, percent


def _older_or_not(letter: str, technology: str) -> tuple[float, float]:
    if letter in UNEVEN_PCT:
        return UNEVEN_PCT[letter]
    if letter not in SYMMETRIC_PCT or (letter in OLDER_PCT and technology in ELECTROLYTIC):
        return OLDER_PCT[letter]
    percent = SYMMETRIC_PCT[letter]
    if letter in OLDER_PCT and technology not in TECHNOLOGIES:
        low, high = OLDER_PCT[letter]
        raise QuantityError(
            f'"{letter}" may be ±{percent:g} % or, on an electrolytic, {low:g}/+{high:g} %. State the technology, or '
            "write the tolerance in %."
        )
    return -percent, percent
