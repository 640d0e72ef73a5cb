"""The panel's main path in a real notebook, once by mouse and once by keys alone, to the files that come of it."""

import csv
import json
import re

import pytest
from browser.conftest import Notebook
from browser.hands import Hands, Keys, Mouse
from browser.panel_shown import PanelShown
from playwright.sync_api import expect

NOTEBOOK = "01_one_cramped_position.ipynb"


@pytest.mark.parametrize("kind", [Mouse, Keys], ids=["by mouse", "by keys alone"])
def test_from_a_position_to_a_part_on_the_list(notebook: Notebook, kind: type[Mouse | Keys]) -> None:
    notebook.run_all(NOTEBOOK)
    panel = PanelShown(notebook)
    expect(notebook.page.get_by_text("Jupyter news")).to_have_count(0)
    hands = kind(panel)
    notebook.shot(f"run {kind.__name__}")
    _asks_otherwise(panel, hands)
    _looks_and_compares(panel, hands)
    notebook.shot(f"compared {kind.__name__}")
    _concedes_and_takes_it_back(panel, hands)
    _goes_back_and_forth(panel, hands)
    part = _takes_and_writes(panel, hands)
    notebook.shot(f"written {kind.__name__}")
    panel.is_alone_in_the_notebook()
    _is_on_the_disk(panel, part)


def _asks_otherwise(panel: PanelShown, hands: Hands) -> None:
    """A text and a slider: the count is the one that the notebook's cell gets by itself, and the drawing follows."""
    assert panel.counts() == panel.printed_counts("15 mm")
    hands.enter("Headroom", "12 mm")
    expect(panel.status).to_contain_text(panel.printed_counts("12 mm"))
    expect(panel.drawing).to_contain_text("headroom 12,")
    before = panel.counts()
    hands.slide_down("Headroom")
    expect(panel.control("Headroom")).not_to_have_value("12 mm")
    expect(panel.status).not_to_contain_text(before)
    panel.counts()
    slid = panel.control("Headroom").input_value().removesuffix(" mm")
    assert float(slid) < 12
    expect(panel.drawing).to_contain_text(f"headroom {slid},")
    hands.enter("Headroom", "20 mm")
    expect(panel.status).to_contain_text(panel.printed_counts("20 mm"))


def _looks_and_compares(panel: PanelShown, hands: Hands) -> None:
    hands.look_at(2)
    expect(panel.rows.nth(2)).to_have_attribute("aria-current", "true")
    expect(panel.drawing).to_contain_text(panel.part(2))
    expect(panel.whole.get_by_role("heading", name=f"Why {panel.part(2)}")).to_be_visible()
    for row in (0, 1):
        hands.pick(row)
        expect(panel.rows.nth(row)).to_have_attribute("aria-selected", "true")
    hands.turn_to("Compare")
    table = panel.whole.get_by_role("table").filter(has_text="rated voltage")
    heads = [panel.part(row) for row in (2, 0, 1)]
    expect(table.locator("thead th")).to_have_text(heads)
    panel.keeps_the_keys()


def _concedes_and_takes_it_back(panel: PanelShown, hands: Hands) -> None:
    before = panel.counts()
    # what is near the position before has no button any more
    near = panel.near.get_by_role("listitem").filter(has=panel.page.get_by_role("button", name="Concede")).first
    sentence, _, lets_in = near.locator("span").inner_text().partition(" lets in ")
    hands.press_first(panel.near, "Concede")
    expect(panel.conceded.get_by_role("listitem")).to_have_count(1)
    expect(panel.conceded).to_contain_text(sentence)
    expect(panel.status).not_to_contain_text(before)
    assert _fit(panel.counts()) > _fit(before)
    named = [one for one in panel.rows.locator("td:nth-child(3)").all_inner_texts() if one in lets_in]
    looked_at = panel.rows.locator("xpath=self::*[@aria-current]").locator("td").nth(2).inner_text()
    assert looked_at in (named or [looked_at])  # the one that is named, if it is among the best that are shown
    panel.keeps_the_keys()
    hands.press_first(panel.conceded, "Take back")
    expect(panel.conceded.get_by_role("listitem")).to_have_count(0)
    expect(panel.status).to_contain_text(before)
    panel.keeps_the_keys()


def _goes_back_and_forth(panel: PanelShown, hands: Hands) -> None:
    before = panel.counts()
    hands.press("Undo")
    expect(panel.conceded.get_by_role("listitem")).to_have_count(1)
    expect(panel.status).not_to_contain_text(before)
    conceded = panel.counts()
    hands.press("Undo")
    expect(panel.status).to_contain_text(before)
    hands.press("Redo")
    expect(panel.status).to_contain_text(conceded)
    hands.press("Redo")
    expect(panel.status).to_contain_text(before)
    expect(panel.button("Redo")).to_be_disabled()
    panel.keeps_the_keys()


def _takes_and_writes(panel: PanelShown, hands: Hands) -> str:
    """Take the part that is looked at, write the list and the page; a part taken off and back again on the way."""
    part = panel.rows.locator("xpath=self::*[@aria-current]").locator("td").nth(2).inner_text()
    hands.press("Take this part")
    expect(panel.listed).to_contain_text(part)
    hands.press_first(panel.listed, "Take off")
    expect(panel.listed).to_contain_text("Nothing is on it yet.")
    panel.keeps_the_keys()
    hands.press("Take this part")
    expect(panel.listed).to_contain_text(part)
    hands.press("Write the list")
    expect(panel.listed).to_contain_text("Written: ")
    hands.press("Write a page to print")
    expect(panel.whole.get_by_text("Written, to open and print: ")).to_be_visible()
    panel.keeps_the_keys()
    return part


def _is_on_the_disk(panel: PanelShown, part: str) -> None:
    with panel.file("shopping-list.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    assert [f"{line['maker']} {line['part_number']}" for line in lines] == [part]
    assert [(line["needed"], line["positions"]) for line in lines] == [("12", "C104")]
    page = panel.file("C104.html").read_text(encoding="utf-8")
    cautions = panel.whole.locator(".subs-text").filter(has_text="For all work of this kind").get_by_role("listitem")
    for caution in cautions.all_inner_texts():
        assert caution in re.sub(r"\s+", " ", page)
    assert part in page
    panel.notebook.wait_for_file("panel.json", '"taken": {\n   "')
    kept = json.loads(panel.file("panel.json").read_text(encoding="utf-8"))["bench"]
    assert kept["trials"][kept["shown"]]["cells"]["headroom_mm"] == "20 mm"
    assert [" ".join(one) for one in kept["compared"]] == [panel.part(0), panel.part(1)]
    assert [" ".join(one["part"]) for one in kept["taken"].values()] == [part]


def _fit(counts: str) -> int:
    return int(counts.partition(" ")[0])
