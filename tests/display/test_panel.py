"""The panel without a browser: what it asks, shows, says, keeps and writes. Where no loop runs it answers at once."""

import csv
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from subsearch.catalog.store import open_to_read
from subsearch.display.controls import COMMON, GROUPS, LABELS
from subsearch.display.panel import Panel
from subsearch.errors import UnknownNameError
from subsearch.repair import inquiry
from subsearch.repair.cautions import GENERAL, NO_CLASS
from subsearch.repair.inquiry import Around
from subsearch.repair.positions import COLUMNS
from subsearch.repair.trial import COMMON as OF_THE_REPAIR
from subsearch.search.candidates import find
from subsearch.search.near_misses import NearMisses
from subsearch.search.requirement import Requirement
from subsearch.search.several import Several

GIVEN = {
    "reference": "C104", "capacitance": "100 µF", "rated_voltage": "25 V", "role": "rail decoupling",
    "polarity": "polar", "plus_towards": "right", "hole_spacing_mm": "2.5 mm", "headroom_mm": "15 mm",
    "left_mm": "4.5", "right_mm": "4.5", "front_mm": "4.5", "back_mm": "4.5", "temperature_c": "42 °C",
    "hours_a_day": "4", "years_wanted": "10", "pieces": "12",
}  # fmt: skip

ANYWHERE = dict.fromkeys(("headroom_mm", "left_mm", "right_mm", "front_mm", "back_mm", "hole_spacing_mm"), "")


@pytest.fixture
def whole(demo_catalog: Path, tmp_path: Path) -> Panel:
    return Panel(demo_catalog, tmp_path, **GIVEN)


@pytest.fixture
def panel(demo_catalog: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Panel:
    """A panel that neither looks at what lies around its answers nor reckons lives over temperature: both take long."""
    monkeypatch.setattr(inquiry, "life_over", lambda *_: [])
    monkeypatch.setattr(inquiry, "around", lambda _, asked, found: Around(NearMisses(), Several(found.requirement)))
    return Panel(demo_catalog, tmp_path, **GIVEN)


def set_to(panel: Panel, **texts: str) -> None:
    """What a builder does who types these texts."""
    panel.box.form.values = {**panel.box.form.values, **texts}


def kept(panel: Panel) -> int:
    assert panel.found is not None
    return panel.found.kept_count


def bought(folder: Path, name: str = "shopping-list.csv") -> dict[str, tuple[str, str]]:
    with (folder / name).open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    return {line["positions"]: (f"{line['maker']} {line['part_number']}", line["needed"]) for line in lines}


def test_every_control_fills_a_column_or_what_is_common() -> None:
    names = [control["name"] for _, _, controls in GROUPS for control in controls]
    assert len(names) == len(set(names)) == len(LABELS)
    assert set(names) - set(COLUMNS) == set(COMMON) == set(OF_THE_REPAIR)
    assert all(control["hint"] and control["label"] for _, _, controls in GROUPS for control in controls)


def test_the_line_of_python_gives_what_is_shown(panel: Panel, demo_catalog: Path) -> None:
    for texts in ({}, {"role": "reservoir", "capacitance": "470 µF"}, {"dc_lowest_v": "10", "dc_highest_v": "15"}):
        set_to(panel, **texts)
        line = unescape(panel.box.line.value.partition("<pre>")[2].partition("</pre>")[0])
        names = {"find": find, "open_to_read": open_to_read, "Requirement": Requirement, "catalog": demo_catalog}
        again = eval(line, names)
        assert panel.found is not None
        assert again.requirement == panel.found.requirement == panel.requirement
        assert again.kept == panel.found.kept
        again.con.close()


def test_every_row_is_a_part_that_was_found(panel: Panel) -> None:
    assert panel.found is not None
    rows = panel.box.table.rows
    assert [row["cells"][1] for row in rows] == [part.name for part in (*panel.found.kept, *panel.found.open)]
    assert panel.box.table.status == (
        f"{panel.found.kept_count} fit, {panel.found.open_count} open (something is not stated), "
        f"{panel.found.refused_count} refused. The table has the best 50."
    )
    assert (len(panel.found.kept), len(panel.found.open)) == (50, panel.found.open_count)
    assert {row["cells"][0] for row in rows if row["open"]} == {"open"}
    assert panel.box.table.looked_at == rows[0]["id"]


def test_what_cannot_be_read_is_a_sentence_at_its_control_and_nothing_old_stays(panel: Panel) -> None:
    set_to(panel, headroom_mm="tall")
    assert panel.alert.startswith('Headroom: "tall" is not a quantity in mm.')
    assert panel.box.form.faults["headroom_mm"].startswith('"tall" is not a quantity in mm.')
    assert (panel.box.table.rows, panel.box.table.status, panel.requirement, panel.found) == ([], "", None, None)
    assert panel.box.drawing.value == "" and panel.box.near.items == []
    panel.box.take.click()
    assert not panel.choices
    set_to(panel, headroom_mm="15 mm")
    assert panel.alert == "" and panel.box.form.faults == {}
    assert panel.box.table.rows
    set_to(panel, capacitance="", rated_voltage="")
    assert panel.alert.startswith("Nothing is asked. Fill in a capacitance or a voltage")
    set_to(panel, capacitance="100 µF", years_wanted="40")
    assert "40 years of life are wanted" in panel.alert


def test_where_nothing_fits_the_nearest_is_named_and_drawn(panel: Panel) -> None:
    set_to(panel, headroom_mm="1 mm", hole_spacing_mm="41 mm", left_mm="1", right_mm="1")
    assert panel.box.table.status.startswith("0 fit, 0 open")
    assert "Nearest is " in panel.box.table.status
    assert "Refused, and drawn as the nearest: " in panel.box.drawing.value
    assert panel.box.take.disabled or not panel.choices


def test_cautions_stand_beside_the_button_and_know_the_position(panel: Panel) -> None:
    assert all(one.partition("'")[0] in panel.box.cautions.value for one in GENERAL)
    assert "The old plus faced right." in panel.box.cautions.value
    set_to(panel, **ANYWHERE, role="reservoir", capacitance="470 µF", rated_voltage="100 V", mains="yes")
    for said in ("Mains: unplug", "to 60 V takes ", "Local codes and licensed practice"):
        assert said in panel.box.cautions.value, said


def test_what_is_not_settled_stands_beside_the_button_too(panel: Panel) -> None:
    panel.answers.turn_to(next(one["id"] for one in panel.box.table.rows if one["open"]))
    assert "<li>Not settled, because it is not stated: " in panel.box.cautions.value
    panel.answers.turn_to(next(one["id"] for one in panel.box.table.rows if not one["open"]))
    assert "Not settled" not in panel.box.cautions.value and "Place 1 of" not in panel.box.cautions.value


def test_no_part_is_taken_on_the_mains_without_its_class(panel: Panel) -> None:
    on_the_mains = {"role": "interference suppression", "capacitance": "100 nF", "rated_voltage": "250 V a.c."}
    set_to(panel, **ANYWHERE, **on_the_mains, mains="yes", polarity="")
    assert panel.box.table.rows
    panel.box.take.click()
    assert NO_CLASS in panel.alert and not panel.choices


def test_why_has_every_condition_and_the_sum(panel: Panel) -> None:
    best = panel.found and panel.found.kept[0]
    assert best
    assert panel.box.why.value.count("<tr>") == 8
    assert "headroom 2.5 mm to spare" in panel.box.why.value
    assert f"<td>{best.total:.2f}</td></tr></table>" in panel.box.score.value


def test_a_concession_lets_in_what_it_says_and_can_be_taken_back(whole: Panel) -> None:
    set_to(whole, headroom_mm="11 mm")
    before = kept(whole)
    around = whole.answers.around
    assert around is not None and around.near.concessions
    for number, concession in enumerate(around.near.concessions):
        assert whole.box.near.items[number] == {"text": concession.sentence, "action": "Concede"}
        whole.box.near.press(number)
        assert kept(whole) == before + concession.lets_in
        assert concession.best is not None and f"Why {concession.best.name}" in whole.box.why.value
        (said,) = whole.box.conceded.items
        assert said["action"] == "Take back" and said["text"].lower().startswith(concession.sentence.lower()[:12])
        whole.box.conceded.press(0)
        assert kept(whole) == before and whole.box.conceded.items == []


def test_a_control_that_is_moved_ends_the_concession_on_it(whole: Panel) -> None:
    set_to(whole, headroom_mm="11 mm")
    whole.box.near.press([one["text"].startswith("0.55 mm more headroom") for one in whole.box.near.items].index(True))
    assert whole.requirement is not None and whole.requirement.headroom_mm == pytest.approx(11.55)
    set_to(whole, temperature_c="45 °C")
    assert whole.box.conceded.items
    set_to(whole, headroom_mm="12 mm")
    assert whole.box.conceded.items == [] and whole.requirement is not None
    assert whole.requirement.headroom_mm == 12


def test_what_was_done_is_undone_and_done_again(panel: Panel) -> None:
    first = panel.requirement
    for headroom in ("14 mm", "13 mm", "11 mm"):  # one drag of a slider
        set_to(panel, headroom_mm=headroom)
    lower = panel.requirement
    set_to(panel, temperature_c="60 °C")
    assert not panel.box.undo.disabled and panel.box.redo.disabled
    panel.box.undo.click()
    assert panel.requirement == lower and panel.box.form.values["temperature_c"] == "42 °C"
    panel.box.undo.click()
    assert panel.requirement == first and panel.box.form.values["headroom_mm"] == "15 mm"
    assert panel.box.undo.disabled
    panel.box.redo.click()
    assert panel.requirement == lower
    panel.box.anew.click()
    assert panel.requirement == first


def test_parts_are_taken_by_position_and_written(panel: Panel, tmp_path: Path) -> None:
    panel.box.write.click()
    assert panel.alert == "The list is empty. Take a part first."
    (tmp_path / "shopping-list.csv").write_text("of an earlier day")
    panel.box.take.click()
    second = panel.box.table.rows[1]
    panel.box.table.looked_at = second["id"]
    panel.box.take.click()
    set_to(panel, reference="C105", pieces="1")
    panel.box.table.looked_at = panel.box.table.rows[0]["id"]
    panel.box.take.click()
    panel.box.write.click()
    lines = bought(tmp_path, "shopping-list-2.csv")
    assert lines["C104"] == (second["cells"][1], "12")
    assert lines["C105"][1] == "1"
    assert (tmp_path / "shopping-list.csv").read_text() == "of an earlier day"
    assert f"Written: {tmp_path / 'shopping-list-2.csv'}" in panel.box.listed.note
    assert panel.box.listed.title == "Your list: 2 positions"
    panel.box.listed.press(0)
    assert list(panel.choices) == ["C105"]


def test_the_part_that_was_turned_to_is_followed_through_searches(panel: Panel) -> None:
    third = panel.box.table.rows[2]["id"]
    panel.box.table.looked_at = third
    set_to(panel, temperature_c="45 °C")
    assert panel.box.table.looked_at == third
    set_to(panel, capacitance="10 nF", role="", rated_voltage="50 V")
    assert panel.box.table.looked_at == panel.box.table.rows[0]["id"] != third


def test_it_is_as_it_was_left_unless_the_cell_says_otherwise(whole: Panel, demo_catalog: Path, tmp_path: Path) -> None:
    set_to(whole, headroom_mm="11 mm")
    whole.box.near.press(0)
    whole.box.table.picked = [row["id"] for row in whole.box.table.rows[:2]]
    whole.box.take.click()
    again = Panel(demo_catalog, tmp_path, **GIVEN)
    assert again.requirement == whole.requirement
    assert again.box.table.picked == whole.box.table.picked
    assert list(again.choices) == ["C104"] and again.box.listed.items == whole.box.listed.items
    assert "As you left it on " in again.box.notes.value
    again.box.anew.click()
    assert again.requirement is not None and again.requirement.headroom_mm == 15
    changed = Panel(demo_catalog, tmp_path, **GIVEN | {"headroom_mm": "14 mm"})
    assert changed.requirement is not None and changed.requirement.headroom_mm == 14


def test_nothing_is_written_by_looking_only(panel: Panel, demo_catalog: Path, tmp_path: Path) -> None:
    panel.search()
    assert list(tmp_path.iterdir()) == []


def test_a_kept_state_that_is_damaged_is_said_and_set_aside(demo_catalog: Path, tmp_path: Path) -> None:
    (tmp_path / "panel.json").write_text("{")
    panel = Panel(demo_catalog, tmp_path, **GIVEN)
    assert "can't be read" in panel.alert and panel.found is not None
    set_to(panel, headroom_mm="14 mm")
    assert (tmp_path / "panel.json").read_text() == "{"
    panel.box.anew.click()
    set_to(panel, headroom_mm="13 mm")
    assert (tmp_path / "panel-damaged.json").read_text() == "{"
    assert "13 mm" in (tmp_path / "panel.json").read_text()


def test_a_folder_that_is_gone_is_a_sentence(panel: Panel, tmp_path: Path) -> None:
    panel.desk.folder = tmp_path / "gone"
    panel.box.take.click()
    panel.box.write.click()
    assert panel.alert.endswith("can't be read or written: No such file or directory. Check the folder and the disk.")


def test_a_catalog_that_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    panel = Panel(tmp_path / "none.duckdb", tmp_path, **GIVEN)
    assert panel.alert.startswith("There is no catalog ")


def test_even_a_fault_of_ours_is_a_sentence(panel: Panel, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(inquiry, "find", lambda *_: 1 / 0)
    panel.search()
    assert panel.alert.startswith("This should not happen (ZeroDivisionError: ")


def test_an_unknown_control_names_the_nearest(demo_catalog: Path, tmp_path: Path) -> None:
    with pytest.raises(UnknownNameError, match='Did you mean "headroom_mm"') as caught:
        Panel(demo_catalog, tmp_path, head_room="12 mm")
    shown: Any = caught.value._render_traceback_()  # what a notebook prints of it
    assert shown == [str(caught.value)]


def test_compared_parts_are_drawn_and_stand_side_by_side(whole: Panel) -> None:
    whole.box.table.picked = [row["id"] for row in whole.box.table.rows[1:3]]
    names = [row["cells"][1] for row in whole.box.table.rows[:3]]
    shown: Any = whole.box.life.chart
    (*_, drawn) = (
        {value["part"] for value in values} for values in shown.to_dict()["datasets"].values() if "part" in values[0]
    )
    assert drawn == set(names)
    assert all(name in whole.box.compared.value for name in names)
    set_to(whole, **ANYWHERE, capacitance="100 nF", rated_voltage="63 V", role="coupling", polarity="")
    assert "has no line: not limited by heat." in whole.box.lives_said.value


def test_a_hostile_name_stays_text(panel: Panel) -> None:
    set_to(panel, reference="<img src=x onerror=alert(1)>", plus_towards="<script>alert(2)</script>")
    panel.box.take.click()
    box = panel.box
    shown = (box.why, box.line, box.cautions, box.drawing, box.notes, box.compared, box.score, box.two)
    assert not any("<img" in one.value or "<script" in one.value for one in shown)
    panel.box.page.click()
    assert "<img" not in box.page_said.value
    (page,) = panel.desk.folder.glob("*.html")
    assert "<img" not in page.read_text(encoding="utf-8") and "<script" not in page.read_text(encoding="utf-8")


def test_a_page_to_print_holds_the_cautions(panel: Panel, tmp_path: Path) -> None:
    panel.box.page.click()
    page = (tmp_path / "C104.html").read_text(encoding="utf-8")
    assert str(tmp_path / "C104.html") in panel.box.page_said.value
    assert "Local codes and licensed practice come first." in page
    assert panel.found is not None and panel.found.kept[0].name in page and "http" not in page


def test_a_part_typed_in_by_hand_is_found(demo_catalog: Path, tmp_path: Path) -> None:
    from shutil import copyfile

    catalog = tmp_path / "own.duckdb"
    copyfile(demo_catalog, catalog)
    panel = Panel(catalog, tmp_path, **GIVEN)
    before = panel.found and panel.found.kept_count + panel.found.open_count
    typed = {
        "whose": "own drawer", "part_number": "Tray 7", "capacitance": "100 µF", "voltage": "40 V", "polarity": "polar",
        "technology": "wet aluminium", "shape": "can", "size": "6.3x11", "lead_spacing": "2.5 mm", "stock": "20",
        "highest_temperature": "105 °C", "life": "2000 h", "condition": "new",
    }  # fmt: skip
    panel.by_hand.form.values = typed
    panel.by_hand.button.click()
    assert panel.alert == "" and "Tray 7" in panel.by_hand.said.value
    assert panel.found is not None and panel.found.kept_count + panel.found.open_count == (before or 0) + 1
    assert any(row["cells"][1] == "Tray 7" for row in panel.box.table.rows)
