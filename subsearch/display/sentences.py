"""Sentences to read, each with a button for what it says can be done."""

from collections.abc import Callable, Sequence
from typing import Any

import anywidget
import traitlets

from subsearch.display.beside import beside


class Sentences(anywidget.AnyWidget):
    """A title, a note, and sentences; one with an `action` has a button of that name.

    >>> shown = Sentences("Near misses", print)
    >>> shown.show([("Waiting for delivery lets in 2 parts.", "Concede")])
    >>> shown.press(0)
    0
    """

    _esm = beside("shared.js", "sentences.js")
    title = traitlets.Unicode("").tag(sync=True)
    note = traitlets.Unicode("").tag(sync=True)
    items: traitlets.List[Any] = traitlets.List().tag(sync=True)

    def __init__(self, title: str, pressed: Callable[[int], None]) -> None:
        super().__init__(title=title)
        self._pressed = pressed
        self.on_msg(self._told)

    def show(self, sentences: Sequence[tuple[str, str]]) -> None:
        """Show these sentences, each with its action or none."""
        self.items = [{"text": text, "action": action} for text, action in sentences]

    def press(self, number: int) -> None:
        """Do what the button of that sentence does, where it has one."""
        if self.items[number]["action"]:
            self._pressed(number)

    def _told(self, _: Any, content: dict[str, Any], __: Any) -> None:
        number, text = content.get("pressed"), content.get("text")
        # what was pressed while the sentences changed is another one by now
        if isinstance(number, int) and 0 <= number < len(self.items) and self.items[number]["text"] == text:
            self.press(number)
