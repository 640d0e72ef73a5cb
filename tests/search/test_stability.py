"""How firmly the first place stands, against moving the weights and asking again."""

from dataclasses import replace
from itertools import product

import duckdb
import pytest

from subsearch.repair.asking import ask
from subsearch.repair.folder import read_repair
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found, find
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.stability import Change, Stability, stabilities
from subsearch.search.weights import USUAL, Weights
from subsearch.shipped import shipped

EVERYONE = 100_000
OWN = Weights({"life": 2, "price": 3, "clearance": 0.2, "lead spacing": 0})
NAMES = tuple(one.name for one in CONTRIBUTIONS)


@pytest.fixture(scope="module")
def asked() -> list[Requirement]:
    repair = read_repair(shipped("catalog_demo") / "organ")
    return [one for one in (ask(repair, position).requirement for position in repair.positions) if one is not None]


def first_names(con: duckdb.DuckDBPyConnection, asked: list[Requirement], weights: Weights) -> list[str | None]:
    return [found.kept[0].name if found.kept else None for found in find(con, asked, 1, weights)]


@pytest.mark.parametrize("weights", [Weights(), OWN], ids=["usual", "own"])
def test_one_weight_alone(demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement], weights: Weights) -> None:
    wanted: list[list[Change]] = [[] for _ in asked]
    firsts = first_names(demo_con, asked, weights)
    for name, share in product(NAMES, (1.2, 0.8)):
        moved = Weights({**weights.by_name, name: weights.by_name[name] * share})
        for its, before, after in zip(wanted, firsts, first_names(demo_con, asked, moved), strict=True):
            if before is not None and after is not None and before != after:
                its.append(Change(name, share > 1, after))
    told = stabilities(demo_con, asked, weights)
    assert [one.first for one in told] == firsts
    assert [list(one.changes) for one in told] == wanted
    assert any(wanted)  # the demo has some of both
    assert sum(not changes for changes in wanted) > 2


def rank(one: Candidate, shares: tuple[float, ...]) -> tuple[float, str, str]:
    total = sum(share * (one.contributions[name] or 0.0) for name, share in zip(NAMES, shares, strict=True))
    return -round(total, 9), one.part["maker"], one.part["part_number"]


def test_all_weights_together(demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement]) -> None:
    met = []
    for found, told in zip(find(demo_con, asked, EVERYONE), stabilities(demo_con, asked), strict=True):
        if not found.kept:
            assert (told.first, told.together) == (None, None)
            continue
        corners = product((0.8, 1.2), repeat=len(NAMES))
        firsts = {min(found.kept, key=lambda one: rank(one, shares)).name for shares in corners}
        assert (told.together is None) == (firsts == {found.kept[0].name}), found.requirement.reference
        assert told.together is None or told.together in firsts
        met.append(told.together is None)
    assert min(met.count(True), met.count(False)) > 1


def test_found_tells_its_own(demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement]) -> None:
    found: Found = find(demo_con, asked[:1], 1, OWN)[0]
    assert found.stability() == stabilities(demo_con, asked[:1], OWN)[0]
    assert found.weights == OWN != Weights(USUAL)


@pytest.mark.parametrize("weights", [Weights(), OWN], ids=["usual", "own"])
def test_where_all_that_fit_are_here_nothing_is_asked_again(
    demo_con: duckdb.DuckDBPyConnection, asked: list[Requirement], weights: Weights
) -> None:
    with duckdb.connect() as without_catalog:
        whole = [replace(one, con=without_catalog) for one in find(demo_con, asked, EVERYONE, weights)]
        assert [one.stability() for one in whole] == stabilities(demo_con, asked, weights)
        assert sum(one.kept_count > 1 for one in whole) > 5
        with pytest.raises(duckdb.CatalogException):
            next(replace(one, kept=one.kept[:1]) for one in whole if one.kept_count > 1).stability()


def test_no_requirement_no_answer(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert stabilities(demo_con, []) == []


@pytest.mark.parametrize(
    ("told", "sentence"),
    [
        (Stability(None, 0, (), None), "No part fits, so none stands first."),
        (Stability("A 1", 0, (), None), "A 1 is the only part that fits, whatever the weights."),
        (
            Stability("A 1", 3, (), None),
            "A 1 stays first when any one weight moves by 20 %, and when all move at once.",
        ),
        (
            Stability("A 1", 3, (), "B 2"),
            "A 1 stays first when any one weight moves by 20 %; several moved together can put B 2 first.",
        ),
        (
            Stability("A 1", 3, (Change("life", True, "B 2"), Change("price", False, "B 2"),
                                 Change("stock", True, "C 3")), "B 2"),
            "A 1 stands first, but not firmly: 20 % more weight on life or 20 % less weight on price puts B 2 first; "
            "20 % more weight on stock puts C 3 first.",
        ),
    ],
)  # fmt: skip
def test_the_sentence(told: Stability, sentence: str) -> None:
    assert str(told) == sentence
