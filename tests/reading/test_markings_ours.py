"""Whole markings and all that each states, in many notations and languages. All examples are ours, none is published.

`markings_ours/*.csv`: text; states: name=value pairs, "no capacitor" where it is none; doubted: yes where the trade
would not agree. What a row does not name must not be stated.
"""

import csv
from collections.abc import Iterator
from math import isclose
from pathlib import Path
from typing import Any

import pytest

from subsearch.reading.markings import Reading, read_marking

FOLDER = Path(__file__).parent / "markings_ours"
NUMBERS = (
    "capacitance_f", "rated_v", "rated_ac_v", "diameter_mm", "height_mm", "length_mm", "width_mm", "lead_spacing_mm",
    "rated_c", "life_h",
)  # fmt: skip
WORDS = ("polarity", "technology", "lead_style", "safety_class", "count")
FEWEST = 300


def rows() -> Iterator[tuple[str, str, str]]:
    for file in sorted(FOLDER.glob("*.csv")):
        with file.open(encoding="utf-8", newline="") as lines:
            yield from ((row["text"], row["states"], row["doubted"]) for row in csv.DictReader(lines))


def wanted(states: str) -> dict[str, Any]:
    found: dict[str, Any] = dict(pair.split("=", 1) for pair in states.split("; ") if pair)
    found |= {name: float(found[name]) for name in NUMBERS if name in found}
    found |= {"count": int(found["count"])} if "count" in found else {}
    found |= {"tolerance": tuple(map(float, found["tolerance"].split("/")))} if "tolerance" in found else {}
    return found | ({"sections": tuple(map(float, found["sections"].split("+")))} if "sections" in found else {})


def stated(reading: Reading) -> dict[str, Any]:
    found = {name: getattr(reading, name) for name in (*NUMBERS, *WORDS, "tolerance") if getattr(reading, name)}
    return found | ({"sections": reading.sections} if reading.sections else {})


def alike(one: Any, other: Any) -> bool:
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(alike, one, other))
    return isclose(one, other, rel_tol=1e-5) if isinstance(one, float) and isinstance(other, float) else one == other


ROWS = list(rows())


def test_there_are_enough_examples() -> None:
    assert len(ROWS) >= FEWEST
    assert len({text for text, _, _ in ROWS}) >= FEWEST


@pytest.mark.parametrize(("text", "states", "doubted"), ROWS)
def test_a_marking_states_just_this(text: str, states: str, doubted: str) -> None:
    reading = read_marking(text)
    if states == "no capacitor":
        assert reading.capacitance_f is None
        assert reading.not_a_capacitor
        return
    want, found = wanted(states), stated(reading)
    assert found.keys() == want.keys()
    assert {name: value for name, value in found.items() if not alike(value, want[name])} == {}
    assert bool(reading.doubts) == bool(doubted)
    assert reading.not_a_capacitor == ""
