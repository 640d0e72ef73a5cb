"""What a position asks, and the note for everything that was decided on the way."""

from typing import Any

import pytest
from repair.common import asked, position, repair

from subsearch.errors import RequirementError
from subsearch.repair.asking import ask, unchecked
from subsearch.repair.positions import Rating
from subsearch.search.requirement import Requirement
from subsearch.terms import C0G, CLASS_2, FILM_PET, PAPER, ROLES, TANTALUM, WET

V25, V64 = Rating(25.0, False), Rating(64.0, False)
WINDOWS = {
    "coupling": (0, 100), "bypass": (0, 100), "bootstrap": (0, 100), "feedback leg": (0, 100),
    "rail decoupling": (-20, 100), "reservoir": (-10, 50), "regulator output": (-10, 50), "timing": (-5, 5),
    "filter or equaliser": (-5, 5), "loudspeaker crossover": (-5, 5), "interference suppression": (-20, 20),
    None: (-20, 50),
}  # fmt: skip
NO_ROLE = "No role is given: a window of −20…+50 % is taken for the capacitance."
NO_VOLTAGE = "The rated voltage is empty and therefore not asked: look at it before you take a part."
NO_VALUE = "The capacitance is empty and therefore not asked: look at it before you take a part."
NO_POLARITY = "The polarity found is not recorded, so it is not asked: look which way the old part stood."
SIGN_CHANGES = "The voltage changes its sign here: only a part without polarity is taken."
SMALL_DIP = "The voltage dips a little to the other sign: a polar part stands that, a bipolar one better."
WAS_BIPOLAR = "The old part was bipolar and no d.c. of one sign was measured: polar parts are refused."
NO_TEMPERATURE = "No temperature is known here, so neither it nor the life is asked."
NO_RIPPLE = "No ripple current is given, so life is reckoned without its heat."
FULL: dict[str, Any] = {
    "role": "bypass", "marking": "10/25", "capacitance_f": 1e-5, "rated_voltage": V25, "polarity": "polar",
    "section": "chassis",
}  # fmt: skip


def required(**values: Any) -> Requirement:
    found = asked(**(FULL | values)).requirement
    assert found is not None
    return found


def notes(**values: Any) -> tuple[str, ...]:
    return asked(**(FULL | values)).notes


@pytest.mark.parametrize("role", WINDOWS)
def test_windows(role: str | None) -> None:
    low, high = WINDOWS[role]
    found = required(role=role)
    window = [1e-5 * (1 + low / 100), 1e-5 * (1 + high / 100)]
    assert [found.capacitance_low_f, found.capacitance_high_f] == pytest.approx(window, rel=1e-12)
    assert (NO_ROLE in notes(role=role)) == (role is None)


def test_every_role_has_a_window() -> None:
    assert {*ROLES, None} == WINDOWS.keys()


@pytest.mark.parametrize("role", ["timing", "filter or equaliser", "loudspeaker crossover"])
def test_the_old_tolerance_makes_a_narrow_window_narrower(role: str) -> None:
    tight = required(role=role, old_tolerance_pct=(-2.0, 1.0))
    assert (tight.capacitance_low_f, tight.capacitance_high_f) == pytest.approx((0.98e-5, 1.01e-5), rel=1e-12)
    wide = required(role=role, old_tolerance_pct=(-10.0, 50.0))
    assert (wide.capacitance_low_f, wide.capacitance_high_f) == pytest.approx((0.95e-5, 1.05e-5), rel=1e-12)
    bypass = required(role="bypass", old_tolerance_pct=(-2.0, 1.0))
    assert bypass.capacitance_high_f == pytest.approx(2e-5, rel=1e-12)


@pytest.mark.parametrize("role", WINDOWS)
def test_what_must_not_go_there(role: str | None) -> None:
    allowed = required(role=role).technologies or ()
    signal = ("coupling", "feedback leg", "timing", "filter or equaliser", "loudspeaker crossover")
    assert (CLASS_2 in allowed) == (role not in signal)
    assert (WET in allowed) == (role != "interference suppression")
    assert FILM_PET in allowed
    assert TANTALUM not in allowed
    assert PAPER not in allowed


def test_a_full_position_has_nothing_to_note() -> None:
    assert notes() == ()
    found = required()
    assert (found.reference, found.pieces, found.rated_v, found.rated_ac_v, found.reverses) == (
        "C1",
        1,
        25,
        None,
        False,
    )
    assert (found.working_c, found.hours_a_day, found.life_wanted_y) == (40, 4, 10)


def test_what_is_recorded_is_asked_as_it_stands() -> None:
    values = {
        "lead_style": "radial", "hole_spacing_mm": 2.5, "free_diameter_mm": 7.0, "left_mm": 1.0, "right_mm": 2.0,
        "front_mm": 3.0, "back_mm": 4.0, "headroom_mm": 12.0, "ripple_a": 0.1, "ripple_hz": 100.0,
        "esr_least_ohm": 0.1, "esr_most_ohm": 1.0, "esr_hz": 1e5, "leakage_most_a": 1e-6, "safety_class": "X2",
        "pinned_maker": "Mill", "pinned_part_number": "Hollow 1",
    }  # fmt: skip
    found = required(**values, card="main")
    assert {name: getattr(found, name) for name in values} == values
    assert (found.reference, found.pieces) == ("C1 (main)", 2)


def test_both_empty_is_not_asked() -> None:
    found = asked(section="chassis", headroom_mm=12.0)
    assert found.requirement is None
    assert found.notes[0].startswith("Not asked: neither capacitance nor rated voltage is filled in.")
    assert len(found.notes) == 1


def test_one_empty_is_noted() -> None:
    assert required(capacitance_f=None).capacitance_low_f is None
    assert notes(capacitance_f=None) == (NO_VALUE,)
    assert required(rated_voltage=None).rated_v is None
    assert notes(rated_voltage=None) == (NO_VOLTAGE,)


@pytest.mark.parametrize(
    ("lowest", "highest", "peak", "fault", "needed"),
    [
        (0, 12, None, None, 15), (14.4, 15.3, 0.2, None, 19.375), (14.4, 15.3, 0.2, 22, 22), (-20, -1, None, None, 25),
        (-2, 4, 4, None, 10), (0, 3, None, -24, 24), (2, 8, 1, 5, 11.25),
    ],
)  # fmt: skip
def test_measured_voltage_gives_the_need(
    lowest: float, highest: float, peak: float | None, fault: float | None, needed: float
) -> None:
    values = {"dc_lowest_v": lowest, "dc_highest_v": highest, "ac_peak_v": peak, "fault_v": fault}
    assert required(**values).rated_v == pytest.approx(needed, rel=1e-12)
    assert required(**values).rated_ac_v is None


def test_measured_voltage_is_told() -> None:
    assert notes(dc_lowest_v=14.4, dc_highest_v=15.3) == (
        "Measured 14.4 V to 15.3 V d.c.: 19.12 V is needed (a quarter in reserve). The old part was rated 25 V.",
    )
    (told,) = notes(dc_lowest_v=14.4, dc_highest_v=15.3, ac_peak_v=0.2, fault_v=22.0)
    assert told.startswith(
        "Measured 14.4 V to 15.3 V d.c., 0.2 V a.c. peak: 22 V is needed (22 V can arrive in a fault)."
    )


def test_a_fault_voltage_counts_without_a_measurement() -> None:
    assert required(fault_v=60.0).rated_v == 60


def test_no_voltage_measured_is_no_contradiction() -> None:
    assert required(dc_lowest_v=0.0, dc_highest_v=0.0).rated_v is None
    assert notes(dc_lowest_v=0.0, dc_highest_v=0.0) == (
        "Measured 0 V d.c. and nothing on top, so any rated voltage will do.",
    )


@pytest.mark.parametrize(("old", "counts_as"), [(64.0, 63.0), (6.4, 6.3), (63.0, 63.0), (40.0, 40.0)])
def test_old_ratings(old: float, counts_as: float) -> None:
    assert required(rated_voltage=Rating(old, False)).rated_v == counts_as
    told = [note for note in notes(rated_voltage=Rating(old, False)) if "counts as" in note]
    assert told == ([f"The old {old:g} V counts as {counts_as:g} V."] if old != counts_as else [])


def test_an_old_rating_does_not_count_where_it_was_measured() -> None:
    assert required(rated_voltage=V64, dc_lowest_v=0.0, dc_highest_v=40.0).rated_v == 50


def test_an_ac_rating_is_asked_as_one() -> None:
    found = required(rated_voltage=Rating(275.0, True))
    assert (found.rated_v, found.rated_ac_v) == (None, 275)
    assert notes(rated_voltage=Rating(275.0, True)) == ()


BIPOLAR = [
    ({"polarity": "bipolar"}, True, WAS_BIPOLAR),
    ({"polarity": "bipolar", "dc_highest_v": 12.0}, True, WAS_BIPOLAR),
    ({"polarity": "bipolar", "dc_lowest_v": 0.0, "dc_highest_v": 0.0}, True, WAS_BIPOLAR),
    ({"polarity": "bipolar", "dc_lowest_v": 1.0, "dc_highest_v": 12.0}, False, None),
    (
        {"polarity": "bipolar", "dc_lowest_v": -0.4, "dc_highest_v": 0.4},
        True,
        SIGN_CHANGES,
    ),  # it stood there for a reason
    ({"polarity": "polar", "dc_lowest_v": 0.0, "dc_highest_v": 12.0}, False, None),
    ({"polarity": "polar", "dc_lowest_v": -12.0, "dc_highest_v": -1.0}, False, None),
    ({"polarity": "polar", "dc_lowest_v": -2.0, "dc_highest_v": 12.0}, True, SIGN_CHANGES),
    ({"polarity": "polar", "dc_lowest_v": -0.6, "dc_highest_v": 12.0}, True, SIGN_CHANGES),
    ({"polarity": "polar", "dc_lowest_v": -0.5, "dc_highest_v": 12.0}, False, SMALL_DIP),
    ({"polarity": "polar", "dc_lowest_v": -12.0, "dc_highest_v": 0.3}, False, SMALL_DIP),
    ({"polarity": "polar", "dc_lowest_v": 0.0, "dc_highest_v": 12.0, "ac_peak_v": 1.0}, False, None),
    ({"polarity": "polar", "dc_lowest_v": 0.0, "dc_highest_v": 12.0, "ac_peak_v": 1.1}, True, SIGN_CHANGES),
    ({"polarity": "polar", "dc_lowest_v": 5.0, "dc_highest_v": 12.0, "ac_peak_v": 7.0}, True, SIGN_CHANGES),
    ({"polarity": None}, False, NO_POLARITY),
    ({"polarity": None, "old_technology": WET}, False, NO_POLARITY),
    ({"polarity": None, "old_technology": FILM_PET}, False, None),
    ({"polarity": None, "old_technology": C0G}, False, None),
    ({"polarity": None, "old_technology": "polystyrene"}, False, None),
    ({"polarity": None, "dc_lowest_v": 1.0, "dc_highest_v": 2.0}, False, None),
]


@pytest.mark.parametrize(("values", "reverses", "note"), BIPOLAR)
def test_bipolar_rules(values: dict[str, Any], reverses: bool, note: str | None) -> None:
    found = asked(**(FULL | values))
    assert found.requirement is not None
    assert found.requirement.reverses is reverses
    rules = {SIGN_CHANGES, SMALL_DIP, WAS_BIPOLAR, NO_POLARITY}
    assert rules & {*found.notes} == ({note} if note else set())


@pytest.mark.parametrize(
    ("values", "working"),
    [
        ({}, 40), ({"temperature_c": 55.0}, 55), ({"hot_part_k": 14.0}, 54), ({"temperature_c": 0.0}, 0),
        ({"temperature_c": 55.0, "hot_part_k": 5.0}, 60), ({"section": None}, None),
        ({"section": None, "hot_part_k": 14.0}, None), ({"section": None, "temperature_c": 30.0}, 30),
    ],
)  # fmt: skip
def test_temperature(values: dict[str, Any], working: float | None) -> None:
    assert required(**values).working_c == working
    said = notes(**values)
    assert (NO_TEMPERATURE in said) == (working is None)
    warm = any(note.startswith("A hot part beside it adds ") for note in said)
    assert warm == ("hot_part_k" in values and working is not None)


def test_a_hot_part_is_told() -> None:
    assert notes(hot_part_k=14.0) == ("A hot part beside it adds 14 K to 40 °C.",)


@pytest.mark.parametrize("role", ROLES)
def test_a_missing_ripple_is_told_where_it_heats(role: str) -> None:
    assert (NO_RIPPLE in notes(role=role)) == (role in ("reservoir", "regulator output"))
    assert NO_RIPPLE not in notes(role=role, ripple_a=0.5)


@pytest.mark.parametrize(
    ("repaired", "values", "sentence"),
    [
        ({"years_wanted": 16.0}, {}, "C1 (main): 16 years of life are wanted"),
        ({"hours_a_day": 25.0}, {}, "C1 (main): 25 hours a day"),
        ({}, {"temperature_c": 200.0}, "C1 (main): works at 200 °C"),
        ({}, {"esr_most_ohm": 1.0}, "C1 (main): a series resistance is asked without its frequency"),
    ],
)
def test_contradictions_name_the_position(repaired: dict[str, Any], values: dict[str, Any], sentence: str) -> None:
    with pytest.raises(RequirementError) as caught:
        ask(repair(**repaired), position(**(FULL | values), card="main"))
    assert str(caught.value).startswith(sentence)


def test_what_is_recorded_but_not_checked() -> None:
    assert unchecked(position(**FULL)) == ()
    values = {"leakage_most_a": 1e-6, "hole_diameter_mm": 1.0, "sections": "2", "match_group": "pair"}
    assert unchecked(position(**values)) == ()
    assert unchecked(position(plated=True)) == ("plated holes without their diameter",)


@pytest.mark.parametrize("role", [None, *ROLES])
def test_source_and_load_are_used_for_a_coupling_capacitor_only(role: str | None) -> None:
    for values in ({"source_ohm": 4700.0}, {"load_ohm": 47000.0}):
        assert unchecked(position(role=role, **values)) == (() if role == "coupling" else ("source and load",))
    assert unchecked(position(role=role)) == ()


def test_a_position_may_know_its_temperature_better_or_worse_than_the_rest() -> None:
    common = repair(temperature_uncertain_k=5.0)
    for own, expected in ((None, 5.0), (0.0, 0.0), (12.0, 12.0)):
        found = asked(common, **(FULL | {"temperature_uncertain_k": own})).requirement
        assert found is not None
        assert found.temperature_uncertain_k == expected


def test_a_marking_is_proposed_but_never_filled_in() -> None:
    empty = {"capacitance_f": None, "rated_voltage": None}
    found = asked(marking="4,7µF 63V", **empty)
    assert found.requirement is None
    assert found.notes == (
        "Not asked: neither capacitance nor rated voltage is filled in. "
        'The marking "4,7µF 63V" reads as 4.7 µF 63 V: fill that in if you agree.',
    )
    bare = asked(marking="47/16", **empty)
    assert bare.notes[0].endswith(
        'reads as 47 µF 16 V: fill that in if you agree. "47/16" was taken as 47 µF 16 V: no unit is printed.'
    )
    worn = asked(marking="1?0 (worn off)", **empty)
    assert worn.requirement is None
    assert worn.notes[0].endswith('Nothing certain can be read in the marking "1?0 (worn off)".')


@pytest.mark.parametrize(("marking", "doubt"), [("47/25", False), ("47u 25V", False), ("4u7 25V", True), ("C7", False)])
def test_a_value_that_is_not_the_marked_one_is_doubted(marking: str, doubt: bool) -> None:
    told = notes(marking=marking, capacitance_f=47e-6)
    assert any("look at it again" in note for note in told) == doubt


def test_half_a_measurement_may_raise_the_need_but_not_lower_it() -> None:
    assert required(dc_lowest_v=0.0).rated_v == required().rated_v
    assert required(dc_highest_v=34.0).rated_v == 42.5
    assert required(ac_peak_v=30.0).rated_v == 37.5
    assert required(rated_voltage=None, dc_highest_v=34.0).rated_v == 42.5
    assert any("can raise the need but not lower it" in note for note in notes(dc_highest_v=12.0))
    assert "What was measured needs 42.5 V." in notes(dc_highest_v=34.0)


def test_a_rail_above_the_rating_is_said() -> None:
    assert any("The rail is 40 V: measure" in note for note in notes(supply_rail_v=40.0))
    assert not any("The rail" in note for note in notes(supply_rail_v=20.0))


def test_a_measurement_serves_where_no_rating_is_filled_in() -> None:
    assert required(rated_voltage=None, dc_lowest_v=0.0, dc_highest_v=20.0).rated_v == 25
