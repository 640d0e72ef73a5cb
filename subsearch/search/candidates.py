"""Ask the catalog: requirements in; for each the best kept and open parts and the counts out, in one statement."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import duckdb

from subsearch.errors import RequirementError
from subsearch.search import refusals
from subsearch.search.answers import Answer, Candidate, Row, frozen
from subsearch.search.asking import needs, rows_of
from subsearch.search.derived import life_span_y
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.stability import Stability, stabilities
from subsearch.search.statements import FIND
from subsearch.search.weights import Weighed, Weights

if TYPE_CHECKING:
    from subsearch.search.near_misses import NearMisses

BEST = 50


@dataclass(frozen=True)
class Found:
    """The answer to one requirement, with the statement and the values that give it again.

    `kept` and `open` hold the best; the counts are of all. A pinned part stands in `pinned`, whatever its answer.
    """

    requirement: Requirement
    kept: tuple[Candidate, ...]
    open: tuple[Candidate, ...]
    pinned: Candidate | None
    kept_count: int
    open_count: int
    refused_count: int
    sql: str = field(repr=False)
    parameters: Row = field(repr=False)
    con: duckdb.DuckDBPyConnection = field(repr=False, compare=False)

    def why(self, maker: str | None, part_number: str) -> tuple[Answer, ...]:
        """Every condition that is asked, answered for one named part in words and numbers."""
        return refusals.why(self.con, [(self.requirement, maker, part_number)])[0]

    def nearest(self, most: int = 5) -> list[tuple[str | None, str]]:
        """Maker and part number of the refused parts that come nearest."""
        return refusals.nearest_refused(self.con, [self.requirement], most)[0]

    def near_misses(self) -> "NearMisses":
        """What each condition alone keeps out, and the smallest concessions that would let a part in."""
        from subsearch.search.near_misses import near_misses  # only now: it asks this module again

        return near_misses(self.con, [self])[0]

    def near_misses_where_few(self) -> "NearMisses":
        """The near misses where so few parts fit that they are worth knowing; else none."""
        from subsearch.search.near_misses import where_few

        return where_few(self.con, [self])[0]

    def refused_by(self) -> dict[str, int]:
        """How many parts each condition refuses, whatever the others say."""
        return refusals.refused_by(self.con, [self.requirement])[0]

    @property
    def weights(self) -> Weights:
        """The weights by which it is ranked."""
        return Weights({one.name: self.parameters[one.parameter] for one in CONTRIBUTIONS})

    def contributions(self) -> tuple[Weighed, ...]:
        """Every contribution with its weight, what it means, and what it adds to each kept part."""
        weights = self.weights.by_name
        added = {one.name: tuple(part.contributions[one.name] for part in self.kept) for one in CONTRIBUTIONS}
        return tuple(Weighed(one.name, weights[one.name], one.meaning, added[one.name]) for one in CONTRIBUTIONS)

    def stability(self) -> Stability:
        """Whether the first place stays as it is when weights move by a fifth, and who comes first else."""
        return stabilities(self.con, [self.requirement], self.weights)[0]


def find(
    con: duckdb.DuckDBPyConnection,
    requirements: Sequence[Requirement],
    best: int = BEST,
    weights: Weights | None = None,
) -> list[Found]:
    """For each requirement the best kept and the best open parts, ranked, with counts: all in one statement.

    Args:
        con: a catalog opened to read.
        requirements: any number of them; one position is a list of one.
        best: how many kept and how many open parts come back for each, 1 or more; the counts are of all.
        weights: the builder's own; else the usual ones of ranking.py.

    Raises:
        RequirementError: best is below 1.
    """
    if best < 1:
        raise RequirementError(
            f"The best {best} are asked for, but the counts are told with the first. Ask for 1 or more."
        )
    weights = weights or Weights()
    asked = needs(requirements, best)
    if not asked:
        return []
    by_need: list[list[dict[str, Any]]] = [[] for _ in asked]
    for row in rows_of(con, FIND, {"needs": asked, **weights.parameters()}):
        by_need[row["number"]].append(row)
    (parts,) = con.execute("select count(*) from part").fetchall()[0]
    return [
        _found(con, requirement, its_rows, parts, {"needs": [need], **weights.parameters()})
        for requirement, its_rows, need in zip(requirements, by_need, asked, strict=True)
    ]


def _found(
    con: duckdb.DuckDBPyConnection,
    requirement: Requirement,
    rows: list[dict[str, Any]],
    parts: int,
    parameters: dict[str, Any],
) -> Found:
    everyone = [_candidate(row, requirement) for row in rows]
    best = int(parameters["needs"][0]["most"])
    kept = tuple(one for one in everyone if one.answer is True and one.place <= best)
    opened = tuple(one for one in everyone if one.answer is None and one.place <= best)
    pinned = next((one for one in everyone if one.pinned), None)
    counts = {row["answer"]: int(row["in_all"]) for row in rows}
    kept_count, open_count = counts.get(True, 0), counts.get(None, 0)
    counts_of_all = (kept_count, open_count, parts - kept_count - open_count)
    return Found(requirement, kept, opened, pinned, *counts_of_all, FIND, frozen(parameters), con)


def _candidate(row: dict[str, Any], need: Requirement) -> Candidate:
    shortest_y, longest_y = life_span_y(row["part"], row["made"], need)
    return Candidate(
        answer=row["answer"],
        pinned=row["pinned"],
        place=int(row["place"]),
        total=row["total"],
        not_stated=tuple(row["not_stated"]),
        contributions=frozen(row["contributions"]),
        part=frozen(row["part"]),
        offer=frozen(row["offer"]),
        made=frozen({**row["made"], "shortest_y": shortest_y, "longest_y": longest_y}),
        unbeaten=row["unbeaten"],
    )
