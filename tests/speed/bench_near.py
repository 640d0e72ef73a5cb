"""S2: python -m speed.bench_near [OFFERS ...]: the near misses of one requirement against the two-scan form by hand."""

import sys
from collections.abc import Callable, Sequence
from statistics import median

import duckdb

from speed import near_by_hand
from speed.asked import ASKED, SCARCE, TYPICAL
from speed.catalogs import catalogs
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.store import open_to_read
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.candidates import find
from subsearch.search.near import near
from subsearch.search.requirement import Requirement

HAND = Goal("two scans by hand", 1.3)
TOGETHER_MS, AT = 60, 1_000_000  # one requirement and its near misses


def statement(con: duckdb.DuckDBPyConnection, asked: Requirement) -> near_by_hand.Told:
    """What our statement of near misses tells."""
    rows = rows_of(con, *asked_of(near, [asked]))
    return near_by_hand.told((row["kind"], row["name"], row["word"], row["value"], row["parts"]) for row in rows)


def ways(con: duckdb.DuckDBPyConnection, asked: Requirement) -> dict[str, Callable[[], object]]:
    """Give our statement and its rival."""
    return {
        "near misses, statement": lambda: statement(con, asked),
        "two scans by hand": lambda: near_by_hand.near(con, asked),
    }


def whole(con: duckdb.DuckDBPyConnection, asked: Requirement) -> dict[str, Callable[[], object]]:
    """Give all that near misses take, with each concession asked again for the best it lets in; the rival counts only.

    So only how many parts each condition alone keeps out is compared. For a requirement with few parts that fit.
    """
    found = find(con, [asked])[0]

    def ours() -> object:
        return {miss.condition: miss.alone for miss in found.near_misses().misses if miss.alone}

    def rival() -> object:
        return {name: parts for kind, name, _, _, parts in near_by_hand.near(con, asked) if kind == "alone"}

    return {"near misses, asked again": ours, "two scans by hand": rival}


def together(con: duckdb.DuckDBPyConnection, asked: Requirement) -> Callable[[], object]:
    """Give one requirement and our statement of its near misses, after one another."""
    return lambda: (find(con, [asked]), statement(con, asked))


def main(sizes: Sequence[int], rounds: int = ROUNDS) -> None:
    """Measure each size and print the table."""
    tell_machine(rounds)
    for offers, path in catalogs(sizes):
        with open_to_read(path) as con:
            for what, asked in ASKED.items():
                tell(f"S2 {what}, {offers:,} offers", measured(ways(con, asked), rounds), [HAND])
            tell(f"S2 nothing fits, {offers:,} offers", measured(whole(con, SCARCE), rounds), [])
            (times,) = measured({"both": together(con, TYPICAL)}, rounds).values()
        got = median(times) * 1000
        judged = f"; goal under {TOGETHER_MS} ms: {'met' if got < TOGETHER_MS else 'NOT met'}" if offers == AT else ""
        print(f"S1 + S2 typical, {offers:,} offers: {got:.1f} ms{judged}")


if __name__ == "__main__":
    main([int(size) for size in sys.argv[1:]])
