"""The benchmarks work: on a small catalog every way gives the same answer, and the catalog is the same each time."""

import sys
from collections.abc import Iterator
from dataclasses import replace
from importlib.util import find_spec
from pathlib import Path
from random import Random

import duckdb
import pytest

from speed import bench_find, bench_load, bench_markings, bench_near, bench_pairs, bench_repair, bench_start
from speed.asked import ASKED, SCARCE, TYPICAL, WIDE, answered, repair
from speed.make_catalog import E12, make_catalog
from speed.messy_list import write_messy
from speed.parsing import parsing
from speed.rounds import Goal, measured, ratio
from subsearch.catalog.merging import ORDER
from subsearch.catalog.store import open_to_read, open_to_write
from subsearch.reading.markings import LONGEST
from subsearch.search.candidates import find

OFFERS = 2000
# What the made catalogs leave out of leads and bodies, drawn from the part's number.
LEADS = """update part set
    lead_length_mm = if(hash(pk, 1) % 2 = 0, 2 + hash(pk, 2) % 8 * (hash(pk, 12) % 6), null),
    lead_diameter_mm = [null, null, null, 0.5, 0.8, 1.0, 1.4][(1 + hash(pk, 3) % 7)::bigint],
    lead_form = ['snap-in', null, 'straight', 'straight'][(1 + hash(pk, 4) % 4)::bigint],
    delivered_spacing_mm = if(hash(pk, 5) % 5 = 0, 5, null), tall_plus_mm = if(hash(pk, 6) % 5 = 0, 0.3, null),
    along_plus_mm = if(hash(pk, 7) % 5 = 0, 0.2, null), across_plus_mm = if(hash(pk, 8) % 5 = 0, 0.2, null),
    along_mm = if(hash(pk, 9) % 12 = 0, null, along_mm), tall_mm = if(hash(pk, 10) % 12 = 0, null, tall_mm),
    shape = if(shape = 'can' and hash(pk, 11) % 3 = 0, 'axial', shape)"""


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
    times = bench_find.times_of(small, bench_find.in_memory(small), what, rounds=1)
    polars = ("polars",) if find_spec("polars") else ()
    assert {name: len(its) for name, its in times.items()} == dict.fromkeys(
        ("find", "SQL by hand", "pandas masks", *polars), 1
    )


def test_polars_is_left_out_where_it_is_missing_and_that_is_said(
    small: duckdb.DuckDBPyConnection, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(sys.modules, "polars", None)
    monkeypatch.delitem(sys.modules, "speed.polars_columns", raising=False)
    assert list(bench_find.in_memory(small)) == ["pandas masks"]
    assert capsys.readouterr().out == "polars is not installed and is left out: pip install -e '.[speed]'\n"


def test_what_is_asked_is_answered(small: duckdb.DuckDBPyConnection) -> None:
    found = find(small, [TYPICAL])[0]
    assert found.kept_count and found.open_count and len(answered(found)[0]) == len(found.kept + found.open)


def test_a_repair_is_answered_alike(small: duckdb.DuckDBPyConnection) -> None:
    asked = repair(30, 10)
    assert len(asked) == 30 and len({one.reference for one in asked}) == 30
    assert set(measured(bench_repair.ways(small, asked), 1)) == set(bench_repair.ways(small, asked))


def test_near_misses_are_told_alike(small: duckdb.DuckDBPyConnection) -> None:
    dice, seen = Random(5), set()
    taken = (None, ("wet aluminium",), ("film PET",))
    for one in (*ASKED.values(), SCARCE, *repair(8, 8, seed=7)):
        asked = replace(one, technologies=dice.choice(taken), pieces=dice.choice((1, 10, 2000)))
        for near in (one, asked):
            measured(bench_near.ways(small, near), 0)
            seen |= {row[:2] for row in bench_near.statement(small, near)}
    assert {name for kind, name in seen if kind == "alone"} > {
        "capacitance",
        "technology",
        "body",
        "lead_spacing",
        "life",
    }
    assert len(seen) > 12


def test_parts_are_mounted_alike_where_more_is_stated_of_their_leads(tmp_path: Path) -> None:
    make_catalog(tmp_path / "leads.duckdb", 10 * OFFERS)
    with open_to_write(tmp_path / "leads.duckdb") as con:
        con.execute(LEADS)
    seen = set()
    with open_to_read(tmp_path / "leads.duckdb") as con:
        rivals = bench_find.in_memory(con)
        for holes, headroom in ((5, 9), (5, 30), (10, 12), (15, 25), (30, 16)):
            asked = replace(WIDE, hole_spacing_mm=float(holes), headroom_mm=float(headroom))
            measured(bench_find.ways(con, rivals, asked), 0)
            measured(bench_near.ways(con, asked), 0)
            found = find(con, [asked])[0]
            seen |= {one.made["way"] for one in (*found.kept, *found.open)}
    assert len(seen) == 4


def test_near_misses_asked_again_are_told_alike(small: duckdb.DuckDBPyConnection) -> None:
    assert find(small, [SCARCE])[0].few
    measured(bench_near.whole(small, SCARCE), 0)
    bench_near.together(small, SCARCE)()


@pytest.mark.parametrize("what", bench_pairs.ASKED)
def test_pairs_are_answered_alike(small: duckdb.DuckDBPyConnection, what: str) -> None:
    assert set(bench_pairs.times_of(small, what, rounds=1)) == {"several", "classes by hand"}
    ((_, kept, may),), best = bench_pairs.ours(small, bench_pairs.ASKED[what])
    assert kept == len(best) > 0 and may >= 0


def test_a_messy_list_is_read_alike(tmp_path: Path) -> None:
    cells = write_messy(tmp_path / "messy.csv", 1000)
    measured(bench_load.ways(tmp_path / "messy.csv"), 1)
    measured(parsing(cells), 1)


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


def test_markings_are_timed_one_by_one() -> None:
    texts = bench_markings.examples()
    assert len(texts) >= 300
    assert {len(text) for text in bench_markings.hard()} == {LONGEST}
    assert all(0 < time < 1 for time in bench_markings.seconds(texts[:20], 1))
