"""Impedance: over frequency, by series resistance and inductance; and in the cold, by published limits."""

from math import tau

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier, pick, staircase
from subsearch.formulas.loss import started_thousands
from subsearch.formulas.loss_limits import between_columns

# Up to each can diameter [mm], from 8 mm; the inductance [H]. Source: usual inductance
INDUCTANCES = ((12.5, 20e-9), (16.0, 26e-9), (18.0, 34e-9))
SMALLEST_MM = 8.0  # Source: usual inductance

COLD_VOLTS = (6.3, 10.0, 16.0, 25.0, 35.0, 50.0, 63.0, 100.0)
# By class: the adder for each 1000 µF above the first, and the limits by rated voltage.
COLD_LIMITS = {
    # Source: cold impedance of standard 85
    "standard 85 °C at -25 °C": (0.5, (4.0, 3.0, 2.0, 2.0, 2.0, 2.0, 2.0, 2.0)),
    # Source: cold impedance of standard 85
    "standard 85 °C at -40 °C": (1.0, (8.0, 6.0, 4.0, 4.0, 3.0, 3.0, 3.0, 3.0)),
    # No adder is stated. Source: cold impedance of bipolar 85
    "bipolar 85 °C at -25 °C": (0.0, (4.0, 3.0, 2.0, 2.0, 2.0, 2.0, 2.0, 2.0)),
    # No adder is stated. Source: cold impedance of bipolar 85
    "bipolar 85 °C at -40 °C": (0.0, (10.0, 8.0, 6.0, 4.0, 3.0, 3.0, 3.0, 3.0)),
}


def impedance_ohm(
    esr_ohm: Carrier, inductance_henry: Carrier, capacitance_f: Carrier, frequency_hz: Carrier
) -> Carrier:
    """The magnitude of the impedance of resistance, inductance and capacitance in series.

    Args:
        esr_ohm: [Ω] series resistance at that frequency; any carrier.
        inductance_henry: [H] series inductance; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.
        frequency_hz: [Hz] frequency, above 0; any carrier.

    Returns:
        [Ω] the impedance; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain capacitance or frequency of 0.

    Holds for one frequency: the series resistance falls with frequency and is not carried along.
    Source: series impedance

    >>> impedance_ohm(3, 0, 39.788735772973836e-6, 1000)
    5.0
    """
    reactance = tau * frequency_hz * inductance_henry - 1 / (tau * frequency_hz * capacitance_f)
    return (esr_ohm**2 + reactance**2) ** 0.5


def resonance_hz(inductance_henry: Carrier, capacitance_f: Carrier) -> Carrier:
    """The frequency of self-resonance, at which only the series resistance is left of the impedance.

    Args:
        inductance_henry: [H] series inductance, above 0; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.

    Returns:
        [Hz] the frequency; unknown where an input is, and where one is not above 0.

    Holds for one resistance, inductance and capacitance in series.
    Source: series impedance

    >>> round(resonance_hz(20e-9, 100e-6))
    112540
    """
    product = pick(inductance_henry > 0, inductance_henry) * pick(capacitance_f > 0, capacitance_f)
    return 1 / (tau * product**0.5)


def usual_inductance_henry(diameter_mm: Carrier) -> Carrier:
    """The usual series inductance of a radial can; between two sizes that of the larger.

    Args:
        diameter_mm: [mm] diameter of the can; any carrier.

    Returns:
        [H] the inductance; unknown where the diameter is, below 8 mm and above 18 mm.

    Holds for radial cans of one maker; for estimates.
    Source: usual inductance

    >>> usual_inductance_henry(16)
    2.6e-08
    """
    return pick(diameter_mm >= SMALLEST_MM, staircase(diameter_mm, INDUCTANCES))


def cold_impedance_limit(rated_v: Carrier, capacitance_f: Carrier, cold_class: str) -> Carrier:
    """How many times the impedance at 20 °C that in the cold may be, at 120 Hz.

    Args:
        rated_v: [V] rated voltage; any carrier.
        capacitance_f: [F] nominal capacitance; any carrier.
        cold_class: a word of COLD_LIMITS.

    Returns:
        [none] the limit of the ratio, adder in steps; unknown where an input is, and outside the table.

    Raises:
        UnknownNameError: no such class; the text names the nearest.

    Holds for new parts; between two columns the larger limit of the two.
    Source: cold impedance of standard 85, cold impedance of bipolar 85, ratings between columns

    >>> cold_impedance_limit(16, 100e-6, "standard 85 °C at -40 °C")
    4.0
    """
    adder, limits = COLD_LIMITS[known_word(cold_class, COLD_LIMITS, "a class of cold limits")]
    limit = staircase(rated_v, between_columns(tuple(zip(COLD_VOLTS, limits, strict=True))))
    return limit + adder * started_thousands(capacitance_f)
