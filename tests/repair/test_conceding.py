"""What a near miss concedes is put on a trial, taken back, and dropped where it no longer holds."""

from dataclasses import replace

import duckdb
import pytest

from subsearch.repair.trial import Trial, ask_trial, note_of
from subsearch.search.candidates import find
from subsearch.search.near_misses import Concession, near_misses
from subsearch.search.requirement import Requirement

CRAMPED = Trial(  # invented: a reservoir under a low lid, in a warm box
    {
        "reference": "C1", "role": "reservoir", "capacitance": "1000 µF", "rated_voltage": "63 V",
        "lead_style": "radial", "hole_spacing_mm": "7.5", "headroom_mm": "20", "free_diameter_mm": "14",
        "temperature_c": "60", "years_wanted": "10", "hours_a_day": "8",
    }
)  # fmt: skip


def asked(trial: Trial) -> Requirement:
    found = ask_trial(trial).requirement
    assert found is not None
    return found


def concessions(con: duckdb.DuckDBPyConnection, trial: Trial) -> tuple[Concession, ...]:
    (near,) = near_misses(con, find(con, [asked(trial)]))
    return near.concessions


def made(**moved: object) -> Concession:
    """A concession from what the cramped position asks, with these fields moved."""
    return conceding(asked(CRAMPED), **moved)


def conceding(now: Requirement, **moved: object) -> Concession:
    return Concession((), replace(now, **moved), 1, None, f"other {', '.join(moved)}", "")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "cells",
    [
        {},
        {"headroom_mm": "30", "free_diameter_mm": "20"},
        {"headroom_mm": "45", "free_diameter_mm": "26", "temperature_c": "85"},
        {"capacitance": "3300 µF", "headroom_mm": "60", "free_diameter_mm": "30", "lead_style": "axial"},
        {"role": "coupling", "capacitance": "1 µF", "headroom_mm": "8", "free_diameter_mm": "30", "pieces": "2000"},
    ],
)
def test_conceding_lets_in_what_was_told(demo_con: duckdb.DuckDBPyConnection, cells: dict[str, str]) -> None:
    trial = Trial({**CRAMPED.cells, **cells})
    before = find(demo_con, [asked(trial)])[0]
    offered = concessions(demo_con, trial)
    assert offered
    for one in offered:
        then = trial.conceding(asked(trial), one)
        assert asked(then) == one.requirement
        assert find(demo_con, [asked(then)])[0].kept_count == before.kept_count + one.lets_in
        assert then.taking_back(0) == trial
        assert note_of(then) == f"Conceded: {one.words.rstrip(',')}."
        assert one.sentence.startswith(one.words[0].upper() + one.words[1:])
        assert "let" not in one.words


def test_a_second_concession_is_made_on_top_of_the_first(demo_con: duckdb.DuckDBPyConnection) -> None:
    trial = CRAMPED
    for _ in range(3):
        one = concessions(demo_con, trial)[0]
        now = asked(trial)
        trial = trial.conceding(now, one)
        assert asked(trial) == one.requirement
    assert len(trial.conceded) == 3
    assert all(one.holds(asked(CRAMPED)) for one in trial.conceded)  # each rests on what is asked without any
    assert trial.settled() == trial


def test_a_change_drops_what_it_alters_and_nothing_else() -> None:
    room = CRAMPED.conceding(asked(CRAMPED), made(headroom_mm=24.5))
    both = room.conceding(asked(room), conceding(asked(room), technologies=("wet aluminium", "hybrid aluminium")))
    assert both.changed("headroom_mm", "21").conceded == both.conceded[1:]
    assert both.changed("role", "coupling").conceded == both.conceded[:1]
    assert both.changed("note", "a lid").conceded == both.conceded
    assert both.changed("headroom_mm", "20.0 mm").conceded == both.conceded  # asks the same
    assert both.changed("headroom_mm", "20.0 mm").cells["headroom_mm"] == "20.0 mm"
    assert both.changed("headroom_mm", "").conceded == both.conceded[1:]


def test_what_cannot_be_read_on_the_way_keeps_and_then_drops() -> None:
    trial = CRAMPED.conceding(asked(CRAMPED), made(headroom_mm=24.5))
    typing = trial.changed("headroom_mm", "2x")
    assert typing.conceded == trial.conceded
    assert typing.changed("headroom_mm", "21").conceded == ()
    assert typing.changed("headroom_mm", "20").conceded == trial.conceded
    assert trial.changed("hours_a_day", "25").conceded == trial.conceded
    unasked = trial.changed("capacitance", "").changed("rated_voltage", "")
    assert unasked.conceded == trial.conceded
    assert ask_trial(unasked).requirement is None


def test_taking_back_takes_what_was_made_on_top_of_it() -> None:
    one = CRAMPED.conceding(asked(CRAMPED), made(headroom_mm=22.0))
    two = one.conceding(asked(one), conceding(asked(one), headroom_mm=24.0, working_c=55.0))
    three = two.conceding(asked(two), conceding(asked(two), working_c=50.0))
    four = three.conceding(asked(three), conceding(asked(three), life_wanted_y=5.0))
    assert (asked(four).headroom_mm, asked(four).working_c, asked(four).life_wanted_y) == (24.0, 50.0, 5.0)
    assert four.taking_back(0).conceded == four.conceded[3:]
    assert four.taking_back(2).conceded == (*four.conceded[:2], four.conceded[3])
    assert asked(four.taking_back(2)).working_c == 55.0
    assert four.taking_back(3) == three
    assert four.changed("headroom_mm", "19").conceded == four.conceded[3:]


@pytest.mark.parametrize(
    ("cells", "moved", "changed"),
    [
        # measured to need exactly what the marking says: now it follows from what was measured
        ({}, {"rated_v": 50.0}, {"dc_lowest_v": "50.4", "dc_highest_v": "50.4"}),
        ({}, {"capacitance_high_f": 3e-3}, {"safety_class": "Y2"}),
        ({}, {"conditions": ("new", "old stock", "pulled")}, {"safety_class": "X2"}),
        ({"rated_voltage": "275 V a.c."}, {"rated_ac_v": 250.0}, {"safety_class": "X2", "old_rating": "275 V a.c."}),
        ({}, {"bent_nearer_mm": 3.0}, {"hole_spacing_mm": "9"}),
    ],
)
def test_what_a_concession_rests_on_drops_it_too(
    cells: dict[str, str], moved: dict[str, object], changed: dict[str, str]
) -> None:
    trial = Trial({**CRAMPED.cells, **cells})
    trial = trial.conceding(asked(trial), conceding(asked(trial), **moved))
    assert trial.settled() == trial
    for heading, text in changed.items():
        trial = trial.changed(heading, text)
    assert trial.conceded == ()
