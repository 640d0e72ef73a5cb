"""One position as it is tried: what its texts ask, with a repair and without, and what can't be read."""

import json
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from repair.common import TOML, read

from subsearch.errors import CellsError, RepairError, RequirementError, UnknownNameError
from subsearch.repair.asking import ask
from subsearch.repair.conceding import Conceded
from subsearch.repair.folder import read_repair
from subsearch.repair.positions import COLUMNS, Position
from subsearch.repair.trial import COMMON, HEADINGS, Trial, ask_trial, faults, note_of, trials_of
from subsearch.search.requirement import Requirement
from subsearch.shipped import shipped

ORGAN = shipped("catalog_demo") / "organ"
TEXTS = st.one_of(st.text(max_size=8), st.sampled_from(["12", "4.7 µF", "63 V", "-5", "±20 %", "yes", "X2", "1e99"]))
CELLS = st.dictionaries(st.sampled_from(HEADINGS), TEXTS, max_size=8)
VALUES = st.sampled_from(
    [
        ("headroom_mm", 16.5),
        ("technologies", ("film", "ceramic")),
        ("in_stock", False),
        ("lead_style", None),
        ("pieces", 2),
        ("capacitance_low_f", 4.7e-6),
    ]
)
CONCEDED = st.builds(Conceded, st.text(max_size=8), st.tuples(VALUES), st.tuples(VALUES, VALUES))
TRIALS = st.builds(Trial, CELLS, st.lists(CONCEDED, max_size=3).map(tuple))


def asked(cells: dict[str, str]) -> Requirement:
    found = ask_trial(Trial({"capacitance": "47 µF"} | cells)).requirement
    assert found is not None
    return found


def test_a_position_of_a_repair_asks_what_it_asks_there() -> None:
    repair, trials = read_repair(ORGAN), trials_of(ORGAN)
    assert list(trials) == [position.name for position in repair.positions]
    for position in repair.positions:
        assert ask_trial(trials[position.name], repair) == ask(repair, position)
        assert trials[position.name].name == position.name


def test_a_card_gives_its_section_to_what_is_tried(tmp_path: Path) -> None:
    common = TOML.replace("count = 2", 'count = 2\nsection = "lid"')
    repair = read(tmp_path, "reference,marking,card,capacitance\nC1,x,main,1 µF\n", common)
    (trial,) = trials_of(tmp_path).values()
    assert "section" not in trial.cells
    assert ask_trial(trial, repair) == ask(repair, repair.positions[0])
    found = ask_trial(trial, repair).requirement
    assert found is not None and found.working_c == 25.5


def test_a_position_by_itself() -> None:
    found = asked({})
    assert (found.reference, found.pieces, found.hours_a_day, found.life_wanted_y) == ("position", 1, 24.0, None)
    found = asked({"reference": "C7", "pieces": "3", "hours_a_day": "4 h", "years_wanted": "7,5", "card": "main"})
    assert (found.reference, found.pieces, found.hours_a_day, found.life_wanted_y) == ("C7 (main)", 3, 4.0, 7.5)
    assert ask_trial(Trial({"note": "empty"})).requirement is None


def test_what_is_common_to_the_repair_holds_unless_it_is_tried(tmp_path: Path) -> None:
    repair = read(tmp_path, "reference,marking,card,capacitance\nC1,x,main,1 µF\nC2,x,main,1 µF\n")
    trial = trials_of(tmp_path)["C1 (main)"]

    def common(of: Trial) -> tuple[float, float, float | None]:
        found = ask_trial(of, repair).requirement
        assert found is not None
        return found.pieces, found.hours_a_day, found.life_wanted_y

    assert common(trial) == (2, 4.0, 10.0)
    assert common(trial.changed("pieces", "5", repair)) == (5, 4.0, 10.0)
    assert common(trial.changed("hours_a_day", "8", repair)) == (2, 8.0, 10.0)
    assert common(trial.changed("years_wanted", "3", repair)) == (2, 4.0, 3.0)
    assert (repair.card_counts["main"], repair.hours_a_day) == (2, 4)


def test_every_text_that_cannot_be_read_has_its_sentence() -> None:
    trial = Trial({"headroom_mm": "0", "role": "bypas", "pieces": "1.5", "years_wanted": "many", "left_mm": "5"})
    assert faults(trial) == {
        "headroom_mm": '"0" is not above 0. Write a positive size or leave it empty.',
        "role": faults(trial)["role"],
        "pieces": '"1.5" is no whole number. Write how many there are, like 2.',
        "years_wanted": '"many" is not a plain number. Write it like 10.',
    }
    assert faults(trial)["role"].startswith('"bypas" is not allowed. Did you mean "bypass"? Write coupling,')
    with pytest.raises(CellsError) as caught:
        ask_trial(trial)
    assert caught.value.faults == faults(trial)
    assert str(caught.value).startswith('position, headroom_mm: "0" is not above 0. Write a positive size')


def test_a_card_or_section_that_the_repair_does_not_have(tmp_path: Path) -> None:
    repair = read(tmp_path, "reference,marking\nC1,x\n")
    trial = Trial({"reference": "C1", "card": "mian", "section": "cellar", "capacitance": "1 µF"})
    assert faults(trial, repair) == {
        "card": 'The card "mian" is not in repair.toml. Did you mean "main"? It has main or side.',
        "section": 'The section "cellar" is not in repair.toml. It has chassis or lid.',
    }
    with pytest.raises(CellsError):
        ask_trial(trial, repair)
    assert faults(trial) == {}
    assert faults(trial.changed("card", "main").changed("section", "lid"), repair) == {}


def test_a_contradiction_is_told_as_in_a_repair() -> None:
    with pytest.raises(RequirementError, match="25 hours a day; allowed is above 0, up to 24"):
        asked({"hours_a_day": "25"})
    with pytest.raises(RequirementError, match="20 years of life are wanted"):
        asked({"years_wanted": "20"})
    with pytest.raises(RequirementError, match="0 pieces are asked"):
        asked({"pieces": "0"})


def test_an_unknown_heading_is_refused() -> None:
    with pytest.raises(UnknownNameError, match=r'"headrom_mm" is not a heading. Did you mean "headroom_mm"\?'):
        Trial({"headrom_mm": "12"})


def test_equal_by_value_and_never_changed_in_place() -> None:
    cells = {"reference": "C1", "note": " ", "marking": ""}
    trial = Trial(cells)
    cells["reference"] = "C2"
    assert trial == Trial({"reference": "C1"}) and hash(trial) == hash(Trial({"reference": "C1"}))
    assert trial != Trial({"reference": "C1"}, (Conceded("more", ()),))
    with pytest.raises(TypeError):
        trial.cells["reference"] = "C3"  # type: ignore[index]


def test_the_note_tells_every_concession_on_one_line() -> None:
    made = Conceded("1.5 mm more\nheadroom", ()), Conceded("laying it flat, where the board has the room,", ())
    assert note_of(Trial({}, made)) == ("Conceded: 1.5 mm more headroom; laying it flat, where the board has the room.")
    assert note_of(Trial({})) == ""


def test_the_headings_are_those_of_the_list_and_what_is_common() -> None:
    assert COMMON == ("pieces", "hours_a_day", "years_wanted")
    assert not set(COMMON) & set(COLUMNS)


@given(TRIALS)
def test_a_trial_comes_back_from_json(trial: Trial) -> None:
    back = Trial.from_json(json.loads(json.dumps(trial.to_json(), sort_keys=True)))
    assert back == trial and hash(back) == hash(trial)
    assert repr(back.conceded) == repr(trial.conceded)  # 2 is not 2.0, a tuple no list


@given(CELLS)
def test_any_text_is_read_or_has_a_sentence(cells: dict[str, str]) -> None:
    trial = Trial(cells)
    if wrong := faults(trial):
        with pytest.raises(CellsError) as caught:
            ask_trial(trial)
        assert caught.value.faults == wrong and set(wrong) <= set(trial.cells)
    else:
        with suppress(RequirementError):  # what contradicts itself
            assert isinstance(ask_trial(trial).position, Position)


DAMAGED = {
    "no table": ([], '"[]" stands where a table must stand'),
    "no cells": ({"conceded": []}, '"cells" is missing'),
    "a number": ({"cells": {"note": 3}, "conceded": []}, '"3" stands where a text must stand'),
    "half a pair": (
        {"cells": {}, "conceded": [{"sentence": "", "fields": [["pieces"]], "rests_on": []}]},
        """"['pieces']" stands where a list of 2 must stand""",
    ),
    "a word for a number": (
        {"cells": {}, "conceded": [{"sentence": "", "fields": [["headroom_mm", "x"]], "rests_on": []}]},
        """headroom_mm can't be "'x'\"""",
    ),
}


@pytest.mark.parametrize(("found", "sentence"), DAMAGED.values(), ids=DAMAGED)
def test_what_is_no_trial_is_refused(found: object, sentence: str) -> None:
    with pytest.raises(RepairError) as caught:
        Trial.from_json(found)
    assert str(caught.value) == sentence


@pytest.mark.parametrize("field", ["safety_class", "reverses", "voltage_measured", "hole_plated", "nothing"])
def test_nothing_is_conceded_on_what_keeps_from_harm(field: str) -> None:
    value = {"reverses": False, "voltage_measured": False}.get(field)
    with pytest.raises(UnknownNameError, match=f'"{field}" is not a field'):
        Trial.from_json({"cells": {}, "conceded": [{"sentence": "", "fields": [[field, value]], "rests_on": []}]})
