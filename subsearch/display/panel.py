"""The notebook's panel: it edits a requirement, shows what `find` returned, and keeps a list. It decides nothing."""

import asyncio
import logging
from collections.abc import Callable
from dataclasses import replace
from html import escape
from itertools import chain, count
from pathlib import Path
from typing import Any

import altair as alt
import ipywidgets as widgets
from IPython.display import display

from subsearch.catalog.store import in_words, open_to_read
from subsearch.display.explained import as_code, before_you_take, its_score, text, the_list, why_it_fits
from subsearch.display.knobs import Knobs
from subsearch.display.life_chart import life_chart
from subsearch.display.panel_rows import COLUMNS, counts_sentence, key, not_drawn, row
from subsearch.display.table_widget import PartsTable
from subsearch.errors import RequirementError, SubsearchError
from subsearch.repair.choosing import Choice
from subsearch.repair.single import taken
from subsearch.search.answers import Candidate
from subsearch.search.candidates import BEST, Found, find
from subsearch.search.requirement import Requirement
from subsearch.search.sweep import life_over
from subsearch.shopping.files import write_csv
from subsearch.shopping.plan import ShoppingList, plan

WAIT_S = 0.25  # a text is read once the typing pauses
DRAWN = 6  # lines that a reader can still tell apart
LOG = logging.getLogger(__name__)


class Panel:
    """A panel over one catalog file; each control may be given its first text by name, like capacitance="47 µF".

    `requirement` and `found` are what it asks and shows now (None while a control can't be read); `choices` is what
    was taken, by position; "Write the list" writes `shopping-list.csv` into `folder`.
    """

    def __init__(self, catalog: Path, folder: Path | str = ".", **given: Any) -> None:
        self.catalog, self.folder = Path(catalog), Path(folder)
        self.requirement: Requirement | None = None
        self.found: Found | None = None
        self.choices: dict[str, Choice] = {}
        self.shopping: ShoppingList | None = None
        self._looked_at: Choice | None = None
        self._written: Path | None = None
        self._searching = False
        self._waiting: asyncio.TimerHandle | None = None
        self.knobs = Knobs(given)
        self.table = PartsTable(columns=COLUMNS)
        self._build()
        self.knobs.on_change(self._soon)
        self.table.observe(self._turned_to, names=["looked_at", "picked"])
        self.take_button.on_click(lambda _: self._guarded(self._take))
        self.write_button.on_click(lambda _: self._guarded(self._write))
        self._show_list("")
        self.search()

    def _build(self) -> None:
        alt.JupyterChart.enable_offline()
        self.chart = alt.JupyterChart(life_chart([], None), embed_options={"actions": False})  # its menu leads out
        self.why, self.score, self.cautions, self.line, self.listed, self.not_drawn = (widgets.HTML() for _ in range(6))
        self.take_button = widgets.Button(description="Take this part", button_style="primary")
        self.write_button = widgets.Button(description="Write the list")
        told = widgets.VBox([self.why, self.score], layout=widgets.Layout(flex="1 1 480px"))
        beside = widgets.VBox([self.chart, self.not_drawn], layout=widgets.Layout(flex="0 0 auto"))
        kept = widgets.VBox([self.take_button, self.listed, self.write_button], layout=widgets.Layout(flex="1 1 300px"))
        careful = widgets.VBox([self.cautions], layout=widgets.Layout(flex="2 1 340px"))
        self._of_the_part = [told, beside, careful, self.take_button, self.line]
        self.box = widgets.VBox(
            [self.knobs.box, self.table, _side_by_side(told, beside), _side_by_side(kept, careful), self.line]
        )

    def _ipython_display_(self) -> None:
        display(self.box)  # type: ignore[no-untyped-call]

    def search(self) -> None:
        """Ask what the controls say now, and show the answer."""
        self._searching = True
        self._guarded(self._search)
        self._searching = False

    def _turned_to(self, _: Any) -> None:
        if not self._searching:  # a search looks once, when all of its answer is there
            self._guarded(self._look)

    def _soon(self) -> None:
        """Search when the typing pauses; at once where nothing is running that could call back."""
        if self._waiting is not None:
            self._waiting.cancel()
        try:
            self._waiting = asyncio.get_running_loop().call_later(WAIT_S, self.search)
        except RuntimeError:
            self.search()

    def _guarded(self, act: Callable[[], None]) -> None:
        """Run a callback, in which an error would be seen by nobody: say it in one sentence in the panel."""
        self.table.alert = ""
        try:
            act()
        except SubsearchError as error:
            self.table.alert = str(error)
        except OSError as error:
            self.table.alert = f'"{error.filename}" can\'t be written: {error.strerror}. Check the folder and the disk.'
        except Exception as error:
            LOG.exception("the panel")
            said = (
                in_words(error) or f"This should not happen ({type(error).__name__}: {error}). Run the notebook again."
            )
            self.table.alert = str(said)

    def _search(self) -> None:
        self.requirement = self.found = self._looked_at = None
        try:
            asked = self.knobs.asked()
            if "capacitance_f" not in asked and not {"rated_v", "rated_ac_v"} & asked.keys():
                raise RequirementError("Nothing is asked. Fill in a capacitance or a voltage, like 47 µF or 25 V.")
            self.requirement = Requirement(**asked)
            with open_to_read(self.catalog) as con:
                found = find(con, [self.requirement])[0]
                status = counts_sentence(found)
            self.found = found
        finally:
            self._show(self.found)
        self.line.value = text(f"<h4>The same in Python</h4><pre>{escape(as_code(asked, BEST))}</pre>")
        self._look()
        self.table.status = status  # the last to change: who reads it finds everything else in its place

    def _show(self, found: Found | None) -> None:
        """The table and the counts; nothing stays that is no longer asked."""
        parts = () if found is None else (*found.kept, *found.open)
        with self.table.hold_trait_notifications():
            self.table.rows = [row(one) for one in parts]
            self.table.status = ""
        self.table.looked_at = key(parts[0]) if parts else ""
        for box in self._of_the_part:
            box.layout.display = None if parts else "none"

    def _parts(self) -> dict[str, Candidate]:
        return {} if self.found is None else {key(one): one for one in (*self.found.kept, *self.found.open)}

    def _look(self) -> None:
        """Explain the part that is looked at, and draw it with those picked."""
        parts, found = self._parts(), self.found
        if found is None or (candidate := parts.get(self.table.looked_at)) is None:
            return
        picked = [parts[one] for one in self.table.picked if one in parts]
        drawn = [candidate, *(one for one in picked if one is not candidate)][:DRAWN]
        with open_to_read(self.catalog) as con:
            lives = life_over(con, found.requirement, drawn)
            answers = replace(found, con=con).why(candidate.part["maker"], candidate.part["part_number"])
        self._looked_at = choice = taken(found, candidate)
        self.chart.chart = life_chart(lives, found.requirement.working_c)
        with_a_line = {life.name for life in lives if life.years is not None}
        self.not_drawn.value = text(not_drawn(drawn, with_a_line, len(picked)))
        self.why.value = why_it_fits(candidate, answers, choice.sentence)
        self.score.value = its_score(candidate)
        self.cautions.value = before_you_take(choice)

    def _take(self) -> None:
        if self._looked_at is not None:
            self.choices[self._looked_at.name] = self._looked_at
            with open_to_read(self.catalog) as con:
                self.shopping = plan(con, list(self.choices.values()))
            self._show_list("Not written yet.")

    def _show_list(self, written: str) -> None:
        self.listed.value = the_list(self.choices.values(), self.shopping, written)

    def _write(self) -> None:
        if not self.choices or self.shopping is None:
            raise RequirementError("The list is empty. Take a part first.")
        self._written = self._written or _unused(self.folder)
        write_csv(self.shopping, self._written)
        self._show_list(f"Written: {self._written.resolve()}")


def _side_by_side(*boxes: Any) -> Any:
    """Boxes beside each other where the window is wide enough, else below each other."""
    return widgets.Box(boxes, layout=widgets.Layout(display="flex", flex_flow="row wrap", grid_gap="4px 24px"))


def _unused(folder: Path) -> Path:
    """A name that is free: a list of an earlier day is never written over."""
    names = chain(["shopping-list.csv"], (f"shopping-list-{number}.csv" for number in count(2)))
    return next(file for file in (folder / name for name in names) if not file.exists())
