"""The parts that nothing beats, against plain Python that compares each with each."""

from collections.abc import Sequence
from dataclasses import replace
from math import inf
from random import Random

import duckdb
import pytest

from subsearch.repair.asking import ask
from subsearch.repair.folder import read_repair
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found, find
from subsearch.search.requirement import Requirement
from subsearch.search.unbeaten import BEATEN, UNBEATEN
from subsearch.shipped import shipped

EVERYONE = 100_000
Three = tuple[float | None, float | None, float | None]  # each the more the better
ROOM = ("left_mm", "right_mm", "front_mm", "back_mm", "free_diameter_mm", "headroom_mm")


def unbeaten(all_of_them: Sequence[Three]) -> list[bool | None]:
    """True where no other is as good in all and better in one; None where a number is not stated."""
    stated = [one for one in all_of_them if None not in one]
    told: list[bool | None] = []
    for one in all_of_them:
        if None in one:
            told.append(None)
        else:
            told.append(not any(other != one and all(map(better_or_same, other, one)) for other in stated))
    return told


def better_or_same(other: float | None, one: float | None) -> bool:
    assert other is not None
    assert one is not None
    return other >= one


@pytest.mark.parametrize("seed", range(60))
def test_any_numbers(seed: int) -> None:
    dice = Random(seed)
    lives, sizes = [None, inf, 15.0, 15.0, 9.5, 3.25], [None, 0.0, 0.5, 1.1, 2.0, 7.5]
    grid = (lives, sizes, sizes) if seed % 2 else ([inf, 15.0, 9.5], [float(at) for at in range(9)], sizes[1:])
    threes: list[list[Three]] = [
        [(dice.choice(grid[0]), dice.choice(grid[1]), dice.choice(grid[2])) for _ in range(dice.randint(1, 60))]
        for _ in range(3)
    ]
    rows = [
        {"number": number, "pk": pk, "best_life": one[0], "best_margin": one[1],
         "best_cost": None if one[2] is None else -one[2], "place": pk + 1, "answer": True}
        for number, its in enumerate(threes)
        for pk, one in enumerate(its)
    ]  # fmt: skip
    con = duckdb.connect()
    con.execute("create table scored (number integer, pk integer, best_life double, best_margin double, "
                "best_cost double, place integer, answer boolean)")  # fmt: skip
    con.execute("insert into scored select unnest($rows, recursive := true)", {"rows": rows})
    con.execute("create table placed as select number, pk from scored where place <= if(number = 2, 5, 1000)")
    found = con.execute(
        f"select number, {UNBEATEN} from placed join scored using (number, pk) left join ({BEATEN}) as beaten "
        "using (number, pk) order by number, pk"
    ).fetchall()
    for number, its in enumerate(threes):
        wanted = unbeaten(its)[: 5 if number == 2 else 1000]
        assert [told for at, told in found if at == number] == wanted, its


@pytest.fixture(scope="module")
def asked() -> list[Requirement]:
    """The demo's positions, and a few that leave out the heat, the room, or both."""
    repair = read_repair(shipped("catalog_demo") / "organ")
    needs = [one for one in (ask(repair, position).requirement for position in repair.positions) if one is not None]
    value = Requirement(capacitance_f=100e-6, rated_v=25.0)
    return [
        *needs,
        value,
        replace(value, headroom_mm=15.0),
        replace(value, working_c=85),
        replace(value, headroom_mm=15.0, working_c=85, ripple_a=0.2),
        Requirement(capacitance_f=1e-6, rated_v=50, working_c=75, headroom_mm=15.0),
    ]


@pytest.fixture(scope="module")
def everyone(demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement]) -> list[Found]:
    return find(demo_con, asked, EVERYONE)


def three(one: Candidate, need: Requirement) -> Three:
    """Life, margin and cost of a part by what it shows of itself; what is not asked is the same for all."""
    years, margin, cost = one.made["years"], one.made["tightest_mm"], one.made["cost"]
    life = inf if one.made["not_worn_by_heat"] else years if years is None else round(years, 9)
    has_room = any(getattr(need, name) is not None for name in ROOM)
    return (
        0.0 if need.working_c is None else life,
        0.0 if not has_room else margin if margin is None else round(margin, 6),
        None if cost is None else -round(cost, 9),
    )


def among_three(found: Found) -> list[bool | None]:
    """Which of the first three nothing beats if there were no others."""
    return unbeaten([three(one, found.requirement) for one in found.kept[:3]])


def test_every_kept_part_of_the_demo(everyone: list[Found]) -> None:
    for found in everyone:
        wanted = unbeaten([three(one, found.requirement) for one in found.kept])
        assert [one.unbeaten for one in found.kept] == wanted, found.requirement
    told = [one.unbeaten for found in everyone for one in found.kept]
    assert min(told.count(True), told.count(False), told.count(None)) > 10


def test_a_few_are_judged_against_all(
    demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement], everyone: list[Found]
) -> None:
    for few, its_all in zip(find(demo_con, asked, 3), everyone, strict=True):
        assert few.kept == its_all.kept[:3]
    beaten_from_outside = [
        one
        for found in everyone
        for one, alone in zip(found.kept[:3], among_three(found), strict=True)
        if alone and one.unbeaten is False
    ]
    assert beaten_from_outside


def test_what_may_not_fit_is_not_judged(everyone: list[Found]) -> None:
    opened = [one.unbeaten for found in everyone for one in found.open]
    assert opened
    assert set(opened) == {None}
