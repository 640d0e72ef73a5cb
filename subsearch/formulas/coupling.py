"""What a coupling capacitor does to the lowest tones."""

from math import log10, tau

from subsearch.formulas.carriers import Carrier, pick, step

DB_PER_DOUBLING = 10 * log10(2)  # step knows log2 only: the one logarithm that every carrier names alike


def corner_hz(resistance_ohm: Carrier, capacitance_f: Carrier) -> Carrier:
    """Corner of the high-pass that a capacitor makes with a resistance: 3 dB are lost there.

    Args:
        resistance_ohm: [Ω] the whole resistance in series with it, source and load, above 0; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.

    Returns:
        [Hz] the corner frequency; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain resistance or capacitance of 0.

    Holds for one capacitor and resistances that do not change with frequency.
    Source: high-pass

    >>> round(corner_hz(10_000, 10e-6), 4)
    1.5915
    """
    return 1 / (tau * resistance_ohm * capacitance_f)


def loss_db(corner_hz: Carrier, frequency_hz: Carrier) -> Carrier:
    """Loss of a high-pass at a frequency, against far above its corner.

    Args:
        corner_hz: [Hz] corner frequency; any carrier.
        frequency_hz: [Hz] the frequency asked about, above 0; any carrier.

    Returns:
        [dB] the loss, a positive number; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain frequency of 0.

    Holds for a first-order high-pass: one capacitor and resistances.
    Source: high-pass

    >>> round(loss_db(20, 20), 4)
    3.0103
    """
    return DB_PER_DOUBLING * step(1 + (corner_hz / frequency_hz) ** 2, "log2")


def largest_corner_hz(frequency_hz: Carrier, loss_db: Carrier) -> Carrier:
    """The largest corner with which a high-pass loses no more than so much at a frequency.

    Args:
        frequency_hz: [Hz] the lowest frequency that matters; any carrier.
        loss_db: [dB] the loss allowed there, a number above 0; any carrier.

    Returns:
        [Hz] the corner frequency; unknown where an input is, and where the loss is not above 0.

    Holds for a first-order high-pass: one capacitor and resistances.
    Source: high-pass

    >>> round(largest_corner_hz(20, 0.5), 5)
    6.98623
    """
    return frequency_hz * (10 ** (pick(loss_db > 0, loss_db) / 10) - 1) ** 0.5


def least_f(resistance_ohm: Carrier, frequency_hz: Carrier, loss_db: Carrier) -> Carrier:
    """The smallest capacitance that loses no more than so much at a frequency.

    Args:
        resistance_ohm: [Ω] the whole resistance in series with it, source and load, above 0; any carrier.
        frequency_hz: [Hz] the lowest frequency that matters, above 0; any carrier.
        loss_db: [dB] the loss allowed there, a number above 0; any carrier.

    Returns:
        [F] the capacitance; unknown where an input is, and where the loss is not above 0.

    Raises:
        ZeroDivisionError: a plain resistance or frequency of 0.

    Holds for the capacitance that is really there: tolerance and ageing come off the nominal one, by `worst_f`.
    Source: high-pass

    >>> round(least_f(10_000, 20, 0.5) * 1e6, 3)
    2.278
    """
    return 1 / (tau * resistance_ohm * largest_corner_hz(frequency_hz, loss_db))


def worst_f(capacitance_f: Carrier, tolerance_low_pct: Carrier, drop_pct: Carrier) -> Carrier:
    """The capacitance that can be left at the end of life of a part at the lower end of its tolerance.

    Args:
        capacitance_f: [F] nominal capacitance; any carrier.
        tolerance_low_pct: [%] tolerance below nominal, a negative number; any carrier.
        drop_pct: [%] loss of capacitance that counts as the end of life, a positive number; any carrier.

    Returns:
        [F] the capacitance; unknown where an input is.

    Holds for a loss calculated from the value the part began with; its corner and loss follow from `corner_hz`.
    Source: worst value

    >>> round(worst_f(10, -20, 20), 9)
    6.4
    """
    return capacitance_f * (1 + tolerance_low_pct / 100) * (1 - drop_pct / 100)
