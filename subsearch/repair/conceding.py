"""Concessions the builder made on one position: which fields they move, and when they hold no longer."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from types import UnionType
from typing import Any, get_args, get_origin

from subsearch.errors import RepairError, known_word
from subsearch.reading.quoting import quoted
from subsearch.repair.plain_values import member, of_kind, several
from subsearch.search.concessions import MEASURES
from subsearch.search.near_misses import Concession
from subsearch.search.requirement import Requirement


def _kinds(declared: Any) -> tuple[type, ...]:
    """The types of values that a field may hold; a whole number may stand for any."""
    one_of = get_args(declared) if isinstance(declared, UnionType) else (declared,)
    kinds = tuple(get_origin(one) or one for one in one_of)
    return (*kinds, int) if float in kinds else kinds


CONCEDABLE = tuple(dict.fromkeys(name for measure in MEASURES for name in measure.fields))
KINDS = {one.name: _kinds(one.type) for one in fields(Requirement)}
Fields = tuple[tuple[str, Any], ...]
RESTS_ON: Mapping[str, tuple[str, ...]] = {  # what is conceded on the first was allowed by how the others stood
    "rated_v": ("voltage_measured",),
    "rated_ac_v": ("safety_class",),
    "capacitance_high_f": ("safety_class",),
    "conditions": ("safety_class",),
    "bent_nearer_mm": ("hole_spacing_mm",),
}


@dataclass(frozen=True)
class Conceded:
    """One concession: in words, the fields of a requirement with the values they take, and what it rests on.

    `rests_on` holds what the position asked in these fields, and in those that decide whether they may be conceded,
    before any concession.
    """

    sentence: str
    fields: Fields
    rests_on: Fields = ()

    def holds(self, asked: Requirement) -> bool:
        """Whether the position still asks what was conceded on; `asked` is without concessions."""
        return all(getattr(asked, name) == value for name, value in self.rests_on)

    def to_json(self) -> dict[str, Any]:
        """The concession in the plain values that JSON knows."""
        return {"sentence": self.sentence, "fields": _plain(self.fields), "rests_on": _plain(self.rests_on)}

    @staticmethod
    def from_json(found: Any) -> "Conceded":
        """The concession that `to_json` gave.

        Raises:
            RepairError: these are not the values of one.
            UnknownNameError: a field is none of a requirement's.
        """
        moved, rests_on = (_fields(member(found, name, list)) for name in ("fields", "rests_on"))
        for name, _ in moved:
            known_word(name, CONCEDABLE, "a field on which anything is conceded")
        return Conceded(member(found, "sentence", str), moved, rests_on)


def conceded(now: Requirement, concession: Concession, before: Iterable[Conceded]) -> Conceded:
    """A near miss's concession as one made on this requirement, on top of those made before.

    >>> now = Requirement(headroom_mm=12.0)
    >>> more = Concession(("body",), replace(now, headroom_mm=13.5), 1, None, "1.5 mm more headroom", "")
    >>> conceded(now, more, ())
    Conceded(sentence='1.5 mm more headroom', fields=(('headroom_mm', 13.5),), rests_on=(('headroom_mm', 12.0),))
    """
    then = concession.requirement
    moved = tuple(one.name for one in fields(now) if getattr(now, one.name) != getattr(then, one.name))
    grounds = dict.fromkeys((*moved, *(other for name in moved for other in RESTS_ON.get(name, ()))))
    first = {name: value for one in before for name, value in one.rests_on}
    rests_on = tuple((name, first.get(name, getattr(now, name))) for name in grounds)
    return Conceded(concession.words, tuple((name, getattr(then, name)) for name in moved), rests_on)


def put_on(asked: Requirement, made: Iterable[Conceded]) -> Requirement:
    """The requirement with these concessions, a later one over an earlier.

    >>> put_on(Requirement(headroom_mm=12.0), [Conceded("1.5 mm more headroom", (("headroom_mm", 13.5),))]).headroom_mm
    13.5
    """
    moved = {name: value for one in made for name, value in one.fields}
    return replace(asked, **moved) if moved else asked


def without(made: Iterable[Conceded], gone: Iterable[Conceded]) -> tuple[Conceded, ...]:
    """The concessions that stay: neither gone themselves nor made on top of one that is gone, in one of its fields.

    >>> low, high = Conceded("a", (("headroom_mm", 13.0),)), Conceded("b", (("headroom_mm", 14.0),))
    >>> without((low, high), (low,)), without((low, high), (high,)) == (low,)
    ((), True)
    """
    gone, stay, lost = tuple(gone), [], set[str]()
    for one in made:
        names = {name for name, _ in one.fields}
        if one in gone or names & lost:
            lost |= names
        else:
            stay.append(one)
    return tuple(stay)


def _plain(pairs: Fields) -> list[list[Any]]:
    return [[name, list(value) if isinstance(value, tuple) else value] for name, value in pairs]


def _fields(found: list[Any]) -> Fields:
    """Pairs of a field's name and a value; a list is a tuple again."""
    return tuple((name, _value(name, value)) for name, value in (several(pair, 2) for pair in found))


def _value(name: Any, found: Any) -> Any:
    """A value of the kind that this field of a requirement holds."""
    kinds = KINDS[known_word(of_kind(name, str), KINDS, "a field of a requirement")]
    value = tuple(of_kind(word, str) for word in found) if isinstance(found, list) else found
    if not isinstance(value, kinds):
        raise RepairError(f"{name} can't be {quoted(repr(found))}")
    return value
