"""What may be asked, and the sentence for what may not."""

from typing import Any

import pytest

from subsearch.errors import RequirementError, SubsearchError, UnknownNameError
from subsearch.search.requirement import Requirement
from subsearch.search.roles import BY_ROLE
from subsearch.terms import CLASS_2, ROLES, TANTALUM

WRONG = [
    ({"capacitance_f": 0.0}, "capacitance_f is 0 pF; it must be above 0"),
    ({"headroom_mm": -3.0}, "headroom_mm is -3 mm; it must be above 0 (free height above the board)"),
    ({"left_mm": float("nan")}, "it must be above 0"),
    ({"pieces": 0}, "0 pieces are asked; at least 1 must be"),
    ({"hours_a_day": 0.0}, "0 hours a day; allowed is above 0, up to 24"),
    ({"hours_a_day": 25.0}, "25 hours a day"),
    ({"life_wanted_y": 16.0}, "16 years of life are wanted, but no wet part is promised more than 15"),
    ({"working_c": 400.0}, "works at 400 °C; allowed is −55 to 150 °C"),
    ({"capacitance_low_f": 2e-6, "capacitance_high_f": 1e-6}, "capacitance from 2 µF to 1 µF: nothing lies between"),
    ({"esr_least_ohm": 2.0, "esr_most_ohm": 1.0, "esr_hz": 100.0}, "series resistance from 2 Ω to 1 Ω"),
    ({"esr_most_ohm": 1.0}, "a series resistance is asked without its frequency"),
    ({"role": "couplin"}, 'Did you mean "coupling"?'),
    ({"lead_style": "raidal"}, 'C1: "raidal" is no lead style here. Did you mean "radial"?'),
    ({"safety_class": "X3"}, "Allowed are X1, X2, Y1 or Y2"),
    ({"technologies": ("wet",)}, '"wet" is no technology here'),
    ({"conditions": ("used",)}, "Allowed are new, old stock or pulled"),
]


@pytest.mark.parametrize(("fields", "sentence"), WRONG, ids=lambda value: str(value)[:40])
def test_what_may_not_be_asked(fields: dict[str, Any], sentence: str) -> None:
    with pytest.raises(SubsearchError) as caught:
        Requirement(reference="C1", **fields)
    assert sentence in str(caught.value)
    assert isinstance(caught.value, (RequirementError, UnknownNameError))


WINDOWS = {  # decided defaults, common practice: nominal against nominal, in % of the old value
    "coupling": (0, 100), "bypass": (0, 100), "bootstrap": (0, 100), "feedback leg": (0, 100),
    "rail decoupling": (-20, 100), "reservoir": (-10, 50), "regulator output": (-10, 50), "timing": (-5, 5),
    "filter or equaliser": (-5, 5), "loudspeaker crossover": (-5, 5), "interference suppression": (-20, 20),
    None: (-20, 50),
}  # fmt: skip


@pytest.mark.parametrize("role", [*ROLES, None])
def test_window_by_role(role: str | None) -> None:
    low, high = WINDOWS[role]
    asked = Requirement(role=role, capacitance_f=100e-6)
    assert asked.capacitance_low_f == pytest.approx(100e-6 * (1 + low / 100), rel=1e-12)
    assert asked.capacitance_high_f == pytest.approx(100e-6 * (1 + high / 100), rel=1e-12)


def test_the_tighter_of_old_tolerance_and_five_percent() -> None:
    tight = Requirement(role="timing", capacitance_f=100e-9, old_tolerance_pct=(-2.0, 2.0))
    loose = Requirement(role="timing", capacitance_f=100e-9, old_tolerance_pct=(-10.0, 50.0))
    assert (tight.capacitance_low_f, tight.capacitance_high_f) == pytest.approx((98e-9, 102e-9))
    assert (loose.capacitance_low_f, loose.capacitance_high_f) == pytest.approx((95e-9, 105e-9))


def test_the_builders_own_window_goes_first() -> None:
    own = Requirement(role="timing", capacitance_f=100e-9, capacitance_low_f=50e-9, capacitance_high_f=300e-9)
    assert (own.capacitance_low_f, own.capacitance_high_f) == (50e-9, 300e-9)


def test_what_must_not_go_into_a_signal_path() -> None:
    for role in ("coupling", "feedback leg", "timing", "filter or equaliser", "loudspeaker crossover"):
        assert CLASS_2 not in BY_ROLE[role].technologies
    assert all(TANTALUM not in role.technologies for role in BY_ROLE.values())
