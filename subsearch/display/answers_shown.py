"""The panel's answers: it asks the catalog beside the notebook, and shows what comes back as soon as it is there.

First the table, the counts and the drawing; then what is told of the part that is looked at; last what lies around it.
"""

import asyncio
from collections.abc import Callable, Sequence
from functools import partial

from subsearch.catalog.background import Background, running_loop
from subsearch.catalog.kept_open import KeptOpen
from subsearch.display.panel_box import PanelBox
from subsearch.display.panel_rows import counts_sentence, key, row
from subsearch.display.panel_told import MOST_DRAWN, show_about, show_around, show_no_part, show_part, still_looking
from subsearch.repair import inquiry
from subsearch.repair.asking import Asked
from subsearch.repair.choosing import Choice
from subsearch.repair.single import looked_at
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found

PAUSE_S = 0.15  # the table and the drawing follow a slider; the rest waits until it rests
LONG_S = 0.4  # what takes longer says so, and can be stopped
LOOKING = "Looking at what one concession would let in, and what two parts could do in place of one …"
NOT_SEEN = "What a concession would let in is not known."
STOPPED, LOOK_AGAIN = f"Stopped. {NOT_SEEN}", "Look again"


class Answers:
    """What was found for what is asked now, what is looked at in it, and the widgets that show it.

    `asked`, `found` and `looked_at` are None while nothing is asked or a control can't be read; `around` is None until
    it is known.
    """

    def __init__(self, catalog: KeptOpen, box: PanelBox, failed: Callable[[Exception], None]) -> None:
        self._box = box
        self._failed = failed
        self._searching = Background(catalog, self._not_found)
        self._telling = Background(catalog, failed)
        self._beyond = Background(catalog, self._not_seen)
        self._wanted: Asked | None = None  # what was asked last, whether it is answered or not
        self.asked: Asked | None = None
        self.found: Found | None = None
        self.looked_at: Choice | None = None
        self.about: inquiry.About | None = None
        self.around: inquiry.Around | None = None
        self._beyond_of: Found | None = None  # the answer around which was looked, or is
        self.picked: tuple[str, ...] = ()
        self._waiting: asyncio.TimerHandle | None = None
        self._followed = ""  # the part that was turned to: looked at as long as it is found; else the first

    @property
    def parts(self) -> dict[str, Candidate]:
        """The parts in the table by what names them there."""
        return {} if self.found is None else {key(one): one for one in (*self.found.kept, *self.found.open)}

    @property
    def drawn(self) -> list[Candidate]:
        """The part that is looked at, and those compared with it."""
        first = None if self.looked_at is None else self.looked_at.candidate
        picked = [one for name in self.picked if (one := self.parts.get(name)) is not None and one != first]
        return [] if first is None else [first, *picked][:MOST_DRAWN]

    def ask(self, asked: Asked, at_once: bool = False) -> None:
        """Search for what a position asks, beside the notebook or at once."""
        requirement = asked.requirement
        if requirement is None:
            self.clear()
            return
        if not at_once and asked == self._wanted:
            return  # as where a part was taken: what is shown stays
        self._wanted = asked
        self._wait_no_more()
        self._beyond.stop()
        still_looking(self._box)
        start = self._searching.now if at_once else self._searching.start
        start(partial(inquiry.search, requirement=requirement), partial(self._show, asked))
        self._later(self._say_searching)

    def clear(self) -> None:
        """Show nothing, so that nothing stays that is no longer asked."""
        self.rest()
        self._show(None, None)

    def rest(self) -> None:
        """End all work on the catalog, and let what is shown stay."""
        self._wanted = None
        self._wait_no_more()
        for one in (self._searching, self._telling, self._beyond):
            one.stop()

    def stop(self) -> None:
        """End a search that takes long; what was found before is shown no longer."""
        self.clear()
        self._box.table.status = "Stopped. Change anything to search again."

    def turn_to(self, name: str) -> None:
        """Look at another part of the table."""
        if (candidate := self.parts.get(name)) is not None:
            self._followed = name
            self._look(candidate)

    def follow(self, part: Candidate) -> None:
        """Look at this part once it is found."""
        self._followed = key(part)

    def compare(self, picked: Sequence[str]) -> None:
        """Compare these parts with the one that is looked at."""
        self.picked = tuple(picked)
        self._tell()

    def pick(self, picked: Sequence[str]) -> None:
        """Pick these parts in the table, and compare them."""
        if tuple(picked) != self.picked:
            self._box.show_picked([one for one in picked if one in self.parts])
            self.compare(picked)

    def press_beyond(self) -> None:
        """Stop looking at what lies around the answer, or begin it again."""
        if self._beyond.busy:
            self._beyond.stop()
            self._box.say_near(STOPPED, LOOK_AGAIN)
        else:
            self._look_beyond()

    def _show(self, asked: Asked | None, searched: inquiry.Searched | None) -> None:
        box = self._box
        self._beyond.stop()  # what was told meanwhile of the answer before may have begun it
        self.asked, self.looked_at, self.about, self.around = asked, None, None, None
        self.found = None if searched is None else searched.found
        parts = self.parts
        box.stop.disabled = True
        looked_at = self._followed if self._followed in parts else next(iter(parts), "")
        self._followed = self._followed if looked_at == self._followed else ""
        box.show_rows([row(one) for one in parts.values()], looked_at, [one for one in self.picked if one in parts])
        if looked_at:
            self._look(parts[looked_at])
        else:
            show_no_part(box, asked, searched)
        # the last to change: who reads it finds everything else in its place
        box.table.status = "" if searched is None else counts_sentence(searched)
        if searched is not None and not self.looked_at:
            self._look_beyond()

    def _look(self, candidate: Candidate) -> None:
        if self.asked is not None and self.found is not None:
            self.looked_at = looked_at(self.found, candidate, self.asked)
            show_part(self._box, self.found.requirement, self.looked_at)
            self._tell()

    def _tell(self) -> None:
        found, choice, drawn = self.found, self.looked_at, self.drawn
        if found is not None and choice is not None:
            self.about = None
            show = partial(self._show_about, found, choice, drawn)
            self._after(PAUSE_S, partial(self._telling.start, partial(inquiry.about, found=found, drawn=drawn), show))

    def _show_about(self, found: Found, choice: Choice, drawn: Sequence[Candidate], about: inquiry.About) -> None:
        if choice is self.looked_at:  # else another one was turned to meanwhile
            self.about = about
            show_about(self._box, choice.sentence, found, drawn, about)
            if self._beyond_of is not found:  # looked at once, however many parts are turned to; stopped is stopped
                self._look_beyond()

    def _look_beyond(self) -> None:
        if self.asked is not None and self.found is not None:
            self._beyond_of = self.found
            self._beyond.start(
                partial(inquiry.around, asked=self.asked, found=self.found), partial(self._show_around, self.found)
            )
            self._later(self._say_looking)

    def _show_around(self, found: Found, around: inquiry.Around) -> None:
        if self.asked is not None and found is self.found:  # else something else was asked meanwhile
            self.around = around
            show_around(self._box, self.asked, around)

    def _not_found(self, error: Exception) -> None:
        self.clear()  # what was found before is not the answer to what is asked now
        self._failed(error)

    def _not_seen(self, error: Exception) -> None:
        self._box.say_near(NOT_SEEN, LOOK_AGAIN)
        self._failed(error)

    def _say_searching(self) -> None:
        if self._takes_long(self._searching, self._say_searching):
            self._box.table.status = "Searching …"
            self._box.stop.disabled = False

    def _say_looking(self) -> None:
        if self._takes_long(self._beyond, self._say_looking) and self.around is None:
            self._box.say_near(LOOKING, "Stop")

    def _takes_long(self, work: Background, say: Callable[[], None]) -> bool:
        """Whether work has gone on for long; where what goes on began later than what was to be said of, ask again."""
        if 0 < work.busy_s < LONG_S - 0.01:
            self._later(say)
            return False
        return work.busy

    def _after(self, wait_s: float, act: Callable[[], None]) -> None:
        """Do it after a pause, unless something else is to be done by then; at once where no loop runs."""
        self._wait_no_more()
        if loop := running_loop():
            self._waiting = loop.call_later(wait_s, act)
        else:
            act()

    def _wait_no_more(self) -> None:
        if self._waiting is not None:
            self._waiting.cancel()

    def _later(self, say: Callable[[], None]) -> None:
        if loop := running_loop():  # else nothing runs beside the caller, so it is done already
            loop.call_later(LONG_S, say)
