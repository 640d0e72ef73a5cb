"""Ask the catalog: requirements in; for each the best kept and open parts and the counts out, in one statement."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any

import duckdb

from subsearch.errors import RequirementError
from subsearch.search import refusals, statements
from subsearch.search.answers import Answer, Candidate, Row, frozen, made_of, not_stated
from subsearch.search.asking import asked, needs, rows_of
from subsearch.search.derived_life import life_span_y
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.stability import Stability, stabilities, stability_among
from subsearch.search.stated import stated
from subsearch.search.weights import Weighed, Weights

if TYPE_CHECKING:
    from subsearch.search.near_misses import NearMisses
    from subsearch.search.several import Several

BEST = 50
FEW = 3  # with fewer parts that fit, what stands in the way is worth knowing
_Told = tuple[tuple[Candidate, ...], tuple[Candidate, ...], Candidate | None, int, int, int]


@dataclass(frozen=True)
class Found:
    """The answer to one requirement; `sql` with `parameters` gives it again.

    `kept` and `open` hold the best; the counts are of all. A pinned part stands in `pinned`, whatever its answer.
    """

    requirement: Requirement
    kept: tuple[Candidate, ...]
    open: tuple[Candidate, ...]
    pinned: Candidate | None
    kept_count: int
    open_count: int
    refused_count: int
    best: int
    weights: Weights
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

    @property
    def few(self) -> bool:
        """Whether so few parts fit that the near misses are worth knowing."""
        return self.kept_count < FEW

    def several(self, best: int = BEST) -> "Several":
        """The best pairs of parts that fit it together, back to back or in parallel, and how many fit in all."""
        from subsearch.search.several import several  # only now: a search that finds enough never needs it

        return several(self.con, [self.requirement], best, self.weights)[0]

    def refused_by(self) -> dict[str, int]:
        """How many parts each condition refuses, whatever the others say."""
        return refusals.refused_by(self.con, [self.requirement])[0]

    @property
    def sql(self) -> str:
        """The statement that gives this answer by itself."""
        return _asked([self.requirement], self.best, self.weights)[0]

    @property
    def parameters(self) -> Row:
        """The values bound to it."""
        return frozen(_asked([self.requirement], self.best, self.weights)[1])

    def contributions(self) -> tuple[Weighed, ...]:
        """Every contribution with its weight, what it means, and what it adds to each kept part."""
        weights = self.weights.by_name
        added = {one.name: tuple(part.contributions[one.name] for part in self.kept) for one in CONTRIBUTIONS}
        return tuple(Weighed(one.name, weights[one.name], one.meaning, added[one.name]) for one in CONTRIBUTIONS)

    def stability(self) -> Stability:
        """Whether the first place stays as it is when weights move by a fifth, and who comes first else."""
        if len(self.kept) == self.kept_count:  # what a second search would cost is spared where all are here
            return stability_among(self.kept)
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
    # Positions that ask the same are searched once: what they are called asks nothing.
    unnamed = [replace(one, reference="") for one in requirements]
    rows: dict[Requirement, list[dict[str, Any]]] = {one: [] for one in unnamed}
    if not rows:
        return []
    different = list(rows)
    for row in rows_of(con, *_asked(different, best, weights)):
        rows[different[row["number"]]].append(row)
    (parts,) = con.execute("select count(*) from part").fetchall()[0]
    found = {one: Found(one, *_told(one, its, best, parts), best, weights, con) for one, its in rows.items()}
    return [replace(found[one], requirement=its_own) for one, its_own in zip(unnamed, requirements, strict=True)]


def _asked(requirements: Sequence[Requirement], best: int, weights: Weights) -> tuple[str, dict[str, Any]]:
    return asked(statements.find, requirements, most=best, **weights.parameters())


def _told(need: Requirement, rows: list[dict[str, Any]], best: int, parts: int) -> _Told:
    names = statements.made(stated(needs([need])))
    everyone = [_candidate(row, names, need) for row in rows]
    kept = tuple(one for one in everyone if one.answer is True and one.place <= best)
    opened = tuple(one for one in everyone if one.answer is None and one.place <= best)
    pinned = next((one for one in everyone if one.pinned), None)
    counts = {row["answer"]: int(row["in_all"]) for row in rows}
    kept_count, open_count = counts.get(True, 0), counts.get(None, 0)
    return kept, opened, pinned, kept_count, open_count, parts - kept_count - open_count


def _candidate(row: dict[str, Any], names: frozenset[str], need: Requirement) -> Candidate:
    made = made_of({name: row[name] for name in names}, need)
    shortest_y, longest_y = life_span_y(row["fact"], made, need)
    return Candidate(
        answer=row["answer"],
        pinned=row["pinned"],
        place=int(row["place"]),
        total=row["total"],
        not_stated=not_stated(row),
        contributions=frozen({one.name: row[one.name] for one in CONTRIBUTIONS}),
        part=frozen(row["fact"]),
        offer=frozen(row["offer"]),
        made=frozen({**made, "shortest_y": shortest_y, "longest_y": longest_y}),
        unbeaten=row["unbeaten"],
    )
