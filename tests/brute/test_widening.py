"""Whatever condition is asked less of, no part that fits is lost, and none that may fit is refused."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import duckdb
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as some

from brute.asking import EVERYTHING, named, requirement
from brute.merged import Claims
from brute.needs import TECHNOLOGIES, draw
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

ROOM = ("left_mm", "right_mm", "front_mm", "back_mm", "headroom_mm", "free_diameter_mm")
# Less of what is asked, by field: the smaller the share, the less. Where no hole spacing is stated a part is looked at
# as it was made only, so that leaving it out asks for something else.
WIDER: dict[str, Callable[[Any, float], Any]] = {
    **{name: lambda value, share: value * share for name in ("capacitance_low_f", "rated_v", "rated_ac_v", "ripple_a")},
    **{name: lambda value, share: value * share for name in ("esr_least_ohm", "life_wanted_y", "hours_a_day")},
    **{name: lambda value, share: value / share for name in ("capacitance_high_f", "esr_most_ohm", "leakage_most_a")},
    **{name: lambda value, share: value / share for name in (*ROOM, "hole_diameter_mm")},
    **{name: lambda value, share: None for name in ("lead_style", "safety_class", "hole_plated")},
    "working_c": lambda value, share: value - 40 * (1 - share),
    "technologies": lambda value, share: TECHNOLOGIES,
    "conditions": lambda value, share: ("new", "old stock", "pulled"),
    "pieces": lambda value, share: max(1, int(value * share)),
    "reverses": lambda value, share: False,
    "in_stock": lambda value, share: False,
    "may_lie_flat": lambda value, share: True,
}


@pytest.fixture(scope="module")
def needs(parts: list[Claims]) -> list[Requirement]:
    return [requirement(need) for need in draw(parts, 7, 120)]


@settings(
    max_examples=20,
    deadline=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(number=some.integers(0, 119), share=some.floats(0.05, 1))
def test_widening_any_one_condition_never_loses_a_part(
    demo_con: duckdb.DuckDBPyConnection, needs: list[Requirement], number: int, share: float
) -> None:
    need = needs[number]
    asked = {
        name: wider(getattr(need, name), share) for name, wider in WIDER.items() if getattr(need, name) is not None
    }
    changed = [replace(need, **{name: value}) for name, value in asked.items()]
    first, *others = find(demo_con, [need, *changed], EVERYTHING)
    kept, left_open = map(set, named(first))
    for name, found in zip(asked, others, strict=True):
        now_kept, now_open = map(set, named(found))
        assert kept <= now_kept, (name, kept - now_kept)
        assert left_open <= now_kept | now_open, (name, left_open - now_kept - now_open)
