"""What a coupling capacitor does to the lowest tones."""

from math import log10, tau

from subsearch.formulas.carriers import Carrier, step

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
