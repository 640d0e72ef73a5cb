"""S4: python -m speed.bench_pairs [OFFERS ...]: two parts for one position against classes written by hand."""

import sys
from collections.abc import Sequence
from dataclasses import replace
from math import log
from statistics import median

import duckdb

from speed import by_hand_pairs
from speed.catalogs import catalogs
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import BEST
from subsearch.search.requirement import Requirement
from subsearch.search.several import several

HAND = Goal("classes by hand", 1.5)
GROWTH = 0.6
PARALLEL = Requirement(
    role="rail decoupling", capacitance_f=47e-6, rated_v=25, pieces=10, left_mm=9, right_mm=9, front_mm=8, back_mm=8,
    headroom_mm=30, working_c=55, life_wanted_y=10,
)  # fmt: skip
ASKED = {"in parallel": PARALLEL, "back to back": replace(PARALLEL, reverses=True)}


def ours(con: duckdb.DuckDBPyConnection, asked: Requirement) -> by_hand_pairs.Answered:
    """What of our answer must be equal."""
    found = sorted(several(con, [asked], BEST)[0].ways, key=lambda way: way.name)
    counts = tuple((way.name, way.kept_count, way.open_count) for way in found)
    return counts, tuple((way.name, one.names, round(one.total, 6)) for way in found for one in way.best)


def times_of(con: duckdb.DuckDBPyConnection, what: str, rounds: int = ROUNDS) -> dict[str, list[float]]:
    """Give the seconds of each way; the answers are asserted equal."""
    asked = ASKED[what]
    ways = {"several": lambda: ours(con, asked), HAND.rival: lambda: by_hand_pairs.pairs(con, asked, BEST)}
    return measured(ways, rounds)


def main(sizes: Sequence[int]) -> None:
    """Measure each size and print the table."""
    tell_machine()
    took: dict[str, dict[int, float]] = {what: {} for what in ASKED}
    for offers, path in catalogs(sizes):
        with open_to_read(path) as con:
            for what, its in took.items():
                times = times_of(con, what)
                tell(f"S4 {what}, {offers:,} offers", times, [HAND])
                its[offers] = median(times["several"])
    for what, its in took.items():
        for (small, short), (large, long) in zip(list(its.items())[:-1], list(its.items())[1:], strict=True):
            grown = log(long / short) / log(large / small)
            said = f"goal ≤ {GROWTH}: {'met' if grown <= GROWTH else 'NOT met'}"
            print(f"S4 {what}, time grows with exponent {grown:.2f} from {small:,} to {large:,} offers; {said}")


if __name__ == "__main__":
    main([int(size) for size in sys.argv[1:]])
