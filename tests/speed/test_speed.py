"""The benchmarks work: on a small catalog every way gives the same answer, and the catalog is the same each time."""

from collections.abc import Iterator
from pathlib import Path

import duckdb
import pytest

from speed import bench_find, bench_load, bench_repair, bench_start
from speed.asked import ASKED, TYPICAL, answered, repair
from speed.make_catalog import E12, make_catalog
from speed.masks import Frames
from speed.rounds import Goal, measured, ratio
from subsearch.catalog.merging import ORDER
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import find

OFFERS = 2000


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Iterator[duckdb.DuckDBPyConnection]:
    path = tmp_path_factory.mktemp("speed") / "small.duckdb"
    make_catalog(path, OFFERS)
    with open_to_read(path) as con:
        yield con


def fingerprint(con: duckdb.DuckDBPyConnection) -> list[object]:
    return [con.execute(f"select sum(hash(one)) from {table} as one").fetchall() for table in ("part", "offer")]


def test_a_catalog_is_the_same_each_time(small: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    prints = []
    for seed in (1, 2):
        make_catalog(tmp_path / f"{seed}", OFFERS, seed)
        with open_to_read(tmp_path / f"{seed}") as con:
            prints.append(fingerprint(con))
    assert fingerprint(small) == prints[0] != prints[1]


def test_a_catalog_is_stored_as_a_load_stores_it(small: duckdb.DuckDBPyConnection) -> None:
    numbers = [pk for (pk,) in small.execute(f"select pk from part order by {ORDER}").fetchall()]
    assert numbers == list(range(1, OFFERS // 3 + 1))
    assert numbers == [pk for (pk,) in small.execute("select pk from part order by rowid").fetchall()]
    sold = [pk for (pk,) in small.execute("select pk from offer order by rowid").fetchall()]
    assert len(sold) == OFFERS and sold == sorted(sold) and set(sold) <= set(numbers)
    digits = small.execute("select distinct replace(format('{:.1e}', capacitance_f)[:3], '.', '') from part").fetchall()
    assert {int(text) for (text,) in digits} == set(E12)
    (unknown,) = small.execute("select count(*) - count(technology) from part").fetchall()[0]
    assert 0 < unknown < 0.05 * len(numbers)


@pytest.mark.parametrize("what", ASKED)
def test_one_requirement_is_answered_alike(small: duckdb.DuckDBPyConnection, what: str) -> None:
    times = bench_find.times_of(small, Frames(small), what, rounds=1)
    assert {name: len(its) for name, its in times.items()} == {"find": 1, "SQL by hand": 1, "pandas masks": 1}


def test_what_is_asked_is_answered(small: duckdb.DuckDBPyConnection) -> None:
    found = find(small, [TYPICAL])[0]
    assert found.kept_count and found.open_count and len(answered(found)[0]) == len(found.kept + found.open)


def test_a_repair_is_answered_alike(small: duckdb.DuckDBPyConnection) -> None:
    asked = repair(30, 10)
    assert len(asked) == 30 and len({one.reference for one in asked}) == 30
    assert set(measured(bench_repair.ways(small, asked), 1)) == set(bench_repair.ways(small, asked))


def test_a_messy_list_is_read_alike(tmp_path: Path) -> None:
    cells = bench_load.write_messy(tmp_path / "messy.csv", 1000)
    measured(bench_load.ways(tmp_path / "messy.csv"), 1)
    measured(bench_load.parsing(cells), 1)


def test_a_cold_start_is_answered_alike_and_imports_nothing_heavy(tmp_path: Path) -> None:
    make_catalog(tmp_path / "small.duckdb", OFFERS)
    measured(bench_start.ways(tmp_path / "small.duckdb", tmp_path), 1)
    assert not bench_start.imported(tmp_path / "small.duckdb") & set(bench_start.FORBIDDEN)


def test_a_ratio_is_taken_round_by_round_and_a_goal_judged() -> None:
    assert ratio([1, 9, 3], [1, 3, 2]) == 1.5
    assert Goal("x", 1.3).met(1.3) and not Goal("x", 1.3).met(1.4)
    assert Goal("x", 20, faster=True).met(0.05) and not Goal("x", 20, faster=True).met(0.06)
    with pytest.raises(AssertionError, match="b answers otherwise than a"):
        measured({"a": lambda: 1, "b": lambda: 2}, 1)
