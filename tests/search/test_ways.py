"""Ways of mounting in the search: their margins against the laws of one body, and more room never loses a part."""

from collections.abc import Callable
from dataclasses import replace
from math import inf, isnan, nan
from random import Random
from typing import Any

import duckdb
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from subsearch.formulas.fits import Body, Fit, HolePair
from subsearch.formulas.mounting import formed, formed_to_one_side, turned, upright
from subsearch.formulas.mounting_axial import on_end
from subsearch.formulas.mounting_flat import folded_flat, laid_flat
from subsearch.formulas.spaces import Space
from subsearch.search import parts
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.candidates import find
from subsearch.search.derived_ways import BOARD_MM, LIFT_MM
from subsearch.search.numbers import MADE, with_numbers
from subsearch.search.requirement import Requirement
from subsearch.search.stated import Stated
from subsearch.search.way import Way
from subsearch.search.ways import BENT_NAMES, FOLDED, LYING, ON_END, WAYS

SHAPES = ("can", "box", "axial")
SUITED = {"turned": ("box",), "folded": ("can",)}
SIDES = ("left_mm", "right_mm", "front_mm", "back_mm", "free_diameter_mm", "headroom_mm")
LAWS: dict[str, Callable[[Body, Space, HolePair], Fit]] = {
    "upright": upright,
    "formed": formed,
    "aside": formed_to_one_side,
    "turned": turned,
    "folded": lambda body, space, holes: folded_flat(body, space, holes, LIFT_MM),
}


def judge(stated: Stated) -> str:
    """The statement of every part against one of the needs, with all numbers and ways."""
    rows = "select need.number as number, part.* from need join main.part as part on part.pk % 199 = need.number"
    numbers = with_numbers(stated, " ".join(MADE), rows)
    return stated.written(f"part as materialized ({numbers})", last=parts.judged(stated, "part", True))


def law(way: Way, body: Body, space: Space, holes: HolePair) -> Fit:
    """What the law says of one body in this way."""
    if way.key in LAWS:
        return LAWS[way.key](body, space, holes)
    fits = on_end(body, space, holes) if way in ON_END else laid_flat(body, space, holes, LIFT_MM)
    return next(fit for fit in fits if fit.way.endswith(way.name))


def some_needs(seed: int, many: int) -> list[Requirement]:
    """Needs with any of the room asked."""
    dice = Random(seed)
    asked = []
    for _ in range(many):
        room: dict[str, Any] = {side: round(dice.uniform(2, 30), 1) if dice.random() < 0.8 else None for side in SIDES}
        room["hole_spacing_mm"] = round(dice.choice([2, 2.5, 3.5, 5, 5.6, 7.5, 10, 15]) + dice.choice([0, 0.6, 3.2]), 1)
        asked.append(Requirement(may_lie_flat=True, **room))
    return asked


def known(value: float | None, otherwise: float = nan) -> float:
    return otherwise if value is None else value


def body_of(row: dict[str, Any], way: Way) -> Body:
    """The body, its leads as thick as the search takes them: only where they are bent as thick as is usual."""
    delivered = row["delivered_spacing_mm"]
    along, across, tall = (known(row[f"{side}_max_mm"]) for side in ("along", "across", "tall"))
    return Body(
        along,
        across,
        tall,
        shape=row["shape"],
        spacing_mm=known(row["lead_spacing_mm"] if delivered is None else delivered),
        lead_diameter_mm=known(row["thick_mm" if way.name in BENT_NAMES else "lead_diameter_mm"]),
        lead_length_mm=known(row["lead_length_mm"], inf),
    )


def space_of(need: Requirement) -> Space:
    return Space(**{side: known(getattr(need, side), inf) for side in SIDES})


def of_search(way: Way, row: dict[str, Any], need: Requirement) -> list[float]:
    """The margins that are asked of the search, in order of size."""
    asked = [
        known(row[margin.made])
        for margin in (*way.margins, *way.leads)
        if getattr(need, margin.asked_by) is not None and not (margin.of_stated and row[margin.of_stated] is None)
    ]
    return sorted(asked, key=lambda margin: (isnan(margin), margin))


@pytest.fixture(scope="module")
def judged(demo_con: duckdb.DuckDBPyConnection) -> list[dict[str, Any]]:
    """Every part against one of the needs, with all margins."""
    return rows_of(demo_con, *asked_of(judge, some_needs(5, 199)))


@pytest.mark.parametrize("way", [way for way in WAYS if way is not LYING], ids=lambda way: way.name)
def test_margins_are_those_of_the_laws(judged: list[dict[str, Any]], way: Way) -> None:
    """But for an axial part between its holes, for which only the usual room for both bends is asked."""
    asked, compared, held = some_needs(5, 199), 0, 0
    for row in judged:
        if row["style"] != ("axial" if way in ON_END else "radial") or row["shape"] not in SUITED.get(way.key, SHAPES):
            continue
        need = asked[row["number"]]
        fit = law(way, body_of(row, way), space_of(need), HolePair(need.hole_spacing_mm or nan, BOARD_MM))
        wanted = sorted((margin for _, margin in fit.margins), key=lambda margin: (isnan(margin), margin))
        leads, room = row[f"leads_{way.key}"], row[f"room_{way.key}"]
        holds = False if False in (leads, room) else None if None in (leads, room) else True
        # A law that moves a body by an unknown reach knows no side of it; the search knows those it does not touch.
        known_all = not any(map(isnan, wanted))
        if leads is None and row["lead_length_mm"] is None:  # which the law takes as endless
            continue
        assert holds is fit.fits or (not known_all and fit.fits is None), (row, need)
        if known_all and way.key != "aside":  # which goes as far as is best by the law, and here as little as will do
            assert of_search(way, row, need) == pytest.approx(wanted, abs=1e-9), (row, need)
        compared += known_all
        held += holds is True
    assert compared > 100 and (held > 0 or way is FOLDED), (compared, held)  # no list states leads as long as that


@settings(max_examples=8, deadline=None)
@given(
    some.fixed_dictionaries(
        {side: some.none() | some.integers(20, 150).map(lambda tenths: tenths / 10) for side in SIDES}
    ),
    some.sampled_from([None, 2.5, 5.0, 7.5, 12.0]),
    some.integers(0, 60),
)
def test_more_room_never_loses_a_part(
    demo_con: duckdb.DuckDBPyConnection, room: dict[str, Any], hole: float | None, tenths: int
) -> None:
    need = Requirement(
        hole_spacing_mm=hole, may_lie_flat=True, capacitance_low_f=1e-6, capacitance_high_f=22e-6, **room
    )
    more: list[dict[str, Any]] = [{side: size + tenths / 10} for side, size in room.items() if size is not None]
    wider = [need, *(replace(need, **one) for one in more)]
    first, *others = [
        [{(one.part["maker"], one.part["part_number"]) for one in some_of} for some_of in (found.kept, found.open)]
        for found in find(demo_con, wider, best=10_000)
    ]
    for kept, left_open in others:
        assert first[0] <= kept
        assert first[1] <= kept | left_open


PART = Requirement(capacitance_low_f=47e-6, capacitance_high_f=47e-6, hole_spacing_mm=5.6, headroom_mm=20.0)


def test_the_way_is_named_with_its_margins(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [PART], best=1000)[0]
    ways = {one.made["way"] for one in found.kept}
    assert ways == {"upright", "leads formed"}
    straight = [one.contributions["lead spacing"] for one in found.kept if one.made["way"] == "upright"]
    bent = [one for one in found.kept if one.made["way"] == "leads formed"]
    assert max(one.contributions["lead spacing"] for one in bent) < min(straight)
    for one in bent:
        assert 0.3 < one.made["offset_mm"] <= 2.6
        assert one.made["tightest_mm"] == one.made["formed_headroom_margin_mm"] < one.made["headroom_margin_mm"]
    said = {one.name: one.sentence for one in found.why(bent[0].part["maker"], bent[0].part["part_number"])}
    assert "leads formed: headroom" in said["body"] and "each lead formed by" in said["lead_spacing"]


def test_leads_that_are_too_short_or_too_far_are_told_in_mm(demo_con: duckdb.DuckDBPyConnection) -> None:
    cut = demo_con.execute(
        "select maker, part_number from part where lead_form = 'cut' and lead_spacing_mm = 3.5 limit 1"
    ).fetchone()
    assert cut is not None
    for hole, words in ((5.6, "lead length 1.785 mm short"), (9.7, "reach of formed leads 0.5 mm short")):
        need = replace(PART, hole_spacing_mm=hole, headroom_mm=100.0)
        said = {one.name: one for one in find(demo_con, [need])[0].why(*cut)}
        assert said["lead_spacing"].answer is False and words in said["lead_spacing"].sentence
        assert said["body"].answer is True


@pytest.mark.parametrize(("plated", "kept"), [(True, False), (False, True), (None, True)])
def test_a_thick_lead_is_refused_by_a_plated_hole_only(
    demo_con: duckdb.DuckDBPyConnection, plated: bool | None, kept: bool
) -> None:
    need = replace(PART, hole_spacing_mm=None, headroom_mm=None, hole_diameter_mm=0.5, hole_plated=plated)
    found = find(demo_con, [need])[0]
    assert (found.kept_count > 0) is kept
    assert any("hole" in one.not_stated for one in found.open) is (
        plated is True
    )  # a diameter not stated matters to a plated hole only
