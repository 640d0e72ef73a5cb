"""Near misses: what each condition alone keeps out, the smallest concession that lets a part in, and its sentence."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import duckdb

from subsearch.search import candidates
from subsearch.search.answers import Candidate
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.concessions import BY_NAME, FIRM, MEASURED
from subsearch.search.criteria import LABELS, OFFER
from subsearch.search.near import near
from subsearch.search.near_pairs import pairs as near_pairs
from subsearch.search.near_words import Move, conceded, sentence
from subsearch.search.requirement import Requirement
from subsearch.units import counted

if TYPE_CHECKING:
    from subsearch.search.candidates import Found

Row = dict[str, Any]


@dataclass(frozen=True)
class Concession:
    """What is conceded, as a changed requirement and in words, how many parts that lets in, and the best of them.

    `words` are what is conceded by itself, and `sentence` tells with it what that lets in.
    """

    conditions: tuple[str, ...]
    requirement: Requirement
    lets_in: int
    best: Candidate | None
    words: str
    sentence: str


@dataclass(frozen=True)
class NearMiss:
    """How many parts one condition alone keeps out, and the concessions on it that let one in.

    `firm` says why nothing is conceded on it, where that is so.
    """

    condition: str
    alone: int
    concessions: tuple[Concession, ...]
    firm: str = ""

    def __str__(self) -> str:
        firm = f"; not for conceding: {self.firm}" if self.firm else ""
        return f"{LABELS[self.condition]} alone keeps out {counted(self.alone, 'part')}{firm}"


@dataclass(frozen=True)
class NearMisses:
    """The near misses of one requirement; pairs of concessions only where no single one lets anything in."""

    misses: tuple[NearMiss, ...] = ()
    pairs: tuple[Concession, ...] = ()

    @property
    def concessions(self) -> tuple[Concession, ...]:
        """Every concession, single ones or else pairs."""
        return tuple(one for miss in self.misses for one in miss.concessions) or self.pairs

    @property
    def sentences(self) -> tuple[str, ...]:
        """What a builder may concede, then what keeps parts out but is not for conceding."""
        firm = (f"{str(miss)[0].upper()}{str(miss)[1:]}." for miss in self.misses if miss.firm and miss.alone)
        return (*(one.sentence for one in self.concessions), *firm)


def near_misses(con: duckdb.DuckDBPyConnection, found: Sequence["Found"]) -> list[NearMisses]:
    """The near misses of each answer, in three statements however many there are.

    Args:
        con: a catalog opened to read.
        found: what a search answered; its requirement and its count of kept parts are used.
    """
    requirements = [one.requirement for one in found]
    alone, moves = _measured(con, requirements)
    barren = [number for number in range(len(found)) if not moves[number]]
    paired = _paired(con, requirements, barren)
    made = _made(con, found, [single + pairs for single, pairs in zip(moves, paired, strict=True)])
    return [_told(*one) for one in zip(requirements, alone, made, strict=True)]


def where_few(con: duckdb.DuckDBPyConnection, found: Sequence["Found"]) -> list[NearMisses]:
    """The near misses of each answer with few parts that fit; no misses for one with enough."""
    told = iter(near_misses(con, [one for one in found if one.few]))
    return [next(told) if one.few else NearMisses() for one in found]


def _measured(
    con: duckdb.DuckDBPyConnection, requirements: Sequence[Requirement]
) -> tuple[list[dict[str, int]], list[list[Move]]]:
    """How many parts each condition alone keeps out, and the single concessions, for each requirement."""
    alone: list[dict[str, int]] = [{} for _ in requirements]
    moves: list[list[Row]] = [[] for _ in requirements]
    for row in rows_of(con, *asked_of(near, requirements)) if requirements else ():
        if row["kind"] == "alone":
            alone[row["number"]][row["name"]] = row["parts"]
        else:
            moves[row["number"]].append(row)
    return alone, [[((BY_NAME[row["name"]], _value(row)),) for row in _narrowest(rows)] for rows in moves]


def _value(row: Row) -> Any:
    return row["value"] if row["word"] is None else row["word"]


def _narrowest(rows: list[Row]) -> Iterator[Row]:
    """Without those that move more fields than another one by no less distance and for as few parts."""
    for row in rows:
        fields = set(BY_NAME[row["name"]].fields)
        if not any(
            set(BY_NAME[one["name"]].fields) < fields and one["value"] <= row["value"] + 1e-6
            for one in rows
            if BY_NAME[one["name"]].condition == BY_NAME[row["name"]].condition
        ):
            yield row


def _paired(
    con: duckdb.DuckDBPyConnection, requirements: Sequence[Requirement], numbers: Sequence[int]
) -> list[list[Move]]:
    """Pairs of concessions for the requirements of those numbers; none for the others."""
    pairs: list[list[Move]] = [[] for _ in requirements]
    if numbers:
        for row in rows_of(con, *asked_of(near_pairs, [requirements[number] for number in numbers])):
            one, other = row["one"], row["other"]
            pair = (BY_NAME[one["name"]], _value(one)), (BY_NAME[other["name"]], _value(other))
            pairs[numbers[row["number"]]].append(pair)
    return pairs


def _made(
    con: duckdb.DuckDBPyConnection, found: Sequence["Found"], moves: Sequence[Sequence[Move]]
) -> list[list[tuple[Move, Concession]]]:
    """Each concession made: asked again, so that it tells what it lets in and the best of that."""
    asked = [(number, move) for number, its in enumerate(moves) for move in its]
    changed = [_moved(found[number].requirement, move) for number, move in asked]
    most = max((found[number].kept_count for number, _ in asked), default=0) + 1
    before = [found[number] for number, _ in asked]
    made: list[list[tuple[Move, Concession]]] = [[] for _ in found]
    weights = found[0].weights if found else None  # of one search, and so the same for all
    for (number, move), was, now in zip(asked, before, candidates.find(con, changed, most, weights), strict=True):
        kept = _kept(con, was)
        best = next((one for one in now.kept if (one.part["maker"], one.part["part_number"]) not in kept), None)
        lets_in = now.kept_count - was.kept_count
        conditions = tuple(measure.condition for measure, _ in move)
        words = conceded(was.requirement, now.requirement, move)
        said = sentence(was.requirement, now.requirement, move, lets_in, best)
        made[number].append((move, Concession(conditions, now.requirement, lets_in, best, words, said)))
    return made


def _kept(con: duckdb.DuckDBPyConnection, found: "Found") -> set[tuple[str | None, str]]:
    """All parts that are kept already; asked again where the answer holds only the best of them."""
    parts = found.kept
    if len(parts) < found.kept_count:
        parts = candidates.find(con, [found.requirement], found.kept_count, found.weights)[0].kept
    return {(one.part["maker"], one.part["part_number"]) for one in parts}


def _moved(requirement: Requirement, move: Move) -> Requirement:
    for measure, value in move:
        requirement = measure.moved(requirement, value)
    return requirement


def _told(requirement: Requirement, alone: dict[str, int], made: Sequence[tuple[Move, Concession]]) -> NearMisses:
    """The near misses of one requirement in the order of the criteria."""
    on: dict[str, list[Concession]] = {}
    for move, one in made:
        if len(move) == 1:
            on.setdefault(move[0][0].condition, []).append(one)
    misses = tuple(
        NearMiss(name, alone.get(name, 0), tuple(on.get(name, ())), _firm(name, requirement))
        for name in LABELS
        if alone.get(name) or name in on
    )
    return NearMisses(misses, tuple(one for move, one in made if len(move) > 1))


def _firm(name: str, requirement: Requirement) -> str:
    if name == "voltage" and requirement.voltage_measured:
        return MEASURED
    if name == OFFER and requirement.safety_class is not None:
        return FIRM["source"]
    return FIRM.get(name, "")
