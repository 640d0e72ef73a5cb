"""Where two parts stand together: against the margin that the search tells of the pair, and plain geometry."""

from math import cos, dist, inf, radians, sin
from typing import Any

import duckdb
import pytest

from subsearch.repair.body_sizes import Sized, Sizes
from subsearch.repair.in_place import Placed, Room, Solid
from subsearch.repair.placing import placed_pair
from subsearch.repair.placing_pairs import two_stands
from subsearch.repair.room_left import BETWEEN, gaps_of_two
from subsearch.search.requirement import Requirement
from subsearch.search.several import Joined, several

NEAR = 1e-6
ASKED: dict[str, Any] = {
    "capacitance_f": 100e-6,
    "rated_v": 25.0,
    "hole_spacing_mm": 5.0,
    "in_stock": False,
    "headroom_mm": 25.0,
}
NEEDS = [
    Requirement(**ASKED, left_mm=14.0, right_mm=14.0, front_mm=8.0, back_mm=8.0, reverses=True),
    Requirement(**ASKED, left_mm=9.0, right_mm=15.0, front_mm=6.0, back_mm=11.0),
    Requirement(**ASKED, left_mm=14.0, right_mm=10.0),
    Requirement(**ASKED, front_mm=11.0, back_mm=16.0, left_mm=4.0),
    Requirement(**ASKED, free_diameter_mm=30.0),
    Requirement(**ASKED),
]


@pytest.fixture(scope="module")
def joined(demo_con: duckdb.DuckDBPyConnection) -> list[tuple[Requirement, Joined, Placed]]:
    found = several(demo_con, NEEDS, best=20)
    return [(need, one, placed_pair(need, one)) for need, its in zip(NEEDS, found, strict=True) for one in its.best]


def test_the_smallest_gap_is_the_margin_of_the_pair(joined: list[tuple[Requirement, Joined, Placed]]) -> None:
    compared = set()
    for need, pair, told in joined:
        gaps, margins = {gap.name: gap.left_mm for gap in told.gaps}, dict(pair.margins)
        assert gaps["headroom"] == pytest.approx(margins["headroom"], abs=NEAR)
        around = [left for name, left in gaps.items() if name not in ("headroom", "free diameter")]
        around += [gaps["free diameter"] / 2] if "free diameter" in gaps else []
        if "around and between" in margins:
            assert min(around) == pytest.approx(margins["around and between"], abs=NEAR)
            compared.add(need)
        assert not told.excess
        assert [stand.name for stand in told.stands] == list(pair.names)
        assert _apart(*(stand.largest for stand in told.stands)) == pytest.approx(gaps[BETWEEN], abs=1e-3)
    assert compared == set(NEEDS[:-1])


def _apart(one: Solid, other: Solid) -> float:
    """The gap of two outlines by points all along the rim of one, each to the other; below 0 is told as 0."""

    def rim(body: Solid) -> list[tuple[float, float]]:
        u, v = body.x.middle, body.y.middle
        if body.axis == "z":
            turns, radius = [radians(quarter / 4) for quarter in range(1440)], body.x.size / 2
            return [(u + radius * cos(turn), v + radius * sin(turn)) for turn in turns]
        across = [body.x.low + body.x.size * part / 400 for part in range(401)]
        up = [body.y.low + body.y.size * part / 400 for part in range(401)]
        return [(a, b) for a in across for b in body.y] + [(a, b) for a in body.x for b in up]

    def away(point: tuple[float, float], body: Solid) -> float:
        if body.axis == "z":
            return dist(point, (body.x.middle, body.y.middle)) - body.x.size / 2
        off = [max(span.low - at, at - span.high, 0.0) for span, at in zip((body.x, body.y), point, strict=True)]
        return dist(off, (0.0, 0.0))

    return max(min(away(point, other) for point in rim(one)), 0.0)


def _part(along: float, across: float, shape: str = "can") -> Sized:
    sizes = Sizes(along, across, 10.0)
    return Sized(shape, sizes, sizes, 5.0, 0.6, 0.6, False, False, 2.0)


@pytest.mark.parametrize(
    ("room", "middles"),
    [
        # open along the holes: in a row, the first against the side that is asked
        (Room(left_mm=10.0, front_mm=6.0, back_mm=6.0), [-4.0, 7.0]),
        (Room(right_mm=10.0, front_mm=6.0, back_mm=6.0), [-7.0, 4.0]),
        (Room(front_mm=6.0, back_mm=6.0), [-5.5, 5.5]),
        (Room(), [-5.0, 5.0]),  # no room is asked: side by side
    ],
)
def test_an_open_room_has_a_row(room: Room, middles: list[float]) -> None:
    one, other = two_stands(room, ("Hollow 1", "Hollow 1"), [_part(10, 10), _part(10, 10)])
    assert [one.largest.x.middle, other.largest.x.middle] == pytest.approx(middles)
    assert [one.largest.y.middle, other.largest.y.middle] == [0.0, 0.0]


def test_boxes_are_turned_where_that_leaves_more() -> None:
    parts = [_part(18, 6, "box"), _part(18, 6, "box")]
    one, other = two_stands(Room(7.0, 7.0, 10.0, 10.0), ("Hollow 1", "Hollow 2"), parts)
    assert (one.largest.x.size, other.largest.x.size) == (6, 6)
    gaps = {gap.name: gap.left_mm for gap in gaps_of_two(Room(7.0, 7.0, 10.0, 10.0), one, other)}
    assert min(gaps.values()) == pytest.approx(2 / 3)


def test_two_that_do_not_fit_say_by_how_much() -> None:
    room = Room(10.0, 10.0, 6.0, 6.0, 8.0)
    one, other = two_stands(room, ("Hollow 1", "Hollow 1"), [_part(10, 10), _part(12, 12)])
    gaps = {gap.name: gap.left_mm for gap in gaps_of_two(room, one, other)}
    assert gaps["headroom"] == -2.0
    assert min(gaps.values()) < 0
    assert room.free_diameter_mm == inf


def test_turned_boxes_stand_in_a_row_without_touching() -> None:
    one, other = two_stands(
        Room(front_mm=5.0, back_mm=5.0), ("Hollow 1", "Hollow 2"), [_part(6, 18, "box"), _part(6, 18, "box")]
    )
    assert (one.largest.x.size, one.largest.y.size) == (18, 6)
    assert [one.largest.x.middle, other.largest.x.middle] == pytest.approx([-10.0, 10.0])
