"""How firmly the first place stands: who would be first if a weight were a fifth more or less."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import duckdb

from subsearch.search import statements
from subsearch.search.answers import Candidate, Row, part_name
from subsearch.search.asking import asked, rows_of
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.weights import Weights

SHARE, MOVED = 0.2, "20 %"  # by so much each weight moves

_Rank = tuple[float, bool, str, str]


@dataclass(frozen=True)
class Change:
    """One weight moved up or down by a fifth, and the part it puts first."""

    weight: str
    more: bool
    first: str


@dataclass(frozen=True)
class Stability:
    """The part that stands first (None: none fits), and what would put another there.

    `changes` are those of one weight alone. `together`: a part that can come first when several weights move at once,
    each by no more than a fifth; None where none can.
    """

    first: str | None
    rivals: int
    changes: tuple[Change, ...]
    together: str | None

    def __str__(self) -> str:
        if self.first is None:
            return "No part fits, so none stands first."
        if not self.rivals:
            return f"{self.first} is the only part that fits, whatever the weights."
        if not self.changes:
            alone = f"{self.first} stays first when any one weight moves by {MOVED}"
            if self.together is None:
                return f"{alone}, and when all move at once."
            return f"{alone}; several moved together can put {self.together} first."
        return f"{self.first} stands first, but not firmly: {self._told()}."

    def _told(self) -> str:
        firsts = dict.fromkeys(change.first for change in self.changes)
        told = []
        for first in firsts:
            its = [one for one in self.changes if one.first == first]
            moved = [f"{MOVED} {'more' if one.more else 'less'} weight on {one.weight}" for one in its]
            told.append(f"{' or '.join(moved)} puts {first} first")
        return "; ".join(told)


@dataclass(frozen=True)
class _Kept:
    maker: str | None
    part_number: str
    adds: Mapping[str, float]

    @property
    def name(self) -> str:
        return part_name(self.maker, self.part_number)

    def rank(self, moved: str | None = None, share: float = 0.0) -> _Rank:
        """What the search orders by, with one weight moved; the least is first."""
        total = sum(self.adds.values()) + (share * self.adds[moved] if moved else 0.0)
        return -round(total, 9), self.maker is None, self.maker or "", self.part_number

    def best_rank(self, first: "_Kept") -> _Rank:
        """The rank it reaches beside that part when every weight moves to where it gains most on it."""
        gain = SHARE * sum(abs(worth - first.adds[name]) for name, worth in self.adds.items())
        lead = sum(self.adds.values()) - sum(first.adds.values()) + gain
        return -round(lead, 9), self.maker is None, self.maker or "", self.part_number


def stabilities(
    con: duckdb.DuckDBPyConnection, requirements: Sequence[Requirement], weights: Weights | None = None
) -> list[Stability]:
    """For each requirement how firmly its first place stands, judged over all parts that fit: in one statement."""
    weights = weights or Weights()
    kept: list[list[_Kept]] = [[] for _ in requirements]
    if requirements:
        for row in rows_of(con, *asked(statements.kept, requirements, **weights.parameters())):
            kept[row["number"]].append(_kept(row, {one.name: row[one.name] for one in CONTRIBUTIONS}))
    return [_stability(its) for its in kept]


def stability_among(kept: Sequence[Candidate]) -> Stability:
    """How firmly the first place stands among these parts, which must be all that fit: nothing is asked again."""
    return _stability([_kept(one.part, one.contributions) for one in kept])


def _kept(part: Row, contributions: Row) -> _Kept:
    return _Kept(part["maker"], part["part_number"], {name: worth or 0.0 for name, worth in contributions.items()})


def _stability(kept: Sequence[_Kept]) -> Stability:
    if not kept:
        return Stability(None, 0, (), None)
    first = min(kept, key=_Kept.rank)
    changes = []
    for name in first.adds:
        for share in (SHARE, -SHARE):
            other = min(kept, key=lambda one: one.rank(name, share))
            if other is not first:
                changes.append(Change(name, share > 0, other.name))
    level = (-0.0, *first.rank()[1:])
    rivals = [one for one in kept if one is not first and one.best_rank(first) < level]
    nearest = min(rivals, key=lambda one: one.best_rank(first), default=None)
    return Stability(first.name, len(kept) - 1, tuple(changes), nearest.name if nearest else None)
