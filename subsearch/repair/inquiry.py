"""What a position at the bench asks of a catalog: each question one piece of work that gives a frozen answer."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import duckdb

from subsearch.catalog.rates import stored_rates
from subsearch.repair.asking import Asked
from subsearch.search.answers import Answer, Candidate
from subsearch.search.candidates import Found, find
from subsearch.search.near_misses import NearMisses
from subsearch.search.requirement import Requirement
from subsearch.search.several import Several
from subsearch.search.sweep import LifeAt, life_over

PAIRS = 2  # of each way of joining two
PartKey = tuple[str | None, str]


@dataclass(frozen=True)
class Searched:
    """What was found; where nothing fits or may fit the refused part that comes nearest, and what stands against it."""

    found: Found
    nearest: Candidate | None
    against: tuple[Answer, ...]


@dataclass(frozen=True)
class About:
    """Of the part that is looked at: every condition answered; of those compared too: life over temperature."""

    answers: tuple[Answer, ...]
    lives: tuple[LifeAt, ...]
    currency: str | None


@dataclass(frozen=True)
class Around:
    """What a concession would let in, and what two parts could do in place of one."""

    near: NearMisses
    several: Several


def search(con: duckdb.DuckDBPyConnection, requirement: Requirement) -> Searched:
    """What fits a position, and the nearest refusal where nothing may."""
    found = find(con, [requirement])[0]
    near = [] if found.kept or found.open else found.nearest(1)
    if not near:
        return Searched(found, None, ())
    against = tuple(one for one in found.why(*near[0]) if one.answer is False)
    return Searched(found, candidate_of(con, requirement, near[0]), against)


def candidate_of(con: duckdb.DuckDBPyConnection, requirement: Requirement, key: PartKey) -> Candidate | None:
    """One named part against a requirement, whatever its answer; None where the catalog has no such part."""
    return find(con, [pinned(requirement, key)], 1)[0].pinned


def about(con: duckdb.DuckDBPyConnection, found: Found, drawn: Sequence[Candidate]) -> About:
    """What is told of the first of these parts, and of those drawn with it."""
    first = drawn[0].part
    answers = replace(found, con=con).why(first["maker"], first["part_number"])
    currency = next((rate.currency for rate in stored_rates(con) if rate.worth == 1), None)
    return About(answers, tuple(life_over(con, found.requirement, drawn)), currency)


def around(con: duckdb.DuckDBPyConnection, asked: Asked, found: Found) -> Around:
    """What lies around an answer; no two parts on the mains, where one may have to be of a safety class."""
    found = replace(found, con=con)
    near = found.near_misses()
    return Around(near, Several(found.requirement) if asked.position.mains else found.several(PAIRS))


def pinned(requirement: Requirement, key: PartKey) -> Requirement:
    """The requirement with a part that is to come back whatever its answer."""
    return replace(requirement, pinned_maker=key[0], pinned_part_number=key[1])
