"""What is written of a can that holds several capacitors: the value of each."""

import re

from subsearch.errors import QuantityError
from subsearch.units import read_quantity

MOST_F = 10.0  # the largest capacitance of one part that is sane
MOST = 4  # so many stand side by side in one round place, by the laws that are written
JOINED = re.compile(r"\s*[+&/]\s*")
TIMES = re.compile(r"([1-9]\d*)\s*[x×*]\s*(.+)")
RATING = re.compile(r"(?<=[Fµμunp\s])\s*\d+(?:[.,]\d+)?\s*V(?:\s*\.?d\.?c\.?)?$", re.IGNORECASE)
UNIT = re.compile(r"[a-zA-Zµμ]+$")


def read_sections(text: str) -> tuple[float, ...]:
    """The capacitance of each section [F], as the trade writes them: the last unit holds for those without one.

    Raises:
        QuantityError: no unit, a value that is none, or fewer than 2 or more than MOST sections.

    >>> read_sections("32 + 32 µF"), read_sections("2 x 16 µF")
    ((3.2e-05, 3.2e-05), (1.6e-05, 1.6e-05))
    """
    values = RATING.sub("", text.strip())
    pieces = [piece for one in JOINED.split(values) for piece in _repeated(one)]
    unit = UNIT.search(pieces[-1]) if pieces else None
    if unit is None or not 2 <= len(pieces) <= MOST:
        raise QuantityError(
            f'"{text}" does not say what 2 to {MOST} capacitors the can holds. Write each with a plus, and the unit, '
            "like 32 + 32 µF."
        )
    found = tuple(read_quantity(one if UNIT.search(one) else f"{one} {unit[0]}", "F") for one in pieces)
    if not all(0 < value <= MOST_F for value in found):
        raise QuantityError(
            f'"{text}" has a section that is not above 0 or above {MOST_F:g} F. Write it like 32 + 32 µF.'
        )
    return found


def _repeated(text: str) -> list[str]:
    times = TIMES.fullmatch(text)
    return [times[2]] * min(int(times[1]), MOST + 1) if times else [text]
