"""Which voltage rating a position needs, and whether a polar part may stand there, from what was measured."""

TOUCH_V = 60.0  # d.c. up to which the instrument standard IEC 61010-1 does not count a part as hazardous
TOUCH_C = 45e-6  # charge [C] up to which it does not, above that voltage
RESERVE = 1.25  # a rating stands this far above the highest voltage measured: common practice
STEADY_REVERSE_V, PEAK_REVERSE_V = 0.5, 1.0  # what a polar part stands the wrong way round, steady and for short peaks
COUNTS_AS = {6.4: 6.3, 64.0: 63.0}  # old ratings that count as the modern ones beside them: common practice


def modern_v(old_rating_v: float) -> float:
    """The rating [V] that an old one [V] counts as: 6.4 and 64 V count as 6.3 and 63 V.

    >>> modern_v(64), modern_v(50)
    (63.0, 50)
    """
    return COUNTS_AS.get(old_rating_v, old_rating_v)


def needed_v(lowest_v: float, highest_v: float, peak_v: float = 0.0, fault_v: float = 0.0) -> float:
    """The d.c. rating [V] that measured voltages need.

    Args:
        lowest_v, highest_v: d.c. across the part with its sign, start-up and switch-off included [V].
        peak_v: a.c. peak on top [V].
        fault_v: the rail that can arrive when something else fails [V].

    >>> needed_v(0, 14), needed_v(-2, 4, 4), needed_v(0, 3, fault_v=24)
    (17.5, 10.0, 24)
    """
    return max(RESERVE * (max(abs(lowest_v), abs(highest_v)) + peak_v), abs(fault_v))


def keeps_its_sign(lowest_v: float, highest_v: float, peak_v: float = 0.0) -> bool:
    """Whether a polar part may stand there, mounted the right way round: what arrives reversed stays within its limits.

    Args:
        lowest_v, highest_v: d.c. across the part with its sign, start-up and switch-off included [V].
        peak_v: a.c. peak on top [V].

    >>> keeps_its_sign(0.5, 12, 0.4), keeps_its_sign(-2, 12), keeps_its_sign(0, 0, 3)
    (True, False, False)
    """
    steady = min(max(-lowest_v, 0.0), max(highest_v, 0.0))
    peaks = min(max(peak_v - lowest_v, 0.0), max(highest_v + peak_v, 0.0))
    return steady <= STEADY_REVERSE_V and peaks <= PEAK_REVERSE_V
