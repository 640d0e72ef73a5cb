"""S1: python -m speed.bench_find [OFFERS ...]: one requirement against SQL by hand, and pandas and polars in memory."""

import sys
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from importlib.util import find_spec
from math import log
from statistics import median

import duckdb

from speed import by_hand
from speed.asked import ASKED, Answered, answered
from speed.catalogs import catalogs
from speed.masks import Frames
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import BEST, find
from subsearch.search.requirement import Requirement

Rival = Callable[[Requirement, int], Answered]
HAND = Goal("SQL by hand", 1.3)
IN_MEMORY = {1_000_000: 1.5, 10_000_000: 6}  # so many times faster at that size
GROWTH = 0.5


def in_memory(con: duckdb.DuckDBPyConnection) -> dict[str, Rival]:
    """Give the rivals that hold every column in memory beforehand; where polars is missing, that is said."""
    rivals: dict[str, Rival] = {"pandas masks": Frames(con).best}
    if find_spec("polars") is None:
        print("polars is not installed and is left out: pip install -e '.[speed]'")
        return rivals
    from speed.polars_columns import Columns  # only where it is installed

    return {**rivals, "polars": Columns(con).best}


def ways(
    con: duckdb.DuckDBPyConnection, rivals: Mapping[str, Rival], asked: Requirement
) -> dict[str, Callable[[], object]]:
    """Give ours and its rivals for one requirement."""
    ours_and_hand: dict[str, Callable[[], object]] = {
        "find": lambda: answered(find(con, [asked])[0]),
        "SQL by hand": lambda: by_hand.same(by_hand.one(con, asked, BEST)),
    }
    return ours_and_hand | {name: partial(best, asked, BEST) for name, best in rivals.items()}


def times_of(
    con: duckdb.DuckDBPyConnection, rivals: Mapping[str, Rival], what: str, rounds: int = ROUNDS
) -> dict[str, list[float]]:
    """Give the seconds of each way for one of the three requirements; the answers are asserted equal."""
    return measured(ways(con, rivals, ASKED[what]), rounds)


def main(sizes: Sequence[int], rounds: int = ROUNDS) -> None:
    """Measure each size and print the table."""
    tell_machine(rounds)
    typical: dict[int, float] = {}
    for offers, path in catalogs(sizes):
        with open_to_read(path) as con:
            rivals = in_memory(con)
            goals = [HAND, *(Goal(name, IN_MEMORY[offers], faster=True) for name in rivals if offers in IN_MEMORY)]
            for what in ASKED:
                times = times_of(con, rivals, what, rounds)
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
