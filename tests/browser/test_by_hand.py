"""A part typed in by hand in a real notebook, by keys alone: what appears, what is wrong, what is recorded."""

from browser.conftest import Notebook
from playwright.sync_api import expect

from subsearch.catalog.store import open_to_read

CODE = """from pathlib import Path
from subsearch.display.by_hand import ByHand
named = []
ByHand(Path("typed.duckdb"), named.append)"""


def test_a_part_is_typed_in_by_keys_alone(notebook: Notebook) -> None:
    notebook.run_written(CODE)
    page, keys = notebook.page, notebook.page.keyboard
    page.get_by_label("Whose it is", exact=True).focus()
    keys.type("a s")  # the native list goes to the word that begins so
    expect(page.get_by_label("Supplier", exact=True)).to_be_visible()
    expect(page.get_by_label("Whose it is", exact=True)).to_be_focused()
    for text in ("Weir Barn", "Rod 1", "100 nF", "63 A", "0.35 EUR"):
        while not page.evaluate("document.activeElement.matches('input[type=text]')"):
            keys.press("Tab")
        keys.type(text)
        keys.press("Tab")
        page.wait_for_timeout(400)
    expect(page.locator(".subs-fault").filter(has_text="63 A")).to_contain_text('has the unit "A"')
    notebook.shot("by_hand_fault")
    button = page.get_by_role("button", name="Record this part")
    button.press("Enter")
    expect(page.get_by_text("Nothing was recorded.")).to_be_visible()
    page.get_by_label("Voltage", exact=True).fill("63 V")
    page.get_by_label("Shape", exact=True).select_option("can")
    page.get_by_label("Size", exact=True).fill("6x11")
    page.get_by_label("Size", exact=True).press("Enter")
    expect(page.get_by_label("Voltage", exact=True)).not_to_have_attribute("aria-invalid", "true")
    button.press("Enter")
    expect(page.get_by_role("status").filter(has_text="Recorded for Weir Barn")).to_contain_text("Size: 6x11")
    expect(page.get_by_label("Part number", exact=True)).to_have_value("")
    expect(page.get_by_label("Supplier", exact=True)).to_have_value("Weir Barn")
    notebook.shot("by_hand_recorded")
    with open_to_read(notebook.folder / "typed.duckdb") as con:
        assert con.execute("select part_number, rated_v, along_mm from part").fetchall() == [("Rod 1", 63, 6)]


def test_what_is_typed_while_controls_appear_is_kept(notebook: Notebook) -> None:
    notebook.run_written(CODE)
    page, keys = notebook.page, notebook.page.keyboard
    page.get_by_label("Life", exact=True).focus()
    keys.type("2000 h")
    page.wait_for_timeout(240)  # so the kernel's answer, a control that appears, comes while the next text is typed
    keys.press("Tab")
    keys.type("350 mA of ripple, or what was it again", delay=25)
    expect(page.get_by_label("Life means", exact=True)).to_be_visible()
    expect(page.get_by_label("Ripple", exact=True)).to_have_value("350 mA of ripple, or what was it again")
    expect(page.locator(".subs-fault").filter(has_text="what was it again")).to_be_visible()
