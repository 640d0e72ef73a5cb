"""Limits of the loss factor by class and rated voltage, as published, and the series resistance they allow."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import nan, nextafter

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier, staircase
from subsearch.formulas.loss import continuous_tan_delta, esr_ohm, stepped_tan_delta

Columns = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class LossTable:
    """Where a table holds [Hz, °C], and its columns: rated voltage [V] and limit of the loss factor."""

    frequency_hz: float
    at_c: float
    columns: Columns


def _columns(volts: str, limits: str) -> Columns:
    return tuple(zip(map(float, volts.split()), map(float, limits.split()), strict=True))


LOW, HIGH = "6.3 10 16 25 35 50 63 100", "160 200 250 350 400 450"
LOSS_TABLES = {
    # Source: loss of standard 85
    "standard 85 °C": LossTable(
        120, 20, _columns(f"{LOW} {HIGH}", ".22 .19 .16 .14 .12 .10 .09 .08 .16 .18 .18 .20 .20 .20")
    ),
    # Source: loss of standard 105
    "standard 105 °C": LossTable(
        120, 20, _columns(f"{LOW} {HIGH}", ".23 .20 .16 .14 .12 .10 .09 .08 .12 .14 .17 .20 .25 .25")
    ),
    # Source: loss of low impedance 105
    "low impedance 105 °C": LossTable(120, 20, _columns("10 16 25 35 50 63 100", ".19 .16 .14 .12 .10 .10 .08")),
    # Source: loss at 100 Hz
    "85 °C at 100 Hz": LossTable(
        100, 27, _columns(f"{LOW} 160 250 350 400 450", ".20 .16 .14 .12 .11 .10 .09 .08 .11 .11 .14 .13 .12")
    ),
    # Source: loss of bipolar 105
    "bipolar 105 °C": LossTable(120, 25, _columns("6.3 10 16 25 35 50 100", ".24 .20 .17 .15 .14 .12 .10")),
    # Source: loss of bipolar 85
    "bipolar 85 °C": LossTable(120, 20, _columns(LOW, ".24 .20 .17 .15 .12 .12 .12 .12")),
    # Source: loss of high voltage
    "high voltage long life": LossTable(120, 20, _columns(HIGH, ".20 .20 .20 .20 .24 .24")),
}


def loss_table(loss_class: str) -> LossTable:
    """The published table of a class, with the frequency and the temperature at which it holds.

    Args:
        loss_class: a word of LOSS_TABLES.

    Returns:
        [Hz and °C and V and none] frequency, temperature, and the columns: rated voltage and limit.

    Raises:
        UnknownNameError: no such class; the text names the nearest.

    Holds for new parts at that frequency and temperature.
    Source: loss of standard 85, loss of standard 105, loss of bipolar 105

    >>> loss_table("85 °C at 100 Hz").frequency_hz
    100
    """
    return LOSS_TABLES[known_word(loss_class, LOSS_TABLES, "a class of loss limits")]


def between_columns(columns: Sequence[tuple[float, float]]) -> Columns:
    """The steps of a table of limits: between two columns the larger limit of the two holds.

    A limit condemns, so a rating that the table leaves out is judged by the more lenient of its neighbours.

    Args:
        columns: [V and none] rated voltages, rising, and the limit of each.

    Returns:
        [V and none] steps for `staircase`, unknown below the first column and above the last.

    Holds for limits that a reading must not be above.
    Source: ratings between columns

    >>> between_columns(((35, 0.12), (50, 0.10)))[1:]
    ((35, 0.12), (49.99999999999999, 0.12), (50, 0.1))
    """
    steps: list[tuple[float, float]] = [(nextafter(columns[0][0], 0), nan), columns[0]]
    for (_, before), (volts, limit) in pairwise(columns):
        steps += [(nextafter(volts, 0), max(before, limit)), (volts, limit)]
    return tuple(steps)


def tan_delta_limit(rated_v: Carrier, loss_class: str) -> Carrier:
    """The largest loss factor of a class up to 1000 µF, at the frequency and temperature of its table.

    Args:
        rated_v: [V] rated voltage; any carrier.
        loss_class: a word of LOSS_TABLES.

    Returns:
        [none] the limit; unknown where the voltage is, and outside the table.

    Raises:
        UnknownNameError: no such class.

    Holds for new parts; between two columns the larger limit of the two.
    Source: loss of standard 85, loss of standard 105, ratings between columns

    >>> tan_delta_limit(25, "standard 85 °C"), tan_delta_limit(40, "standard 85 °C")
    (0.14, 0.12)
    """
    return staircase(rated_v, between_columns(loss_table(loss_class).columns))


def esr_limit_ohm(rated_v: Carrier, capacitance_f: Carrier, loss_class: str) -> Carrier:
    """The largest series resistance that a class's loss limit allows, at the frequency of its table.

    Args:
        rated_v: [V] rated voltage; any carrier.
        capacitance_f: [F] nominal capacitance, above 0; any carrier.
        loss_class: a word of LOSS_TABLES.

    Returns:
        [Ω] the limit, adder in steps; unknown where an input is, and outside the table.

    Raises:
        UnknownNameError: no such class.
        ZeroDivisionError: a plain capacitance of 0.

    Holds for the frequency of `loss_table` only: a reading at another is not judged by it.
    Source: loss factor, adder above 1000 µF

    >>> round(esr_limit_ohm(50, 10e-6, "standard 85 °C"), 2)
    13.26
    """
    limit = stepped_tan_delta(tan_delta_limit(rated_v, loss_class), capacitance_f)
    return esr_ohm(limit, loss_table(loss_class).frequency_hz, capacitance_f)


def esr_estimate_ohm(rated_v: Carrier, capacitance_f: Carrier, loss_class: str) -> Carrier:
    """The same with the adder in proportion: what the worst new part of the class would have.

    Args:
        rated_v: [V] rated voltage; any carrier.
        capacitance_f: [F] nominal capacitance, above 0; any carrier.
        loss_class: a word of LOSS_TABLES.

    Returns:
        [Ω] the series resistance; unknown where an input is, and outside the table.

    Raises:
        UnknownNameError: no such class.
        ZeroDivisionError: a plain capacitance of 0.

    Holds for the frequency of `loss_table` only; typical parts lie lower.
    Source: loss factor, adder above 1000 µF

    >>> round(esr_estimate_ohm(25, 2200e-6, "standard 85 °C"), 4)
    0.0989
    """
    worst = continuous_tan_delta(tan_delta_limit(rated_v, loss_class), capacitance_f)
    return esr_ohm(worst, loss_table(loss_class).frequency_hz, capacitance_f)
