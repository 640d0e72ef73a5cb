"""Ripple frequency multipliers: how much more ripple current a part takes at another frequency, as published.

A multiplier is 1 at the frequency of its table, 100 or 120 Hz: the two are kept apart, and a table of one goes with
a current rated at the other only through `rebased_multiplier`. Between two printed frequencies a multiplier goes
straight over the logarithm of the frequency; from the last on it stays; below the first, where it falls fast, it is
unknown.
"""

from math import inf, log2, nan, nextafter

from subsearch.formulas.carriers import Carrier, pick, step

# Each table: the printed frequencies [Hz], and rows: from and up to which rated voltage [V] or capacitance [F], both
# included, and the multipliers. Ratings between two rows are in none.
Row = tuple[float, float, tuple[float, ...]]
# Source: multipliers of axial parts
AXIAL_HZ = (50.0, 100.0, 300.0, 1e3, 3e3, 1e4)
AXIAL: tuple[Row, ...] = (
    (6.3, 16.0, (0.95, 1.00, 1.07, 1.12, 1.15, 1.20)),
    (25.0, 40.0, (0.90, 1.00, 1.12, 1.20, 1.25, 1.30)),
    (63.0, 100.0, (0.85, 1.00, 1.20, 1.30, 1.35, 1.40)),
)
# Source: multipliers of snap-in parts
SNAP_IN_HZ = (50.0, 100.0, 200.0, 400.0, 1e3, 2e3, 4e3, 1e4)
SNAP_IN: tuple[Row, ...] = (
    (10.0, 25.0, (0.93, 1.00, 1.04, 1.07, 1.11, 1.13, 1.15, 1.18)),
    (40.0, 100.0, (0.91, 1.00, 1.05, 1.09, 1.13, 1.15, 1.18, 1.22)),
    (nextafter(100, inf), inf, (0.86, 1.00, 1.13, 1.21, 1.29, 1.32, 1.35, 1.40)),
)
# Source: multipliers at 120 Hz
RADIAL_HZ = (60.0, 120.0, 300.0, 1e3, 1e4)
RADIAL_BY_F: tuple[Row, ...] = (  # 6.3 to 100 V
    (0.0, 47e-6, (0.75, 1.0, 1.35, 1.57, 2.0)),
    (nextafter(47e-6, inf), 470e-6, (0.80, 1.0, 1.23, 1.32, 1.5)),
    (nextafter(470e-6, inf), 1000e-6, (0.85, 1.0, 1.1, 1.13, 1.15)),
)
RADIAL_HIGH: tuple[Row, ...] = ((10e-6, 150e-6, (0.80, 1.0, 1.25, 1.40, 1.60)),)  # 160 to 400 V


# Straight over the logarithm between two printed frequencies. Source: multipliers between frequencies
def _over_frequency(frequency_hz: Carrier, printed_hz: tuple[float, ...], multipliers: tuple[float, ...]) -> Carrier:
    octave = step(pick(frequency_hz >= printed_hz[0], frequency_hz), "log2")
    octaves = [log2(printed) for printed in printed_hz]
    value: Carrier = multipliers[-1] + 0 * octave
    for n in reversed(range(len(printed_hz) - 1)):
        slope = (multipliers[n + 1] - multipliers[n]) / (octaves[n + 1] - octaves[n])
        value = pick(frequency_hz <= printed_hz[n + 1], multipliers[n] + slope * (octave - octaves[n]), value)
    return value


def _in_rows(x: Carrier, frequency_hz: Carrier, printed_hz: tuple[float, ...], rows: tuple[Row, ...]) -> Carrier:
    value: Carrier = nan
    for low, high, multipliers in rows:
        value = pick(x >= low, pick(x <= high, _over_frequency(frequency_hz, printed_hz, multipliers)), value)
    return value


def axial_multiplier(frequency_hz: Carrier, rated_v: Carrier) -> Carrier:
    """The ripple multiplier of an axial part, 1 at 100 Hz.

    Args:
        frequency_hz: [Hz] frequency of the ripple; any carrier.
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [none] the multiplier; unknown where an input is, below 50 Hz, and outside 6.3…16, 25…40 and 63…100 V.

    Holds for axial wet aluminium parts of one maker.
    Source: multipliers of axial parts

    >>> axial_multiplier(1000, 25)
    1.2
    """
    return _in_rows(rated_v, frequency_hz, AXIAL_HZ, AXIAL)


def snap_in_multiplier(frequency_hz: Carrier, rated_v: Carrier) -> Carrier:
    """The ripple multiplier of a snap-in part, 1 at 100 Hz.

    Args:
        frequency_hz: [Hz] frequency of the ripple; any carrier.
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [none] the multiplier; unknown where an input is, below 50 Hz, and outside 10…25, 40…100 and above 100 V.

    Holds for snap-in wet aluminium parts of one maker.
    Source: multipliers of snap-in parts

    >>> snap_in_multiplier(20_000, 400)
    1.4
    """
    return _in_rows(rated_v, frequency_hz, SNAP_IN_HZ, SNAP_IN)


def radial_multiplier(frequency_hz: Carrier, rated_v: Carrier, capacitance_f: Carrier) -> Carrier:
    """The ripple multiplier of a radial part, 1 at 120 Hz.

    Args:
        frequency_hz: [Hz] frequency of the ripple; any carrier.
        rated_v: [V] rated voltage; any carrier.
        capacitance_f: [F] nominal capacitance; any carrier.

    Returns:
        [none] the multiplier; unknown where an input is, below 60 Hz, and outside 6.3…100 V up to 1000 µF and
        160…400 V with 10…150 µF.

    Holds for radial wet aluminium parts of one maker, read from a copy with a garbled layout.
    Source: multipliers at 120 Hz

    >>> radial_multiplier(10_000, 50, 10e-6)
    2.0
    """
    low = _in_rows(capacitance_f, frequency_hz, RADIAL_HZ, RADIAL_BY_F)
    high = _in_rows(capacitance_f, frequency_hz, RADIAL_HZ, RADIAL_HIGH)
    upper = pick(rated_v >= 160, pick(rated_v <= 400, high))
    return pick(rated_v <= 100, pick(rated_v >= 6.3, low), upper)


def rebased_multiplier(frequency_multiplier: Carrier, multiplier_at_rated: Carrier) -> Carrier:
    """A multiplier of a table for one frequency, for a current rated at another: 100 and 120 Hz are not the same.

    Args:
        frequency_multiplier: [none] multiplier at the frequency of the ripple; any carrier.
        multiplier_at_rated: [none] multiplier of the same table at the rated frequency, above 0; any carrier.

    Returns:
        [none] the multiplier over the rated frequency; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain multiplier of 0.

    Holds for two multipliers of one row of one table.
    Source: ratio of multipliers

    >>> rebased_multiplier(1.5, 0.75)
    2.0
    """
    return frequency_multiplier / multiplier_at_rated


def esr_ratio(frequency_multiplier: Carrier) -> Carrier:
    """The series resistance over that at the rated frequency, which a multiplier implies: equal heat, I² · ESR.

    Args:
        frequency_multiplier: [none] ripple multiplier at a frequency, above 0; any carrier.

    Returns:
        [none] the ratio; unknown where the multiplier is.

    Raises:
        ZeroDivisionError: a plain multiplier of 0.

    Holds for multipliers that count the heat only; an estimate, not a limit.
    Source: resistance behind a multiplier

    >>> esr_ratio(2)
    0.25
    """
    return 1 / frequency_multiplier**2
