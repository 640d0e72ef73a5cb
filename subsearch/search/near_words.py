"""The words of a concession, as a builder at the bench understands them."""

from dataclasses import asdict
from math import ceil, floor
from typing import Any

from subsearch.formulas.life import CEILING_Y
from subsearch.formulas.voltage import RESERVE
from subsearch.search.answers import Candidate, Words
from subsearch.search.measures import Measure
from subsearch.search.requirement import Requirement
from subsearch.units import counted, show

Move = tuple[tuple[Measure, Any], ...]  # the measures of one concession, each with its value or word


def sentence(now: Requirement, then: Requirement, move: Move, lets_in: int, best: Candidate | None) -> str:
    """What is conceded, how many parts that lets in, and how long the best of them lasts."""
    said = conceded(now, then, move)
    said += " and" if any(measure.is_clause for measure, _ in move) else ""
    lets = f"{'together let' if len(move) > 1 else 'lets'} in {counted(lets_in, 'part')}"
    return f"{said[0].upper()}{said[1:]} {lets}{_named(best, lets_in, then.working_c is not None)}."


def conceded(now: Requirement, then: Requirement, move: Move) -> str:
    """What is conceded, by itself: a whole clause comes last, and is joined by "and"."""
    ordered = sorted(move, key=lambda one: one[0].is_clause)
    return " and ".join(_words(now, then, measure, value) for measure, value in ordered)


def _named(best: Candidate | None, lets_in: int, asks_heat: bool) -> str:
    """The best part that is let in, and how long it lasts where that is asked."""
    if best is None:
        return ""
    if not asks_heat:
        return f"; the best of them is {best.name}" if lets_in > 1 else f": {best.name}"
    return (f"; the best of them, {best.name}," if lets_in > 1 else f", {best.name}, which") + _lasts(best)


def _words(now: Requirement, then: Requirement, measure: Measure, value: Any) -> str:
    """What is conceded, rounded so that it is enough."""
    was, will = (asdict(one) for one in (now, then))
    moved = value if isinstance(value, float) else 0.0
    field = measure.fields[0]
    share = abs(moved / was[field] - 1) if isinstance(was[field], float) else 0.0
    cooler_k = _up((now.working_c or 0.0) - moved, 0.1)
    return measure.words.format_map(
        {
            "now": Words(was),
            "then": Words(will),
            "word": value,
            "by_mm": show(_up(moved, 0.01), "mm"),
            "by_k": show(cooler_k, "K"),
            "cool_c": show((now.working_c or 0.0) - cooler_k, "°C"),
            "pct": f"{show(_up(100 * share, 1), '')} %",
            "measured": show(moved / RESERVE, "V"),
            "years_now": show(now.life_wanted_y, ""),
            "years_then": show(floor(100 * (then.life_wanted_y or 0.0)) / 100, ""),
        }
    )


def _up(x: float, step: float) -> float:
    return ceil(round(x / step, 6)) * step


def _lasts(best: Candidate) -> str:
    """How long the best of them lasts, where it can be told."""
    years = best.made["years"]
    if best.made["not_worn_by_heat"]:
        return " is not limited by heat"
    if years is None:
        return " states no life that can be reckoned"
    return f" lasts {f'{years:.0f} years (ceiling)' if years >= CEILING_Y else f'{years:.1f} years'}"
