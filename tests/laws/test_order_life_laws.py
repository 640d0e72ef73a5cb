"""Life by other laws than the ten-degree rule, whatever the numbers are: hotter and more volts never last longer."""

from collections.abc import Callable
from functools import partial
from math import isnan, nan
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas.arrhenius import acceleration, arrhenius_life_h, ten_degree_c, ten_degree_ev
from subsearch.formulas.film import film_life_h, film_voltage_v
from subsearch.formulas.life import life_h
from subsearch.formulas.polymer import tenfold_life_h, twofold_life_h
from subsearch.formulas.profile import equivalent_c, mixed_life_h, profile_c
from subsearch.formulas.voltage_factor import BUILDS, voltage_factor, voltage_linear_factor, voltage_power_factor

temperatures = some.floats(-40, 150)
lives = some.floats(100, 200_000)
energies = some.floats(0.2, 1.4)
exponents = some.floats(1, 14)
volts = some.floats(0.1, 600)
profiles = some.lists(some.tuples(some.floats(0.01, 1e5), temperatures), min_size=1, max_size=8)


@given(lives, temperatures, temperatures, temperatures, energies)
def test_hotter_never_lasts_longer(base: float, rated: float, one: float, other: float, energy: float) -> None:
    cool, hot = sorted((one, other))
    assert arrhenius_life_h(base, rated, hot, energy) <= arrhenius_life_h(base, rated, cool, energy)
    for law in (tenfold_life_h, twofold_life_h):
        assert law(base, rated, hot) <= law(base, rated, cool)
        assert law(base, rated, rated) == base
    assert film_life_h(base, 63, 40, rated, hot, 7, 8) <= film_life_h(base, 63, 40, rated, cool, 7, 8)
    assert 0 <= film_voltage_v(63, hot, 85, 1.25) <= film_voltage_v(63, cool, 85, 1.25) <= 63


@given(lives, temperatures, temperatures)
def test_polymer_laws_lie_on_either_side_of_each_other(base: float, rated: float, working: float) -> None:
    hopeful, careful = tenfold_life_h(base, rated, working), twofold_life_h(base, rated, working)
    assert (hopeful >= careful) if working <= rated else (hopeful <= careful)


@given(energies, temperatures, temperatures, temperatures)
def test_accelerations_follow_one_another(energy: float, one: float, two: float, three: float) -> None:
    through = acceleration(energy, one, two) * acceleration(energy, two, three)
    assert acceleration(energy, one, three) == pytest.approx(through)
    assert acceleration(energy, one, one) == 1


@given(temperatures, temperatures)
def test_at_its_energy_the_rule_is_the_law(use: float, test: float) -> None:
    assert arrhenius_life_h(1000, test, use, ten_degree_ev(use, test)) == pytest.approx(life_h(1000, test, use))
    assert ten_degree_c(ten_degree_ev(use - 5, use + 5)) == pytest.approx(use, abs=1e-9)


@given(lives, volts, volts, volts, exponents)
def test_more_volts_never_last_longer(base: float, rated: float, one: float, other: float, exponent: float) -> None:
    low, high = sorted((one, other))
    assert film_life_h(base, rated, high, 85, 60, exponent) <= film_life_h(base, rated, low, 85, 60, exponent)
    laws: list[Callable[[float, float], float]] = [voltage_power_factor, voltage_linear_factor]
    laws.extend(partial(voltage_factor, build) for build in BUILDS)
    for law in laws:
        if low > rated:
            assert isnan(law(rated, low))
        if high <= rated:
            assert 1 - 1e-9 <= law(rated, high) <= law(rated, low)
        assert law(rated, rated) == pytest.approx(1)
        assert isnan(law(rated, -low))


@given(profiles)
def test_an_equivalent_temperature_lies_inside_its_profile(profile: list[tuple[float, float]]) -> None:
    hours, at = zip(*profile, strict=True)
    mean = sum(h * t for h, t in profile) / sum(hours)
    equivalent = profile_c(hours, at)
    assert min(at) - 1e-9 <= equivalent <= max(at) + 1e-9
    assert equivalent >= mean - 1e-9  # Jensen: the law is convex


@given(profiles, some.randoms(use_true_random=False))
def test_the_order_of_the_entries_never_matters(profile: list[tuple[float, float]], r: Random) -> None:
    mixed = profile.copy()
    r.shuffle(mixed)
    one, other = (list(zip(*entries, strict=True)) for entries in (profile, mixed))
    assert profile_c(*one) == profile_c(*other)
    assert mixed_life_h(one[0], [life_h(1000, 105, t) for t in one[1]]) == mixed_life_h(
        other[0], [life_h(1000, 105, t) for t in other[1]]
    )


@given(some.lists(some.floats(0.01, 1e5), min_size=1, max_size=8), temperatures)
def test_a_profile_of_one_temperature_is_that_temperature(hours: list[float], at: float) -> None:
    assert profile_c(hours, [at] * len(hours)) == pytest.approx(at, abs=1e-9)


@given(profiles, lives, temperatures)
def test_both_roads_to_a_life_agree(profile: list[tuple[float, float]], base: float, rated: float) -> None:
    """The sum of wear, entry by entry, and the life at the equivalent temperature."""
    hours, at = zip(*profile, strict=True)
    mixed = mixed_life_h(hours, [life_h(base, rated, t) for t in at])
    assert mixed == pytest.approx(life_h(base, rated, profile_c(hours, at)))
    assert equivalent_c(base, rated, mixed) == pytest.approx(profile_c(hours, at), abs=1e-9)


@given(profiles, some.floats(0.001, 1000))
def test_only_the_proportion_of_the_hours_matters(profile: list[tuple[float, float]], times: float) -> None:
    hours, at = zip(*profile, strict=True)
    assert profile_c([h * times for h in hours], at) == pytest.approx(profile_c(hours, at), abs=1e-9)
    assert profile_c([*hours, 0], [*at, 500]) == pytest.approx(profile_c(hours, at), abs=1e-9)


@pytest.mark.parametrize("spoilt", [0, 1, 2])
def test_an_unknown_entry_leaves_the_profile_unknown(spoilt: int) -> None:
    hours, at = [8.0, 8.0, 8.0], [45.0, 65.0, 55.0]
    unknown = [nan if i == spoilt else 8.0 for i in range(3)]
    assert isnan(profile_c(unknown, at)) and isnan(mixed_life_h(unknown, at))
    assert isnan(profile_c(hours, unknown)) and isnan(mixed_life_h(hours, unknown))


@pytest.mark.parametrize(
    ("hours", "entries", "sentence"),
    [
        ([], [], "The profile is empty, so nothing wears the part. Give at least one entry."),
        ([8, 8], [45], "The profile has 2 hours but 1 temperatures or lives. Give as many of both."),
        ([8, -1], [45, 55], "The profile has -1 h, but hours must be 0 or more and finite. Correct it."),
        ([float("inf")], [45], "The profile has inf h, but hours must be 0 or more and finite. Correct it."),
        ([0, 0], [45, 55], "The profile has 0 h in all, so nothing wears the part. Give hours above 0."),
    ],
)
def test_hours_that_wear_nothing_are_refused(hours: list[float], entries: list[float], sentence: str) -> None:
    for law in (profile_c, mixed_life_h):
        with pytest.raises(RequirementError) as caught:
            law(hours, entries)
        assert str(caught.value) == sentence


@pytest.mark.parametrize("life", [0, -5, float("inf")])
def test_lives_that_wear_nothing_are_refused(life: float) -> None:
    with pytest.raises(RequirementError) as caught:
        mixed_life_h([8, 8], [1000, life])
    assert str(caught.value) == f"A life in the profile is {life} h, but must be above 0 and finite. Correct it."


def test_an_unknown_build_names_the_nearest() -> None:
    with pytest.raises(UnknownNameError) as caught:
        voltage_factor("snap in", 63, 40)
    allowed = "SMD, radial, snap-in, block, axial or screw"
    assert str(caught.value) == f'"snap in" is not a build. Did you mean "snap-in"? Allowed are {allowed}.'
