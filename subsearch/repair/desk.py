"""What the builder does with one repair, or with a position by itself, step by step: tried, conceded, compared, taken.

Every step can be undone, and all of it is kept in the folder for the next time. Without a positions.csv in the folder
there is one position, whose name is what is typed.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from subsearch.errors import RepairError, RequirementError, SubsearchError, known_word
from subsearch.repair.asking import Asked
from subsearch.repair.bench import Bench, Part
from subsearch.repair.choosing import Choice
from subsearch.repair.folder import read_repair
from subsearch.repair.held import held_by
from subsearch.repair.history import History
from subsearch.repair.pins import Pins
from subsearch.repair.position_rows import POSITIONS
from subsearch.repair.saved_bench import FILE, Saved, read, save, set_aside
from subsearch.repair.trial import Trial, ask_trial, trials_of
from subsearch.search.near_misses import Concession
from subsearch.search.requirement import Requirement

POSITION = "position"  # the name under which a cell says which of a repair's positions is shown
ALONE = ""  # the name under which a position by itself is kept


class Desk:
    """The state of a panel on one folder; `given` are the texts of the notebook's cell, by heading of positions.csv.

    What was kept in the folder is taken up again (`left` says when it was left), but what the cell says otherwise than
    then wins. Where that file can't be read, `trouble` says so, and nothing is kept until the builder starts again.

    Raises:
        RepairError: there is no such folder, or its repair can't be read.
        UnknownNameError: a given heading, or the position, is not known; the text names the nearest.
    """

    def __init__(self, folder: Path, given: Mapping[str, str]) -> None:
        if not folder.is_dir():
            raise RepairError(f'There is no folder "{folder}". Make it first, or name another.')
        self.folder, self._given = folder, dict(given)
        self.repair = read_repair(folder) if (folder / POSITIONS).exists() else None
        self._recorded = {ALONE: Trial({})} if self.repair is None else trials_of(folder)
        self._pins = Pins(folder, self._recorded)
        self.trouble, self.left = "", None
        self._first = self._changed_by(Bench(next(iter(self._recorded))), self._given)
        self._history = History(self._first)
        self._take_up()

    left: datetime | None

    def _take_up(self) -> None:
        try:
            saved = read(self.folder)
        except RepairError as error:
            self.trouble = str(error)
            return
        if saved is not None:
            self.left = saved.at
            bench = replace(saved.bench, trials=saved.trials_now(self._recorded, self.repair))
            bench = bench if bench.shown in self._recorded else bench.showing(self._first.shown)
            self._history = History(self._changed_by(bench, self._said_anew(saved)))

    def _said_anew(self, saved: Saved) -> dict[str, str]:
        """What the cell says otherwise than then, and of which position: all it says, where that is another one."""
        anew = saved.changed(self._given)
        if not anew or POSITION not in self._given:
            return anew
        return {**(self._given if POSITION in anew else {POSITION: self._given[POSITION]}), **anew}

    def _changed_by(self, bench: Bench, texts: Mapping[str, str]) -> Bench:
        """The bench with these texts of the cell in it."""
        texts = dict(texts)
        if self.repair is not None and (wanted := texts.pop(POSITION, "")):
            bench = bench.showing(known_word(wanted, self._recorded, "a position of this repair"))
        trial = bench.trial(self._recorded[bench.shown])
        for heading, text in texts.items():
            trial = trial.changed(heading, text, self.repair)
        return bench.trying(trial, self._recorded[bench.shown])

    @property
    def _now(self) -> Bench:
        return self._history.now

    @property
    def positions(self) -> tuple[str, ...]:
        """The names of the repair's positions; none for a position by itself."""
        return () if self.repair is None else tuple(self._recorded)

    @property
    def name(self) -> str:
        """The position that is shown."""
        return self._now.shown

    @property
    def trial(self) -> Trial:
        """That position as it is tried."""
        return self._now.trial(self._recorded[self._now.shown])

    @property
    def compared(self) -> tuple[Part, ...]:
        """The parts that are compared."""
        return self._now.compared

    def has_taken(self, part: Part) -> bool:
        """Whether that part is the one taken for the position that is shown."""
        one = self._now.taken.get(self.trial.name)
        return one is not None and (one.maker, one.part_number) == part

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to undo."""
        return self._history.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether a step was undone."""
        return self._history.can_redo

    def ask(self) -> Asked:
        """What the position that is shown asks; raises what `ask_trial` raises."""
        return ask_trial(self.trial, self.repair)

    def bought(self) -> tuple[list[tuple[Asked, Part]], dict[str, str]]:
        """What was taken, each with what its position asked then; and by position why it can't be asked any more."""
        wanted, gone = [], {}
        for name, one in self._now.taken.items():
            try:
                wanted.append((ask_trial(one.trial, self.repair), (one.maker, one.part_number)))
            except SubsearchError as error:
                gone[name] = str(error)
        return wanted, gone

    def values(self) -> dict[str, str]:
        """The texts of the position that is shown, what holds for it from its repair, and its name among the others."""
        where = {POSITION: self.name} if self.repair is not None else {}
        held = {} if self.repair is None else held_by(self.repair, self.trial)
        return {**where, **held, **self.trial.cells}

    def type(self, heading: str, text: str) -> None:
        """Another text under a heading; what holds already is no change."""
        if text.strip() != self.values().get(heading, "").strip():
            self._try(self.trial.changed(heading, text, self.repair), heading)

    def show(self, name: str) -> None:
        """Another position of the repair."""
        self._do(self._now.showing(known_word(name, self._recorded, "a position of this repair")))

    def concede(self, now: Requirement, concession: Concession) -> None:
        """Make a near miss's concession."""
        self._try(self.trial.conceding(now, concession))

    def take_back(self, index: int) -> None:
        """Take a concession back."""
        self._try(self.trial.taking_back(index))

    def compare(self, parts: Sequence[Part]) -> None:
        """Compare these parts."""
        self._do(self._now.comparing(*parts), "compared")

    def take(self, choice: Choice) -> None:
        """Take a part for the position that is shown, and pin it in the repair's positions.csv.

        Raises:
            RequirementError: it may not be taken.
            RepairError: positions.csv can't be read or written; then nothing is taken.
        """
        if choice.candidate is None:
            raise RequirementError(f"{choice.name}: no part is chosen, so none is taken.")
        part = choice.candidate.part
        self._do(self._now.taking(self.trial, part["maker"], part["part_number"]))

    def take_off(self, name: str) -> None:
        """Take a position's part off again."""
        self._do(self._now.giving_back(name))

    def start_again(self) -> None:
        """The position shown as the cell or positions.csv has it; a kept file that can't be read is set aside."""
        if self.trouble and (self.folder / FILE).exists():
            set_aside(self.folder)
        self.trouble = ""
        self._try(self._first.trials.get(self.name, self._recorded[self.name]))

    def undo(self) -> None:
        """Undo the last step."""
        self._go(self._history.undone())

    def redo(self) -> None:
        """Do again what was undone last."""
        self._go(self._history.redone())

    def save(self) -> None:
        """Keep what was done in the folder, if anything was or is kept there.

        Raises:
            RepairError: what is kept there was damaged meanwhile; then nothing is kept until the builder starts again.
        """
        if self.trouble or (self._now == self._first and not (self.folder / FILE).exists()):
            return
        found = {name: self._recorded[name].cells for name in self._now.trials if name in self._recorded}
        try:
            save(self.folder, self._now, self._given, found)
        except RepairError as error:
            self.trouble = str(error)
            raise

    def _try(self, trial: Trial, key: str = "") -> None:
        self._do(self._now.trying(trial, self._recorded[self.name]), f"{self.name} {key}" if key else "")

    def _do(self, bench: Bench, key: str = "") -> None:
        self._go(self._history.doing(bench, key))

    def _go(self, history: History[Bench]) -> None:
        """Move to another state; the folder first, so that nothing changes here where it can't be written."""
        if self.repair is not None:
            self._pins.follow(self._now.taken, history.now.taken)
        self._history = history
