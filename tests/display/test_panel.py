"""The panel without a browser: what it asks, shows, says and writes."""

import csv
from pathlib import Path
from typing import Any

import pytest

from subsearch.catalog.store import open_to_read
from subsearch.display import panel as panel_module
from subsearch.display.life_chart import life_chart
from subsearch.display.panel import Panel
from subsearch.errors import UnknownNameError
from subsearch.repair.cautions import GENERAL
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement
from subsearch.search.sweep import LifeAt

GIVEN = {
    "position": "C104", "pieces": 12, "capacitance": "100 µF", "voltage": "25 V", "role": "rail decoupling",
    "hole_spacing": "2.5 mm", "headroom": "15 mm", "width": "9 mm", "temperature": "42 °C", "hours_a_day": "4",
    "years": "10",
}  # fmt: skip


@pytest.fixture
def panel(demo_catalog: Path, tmp_path: Path) -> Panel:
    return Panel(demo_catalog, tmp_path, **GIVEN)


def set_to(panel: Panel, **values: Any) -> None:
    for name, value in values.items():
        panel.knobs.widgets[name].value = value


def values_of(chart: dict[str, Any], layer: int) -> list[dict[str, Any]]:
    values: list[dict[str, Any]] = chart["datasets"][chart["layer"][layer]["data"]["name"]]
    return values


def test_the_line_of_python_gives_what_is_shown(panel: Panel, demo_catalog: Path) -> None:
    from html import unescape

    line = unescape(panel.line.value.partition("<pre>")[2].partition("</pre>")[0])
    names = {"find": find, "open_to_read": open_to_read, "Requirement": Requirement, "catalog": demo_catalog}
    again = eval(line, names)
    assert panel.found is not None
    assert again.requirement == panel.found.requirement == panel.requirement
    assert again.kept == panel.found.kept
    again.con.close()


def test_every_row_is_a_part_that_was_found(panel: Panel) -> None:
    assert panel.found is not None
    assert [row["cells"][1] for row in panel.table.rows] == [p.name for p in (*panel.found.kept, *panel.found.open)]
    assert panel.table.status == (
        f"{panel.found.kept_count} fit, {panel.found.open_count} open (something is not stated), "
        f"{panel.found.refused_count} refused."
    )
    assert {row["cells"][0] for row in panel.table.rows if row["open"]} == {"open"}


def test_what_cannot_be_read_is_one_sentence_and_nothing_old_stays(panel: Panel) -> None:
    set_to(panel, headroom="tall")
    assert panel.table.alert.startswith('Headroom: "tall" is not a quantity in mm.')
    assert (panel.table.rows, panel.table.status, panel.requirement, panel.found) == ([], "", None, None)
    panel.take_button.click()
    assert not panel.choices
    set_to(panel, headroom="15 mm")
    assert panel.table.alert == ""
    assert panel.table.rows
    set_to(panel, capacitance="", voltage="")
    assert panel.table.alert.startswith("Nothing is asked. Fill in a capacitance or a voltage")


def test_nothing_fits_names_the_nearest(panel: Panel) -> None:
    set_to(panel, headroom="1 mm", hole_spacing="41 mm", width="2 mm")
    assert panel.table.status.startswith("0 fit, 0 open")
    assert "Nearest is " in panel.table.status


def test_cautions_for_all_work_and_for_the_part_stand_beside_the_button(panel: Panel) -> None:
    assert all(one.partition("'")[0] in panel.cautions.value for one in GENERAL)
    assert "For this part" in panel.cautions.value
    assert "Polarity: look up" in panel.cautions.value


def test_why_has_every_condition_and_the_sum(panel: Panel) -> None:
    best = panel.found and panel.found.kept[0]
    assert best
    assert panel.why.value.count("<tr>") == 8
    assert "headroom 2.5 mm to spare" in panel.why.value
    assert f"<td>{best.total:.2f}</td></tr></table>" in panel.score.value


def test_parts_are_taken_by_position_and_written(panel: Panel, tmp_path: Path) -> None:
    panel.write_button.click()
    assert panel.table.alert == "The list is empty. Take a part first."
    (tmp_path / "shopping-list.csv").write_text("of an earlier day")
    panel.take_button.click()
    second = panel.table.rows[1]
    panel.table.looked_at = second["id"]
    panel.take_button.click()
    set_to(panel, position="C105", pieces=1)
    panel.take_button.click()
    panel.write_button.click()
    with (tmp_path / "shopping-list-2.csv").open(encoding="utf-8", newline="") as file:
        bought = {
            line["positions"]: (f"{line['maker']} {line['part_number']}", line["needed"])
            for line in csv.DictReader(file)
        }
    assert bought["C104"] == (second["cells"][1], "12")
    assert bought["C105"][1] == "1"
    assert (tmp_path / "shopping-list.csv").read_text() == "of an earlier day"
    assert f"Written: {tmp_path / 'shopping-list-2.csv'}" in panel.listed.value


def test_a_folder_that_is_gone_is_a_sentence(panel: Panel, tmp_path: Path) -> None:
    panel.folder = tmp_path / "gone"
    panel.take_button.click()
    panel.write_button.click()
    assert panel.table.alert.endswith("can't be written: No such file or directory. Check the folder and the disk.")


def test_even_a_fault_of_ours_is_a_sentence(panel: Panel, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(panel_module, "find", lambda *_: 1 / 0)
    panel.search()
    assert panel.table.alert.startswith("This should not happen (ZeroDivisionError: ")


def test_an_unknown_control_names_the_nearest(demo_catalog: Path) -> None:
    with pytest.raises(UnknownNameError, match='The panel has no "head_room"\\. Did you mean "headroom"\\?'):
        Panel(demo_catalog, head_room="12 mm")


def test_compared_parts_are_drawn_and_those_without_a_line_named(panel: Panel) -> None:
    panel.table.picked = [row["id"] for row in panel.table.rows[:3]]
    shown: Any = panel.chart.chart
    drawn = {value["part"] for value in values_of(shown.to_dict(), 0)}
    assert drawn == {row["cells"][1] for row in panel.table.rows[:3]}
    set_to(panel, capacitance="100 nF", voltage="63 V", role="coupling", headroom="", width="", hole_spacing="")
    assert "has no line: not limited by heat." in panel.not_drawn.value


def test_a_hostile_name_stays_text(panel: Panel) -> None:
    set_to(panel, position="<img src=x onerror=alert(1)>")
    panel.take_button.click()
    assert "<img" not in panel.listed.value + panel.why.value + panel.line.value + panel.cautions.value


def test_axis_titles_carry_their_units() -> None:
    chart = life_chart([LifeAt("A", 85.0, 2.0), LifeAt("A", 95.0, None)], 55).to_dict()
    encoding = chart["layer"][0]["encoding"]
    assert [encoding[axis]["title"] for axis in "xy"] == ["Temperature at the part [°C]", "Life [years]"]
    assert values_of(chart, 0) == [{"part": "A", "at_c": 85.0, "years": 2.0}]
    assert values_of(chart, 2) == [{"at_c": 55}]
