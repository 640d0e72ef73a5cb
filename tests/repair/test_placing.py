"""Where parts stand in a position: against the margins of the search, the laws of lead lengths, and plain geometry."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from math import inf, isnan, nan
from random import Random
from typing import Any

import duckdb
import pytest
from repair.common import candidate
from repair.placing_needs import EVERY_WAY

from subsearch.repair.body_sizes import sized
from subsearch.repair.in_place import Lead, Placed, Point, Solid, Span, Stand
from subsearch.repair.placing import NO_WAY, PLACING, placed
from subsearch.repair.placing_notes import NO_HOLES, NO_REACH, NO_SHAPE, NO_SPACING, NO_THICKNESS
from subsearch.search import numbers
from subsearch.search.answers import Candidate
from subsearch.search.candidates import find
from subsearch.search.derived import OF_PART
from subsearch.search.derived_ways import BOARD_MM
from subsearch.search.requirement import Requirement
from subsearch.search.ways import BY_NAME, FOLDED, ON_END, WAYS

NEAR = 1e-6
NEEDED = {  # the number of the search that says how much lead a way needs, and at which of its leads
    **{way.name: "on_end_lead_mm" for way in ON_END},
    "laid flat to the front": "side_lead_mm",
    "laid flat to the back": "side_lead_mm",
    "laid flat to the left": "end_lead_mm",
    "laid flat to the right": "end_lead_mm",
}
FORMED = {
    "upright": "lead_margin_mm",
    "leads formed": "formed_lead_margin_mm",
    "turned by a quarter": "turned_lead_margin_mm",
    "both leads formed to one side": "aside_lead_margin_mm",
}


@pytest.fixture(scope="module")
def stood(demo_con: duckdb.DuckDBPyConnection) -> list[tuple[Requirement, Candidate, Placed]]:
    """Candidates of the demo in every way of mounting, at most 40 of each way and need."""
    told = []
    for found in find(demo_con, EVERY_WAY, best=400):
        seen: Counter[str] = Counter()
        for one in (*found.kept, *found.open):
            seen[one.made["way"]] += 1
            if seen[one.made["way"]] <= 40:
                told.append((found.requirement, one, placed(found.requirement, one, "left")))
    return told


def test_every_way_is_placed(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    assert set(PLACING) == {way.name for way in WAYS}
    assert {one.way for *_, one in stood} == set(PLACING)
    assert len(stood) > 500


def test_gaps_are_the_margins_of_the_search(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    compared: Counter[str] = Counter()
    for need, one, told in stood:
        gaps = {gap.name: gap.left_mm for gap in told.gaps}
        asked = [margin for margin in BY_NAME[told.way].margins if getattr(need, margin.asked_by) is not None]
        assert set(gaps) == {margin.asked_by.removesuffix("_mm").replace("_", " ") for margin in asked}
        for margin in asked:
            gap, wanted = gaps[margin.asked_by.removesuffix("_mm").replace("_", " ")], one.made[margin.made]
            assert isnan(gap) if wanted is None else gap == pytest.approx(wanted, abs=NEAR), (told.way, margin.made)
            compared[told.way] += wanted is not None
    assert min(compared.values()) > 5
    assert set(compared) == set(PLACING)


def test_what_fits_has_no_excess_and_what_is_refused_has(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    dice = Random(3)
    for need, one, told in stood:
        assert not (one.answer and told.excess)
        side = dice.choice(["left_mm", "right_mm", "front_mm", "back_mm", "headroom_mm"])
        gap = {gap.name: gap.left_mm for gap in told.gaps}.get(side.removesuffix("_mm"), nan)
        free = (getattr(need, side) or nan) - gap - 0.25  # of what the body takes there a quarter of a millimetre less
        if free > 0 and told.way != "both leads formed to one side":
            less: dict[str, Any] = {side: free}
            over = {gap.name: gap.left_mm for gap in placed(replace(need, **less), one).excess}
            assert over[side.removesuffix("_mm")] == pytest.approx(-0.25)


def test_leads_end_in_their_holes_below_the_board(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    seen: Counter[str] = Counter()
    for need, _, told in stood:
        leads, half = told.stands[0].leads, (need.hole_spacing_mm or nan) / 2
        if len(leads) == 2:
            assert [lead.points[-1] for lead in leads] == [(-half, 0.0, -BOARD_MM), (half, 0.0, -BOARD_MM)]
            seen[told.way] += 1
    assert set(seen) == set(PLACING)


def test_leads_start_at_the_body(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    """But leads that are delivered formed to more than the body is wide."""
    for _, one, told in stood:
        spacing = sized(one.part).spacing_mm
        for lead in told.stands[0].leads:
            if _known(told.stands[0].nominal) and not spacing > one.part["along_mm"] - 1.0:
                assert _outside(told.stands[0].nominal, lead.points[0]) == pytest.approx(0.0, abs=NEAR), told.way


def test_leads_are_as_long_as_the_laws_say(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    seen: Counter[str] = Counter()
    for _, one, told in stood:
        stand, made = told.stands[0], one.made
        if len(stand.leads) < 2:
            continue
        longest = max(lead.length_mm for lead in stand.leads)
        if told.way in NEEDED and made[NEEDED[told.way]] is not None:
            more = stand.largest.z.size - stand.nominal.z.size if told.way in {way.name for way in ON_END} else 0.0
            assert longest - more == pytest.approx(made[NEEDED[told.way]], abs=NEAR), told.way
            seen[told.way] += 1
        elif told.way == FOLDED.name and made["folded_lead_mm"] is not None:
            assert longest <= made["folded_lead_mm"] + NEAR
            seen[told.way] += 1
        elif told.way in FORMED and one.part["lead_length_mm"] is not None and made["offset_mm"] is not None:
            needed = one.part["lead_length_mm"] - made[FORMED[told.way]]
            lean = made["offset_mm"] if told.way == "upright" else 0.0  # which the law of straight leads leaves out
            assert needed - NEAR <= longest <= needed + lean + NEAR, told.way
            seen[told.way] += 1
    assert set(seen) == {*NEEDED, *FORMED, FOLDED.name}


def test_bodies_do_not_stand_in_their_leads_or_in_the_board(stood: list[tuple[Requirement, Candidate, Placed]]) -> None:
    """But where they leave it: points of a lead a little from its start lie outside the body as stated."""
    for _, one, told in stood:
        stand = told.stands[0]
        if not _known(stand.nominal):
            continue
        assert stand.nominal.z.low >= 0
        for lead in stand.leads:
            for point in _along(lead):
                assert _outside(stand.nominal, point) > -NEAR, (told.way, one.name)


def test_the_room_taken_holds_the_body_and_what_stands_of_it(
    stood: list[tuple[Requirement, Candidate, Placed]],
) -> None:
    for _, _, told in stood:
        stand = told.stands[0]
        if _known(stand.taken):
            for body in (stand.nominal, stand.largest):
                assert all(_holds(getattr(stand.taken, axis), getattr(body, axis)) for axis in "xyz")


def test_sizes_are_those_of_the_search(demo_con: duckdb.DuckDBPyConnection) -> None:
    names = ("along_max_mm", "across_max_mm", "tall_max_mm", "spacing_mm", "thick_mm")
    made = ", ".join(f"{OF_PART[name]} as {name}" for name in names)
    relation = demo_con.execute(f"select part.*, {made} from main.part as part")
    columns, rows = [one[0] for one in relation.description or ()], relation.fetchall()
    for values in rows:
        row = dict(zip(columns, values, strict=True))
        part = sized(row)
        for got, name in zip((*part.largest, part.spacing_mm, part.thick_mm), names, strict=True):
            assert isnan(got) if row[name] is None else got == pytest.approx(row[name], abs=1e-12), (name, row)
    assert len(rows) > 4000
    assert set(names) <= set(numbers.MADE)


def test_a_snap_in_can_has_its_own_tolerance() -> None:
    snap: dict[str, Any] = {"lead_form": "snap-in", "along_mm": 18.0, "across_mm": 18.0, "tall_mm": 30.0}
    assert placed(Requirement(), candidate(**snap)).stands[0].largest.x.size == 19.0
    assert placed(Requirement(), candidate(**(snap | {"lead_form": None}))).stands[0].largest.x.size == 18.5


def test_an_empty_space_has_its_room_and_holes() -> None:
    told = placed(Requirement(hole_spacing_mm=5.0, hole_diameter_mm=1.0, left_mm=6.0, headroom_mm=14.0), None)
    assert (told.stands, told.gaps, told.way) == ((), (), "")
    assert (told.hole_spacing_mm, told.hole_diameter_mm) == (5.0, 1.0)
    assert (told.room.left_mm, told.room.right_mm, told.room.headroom_mm) == (6.0, inf, 14.0)


@pytest.mark.parametrize(
    ("left_out", "said"),
    [
        ({"tall_mm": None}, "Not stated, so not drawn: height."),
        ({"along_mm": None, "across_mm": None}, "Not stated, so not drawn: length along, width across."),
        ({"shape": None}, NO_SHAPE),
        ({"lead_spacing_mm": None}, NO_SPACING),
        ({"lead_diameter_mm": None}, NO_THICKNESS),
    ],
)
def test_what_is_not_stated_is_said_and_no_size_is_made_up(left_out: dict[str, Any], said: str) -> None:
    whole: dict[str, Any] = {"lead_spacing_mm": 2.5, "lead_diameter_mm": 0.5}
    told = placed(Requirement(hole_spacing_mm=2.5), candidate(**(whole | left_out)))
    assert said in told.notes
    assert said not in placed(Requirement(hole_spacing_mm=2.5), candidate(**whole)).notes
    assert isnan(told.stands[0].largest.z.high) == ("tall_mm" in left_out or "shape" in left_out)
    assert bool(told.stands[0].leads) == ("lead_spacing_mm" not in left_out)
    assert [isnan(lead.diameter_mm) for lead in told.stands[0].leads] == [said == NO_THICKNESS] * len(
        told.stands[0].leads
    )


def test_a_lying_body_whose_bends_are_not_known_is_not_placed() -> None:
    flat = candidate({"way": "laid flat to the back"}, shape="box", lead_spacing_mm=5.0)
    told = placed(Requirement(hole_spacing_mm=5.0, back_mm=20.0, may_lie_flat=True), flat)
    assert NO_REACH in told.notes
    assert isnan(told.stands[0].largest.y.high)
    assert [gap.name for gap in told.gaps if isnan(gap.left_mm)] == ["back"]


def test_leads_that_miss_their_holes_go_down_beside_them() -> None:
    told = placed(Requirement(hole_spacing_mm=7.5), candidate({"way": None}, lead_spacing_mm=2.5))
    assert [lead.points[-1][0] for lead in told.stands[0].leads] == [-1.25, 1.25]
    assert "Each lead misses its hole by 2.5 mm." in told.notes
    assert NO_WAY in told.notes


def test_leads_delivered_formed_are_said() -> None:
    said = "Its leads come formed to 5 mm: it may stand higher than is drawn."
    need = Requirement(hole_spacing_mm=5.0)
    assert said in placed(need, candidate(lead_spacing_mm=2.0, delivered_spacing_mm=5.0)).notes
    assert said not in placed(need, candidate(lead_spacing_mm=5.0, delivered_spacing_mm=5.0)).notes


def test_without_holes_the_leads_go_straight_down() -> None:
    told = placed(Requirement(), candidate(lead_spacing_mm=2.5))
    assert NO_HOLES in told.notes
    assert [lead.points[-1][0] for lead in told.stands[0].leads] == [-1.25, 1.25]
    assert not any("misses" in one for one in told.notes)


def test_a_vented_can_asks_for_room_above_it_only_when_it_stands() -> None:
    big: dict[str, Any] = {
        "along_mm": 18.0,
        "across_mm": 18.0,
        "tall_mm": 30.0,
        "vent": "vented",
        "lead_spacing_mm": 7.5,
    }
    need = Requirement(hole_spacing_mm=7.5, may_lie_flat=True)
    assert placed(need, candidate(**big)).stands[0].vent_mm == 3.0
    assert placed(need, candidate(**(big | {"vent": "none"}))).stands[0].vent_mm == 0.0
    lying = placed(need, candidate({"way": "laid flat to the left"}, **big, lead_diameter_mm=0.8))
    assert (lying.stands[0].vent_mm, lying.stands[0].vent_faces) == (0.0, "left")
    assert "Its vent, in the end away from the leads, faces the left." in lying.notes


def _known(solid: Solid) -> bool:
    return all(span.known for span in (solid.x, solid.y, solid.z))


def _holds(outer: Span, inner: Span) -> bool:
    return not inner.known or (outer.low <= inner.low + NEAR and inner.high <= outer.high + NEAR)


def _outside(body: Solid, point: Point) -> float:
    """How far a point lies outside a block, or below 0 how deep in it."""
    spans = (body.x, body.y, body.z)
    return max(max(span.low - at, at - span.high) for span, at in zip(spans, point, strict=True))


def _along(lead: Lead) -> Iterator[Point]:
    """Points all along a lead."""
    for (a, b, c), (d, e, f) in zip(lead.points, lead.points[1:], strict=False):
        yield from ((a + (d - a) * part, b + (e - b) * part, c + (f - c) * part) for part in (0, 0.25, 0.5, 0.75, 1))


def test_helpers_can_fail() -> None:
    block = Solid(Span(0, 2), Span(0, 2), Span(0, 2))
    assert _outside(block, (1, 1, 1)) == -1
    assert _outside(block, (1, 1, 5)) == 3
    assert not _holds(Span(0, 1), Span(0, 2))
    assert Lead(((0, 0, 2), (0, 0, 0), (3, 0, 0)), 0.5).length_mm == 5
    assert isinstance(placed(Requirement(), candidate()).stands[0], Stand)
