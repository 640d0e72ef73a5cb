"""S6: python -m speed.bench_markings: the marking reader on single texts, each read by itself and nothing remembered.

Two things are told: the median over all our own examples, and the worst over these and over texts made to be hard, of
the greatest length that is read. The time of a text is the least of several readings, so that other work beside it
does not count.
"""

import csv
from collections.abc import Sequence
from pathlib import Path
from statistics import median
from time import perf_counter

from speed.rounds import tell_machine
from subsearch.reading.markings import LONGEST, read_marking

EXAMPLES = Path(__file__).parent.parent / "reading" / "markings_ours"
MEDIAN_US, WORST_MS = 150, 10
READINGS = 9
HARD = (
    "1", "1 ", "1,", "+1", "aA ", "1µ", "1/", "1+1", "1x", ".1", "104K ", "(1", "a", "Ø1", "1V/", "-1-",
    "1 000 ", "4u7", "D1", "1mm ", "non polar ", "電", "O0", "0O.", "± ", "1%", "47uF ", "47uF 63V ", "1-1-1-",
    "d-h-p=1-2-3 ", " ", "Ω ", "12.12.12 ", "?F", "1?F", "1uU ", "1/1/1V ", "electrolytic ", "1 Stück ",
    "&micro;", "V surge ", "C1,", "-40", "X2", "7V;", "\u00bd", "1 dia ",
)  # fmt: skip


def examples() -> list[str]:
    """Give the texts of all our own examples."""
    texts = []
    for file in sorted(EXAMPLES.glob("*.csv")):
        with file.open(encoding="utf-8", newline="") as lines:
            texts += [row["text"] for row in csv.DictReader(lines)]
    return texts


def hard() -> list[str]:
    """Give texts of the greatest length, each one piece over and over."""
    return [(piece * LONGEST)[:LONGEST] for piece in HARD]


def seconds(texts: Sequence[str], readings: int = READINGS) -> list[float]:
    """Give the shortest time of several readings of each text."""
    return [min(_once(text) for _ in range(readings)) for text in texts]


def _once(text: str) -> float:
    start = perf_counter()
    read_marking(text)
    return perf_counter() - start


def main(readings: int = READINGS) -> None:
    """Measure and print."""
    tell_machine(readings)
    usual, texts = examples(), hard()
    times, worst = seconds(usual, readings), seconds(texts, readings)
    middle, longest = median(times) * 1e6, max(*times, *worst) * 1e3
    slowest = max(zip([*times, *worst], [*usual, *texts], strict=True))[1]
    print(f"S6 median of {len(usual)} texts: {middle:.0f} µs, goal ≤ {MEDIAN_US}: {_met(middle <= MEDIAN_US)}")
    print(f"S6 worst: {longest:.1f} ms, goal ≤ {WORST_MS}: {_met(longest <= WORST_MS)} ({slowest[:30]!r} …)")


def _met(met: bool) -> str:
    return "met" if met else "NOT met"


if __name__ == "__main__":
    main()
