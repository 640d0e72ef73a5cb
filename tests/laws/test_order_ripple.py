"""Ripple, case and span, whatever the numbers are: more ripple never lasts longer, and no law lies outside the span."""

from collections.abc import Callable
from math import isnan, nan
from typing import Any

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError, one_of
from subsearch.formulas import ends_of_life
from subsearch.formulas.arrhenius import arrhenius_life_h
from subsearch.formulas.case_rise import can_surface_cm2, core_ratio, core_rise_k, heat_transfer, surface_rise_k
from subsearch.formulas.conventions import (
    BASES,
    CONVENTIONS,
    ENDURANCE,
    REFERENCES,
    WITH_RIPPLE,
    Convention,
    conventions_for,
    with_ripple_inside,
)
from subsearch.formulas.ends_of_life import ENDS_OF_LIFE, end_of_life
from subsearch.formulas.life import life_h, life_with_ripple_h, rise_k
from subsearch.formulas.life_span import (
    least_factor_with_ripple,
    least_factor_without_ripple,
    longest_at_case_h,
    longest_cool_h,
    longest_polymer_h,
    most_factor_with_ripple,
    most_factor_without_ripple,
    shortest_cool_h,
    shortest_polymer_h,
)
from subsearch.formulas.ripple import (
    RATED_RISE_RANGES_K,
    RATED_RISES_K,
    RIPPLE_COEFFICIENTS,
    at_rated_frequency_a,
    bending_ripple_life_h,
    equivalent_ripple_a,
    rated_rise_by_kind_k,
    ripple_coefficient,
    steeper_ripple_life_h,
)
from subsearch.formulas.sources import SOURCES, keys_in

lives, classes = some.floats(100, 200_000), some.sampled_from([85.0, 105.0, 125.0])
temperatures = some.floats(0, 130)
rises, rated_rises = some.floats(0, 80), some.floats(1, 12)
currents = some.floats(0, 10)
multipliers = some.floats(0.5, 2)
by_name = {one.name: one for one in CONVENTIONS}


def about(number: float) -> Any:
    return pytest.approx(number, rel=1e-9, abs=1e-300)


@pytest.mark.parametrize("convention", CONVENTIONS, ids=[one.name for one in CONVENTIONS])
@given(lives, classes, temperatures, temperatures, rises, rises, rated_rises)
def test_hotter_and_more_ripple_never_last_longer(
    convention: Convention, base: float, rated: float, t1: float, t2: float, r1: float, r2: float, rated_rise: float
) -> None:
    cool, hot, low, high = *sorted((t1, t2)), *sorted((r1, r2))
    longest = convention.law(base, rated, cool, low, rated_rise)
    assert longest >= convention.law(base, rated, hot, low, rated_rise)
    assert longest >= convention.law(base, rated, cool, high, rated_rise) >= 0


@given(lives, classes, rated_rises)
def test_a_base_life_holds_where_it_was_run(base: float, rated: float, rated_rise: float) -> None:
    for one in CONVENTIONS:
        run_at = rated_rise if one.with_ripple and one.reference == "ambient" else 0.0
        expected = 2 * base if one.name == "at the case, 10 degrees allowed" else base
        assert one.law(base, rated, rated, run_at, rated_rise) == about(expected)


@pytest.mark.parametrize("missing", range(5))
def test_a_convention_is_unknown_where_its_inputs_are(missing: int) -> None:
    numbers = [2000.0, 105.0, 60.0, 4.0, 5.0]
    numbers[missing] = nan
    for one in CONVENTIONS:
        needs_rated_rise = one.name in (
            "rise beyond the rated one",
            "whole rise",
            "steeper above the rated current",
            "bending",
        )
        if missing < 4 or needs_rated_rise:
            assert isnan(one.law(*numbers)), one.name


@given(lives, currents, some.floats(0.1, 5), rated_rises)
def test_the_steeper_law_is_the_factor_form(life: float, ripple: float, rated_ripple: float, rated_rise: float) -> None:
    """Against the printed form: Ki ** ((1 - (I/I0)²) dT0 / 10)."""
    rise = rise_k(rated_rise, ripple, rated_ripple)
    for rated_c, above in ((85.0, 2), (105.0, 4)):
        base = above if ripple > rated_ripple else 2
        expected = life * base ** ((1 - (ripple / rated_ripple) ** 2) * rated_rise / 10)
        assert steeper_ripple_life_h(life, rise, rated_rise, rated_c) == pytest.approx(expected, rel=1e-6, abs=1e-9)
    assert steeper_ripple_life_h(life, rise, rated_rise, 125) == steeper_ripple_life_h(life, rise, rated_rise, 105)
    assert steeper_ripple_life_h(life, rise, rated_rise, 85) == life_with_ripple_h(life, rise, rated_rise, 1.0)


@given(rises)
def test_the_bending_law_leaves_nothing_at_its_end(rise: float) -> None:
    factor = bending_ripple_life_h(1.0, rise, 5.0)
    if rise < 39:
        assert factor == about(2 ** (5 / 8.75 - rise / (10 - rise / 4)))
    else:
        assert 0 < factor < 1e-40


@given(lives, classes, temperatures, rises, rated_rises)
@example(1000.0, 105.0, 65.0, 20.0, 5.0)
@example(1000.0, 105.0, 65.0, 20.0, 10.0)
def test_the_span_is_what_trying_every_law_finds(
    base: float, rated: float, working: float, rise: float, rated_rise: float
) -> None:
    cool = [life_h(base, rated, working), arrhenius_life_h(base, rated, working, 0.94)]
    assert (min(cool), max(cool)) == (shortest_cool_h(base, rated, working), longest_cool_h(base, rated, working))
    for basis, least, most in (
        ("load life", least_factor_with_ripple(rise, rated_rise, rated), most_factor_with_ripple(rise, rated_rise)),
        ("endurance", least_factor_without_ripple(rise), most_factor_without_ripple(rise)),
    ):
        factors = [one.law(1.0, rated, rated, rise, rated_rise) for one in conventions_for(basis, "ambient")]
        assert (about(min(factors)), about(max(factors))) == (least, most)


@given(lives, classes, temperatures, rises)
def test_the_span_at_the_case_is_what_trying_every_law_finds(
    base: float, rated: float, working: float, rise: float
) -> None:
    case = working + rise
    every = [one.law(base, rated, working, rise, nan) for one in conventions_for("load life", "case")]
    every.append(arrhenius_life_h(base, rated, case, 0.94))
    assert min(every) == shortest_cool_h(base, rated, case)
    assert max(every) == longest_at_case_h(base, rated, case)


@given(lives, classes, temperatures)
def test_the_two_polymer_laws_change_places_at_the_rated_temperature(base: float, rated: float, core: float) -> None:
    by_ten, by_twenty = base * 2 ** ((rated - core) / 10), base * 10 ** ((rated - core) / 20)
    assert shortest_polymer_h(base, rated, core) == about(by_ten if core < rated else by_twenty)
    assert longest_polymer_h(base, rated, core) == about(by_twenty if core < rated else by_ten)


def test_conventions_fit_what_a_maker_says() -> None:
    for basis in (*BASES, None):
        for reference in (*REFERENCES, None):
            found = conventions_for(basis, reference)
            assert {one.reference for one in found} == {reference or "ambient"}
            if reference != "case":
                assert {one.with_ripple for one in found} == {basis in WITH_RIPPLE}
            assert with_ripple_inside(basis, reference) == (basis in WITH_RIPPLE and reference != "case")
    assert conventions_for(None, "case") == conventions_for(ENDURANCE, "case") == (by_name["at the case"],)
    assert conventions_for("useful life", "case")[1].name == "at the case, 10 degrees allowed"
    assert {one.source for one in CONVENTIONS} <= SOURCES.keys()
    assert len(by_name) == len(CONVENTIONS) == 7


@given(some.lists(some.tuples(currents, multipliers), max_size=6))
def test_tones_add_like_heat(tones: list[tuple[float, float]]) -> None:
    ripples, factors = [ripple for ripple, _ in tones], [factor for _, factor in tones]
    together = equivalent_ripple_a(ripples, factors)
    heat = sum((ripple / factor) ** 2 for ripple, factor in tones)
    assert together**2 == pytest.approx(heat, abs=1e-12)
    assert all(together >= at_rated_frequency_a(*tone) * (1 - 1e-12) - 1e-12 for tone in tones)
    assert together == pytest.approx(equivalent_ripple_a(ripples[::-1], factors[::-1]))


def test_tones_that_are_unknown_or_nonsense() -> None:
    assert isnan(equivalent_ripple_a([1.0, nan], [1.0, 1.0]))
    assert isnan(equivalent_ripple_a([1.0, 1.0], [nan, 1.0]))
    assert equivalent_ripple_a([], []) == 0
    with pytest.raises(RequirementError) as caught:
        equivalent_ripple_a([1.0], [1.0, 2.0])
    assert str(caught.value) == (
        "There are 1 ripple currents and 2 multipliers, but each current needs its own. "
        "Give as many of both; 1 stands for the rated frequency."
    )
    with pytest.raises(RequirementError) as caught:
        equivalent_ripple_a([1.0, 1.0], [1.0, 0.0])
    assert str(caught.value) == "A frequency multiplier is 0, but it must be above 0. Take it from the part's table."


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (
            lambda: rated_rise_by_kind_k("usal"),
            '"usal" is not a kind of capacitor. Did you mean "usual"? '
            "Allowed are usual, 85 °C low-cost or one very small type.",
        ),
        (
            lambda: ripple_coefficient(60, "105 °Celsius"),
            '"105 °Celsius" is not a class of capacitors. Did you mean "105 °C"? '
            "Allowed are 85 °C low-cost, 85 °C or 105 °C.",
        ),
        (
            lambda: conventions_for("load", None),
            '"load" is not a meaning of a stated life. Did you mean "load life"? '
            "Allowed are endurance, load life or useful life.",
        ),
        (
            lambda: with_ripple_inside("load life", "core"),
            '"core" is not a place where a temperature is taken. Did you mean "case"? Allowed are ambient or case.',
        ),
        (
            lambda: end_of_life("lod life"),
            '"lod life" is not a kind of life with a published end. Did you mean "load life"? '
            f"Allowed are {one_of(ENDS_OF_LIFE)}.",
        ),
    ],
)
def test_words_that_are_none_of_ours(ask: Callable[[], object], sentence: str) -> None:
    with pytest.raises(UnknownNameError) as caught:
        ask()
    assert str(caught.value) == sentence


def test_every_end_of_life_names_its_source() -> None:
    sources = {end.source for end in ENDS_OF_LIFE.values()}
    assert sources <= SOURCES.keys()
    assert sources <= keys_in(ends_of_life)


def test_printed_rises_lie_in_the_other_source_s_ranges() -> None:
    low = min(least for _, least, _ in RATED_RISE_RANGES_K)
    high = max(most for _, _, most in RATED_RISE_RANGES_K)
    assert all(low <= rise <= high for rise in RATED_RISES_K.values())
    assert RATED_RISE_RANGES_K == ((85.0, 3.5, 10.0), (105.0, 3.5, 5.0))


@pytest.mark.parametrize("ripple_class", RIPPLE_COEFFICIENTS)
@given(temperatures, temperatures)
def test_hotter_never_allows_more_ripple(ripple_class: str, one: float, other: float) -> None:
    top = RIPPLE_COEFFICIENTS[ripple_class][-1][0]
    cool, hot = (ripple_coefficient(t, ripple_class) for t in sorted((min(one, top), min(other, top))))
    assert cool >= hot >= 1
    assert isnan(ripple_coefficient(top + 0.001, ripple_class))


@given(currents, some.floats(0.01, 5), some.floats(4, 35), some.floats(4, 35), some.floats(5, 60))
def test_a_larger_can_is_never_warmer_on_its_surface(
    ripple: float, esr: float, one: float, other: float, tall: float
) -> None:
    small, large = sorted((one, other))
    warm, cool = (surface_rise_k(ripple, esr, can_surface_cm2(size, tall)) for size in (small, large))
    assert warm >= cool >= 0
    assert core_ratio(small) <= core_ratio(large)
    assert core_rise_k(40 + warm, 40, core_ratio(small)) >= warm * (1 - 1e-9) - 1e-9


@pytest.mark.parametrize("size", [0.0, -0.001, -5.0, np.array([0.0, -5.0])])
def test_a_can_of_no_size_has_no_surface_and_no_rise(size: Any) -> None:
    for found in (
        core_ratio(size),
        can_surface_cm2(size, 20.0),
        can_surface_cm2(10.0, size),
        heat_transfer(size),
        surface_rise_k(1.0, 0.1, size),
        surface_rise_k(1.0, 0.1, can_surface_cm2(size, size)),
    ):
        assert np.isnan(found).all()
