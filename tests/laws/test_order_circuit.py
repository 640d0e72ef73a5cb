"""What must hold of capacitors in a circuit whatever the numbers are; the nearest pair against trying all pairs."""

import random
from fractions import Fraction
from math import isnan, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas import combining, coupling, discharge, pair_tolerance, sharing
from subsearch.formulas.pairs import WAYS_TO_JOIN, ValuePair, nearest_pair, parallel_partner_f, series_partner_f
from subsearch.formulas.reservoir import reservoir_f, ripple_most_v

resistances, capacitances = some.floats(0.1, 1e7), some.floats(1e-12, 1)
volts, currents, percent = some.floats(0, 1_000), some.floats(0, 1), some.floats(-90, 200)
pieces = some.integers(1, 50)
E6 = ("10", "15", "22", "33", "47", "68")
E24 = (*E6, *"11 12 13 16 18 20 24 27 30 36 39 43 51 56 62 75 82 91".split())  # noqa: SIM905
AWAY = 1 + 1e-12


@given(capacitances, capacitances)
def test_parallel_is_never_smaller_and_series_never_larger_than_either(one: float, other: float) -> None:
    assert combining.parallel_f(one, other) >= max(one, other)
    assert combining.series_f(one, other) <= min(one, other) * AWAY
    assert combining.series_f(one, other) >= min(one, other) / 2 / AWAY
    assert combining.back_to_back_f(one) == pytest.approx(combining.series_f(one, one))
    assert combining.back_to_back_f(combining.each_back_to_back_f(one)) == one


@given(capacitances, pieces)
def test_n_equal_ones_are_one_after_the_other(one: float, n: int) -> None:
    together = apart = one
    for _ in range(n - 1):
        together, apart = combining.parallel_f(together, one), combining.series_f(apart, one)
    assert combining.equal_parallel_f(one, n) == pytest.approx(together)
    assert combining.equal_series_f(one, n) == pytest.approx(apart)


@given(volts, capacitances, capacitances, resistances, currents, currents)
def test_shares_add_up_to_the_whole(v: float, one: float, other: float, r: float, a: float, b: float) -> None:
    for share, x, y in (
        (sharing.initial_share_v, one, other),
        (sharing.steady_share_v, one, other),
        (lambda whole, x, y: sharing.share_balanced_v(whole, r, x, y), a, b),
    ):
        parts = share(v, x, y), share(v, y, x)
        assert sum(parts) == pytest.approx(v, rel=1e-9, abs=1e-9 * r)
    small, large = sorted((one, other))
    assert sharing.initial_share_v(v, small, large) >= sharing.initial_share_v(v, large, small)
    assert sharing.steady_share_v(v, large, small) >= sharing.steady_share_v(v, small, large)
    assert sharing.share_balanced_v(v, r, min(a, b), max(a, b)) >= v / 2  # less leakage, larger share


@given(capacitances, some.floats(1, 500), capacitances, some.floats(1, 500))
def test_a_pair_withstands_what_brings_one_share_to_its_rating(c1: float, v1: float, c2: float, v2: float) -> None:
    for withstands, share in (
        (sharing.initial_pair_v, sharing.initial_share_v),
        (sharing.steady_pair_v, sharing.steady_share_v),
    ):
        whole = withstands(c1, v1, c2, v2)
        used = [share(whole, c1, c2) / v1, share(whole, c2, c1) / v2]
        assert max(used) == pytest.approx(1)
    assert combining.back_to_back_v(v1, v2) == combining.parallel_v(v1, v2) == min(v1, v2)


@given(some.floats(10, 500), some.floats(0, 0.99), some.floats(1e-6, 1e-2))
def test_the_largest_balancing_resistor_just_keeps_the_rating(rated: float, part: float, differ: float) -> None:
    whole = 2 * rated * part
    resistor = sharing.largest_balancing_ohm(rated, whole, differ)
    assert sharing.share_balanced_v(whole, resistor, 0, differ) == pytest.approx(rated)


@given(capacitances, percent, capacitances, percent)
def test_a_pair_is_off_as_its_parts_are_and_never_more_than_the_worse(
    c1: float, p1: float, c2: float, p2: float
) -> None:
    now = [c * (1 + p / 100) for c, p in ((c1, p1), (c2, p2))]
    for off, join in (
        (pair_tolerance.parallel_pct, combining.parallel_f),
        (pair_tolerance.series_pct, combining.series_f),
    ):
        made = off(c1, p1, c2, p2)
        assert join(c1, c2) * (1 + made / 100) == pytest.approx(join(*now))
        assert min(p1, p2) - 1e-6 <= made <= max(p1, p2) + 1e-6


@pytest.mark.parametrize(("c1", "s1", "c2", "s2"), [(10, 2, 10, 2), (10, 3, 30, 1), (47, 1, 10, 4)])
def test_chance_is_what_drawing_many_pairs_finds(c1: float, s1: float, c2: float, s2: float) -> None:
    r = random.Random(3)
    drawn = [(c1 * r.gauss(1, s1 / 100), c2 * r.gauss(1, s2 / 100)) for _ in range(40_000)]
    for sigma, join in (
        (pair_tolerance.parallel_sigma_pct, combining.parallel_f),
        (pair_tolerance.series_sigma_pct, combining.series_f),
    ):
        values = [100 * join(*pair) / join(c1, c2) for pair in drawn]
        mean = sum(values) / len(values)
        found = (sum((v - mean) ** 2 for v in values) / len(values)) ** 0.5
        assert sigma(c1, s1, c2, s2) == pytest.approx(found, rel=0.02)


@given(some.floats(0.1, 30), capacitances, pieces)
def test_more_pieces_never_scatter_more(sigma: float, c: float, n: int) -> None:
    assert pair_tolerance.equal_sigma_pct(sigma, n + 1) < pair_tolerance.equal_sigma_pct(sigma, n) <= sigma
    for law in (pair_tolerance.parallel_sigma_pct, pair_tolerance.series_sigma_pct):
        assert law(c, sigma, c, sigma) == pytest.approx(pair_tolerance.equal_sigma_pct(sigma, 2))


@given(some.lists(some.floats(1, 1e6), min_size=1, max_size=9))
def test_a_set_lasts_as_long_as_its_shortest_lived_part(lives: list[float]) -> None:
    assert combining.set_life_h(lives) == min(lives)
    assert isnan(combining.set_life_h([*lives, nan])) and isnan(combining.set_life_h([nan, *lives]))


def test_a_set_of_nothing_has_no_life() -> None:
    with pytest.raises(RequirementError, match=r"^A set of no parts has no life\. Give at least one\.$"):
        combining.set_life_h([])


@given(resistances, some.floats(1, 20_000), some.floats(0.01, 20))
def test_the_smallest_capacitance_gives_exactly_that_loss(resistance: float, frequency: float, loss: float) -> None:
    corner = coupling.corner_hz(resistance, coupling.least_f(resistance, frequency, loss))
    assert corner == pytest.approx(coupling.largest_corner_hz(frequency, loss))
    assert coupling.loss_db(corner, frequency) == pytest.approx(loss)


@given(capacitances, some.floats(-50, 0), some.floats(0, 50), some.floats(0, 40), some.floats(0, 40))
def test_more_tolerance_or_drop_never_leaves_more(c: float, low: float, drop: float, more: float, age: float) -> None:
    assert coupling.worst_f(c, low - more, drop + age) <= coupling.worst_f(c, low, drop) <= c
    assert coupling.worst_f(c, 0, 0) == c


@given(some.floats(1e-3, 20), some.floats(10, 1000), some.floats(0.01, 50))
def test_the_reservoir_needed_leaves_the_ripple_allowed(load: float, frequency: float, ripple: float) -> None:
    assert ripple_most_v(load, frequency, reservoir_f(load, frequency, ripple)) == pytest.approx(ripple)


@given(resistances, some.floats(1, 20_000), some.floats(-1e3, 0))
def test_where_a_loss_or_a_count_is_not_above_0_nothing_is_known(r: float, frequency: float, wrong: float) -> None:
    assert isnan(coupling.largest_corner_hz(frequency, wrong)) and isnan(coupling.least_f(r, frequency, wrong))
    assert isnan(pair_tolerance.equal_sigma_pct(20, wrong))


@given(some.floats(1, 1e6), some.floats(1e-9, 1e-2), some.floats(1, 1000), some.floats(1e-3, 1))
def test_after_the_time_to_empty_it_the_threshold_is_left(r: float, c: float, start: float, part: float) -> None:
    after = discharge.discharge_s(r, c, start, start * part)
    left = discharge.left_v(r, c, start, after)
    assert left == pytest.approx(start * part, rel=1e-9)
    assert discharge.left_v(r, c, start, 2 * after) <= left <= start
    assert discharge.left_v(r, c, start, 0) == start
    lost = discharge.stored_energy_j(c, start) - discharge.stored_energy_j(c, left)
    assert 0 <= lost <= discharge.start_w(start, r) * after * AWAY  # never more than the power at first makes of it
    assert isnan(discharge.left_v(r, c, start, -1)) and isnan(discharge.left_v(0, c, start, 1))
    assert isnan(discharge.left_v(-r, c, start, after))


def on_sale(digits: tuple[str, ...], decades: range) -> list[float]:
    return [float(f"{d}e{exponent}") for exponent in decades for d in digits]


def by_trying(target: float, values: list[float], joined: str) -> ValuePair:
    """Every pair there is; of equally near ones, the most alike, then the larger."""
    exact = [Fraction(str(v)) for v in values]
    wanted, best = Fraction(str(target)), None
    for one in exact:
        for other in exact:
            if other < one or (joined == "back to back" and one != other):
                continue
            made = one + other if joined == "parallel" else 1 / (1 / one + 1 / other)
            order = (max(made / wanted, wanted / made), other / one, -one)
            if best is None or order < best[0]:
                best = order, one, other, made
    assert best is not None
    _, one, other, made = best
    return ValuePair(float(one), float(other), float(made), float(100 * (made - wanted) / wanted))


@pytest.mark.parametrize("joined", WAYS_TO_JOIN)
@pytest.mark.parametrize("seed", range(25))
def test_nearest_pair_is_what_trying_every_pair_finds(seed: int, joined: str) -> None:
    r = random.Random(seed)
    stock = on_sale(E6, range(-8, -4)) if seed % 2 else on_sale(E24, range(-9, -7))
    for _ in range(6):
        values = r.sample(stock, r.randint(1, len(stock)))
        target = r.choice([r.choice(stock), float(f"{10 ** r.uniform(-9, -4):.3g}"), float(f"{r.randint(1, 99)}e-7")])
        assert nearest_pair(target, values, joined) == by_trying(target, values, joined)
        assert nearest_pair(target, values[::-1], joined) == nearest_pair(target, values + values, joined)


def test_ties_fall_to_the_two_most_alike() -> None:
    assert nearest_pair(30e-6, [10e-6, 12e-6, 15e-6, 18e-6, 20e-6], "parallel").one_f == 15e-6
    assert nearest_pair(6e-6, [2e-6, 4.5e-6], "back to back") == ValuePair(4.5e-6, 4.5e-6, 2.25e-6, -62.5)
    assert nearest_pair(2e-6, [2e-6, 8e-6], "back to back").one_f == 8e-6  # half and double are equally near


@given(capacitances, some.floats(1.001, 1e3))
def test_a_partner_makes_the_value(target: float, times: float) -> None:
    one = target * times
    assert combining.series_f(one, series_partner_f(target, one)) == pytest.approx(target)
    assert combining.parallel_f(target, parallel_partner_f(one, target)) == pytest.approx(one)
    assert isnan(series_partner_f(one, target))


def test_an_unknown_pairs_with_nothing() -> None:
    for pair in (nearest_pair(nan, [1e-6], "series"), nearest_pair(1e-6, [1e-6, nan], "parallel")):
        assert all(isnan(value) for value in vars(pair).values())


@pytest.mark.parametrize(
    ("question", "sentence"),
    [
        ((1e-6, [], "series"), "There are no values to pair. Give at least one that can be bought."),
        (
            (0.0, [1e-6], "series"),
            "The value to be made is 0 F, but a capacitance is a number above 0. Correct it.",
        ),
        (
            (1e-6, [1e-6, -2e-6], "series"),
            "A value on sale is -2e-06 F, but a capacitance is a number above 0. Correct it.",
        ),
        (
            (float("inf"), [1e-6], "series"),
            "The value to be made is inf F, but a capacitance is a number above 0. Correct it.",
        ),
    ],
)
def test_what_is_no_capacitance_is_refused(question: tuple[float, list[float], str], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        nearest_pair(*question)
    assert str(caught.value) == sentence


def test_another_way_to_join_names_the_nearest() -> None:
    with pytest.raises(UnknownNameError) as caught:
        nearest_pair(1e-6, [1e-6], "paralel")
    said = '"paralel" is not a way to join two. Did you mean "parallel"? Allowed are parallel, series or back to back.'
    assert str(caught.value) == said
