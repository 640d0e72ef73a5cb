"""Every notebook runs without an error as a builder opens it; the first and the third have test files of their own."""

from browser.conftest import Notebook
from playwright.sync_api import expect

from subsearch.shipped import shipped

SECOND = "02_how_long_will_it_last.ipynb"
RUN = ("01_one_cramped_position.ipynb", SECOND, "03_a_whole_repair.ipynb")


def test_how_long_a_part_lasts_is_drawn_without_a_network(notebook: Notebook) -> None:
    notebook.run_all(SECOND)
    page = notebook.page
    drawn = page.locator(".subs-drawn svg")
    expect(drawn).to_be_visible()
    expect(drawn).to_contain_text("Temperature at the part [°C]")
    expect(drawn).to_contain_text("calendar ceiling")
    expect(page.get_by_text("as at 57.2 °C all day")).to_be_visible()
    notebook.shot("how long")


def test_no_notebook_is_left_out() -> None:
    assert sorted(one.name for one in shipped("notebooks").glob("*.ipynb")) == sorted(RUN)
