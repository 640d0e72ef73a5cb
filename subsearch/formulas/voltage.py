"""Which voltage rating a position needs, and whether a polar part may stand there, from what was measured.

D.c. is measured across the part with its sign, start-up and switch-off included.
"""

from subsearch.formulas.carriers import Carrier, least, most, pick, step

TOUCH_V = 60.0  # d.c. up to which the instrument standard does not count a part as hazardous. Source: touch voltage
TOUCH_C = 45e-6  # charge [C] up to which it does not, above that voltage: 300 nF at 150 V. Source: touch voltage
RESERVE = 1.25  # a rating stands this far above the highest voltage measured. Source: voltage reserve
TANTALUM_TIMES = 2.0  # a tantalum part is rated so many times the voltage needed. Source: tantalum at half its rating
STEADY_REVERSE_V = 0.5  # what a polar part withstands the wrong way round for long, with caution. Source: reverse limit
PEAK_REVERSE_V = 1.0  # and in short peaks; sources say from 1 to 2 V. Source: reverse limit
OLD_RATINGS = ((6.4, 6.3), (64.0, 63.0))  # old ones and what they count as. Source: old ratings


def touch_limit_f(held_v: Carrier) -> Carrier:
    """The capacitance up to which the instrument standard does not count the charge at a voltage as hazardous.

    Args:
        held_v: [V] voltage it is charged to, above TOUCH_V; any carrier.

    Returns:
        [F] the capacitance; unknown where the input is.

    Raises:
        ZeroDivisionError: a plain voltage of 0.

    Holds for voltages above TOUCH_V; no promise for a person, so discharge and measure all the same.
    Source: touch voltage

    >>> round(touch_limit_f(150) * 1e9)
    300
    """
    return TOUCH_C / held_v


def modern_v(old_rating_v: Carrier) -> Carrier:
    """The rating that an old one counts as: 6.4 and 64 V count as 6.3 and 63 V.

    Args:
        old_rating_v: [V] rated voltage as printed on the old part; any carrier.

    Returns:
        [V] the rating to ask for; unknown where the input is.

    Holds for d.c. ratings; all others count as they are.
    Source: old ratings

    >>> modern_v(64), modern_v(50)
    (63.0, 50)
    """
    volts = old_rating_v
    for old_v, modern in OLD_RATINGS:
        volts = pick(old_rating_v == old_v, modern, volts)
    return volts


def farthest_v(lowest_v: Carrier, highest_v: Carrier, peak_v: Carrier = 0.0) -> Carrier:
    """The voltage across the part that is farthest from 0, with its sign.

    Args:
        lowest_v, highest_v: [V] lowest and highest d.c. across the part, with sign; any carrier.
        peak_v: [V] a.c. peak on top, 0 or above; any carrier.

    Returns:
        [V] the voltage; unknown where an input is.

    Holds for an a.c. that can come at any moment.
    Source: sum of d.c. and peak

    >>> farthest_v(-2, 4, 4), farthest_v(-9, 4, 1)
    (8, -10)
    """
    top, bottom = highest_v + peak_v, lowest_v - peak_v
    return pick(top >= -bottom, top, pick(top < -bottom, bottom))


def needed_v(lowest_v: Carrier, highest_v: Carrier, peak_v: Carrier = 0.0, fault_v: Carrier = 0.0) -> Carrier:
    """The d.c. rating that measured voltages need: a quarter in reserve, and what can arrive in a fault.

    Args:
        lowest_v, highest_v: [V] lowest and highest d.c. across the part, with sign; any carrier.
        peak_v: [V] a.c. peak on top, 0 or above; any carrier.
        fault_v: [V] the rail that can arrive when something else fails; any carrier.

    Returns:
        [V] the rating; unknown where an input is.

    Holds for d.c. ratings; a.c. ratings and safety classes follow their own rules.
    Source: voltage reserve, sum of d.c. and peak

    >>> needed_v(0, 14), needed_v(-2, 4, 4), needed_v(0, 3, fault_v=24)
    (17.5, 10.0, 24)
    """
    measured_v = most(step(lowest_v, "abs"), step(highest_v, "abs")) + peak_v
    return most(RESERVE * measured_v, step(fault_v, "abs"))


def reverse_v(lowest_v: Carrier, highest_v: Carrier) -> Carrier:
    """How many volts d.c. a polar part gets the wrong way round for long, mounted the better way round.

    Args:
        lowest_v, highest_v: [V] lowest and highest d.c. across the part, with sign; any carrier.

    Returns:
        [V] the voltage, 0 where the d.c. keeps one sign; unknown where an input is.

    Holds for d.c. without the a.c. on top: that comes in `reverse_peak_v`.
    Source: sum of d.c. and peak

    >>> reverse_v(-2, 12), reverse_v(0.5, 12)
    (2, 0)
    """
    return least(most(-lowest_v, 0), most(highest_v, 0))


def reverse_peak_v(lowest_v: Carrier, highest_v: Carrier, peak_v: Carrier = 0.0) -> Carrier:
    """How many volts a polar part gets the wrong way round in peaks, mounted the better way round.

    Args:
        lowest_v, highest_v: [V] lowest and highest d.c. across the part, with sign; any carrier.
        peak_v: [V] a.c. peak on top, 0 or above; any carrier.

    Returns:
        [V] the voltage, 0 where the sum keeps one sign; unknown where an input is.

    Holds for an a.c. that can come at any moment.
    Source: sum of d.c. and peak

    >>> reverse_peak_v(0.5, 12, 2), reverse_peak_v(0, 0, 3)
    (1.5, 3)
    """
    return least(most(peak_v - lowest_v, 0), most(highest_v + peak_v, 0))


def keeps_its_sign(lowest_v: Carrier, highest_v: Carrier, peak_v: Carrier = 0.0) -> Carrier:
    """Whether a polar part may stand there, mounted the right way round: what arrives reversed is within its limits.

    Args:
        lowest_v, highest_v: [V] lowest and highest d.c. across the part, with sign; any carrier.
        peak_v: [V] a.c. peak on top, 0 or above; any carrier.

    Returns:
        [1 or 0] 1 where a polar part may stand there; unknown where an input is.

    Holds for wet aluminium; a bipolar part withstands both signs.
    Source: reverse limit

    >>> keeps_its_sign(0.5, 12, 0.4), keeps_its_sign(-2, 12), keeps_its_sign(0, 0, 3)
    (1.0, 0.0, 0.0)
    """
    steady = reverse_v(lowest_v, highest_v) / STEADY_REVERSE_V
    peaks = reverse_peak_v(lowest_v, highest_v, peak_v) / PEAK_REVERSE_V
    used = most(steady, peaks)
    return pick(used <= 1, 1.0, pick(used > 1, 0.0))
