"""Numbers and conditions in words."""

import random
from dataclasses import replace

import pytest
from repair.common import candidate

from subsearch.display.asked import conditions
from subsearch.display.scored import score_text
from subsearch.display.words import adding_up, span_text
from subsearch.search.requirement import Requirement

EVERYTHING = Requirement(
    reference="C9", pieces=5, role="coupling", capacitance_f=47e-6, rated_v=25.0, reverses=True, lead_style="radial",
    hole_spacing_mm=2.5, free_diameter_mm=9.0, left_mm=4.0, right_mm=4.0, front_mm=3.0, back_mm=5.0, headroom_mm=12.0,
    working_c=60.0, hours_a_day=4.0, life_wanted_y=10.0, ripple_a=0.2, ripple_hz=100.0, esr_most_ohm=1.0, esr_hz=1e5,
    leakage_most_a=5e-6,
)  # fmt: skip


def test_all_that_is_asked_is_said() -> None:
    assert dict(conditions(EVERYTHING)) == {
        "value": "47 µF to 94 µF for 47 µF; 25 V or more",
        "polarity": "bipolar: the voltage here may reverse",
        "technology": "all but tantalum, ceramic class 2, paper",
        "leads": "radial, holes 2.5 mm apart",
        "space": "left and right 4, front 3, back 5, headroom 12, free diameter 9 mm",
        "heat": "works at 60 °C; lasts 10 years or more, 4 hours a day",
        "ripple": "200 mA at 100 Hz",
        "ESR": "1 Ω or less at 100 kHz",
        "leakage": "5 µA or less when new",
        "offer": "new or old stock, 5 or more in stock",
    }


def test_a_safety_class_and_a_wide_open_need_are_said() -> None:
    asked = Requirement(role="interference suppression", capacitance_f=1e-7, safety_class="X2", rated_ac_v=250)
    assert dict(conditions(asked))["safety"] == "class X2 or stricter, traceable source"
    assert dict(conditions(asked))["value"] == "80 nF to 0.12 µF for 0.1 µF; 250 V a.c. or more"
    assert dict(conditions(asked))["technology"] == "film PET, film PP, ceramic C0G, ceramic class 2"
    assert [label for label, _ in conditions(Requirement(in_stock=False))] == ["technology", "offer"]


def test_printed_contributions_add_up_whatever_they_are() -> None:
    draw = random.Random(7)
    for _ in range(2000):
        worth = {f"c{number}": draw.uniform(-0.5, 2) for number in range(7)}
        told = adding_up({**worth, "unknown": None})
        assert told.pop("unknown") == "not stated"
        assert round(sum(round(1000 * float(one)) for one in told.values())) == round(1000 * sum(worth.values()))
        assert all(abs(float(told[name]) - worth[name]) < 0.001 + 1e-9 for name in worth)
    assert adding_up({"a": 0.825, "b": -0.0}) == {"a": "0.825", "b": "0.000"}


@pytest.mark.parametrize(
    ("shortest_y", "longest_y", "uncertain_k", "said"),
    [
        (9.0, 15.0, 0.0, "9 to 15 by other published laws"),
        (9.06, 14.94, 0.0, "9.1 to 14.9 by other published laws"),
        (9.0, 15.0, 2.5, "9 to 15 by published laws and 2.5 K either way"),
        (15.0, 15.0, 0.0, "the same by all published laws"),
        (15.0, 15.0, 5.0, "the same by all published laws and 5 K either way"),
        (None, None, 5.0, ""),
    ],
)
def test_life_as_a_span(shortest_y: float | None, longest_y: float | None, uncertain_k: float, said: str) -> None:
    assert span_text(candidate({"shortest_y": shortest_y, "longest_y": longest_y}), uncertain_k) == said


@pytest.mark.parametrize(("unbeaten", "text"), [(True, "1.25 *"), (False, "1.25  "), (None, "1.25  ")])
def test_the_score_is_marked_only_where_nothing_beats_the_part(unbeaten: bool | None, text: str) -> None:
    assert score_text(replace(candidate(), total=1.25, unbeaten=unbeaten)) == text
