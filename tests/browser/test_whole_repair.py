"""The notebook of a whole repair as a builder uses it: run, read, open the files that it wrote."""

import csv

from browser.conftest import Notebook
from playwright.sync_api import expect

NOTEBOOK = "03_a_whole_repair.ipynb"


def test_a_whole_repair_is_shown_and_written(notebook: Notebook) -> None:
    notebook.run_all(NOTEBOOK)
    page = notebook.page
    drawn = page.locator(".subs-drawn")
    expect(drawn).to_have_count(3)
    expect(drawn.nth(0)).to_contain_text("tightest margin around the body [mm]")
    expect(drawn.nth(1)).to_contain_text("Cost of all pieces [EUR]")
    expect(drawn.nth(2)).to_contain_text("Temperature at the part [°C]")
    expect(page.get_by_text("Local codes and licensed practice come first.", exact=False).first).to_be_visible()
    expect(page.get_by_role("link", name="stage-organ/report.html")).to_be_visible()
    notebook.shot("5_whole_repair")
    folder = notebook.folder / "stage-organ"
    with (folder / "shopping-list.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    assert {name for line in lines for name in line["positions"].split("; ")} >= {"C101 (tone generator)"}
    assert "C101 (tone generator)" in (folder / "report.html").read_text(encoding="utf-8")
