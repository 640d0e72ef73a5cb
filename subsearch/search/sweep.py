"""The same parts at other temperatures: what a curve of life is drawn from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import duckdb

from subsearch.search.answers import Candidate
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

COOLEST_C, HOTTEST_C, STEP_K = 30, 150, 5  # no requirement is hotter


@dataclass(frozen=True)
class LifeAt:
    """Life [years] of one part at one temperature [°C], with its span over the published laws.

    Each is None where it can't be told, or where heat does not limit the part.
    """

    name: str
    working_c: float
    years: float | None
    shortest_y: float | None = None
    longest_y: float | None = None


def life_over(
    con: duckdb.DuckDBPyConnection, requirement: Requirement, candidates: Sequence[Candidate]
) -> list[LifeAt]:
    """Life of each part from 30 °C to its own upper category temperature, all asked in one statement.

    The temperature that is asked is among them, so that what is told there is the figure of the search itself.

    Args:
        con: a catalog opened to read.
        requirement: what is asked; only its temperature is changed.
        candidates: parts that were found for it. One whose upper temperature is not stated gives no row.
    """
    asked = [
        replace(
            requirement,
            working_c=working_c,
            pinned_maker=one.part["maker"],
            pinned_part_number=one.part["part_number"],
        )
        for one in candidates
        for working_c in _temperatures(one, requirement.working_c)
    ]
    pinned = ((found.requirement.working_c, found.pinned) for found in find(con, asked, 1))
    return [
        LifeAt(part.name, at, part.made["years"], part.made["shortest_y"], part.made["longest_y"])
        for at, part in pinned
        if part is not None and at is not None
    ]


def _temperatures(candidate: Candidate, asked_c: float | None) -> list[float]:
    """Every 5 °C, the upper category temperature itself, and the one that is asked, where the part may be so hot."""
    rated_c = candidate.part["rated_c"]
    if rated_c is None:
        return []
    hottest_c = min(float(rated_c), HOTTEST_C)
    steps = {float(one) for one in range(COOLEST_C, int(hottest_c), STEP_K)}
    asked = {asked_c} if asked_c is not None and asked_c <= hottest_c else set()
    return sorted({*steps, hottest_c, *asked})
