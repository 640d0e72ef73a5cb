"""Two parts for one position: two polar ones back to back for a bipolar one, or two in parallel that share the value.

Never chosen by itself: what is told here is for the builder to decide. A position with a safety class gets nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import duckdb

from subsearch.errors import RequirementError
from subsearch.search import several_words as words
from subsearch.search.answers import Row, frozen, part_name
from subsearch.search.asking import needs, rows_of
from subsearch.search.derived_pairs import BACK_TO_BACK, PARALLEL, set_years, together, vents_of, years_of
from subsearch.search.requirement import Requirement
from subsearch.search.several_pairs import SEVERAL
from subsearch.search.weights import Weights

if TYPE_CHECKING:
    from subsearch.search.candidates import Found

BEST, TOLD = 50, 2
AT_ONCE = 12  # all pairs of classes of so many positions fit into memory, with millions of offers too
WAYS = (BACK_TO_BACK, PARALLEL)


@dataclass(frozen=True)
class Member:
    """One part of a set: its facts, its best offer, how many of it go to one position, and what all of them cost.

    `carries_a` is what each carries of the ripple current, where one is asked; `years` its life, None where it is not
    known or heat does not limit it.
    """

    part: Row
    offer: Row
    times: int
    cost: float | None
    carries_a: float | None
    years: float | None
    worn_by_heat: bool

    @property
    def name(self) -> str:
        """Maker and part number: what the builder writes down."""
        return part_name(self.part["maker"], self.part["part_number"])


@dataclass(frozen=True)
class Joined:
    """Two parts that together fit one position, and what they are together.

    `margins` are the rooms left over [mm] with their names, as far as they are asked; `years` the shorter of both
    lives, None where it is not known or heat limits neither; `cost` that of all pieces in the builder's own currency.
    """

    way: str
    members: tuple[Member, ...]
    capacitance_f: float
    tolerance_pct: tuple[float | None, float | None]
    rated_v: float | None
    esr_ohm: float | None
    esr_hz: float | None
    margins: tuple[tuple[str, float], ...]
    years: float | None
    worn_by_heat: bool
    cost: float | None
    total: float
    cautions: tuple[str, ...]
    sentence: str

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the parts, one for each piece that goes into a position."""
        return tuple(one.name for one in self.members for _ in range(one.times))


@dataclass(frozen=True)
class Way:
    """One way to join two: the best pairs, how many fit in all, and of how many that can't be told."""

    name: str
    best: tuple[Joined, ...]
    kept_count: int
    open_count: int


@dataclass(frozen=True)
class Several:
    """The pairs that fit one requirement, by the way they are joined."""

    requirement: Requirement
    ways: tuple[Way, ...] = ()

    @property
    def best(self) -> tuple[Joined, ...]:
        """The best pairs of every way."""
        return tuple(one for way in self.ways for one in way.best)

    @property
    def sentences(self) -> tuple[str, ...]:
        """The best of each way in words, the first with how many fit; what a builder must know before each way."""
        return tuple(said for way in self.ways for said in words.of_way(way, TOLD))


def several(
    con: duckdb.DuckDBPyConnection,
    requirements: Sequence[Requirement],
    best: int = BEST,
    weights: Weights | None = None,
) -> list[Several]:
    """For each requirement the best pairs of parts and how many fit: one statement for every AT_ONCE of them.

    A part without a stated capacitance is left out. The leads of both are led to the holes, so that the lead spacing is
    not asked; neither of two in parallel reaches the lower limit of the capacitance by itself.

    Args:
        con: a catalog opened to read.
        requirements: any number of them.
        best: how many pairs of each way come back, 1 or more; the counts are of all.
        weights: the builder's own; else the usual ones of ranking.py.

    Raises:
        RequirementError: best is below 1.
    """
    if best < 1:
        raise RequirementError(f"The best {best} pairs are asked for. Ask for 1 or more: the counts are of all.")
    by_way: list[dict[str, list[dict[str, Any]]]] = [{} for _ in requirements]
    for first in range(0, len(requirements), AT_ONCE):
        some = requirements[first : first + AT_ONCE]
        for row in rows_of(con, SEVERAL, parameters(some, best, weights)):
            by_way[first + row["number"]].setdefault(row["way"], []).append(row)
    return [
        Several(need, tuple(_way(need, way, its[way]) for way in WAYS if way in its))
        for need, its in zip(requirements, by_way, strict=True)
    ]


def where_few(
    con: duckdb.DuckDBPyConnection, found: Sequence["Found"], best: int = TOLD, weights: Weights | None = None
) -> list[Several]:
    """The pairs for each answer with few parts that fit; none for one with enough."""
    told = iter(several(con, [one.requirement for one in found if one.few], best, weights))
    return [next(told) if one.few else Several(one.requirement) for one in found]


def parameters(requirements: Sequence[Requirement], best: int, weights: Weights | None = None) -> dict[str, Any]:
    """What is bound to the statement: the needs, and those weights that count for pairs."""
    weighed = (weights or Weights()).parameters()
    bound = [{**need, "most": best} for need in needs(requirements)]
    return {"needs": bound} | {name: value for name, value in weighed.items() if f"${name}::" in SEVERAL}


def _way(need: Requirement, way: str, rows: Sequence[dict[str, Any]]) -> Way:
    best = tuple(_joined(need, row) for row in rows if row["total"] is not None)
    return Way(way, best, rows[0]["kept_count"], rows[0]["open_count"])


def _joined(need: Requirement, row: dict[str, Any]) -> Joined:
    sides = ("other", "one") if row["swapped"] else ("one", "other")
    members = tuple(_member(need, row, side) for side in (sides[:1] if row["alike"] else sides))
    one, other = facts = [{**row[f"{side}_fact"], "esr_at_ohm": row[side]["esr_at_ohm"]} for side in sides]
    joint = together(row["way"], one, other, need.esr_hz)
    worn = tuple(one.years for one in members if one.worn_by_heat)
    costs = [one.cost for one in members]
    above = [row[side]["above_mm"] for side in sides]
    made = {
        "way": row["way"],
        "members": members,
        "capacitance_f": row["joint_f"],
        "tolerance_pct": (joint["tolerance_low_pct"], joint["tolerance_high_pct"]),
        "margins": _margins(row["gap_mm"], above),
        "years": set_years(list(worn)) if worn else None,
        "worn_by_heat": bool(worn),
        "cost": None if None in costs else sum(cost for cost in costs if cost is not None),
        "total": row["total"],
        **{name: joint[name] for name in ("rated_v", "esr_ohm", "esr_hz")},
    }
    vents = dict.fromkeys(said for fact, room in zip(facts, above, strict=True) for said in vents_of(fact, room))
    plain = Joined(**made, cautions=(), sentence="")
    return Joined(**made, cautions=(*words.cautions(plain), *vents), sentence=words.sentence(plain, need))


def _member(need: Requirement, row: dict[str, Any], side: str) -> Member:
    its, fact = row[side], row[f"{side}_fact"]
    life_h = its["life_h"] if need.ripple_a is None else row[f"{side}_life_h"]
    return Member(
        part=frozen(fact),
        offer=frozen(row[f"{side}_offer"]),
        times=2 if row["alike"] else 1,
        cost=its["cost"],
        carries_a=row[f"{side}_carries_a"],
        years=years_of(life_h, need.hours_a_day),
        worn_by_heat=not its["lasting"],
    )


def _margins(gap_mm: float | None, above: Sequence[float | None]) -> tuple[tuple[str, float], ...]:
    """The margins asked, by name; of the two headrooms the smaller."""
    heights = [one for one in above if one is not None]
    named = (("around and between", gap_mm), ("headroom", min(heights, default=None)))
    return tuple((name, margin) for name, margin in named if margin is not None)
