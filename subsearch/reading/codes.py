"""The value printed on a capacitor as a code, and the longer code that also names voltage and tolerance."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from subsearch.errors import QuantityError
from subsearch.reading.quoting import quoted
from subsearch.reading.tolerance_letters import ELECTROLYTIC, tolerance_letter_pct
from subsearch.reading.voltage_codes import voltage_code
from subsearch.terms import C0G, CLASS_2, TECHNOLOGIES
from subsearch.units import read_quantity, show

# The third digit of a three-digit code: how many noughts, but for 8 and 9. Source: digit codes
NOUGHTS = {**{str(count): count for count in range(8)}, "8": -2, "9": -1}
# An F next to the prefix is the unit; behind further digits it is a tolerance letter.
LETTERED = r"[0-9]{1,4}[pnuµμm](?:F|[0-9]{0,3})|[pnuµμm][0-9]{1,3}"
WITH_F = r"[0-9]{1,4}F[0-9]{0,3}|F[0-9]{1,3}"
WITH_R = r"[0-9]{0,3}R[0-9]{1,3}|[0-9]{1,3}R"
PARTS = re.compile(rf"([0-9][A-Z])?([0-9]{{3}}|{LETTERED}|{WITH_R}|{WITH_F})([A-Z])?")
EXAMPLE = "Write it like 474, 4u7 or 2n2."
SMALLEST_ELECTROLYTIC_F = 0.1e-6  # Source: smallest electrolytics


@dataclass(frozen=True)
class CodedPart:
    """What a code of value, voltage and tolerance states: F, V, lower and upper %; None is "not stated"."""

    capacitance_f: float
    rated_v: float | None = None
    tolerance_pct: tuple[float, float] | None = None
    doubts: tuple[str, ...] = ()


def value_code_f(code: str, technology: str = "") -> float:
    """The capacitance [F] that a value code states: three digits in pF, or a letter in place of the decimal point.

    Args:
        code: "474", "4u7", "u47", "2n2", "47u", "22uF"; "R47" only with a technology.
        technology: as in the terms; an R stands for pF on a ceramic capacitor and for µF on any other.

    Raises:
        QuantityError: no value code; three digits that begin with 0; the value 0; an R, while the technology is not
            stated; an F without a prefix, such as 4F7 or 470F, for no part here has whole farads.

    An m is taken as milli; what speaks against it, `part_code` says as a doubt. Whether three digits are a code at all
    is for the reader to know: 470 on a can is 470 µF in full.
    Source: digit codes, letter codes, R on capacitors

    >>> value_code_f("474"), value_code_f("479"), value_code_f("u47"), value_code_f("R47", "wet aluminium")
    (4.7e-07, 4.7e-12, 4.7e-07, 4.7e-07)
    """
    bare = code.strip()
    if bare and not re.search("[1-9]", bare):
        raise QuantityError(f"{quoted(code)} is no value code, for it has no digit from 1 to 9. {EXAMPLE}")
    if re.fullmatch(LETTERED, bare):
        return read_quantity(bare, "F")
    if re.fullmatch(WITH_F, bare):
        raise QuantityError(
            f'"{bare}" would be whole farads, which no part here has. Look for a prefix before the F, and write it '
            "like 4.7 µF."
        )
    if re.fullmatch(WITH_R, bare):
        return _with_r(bare, technology)
    if not re.fullmatch(r"[0-9]{3}", bare):
        raise QuantityError(
            f"{quoted(code)} is no value code: that is three digits, or digits with a letter. {EXAMPLE}"
        )
    if bare[0] == "0":
        raise QuantityError(f"{quoted(code)} begins with 0, but the first digit of a value code is 1 to 9. {EXAMPLE}")
    return float(Decimal(bare[:2]).scaleb(NOUGHTS[bare[2]] - 12))


def _with_r(bare: str, technology: str) -> float:
    if technology not in TECHNOLOGIES:
        raise QuantityError(
            f'"{bare}" may be µF or pF: the R is only a decimal point. State the technology, or write it like 0.47 µF.'
        )
    prefix = "p" if technology in (C0G, CLASS_2) else "u"
    return read_quantity(bare.replace("R", prefix), "F")


def resistance_code_ohm(code: str) -> float:
    """The resistance [Ω] that a value code of a resistor states: the letter R, k or M in place of the decimal point.

    Raises:
        QuantityError: no value code of a resistor.

    Source: letter codes

    >>> resistance_code_ohm("R47"), resistance_code_ohm("4R7"), resistance_code_ohm("2k2")
    (0.47, 4.7, 2200.0)
    """
    bare = code.strip()
    if not re.fullmatch(r"[0-9]{1,4}[RkKM][0-9]{0,3}|[RkKM][0-9]{1,3}", bare):
        raise QuantityError(f"{quoted(code)} is no value code of a resistor. Write it like R47, 4R7 or 2k2.")
    return read_quantity(bare, "Ω")


def part_code(code: str, technology: str = "") -> CodedPart:
    """What a code of voltage, value and tolerance in one states; voltage and tolerance may be left out.

    Args:
        code: "2A474J", "1H104", "473K", "4u7M", "22uF".
        technology: as in the terms, where known: some letters mean different things on different parts.

    Raises:
        QuantityError: no such code, or its value or voltage can't be read. A tolerance letter that can't be read is a
            doubt, and the tolerance not stated. Doubted too: an m; an F behind three digits, which may be the unit; and
            an electrolytic of less than about 0.1 µF.

    Source: digit codes, letter codes, voltage codes, millifarad or microfarad

    >>> part_code("2A474J")
    CodedPart(capacitance_f=4.7e-07, rated_v=100.0, tolerance_pct=(-5.0, 5.0), doubts=())
    """
    found = PARTS.fullmatch(code.strip())
    if not found:
        raise QuantityError(f"{quoted(code)} is no code of voltage, value and tolerance. Write it like 2A474J or 104K.")
    voltage, value, letter = found.groups()
    capacitance_f = value_code_f(value, technology)
    volts = voltage_code(voltage) if voltage else None
    doubts = (*(volts.doubts if volts else ()), *_value_doubts(found, capacitance_f, technology))
    tolerance = None
    if letter:
        try:
            tolerance = tolerance_letter_pct(letter, technology, capacitance_f)
        except QuantityError as error:
            doubts = (*doubts, str(error))
    return CodedPart(capacitance_f, volts.rated_v if volts else None, tolerance, doubts)


def _value_doubts(found: re.Match[str], capacitance_f: float, technology: str) -> Iterator[str]:
    voltage, value, letter = found.groups()
    if "m" in value:
        yield f'"{value}" was taken as millifarad; on old parts it may mean microfarad.'
    if letter == "F" and value.isdigit() and not voltage:
        yield (
            f'"{found[0]}" was taken as {show(capacitance_f, "F")} with the tolerance letter F; the F may be the unit. '
            "Read the marking again."
        )
    if technology in ELECTROLYTIC and capacitance_f < SMALLEST_ELECTROLYTIC_F:
        yield (
            f'"{found[0]}" was taken as {show(capacitance_f, "F")}, less than an electrolytic usually has. '
            "Read the marking again."
        )
