"""The whole state of the panel: which position is shown, what is tried at each, what is compared, what is taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from subsearch.repair.plain_values import member, of_kind, several
from subsearch.repair.trial import Trial

Part = tuple[str | None, str]
"""Maker, where the list states one, and part number."""


@dataclass(frozen=True)
class Taken:
    """A part taken for a position, with the trial as it stood then."""

    trial: Trial
    maker: str | None
    part_number: str


@dataclass(frozen=True)
class Bench:
    """The position shown, the trials of those touched, the parts compared at the one shown, and those taken, by name.

    >>> as_found = Trial({"reference": "C7", "capacitance": "47 µF"})
    >>> bench = Bench("C7").trying(as_found.changed("headroom_mm", "12"), as_found)
    >>> bench = bench.taking(bench.trial(as_found), "Mill", "Hollow 1")
    >>> bench.trial(as_found).cells["headroom_mm"], bench.taken["C7"].part_number
    ('12', 'Hollow 1')
    """

    shown: str = ""
    trials: Mapping[str, Trial] = field(default_factory=dict)
    compared: tuple[Part, ...] = ()
    taken: Mapping[str, Taken] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for name in ("trials", "taken"):
            object.__setattr__(self, name, MappingProxyType(dict(getattr(self, name))))

    def __hash__(self) -> int:
        return hash((self.shown, frozenset(self.trials.items()), self.compared, frozenset(self.taken.items())))

    def trial(self, as_found: Trial) -> Trial:
        """What is tried at the position shown; `as_found` where nothing is."""
        return self.trials.get(self.shown, as_found)

    def showing(self, name: str) -> "Bench":
        """With that position shown; parts compared at another one are compared no longer."""
        return self if name == self.shown else replace(self, shown=name, compared=())

    def trying(self, trial: Trial, as_found: Trial) -> "Bench":
        """With that trial at the position shown; one that is as it was found counts as untouched."""
        others = {name: one for name, one in self.trials.items() if name != self.shown}
        return replace(self, trials=others if trial == as_found else {**others, self.shown: trial})

    def comparing(self, *parts: Part) -> "Bench":
        """With exactly these parts compared, each once, in this order."""
        return replace(self, compared=tuple(dict.fromkeys(parts)))

    def taking(self, trial: Trial, maker: str | None, part_number: str) -> "Bench":
        """With a part taken for the position that is tried so, in place of one taken before."""
        return replace(self, taken={**self.taken, trial.name: Taken(trial, maker, part_number)})

    def giving_back(self, name: str) -> "Bench":
        """Without the part taken for that position, where there is one."""
        return replace(self, taken={one: part for one, part in self.taken.items() if one != name})

    def to_json(self) -> dict[str, Any]:
        """The bench in the plain values that JSON knows."""
        return {
            "shown": self.shown,
            "trials": {name: one.to_json() for name, one in self.trials.items()},
            "compared": [list(part) for part in self.compared],
            "taken": {
                name: {"trial": one.trial.to_json(), "part": [one.maker, one.part_number]}
                for name, one in self.taken.items()
            },
        }

    @staticmethod
    def from_json(found: Any) -> "Bench":
        """The bench that `to_json` gave.

        Raises:
            RepairError: these are not the values of a bench.
            UnknownNameError: a heading or a field is none of ours.
        """
        return Bench(
            member(found, "shown", str),
            {name: Trial.from_json(one) for name, one in member(found, "trials", dict).items()},
            tuple(_part(of_kind(one, list)) for one in member(found, "compared", list)),
            {
                name: Taken(Trial.from_json(member(one, "trial", dict)), *_part(member(one, "part", list)))
                for name, one in member(found, "taken", dict).items()
            },
        )


def _part(found: list[Any]) -> Part:
    maker, part_number = several(found, 2)
    return None if maker is None else of_kind(maker, str), of_kind(part_number, str)
