"""Laws of loss, leakage, impedance and multipliers that need no numbers."""

import cmath
from itertools import pairwise
from math import isnan, nan, nextafter, tau

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as some
from laws.ends_of_tables import COLD, LOSS_V
from laws.inputs import WORDS

from subsearch.errors import UnknownNameError
from subsearch.formulas.bipolar import reverse_limits_v, signal_current_a, signal_heat_w
from subsearch.formulas.impedance import cold_impedance_limit, impedance_ohm, resonance_hz, usual_inductance_henry
from subsearch.formulas.leakage import leakage_limit_a, leakage_rule, power_law_leakage_a
from subsearch.formulas.loss import (
    continuous_tan_delta,
    esr_heat_w,
    esr_ohm,
    quality_factor,
    started_thousands,
    stepped_tan_delta,
)
from subsearch.formulas.loss_limits import LOSS_TABLES, esr_estimate_ohm, esr_limit_ohm, loss_table, tan_delta_limit
from subsearch.formulas.multipliers import axial_multiplier, esr_ratio, radial_multiplier, snap_in_multiplier

capacitances = some.floats(1e-9, 0.2)
volts = some.floats(1, 500)
losses = some.floats(0.01, 0.5)
resistances, inductances = some.floats(1e-3, 100), some.floats(1e-9, 1e-7)
frequencies = some.floats(50, 1e6)
loss_classes = some.sampled_from(WORDS["loss_class"])
leakage_classes = some.sampled_from(WORDS["leakage_class"])
whole_microfarads = some.integers(1, 100_000)


@given(losses, capacitances)
def test_steps_are_never_below_the_proportion_and_less_than_one_step_above(loss: float, capacitance: float) -> None:
    stepped, continuous = stepped_tan_delta(loss, capacitance), continuous_tan_delta(loss, capacitance)
    assert -1e-9 <= stepped - continuous <= 0.02
    assert continuous >= loss


@given(whole_microfarads, some.integers(1, 100))
@example(2000, 7)
def test_thousands_are_counted_as_whole_numbers_are(microfarads: int, parts: int) -> None:
    """However the capacitance was calculated: read as printed, multiplied up, or as a sum of equal parts."""
    expected = max(-(-(microfarads - 1000) // 1000), 0)
    each = microfarads * 1e-6 / parts
    for capacitance in (float(f"{microfarads}e-6"), microfarads * 1e-6, sum([each] * parts)):
        assert started_thousands(capacitance) == expected


@given(loss_classes, volts)
def test_a_rating_between_two_columns_has_the_larger_of_their_limits(kind: str, rated: float) -> None:
    columns = dict(LOSS_TABLES[kind].columns)
    below, above = [v for v in columns if v <= rated], [v for v in columns if v >= rated]
    limit = tan_delta_limit(rated, kind)
    if below and above:
        assert limit == max(columns[max(below)], columns[min(above)])
    else:
        assert isnan(limit)


@pytest.mark.parametrize("kind", WORDS["loss_class"])
def test_each_table_rises_in_voltage_and_ends_where_it_should(kind: str) -> None:
    rated = [v for v, _ in loss_table(kind).columns]
    assert all(low < high for low, high in pairwise(rated))
    assert (rated[0], rated[-1]) == LOSS_V[kind]
    assert isnan(tan_delta_limit(nextafter(rated[0], 0), kind))
    assert isnan(tan_delta_limit(nextafter(rated[-1], 1e9), kind))


@given(loss_classes, some.sampled_from([16.0, 40.0, 160.0, 400.0]), capacitances)
def test_an_estimate_of_resistance_is_never_above_its_limit(kind: str, rated: float, capacitance: float) -> None:
    limit, estimate = (law(rated, capacitance, kind) for law in (esr_limit_ohm, esr_estimate_ohm))
    assert isnan(limit) == isnan(estimate)
    assert isnan(limit) or estimate <= limit * (1 + 1e-9)
    up_to_thousand = esr_ohm(tan_delta_limit(rated, kind), loss_table(kind).frequency_hz, capacitance)
    assert isnan(limit) or limit >= up_to_thousand


@given(leakage_classes, some.floats(1, 1000), some.floats(1, 1000), some.sampled_from([6.3, 50.0, 100.0, 200.0, 450.0]))
def test_a_larger_capacitor_never_has_a_smaller_leakage_limit(
    kind: str, one: float, other: float, rated: float
) -> None:
    small, large = (leakage_limit_a(c * 1e-6, rated, kind) for c in sorted((one, other)))
    assert small <= large or (isnan(small) and isnan(large))
    assert power_law_leakage_a(min(one, other) * 1e-6, rated) <= power_law_leakage_a(max(one, other) * 1e-6, rated)


@given(some.floats(1, 300), volts)
def test_the_later_reading_has_the_smaller_limit(microfarads: float, rated: float) -> None:
    if rated > 100:
        later, sooner = "above 100 V", "above 100 V after 2 minutes"
    else:
        later, sooner = "up to 100 V", "up to 100 V after 1 minute"
    assert leakage_rule(later).after_s > leakage_rule(sooner).after_s
    if rated <= 100 or microfarads * rated > 1000:  # below it the two makers' lines cross
        assert leakage_limit_a(microfarads * 1e-6, rated, later) <= leakage_limit_a(microfarads * 1e-6, rated, sooner)


@given(some.floats(0.01, 5000))
def test_the_break_above_100_v_is_at_1000_microcoulombs(microfarads: float) -> None:
    charge = microfarads * 250
    printed = 0.03 * charge + 15 if charge <= 1000 else 0.02 * charge + 25
    assert leakage_limit_a(microfarads * 1e-6, 250, "above 100 V") == pytest.approx(printed * 1e-6)


@given(resistances, inductances, capacitances, frequencies)
def test_impedance_is_that_of_complex_numbers_and_never_below_the_resistance(
    resistance: float, inductance: float, capacitance: float, frequency: float
) -> None:
    circular = tau * frequency
    by_complex = abs(resistance + 1j * circular * inductance + 1 / (1j * circular * capacitance))
    impedance = impedance_ohm(resistance, inductance, capacitance, frequency)
    assert impedance == pytest.approx(by_complex, rel=1e-9)
    assert impedance >= resistance * (1 - 1e-12)


@given(resistances, inductances, capacitances)
def test_at_resonance_only_the_resistance_is_left(resistance: float, inductance: float, capacitance: float) -> None:
    frequency = resonance_hz(inductance, capacitance)
    at, below, above = (impedance_ohm(resistance, inductance, capacitance, frequency * times) for times in (1, 0.5, 2))
    assert at == pytest.approx(resistance, rel=1e-9)
    assert below == pytest.approx(above, rel=1e-6)
    assert below > at


@given(some.floats(8, 18), some.floats(8, 18))
def test_a_larger_can_never_has_a_smaller_inductance(one: float, other: float) -> None:
    assert usual_inductance_henry(min(one, other)) <= usual_inductance_henry(max(one, other))


@given(some.floats(6.3, 100), some.floats(6.3, 100), capacitances)
def test_colder_or_larger_or_of_lower_voltage_never_has_a_smaller_cold_limit(
    one: float, other: float, capacitance: float
) -> None:
    low, high = sorted((one, other))
    for kind in COLD:
        assert cold_impedance_limit(low, capacitance, kind) >= cold_impedance_limit(high, capacitance, kind) >= 2
    for kind in ("standard", "bipolar"):
        cool, cold = (cold_impedance_limit(low, capacitance, f"{kind} 85 °C at {at} °C") for at in (-25, -40))
        assert cold > cool


@given(frequencies, frequencies, some.sampled_from([6.3, 16.0, 25.0, 40.0, 63.0, 100.0, 160.0, 400.0]), capacitances)
def test_multipliers_rise_with_frequency_and_stay_from_ten_kilohertz(
    one: float, other: float, rated: float, capacitance: float
) -> None:
    def law(frequency: float) -> list[float]:
        european = [axial_multiplier(frequency, rated), snap_in_multiplier(frequency, rated)]
        return [*european, radial_multiplier(frequency, rated, capacitance)]

    for low, high in zip(law(min(one, other)), law(max(one, other)), strict=True):
        assert isnan(low) or low <= high + 1e-12
    np.testing.assert_array_equal(law(1e4), law(3e5))
    assert all(isnan(found) or found == pytest.approx(1) for found in law(100)[:2] + law(120)[2:])
    assert all(isnan(found) or found < 0.97 for found in law(50)[:2] + law(60)[2:])
    assert all(isnan(found) or abs(found - 1) > 0.005 for found in law(120)[:2] + law(100)[2:]), "100 is not 120 Hz"
    assert all(map(isnan, law(nextafter(50, 0))))


@given(some.floats(100, 10_000), some.sampled_from([16.0, 40.0, 100.0]))
def test_multipliers_go_straight_over_the_logarithm(frequency: float, rated: float) -> None:
    printed = np.array([100, 300, 1000, 3000, 10_000])
    at_printed = [axial_multiplier(float(one), rated) for one in printed]
    expected = np.interp(np.log2(frequency), np.log2(printed), at_printed)
    assert axial_multiplier(frequency, rated) == pytest.approx(expected, rel=1e-9)


@given(some.floats(0.5, 2))
def test_equal_heat_at_both_frequencies(multiplier: float) -> None:
    assert multiplier**2 * esr_ratio(multiplier) == pytest.approx(1)


@given(some.floats(0.01, 100), some.floats(10, 20_000), capacitances, some.floats(0.001, 0.1))
def test_the_heat_of_a_signal_is_that_of_its_resistance(
    voltage: float, frequency: float, capacitance: float, loss: float
) -> None:
    current = signal_current_a(voltage, frequency, capacitance)
    resistance = esr_ohm(loss, frequency, capacitance)
    assert signal_heat_w(voltage, current, loss) == pytest.approx(current**2 * resistance, rel=1e-9)
    exact = voltage / (resistance + 1 / (2j * cmath.pi * frequency * capacitance))
    assert abs(exact) == pytest.approx(current, rel=0.006)


@given(some.floats(-1e3, 0), some.floats(1e-9, 500), leakage_classes)
def test_where_an_input_is_not_above_0_nothing_is_known(wrong: float, right: float, kind: str) -> None:
    for law in (power_law_leakage_a, resonance_hz, lambda c, v: leakage_limit_a(c, v, kind)):
        for inputs in ((wrong, right), (right, wrong), (wrong, wrong)):
            assert isnan(law(*inputs))


@given(losses, some.floats(0, 50), frequencies, capacitances)
def test_heat_is_what_voltage_current_and_quality_say(
    loss: float, current: float, frequency: float, capacitance: float
) -> None:
    reactance = 1 / (tau * frequency * capacitance)
    heat = esr_heat_w(current, esr_ohm(loss, frequency, capacitance))
    assert heat == pytest.approx(current**2 * reactance / quality_factor(loss), rel=1e-9)


def test_unknown_in_is_unknown_out_and_words_are_checked() -> None:
    assert isnan(tan_delta_limit(nan, "standard 85 °C"))
    assert isnan(leakage_limit_a(nan, 25, "up to 100 V"))
    with pytest.raises(UnknownNameError, match=r'not a class of loss limits\. Did you mean "standard 85 °C"'):
        loss_table("standart 85 °C")
    with pytest.raises(UnknownNameError, match=r'not a class of leakage limits\. Did you mean "up to 100 V"'):
        leakage_rule("up to 100V")
    with pytest.raises(UnknownNameError, match=r"not a class of cold limits\. Did you mean"):
        cold_impedance_limit(16, 1e-6, "standard 85 °C at -24 °C")
    with pytest.raises(UnknownNameError, match=r'not a case of reverse voltage\. Did you mean "at most"'):
        reverse_limits_v("at mots")
