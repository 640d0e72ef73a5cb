"""How a concession is measured: the kinds of measures that the rows of concessions.py are made of.

A measure says, for one part against one need, what would have to be conceded for its condition to be answered yes:
millimetres more, or the value that a field of the need would have to take. Null: no concession of this kind does it.
Names in the SQL are those of criteria.py; how much is lost is told by `cost`, so that pairs can be compared: doublings
of a value, a fifth for each millimetre, a tenth for each kelvin, two for another kind.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from subsearch.search.requirement import Requirement
from subsearch.search.stated import Stated
from subsearch.search.way import WITHIN_MM
from subsearch.search.ways import ROOM, SIDES

Moved = Callable[[Requirement, Any], Requirement]


@dataclass(frozen=True)
class Measure:
    """One kind of concession on one condition.

    `eases` names all conditions it can turn to yes. `nearest` is 1 where the smallest value is the smallest concession,
    −1 where the largest is; `moved` gives the changed requirement for a value, or for the word where `word` is given.
    `fields` are the fields of the need that it changes, and `words` its sentence up to "lets in". It is asked where the
    need states all fields it is `asked_by` (else all of `fields`), and `only` holds. `is_clause`: so are its
    words.
    """

    name: str
    condition: str
    value: str
    words: str
    moved: Moved
    fields: tuple[str, ...]
    cost: str
    nearest: int = 1
    within: str = "abs(value) * 1e-9"
    word: str = "null"
    others: tuple[str, ...] = ()
    asked_by: tuple[str, ...] = ()
    only: str = "true"
    is_clause: bool = False

    @property
    def eases(self) -> tuple[str, ...]:
        """The conditions that it can turn to yes."""
        return self.condition, *self.others

    def asked(self, stated: Stated) -> str:
        """SQL that is true where it may be asked of the need."""
        asked = stated.asked(self.asked_by or self.fields, together=True)
        return asked if asked == "false" or self.only == "true" else f"({asked}) and {self.only}"


def moved(need: Requirement, values: Mapping[str, Any]) -> Requirement:
    """The requirement with these fields changed.

    >>> moved(Requirement(headroom_mm=12.0), {"headroom_mm": 12.5}).headroom_mm
    12.5
    """
    return replace(need, **values)


def limit(field: str, condition: str, value: str, words: str, nearest: int) -> Measure:
    """A field of the need moved to the value that one part has, which must be above 0."""
    return Measure(
        name=field,
        condition=condition,
        value=f"case when {value} > 0 then {value} end",
        words=words,
        moved=lambda need, to: moved(need, {field: to}),
        fields=(field,),
        cost=f"abs(log2(value / need.{field}))",
        nearest=nearest,
    )


def _margins(fields: tuple[str, ...]) -> Measure:
    """So many millimetres more room on these sides at once; on the others it must fit as it is, in one of its ways."""
    rest = [field for field in ROOM if field not in fields]
    holds = [f"(one.{field} is null or one.{field} >= -{WITHIN_MM})" for field in rest]
    fits = " and ".join([*holds, *([] if set(SIDES).isdisjoint(fields) else ["not one.moves"])]) or "true"
    lacking = f"greatest({', '.join(f'-one.{field}' for field in fields)})"
    value = (
        f"list_min(list_transform(ways, lambda one: case when {fits} and {lacking} < 'infinity' then {lacking} end))"
    )
    named = " and ".join(filter(None, [", ".join(ROOM[field] for field in fields[:-1]), ROOM[fields[-1]]]))
    return Measure(
        name=" ".join(fields),
        condition="body",
        value=value,
        words="{by_mm} more headroom" if fields == ("headroom_mm",) else f"{{by_mm}} more room {_where(named)}",
        moved=lambda need, by: moved(need, {field: getattr(need, field) + by for field in fields}),
        fields=fields,
        cost="value / 5",
        within=f"{WITHIN_MM}",
    )


def _where(named: str) -> str:
    return named if named.startswith("across") else f"at {named}"


def sides() -> tuple[Measure, ...]:
    """Each side alone, opposite sides together, every two sides and the headroom, and what else is asked together."""
    across, along, up = SIDES[2:], SIDES[:2], ("headroom_mm",)
    together = [(name,) for name in ROOM] + [along, across, SIDES, (*along, *up)]
    together += [(*across, *up), (*SIDES, *up), ("free_diameter_mm", *up)]
    return tuple(map(_margins, together))


def word_taken(field: str, condition: str, word: str, words: str, value: str) -> Measure:
    """One more word taken in a list of the need; the value is 0 where that lets the part in."""
    return Measure(
        name=field,
        condition=condition,
        value=value,
        words=words,
        moved=lambda need, more: moved(need, {field: (*getattr(need, field), more)}),
        fields=(field,),
        cost="2",
        word=word,
    )


def changed(field: str, condition: str, to: Any, value: str, words: str) -> Measure:
    """A question that is no longer asked, or a leave that is given; the value is 0 where that lets the part in."""
    return Measure(
        name=field,
        condition=condition,
        value=value,
        words=words,
        moved=lambda need, _: moved(need, {field: to}),
        fields=(field,),
        cost="2",
    )
