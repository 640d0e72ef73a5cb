"""The panel on a repair's folder: its positions to choose from, and parts pinned in its positions.csv."""

import re
from pathlib import Path
from shutil import copyfile
from typing import Any

import pytest

from subsearch.display.panel import Panel
from subsearch.errors import RepairError, UnknownNameError
from subsearch.repair import inquiry
from subsearch.repair.folder import read_repair
from subsearch.repair.inquiry import Around
from subsearch.search.near_misses import NearMisses
from subsearch.search.several import Several
from subsearch.shipped import copied_out

C104 = "C104 (tone generator)"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copied_out("catalog_demo", tmp_path, "organ/*")
    return tmp_path / "organ"


@pytest.fixture
def panel(demo_catalog: Path, folder: Path, monkeypatch: pytest.MonkeyPatch) -> Panel:
    monkeypatch.setattr(inquiry, "life_over", lambda *_: [])
    monkeypatch.setattr(inquiry, "around", lambda _, asked, found: Around(NearMisses(), Several(found.requirement)))
    return Panel(demo_catalog, folder, position=C104)


def pins(folder: Path) -> dict[str, Any]:
    positions = read_repair(folder).positions
    return {one.name: one.pinned_part_number for one in positions if one.pinned_part_number}


def test_its_positions_are_there_to_choose_from(panel: Panel, folder: Path) -> None:
    names = [one.name for one in read_repair(folder).positions]
    (which,) = panel.box.form.groups[0]["controls"]
    assert [value for value, _ in which["options"]] == names
    assert panel.box.form.values["position"] == C104
    assert panel.requirement is not None
    assert (panel.requirement.reference, panel.requirement.pieces, panel.requirement.hours_a_day) == (C104, 12, 4)
    panel.box.form.values = {**panel.box.form.values, "position": "C301 (power supply)"}
    assert panel.requirement.reference == "C301 (power supply)" and panel.requirement.pieces == 1
    assert panel.box.form.values["capacitance"] == "4700 µF"


def test_a_position_that_is_not_asked_says_so(panel: Panel) -> None:
    panel.box.form.values = {**panel.box.form.values, "position": "C208 (vibrato and percussion)"}
    assert panel.alert.startswith("Nothing is asked.") and panel.found is None


def test_a_part_taken_is_pinned_and_what_is_undone_is_put_back(panel: Panel, folder: Path) -> None:
    file = folder / "positions.csv"
    before, pinned = read_repair(folder).positions, pins(folder)
    panel.box.take.click()
    assert panel.alert == ""
    name = panel.box.table.rows[0]["cells"][1]
    assert set(pins(folder)) - set(pinned) == {C104} and pins(folder)[C104] in name
    others = [one for one in read_repair(folder).positions if one.name != C104]
    assert others == [one for one in before if one.name != C104]
    panel.box.undo.click()
    assert read_repair(folder).positions == before
    panel.box.redo.click()
    assert C104 in pins(folder)
    panel.box.listed.press(0)
    assert read_repair(folder).positions == before and not panel.choices
    assert "hours_a_day" not in file.read_text(encoding="utf-8")


def test_what_was_tried_elsewhere_stays_when_another_position_is_shown(panel: Panel) -> None:
    panel.box.form.values = {**panel.box.form.values, "headroom_mm": "11 mm"}
    panel.box.form.values = {**panel.box.form.values, "position": "C103 (tone generator)"}
    assert panel.box.form.values["headroom_mm"] == "12"
    panel.box.form.values = {**panel.box.form.values, "position": C104}
    assert panel.box.form.values["headroom_mm"] == "11 mm"


def test_what_was_typed_over_another_position_changes_only_what_was_typed(panel: Panel) -> None:
    old = dict(panel.box.form.values)
    other = "C103 (tone generator)"
    panel.box.form.values = {**old, "headroom_mm": "11 mm", "position": other}  # both before the kernel heard of either
    recorded = dict(panel.desk.values())
    panel.box.form.values = {**old, "headroom_mm": "10 mm", "position": other}  # before the browser heard of the other
    assert panel.desk.values() == {**recorded, "headroom_mm": "10 mm"}
    assert {**panel.desk.values(), **panel.box.form.values} == panel.box.form.values
    panel.box.form.values = {**panel.box.form.values, "position": C104}
    assert panel.box.form.values["headroom_mm"] == "11 mm"


def test_what_holds_in_the_repair_is_shown_again_where_its_control_is_emptied(panel: Panel) -> None:
    held = panel.box.form.values["temperature_c"]
    panel.box.form.values = {**panel.box.form.values, "temperature_c": ""}
    assert panel.box.form.values["temperature_c"] == held != ""
    panel.box.form.values = {**panel.box.form.values, "temperature_c": "61 °C"}
    assert panel.requirement is not None and panel.requirement.working_c == 61


def test_a_pin_is_taken_off_after_the_kernel_was_started_anew(panel: Panel, folder: Path, demo_catalog: Path) -> None:
    before = read_repair(folder).positions
    panel.box.take.click()
    again = Panel(demo_catalog, folder, position=C104)
    assert list(again.choices) == [C104] and again.box.listed.title == "Your list: 1 position"
    again.box.listed.press(0)
    assert read_repair(folder).positions == before


def test_a_list_of_positions_that_was_spoiled_meanwhile_is_said_and_nothing_taken(panel: Panel, folder: Path) -> None:
    (folder / "positions.csv").write_text("reference,marking\nC1,x,y\n", encoding="utf-8")
    panel.box.take.click()
    assert "positions.csv" in panel.alert and not panel.choices
    assert (folder / "positions.csv").read_text(encoding="utf-8") == "reference,marking\nC1,x,y\n"


def test_what_is_not_in_the_repair_is_an_error(demo_catalog: Path, folder: Path) -> None:
    with pytest.raises(UnknownNameError, match="C104"):
        Panel(demo_catalog, folder, position="C104")
    (folder / "repair.toml").unlink()
    with pytest.raises(RepairError, match="missing"):
        Panel(demo_catalog, folder)


def test_the_cell_that_the_readme_shows(
    demo_catalog: Path, folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    copyfile(demo_catalog, "subsearch.duckdb")
    folder.rename("my-repair")
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    (cell,) = [one for one in re.findall(r"(?ms)^```python\n(.*?)^```$", readme) if "Panel(" in one]
    scope: dict[str, Any] = {}
    exec(cell.replace("\nPanel(", "\nshown = Panel("), scope)
    assert scope["shown"].alert == "" and scope["shown"].found.kept
