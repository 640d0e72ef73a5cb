"""S1: python -m speed.bench_find [OFFERS ...]: one requirement against hand-written SQL and pandas masks in memory."""

import sys
from collections.abc import Sequence
from math import log
from statistics import median

import duckdb

from speed import by_hand
from speed.asked import ASKED, answered
from speed.catalogs import catalogs
from speed.masks import Frames
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import BEST, find

HAND = Goal("SQL by hand", 1.3)
IN_MEMORY = {1_000_000: Goal("pandas masks", 1.5, faster=True), 10_000_000: Goal("pandas masks", 6, faster=True)}
GROWTH = 0.5


def times_of(con: duckdb.DuckDBPyConnection, frames: Frames, what: str, rounds: int = ROUNDS) -> dict[str, list[float]]:
    """Give the seconds of each way for one of the three requirements; the answers are asserted equal."""
    asked = ASKED[what]
    return measured(
        {
            "find": lambda: answered(find(con, [asked])[0]),
            "SQL by hand": lambda: by_hand.same(by_hand.one(con, asked, BEST)),
            "pandas masks": lambda: frames.best(asked, BEST),
        },
        rounds,
    )


def main(sizes: Sequence[int]) -> None:
    """Measure each size and print the table."""
    tell_machine()
    typical: dict[int, float] = {}
    for offers, path in catalogs(sizes):
        with open_to_read(path) as con:
            frames = Frames(con)
            for what in ASKED:
                times = times_of(con, frames, what)
                goals = [HAND, *(goal for size, goal in IN_MEMORY.items() if size == offers)]
                tell(f"S1 {what}, {offers:,} offers", times, goals)
                typical |= {offers: median(times["find"])} if what == "typical" else {}
    for (small, short), (large, long) in zip(list(typical.items())[:-1], list(typical.items())[1:], strict=True):
        grown = log(long / short) / log(large / small)
        print(
            f"S1 typical, time grows with exponent {grown:.2f} from {small:,} to {large:,} offers; "
            f"goal ≤ {GROWTH} from 1 M to 10 M: {'met' if grown <= GROWTH else 'NOT met'}"
        )


if __name__ == "__main__":
    main([int(size) for size in sys.argv[1:]])
