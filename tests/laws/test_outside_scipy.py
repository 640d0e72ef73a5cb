"""The ripple of a reservoir against a library's root finder and its simulation of the circuit, neither of them ours."""

from itertools import product
from math import isnan, nan, pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from subsearch.errors import RequirementError
from subsearch.formulas.reservoir import rectified_hz, ripple_most_v, true_ripple

LOADS, MAINS, RESERVOIRS, PEAKS = (0.05, 0.5, 2.0), (50.0, 60.0), (470e-6, 2200e-6, 10_000e-6), (9.0, 24.0, 60.0)
GRID = list(product(LOADS, MAINS, RESERVOIRS, PEAKS, (0, 1)))
SIMULATED = [
    (0.1, 50.0, 470e-6, 24.0),
    (1.0, 50.0, 4700e-6, 20.0),
    (0.5, 60.0, 1000e-6, 15.0),
    (0.3, 50.0, 470e-6, 9.0),
]
SOURCE_OHM = 1e-3  # of the simulated rectifier, which needs some resistance


def rectified(t: float, mains: float, peak: float, full_wave: int) -> float:
    sine = peak * np.sin(2 * pi * mains * t)
    return float(abs(sine) if full_wave else max(sine, 0.0))


def by_root(load: float, mains: float, farad: float, peak: float, full_wave: int) -> float:
    """In seconds: where the straight line meets the next half wave."""
    top, following = 0.25 / mains, (0.75 if full_wave else 1.25) / mains
    steepest = 2 * pi * mains * peak
    if load / farad >= steepest:
        return peak
    leaves = brentq(lambda t: steepest * np.cos(2 * pi * mains * t) + load / farad, top, top + 0.25 / mains, xtol=1e-18)
    held = rectified(leaves, mains, peak, full_wave)

    def line(t: float) -> float:
        return float(held - load / farad * (t - leaves))

    begins = following - 0.25 / mains
    if line(begins) <= 0:
        return peak
    meets = brentq(lambda t: line(t) - rectified(t, mains, peak, full_wave), begins, following, xtol=1e-18)
    return float(peak - line(meets))


def by_simulation(load: float, mains: float, farad: float, peak: float, full_wave: int) -> float:
    """Three periods of a rectifier with a little resistance; the swing over the last."""

    def change(t: float, v: np.typing.NDArray[np.float64]) -> list[float]:
        charging = max(rectified(t, mains, peak, full_wave) - v[0], 0.0) / SOURCE_OHM
        return [(charging - load) / farad if v[0] > 0 or charging > load else 0.0]

    end = 3 / mains
    last = np.linspace(end - 1 / mains, end, 4001)
    run = solve_ivp(change, (0, end), [peak], "LSODA", t_eval=last, max_step=2e-5, rtol=1e-8, atol=1e-8)
    assert run.success
    return float(np.ptp(run.y[0]))


@pytest.mark.parametrize(("load", "mains", "farad", "peak", "full_wave"), GRID)
def test_the_valley_is_where_a_root_finder_puts_it(
    load: float, mains: float, farad: float, peak: float, full_wave: int
) -> None:
    found = true_ripple(load, mains, farad, peak, full_wave)
    assert found.ripple_v == pytest.approx(by_root(load, mains, farad, peak, full_wave), rel=1e-7)
    assert found.times == found.closed_form_v / found.ripple_v


@pytest.mark.parametrize("full_wave", [0, 1])
@pytest.mark.parametrize("circuit", SIMULATED)
def test_a_simulated_rectifier_ripples_as_much(circuit: tuple[float, float, float, float], full_wave: int) -> None:
    assert true_ripple(*circuit, full_wave).ripple_v == pytest.approx(by_simulation(*circuit, full_wave), rel=0.01)


@given(
    some.floats(1e-4, 20),
    some.sampled_from(MAINS),
    some.floats(1e-5, 1),
    some.floats(3, 500),
    some.sampled_from([0, 1]),
)
def test_the_closed_form_is_never_below(load: float, mains: float, farad: float, peak: float, full_wave: int) -> None:
    found = true_ripple(load, mains, farad, peak, full_wave)
    assert 0 < found.ripple_v <= peak
    assert found.ripple_v <= found.closed_form_v * (1 + 1e-12)
    assert found.closed_form_v == ripple_most_v(load, rectified_hz(mains, full_wave), farad)
    assert true_ripple(load, mains, 2 * farad, peak, full_wave).ripple_v <= found.ripple_v
    assert true_ripple(2 * load, mains, farad, peak, full_wave).ripple_v >= found.ripple_v


def test_the_closed_form_is_right_for_a_large_reservoir() -> None:
    for full_wave in (0, 1):
        times = [true_ripple(1, 50, farad, 20, full_wave).times for farad in (1e-3, 1e-1, 10, 1e3, 1e5)]
        assert times == sorted(times, reverse=True)
        assert 1 < times[-1] < 1.001
    assert true_ripple(0, 50, 1e-3, 20).times == 1


def test_an_unknown_leaves_the_ripple_unknown() -> None:
    sound = [1.0, 50.0, 1e-3, 20.0, 1.0]
    for at in range(5):
        spoilt = [*sound[:at], nan, *sound[at + 1 :]]
        assert all(map(isnan, vars(true_ripple(*spoilt)).values()))


@pytest.mark.parametrize(
    ("question", "sentence"),
    [
        ((1, 0, 1e-3, 20), "The mains frequency is 0, but must be above 0. Correct it."),
        ((1, 50, -1e-3, 20), "The capacitance is -0.001, but must be above 0. Correct it."),
        ((1, 50, 1e-3, float("inf")), "The peak voltage is inf, but must be above 0. Correct it."),
        ((-1, 50, 1e-3, 20), "The load current is -1 A, but must be 0 or above. Give it without its sign."),
        ((1, 50, 1e-3, 20, 2), "full_wave is 2, but 1 is full wave and 0 half wave. Give one of them."),
    ],
)
def test_what_is_no_circuit_is_refused(question: tuple[float, ...], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        true_ripple(*question)
    assert str(caught.value) == sentence
