"""The same parts at other temperatures: what a curve of life is drawn from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import duckdb

from subsearch.search.answers import Candidate
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

COOLEST_C, STEP_K = 30, 5


@dataclass(frozen=True)
class LifeAt:
    """Life [years] of one part at one temperature [°C]; the years are None where they can't be told."""

    name: str
    working_c: float
    years: float | None


def life_over(
    con: duckdb.DuckDBPyConnection, requirement: Requirement, candidates: Sequence[Candidate]
) -> list[LifeAt]:
    """Life of each part from 30 °C to its own upper category temperature, all asked in one statement.

    Args:
        con: a catalog opened to read.
        requirement: what is asked; only its temperature is changed.
        candidates: parts that were found for it. One whose upper temperature is not stated gives no row.
    """
    asked = [
        replace(
            requirement,
            working_c=float(working_c),
            pinned_maker=one.part["maker"],
            pinned_part_number=one.part["part_number"],
        )
        for one in candidates
        for working_c in _temperatures(one)
    ]
    pinned = ((found.requirement.working_c, found.pinned) for found in find(con, asked, 1))
    return [LifeAt(part.name, at, part.made["years"]) for at, part in pinned if part is not None and at is not None]


def _temperatures(candidate: Candidate) -> list[int]:
    """Every 5 °C, and the upper category temperature itself."""
    rated_c = candidate.part["rated_c"]
    if rated_c is None:
        return []
    return sorted({*range(COOLEST_C, int(rated_c), STEP_K), int(rated_c)})
