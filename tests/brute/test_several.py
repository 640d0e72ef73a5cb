"""Two parts for one position on small catalogs, against plain Python that tries every pair, in number and order."""

from collections import Counter
from collections.abc import Iterator
from decimal import Decimal, localcontext
from importlib.resources import files
from typing import Any

import duckdb
import pytest

from brute.asking import as_float, requirement
from brute.few_parts import Small, small
from brute.laws import DIGITS
from brute.merged import OFFER_CLAIMS, PART_CLAIMS, Claims
from brute.several import Pairs, pairs
from subsearch.search.several import Several, several

CATALOGS, NEEDS, FEW = 28, 5, (1, 4, 2, 7)
WORTH = {"EUR": Decimal(1), "GBP": Decimal("1.17")}
EVERY = 1000
Told = dict[str, Pairs]


def stored(con: duckdb.DuckDBPyConnection, told: Small) -> None:
    """The small catalog in a database of its own."""
    con.execute(files("subsearch.catalog").joinpath("schema.sql").read_text(encoding="utf-8"))
    con.executemany("insert into currency_rate values (?, ?, null)", [list(one) for one in WORTH.items()])
    pks: dict[tuple[str, str], int] = {}
    for pk, part in enumerate(told.parts, 1):
        pks[part["maker"], part["part_number"]] = pk
        insert(con, "part", {"pk": pk, "maker": part["maker"], "part_number": part["part_number"], "contradictions": 0,
                             **{name: as_float(part[name]) for name in PART_CLAIMS}})  # fmt: skip
    for offer in told.offers:
        prices = [{"from": int(quantity), "price": price} for quantity, price in offer["prices"]]
        claims = {name: as_float(offer[name]) for name in (*OFFER_CLAIMS, "traceable")}
        insert(con, "offer", {"pk": pks[offer["maker"], offer["part_number"]], **claims, "prices": prices})


def insert(con: duckdb.DuckDBPyConnection, table: str, row: Claims) -> None:
    holders = ", ".join("?" for _ in row)
    con.execute(f"insert into {table} ({', '.join(row)}) values ({holders})", list(row.values()))


@pytest.fixture(scope="module")
def catalogs(parts: list[Claims], offers: list[Claims]) -> list[Small]:
    return [small(parts, offers, seed, NEEDS) for seed in range(CATALOGS)]


@pytest.fixture(scope="module")
def told(catalogs: list[Small]) -> list[list[Told]]:
    with localcontext(prec=DIGITS):
        return [[pairs(need, one.parts, WORTH) for need in one.asked] for one in catalogs]


@pytest.fixture(scope="module")
def found(catalogs: list[Small]) -> list[list[tuple[Several, Several]]]:
    """Every pair, and the best few, of each requirement."""
    return list(asked(catalogs))


def asked(catalogs: list[Small]) -> Iterator[list[tuple[Several, Several]]]:
    for number, one in enumerate(catalogs):
        with duckdb.connect() as con:
            stored(con, one)
            needs = [requirement(need) for need in one.asked]
            yield list(zip(several(con, needs, EVERY), several(con, needs, FEW[number % len(FEW)]), strict=True))


def key_of(names: Any) -> list[str]:
    return [f"{maker} {number}" for maker, number in names]


def test_every_pair_that_fits_is_found_in_order_with_its_score(
    found: list[list[tuple[Several, Several]]], told: list[list[Told]], catalogs: list[Small]
) -> None:
    for its, wanted, catalog in zip(found, told, catalogs, strict=True):
        for (every, _), right, need in zip(its, wanted, catalog.asked, strict=True):
            assert {way.name for way in every.ways} == right.keys(), need
            for way in every.ways:
                assert sorted(sorted(one.names) for one in way.best) == sorted(
                    sorted(key_of(names)) for names, _ in right[way.name].kept
                ), need
                assert [one.total for one in way.best] == pytest.approx(
                    [float(score) for _, score in right[way.name].kept], abs=2e-9
                ), need
                assert [list(one.names) for one in way.best] == [key_of(names) for names, _ in right[way.name].kept], (
                    need
                )


def test_how_many_fit_and_how_many_may(found: list[list[tuple[Several, Several]]], told: list[list[Told]]) -> None:
    for its, wanted in zip(found, told, strict=True):
        for (every, few), right in zip(its, wanted, strict=True):
            for one in (every, few):
                counts = {way.name: (way.kept_count, way.open_count) for way in one.ways}
                assert counts == {way: (len(its.kept), its.left_open) for way, its in right.items()}


def test_the_best_few_are_the_first_of_all(found: list[list[tuple[Several, Several]]]) -> None:
    for number, its in enumerate(found):
        for every, few in its:
            for way, first in zip(every.ways, few.ways, strict=True):
                assert first.best == way.best[: FEW[number % len(FEW)]]


def test_the_catalogs_tell_something(found: list[list[tuple[Several, Several]]], told: list[list[Told]]) -> None:
    seen = Counter(way for one in told for right in one for way, its in right.items() if its.kept)
    assert seen["two in parallel"] > 40 and seen["two back to back"] > 20, seen
    open_ones = Counter(way for one in told for right in one for way, its in right.items() if its.left_open)
    assert min(open_ones["two in parallel"], open_ones["two back to back"]) > 4
    ties = sum(
        one.total == other.total for its in found for every, _ in its for way in every.ways
        for one, other in zip(way.best, way.best[1:], strict=False)
    )  # fmt: skip
    assert ties > 50
    assert sum(len(way.best) > max(FEW) for its in found for every, _ in its for way in every.ways) > 20
