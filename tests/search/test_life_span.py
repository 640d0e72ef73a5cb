"""The span of life that is shown is what the laws give, unknowns included, and holds the figure of the database."""

from dataclasses import replace
from itertools import pairwise
from math import isnan, nan
from random import Random
from typing import Any

import duckdb
import pytest

from subsearch.errors import RequirementError
from subsearch.formulas.life import life_y
from subsearch.formulas.lifetime import Lifetime, polymer_lifetime, wet_lifetime
from subsearch.formulas.lifetime_inputs import Duty, StatedLife
from subsearch.search.candidates import find
from subsearch.search.derived_life import life_span_y
from subsearch.search.requirement import Requirement
from subsearch.terms import C0G, FILM_PP, HYBRID, POLYMER, TANTALUM, WET

LAWS = {WET: wet_lifetime, HYBRID: wet_lifetime, POLYMER: polymer_lifetime}


def drawn(dice: Random) -> tuple[dict[str, Any], dict[str, Any], Requirement]:
    """A part, what is made of it, and a need; each claim is not stated in one of seven."""

    def maybe(*values: Any) -> Any:
        return None if dice.random() < 0.15 else dice.choice(values)

    part = {
        "technology": maybe(WET, WET, HYBRID, POLYMER, POLYMER, TANTALUM, FILM_PP, C0G),
        "life_h": maybe(1000.0, 2000.0, 10_000.0),
        "rated_c": maybe(85.0, 105.0, 125.0),
        "life_basis": maybe("endurance", "load life", "useful life"),
        "life_reference": maybe("ambient", "case"),
    }
    need = Requirement(
        capacitance_f=1e-4, working_c=maybe(20.0, 40.0, 55.0, 85.0, 110.0), hours_a_day=dice.choice([2.0, 8.0, 24.0]),
        temperature_uncertain_k=dice.choice([0.0, 0.0, 5.0, 12.5]), ripple_a=maybe(None, 0.05, 0.5, 2.0),
    )  # fmt: skip
    return part, {"usable_ripple_a": maybe(0.1, 0.4, 1.5)}, need


def by_the_laws(part: dict[str, Any], made: dict[str, Any], need: Requirement, off_k: float) -> Lifetime | None:
    if part["technology"] not in LAWS or need.working_c is None:
        return None
    stated = StatedLife(
        nan if part["life_h"] is None else part["life_h"],
        nan if part["rated_c"] is None else part["rated_c"],
        nan if made["usable_ripple_a"] is None else made["usable_ripple_a"],
        part["life_basis"],
        part["life_reference"],
    )
    found: Lifetime = LAWS[part["technology"]](stated, Duty(need.working_c + off_k, need.hours_a_day, need.ripple_a))
    return found


@pytest.mark.parametrize("seed", range(4))
def test_the_span_is_that_of_the_laws(seed: int) -> None:
    dice, unknown = Random(seed), 0
    for _ in range(2500):
        part, made, need = drawn(dice)
        found = life_span_y(part, made, need)
        hot = by_the_laws(part, made, need, need.temperature_uncertain_k)
        cool = by_the_laws(part, made, need, -need.temperature_uncertain_k)
        if hot is None or cool is None or isnan(hot.shortest_h):
            unknown += 1
            assert found == (None, None), (part, need)
            continue
        wanted = [life_y(hours, need.hours_a_day) for hours in (hot.shortest_h, cool.longest_h)]
        assert found == pytest.approx(wanted, rel=1e-12), (part, need)
    assert 500 < unknown < 2000


@pytest.mark.parametrize("seed", range(2))
def test_a_less_certain_temperature_never_narrows_it(seed: int) -> None:
    dice = Random(seed)
    for _ in range(1000):
        part, made, need = drawn(dice)
        spans = [life_span_y(part, made, replace(need, temperature_uncertain_k=k)) for k in (0.0, 3.0, 20.0)]
        for narrow, wide in pairwise(spans):
            if narrow[0] is not None and narrow[1] is not None:
                assert wide[0] is not None
                assert wide[1] is not None
                assert wide[0] <= narrow[0] <= narrow[1] <= wide[1], (part, need)


@pytest.mark.parametrize("working_c", [55.0, 85.0])
@pytest.mark.parametrize("ripple_a", [None, 0.1, 0.25])
def test_the_figure_lies_within(demo_con: duckdb.DuckDBPyConnection, working_c: float, ripple_a: float | None) -> None:
    need = Requirement(capacitance_f=100e-6, rated_v=16, working_c=working_c, ripple_a=ripple_a, ripple_hz=120)
    found = find(demo_con, [need], 1000)[0]
    met = 0
    for one in (*found.kept, *found.open):
        shortest, longest, years = (one.made[name] for name in ("shortest_y", "longest_y", "years"))
        law = by_the_laws(dict(one.part), dict(one.made), need, 0)
        assert (shortest is None, longest is None) == (years is None, years is None), one.name
        if years is not None and law is not None:
            met += 1
            assert years == pytest.approx(law.life_y, rel=1e-9), one.name
            assert shortest - 1e-9 <= years <= longest + 1e-9, one.name
    assert met > 5


def test_uncertainty_moves_the_span_and_nothing_else(demo_con: duckdb.DuckDBPyConnection) -> None:
    need = Requirement(capacitance_f=100e-6, rated_v=25, working_c=85, life_wanted_y=5)
    sure, unsure = find(demo_con, [need, replace(need, temperature_uncertain_k=10)], 1000)
    assert [one.name for one in sure.kept] == [one.name for one in unsure.kept]
    assert [one.total for one in sure.kept] == [one.total for one in unsure.kept]
    assert [one.made["years"] for one in sure.kept] == [one.made["years"] for one in unsure.kept]
    wider = [
        one.made["shortest_y"] > other.made["shortest_y"]
        for one, other in zip(sure.kept, unsure.kept, strict=True)
        if one.made["shortest_y"] is not None and other.made["shortest_y"] < 15
    ]
    assert wider
    assert all(wider)


@pytest.mark.parametrize(("off_k", "said"), [(-1.0, "-1"), (41.0, "41"), (nan, "nan")])
def test_a_temperature_that_nobody_knows(off_k: float, said: str) -> None:
    with pytest.raises(RequirementError) as told:
        Requirement(reference="C7", temperature_uncertain_k=off_k)
    assert str(told.value) == (
        f"C7: the temperature is uncertain by {said} K; allowed is 0 to 40 K. Measure it nearer than that."
    )
