"""At which change a stated life counts as over: lives to different ends can't be compared.

A life to three times the loss and 45 % of capacitance says less of a part than the same hours to twice and 20 %.
"""

from dataclasses import dataclass, field
from math import nan

from subsearch.errors import known_word


@dataclass(frozen=True)
class EndOfLife:
    """The change that ends a life, or that storage may leave; NaN where the source states none.

    By how much the capacitance may have fallen and risen [%]; and how many times its first limit the loss (tan delta or
    ESR) and the leakage may be. Beyond any of them the life is over. `source`: a key of the sources.
    """

    low_pct: float
    high_pct: float
    loss_times: float
    leakage_times: float = 1.0
    source: str = field(kw_only=True)


ENDS_OF_LIFE = {
    "useful life": EndOfLife(-30, nan, 3.0, source="ends of life"),
    "load life": EndOfLife(-20, 20, 2.0, source="ends of life"),
    "endurance": EndOfLife(-10, 10, 1.3, source="ends of life"),
    "endurance of axial parts": EndOfLife(-15, 15, 1.3, source="ends of life of axial parts"),
    "endurance of axial parts of 6.3 V": EndOfLife(-30, 15, 1.3, source="ends of life of axial parts"),
    "storage of axial parts": EndOfLife(-15, 15, 1.3, 2.0, source="ends of life of axial parts"),
    "storage of axial parts of 6.3 V": EndOfLife(-30, 15, 1.3, 2.0, source="ends of life of axial parts"),
    "useful life of axial parts": EndOfLife(-45, 45, 3.0, source="ends of life of axial parts"),
    "useful life of axial parts of 6.3 V": EndOfLife(-50, 45, 3.0, source="ends of life of axial parts"),
    "endurance of the thinnest axial parts": EndOfLife(
        -20, 20, 2.0, nan, source="ends of life of the thinnest axial parts"
    ),
    "useful life of the thinnest axial parts": EndOfLife(
        -50, 50, 3.0, nan, source="ends of life of the thinnest axial parts"
    ),
    "endurance of snap-in parts of 105 °C": EndOfLife(-15, 15, 1.3, source="ends of life of snap-in parts"),
    "useful life of snap-in parts of 105 °C": EndOfLife(-20, 20, 3.0, source="ends of life of snap-in parts"),
    "storage of snap-in parts of 105 °C": EndOfLife(-15, 15, 1.5, 2.0, source="ends of life of snap-in parts"),
    "useful life of snap-in parts of 85 °C up to 100 V": EndOfLife(
        -45, 45, 3.0, nan, source="ends of life of snap-in parts of 85 °C"
    ),
    "useful life of snap-in parts of 85 °C above 100 V": EndOfLife(
        -30, 30, 3.0, nan, source="ends of life of snap-in parts of 85 °C"
    ),
    "useful life of a radial series of 105 °C": EndOfLife(-40, 40, 3.0, source="end of life at 105 °C"),
    "useful life of a radial series of 125 °C": EndOfLife(-35, 35, 3.0, source="end of life at 125 °C"),
    "useful life of a long-life series": EndOfLife(-35, 35, 3.0, source="ends of life of long-life parts"),
    "endurance of a long-life series": EndOfLife(-25, 25, 2.0, source="ends of life of long-life parts"),
    "endurance of a radial series of 85 °C": EndOfLife(-20, 20, 1.5, source="end of endurance at 85 °C"),
    "load life of a radial series of 105 °C": EndOfLife(-20, 20, 2.0, source="ends of life at 105 °C"),
    "storage of a radial series of 105 °C": EndOfLife(-20, 20, 2.0, source="ends of life at 105 °C"),
    "life of bipolar parts of 105 °C": EndOfLife(-25, 25, 1.5, source="end of life of bipolar parts at 105 °C"),
    "life of bipolar parts of 85 °C": EndOfLife(-20, 20, 1.5, source="end of life of bipolar parts at 85 °C"),
    # Twice the ESR first measured, where others mean the limit.
    "life of screw parts": EndOfLife(-10, 10, 2.0, source="end of life of screw parts"),
    "useful life to the latest end": EndOfLife(-50, 50, 3.0, source="latest end of life"),
    "life of polymer parts": EndOfLife(-20, nan, nan, nan, source="end of life of polymer parts"),
}


def end_of_life(life: str) -> EndOfLife:
    """The change that ends a kind of life, as published.

    Args:
        life: useful life, load life, endurance, or one of the other names in ENDS_OF_LIFE.

    Returns:
        [none] the change.

    Raises:
        UnknownNameError: another name; the text names the nearest.

    Holds for tests at the highest temperature; parts in the field may serve on beyond, or fail before it.
    Source: ends of life

    >>> end_of_life("load life").loss_times
    2.0
    """
    return ENDS_OF_LIFE[known_word(life, ENDS_OF_LIFE, "a kind of life with a published end")]
