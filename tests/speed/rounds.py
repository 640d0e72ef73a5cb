"""Rivals measured turn by turn in one run, and the table of what came of it."""

import os
import platform
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import median
from time import perf_counter

import duckdb

ROUNDS = 9


@dataclass(frozen=True)
class Goal:
    """A goal: ours may take at most (or, `faster`, must be shorter by at least) so many times the rival's time."""

    rival: str
    times: float
    faster: bool = False

    def met(self, ratio: float) -> bool:
        """Whether a ratio of our time to the rival's meets it."""
        return ratio <= (1 / self.times if self.faster else self.times)

    def __str__(self) -> str:
        return f"≥ {self.times:g} × faster" if self.faster else f"≤ {self.times:g} ×"


def measured(ways: Mapping[str, Callable[[], object]], rounds: int = ROUNDS) -> dict[str, list[float]]:
    """Give the seconds of each way in each round; the ways take turns, and all answers are first asserted equal."""
    answers = {name: way() for name, way in ways.items()}
    first = next(iter(answers))
    for name, answer in answers.items():
        assert answer == answers[first], f"{name} answers otherwise than {first}: {answer} and {answers[first]}"
    times: dict[str, list[float]] = {name: [] for name in ways}
    for turn in range(rounds):
        names = list(ways)
        for name in names[turn % len(names) :] + names[: turn % len(names)]:
            start = perf_counter()
            ways[name]()
            times[name].append(perf_counter() - start)
    return times


def ratio(ours: Sequence[float], rivals: Sequence[float]) -> float:
    """The median over the rounds of our time against the rival's in the same round."""
    return median(a / b for a, b in zip(ours, rivals, strict=True))


def tell(what: str, times: Mapping[str, Sequence[float]], goals: Sequence[Goal]) -> None:
    """Print one measurement: median times, the first way being ours, and each rival's ratio and goal."""
    (ours, its), *_ = times.items()
    print(f"{what:<34} {ours:<26} {median(its) * 1000:>10.1f} ms")
    for rival, rivals in list(times.items())[1:]:
        got, its_goals = ratio(its, rivals), [goal for goal in goals if goal.rival == rival]
        said = "; ".join(f"goal {goal}: {'met' if goal.met(got) else 'NOT met'}" for goal in its_goals)
        print(f"{'':<34} {rival:<26} {median(rivals) * 1000:>10.1f} ms   ours is {got:6.2f} ×   {said}")


def tell_machine(rounds: int = ROUNDS) -> None:
    """Print where and when this was measured."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    print(
        f"{date.today()}, {cores} cores, Python {platform.python_version()}, DuckDB {duckdb.__version__}, "
        f"load {os.getloadavg()[0]:.1f}, medians of {rounds} rounds, rivals turn by turn"
    )
