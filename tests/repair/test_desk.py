"""What is done at the desk stays: nothing that somebody else recorded is lost, and nothing undone comes back."""

from collections.abc import Mapping
from pathlib import Path

import pytest

from subsearch.errors import RepairError
from subsearch.repair.bench import Bench, Taken
from subsearch.repair.desk import Desk
from subsearch.repair.pins import Pins
from subsearch.repair.position_rows import rows
from subsearch.repair.saved_bench import save
from subsearch.repair.trial import trials_of

TOML = '[sections."amplifier"]\ntemperature_c = 55\n'
LIST = "reference,marking,capacitance,section,headroom_mm,note\nC1,47/25,47 µF,amplifier,12,\nC2,10/25,10 µF,,,\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "repair.toml").write_text(TOML, encoding="utf-8")
    (tmp_path / "positions.csv").write_text(LIST, encoding="utf-8")
    return tmp_path


def noted(folder: Path, note: str) -> None:
    """Another program writes a note at C1."""
    file = folder / "positions.csv"
    file.write_text(file.read_text(encoding="utf-8").replace(",12,", f",12,{note}", 1), encoding="utf-8")


def taken(desk: Desk, part_number: str = "Hollow 1") -> Mapping[str, Taken]:
    return {desk.name: Taken(desk.trial, None, part_number)}


def test_what_was_undone_is_undone_for_the_next_time_too(folder: Path) -> None:
    desk = Desk(folder, {})
    desk.type("headroom_mm", "9")
    desk.save()
    desk.undo()
    desk.save()
    assert Desk(folder, {}).values()["headroom_mm"] == "12"


def test_what_was_recorded_meanwhile_is_there_beside_what_was_tried(folder: Path) -> None:
    desk = Desk(folder, {})
    desk.type("headroom_mm", "9")
    desk.type("capacitance", "")
    desk.save()
    noted(folder, "hums")
    cells = Desk(folder, {}).trial.cells
    assert (cells["headroom_mm"], cells["note"], cells.get("capacitance")) == ("9", "hums", None)


def test_a_row_that_was_changed_meanwhile_is_not_written_over(folder: Path) -> None:
    desk = Desk(folder, {})
    pins = Pins(folder, trials_of(folder))
    noted(folder, "hums")
    before = (folder / "positions.csv").read_text(encoding="utf-8")
    with pytest.raises(RepairError, match=r"^C1 was changed in positions.csv after it was read here. Run the notebook"):
        pins.follow({}, taken(desk))
    assert (folder / "positions.csv").read_text(encoding="utf-8") == before


def test_a_part_is_pinned_and_given_back_as_often_as_one_likes(folder: Path) -> None:
    desk = Desk(folder, {})
    pins, before = Pins(folder, trials_of(folder)), trials_of(folder)
    for number in ("Hollow 1", "Hollow 2"):
        pins.follow({}, taken(desk, number))
        assert rows(folder)[0]["pinned_part_number"] == number
        pins.follow(taken(desk, number), {})
        assert trials_of(folder) == before


def test_a_part_taken_in_place_of_one_of_an_earlier_day_is_given_back_whole(folder: Path) -> None:
    desk, before = Desk(folder, {}), trials_of(folder)
    Pins(folder, before).follow({}, taken(desk))
    pins = Pins(folder, trials_of(folder))
    pins.follow(taken(desk), taken(desk, "Hollow 2"))
    pins.follow(taken(desk, "Hollow 2"), {})
    assert trials_of(folder) == before


def test_a_saved_position_that_is_no_longer_there_loses_nothing_of_the_others(folder: Path) -> None:
    desk = Desk(folder, {"position": "C1"})
    tried = desk.trial.changed("headroom_mm", "9")
    gone = Taken(tried.changed("section", "attic"), None, "Hollow 3")
    save(folder, Bench("C9", {"C1": tried}, (), {"C9": gone}), {})
    again = Desk(folder, {})
    assert (again.name, again.values()["headroom_mm"]) == ("C1", "9")
    wanted, why = again.bought()
    assert wanted == [] and 'the section "attic" is not in repair.toml' in why["C9"].lower()
    again.take_off("C9")
    assert again.bought() == ([], {})


def test_what_was_damaged_meanwhile_is_set_aside_when_one_starts_again(folder: Path) -> None:
    desk = Desk(folder, {})
    desk.type("headroom_mm", "9")
    desk.save()
    (folder / "panel.json").write_text("{", encoding="utf-8")
    with pytest.raises(RepairError, match="can't be read"):
        desk.save()
    desk.start_again()
    assert (folder / "panel-damaged.json").read_text(encoding="utf-8") == "{"
    desk.type("headroom_mm", "8")
    desk.save()
    assert Desk(folder, {}).values()["headroom_mm"] == "8"


def test_what_the_cell_says_anew_holds_for_the_position_that_it_names(folder: Path) -> None:
    first = Desk(folder, {"position": "C1", "headroom_mm": "9", "note": "dusty"})
    first.type("note", "hums")
    first.show("C2")
    first.save()
    again = Desk(folder, {"position": "C1", "headroom_mm": "8", "note": "dusty"})
    assert (again.name, again.trial.cells["headroom_mm"], again.trial.cells["note"]) == ("C1", "8", "hums")
    again.save()
    other = Desk(folder, {"position": "C2", "headroom_mm": "8", "note": "dusty"})
    assert (other.name, other.trial.cells["headroom_mm"], other.trial.cells["note"]) == ("C2", "8", "dusty")


def test_a_folder_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(RepairError, match=r'^There is no folder ".*none". Make it first, or name another.'):
        Desk(tmp_path / "none", {})


def test_who_deletes_a_damaged_state_can_start_again(folder: Path) -> None:
    (folder / "panel.json").write_text("{", encoding="utf-8")
    desk = Desk(folder, {})
    assert desk.trouble
    (folder / "panel.json").unlink()
    desk.start_again()
    assert desk.trouble == ""
