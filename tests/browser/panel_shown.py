"""The panel in the page: where its things stand and what it says, and the notebook around it, which must not change."""

import re
from pathlib import Path

from browser.conftest import Notebook
from playwright.sync_api import Locator, expect

COUNTS = re.compile(r"^(\d+) fit, (\d+) open ")
CELLS = "() => window.jupyterapp.shell.currentWidget.content.model.toJSON().cells.map(one => [one.id, one.source])"
HELD = """() => {
    const held = document.activeElement;
    if (!held.closest('.subs-panel')) return `outside the panel: ${held.outerHTML.slice(0, 80)}`;
    if (held.matches('tr')) return `row ${held.rowIndex}`;
    return held.ariaLabel ?? held.labels?.[0]?.textContent ?? held.textContent;
}"""


class PanelShown:
    """The one panel of a notebook that was run."""

    def __init__(self, notebook: Notebook) -> None:
        self.notebook, self.page, self.keys = notebook, notebook.page, notebook.page.keyboard
        self.whole = self.page.locator(".subs-panel")
        self.status = self.page.locator(".subs-status")
        self.alert = self.page.locator(".subs-alert")
        self.rows = self.page.locator(".subs-answer tbody tr")
        self.drawing = self.page.locator(".subs-drawing").first  # others are of two parts, in a tab
        self.near, self.conceded, self.listed = (
            self.page.locator(".subs-sentences").filter(has=self.page.get_by_role("heading", name=name))
            for name in ("Near misses", "Conceded", "Your list")
        )
        expect(self.status).to_have_text(COUNTS)
        self.cells = self.page.evaluate(CELLS)

    def control(self, label: str) -> Locator:
        """A control by its label, with or without the unit that stands behind it."""
        return self.whole.locator(".subs-form").first.get_by_label(re.compile(rf"^{re.escape(label)}( \[.*\])?$"))

    def button(self, name: str) -> Locator:
        """A button by what is on it."""
        return self.whole.get_by_role("button", name=name, exact=True)

    def counts(self) -> str:
        """How many fit and how many are open, in the words of the status."""
        expect(self.status).to_have_text(COUNTS)
        found = COUNTS.match(self.status.inner_text())
        assert found is not None
        return found.group().strip()

    def printed_counts(self, headroom: str) -> str:
        """The same of another headroom as the notebook's own cell prints it, which asks without the panel."""
        told = self.page.get_by_text(f"headroom {headroom}: ").inner_text()
        return re.search(rf"^headroom {headroom}: (\d+ fit, \d+ open)$", told, re.MULTILINE).group(1)  # type: ignore[union-attr]

    def part(self, row: int) -> str:
        """The name of the part in a row."""
        return self.rows.nth(row).locator("td").nth(2).inner_text()

    def held(self) -> str:
        """What has the keyboard: its label, what is on it, or which row; or that it is outside the panel."""
        return str(self.page.evaluate(HELD))

    def is_alone_in_the_notebook(self) -> None:
        """No key went astray: the notebook has the cells it had, in their order and with their text."""
        assert self.page.evaluate(CELLS) == self.cells

    def keeps_the_keys(self) -> None:
        """What was pressed may be gone by now; the keyboard is still in the panel, not among the notebook's cells."""
        for key in ("b", "ArrowDown", "d", "d"):  # in the notebook: insert a cell below, go to the next, delete it
            assert not (held := self.held()).startswith("outside"), held
            self.keys.press(key)
        self.is_alone_in_the_notebook()

    def file(self, name: str) -> Path:
        """A file beside the notebook."""
        return self.notebook.folder / name
