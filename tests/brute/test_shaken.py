"""The same on a catalog where any claim may be missing or at odds with the others: every "not stated" there is."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from random import Random

import duckdb
import pytest

from brute.asking import EVERYTHING, assert_same_answers, assert_same_found, requirement
from brute.merged import Claims, with_offers
from brute.needs import Asked, draw
from brute.oracle import CONDITIONS, Oracle, Told
from brute.shaken import OFFER_POOLS, PART_POOLS, shake, store
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import find

SEED = 64


@pytest.fixture(scope="module")
def shaken(
    tmp_path_factory: pytest.TempPathFactory, demo_catalog: Path, parts: list[Claims], offers: list[Claims]
) -> tuple[Path, list[Claims]]:
    path = tmp_path_factory.mktemp("shaken") / "shaken.duckdb"
    shutil.copy(demo_catalog, path)
    dice = Random(SEED)
    new_parts, part_changes = shake(parts, PART_POOLS, dice)
    new_offers, offer_changes = shake(offers, OFFER_POOLS, dice)
    gone = dice.sample([offer["supplier_number"] for offer in new_offers], 300)
    with duckdb.connect(path) as con:
        store(con, "part", part_changes)
        store(con, "offer", offer_changes)
        con.execute("delete from offer where supplier_number in (select unnest(?))", [gone])
    left = [offer for offer in new_offers if offer["supplier_number"] not in gone]
    return path, with_offers(new_parts, left)


@pytest.fixture(scope="module")
def con(shaken: tuple[Path, list[Claims]]) -> Iterator[duckdb.DuckDBPyConnection]:
    with open_to_read(shaken[0]) as con:
        yield con


@pytest.fixture(scope="module")
def asked(shaken: tuple[Path, list[Claims]]) -> list[Asked]:
    return draw(shaken[1], SEED, 60)


@pytest.fixture(scope="module")
def oracle(shaken: tuple[Path, list[Claims]]) -> Oracle:
    return Oracle(shaken[1])


@pytest.fixture(scope="module")
def told(oracle: Oracle, asked: list[Asked]) -> list[Told]:
    return [oracle.told(need) for need in asked]


def test_kept_and_open(con: duckdb.DuckDBPyConnection, asked: list[Asked], told: list[Told]) -> None:
    together = find(con, [requirement(one) for one in asked], best=EVERYTHING)
    for found, wanted, need in zip(together, told, asked, strict=True):
        assert_same_found(found, wanted, need)


def test_every_answer(con: duckdb.DuckDBPyConnection, oracle: Oracle, asked: list[Asked], told: list[Told]) -> None:
    for need, wanted in zip(asked, told, strict=True):
        assert_same_answers(con, need, oracle, wanted)


def test_every_condition_is_answered_in_each_way(told: list[Told]) -> None:
    rows = {row for one in told for row in one.answers}
    found = {pair for row in rows for pair in zip(CONDITIONS, row, strict=True)}
    wanted = {(name, answer) for name in CONDITIONS for answer in (True, False, None)}
    assert found == wanted - {("safety", None)}
