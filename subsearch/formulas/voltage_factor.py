"""How much longer a wet part lasts below its rated voltage: published laws disagree, and most parts gain nothing.

Above the rated voltage no law holds: the factor is unknown there, and for a voltage below 0 too.
"""

from subsearch.errors import known_word
from subsearch.formulas.carriers import Carrier, most, pick, step

LISTED_BUILDS = ("SMD", "radial", "snap-in", "block")  # factor 1. Source: voltage factor by type
SMALL_BUILDS = ("axial",)  # not listed; small parts gain next to nothing. Source: voltage on small parts
SCREW = "screw"  # gains, if rated high enough. Source: voltage factor by type
BUILDS = (*LISTED_BUILDS, *SMALL_BUILDS, SCREW)
SCREW_FROM_V = 350.0  # rated voltage from which a screw part gains. Source: voltage factor by type
EXPONENT = 2.5  # of the power law. Source: voltage power
LEAST_RATIO = 0.6  # below it less voltage helps no more. Source: voltage power


def _within(ratio: Carrier, factor: Carrier) -> Carrier:
    return pick(ratio >= 0, pick(ratio <= 1, factor))


def voltage_power_factor(rated_v: Carrier, working_v: Carrier, exponent: Carrier = EXPONENT) -> Carrier:
    """How many times longer a part lasts below its rated voltage, by a power of the ratio, held below LEAST_RATIO.

    Args:
        rated_v: [V] rated voltage, above 0; any carrier.
        working_v: [V] voltage that stands on it; any carrier.
        exponent: [none] by how steep a power life falls with voltage; any carrier.

    Returns:
        [none] the factor, 1 at the rated voltage; unknown where an input is, above the rated voltage and below 0 V.

    Raises:
        ZeroDivisionError: a plain rated voltage of 0.

    Holds for large cans; for board-level parts an option that promises more than their makers do.
    Source: voltage power

    >>> round(voltage_power_factor(100, 80), 3)
    1.747
    >>> voltage_power_factor(100, 101)
    nan
    """
    ratio = working_v / rated_v
    held = step(most(ratio, LEAST_RATIO), "log2")  # a power of 2, since 1 ** unknown would be 1
    return _within(ratio, 2 ** (-exponent * held))


def voltage_linear_factor(rated_v: Carrier, working_v: Carrier) -> Carrier:
    """How many times longer a part lasts below its rated voltage, by a straight line.

    Args:
        rated_v: [V] rated voltage, above 0; any carrier.
        working_v: [V] voltage that stands on it; any carrier.

    Returns:
        [none] the factor, 1 at the rated voltage; unknown where an input is, above the rated voltage and below 0 V.

    Raises:
        ZeroDivisionError: a plain rated voltage of 0.

    Holds for large snap-in and screw parts, as an option: the line is known from memory.
    Source: voltage line

    >>> round(voltage_linear_factor(100, 80), 2)
    1.66
    """
    ratio = working_v / rated_v
    return _within(ratio, 4.3 - 3.3 * ratio)


def voltage_factor(build: str, rated_v: Carrier, working_v: Carrier) -> Carrier:
    """How many times longer a part of that build lasts below its rated voltage: the default, 1 for board-level parts.

    Args:
        build: one of BUILDS.
        rated_v: [V] rated voltage, above 0; any carrier.
        working_v: [V] voltage that stands on it; any carrier.

    Returns:
        [none] the factor; unknown where an input is, above the rated voltage and below 0 V.

    Raises:
        UnknownNameError: no such build; the text names the nearest.
        ZeroDivisionError: a plain rated voltage of 0.

    Holds for wet aluminium parts; screw parts from SCREW_FROM_V follow the power law, the only large-can law read.
    Source: voltage factor by type, voltage on small parts, voltage power

    >>> voltage_factor("radial", 63, 40), round(voltage_factor("screw", 400, 320), 3)
    (1.0, 1.747)
    """
    ratio = working_v / rated_v
    if known_word(build, BUILDS, "a build") != SCREW:
        return _within(ratio, 1.0)
    return pick(rated_v >= SCREW_FROM_V, voltage_power_factor(rated_v, working_v), _within(ratio, 1.0))
