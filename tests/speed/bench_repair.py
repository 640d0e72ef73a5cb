"""S3: python -m speed.bench_repair [OFFERS ...]: a repair of 1,000 positions, 150 of them different, in one search."""

import sys
from collections.abc import Callable, Sequence
from dataclasses import replace

import duckdb

from speed import by_hand
from speed.asked import answered, repair
from speed.catalogs import catalogs
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

POSITIONS, DIFFERENT, BEST = 1000, 150, 20
GOALS = (Goal("SQL by hand", 1.3), Goal("the different one by one", 20, faster=True))


def ways(con: duckdb.DuckDBPyConnection, asked: Sequence[Requirement]) -> dict[str, Callable[[], object]]:
    """Give ours and its rivals, each of which answers every position."""

    def one_by_one() -> object:
        unnamed = [replace(one, reference="") for one in asked]
        found = {one: answered(find(con, [one], BEST)[0]) for one in dict.fromkeys(unnamed)}
        return [found[one] for one in unnamed]

    return {
        "one find": lambda: [answered(one) for one in find(con, asked, BEST)],
        "SQL by hand": lambda: [by_hand.same(rows) for rows in by_hand.many(con, asked, BEST)],
        "the different one by one": one_by_one,
    }


def main(sizes: Sequence[int], rounds: int = ROUNDS) -> None:
    """Measure each size and print the table."""
    tell_machine(rounds)
    for offers, path in catalogs(sizes):
        with open_to_read(path) as con:
            times = measured(ways(con, repair(POSITIONS, DIFFERENT)), rounds)
            tell(f"S3 {POSITIONS} positions, {offers:,} offers", times, GOALS)


if __name__ == "__main__":
    main([int(size) for size in sys.argv[1:]])
