"""The panel's widgets and where they stand. They show what they are given; what happens is panel.py's."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import Any

import altair as alt
import ipywidgets as widgets

from subsearch.display.controls import groups
from subsearch.display.form import Form
from subsearch.display.panel_rows import COLUMNS
from subsearch.display.sentences import Sentences
from subsearch.display.table_widget import PartsTable

TABS = ("Why, and how long", "Margin and life", "Compare", "Two in place of one", "A part by hand", "In Python")
SHOWING = "showing"  # among the controls' values: which of those set here the browser held when it changed them
NEAR = "Near misses"
Pressed = Callable[[int], None]


class PanelBox:
    """Every widget of the panel by name, and `whole`, which holds them all."""

    def __init__(self, positions: Sequence[str], concede: Pressed, take_back: Pressed, take_off: Pressed) -> None:
        alt.JupyterChart.enable_offline()
        self._showing, self._shown = 0, {"0": dict[str, str]()}
        self.setting = False  # whether the panel itself changes what a builder may change
        self.form = Form(groups=groups(positions))
        self.table = PartsTable(columns=COLUMNS)
        self.near = Sentences(NEAR, concede)
        self.conceded = Sentences("Conceded, on top of what the controls say", take_back)
        self.listed = Sentences("Your list", take_off)
        self.life, self.margins = _chart(), _chart()
        self.drawing, self.notes, self.cautions, self.why, self.score = (widgets.HTML() for _ in range(5))
        self.lives_said, self.margins_said, self.compared, self.two, self.line = (widgets.HTML() for _ in range(5))
        self.page_said = widgets.HTML()
        self.undo = _button("Undo", "the last change")
        self.redo = _button("Redo", "what was undone")
        self.anew = _button("Start again", "with what the cell or positions.csv says")
        self.stop = _button("Stop", "the search that goes on")
        self.take = _button("Take this part", "the one that is looked at", "primary")
        self.write = _button("Write the list", "as shopping-list.csv")
        self.page = _button("Write a page to print", "of this position and the part that is looked at")
        self.by_hand = widgets.VBox()
        self.whole = self._whole()

    def show_part(self, there_is_one: bool) -> None:
        """Leave out what can only be said of a part while none is looked at."""
        for box in self._of_the_part:
            box.layout.display = None if there_is_one else "none"

    def show_rows(self, rows: Sequence[dict[str, Any]], looked_at: str, picked: Sequence[str]) -> None:
        """The table of the parts found."""
        with self._own_doing(), self.table.hold_trait_notifications():
            self.table.rows, self.table.looked_at, self.table.picked = list(rows), looked_at, list(picked)
            self.table.status = ""

    def show_picked(self, picked: Sequence[str]) -> None:
        """The parts that are picked in the table."""
        with self._own_doing():
            self.table.picked = list(picked)

    def show_values(self, values: Mapping[str, str]) -> None:
        """What the controls hold; nothing is set where they hold that already."""
        if _stated(values) != _stated(self.form.values):
            self._showing += 1
            self._shown[str(self._showing)] = dict(values)
            with self._own_doing():
                self.form.values = {**values, SHOWING: str(self._showing)}

    def typed(self, values: Mapping[str, str]) -> dict[str, str]:
        """What the builder changed, be it while the browser still held what was shown before."""
        showing = values.get(SHOWING, "0")
        before = self._shown[showing]
        self._shown = {number: one for number, one in self._shown.items() if int(number) > int(showing)}
        self._shown[showing] = dict(values)
        return {name: text for name, text in values.items() if text != before.get(name, "")}

    def show_steps(self, can_undo: bool, can_redo: bool) -> None:
        """Whether there is a step to undo, and one to do again."""
        self.undo.disabled, self.redo.disabled = not can_undo, not can_redo

    def show_lives(self, chart: Any) -> None:
        """Life over temperature; none where no part has a line."""
        self.life.layout.display = "none" if chart is None else None
        if chart is not None:
            self.life.chart = chart

    def say_alert(self, sentence: str) -> None:
        """What is wrong, in one place, where it is heard too."""
        self.table.alert = sentence

    def say_near(self, note: str, action: str) -> None:
        """What stands in place of the near misses while they are not known; and nothing of two parts in one place."""
        self.two.value = ""
        self.show_near([(note, action)])

    def show_near(self, sentences: Sequence[tuple[str, str]], note: str = "", title: str = NEAR) -> None:
        """The near misses, each with its action or none; the title says where they are not of what is asked now."""
        self.near.title, self.near.note = title, note
        self.near.show(sentences)

    @contextmanager
    def _own_doing(self) -> Iterator[None]:
        self.setting = True
        try:
            yield
        finally:
            self.setting = False

    def _whole(self) -> Any:
        bar = widgets.HBox([self.undo, self.redo, self.anew, self.stop])
        controls = widgets.VBox([self.form])
        controls.add_class("subs-beside")  # what is moved and what moves with it are seen at once
        left = widgets.VBox([bar, controls], layout=widgets.Layout(flex="1 1 300px", max_width="400px"))
        right = widgets.VBox(
            [self.table, self.drawing, self.notes], layout=widgets.Layout(flex="6 1 640px", min_width="0")
        )
        right.add_class("subs-seen")
        taking = widgets.VBox([widgets.HBox([self.take, self.page]), self.page_said, self.cautions], layout=_wide())
        listed = [self.listed, widgets.HBox([self.write])]
        others = widgets.VBox([self.conceded, self.near, *listed], layout=_wide())
        tabs = widgets.Tab([self._why(), self._margins(), self.compared, self.two, self.by_hand, self.line])
        tabs.titles = TABS
        self._of_the_part = [taking, self.score, self.lives_said, self.margins, self.margins_said]
        whole = widgets.VBox([_side_by_side(left, right), _side_by_side(taking, others), tabs])
        whole.add_class("subs-panel")
        return whole

    def _why(self) -> Any:
        told = widgets.VBox([self.why, self.score], layout=widgets.Layout(flex="1 1 460px"))
        return _side_by_side(told, widgets.VBox([self.life, self.lives_said], layout=widgets.Layout(flex="1 1 460px")))

    def _margins(self) -> Any:
        return widgets.VBox([self.margins, self.margins_said])


def _stated(values: Mapping[str, str]) -> dict[str, str]:
    """The texts without blanks, of which nothing is shown."""
    return {name: text.strip() for name, text in values.items() if text.strip() and name != SHOWING}


def _chart() -> Any:
    nothing = alt.Chart(alt.InlineData(values=[])).mark_point().properties(width=1, height=1)
    return alt.JupyterChart(nothing, embed_options={"actions": False})  # its menu leads out


def _button(name: str, meaning: str, style: str = "") -> Any:
    return widgets.Button(
        description=name, tooltip=f"{name}: {meaning}", button_style=style, layout=widgets.Layout(width="auto")
    )


def _wide() -> Any:
    return widgets.Layout(flex="1 1 420px", min_width="0")


def _side_by_side(*boxes: Any) -> Any:
    """Boxes beside each other where the window is wide enough, else below each other."""
    return widgets.Box(boxes, layout=widgets.Layout(display="flex", flex_flow="row wrap", grid_gap="4px 24px"))
