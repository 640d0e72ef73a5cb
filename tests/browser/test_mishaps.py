"""What goes wrong is said in sentences, a list's text stays text, long work is stopped; it is read in the dark too."""

import re

from browser.conftest import Notebook
from browser.made import PANEL, POSITION, TRAP, make_catalog
from browser.panel_shown import PanelShown
from browser.readable import faint
from playwright.sync_api import expect

HOSTILE = f"""{PANEL}Panel(Path("parts.duckdb"), reference={TRAP!r}, {POSITION})"""
MISSPELT = f'{PANEL}Panel(Path("parts.duckdb"), headrom_mm="12 mm")'
SAID = '"headrom_mm" is not a heading. Did you mean "headroom_mm"?'
# The panel's searches go on for hours while a file of this name lies beside the notebook.
SLOW = f"""{PANEL}
from subsearch.repair import inquiry
def slow(work, name):
    def worked(con, *args, **named):
        if Path(name).exists():
            con.execute("select count(*) from range(10_000_000) a, range(10_000_000) b where a.range + b.range = 7")
        return work(con, *args, **named)
    return worked
inquiry.around = slow(inquiry.around, "slow around")
inquiry.search = slow(inquiry.search, "slow search")
Panel(Path("parts.duckdb"), reference="C7", {POSITION})"""


def test_a_text_of_a_list_stays_text(notebook: Notebook) -> None:
    make_catalog(notebook.folder, maker=TRAP, supplier=TRAP)
    notebook.run_written(HOSTILE)
    panel, page = PanelShown(notebook), notebook.page
    expect(panel.rows.first.locator("td").last).to_have_text(TRAP)
    expect(panel.rows.first).to_contain_text(f"{TRAP} {TRAP} ")
    expect(panel.drawing).to_contain_text(f"{TRAP}: {TRAP} ")
    expect(panel.near.get_by_role("listitem").filter(has_text=f"{TRAP} ").first).to_be_visible()
    expect(panel.whole.get_by_role("heading", name=f"Why {TRAP}")).to_be_visible()
    panel.rows.nth(1).locator("td").first.click()
    for tab in ("Margin and life", "Two in place of one", "In Python", "Compare"):
        panel.whole.get_by_role("tab", name=tab, exact=True).click()
    expect(panel.whole.get_by_role("table").filter(has_text="rated voltage")).to_contain_text(f"{TRAP} {TRAP} ")
    panel.button("Take this part").click()
    expect(panel.listed).to_contain_text(f"{TRAP}: 2 × {TRAP}")
    panel.button("Write a page to print").click()
    expect(panel.whole.get_by_text("Written, to open and print: ")).to_be_visible()
    assert page.locator(".subs-panel img").count() == 0
    assert page.evaluate("window.ran") is None
    (written,) = notebook.folder.glob("*.html")
    assert "<img" not in written.read_text(encoding="utf-8")


def test_what_can_t_be_done_is_one_sentence_and_the_panel_stays_readable(notebook: Notebook) -> None:
    make_catalog(notebook.folder)
    notebook.run_written(MISSPELT, expected=["UnknownNameError"])
    output = notebook.page.locator(".jp-OutputArea-output")
    expect(output).to_contain_text(SAID)
    assert len(output.inner_text().splitlines()) == 1, output.inner_text()
    notebook.run_written(f'{PANEL}Panel(Path("parts.duckdb"), reference="C7", {POSITION})')
    panel = PanelShown(notebook)
    _says_what_is_wrong(panel)
    _is_readable(panel)


def _says_what_is_wrong(panel: PanelShown) -> None:
    headroom = panel.control("Headroom")
    headroom.fill("8 bananas")
    panel.notebook.wait_for_file("panel.json", "bananas")  # what is wrong stays said when the state is kept
    expect(panel.alert).to_contain_text('Headroom: "8 bananas" can\'t be read from "bananas" on')
    expect(panel.alert).to_have_role("alert")
    expect(headroom).to_have_attribute("aria-invalid", "true")
    expect(headroom).to_have_accessible_description(re.compile("bananas"))
    expect(panel.rows).to_have_count(0)
    expect(panel.whole.get_by_text("Traceback")).to_have_count(0)
    panel.notebook.shot("a text that can't be read")
    headroom.fill("15 mm")
    panel.counts()
    expect(panel.alert).to_be_empty()
    expect(headroom).not_to_have_attribute("aria-invalid", "true")


def _is_readable(panel: PanelShown) -> None:
    page, caution = panel.page, panel.whole.get_by_text("Trust the circuit, not the print.").first
    expect(panel.whole.get_by_role("heading", name="Why ")).to_be_visible()
    assert faint(page) == []
    page.evaluate("() => window.jupyterapp.commands.execute('apputils:change-theme', { theme: 'JupyterLab Dark' })")
    expect(page.locator("body")).to_have_attribute("data-jp-theme-light", "false")
    panel.notebook.shot("dark")
    assert faint(page) == []
    take = panel.button("Take this part")
    expect(take).to_be_visible()
    page.emulate_media(media="print")
    expect(caution).to_be_visible()
    expect(panel.drawing).to_be_visible()
    expect(take).to_be_hidden()
    panel.notebook.shot("printed")
    page.emulate_media(media="screen")


def test_long_work_is_said_and_stopped_and_typing_goes_on(notebook: Notebook) -> None:
    make_catalog(notebook.folder)
    slow_around, slow_search = (notebook.folder / f"slow {name}" for name in ("around", "search"))
    slow_around.touch()
    notebook.run_written(SLOW)
    panel = PanelShown(notebook)
    expect(panel.near).to_contain_text("Looking at what one concession would let in")
    panel.control("Voltage").fill("35 V")
    _shows_from(panel, 35)
    panel.near.get_by_role("button", name="Stop").click()
    expect(panel.near).to_contain_text("Stopped. What a concession would let in is not known.")
    slow_around.unlink()
    panel.near.get_by_role("button", name="Look again").click()
    expect(panel.near.get_by_role("button", name="Concede").first).to_be_visible()

    slow_search.touch()
    voltage = panel.control("Voltage")
    voltage.fill("50 V")
    expect(panel.status).to_have_text("Searching …")
    notebook.shot("searching")
    voltage.press("End")
    voltage.press("Backspace")
    expect(voltage).to_have_value("50 ")
    panel.button("Stop").first.click()
    expect(panel.status).to_have_text("Stopped. Change anything to search again.")
    slow_search.unlink()
    voltage.press("End")  # the caret was lost to the button
    voltage.press("V")
    _shows_from(panel, 50)


def _shows_from(panel: PanelShown, volts: int) -> None:
    fit = [one for one in (25, 35, 50, 63) if one >= volts]
    expect(panel.rows.get_by_text(re.compile(r"^Grisbeck Grisbeck (25|35|50|63)$"))).to_have_count(len(fit))
    expect(panel.drawing).to_contain_text("Grisbeck")
