"""One part for several positions, against every part that each of them keeps, compared one by one."""

from random import Random

import duckdb
import pytest

from subsearch.search.candidates import find
from subsearch.search.matched import Common, matched
from subsearch.search.requirement import Requirement
from subsearch.search.weights import Weights

EVERYTHING = 100_000
Key = tuple[str | None, str]


def group(dice: Random) -> list[Requirement]:
    """Two to four positions, alike but for their room, voltage, temperature or value."""
    value = dice.choice([10e-9, 47e-9, 0.1e-6, 1e-6, 4.7e-6, 10e-6, 22e-6, 47e-6, 100e-6, 220e-6])
    role = dice.choice([None, "coupling", "bypass", "timing", "rail decoupling"])
    holes = dice.choice([2.5, 5.0, 10.0])
    near = [value] * 9 + [value * 1.5]
    return [
        Requirement(
            reference=f"C{number}", role=role, capacitance_f=dice.choice(near), pieces=dice.choice([1, 1, 12, 100]),
            rated_v=dice.choice([None, 10.0, 25.0]), headroom_mm=dice.choice([None, 12.5, 13.0, 16.0, 25.0]),
            hole_spacing_mm=dice.choice([None, None, holes]), working_c=dice.choice([None, 45.0, 60.0]),
            life_wanted_y=dice.choice([None, None, 5.0, 10.0]), lead_style=dice.choice([None, None, "radial"]),
        )
        for number in range(dice.randint(2, 4))
    ]  # fmt: skip


def by_hand(con: duckdb.DuckDBPyConnection, asked: list[Requirement], weights: Weights) -> Common | None:
    kept: list[dict[Key, float]] = []
    for need in asked:
        found = find(con, [need], EVERYTHING, weights)[0]
        assert len(found.kept) == found.kept_count
        kept.append({(one.part["maker"], one.part["part_number"]): one.total for one in found.kept})
    shared = [part for part in kept[0] if all(part in its for its in kept)]
    if not shared:
        return None
    best = min(shared, key=lambda part: (-round(sum(its[part] for its in kept), 9), part[0] is None, part))
    return Common(*best, len(shared))


@pytest.mark.parametrize("weights", [Weights(), Weights({"life": 3, "price": 0, "stock": 2})])
def test_the_best_of_all_that_fit_every_position(demo_con: duckdb.DuckDBPyConnection, weights: Weights) -> None:
    groups = [group(Random(f"match {seed}")) for seed in range(40)]
    told = matched(demo_con, groups, weights)
    assert told == [by_hand(demo_con, asked, weights) for asked in groups]
    assert sum(one is None for one in told) in range(3, 30)
    firsts = [find(demo_con, asked, 1, weights) for asked in groups]
    others = sum(
        one is not None and any(found.kept[0].name != one.name for found in its)
        for one, its in zip(told, firsts, strict=True)
    )
    assert others >= 5  # where the best of one position is not the best of all


def test_one_position_alone_gets_its_best(demo_con: duckdb.DuckDBPyConnection) -> None:
    need = Requirement(capacitance_f=47e-6, rated_v=25.0)
    found = find(demo_con, [need])[0]
    (told,) = matched(demo_con, [[need]])
    assert told is not None
    assert (told.name, told.fits) == (found.kept[0].name, found.kept_count)


def test_nothing_asked(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert matched(demo_con, []) == []
