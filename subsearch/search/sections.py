"""Several singles for one can that holds several capacitors: each section its own part, side by side in one room.

Each single gets a round place of the same size, so that all of them find room whichever is chosen; what fits only
because another one is thinner is not looked for. Never chosen by itself: how they are held and joined is the builder's.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import duckdb

from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import body, printed, value_text
from subsearch.search.candidates import Found, find
from subsearch.search.derived_sections import place_mm
from subsearch.search.requirement import Requirement
from subsearch.search.weights import Weights
from subsearch.units import counted, show

NOT_OF_ONE: dict[str, Any] = {
    **dict.fromkeys(("capacitance_low_f", "capacitance_high_f", "hole_spacing_mm", "hole_diameter_mm", "hole_plated")),
    **dict.fromkeys(("lead_style", "left_mm", "right_mm", "front_mm", "back_mm", "pinned_maker", "pinned_part_number")),
    "may_lie_flat": False,
}
"""What is asked of the can, and not of each single in its place."""
TO_MIND = (
    "Join one pole of all (of polar ones the minus) to the can's common pole, insulate the bodies from each other, "
    "leave a way out for their vents, and see that the leads reach."
)


@dataclass(frozen=True)
class Singles:
    """What stands in for the sections: for each different value how many of it, and what was found.

    `place_mm` is the diameter of the round place of each [mm], None where no room was asked.
    """

    found: tuple[tuple[int, Found], ...]
    place_mm: float | None

    @property
    def complete(self) -> bool:
        """Whether something fits for every section."""
        return all(found.kept for _, found in self.found)

    @property
    def sentence(self) -> str:
        """What goes where, how long all of it lasts, what it costs, and what to mind; or which section has nothing."""
        place = "" if self.place_mm is None else f", each in a round place of {show(round(self.place_mm, 2), 'mm')}"
        many = sum(count for count, _ in self.found)
        told = "; ".join(_one(count, found) for count, found in self.found)
        if not self.complete:
            return f"{counted(many, 'single')} for the sections of the can{place}: {told}."
        return f"{counted(many, 'single')} for the sections of the can{place}: {told}; {self._together()}. {TO_MIND}"

    def _together(self) -> str:
        best = [found.kept[0] for _, found in self.found]
        costs = [one.made["cost"] for one in best]
        cost = "" if None in costs else f", {sum(costs):.2f} for all"
        lives = [one.made["years"] for one in best if not one.made["not_worn_by_heat"]]
        if None in lives:
            return f"how long they last can't be told{cost}"
        if not lives:
            return f"not limited by heat{cost}"
        years = "15 years (ceiling)" if min(lives) >= CEILING_Y else f"{min(lives):.1f} years"
        return f"the set lasts {years}, the shortest of all{cost}"


def _one(count: int, found: Found) -> str:
    value = printed("capacitance_f", found.requirement.capacitance_f)
    if not found.kept:
        return f"nothing fits for {value}"
    part = found.kept[0]
    times = f"{count} × " if count > 1 else ""
    return f"{times}{part.name} ({value_text(part.part)}, {body(part.part)}) for {value}"


def singles(
    con: duckdb.DuckDBPyConnection, need: Requirement, sections_f: Sequence[float], weights: Weights | None = None
) -> Singles:
    """The best part for each section of a can, all of them in its room.

    Args:
        con: a catalog opened to read.
        need: what the can's position asks; its capacitance counts for none of the sections.
        sections_f: the capacitance of each section [F], 2 to 4 of them.
        weights: the builder's own; else the usual ones of ranking.py.

    Raises:
        RequirementError: a section asks what can't be.
    """
    place = place_mm(need, len(sections_f))
    counts = Counter(sections_f)
    asked = [
        replace(
            need,
            reference=f"{need.reference}, {printed('capacitance_f', value)}",
            capacitance_f=value,
            pieces=need.pieces * count,
            free_diameter_mm=place,
            **NOT_OF_ONE,
        )
        for value, count in counts.items()
    ]
    return Singles(tuple(zip(counts.values(), find(con, asked, 1, weights), strict=True)), place)
