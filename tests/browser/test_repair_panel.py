"""The panel in a repair's folder: positions to choose from, a part pinned in its file, a kernel started anew."""

from browser.conftest import Notebook
from browser.made import PANEL, POSITIONS, make_catalog, make_repair, rows_of
from browser.panel_shown import PanelShown
from playwright.sync_api import expect

CODE = f'{PANEL}Panel(Path("parts.duckdb"), "radio")'


def test_a_repair_is_worked_on_and_found_again_as_it_was_left(notebook: Notebook) -> None:
    make_catalog(notebook.folder)
    radio = notebook.folder / "radio"
    make_repair(radio)
    notebook.run_written(CODE)
    panel = PanelShown(notebook)
    _is_chosen(panel, "C2 (main)")
    expect(panel.drawing).to_contain_text("headroom 13,")
    expect(panel.drawing).to_contain_text("C2")

    part = panel.part(0)
    panel.button("Take this part").click()
    expect(panel.listed).to_contain_text(f"C2 (main): 2 × {part}")
    taken = rows_of(radio)
    assert f"{taken['C2']['pinned_maker']} {taken['C2']['pinned_part_number']}" == part
    assert taken["C1"] == rows_as_made()["C1"] | dict.fromkeys(("pinned_maker", "pinned_part_number"), "")
    panel.button("Undo").click()
    expect(panel.listed).to_contain_text("Nothing is on it yet.")
    assert {name: text for name, text in rows_of(radio)["C2"].items() if text} == rows_as_made()["C2"]
    panel.button("Redo").click()
    expect(panel.listed).to_contain_text(f"C2 (main): 2 × {part}")

    panel.control("Headroom").fill("14 mm")
    expect(panel.drawing).to_contain_text("headroom 14,")
    panel.rows.nth(1).locator("td").first.click()
    expect(panel.rows.nth(1)).to_have_attribute("aria-selected", "true")
    _is_found_again(notebook, panel, part)


def _is_chosen(panel: PanelShown, name: str) -> None:
    which = panel.control("Position")
    expect(which.locator("option")).to_have_text(["C1 (main)", name])
    expect(which).to_have_value("C1 (main)")
    expect(panel.drawing).to_contain_text("headroom 15,")
    which.select_option(name)


def _is_found_again(notebook: Notebook, panel: PanelShown, part: str) -> None:
    picked = panel.part(1)
    counts = panel.counts()
    notebook.wait_for_file("radio/panel.json", '"compared": [\n   [')
    notebook.restart()
    expect(panel.whole.get_by_text("As you left it on ")).to_be_visible()
    expect(panel.control("Position")).to_have_value("C2 (main)")
    expect(panel.control("Headroom")).to_have_value("14 mm")
    expect(panel.status).to_contain_text(counts)
    expect(panel.listed).to_contain_text(f"C2 (main): 2 × {part}")
    expect(panel.rows.locator("xpath=self::*[@aria-selected='true']")).to_contain_text([picked])
    notebook.shot("repair as it was left")
    panel.button("Start again").click()
    expect(panel.control("Headroom")).to_have_value("13")


def rows_as_made() -> dict[str, dict[str, str]]:
    head, *rows = (line.split(",") for line in POSITIONS.splitlines())
    return {row[0]: {name: text for name, text in zip(head, row, strict=True) if text} for row in rows}
