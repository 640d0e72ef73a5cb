"""What must hold whatever the numbers are: hotter never lasts longer, a larger body never gains room."""

import random
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError
from subsearch.formulas.buying import Purchase, cheapest
from subsearch.formulas.coupling import corner_hz, loss_db
from subsearch.formulas.discharge import discharge_s
from subsearch.formulas.envelope import can_plus_mm, can_tall_plus_mm, envelope_mm, vent_clearance_mm
from subsearch.formulas.geometry import (
    can_round_margin_mm,
    headroom_margin_mm,
    hole_span_margin_mm,
    lead_offset_mm,
    outline_round_margin_mm,
    side_margin_mm,
)
from subsearch.formulas.life import life_h, life_with_ripple_h, life_y, rise_k
from subsearch.formulas.loss import esr_ohm, tan_delta

temperatures = some.floats(-40, 130)
lives = some.floats(100, 200_000)
sizes = some.floats(0.5, 300)
currents = some.floats(0, 10)
resistances, capacitances = some.floats(0.1, 1e7), some.floats(1e-12, 1)
volts = some.floats(0, 1_000)
counts = some.integers(1, 400)
prices = some.decimals(0, 100, places=4)
price_breaks = some.dictionaries(some.integers(1, 300), prices, min_size=1, max_size=5).map(lambda d: list(d.items()))


@given(lives, temperatures, temperatures, temperatures)
def test_hotter_never_lasts_longer(base: float, rated: float, one: float, other: float) -> None:
    cool, hot = sorted((one, other))
    assert life_h(base, rated, hot) <= life_h(base, rated, cool)
    assert life_h(base, rated, rated) == base


@given(lives, currents, currents, some.sampled_from([0.0, 1.0]))
def test_more_ripple_never_lasts_longer(life: float, one: float, other: float, with_ripple: float) -> None:
    low, high = (rise_k(5.0, current, 2.0) for current in sorted((one, other)))
    assert life_with_ripple_h(life, high, 5.0, with_ripple) <= life_with_ripple_h(life, low, 5.0, with_ripple)
    assert life_with_ripple_h(life, low, 5.0, 0.0) < life_with_ripple_h(life, low, 5.0, 1.0)


@given(lives, some.floats(0.1, 24), some.floats(0.1, 24))
def test_more_hours_a_day_never_last_longer_and_the_ceiling_holds(life: float, one: float, other: float) -> None:
    few, many = sorted((one, other))
    assert life_y(life, many) <= life_y(life, few) <= 15


@given(sizes, sizes, sizes, sizes)
def test_a_larger_body_never_gains_margin(room: float, beside: float, one: float, other: float) -> None:
    small, large = sorted((one, other))
    for margin in (side_margin_mm, headroom_margin_mm, can_round_margin_mm, hole_span_margin_mm):
        assert margin(room, large) <= margin(room, small)
        assert margin(large, beside) >= margin(small, beside)
    assert outline_round_margin_mm(room, large, beside) <= outline_round_margin_mm(room, small, beside)
    assert outline_round_margin_mm(room, beside, large) <= outline_round_margin_mm(room, beside, small)
    assert outline_round_margin_mm(room, large, small) <= can_round_margin_mm(room, large)


@given(sizes, sizes)
def test_a_larger_nominal_never_has_a_smaller_envelope_or_vent_clearance(one: float, other: float) -> None:
    small, large = sorted((one, other))
    for plus in (can_plus_mm, can_tall_plus_mm):
        assert envelope_mm(large, plus(large)) >= envelope_mm(small, plus(small)) > small
    assert vent_clearance_mm(large) >= vent_clearance_mm(small) > 0


@given(sizes, sizes)
def test_leads_move_as_far_outwards_as_inwards(one: float, other: float) -> None:
    assert lead_offset_mm(one, other) == lead_offset_mm(other, one) >= 0
    assert lead_offset_mm(one, one) == 0


@given(resistances, capacitances, capacitances, some.floats(1, 20_000))
def test_a_larger_capacitor_never_loses_more(resistance: float, one: float, other: float, frequency: float) -> None:
    small, large = sorted((one, other))
    losses = [loss_db(corner_hz(resistance, value), frequency) for value in (large, small)]
    assert 0 <= losses[0] <= losses[1]


@given(resistances, capacitances, volts, volts, some.floats(1, 100))
def test_a_higher_voltage_never_takes_less_time(r: float, c: float, one: float, other: float, end: float) -> None:
    low, high = sorted((one, other))
    assert 0 <= discharge_s(r, c, low, end) <= discharge_s(r, c, high, end)
    assert discharge_s(r, c, end, end) == 0


@given(some.floats(1e-6, 3), some.floats(1, 1e6), capacitances)
def test_loss_and_resistance_lead_back_to_each_other(loss: float, frequency: float, capacitance: float) -> None:
    assert tan_delta(esr_ohm(loss, frequency, capacitance), frequency, capacitance) == pytest.approx(loss)


@given(counts, counts, counts, some.integers(1, 50), price_breaks)
def test_more_pieces_never_cost_less(
    one: int, other: int, minimum: int, pack: int, breaks: list[tuple[int, Decimal]]
) -> None:
    few, many = (cheapest(pieces, minimum, pack, breaks) for pieces in sorted((one, other)))
    assert few.cost <= many.cost


@given(counts, counts, some.integers(1, 50), price_breaks)
def test_what_is_ordered_can_be_bought(pieces: int, minimum: int, pack: int, breaks: list[tuple[int, Decimal]]) -> None:
    bought = cheapest(pieces, minimum, pack, breaks)
    assert bought.ordered >= max(pieces, minimum, bought.from_quantity)
    assert bought.ordered % pack == 0
    assert (bought.from_quantity, bought.unit_price) in breaks
    assert bought.cost == bought.ordered * bought.unit_price
    assert cheapest(pieces, minimum, pack, breaks[::-1]) == bought


def by_trying(pieces: int, minimum: int, pack: int, breaks: list[tuple[int, Decimal]]) -> Purchase:
    """Every quantity one could order, up to one past which the last break only gets dearer."""
    bound = max(pieces, minimum, *(start for start, _ in breaks)) + pack
    best: Purchase | None = None
    for ordered in range(pack, bound + 1, pack):
        holding = [(start, price) for start, price in breaks if start <= ordered]
        if ordered < max(pieces, minimum) or not holding:
            continue
        start, price = max(holding)
        if best is None or ordered * price < best.cost:
            best = Purchase(ordered, start, price, ordered * price)
    assert best is not None
    return best


@pytest.mark.parametrize("seed", range(300))
def test_cheapest_is_what_trying_every_quantity_finds(seed: int) -> None:
    r = random.Random(seed)
    for _ in range(5):
        starts = sorted(r.sample([1, 2, 5, 10, 12, 25, 50, 100, 101, 250], r.randint(1, 4)))
        unit_prices = [Decimal(r.randint(0, 40)) / 100 for _ in starts]
        if r.random() < 0.7:  # else prices that rise, as a list with a slip may have them
            unit_prices.sort(reverse=True)
        breaks = list(zip(starts, unit_prices, strict=True))
        question = (r.randint(1, 260), r.choice([1, 1, 7, 10, 120]), r.choice([1, 1, 3, 10, 100]))
        assert cheapest(*question, breaks) == by_trying(*question, breaks)


@pytest.mark.parametrize(
    ("question", "sentence"),
    [
        ((0, 1, 1), "The number of pieces is 0, but pieces are bought from 1 up. Give 1 or more."),
        ((1, -1, 1), "The minimum is -1, but pieces are bought from 1 up. Give 1 or more."),
        ((1, 1, 0), "The pack is 0, but pieces are bought from 1 up. Give 1 or more."),
    ],
)
def test_numbers_below_one_are_refused(question: tuple[int, int, int], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        cheapest(*question, [(1, Decimal(1))])
    assert str(caught.value) == sentence


@pytest.mark.parametrize(
    ("breaks", "sentence"),
    [
        ([], "The offer has no price, so it can't be bought. Give at least one price break."),
        ([(0, 1)], "A price holds from 0 pieces, but the first can be 1. Give 1 or more."),
        ([(10, 2), (1, 3), (10, 1)], "Two prices hold from 10 pieces, but one can. Take one of them out."),
        ([(1, -2)], "The price from 1 pieces is -2, but the lowest is 0. Correct it."),
    ],
)
def test_breaks_that_can_not_be_bought_at_are_refused(breaks: list[tuple[int, int]], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        cheapest(1, 1, 1, [(start, Decimal(price)) for start, price in breaks])
    assert str(caught.value) == sentence
