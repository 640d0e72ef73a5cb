"""The ripple left on a reservoir behind a rectifier: the closed form everybody uses, and how much it overstates."""

from dataclasses import dataclass
from math import asin, isfinite, isnan, nan, pi, sin, tau

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import Carrier

ANGLE_HALVINGS = 60  # an angle within a quarter turn is then found to the last binary digit


@dataclass(frozen=True)
class Ripple:
    """Ripple peak to peak of an ideal rectifier, what the closed form says, and how many times as much that is."""

    ripple_v: float
    closed_form_v: float
    times: float


def rectified_hz(mains_hz: Carrier, full_wave: Carrier) -> Carrier:
    """Frequency of the ripple behind a rectifier.

    Args:
        mains_hz: [Hz] mains frequency; any carrier.
        full_wave: [1 or 0] 1 for a bridge or two diodes on a centre tap, 0 for one diode; any carrier.

    Returns:
        [Hz] the ripple frequency; unknown where an input is.

    Holds for one phase.
    Source: reservoir ripple

    >>> rectified_hz(50, 1), rectified_hz(50, 0)
    (100, 50)
    """
    return mains_hz * (1 + full_wave)


def ripple_most_v(load_a: Carrier, ripple_hz: Carrier, capacitance_f: Carrier) -> Carrier:
    """Ripple of a reservoir, peak to peak, at most: as if the load emptied it for the whole period.

    Args:
        load_a: [A] d.c. load current; any carrier.
        ripple_hz: [Hz] ripple frequency, above 0; any carrier.
        capacitance_f: [F] capacitance, above 0; any carrier.

    Returns:
        [V] the ripple, peak to peak; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain frequency or capacitance of 0.

    Holds for a constant load current, as an upper estimate: the next half wave refills the reservoir sooner.
    Source: reservoir ripple

    >>> round(ripple_most_v(1, 100, 4700e-6), 3)
    2.128
    """
    return load_a / (ripple_hz * capacitance_f)


def reservoir_f(load_a: Carrier, ripple_hz: Carrier, ripple_v: Carrier) -> Carrier:
    """Capacitance with which the ripple of a reservoir stays within a bound.

    Args:
        load_a: [A] d.c. load current; any carrier.
        ripple_hz: [Hz] ripple frequency, above 0; any carrier.
        ripple_v: [V] ripple allowed, peak to peak, above 0; any carrier.

    Returns:
        [F] the capacitance, ample by what the closed form overstates; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain frequency or ripple of 0.

    Holds for a constant load current; tolerance and ageing are not in it.
    Source: reservoir ripple

    >>> round(reservoir_f(2, 120, 1), 6)
    0.016667
    """
    return load_a / (ripple_hz * ripple_v)


def true_ripple(load_a: float, mains_hz: float, capacitance_f: float, peak_v: float, full_wave: float = 1) -> Ripple:
    """Ripple of a reservoir behind an ideal rectifier, down to where the falling line meets the rising sine.

    The reservoir follows the sine past its peak until that falls faster than the load empties it; then it falls in
    a straight line until the next half wave has risen to it.

    Args:
        load_a: [A] d.c. load current, 0 or above.
        mains_hz: [Hz] mains frequency, above 0.
        capacitance_f: [F] capacitance, above 0.
        peak_v: [V] peak behind the rectifier, above 0.
        full_wave: [1 or 0] 1 for a bridge or two diodes on a centre tap, 0 for one diode.

    Returns:
        The ripple, the closed form [V] and how many times as much that is; all unknown where an input is.

    Raises:
        RequirementError: a number outside those bounds.

    Holds for a constant load current, which stops where the reservoir is empty. Not counted: resistance of transformer
    and diodes (which makes the ripple smaller still, and the peak lower), and change of the diodes' drop.
    Source: valley of the ripple, reservoir ripple

    >>> ripple = true_ripple(1, 50, 4700e-6, 20)
    >>> round(ripple.ripple_v, 3), round(ripple.times, 3)
    (1.825, 1.166)
    """
    if any(map(isnan, (load_a, mains_hz, capacitance_f, peak_v, full_wave))):
        return Ripple(nan, nan, nan)
    _check(load_a, mains_hz, capacitance_f, peak_v, full_wave)
    closed_form: float = ripple_most_v(load_a, rectified_hz(mains_hz, full_wave), capacitance_f)
    if load_a == 0:
        return Ripple(0.0, 0.0, 1.0)  # what the ratio tends to
    ripple = peak_v * _valley(load_a / (tau * mains_hz * capacitance_f * peak_v), tau / (1 + full_wave))
    return Ripple(ripple, closed_form, closed_form / ripple)


def _valley(slope: float, period: float) -> float:
    """How far below the peak, as a part of it, the line ends that falls by a slope for each radian."""
    if slope >= 1:
        return 1.0  # the load empties it faster than the sine ever falls
    leaves = asin(slope)  # where the sine falls as steeply
    start = _below_peak(leaves)
    early, late = 0.0, pi / 2  # how long before the next peak they meet
    if start + slope * (period - late - leaves) >= 1:
        return 1.0  # empty before the next half wave begins
    for _ in range(ANGLE_HALVINGS):
        middle = (early + late) / 2
        if start + slope * (period - middle - leaves) > _below_peak(middle):
            early = middle
        else:
            late = middle
    return _below_peak(late)


def _below_peak(angle: float) -> float:
    return 2 * sin(angle / 2) ** 2  # 1 - cos, without its loss of digits


def _check(load_a: float, mains_hz: float, capacitance_f: float, peak_v: float, full_wave: float) -> None:
    above_0 = {"mains frequency": mains_hz, "capacitance": capacitance_f, "peak voltage": peak_v}
    for what, value in above_0.items():
        if not isfinite(value) or value <= 0:
            raise RequirementError(f"The {what} is {value:g}, but must be above 0. Correct it.")
    if not isfinite(load_a) or load_a < 0:
        raise RequirementError(f"The load current is {load_a:g} A, but must be 0 or above. Give it without its sign.")
    if full_wave not in (0, 1):
        raise RequirementError(f"full_wave is {full_wave:g}, but 1 is full wave and 0 half wave. Give one of them.")
