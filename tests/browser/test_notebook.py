"""The notebooks as a builder uses them: run, change the headroom, take a part, write the list; read a lifetime."""

import csv
import re

from browser.conftest import Notebook
from playwright.sync_api import Locator, Page, expect

NOTEBOOK = "01_one_cramped_position.ipynb"
SECOND = "02_how_long_will_it_last.ipynb"


def type_into(page: Page, label: str, text: str) -> None:
    page.get_by_label(label, exact=True).fill(text)


def status(page: Page) -> Locator:
    return page.locator(".subs-status")


def test_a_part_is_found_taken_and_written(notebook: Notebook) -> None:
    notebook.run_all(NOTEBOOK)
    page = notebook.page
    expect(status(page)).to_contain_text(re.compile(r"^[1-9]\d* fit, "))
    fitting = status(page).inner_text()
    expect(page.locator(".vega-embed svg, .vega-embed canvas").first).to_be_visible()
    notebook.shot("1_run")
    expect(page.get_by_text("Jupyter news")).to_have_count(0)

    _keys_move_the_table_and_not_the_notebook(page)
    type_into(page, "Headroom", "8 mm")
    expect(status(page)).to_contain_text(re.compile(r"^0 fit, "))
    type_into(page, "Headroom", "8 bananas")
    expect(page.get_by_role("alert").filter(has_text="bananas")).to_contain_text("Headroom:")
    notebook.shot("2_alert")
    type_into(page, "Headroom", "15 mm")
    expect(status(page)).to_have_text(fitting)

    part = page.locator("tr[aria-current] td").nth(2).inner_text()
    page.get_by_role("button", name="Take this part").press("Enter")
    expect(page.locator(".subs-text", has_text="Your list")).to_contain_text(part)
    page.get_by_role("button", name="Write the list").press("Enter")
    expect(page.get_by_text("Written: ")).to_be_visible()
    notebook.shot("3_written")
    _is_written(notebook, part)


def test_how_long_a_part_lasts_is_drawn_without_a_network(notebook: Notebook) -> None:
    notebook.run_all(SECOND)
    page = notebook.page
    drawn = page.locator(".subs-drawn svg")
    expect(drawn).to_be_visible()
    expect(drawn).to_contain_text("Temperature at the part [°C]")
    expect(drawn).to_contain_text("calendar ceiling")
    expect(page.get_by_text("as at 57.2 °C all day")).to_be_visible()
    notebook.shot("4_how_long")


def _keys_move_the_table_and_not_the_notebook(page: Page) -> None:
    cells = page.locator(".jp-Cell").count()
    rows = page.locator(".subs-answer tbody tr")
    rows.first.focus()
    page.keyboard.press("ArrowDown")
    page.keyboard.press(" ")
    expect(rows.nth(1)).to_have_attribute("aria-selected", "true")
    page.keyboard.press("Enter")
    expect(rows.nth(1)).to_have_attribute("aria-current", "true")
    expect(page.get_by_text(re.compile("^Why "))).to_contain_text(rows.nth(1).locator("td").nth(2).inner_text())
    page.keyboard.press("b")  # in the notebook it would insert a cell
    page.keyboard.press("Escape")
    expect(rows.nth(1)).to_have_attribute("aria-selected", "false")
    role = page.get_by_label("Role", exact=True)
    chosen = role.input_value()
    role.focus()
    page.keyboard.press("ArrowUp")  # in the notebook it would move to another cell
    expect(role).not_to_have_value(chosen)
    page.keyboard.press("ArrowDown")
    expect(role).to_have_value(chosen)
    assert page.locator(".jp-Cell").count() == cells


def _is_written(notebook: Notebook, part: str) -> None:
    with (notebook.server.root / "shopping-list.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    assert [f"{line['maker']} {line['part_number']}" for line in lines] == [part]
    assert [(line["needed"], line["positions"]) for line in lines] == [("12", "C104")]
