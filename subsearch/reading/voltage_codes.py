"""The two characters that stand for a rated voltage: a digit for the power of ten, a letter for the figures."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from subsearch.errors import QuantityError, one_of
from subsearch.reading.quoting import quoted

# Letter and figures, with the first before the decimal point. Source: structure of voltage codes
FIGURES: Mapping[str, str] = {
    "A": "1.0", "B": "1.25", "C": "1.6", "D": "2.0", "E": "2.5", "F": "3.15", "V": "3.5", "G": "4.0", "W": "4.5",
    "H": "5.0", "J": "6.3", "K": "8.0",
}  # fmt: skip
# Source: voltage codes, further voltage codes
LISTED: Mapping[str, float] = {
    "0E": 2.5, "0G": 4, "0L": 5.5, "0J": 6.3, "1A": 10, "1C": 16, "1D": 20, "1E": 25, "1V": 35, "1G": 40, "1H": 50,
    "1J": 63, "1K": 80, "2A": 100, "2Q": 110, "2B": 125, "2C": 160, "2Z": 180, "2D": 200, "2P": 220, "2E": 250,
    "2F": 315, "2V": 350, "2G": 400, "2W": 450, "2H": 500, "2J": 630, "2K": 800, "3A": 1000, "3B": 1250,
}  # fmt: skip
HIGHEST_POWER = 4


@dataclass(frozen=True)
class CodedVoltage:
    """What a voltage code states [V], and every doubt about it."""

    rated_v: float
    doubts: tuple[str, ...] = ()


def voltage_code(code: str) -> CodedVoltage:
    """The rated voltage [V] behind its two characters; one that no table lists is computed, and a doubt says so.

    Raises:
        QuantityError: not a digit and a letter of the code; the letters L, P, Q and Z behind another digit than listed.

    Source: voltage codes, further voltage codes, structure of voltage codes

    >>> voltage_code("2A"), voltage_code("0L").rated_v
    (CodedVoltage(rated_v=100.0, doubts=()), 5.5)
    >>> voltage_code("1B").doubts
    ('"1B" stands in no table here; by the way the code is built it is 12.5 V. Check it against the circuit.',)
    """
    bare = code.strip()
    if bare in LISTED:
        return CodedVoltage(float(LISTED[bare]))
    if re.fullmatch(rf"[0-{HIGHEST_POWER}][{''.join(FIGURES)}]", bare):
        volts = float(Decimal(FIGURES[bare[1]]).scaleb(int(bare[0])))
        built = f"by the way the code is built it is {volts:g} V"
        return CodedVoltage(volts, (f'"{bare}" stands in no table here; {built}. Check it against the circuit.',))
    hint = f' Did you mean "{bare.upper()}"?' if bare.upper() in LISTED else ""
    irregular = one_of([known for known in LISTED if known[1] not in FIGURES])
    raise QuantityError(
        f"{quoted(code)} is no voltage code.{hint} It is a digit from 0 to {HIGHEST_POWER} and one of the letters "
        f"{one_of(FIGURES)}, or {irregular}. Write the voltage in full, like 63 V."
    )
