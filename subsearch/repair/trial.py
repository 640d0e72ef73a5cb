"""One position as it is being tried: its cells as typed, and the concessions made on what they ask."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from subsearch.errors import CellsError, QuantityError, RequirementError, known_word
from subsearch.repair.asking import Asked, ask
from subsearch.repair.conceding import Conceded, conceded, put_on, without
from subsearch.repair.folder import Repair, unknown
from subsearch.repair.plain_values import member, of_kind
from subsearch.repair.position_rows import rows
from subsearch.repair.positions import COLUMNS, Position, name_of, values_of
from subsearch.search.near_misses import Concession
from subsearch.search.requirement import Requirement
from subsearch.units import read_quantity

UNNAMED = "position"


def _whole(text: str) -> int:
    value = read_quantity(text, "")
    if not value.is_integer():
        raise QuantityError(f'"{text}" is no whole number. Write how many there are, like 2.')
    return int(value)


_READERS: Mapping[str, Callable[[str], float]] = {
    "pieces": _whole,
    "hours_a_day": lambda text: read_quantity(text, "h"),
    "years_wanted": lambda text: read_quantity(text, ""),
}
COMMON = tuple(_READERS)
"""What stands in repair.toml in a whole repair, and in a cell of a position that is tried by itself."""
HEADINGS = (*COLUMNS, *COMMON)


@dataclass(frozen=True)
class Trial:
    """A position as it is tried: texts by heading of positions.csv or of COMMON, and the concessions made.

    A blank text asks nothing and is left out. Equal and hashed by value.

    Raises:
        UnknownNameError: a heading is none of ours; the text names the nearest.

    >>> Trial({"capacitance": "47 µF", "note": ""}) == Trial({"capacitance": "47 µF"})
    True
    """

    cells: Mapping[str, str]
    conceded: tuple[Conceded, ...] = ()

    def __post_init__(self) -> None:
        kept = {known_word(heading, HEADINGS, "a heading"): text for heading, text in self.cells.items()}
        object.__setattr__(self, "cells", MappingProxyType({name: text for name, text in kept.items() if text.strip()}))

    def __hash__(self) -> int:
        return hash((frozenset(self.cells.items()), self.conceded))

    @property
    def name(self) -> str:
        """The reference with its card, as `Position.name`."""
        reference, card = (self.cells.get(heading, "").strip() for heading in ("reference", "card"))
        return name_of(reference or UNNAMED, card)

    def changed(self, heading: str, text: str, repair: Repair | None = None) -> "Trial":
        """With another text under a heading, and without the concessions that held on what it changes."""
        return replace(self, cells={**self.cells, heading: text}).settled(repair)

    def settled(self, repair: Repair | None = None) -> "Trial":
        """Without the concessions on what the position no longer asks as it did; all stay while it can't be read."""
        try:
            asked = ask_trial(replace(self, conceded=()), repair).requirement
        except (CellsError, RequirementError):
            return self
        if asked is None:
            return self
        return replace(self, conceded=without(self.conceded, [one for one in self.conceded if not one.holds(asked)]))

    def found_again(self, before: Mapping[str, str], now: Mapping[str, str]) -> "Trial":
        """With what is recorded now, where nothing else is tried than what was recorded before.

        >>> Trial({"marking": "47/25", "headroom_mm": "9"}).found_again({"marking": "47/25"}, {"note": "hums"}).cells
        mappingproxy({'note': 'hums', 'headroom_mm': '9'})
        """
        tried = {heading: text for heading, text in self.cells.items() if text != before.get(heading, "")}
        emptied = {heading: "" for heading in before if heading not in self.cells}
        return replace(self, cells={**now, **tried, **emptied})

    def conceding(self, now: Requirement, concession: Concession) -> "Trial":
        """With a near miss's concession on the requirement that this trial asks now."""
        return replace(self, conceded=(*self.conceded, conceded(now, concession, self.conceded)))

    def taking_back(self, index: int) -> "Trial":
        """Without the concession of that place, and without those made on top of it in the same fields."""
        return replace(self, conceded=without(self.conceded, (self.conceded[index],)))

    def to_json(self) -> dict[str, Any]:
        """The trial in the plain values that JSON knows."""
        return {"cells": dict(self.cells), "conceded": [one.to_json() for one in self.conceded]}

    @staticmethod
    def from_json(found: Any) -> "Trial":
        """The trial that `to_json` gave.

        Raises:
            RepairError: these are not the values of a trial.
            UnknownNameError: a heading or a field is none of ours.

        >>> trial = Trial({"pieces": "2"}, (Conceded("taking paper as well", (("technologies", ("film", "paper")),)),))
        >>> Trial.from_json(trial.to_json()) == trial
        True
        """
        cells = {heading: of_kind(text, str) for heading, text in member(found, "cells", dict).items()}
        return Trial(cells, tuple(map(Conceded.from_json, member(found, "conceded", list))))


def trials_of(folder: Path) -> dict[str, Trial]:
    """Each position of a repair's folder as it stands there, by its name.

    Raises:
        RepairError: positions.csv can't be read.
    """
    return {trial.name: trial for trial in map(Trial, rows(folder))}


def faults(trial: Trial, repair: Repair | None = None) -> dict[str, str]:
    """By heading a sentence for each text that can't be read, or names what the repair does not have.

    >>> faults(Trial({"headroom_mm": "0", "pieces": "2"}))
    {'headroom_mm': '"0" is not above 0. Write a positive size or leave it empty.'}
    """
    return _read(trial, repair)[2]


def ask_trial(trial: Trial, repair: Repair | None = None) -> Asked:
    """What a trial asks: as a position of the repair, else by itself; its concessions on top.

    What is common to the repair holds for it, unless a cell of COMMON says otherwise.

    Raises:
        CellsError: texts can't be read; its `faults` tell each by its heading.
        RequirementError: the position contradicts itself, or wants more life than the ceiling.

    >>> asked = ask_trial(Trial({"reference": "C7", "capacitance": "47 µF", "pieces": "2"})).requirement
    >>> asked.reference, asked.pieces, asked.hours_a_day
    ('C7', 2, 24.0)
    """
    values, common, wrong = _read(trial, repair)
    if wrong:
        raise CellsError(trial.name, wrong)
    position = Position(**{"reference": UNNAMED} | values)
    whole = _alone() if repair is None else repair
    position = whole.placed(position)
    asked = ask(_with(whole, common, position), position)
    if asked.requirement is None:
        return asked
    return replace(asked, requirement=put_on(asked.requirement, trial.conceded))


def note_of(trial: Trial) -> str:
    """The concessions as one line of a note; empty where none was made.

    >>> note_of(Trial({}, (Conceded("1.5 mm more headroom", ()), Conceded("waiting for delivery", ()))))
    'Conceded: 1.5 mm more headroom; waiting for delivery.'
    """
    said = "; ".join(" ".join(one.sentence.split()).rstrip(",.") for one in trial.conceded)
    return f"Conceded: {said}." if said else ""


def _read(trial: Trial, repair: Repair | None) -> tuple[dict[str, Any], dict[str, float], dict[str, str]]:
    """The position's values by field, those of COMMON, and what can't be read."""
    values, wrong = values_of({heading: text for heading, text in trial.cells.items() if heading in COLUMNS})
    common: dict[str, float] = {}
    for name in COMMON:
        if text := trial.cells.get(name, ""):
            try:
                common[name] = _READERS[name](text)
            except QuantityError as error:
                wrong[name] = str(error)
    if repair is not None:
        for name, known in (("card", repair.card_counts), ("section", repair.section_c)):
            if said := unknown(name, values.get(name), known):
                wrong[name] = f"{said[0].upper()}{said[1:]}"
    return values, common, wrong


def _alone() -> Repair:
    """The repair that a position by itself stands in: one of it, all day, no life wanted."""
    return Repair(Path(), "", "", 24.0, None, {}, {}, ())


def _with(repair: Repair, common: Mapping[str, float], position: Position) -> Repair:
    counts = dict(repair.card_counts)
    if "pieces" in common:
        counts[position.card or ""] = int(common["pieces"])
    return replace(
        repair,
        card_counts=counts,
        hours_a_day=common.get("hours_a_day", repair.hours_a_day),
        years_wanted=common.get("years_wanted", repair.years_wanted),
    )
