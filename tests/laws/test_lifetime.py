"""The lifetime of one part: what holds whatever the numbers are, and each note at its bound."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from math import isnan, nan
from typing import Any

import duckdb
import pytest
from hypothesis import given
from hypothesis import strategies as some
from published.test_published import ROWS, read

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas import lifetime_notes as notes
from subsearch.formulas.film import film_life_h
from subsearch.formulas.life import RATED_RISE_K, ceiling_h
from subsearch.formulas.lifetime import Lifetime, polymer_lifetime, unlimited_lifetime, wet_lifetime
from subsearch.formulas.lifetime_inputs import Duty, StatedLife, check_hours_a_day
from subsearch.search.derived import OF_PAIR
from subsearch.terms import HYBRID, POLYMER, WET

BOTH = (wet_lifetime, polymer_lifetime)
Function = Callable[[StatedLife, Duty], Lifetime]
bases = some.sampled_from(["endurance", "load life", "useful life", None])
references = some.sampled_from(["ambient", "case", None])
stated_lives = some.builds(
    StatedLife,
    some.floats(100, 50_000),
    some.sampled_from([85.0, 105.0, 125.0]),
    some.floats(0.1, 5),
    bases,
    references,
    some.sampled_from([3.5, 5.0, 10.0]),
)
temperatures = some.floats(-20, 125)
ripples = some.one_of(some.none(), some.floats(0, 10))
duties = some.builds(
    Duty,
    temperatures,
    some.floats(0.1, 24),
    ripples,
    some.floats(1, 3.6),
    some.sampled_from([10.0, 15.0]),
)
STATED, DUTY = StatedLife(2000, 105, 1.0, "load life", "ambient"), Duty(60, 8, 0.5)
HOT = replace(STATED, rated_c=125)


def hours(found: Lifetime) -> tuple[float, float, float]:
    return found.shortest_h, found.life_h, found.longest_h


def no_longer(one: Lifetime, other: Lifetime) -> bool:
    """Whether the one lasts no longer than the other, by the figure and by both ends; but for rounding."""
    pairs = zip((*hours(one), one.life_y), (*hours(other), other.life_y), strict=True)
    return all(a <= b * (1 + 1e-9) for a, b in pairs)


@pytest.mark.parametrize("lifetime", BOTH)
@given(stated_lives, duties)
def test_the_figure_lies_in_its_span_and_the_ceiling_holds(lifetime: Function, stated: StatedLife, duty: Duty) -> None:
    found = lifetime(stated, duty)
    assert found.shortest_h <= found.life_h * (1 + 1e-9) <= found.longest_h * (1 + 3e-9)
    assert found.life_y == pytest.approx(min(found.life_h / 365 / duty.hours_a_day, duty.ceiling_y))
    assert (found.ceiling_y, found.limited) == (duty.ceiling_y, True)
    assert len(set(found.notes)) == len(found.notes)


@pytest.mark.parametrize("lifetime", BOTH)
@given(stated_lives, duties, temperatures, temperatures)
def test_hotter_never_lasts_longer(
    lifetime: Function, stated: StatedLife, duty: Duty, one: float, other: float
) -> None:
    cool, hot = (lifetime(stated, replace(duty, working_c=t)) for t in sorted((one, other)))
    assert no_longer(hot, cool)


@pytest.mark.parametrize("lifetime", BOTH)
@given(stated_lives, duties, some.floats(0, 10), some.floats(0, 10))
def test_more_ripple_never_lasts_longer(
    lifetime: Function, stated: StatedLife, duty: Duty, one: float, other: float
) -> None:
    low, high = (lifetime(stated, replace(duty, ripple_a=ripple)) for ripple in sorted((one, other)))
    assert no_longer(high, low)


@pytest.mark.parametrize("lifetime", BOTH)
@given(stated_lives, duties, some.floats(0.1, 24), some.floats(0.1, 24))
def test_more_hours_a_day_never_last_longer(
    lifetime: Function, stated: StatedLife, duty: Duty, one: float, other: float
) -> None:
    few, many = (lifetime(stated, replace(duty, hours_a_day=h)) for h in sorted((one, other)))
    assert many.life_y <= few.life_y
    assert hours(many) == hours(few)


PART = (
    "select $technology::text as technology, $base_life_h::double as life_h, $rated_c::double as rated_c,"
    " $basis::text as life_basis, $reference::text as life_reference, $rated_ripple_a::double as ripple_a,"
    " 120::double as ripple_hz"
)
NEED = "select $working_c::double as working_c, $ripple_a::double as ripple_a, 120::double as ripple_hz"


@cache
def database() -> duckdb.DuckDBPyConnection:
    return duckdb.connect()


def in_the_search(technology: str, stated: StatedLife, duty: Duty) -> float:
    """The life that a search gives in the database; it knows the usual rise only, and no voltage factor."""
    assert stated.rated_rise_k == RATED_RISE_K
    given = {"technology": technology, **vars(stated), "working_c": duty.working_c, "ripple_a": duty.ripple_a}
    del given["rated_rise_k"]
    query = f"select {OF_PAIR['life_at_work_h']} from ({PART}) as part, ({NEED}) as need"
    (found,) = database().execute(query, given).fetchall()
    return float(found[0])


@pytest.mark.parametrize(
    ("lifetime", "technology"), [(wet_lifetime, WET), (wet_lifetime, HYBRID), (polymer_lifetime, POLYMER)]
)
@given(stated_lives, duties)
def test_the_figure_is_the_law_of_the_search(
    lifetime: Function, technology: str, stated: StatedLife, duty: Duty
) -> None:
    stated = replace(stated, rated_rise_k=RATED_RISE_K)
    expected = in_the_search(technology, stated, duty) * duty.voltage_factor
    assert lifetime(stated, duty).life_h == pytest.approx(expected, rel=1e-9, abs=1e-300)


@pytest.mark.parametrize("lifetime", BOTH)
@given(stated_lives, some.one_of(some.none(), some.floats(0, 10)))
def test_an_unknown_meaning_spans_both(lifetime: Function, stated: StatedLife, ripple: float | None) -> None:
    duty = Duty(60, 8, ripple)
    unknown, *each = (hours(lifetime(replace(stated, basis=one), duty)) for one in (None, "endurance", "load life"))
    assert unknown[0] == min(one[0] for one in each)
    assert unknown[2] == max(one[2] for one in each)
    assert unknown[1] == each[0][1]


@pytest.mark.parametrize("lifetime", BOTH)
@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("base_life_h", "the life"),
        ("rated_c", "the rated temperature"),
        ("rated_ripple_a", "the rated ripple current"),
        ("rated_rise_k", "the rise of the core temperature at the rated ripple current"),
        ("working_c", "the working temperature"),
        ("ripple_a", "the ripple current"),
        ("voltage_factor", "the voltage factor"),
    ],
)
@pytest.mark.parametrize("basis", ["endurance", "load life", None])
@pytest.mark.parametrize("reference", ["ambient", "case"])
def test_unknown_in_unknown_out(
    lifetime: Function, name: str, said: str, basis: str | None, reference: str | None
) -> None:
    stated, duty = replace(STATED, basis=basis, reference=reference), DUTY
    change: dict[str, Any] = {name: nan}
    of_stated = hasattr(stated, name)
    found = lifetime(replace(stated, **change), duty) if of_stated else lifetime(stated, replace(duty, **change))
    assert all(map(isnan, (*hours(found), found.life_y)))
    assert f"Not stated: {said}." in found.notes
    assert not any(note.startswith("Not stated") for note in lifetime(stated, duty).notes)


@pytest.mark.parametrize("lifetime", BOTH)
def test_unknown_days_and_ceilings_hide_the_years_only(lifetime: Function) -> None:
    for change, said in (
        (replace(DUTY, hours_a_day=nan), "the hours a day"),
        (replace(DUTY, ceiling_y=nan), "the ceiling"),
    ):
        found = lifetime(STATED, change)
        assert isnan(found.life_y) and hours(found) == hours(lifetime(STATED, DUTY))
        assert f"Not stated: {said}." in found.notes
    found = lifetime(replace(STATED, rated_ripple_a=nan, rated_rise_k=nan), replace(DUTY, ripple_a=None))
    assert found.life_y > 0 and not any(note.startswith("Not stated") for note in found.notes)


def test_a_usual_case_needs_few_notes() -> None:
    assert wet_lifetime(STATED, Duty(90, 8, 0.5)).notes == ()
    assert polymer_lifetime(STATED, Duty(90, 8, 0.5)).notes == (notes.TWO_LAWS,)


@pytest.mark.parametrize(
    ("note", "there", "not_there"),
    [
        (notes.COOL, (STATED, replace(DUTY, working_c=39.999)), (STATED, replace(DUTY, working_c=40))),
        (notes.HOT_CLASS, (replace(STATED, rated_c=105.001), DUTY), (STATED, DUTY)),
        (notes.NO_SUCH_CLASS, (replace(STATED, rated_c=105.001), DUTY), (STATED, DUTY)),
        (notes.NO_SUCH_CLASS, (HOT, DUTY), (HOT, replace(DUTY, ripple_a=None))),
        (notes.NO_SUCH_CLASS, (replace(HOT, basis=None), DUTY), (replace(HOT, basis="endurance"), DUTY)),
        (notes.NO_SUCH_CLASS, (replace(HOT, reference=None), DUTY), (replace(HOT, reference="case"), DUTY)),
        (notes.NO_BASIS, (replace(STATED, basis=None), DUTY), (STATED, DUTY)),
        (
            notes.NO_BASIS,
            (replace(STATED, basis=None), DUTY),
            (replace(STATED, basis=None), replace(DUTY, ripple_a=None)),
        ),
        (notes.OVER_RIPPLE, (STATED, replace(DUTY, ripple_a=1.001)), (STATED, replace(DUTY, ripple_a=1.0))),
        (notes.NO_RIPPLE, (STATED, replace(DUTY, ripple_a=None)), (STATED, replace(DUTY, ripple_a=0.0))),
        (
            notes.CEILING,
            (replace(STATED, base_life_h=ceiling_h(15)), Duty(105, 24, 1.0)),
            (replace(STATED, base_life_h=ceiling_h(15) - 1), Duty(105, 24, 1.0)),
        ),
    ],
)
def test_each_note_at_its_bound(note: str, there: tuple[StatedLife, Duty], not_there: tuple[StatedLife, Duty]) -> None:
    assert note in wet_lifetime(*there).notes
    assert note not in wet_lifetime(*not_there).notes
    if note != notes.NO_SUCH_CLASS:  # it speaks of ripple laws that serve wet parts only
        assert note in polymer_lifetime(*there).notes
        assert note not in polymer_lifetime(*not_there).notes


def test_of_the_two_polymer_laws_it_is_said_below_the_rated_temperature_only() -> None:
    assert notes.TWO_LAWS in polymer_lifetime(STATED, Duty(104.999, 8, 1.0)).notes
    assert notes.TWO_LAWS not in polymer_lifetime(STATED, Duty(105, 8, 1.0)).notes
    assert notes.TWO_LAWS not in polymer_lifetime(replace(STATED, basis="endurance"), Duty(100, 8, 1.0)).notes
    assert notes.TWO_LAWS not in wet_lifetime(STATED, DUTY).notes


def test_voltage_is_no_more_than_a_factor() -> None:
    plain, doubled = (wet_lifetime(STATED, replace(DUTY, voltage_factor=factor)) for factor in (1.0, 2.0))
    assert hours(doubled) == tuple(2 * one for one in hours(plain))


def test_film_and_ceramic_are_not_limited() -> None:
    found = unlimited_lifetime()
    assert not found.limited and found.notes == (notes.NOT_LIMITED,)
    assert all(map(isnan, (*hours(found), found.life_y, found.ceiling_y)))
    option = film_life_h(100_000, 100, 80, 85, 45, 7)
    found = unlimited_lifetime(option, 8)
    assert hours(found) == (option, option, option) and found.life_y == option / 365 / 8
    assert not found.limited and found.notes == (notes.FILM_OPTION,)
    unknown = unlimited_lifetime(nan, 8)
    assert all(map(isnan, hours(unknown))) and "Not stated: the life." in unknown.notes


def maker_rows(*ids: str) -> list[Any]:
    found = {row["id"]: row for row in ROWS}
    return [pytest.param(found[one], id=one) for one in ids]


# By which multiple of the rated ripple current each of these rows was printed; the rows themselves leave it out.
RIPPLE_OF = {"LIFE17": 2.0, "LIFE18": 1.4, "LIFE19": 1.4, "LIFE21": 1.4, "LIFE22": 1.4, "LIFE24": 1.8, "LIFE25": 1.8}


@pytest.mark.parametrize("row", maker_rows(*RIPPLE_OF))
def test_published_nomograms_lie_in_the_span(row: dict[str, str]) -> None:
    numbers = {name: read(value) for name, value in (one.split("=") for one in row["inputs"].split("; "))}
    stated = StatedLife(numbers["base_life_h"], numbers["rated_c"], 1.0, "useful life")
    found = wet_lifetime(stated, Duty(numbers["working_c"], 24, RIPPLE_OF[row["id"]]))
    assert found.shortest_h <= read(row["expected"]) <= found.longest_h
    assert notes.OVER_RIPPLE in found.notes


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda: replace(STATED, base_life_h=0), "The life is 0, but must be above 0."),
        (lambda: replace(STATED, rated_c=400), "The rated temperature is 400, but must lie between -100 and 300."),
        (lambda: replace(STATED, rated_ripple_a=0), "The rated ripple current is 0, but must be above 0."),
        (
            lambda: replace(STATED, rated_rise_k=40),
            "The rise of the core temperature at the rated ripple current is 40, but must lie between 0 and 39.",
        ),
        (lambda: replace(DUTY, working_c=-273), "The working temperature is -273, but must lie between -100 and 300."),
        (lambda: replace(DUTY, ripple_a=-1), "The ripple current is -1, but must lie between 0 and 100000."),
        (lambda: replace(DUTY, hours_a_day=0), "The number of hours a day is 0, but must be above 0."),
        (lambda: check_hours_a_day(25), "The number of hours a day is 25, but must lie between 0 and 24."),
        (lambda: unlimited_lifetime(None, 25), "The number of hours a day is 25, but must lie between 0 and 24."),
        (lambda: unlimited_lifetime(0, 8), "The life is 0, but must be above 0."),
        (lambda: replace(DUTY, voltage_factor=0), "The voltage factor is 0, but must be above 0."),
        (lambda: replace(DUTY, ceiling_y=0), "The ceiling in years is 0, but must be above 0."),
    ],
)
def test_nonsense_is_refused(make: Callable[[], object], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        make()
    assert str(caught.value) == f"{sentence} Correct it; where you don't know it, give float('nan')."


def test_words_that_are_none_of_ours_are_refused() -> None:
    for duty in (DUTY, replace(DUTY, ripple_a=None)):
        with pytest.raises(UnknownNameError):
            wet_lifetime(replace(STATED, basis="forever"), duty)
