"""The notebook's panel: it edits a position, shows what `find` returned, and keeps a list. It decides nothing."""

import asyncio
from collections.abc import Callable
from functools import partial
from html import escape
from pathlib import Path
from typing import Any

from IPython.display import display

from subsearch.catalog.background import running_loop
from subsearch.catalog.kept_open import KeptOpen
from subsearch.display.answers_shown import Answers
from subsearch.display.by_hand import ByHand
from subsearch.display.controls import LABELS
from subsearch.display.explained import text
from subsearch.display.list_shown import ListShown
from subsearch.display.mishaps import guarded
from subsearch.display.panel_box import PanelBox
from subsearch.display.panel_page import write_page
from subsearch.display.panel_rows import named, part_of
from subsearch.display.panel_told import kept, show_asked, show_conceded
from subsearch.errors import CellsError, RequirementError, SubsearchError
from subsearch.repair.choosing import Choice
from subsearch.repair.desk import POSITION, Desk
from subsearch.repair.single import taken
from subsearch.search.candidates import Found
from subsearch.search.requirement import Requirement

IDLE_S = 1.0  # so long the catalog stays open for the next move of a slider
SAVE_S = 0.5
LET_GO_S = 5.0  # so long work that was ended may take to let go of the catalog
LATE = "What is shown is not the answer to what is asked now. Wait for the search, then press again."
NOTHING = "Nothing is asked. Fill in a capacitance or a voltage, like 47 µF or 25 V."


class Panel:
    """A panel over one catalog file; each control may be given its first text by its column of positions.csv.

    `folder` is where it keeps its state and writes the list. If it is a repair's, its positions are there to choose
    from, `position` is the first of them to show, and a part that is taken is pinned in its positions.csv.
    `requirement` and `found` are what it asks and shows now (None while a control can't be read); `choices` is what was
    taken, by position.
    """

    def __init__(self, catalog: Path, folder: Path | str = ".", **given: Any) -> None:
        self.catalog = KeptOpen(Path(catalog), IDLE_S if running_loop() else 0.0)
        self.desk = Desk(Path(folder), {name: str(text) for name, text in given.items()})
        self._saving: asyncio.TimerHandle | None = None
        self.box = PanelBox(tuple(self.desk.positions), self._concede, self._take_back, self._take_off)
        self.answers = Answers(self.catalog, self.box, self._failed)
        self.list = ListShown(self.catalog, self.box, self._failed)
        self.by_hand = ByHand(self.catalog.path, self._recorded, self._free_catalog)
        self.box.by_hand.children = (self.by_hand.box,)
        self._wire()
        self._guarded(partial(self._follow, at_once=True))
        if self.desk.trouble:
            self.box.say_alert(self.desk.trouble)

    def _ipython_display_(self) -> None:
        display(self.box.whole)  # type: ignore[no-untyped-call]

    @property
    def requirement(self) -> Requirement | None:
        """What is asked now."""
        return None if self.answers.asked is None else self.answers.asked.requirement

    @property
    def found(self) -> Found | None:
        """What is shown now."""
        return self.answers.found

    @property
    def choices(self) -> dict[str, Choice]:
        """What was taken, by position."""
        return {} if self.list.now is None else {one.name: one for one in self.list.now.choices}

    @property
    def alert(self) -> str:
        """The sentence that says what is wrong now; empty where nothing is."""
        return self.box.table.alert

    def search(self) -> None:
        """Ask what the controls say now, and what the list comes to; done when both are shown."""
        self._guarded(partial(self._follow, at_once=True))

    def _recorded(self, _: str) -> None:
        if not running_loop():
            self.search()

    def _free_catalog(self) -> None:
        """Let go of the catalog, so that it can be written; whatever comes of that, all is asked again then."""
        if loop := running_loop():
            loop.call_soon(self.search)
        self.answers.rest()
        self.list.rest()
        self.catalog.close(LET_GO_S)

    def _wire(self) -> None:
        box, desk = self.box, self.desk
        box.form.observe(lambda change: self._heed(self._typed, change["new"]), names="values")
        box.table.observe(lambda change: self._heed(self.answers.turn_to, change["new"]), names="looked_at")
        box.table.observe(lambda change: self._heed(self._compare, change["new"]), names="picked")
        acts = {box.undo: desk.undo, box.redo: desk.redo, box.anew: desk.start_again, box.take: self._take}
        for button, act in acts.items():
            button.on_click(lambda _, act=act: self._guarded(partial(self._change, act)))
        box.stop.on_click(lambda _: self._guarded(self.answers.stop))
        box.write.on_click(lambda _: self._guarded(partial(self.list.write, desk.folder)))
        box.page.on_click(lambda _: self._guarded(self._write_page))

    def _heed(self, act: Callable[[Any], None], new: Any) -> None:
        """Do what the builder did in the browser; what the panel sets there itself is nothing to heed."""
        if not self.box.setting:
            self._guarded(partial(act, new))

    def _guarded(self, act: Callable[[], None]) -> None:
        """Do something of which an error would be seen by nobody: say it in one sentence in the panel."""
        self.box.table.alert = ""
        guarded(act, self.box.say_alert)

    def _failed(self, error: Exception) -> None:
        def again() -> None:
            raise error

        self._guarded(again)

    def _typed(self, values: dict[str, str]) -> None:
        typed = self.box.typed(values)
        for name in LABELS:
            if name in typed:
                self.desk.type(name, typed[name])
        if POSITION in typed:
            self._change(partial(self.desk.show, typed[POSITION]))
        else:
            self.box.show_values(self.desk.values())
            self._ask()

    def _change(self, act: Callable[[], None]) -> None:
        """Change what is asked otherwise than by a control."""
        act()
        self._follow()

    def _follow(self, at_once: bool = False) -> None:
        """The controls, what is compared and the list follow what the desk holds now."""
        self.box.show_values(self.desk.values())
        self.answers.pick(tuple(map(named, self.desk.compared)))
        self.list.ask(*self.desk.bought(), at_once)
        self._ask(at_once)

    def _concede(self, number: int) -> None:
        around, now = self.answers.around, self.requirement
        if around is None or now is None:
            self._guarded(self.answers.press_beyond)
        else:
            concession = around.near.concessions[number]
            if concession.best is not None:
                self.answers.follow(concession.best)  # its sentence names it
            self._guarded(partial(self._change, partial(self.desk.concede, now, concession)))

    def _take_back(self, number: int) -> None:
        self._guarded(partial(self._change, partial(self.desk.take_back, number)))

    def _take_off(self, number: int) -> None:
        self._guarded(partial(self._change, partial(self.desk.take_off, self.list.names[number])))

    def _compare(self, picked: list[str]) -> None:
        self.desk.compare([part_of(one) for one in picked])
        self.answers.compare(picked)
        self._save_soon()

    def _take(self) -> None:
        choice = self._looked_at()
        if choice is not None and choice.found is not None and choice.candidate is not None:
            self.desk.take(taken(choice.found, choice.candidate, choice.asked))

    def _looked_at(self) -> Choice | None:
        """The part that is looked at; RequirementError where it was found for what is asked no longer."""
        if self.answers.asked is not None and self.answers.asked != self.desk.ask():
            raise RequirementError(LATE)
        return self.answers.looked_at

    def _write_page(self) -> None:
        desk, _ = self.desk, self._looked_at()
        file = write_page(self.answers, desk.trial.conceded, desk.has_taken, self.catalog.path, desk.folder)
        said = f"Written, to open and print: {escape(str(file.resolve()))}"
        self.box.page_said.value = text(f"<p role='status'>{said}</p>")

    def _ask(self, at_once: bool = False) -> None:
        self.box.show_steps(self.desk.can_undo, self.desk.can_redo)
        show_conceded(self.box, self.desk.trial.conceded)
        self._save_soon()
        faults: dict[str, str] = {}
        try:
            asked = self.desk.ask()
        except CellsError as error:
            self.answers.clear()
            faults = dict(error.faults)
            said = "; ".join(f"{LABELS.get(name, name)}: {fault}" for name, fault in error.faults.items())
            raise RequirementError(said) from error
        except SubsearchError:
            self.answers.clear()
            raise
        finally:
            self.box.form.faults = faults
        self.answers.ask(asked, at_once)
        show_asked(self.box, asked, kept(self.desk))
        if asked.requirement is None:
            raise RequirementError(NOTHING)

    def _save_soon(self) -> None:
        """Keep what was done for the next kernel, once the builder pauses."""
        if self._saving is not None:
            self._saving.cancel()
        if loop := running_loop():
            self._saving = loop.call_later(SAVE_S, partial(guarded, self.desk.save, self.box.say_alert))
        else:
            self.desk.save()
