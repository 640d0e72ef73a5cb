"""The two ways to work the panel: by mouse, and by keys alone; each does the same things."""

from typing import Protocol

from browser.panel_shown import PanelShown
from playwright.sync_api import Locator, expect

WAY = """one => one === document.activeElement ? 'here'
    : one.compareDocumentPosition(document.activeElement) & Node.DOCUMENT_POSITION_PRECEDING ? 'Tab' : 'Shift+Tab'"""
PLACE = "rows => rows.indexOf(document.activeElement)"


class Hands(Protocol):
    """What a builder does."""

    def enter(self, label: str, text: str) -> None: ...
    def slide_down(self, label: str) -> None: ...
    def look_at(self, row: int) -> None: ...
    def pick(self, row: int) -> None: ...
    def turn_to(self, tab: str) -> None: ...
    def press(self, name: str) -> None: ...
    def press_first(self, sentences: Locator, name: str) -> None: ...


class Mouse:
    """A mouse; only texts are typed."""

    def __init__(self, panel: PanelShown) -> None:
        self.panel = panel

    def enter(self, label: str, text: str) -> None:
        self.panel.control(label).click(click_count=3)
        self.panel.keys.type(text)

    def slide_down(self, label: str) -> None:
        """Drag a slider to the left by a little."""
        slider, mouse = self.panel.control(f"{label}, slider"), self.panel.page.mouse
        slider.scroll_into_view_if_needed()
        box = slider.bounding_box()
        assert box is not None
        low, high, now = (float(slider.evaluate(f"one => one.{name}")) for name in ("min", "max", "value"))
        x, y = box["x"] + box["width"] * (now - low) / (high - low), box["y"] + box["height"] / 2
        mouse.move(x, y)
        mouse.down()
        mouse.move(x - 4, y, steps=4)
        mouse.up()

    def look_at(self, row: int) -> None:
        self.panel.rows.nth(row).locator("td").nth(2).click()

    def pick(self, row: int) -> None:
        self.panel.rows.nth(row).locator("td").first.click()

    def turn_to(self, tab: str) -> None:
        self.panel.whole.get_by_role("tab", name=tab, exact=True).click()

    def press(self, name: str) -> None:
        self.panel.button(name).click()

    def press_first(self, sentences: Locator, name: str) -> None:
        sentences.get_by_role("button", name=name).first.click()


class Keys:
    """Keys alone, from a first control that the builder has gone to."""

    def __init__(self, panel: PanelShown) -> None:
        self.panel, self.keys = panel, panel.keys
        panel.control("Name").focus()

    def enter(self, label: str, text: str) -> None:
        self._go(self.panel.control(label))
        self.keys.press("ControlOrMeta+a")
        self.keys.type(text)
        self.keys.press("Enter")

    def slide_down(self, label: str) -> None:
        self._go(self.panel.control(f"{label}, slider"))
        self.keys.press("ArrowLeft")

    def look_at(self, row: int) -> None:
        self._row(row)
        self.keys.press("Enter")

    def pick(self, row: int) -> None:
        self._row(row)
        self.keys.press(" ")

    def turn_to(self, tab: str) -> None:
        self._go(self.panel.whole.locator("[role=tab][tabindex='0']"))
        while self.panel.held() != tab:
            self.keys.press("ArrowRight")
        self.keys.press("Enter")

    def press(self, name: str) -> None:
        self._go(self.panel.button(name))
        self.keys.press("Enter")

    def press_first(self, sentences: Locator, name: str) -> None:
        button = sentences.get_by_role("button", name=name).first
        expect(button).to_be_visible()
        self._go(button)
        self.keys.press(" ")

    def _go(self, target: Locator) -> None:
        """Tab to it, forwards or backwards as it lies; the keyboard never leaves the panel on the way."""
        passed: list[str] = []
        while (way := target.evaluate(WAY)) != "here":
            passed.append(self.panel.held())
            assert len(passed) < 90 and not passed[-1].startswith("outside"), passed
            self.keys.press(way)

    def _row(self, row: int) -> None:
        self._go(self.panel.whole.locator(".subs-answer tr[tabindex='0']"))
        while (away := row - self.panel.rows.evaluate_all(PLACE)) != 0:
            self.keys.press("ArrowDown" if away > 0 else "ArrowUp")
