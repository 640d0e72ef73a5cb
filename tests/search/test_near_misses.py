"""Near misses: each concession made lets in what was counted, a smaller one nothing, and none loses a part."""

from dataclasses import fields, replace

import duckdb
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from subsearch.search.candidates import Found, find
from subsearch.search.concessions import FIRM, MEASURES
from subsearch.search.criteria import OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.near_misses import NearMisses, near_misses
from subsearch.search.requirement import Requirement
from subsearch.terms import POLYMER, WET
from subsearch.units import show

EVERYONE = 100_000
TIGHT = Requirement(
    reference="C9", pieces=4, role="rail decoupling", capacitance_f=47e-6, rated_v=50.0, lead_style="radial",
    hole_spacing_mm=2.5, left_mm=4.0, right_mm=4.0, headroom_mm=9.0, working_c=70.0, life_wanted_y=10.0,
)  # fmt: skip
HOT = replace(TIGHT, headroom_mm=20.0, left_mm=8.0, right_mm=8.0, hole_spacing_mm=5.0, working_c=95.0)
BUSY = replace(HOT, working_c=80.0, ripple_a=1.2, ripple_hz=120.0)
MANY = replace(TIGHT, headroom_mm=40.0, left_mm=20.0, right_mm=20.0, hole_spacing_mm=None, pieces=20_000)
NARROW_WORDS = replace(MANY, pieces=4, technologies=(POLYMER,), conditions=("old stock",))
FLAT = replace(MANY, pieces=4, lead_style="axial", hole_spacing_mm=22.0, technologies=(WET,))
BAND = replace(MANY, pieces=4, esr_least_ohm=0.4, esr_most_ohm=0.5, esr_hz=120.0)
LEAKY = Requirement(reference="L", role="timing", capacitance_f=10e-6, rated_v=25.0, technologies=(WET,),
                    headroom_mm=14.0, hole_spacing_mm=5.0, leakage_most_a=2e-6)  # fmt: skip
CROSSED = Requirement(reference="X", safety_class="X2", rated_ac_v=310.0, capacitance_f=1e-7, lead_style="radial",
                      hole_spacing_mm=15.0, headroom_mm=11.0)  # fmt: skip
ASKED = [TIGHT, HOT, BUSY, MANY, NARROW_WORDS, FLAT, BAND, LEAKY, CROSSED]


@pytest.fixture(scope="module")
def found(demo_con: duckdb.DuckDBPyConnection) -> list[Found]:
    return find(demo_con, ASKED, EVERYONE)


@pytest.fixture(scope="module")
def told(demo_con: duckdb.DuckDBPyConnection, found: list[Found]) -> list[NearMisses]:
    return near_misses(demo_con, found)


def names(found: Found) -> set[str]:
    return {one.name for one in found.kept}


def test_every_condition_has_its_measure_or_is_never_conceded() -> None:
    criteria = {criterion.name for criterion in (*PART_CRITERIA, *OFFER_CRITERIA)}
    measured = {measure.condition for measure in MEASURES}
    assert measured | FIRM.keys() == criteria
    assert not measured & FIRM.keys()
    assert {field for measure in MEASURES for field in measure.fields} <= {one.name for one in fields(Requirement)}


def test_a_concession_made_lets_in_what_was_counted_and_loses_nothing(
    demo_con: duckdb.DuckDBPyConnection, found: list[Found], told: list[NearMisses]
) -> None:
    seen = set()
    for was, near in zip(found, told, strict=True):
        for one, now in zip(
            near.concessions, find(demo_con, [one.requirement for one in near.concessions], EVERYONE), strict=True
        ):
            assert names(was) <= names(now), one.sentence
            assert len(names(now) - names(was)) == one.lets_in > 0, one.sentence
            assert one.best is not None and one.best.name in names(now) - names(was)
            assert one.best.name in one.sentence and "{" not in one.sentence and "None" not in one.sentence
            seen |= changed(was.requirement, one.requirement)
    assert len(seen) > 6, seen


def changed(was: Requirement, now: Requirement) -> set[str]:
    return {one.name for one in fields(Requirement) if getattr(was, one.name) != getattr(now, one.name)}


def test_a_concession_smaller_by_one_percent_lets_in_none(
    demo_con: duckdb.DuckDBPyConnection, found: list[Found], told: list[NearMisses]
) -> None:
    smaller = []
    for was, near in zip(found, told, strict=True):
        for one in (one for miss in near.misses for one in miss.concessions):
            moved = {
                name: getattr(was.requirement, name) or 0.0
                for name in changed(was.requirement, one.requirement)
                if isinstance(getattr(one.requirement, name), float)
            }
            if moved:
                less = {name: x + 0.99 * (getattr(one.requirement, name) - x) for name, x in moved.items()}
                smaller.append((was, replace(was.requirement, **less)))
    assert len(smaller) > 4
    for (was, _), now in zip(smaller, find(demo_con, [need for _, need in smaller], 1), strict=True):
        assert now.kept_count == was.kept_count, now.requirement


def test_asked_at_once_is_asked_alone(found: list[Found], told: list[NearMisses]) -> None:
    for was, near in list(zip(found, told, strict=True))[::3]:
        assert was.near_misses() == near


def test_what_can_hurt_is_never_conceded(demo_con: duckdb.DuckDBPyConnection) -> None:
    bipolar = replace(MANY, pieces=4, reverses=True)
    measured = replace(MANY, pieces=4, rated_v=160.0, voltage_measured=True)
    guessed = replace(measured, voltage_measured=False)
    y_class = replace(CROSSED, safety_class="Y2", rated_ac_v=None, capacitance_f=1.5e-9, hole_spacing_mm=None)
    for near, field, said in zip(
        near_misses(demo_con, find(demo_con, [bipolar, measured, CROSSED, y_class])),
        ("reverses", "rated_v", "safety_class", "capacitance_high_f"),
        ("Polarity alone keeps out", "the voltage needed follows from what was measured", "", ""),
        strict=True,
    ):
        assert all(getattr(one.requirement, field) for one in near.concessions)
        need = {"reverses": bipolar, "rated_v": measured, "safety_class": CROSSED, "capacitance_high_f": y_class}[field]
        assert {getattr(one.requirement, field) for one in near.concessions} <= {getattr(need, field)}
        assert not said or any(said in sentence for sentence in near.sentences)
    assert any(
        "rated_v" in changed(guessed, one.requirement) for one in find(demo_con, [guessed])[0].near_misses().concessions
    )


def test_the_sentence_on_a_voltage(demo_con: duckdb.DuckDBPyConnection) -> None:
    near = find(demo_con, [replace(MANY, pieces=4, rated_v=64.0)])[0].near_misses()
    (voltage,) = (miss for miss in near.misses if miss.condition == "voltage")
    (one,) = voltage.concessions
    assert one.sentence.startswith("If it measures 50.4 V or less, switching on and faults included, 63 V would do and")


def test_the_sentence_on_leakage(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [LEAKY], EVERYONE)[0]
    (leakage,) = (miss for miss in found.near_misses().misses if miss.condition == "leakage")
    (one,) = leakage.concessions
    limit = one.requirement.leakage_most_a
    assert limit is not None and limit > 2e-6
    assert one.sentence.startswith(f"A leakage current of {show(limit, 'A')} instead of 2 µA at most lets in ")
    assert one.best is not None and one.best.made["leakage_a"] == pytest.approx(limit, rel=1e-9)
    said = {answer.name: str(answer) for answer in found.why(one.best.part["maker"], one.best.part["part_number"])}
    assert said["leakage"] == (
        f"leakage current: no (the maker's limit at rated voltage and 20 °C, when new: {show(limit, 'A')} (hot, it "
        "leaks more); 2 µA is allowed)"
    )
    film = find(demo_con, [replace(LEAKY, technologies=("film PET",), hole_spacing_mm=None, headroom_mm=None)])[0]
    said = {one.name: str(one) for one in film.why(film.kept[0].part["maker"], film.kept[0].part["part_number"])}
    assert said["leakage"] == "leakage current: yes (film PET leaks next to nothing)"


def test_pairs_only_where_no_single_concession_helps(
    demo_con: duckdb.DuckDBPyConnection, told: list[NearMisses]
) -> None:
    impossible = replace(TIGHT, headroom_mm=3.0, lead_style="snap-in")
    near = find(demo_con, [impossible])[0].near_misses()
    assert near.pairs and not any(miss.concessions for miss in near.misses)
    assert all("together let in" in pair.sentence and len(pair.conditions) == 2 for pair in near.pairs)
    for pair, now in zip(near.pairs, find(demo_con, [pair.requirement for pair in near.pairs]), strict=True):
        assert now.kept_count == pair.lets_in > 0
    assert all(not one.pairs for one in told if any(miss.concessions for miss in one.misses))


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    at=st.integers(0, len(ASKED) - 1),
    headroom_mm=st.floats(4, 30),
    working_c=st.floats(40, 100),
    hole_spacing_mm=st.floats(2, 25),
)
def test_making_a_concession_never_loses_a_part(
    demo_con: duckdb.DuckDBPyConnection, at: int, headroom_mm: float, working_c: float, hole_spacing_mm: float
) -> None:
    need = replace(ASKED[at], headroom_mm=headroom_mm, working_c=working_c, hole_spacing_mm=hole_spacing_mm)
    was = find(demo_con, [need], EVERYONE)[0]
    near = was.near_misses()
    for one, now in zip(
        near.concessions, find(demo_con, [one.requirement for one in near.concessions], EVERYONE), strict=True
    ):
        assert names(was) <= names(now)
        assert len(names(now) - names(was)) == one.lets_in
