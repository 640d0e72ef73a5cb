"""What must hold of voltages whatever the numbers are, and the limits stay where they are."""

from math import isnan, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.formulas.voltage import (
    PEAK_REVERSE_V,
    RESERVE,
    STEADY_REVERSE_V,
    farthest_v,
    keeps_its_sign,
    needed_v,
    reverse_peak_v,
    reverse_v,
)

DC = tuple[float, float]
volts = some.floats(-500, 500)
ranges = some.tuples(volts, volts).map(lambda pair: (min(pair), max(pair)))
wider = some.floats(0, 100)
peaks = some.floats(0, 100)


@given(ranges, peaks, wider, wider, wider)
def test_a_wider_range_never_needs_fewer_volts(dc: DC, peak: float, below: float, above: float, more: float) -> None:
    needed = needed_v(*dc, peak)
    assert needed_v(dc[0] - below, dc[1] + above, peak + more) >= needed
    assert needed_v(*dc, peak, fault_v=more) == max(needed, more)
    assert needed_v(*dc, peak, fault_v=-more) == max(needed, more)


@given(ranges, peaks)
def test_the_need_is_the_reserve_on_the_farthest_voltage(dc: DC, peak: float) -> None:
    farthest = farthest_v(*dc, peak)
    assert farthest in (dc[1] + peak, dc[0] - peak)
    assert abs(farthest) >= max(abs(dc[1] + peak), abs(dc[0] - peak))
    assert needed_v(*dc, peak) == RESERVE * abs(farthest)


@given(ranges, peaks)
def test_the_poles_can_be_exchanged(dc: DC, peak: float) -> None:
    turned = (-dc[1], -dc[0], peak)
    for law in (needed_v, reverse_peak_v, keeps_its_sign):
        assert law(*turned) == law(*dc, peak)
    assert farthest_v(*turned) in (-farthest_v(*dc, peak), farthest_v(*dc, peak))
    assert reverse_v(*turned[:2]) == reverse_v(*dc)


@given(ranges, peaks, wider, wider, wider)
def test_a_wider_range_never_lets_a_polar_part_in(dc: DC, peak: float, below: float, above: float, more: float) -> None:
    wide = (dc[0] - below, dc[1] + above)
    assert 0 <= reverse_v(*dc) <= reverse_v(*wide)
    assert reverse_v(*dc) <= reverse_peak_v(*dc, peak) <= reverse_peak_v(*wide, peak + more)
    assert keeps_its_sign(*wide, peak + more) <= keeps_its_sign(*dc, peak)


@given(ranges, peaks)
def test_a_polar_part_may_stand_where_both_limits_hold(dc: DC, peak: float) -> None:
    """Told from the voltage at each moment: the part is mounted the way that leaves less reversed."""
    moments = [dc[0] - peak, dc[0], dc[1], dc[1] + peak]
    either_way = [[max(-way * v, 0.0) for v in moments] for way in (1, -1)]
    fits = [max(back[1:3]) <= STEADY_REVERSE_V and max(back) <= PEAK_REVERSE_V for back in either_way]
    steady, in_peaks = (min(max(back[a:b]) for back in either_way) for a, b in ((1, 3), (0, 4)))
    assert reverse_v(*dc) == steady
    assert reverse_peak_v(*dc, peak) == in_peaks
    assert keeps_its_sign(*dc, peak) == (steady <= STEADY_REVERSE_V and in_peaks <= PEAK_REVERSE_V)
    assert keeps_its_sign(*dc, peak) == any(fits)


@pytest.mark.parametrize("unknown", range(3))
def test_an_unknown_limits_nothing_and_lets_nothing_in(unknown: int) -> None:
    at = [nan if n == unknown else v for n, v in enumerate((-1.0, 12.0, 0.5))]
    given_v = (at[0], at[1], at[2])
    assert all(isnan(law(*given_v)) for law in (needed_v, farthest_v, reverse_peak_v, keeps_its_sign))
