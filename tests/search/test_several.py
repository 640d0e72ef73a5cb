"""Two parts for one position: who may be joined, what both are together, and what is said of them."""

from dataclasses import replace
from math import inf
from typing import Any

import duckdb
import pytest

from subsearch.errors import RequirementError
from subsearch.formulas.fits import Body
from subsearch.formulas.mounting_together import JOINED, pair_in_space
from subsearch.formulas.spaces import Space
from subsearch.search.candidates import find
from subsearch.search.derived import OF_PART
from subsearch.search.derived_pairs import BACK_TO_BACK, PARALLEL
from subsearch.search.requirement import Requirement
from subsearch.search.several import AT_ONCE, Joined, Several, Way, several, where_few
from subsearch.search.several_words import JUNCTION, OF_ONE, SAME_WAY, UNEQUAL, WHOLE
from subsearch.search.weights import Weights
from subsearch.terms import WITHOUT_POLARITY

SWINGS = Requirement(
    reference="swings", pieces=3, role="coupling", capacitance_f=10e-6, rated_v=25.0, reverses=True,
    left_mm=9.0, right_mm=9.0, front_mm=6.0, back_mm=6.0, headroom_mm=14.0, working_c=45.0,
)  # fmt: skip
AGAIN = {"capacitance_low_f": None, "capacitance_high_f": None, "technologies": None}  # as the role asks


def changed(need: Requirement, **values: Any) -> Requirement:
    return replace(need, **{**AGAIN, **values})


SPLIT = changed(SWINGS, reference="split", reverses=False, role="timing", capacitance_f=40e-6, life_wanted_y=10.0)
RIPPLE = Requirement(
    reference="ripple", role="reservoir", capacitance_f=4700e-6, rated_v=35.0, free_diameter_mm=38.0, headroom_mm=40.0,
    working_c=55.0, life_wanted_y=5.0, ripple_a=1.4, ripple_hz=100.0,
)  # fmt: skip
BAND = changed(SPLIT, reference="band", role=None, esr_least_ohm=0.05, esr_most_ohm=3.0, esr_hz=100e3)
ASKED = [SWINGS, SPLIT, RIPPLE, BAND]


@pytest.fixture(scope="module")
def told(demo_con: duckdb.DuckDBPyConnection) -> list[Several]:
    return several(demo_con, ASKED, 20)


def ways(one: Several) -> dict[str, Way]:
    return {way.name: way for way in one.ways}


def test_which_ways_there_are(told: list[Several]) -> None:
    assert [list(ways(one)) for one in told] == [[BACK_TO_BACK, PARALLEL], [PARALLEL], [PARALLEL], [PARALLEL]]
    assert all(way.kept_count > len(way.best) == 20 for one in told[:2] for way in one.ways)


def test_back_to_back_takes_twice_the_same_polar_part(told: list[Several]) -> None:
    for pair in ways(told[0])[BACK_TO_BACK].best:
        (member,) = pair.members
        assert member.times == 2 and pair.names == (member.name, member.name)
        assert member.part["polarity"] == "polar" and member.part["technology"] not in WITHOUT_POLARITY
        assert pair.capacitance_f == member.part["capacitance_f"] / 2 and pair.rated_v == member.part["rated_v"]
        assert member.offer["stock"] >= 2 * 3
        assert JUNCTION in pair.cautions and OF_ONE in pair.cautions and JOINED in pair.cautions


def test_no_polar_part_in_parallel_where_the_voltage_reverses(told: list[Several]) -> None:
    for pair in ways(told[0])[PARALLEL].best:
        for one in pair.members:
            assert one.part["polarity"] == "bipolar" or one.part["technology"] in WITHOUT_POLARITY
        assert SAME_WAY not in pair.cautions


def test_parallel_shares_the_value(told: list[Several]) -> None:
    for one in told[1:]:
        for pair in ways(one)[PARALLEL].best:
            values = [member.part["capacitance_f"] for member in pair.members for _ in range(member.times)]
            assert len(values) == 2 and pair.capacitance_f == pytest.approx(sum(values))
            low, high = one.requirement.capacitance_low_f, one.requirement.capacitance_high_f
            assert low is not None and high is not None and low <= pair.capacitance_f <= high > low > max(values)
            assert pair.rated_v == min(member.part["rated_v"] for member in pair.members)
            assert WHOLE in pair.cautions and SAME_WAY in pair.cautions


def test_the_ripple_is_shared_by_capacitance(told: list[Several]) -> None:
    unequal = 0
    for pair in ways(told[2])[PARALLEL].best:
        carried = [member.carries_a for member in pair.members for _ in range(member.times)]
        assert sum(filter(None, carried)) == pytest.approx(1.4)
        for member in pair.members:
            assert member.carries_a == pytest.approx(1.4 * member.part["capacitance_f"] / pair.capacitance_f)
            assert member.part["ripple_a"] >= member.carries_a
        unequal += UNEQUAL in pair.cautions
        assert (UNEQUAL in pair.cautions) == (len(set(carried)) > 1)
    assert unequal and all(UNEQUAL not in one.cautions for one in told[1].best)


def test_the_set_lasts_as_long_as_the_shorter_lived(told: list[Several]) -> None:
    shorter = 0
    for pair in told[2].best:
        lives = [member.years for member in pair.members if member.worn_by_heat]
        assert None not in lives and pair.years == min(life for life in lives if life is not None)
        shorter += len(set(lives)) > 1
    assert shorter


def test_tolerance_and_resistance_of_both(told: list[Several]) -> None:
    for pair in told[3].best:
        assert pair.esr_ohm is not None and 0.05 <= pair.esr_ohm <= 3.0 and pair.esr_hz == 100e3
        stated = [member.part["tolerance_high_pct"] for member in pair.members]
        assert pair.tolerance_pct[1] is not None and min(stated) <= pair.tolerance_pct[1] + 1e-9
        assert pair.tolerance_pct[1] <= max(stated) + 1e-9
    for pair in ways(told[0])[BACK_TO_BACK].best:
        part = pair.members[0].part
        assert pair.tolerance_pct == (part["tolerance_low_pct"], part["tolerance_high_pct"])


def test_the_room_left_is_that_of_the_laws(told: list[Several], demo_con: duckdb.DuckDBPyConnection) -> None:
    """The statement's columns against the same laws in plain numbers."""
    for one in told:
        for pair in one.best:
            bodies = [body_of(demo_con, member.part["pk"]) for member in pair.members for _ in range(member.times)]
            fit = pair_in_space(bodies[0], bodies[1], space(one.requirement))
            assert fit.fits is True and min(margin for _, margin in pair.margins) == pytest.approx(fit.tightest_mm)
            assert dict(pair.margins)["headroom"] == pytest.approx(dict(fit.margins)["headroom"])


def body_of(con: duckdb.DuckDBPyConnection, pk: int) -> Body:
    sizes = ", ".join(OF_PART[f"{side}_max_mm"] for side in ("along", "across", "tall"))
    (row,) = con.execute(f"select {sizes}, shape from part where pk = ?", [pk]).fetchall()
    return Body(*row)


def space(need: Requirement) -> Space:
    sides = (need.left_mm, need.right_mm, need.front_mm, need.back_mm, need.headroom_mm, need.free_diameter_mm)
    return Space(*(inf if side is None else side for side in sides))


def test_a_wider_room_never_loses_a_pair(demo_con: duckdb.DuckDBPyConnection) -> None:
    steps = [replace(SPLIT, left_mm=left, right_mm=left, headroom_mm=high) for left in (3.0, 6.0, 9.0, 30.0)
             for high in (9.0, 40.0)]  # fmt: skip
    counts = [sum(way.kept_count for way in one.ways) for one in several(demo_con, steps, 1)]
    low, high = counts[::2], counts[1::2]
    assert low == sorted(low) and high == sorted(high) and all(a <= b for a, b in zip(low, high, strict=True))
    assert len(set(counts)) > 4


def test_all_at_once_as_one_by_one(demo_con: duckdb.DuckDBPyConnection, told: list[Several]) -> None:
    for need, together in zip(ASKED, told, strict=True):
        assert find(demo_con, [need], 1)[0].several(20) == together
    assert several(demo_con, []) == []
    more = several(demo_con, [SPLIT] * AT_ONCE + [SWINGS], 20)
    assert (more[0], more[-1]) == (told[1], told[0])


@pytest.mark.parametrize("values", [{"safety_class": "X2", "rated_ac_v": 250.0}, {"role": "interference suppression"}])
def test_never_two_for_interference_suppression(demo_con: duckdb.DuckDBPyConnection, values: dict[str, Any]) -> None:
    film = Requirement(capacitance_f=0.15e-6, rated_v=63.0, lead_style="radial")
    for need in (SWINGS, SPLIT, film):
        assert several(demo_con, [need])[0].best
        assert several(demo_con, [changed(need, **values)])[0].ways == ()


def test_only_where_few_fit(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [changed(SPLIT, capacitance_f=47e-6), SPLIT])
    assert found[0].kept_count > 2 > found[1].kept_count
    many, few = where_few(demo_con, found)
    assert many == Several(found[0].requirement) and few.ways
    assert where_few(demo_con, found[:1]) == [many] and found[1].several(2).ways == few.ways


def test_weights_count(demo_con: duckdb.DuckDBPyConnection, told: list[Several]) -> None:
    heavy = several(demo_con, [SPLIT], 20, Weights({"price": 50, "capacitance": 0}))[0]
    assert heavy.best != told[1].best and heavy.ways[0].kept_count == told[1].ways[0].kept_count
    assert cheapest(heavy) <= cheapest(told[1])


def cheapest(one: Several) -> float:
    return one.best[0].cost or 0.0


def test_sentences(told: list[Several]) -> None:
    said = told[0].sentences
    assert said[0].startswith("Two back to back: twice ") and said[3].startswith("Two in parallel: ")
    count = ways(told[0])[BACK_TO_BACK].kept_count
    assert said[0].endswith(f"6 pieces. It is the best of {count} such pairs that fit.")
    assert said[2].startswith("Two back to back, to mind: ") and JUNCTION in said[2]
    for one in told:
        for pair in one.best:
            assert_told(pair)


def assert_told(pair: Joined) -> None:
    assert all(name in pair.sentence for name in pair.names)
    assert "None" not in pair.sentence and "{" not in pair.sentence and "nan" not in pair.sentence
    assert " mm free around and between them" in pair.sentence and " mm of headroom left" in pair.sentence


def test_a_way_nobody_has_room_for_says_nothing(demo_con: duckdb.DuckDBPyConnection) -> None:
    tight = several(demo_con, [replace(SPLIT, left_mm=1.0, right_mm=1.0)])[0]
    assert all(way.kept_count == 0 and not way.best for way in tight.ways) and tight.sentences == ()


def test_at_least_one_must_be_asked(demo_con: duckdb.DuckDBPyConnection) -> None:
    with pytest.raises(RequirementError, match=r"The best 0 pairs are asked for\. Ask for 1 or more"):
        several(demo_con, [SPLIT], 0)
