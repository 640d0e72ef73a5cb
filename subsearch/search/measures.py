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
from subsearch.search.ways import UPRIGHT, WAYS, WITHIN_MM, Margin, Way

Moved = Callable[[Requirement, Any], Requirement]


@dataclass(frozen=True)
class Measure:
    """One kind of concession on one condition.

    `eases` names all conditions it can turn to yes. `nearest` is 1 where the smallest value is the smallest concession,
    −1 where the largest is; `moved` gives the changed requirement for a value, or for the word where `word` is given.
    `fields` are the fields of the need that it changes, and `words` its sentence up to "lets in".
    """

    name: str
    condition: str
    asked: str
    value: str
    words: str
    moved: Moved
    fields: tuple[str, ...]
    cost: str
    nearest: int = 1
    within: str = "abs(value) * 1e-9"
    word: str = "null"
    others: tuple[str, ...] = ()

    @property
    def eases(self) -> tuple[str, ...]:
        """The conditions that it can turn to yes."""
        return self.condition, *self.others


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
        asked=f"need.{field} is not null",
        value=f"case when {value} > 0 then {value} end",
        words=words,
        moved=lambda need, to: moved(need, {field: to}),
        fields=(field,),
        cost=f"abs(log2(value / need.{field}))",
        nearest=nearest,
    )


def _margins(margins: tuple[Margin, ...]) -> Measure:
    """So many millimetres more room on these sides at once; on the others it must fit as it is."""
    fields = tuple(margin.asked_by for margin in margins)
    short = " ".join(f"when {_short(way, fields)} is not null then {_short(way, fields)}" for way in WAYS)
    value = f"case {short} end" if len(WAYS) == 1 else f"least({', '.join(_short(way, fields) for way in WAYS)})"
    named = " and ".join(filter(None, [", ".join(m.words for m in margins[:-1]), margins[-1].words]))
    return Measure(
        name=" ".join(fields),
        condition="body",
        asked=" and ".join(f"need.{field} is not null" for field in fields),
        value=value,
        words="{by_mm} more headroom" if fields == ("headroom_mm",) else f"{{by_mm}} more room {_where(named)}",
        moved=lambda need, by: moved(need, {field: getattr(need, field) + by for field in fields}),
        fields=fields,
        cost="value / 5",
        within=f"{WITHIN_MM}",
    )


def _where(named: str) -> str:
    return named if named.startswith("across") else f"at {named}"


def _short(way: Way, fields: tuple[str, ...]) -> str:
    """SQL of how many millimetres this way lacks on those sides; null where the others fail or one can't be told."""
    grown = [margin for margin in way.margins if margin.asked_by in fields]
    rest = [m for m in way.margins if m.asked_by not in fields]
    fits = " and ".join(f"(need.{m.asked_by} is null or {m.made} >= -{WITHIN_MM})" for m in rest) or "true"
    known = " and ".join(f"{m.made} is not null" for m in grown)
    return f"case when {fits} and {known} then greatest({', '.join(f'-{m.made}' for m in grown)}) end"


def sides() -> tuple[Measure, ...]:
    """Each side alone, opposite sides together, every two sides and the headroom, and what else is asked together."""
    by_field = {margin.asked_by: margin for margin in UPRIGHT.margins}
    flat = ("left_mm", "right_mm", "front_mm", "back_mm")
    together = [(name,) for name in by_field] + [flat[:2], flat[2:], flat, (*flat[:2], "headroom_mm")]
    together += [(*flat[2:], "headroom_mm"), (*flat, "headroom_mm"), ("free_diameter_mm", "headroom_mm")]
    return tuple(_margins(tuple(by_field[name] for name in names)) for names in together)


def word_taken(field: str, condition: str, word: str, words: str, value: str) -> Measure:
    """One more word taken in a list of the need; the value is 0 where that lets the part in."""
    return Measure(
        name=field,
        condition=condition,
        asked=f"need.{field} is not null",
        value=value,
        words=words,
        moved=lambda need, more: moved(need, {field: (*getattr(need, field), more)}),
        fields=(field,),
        cost="2",
        word=word,
    )


def dropped(field: str, condition: str, to: Any, value: str, words: str) -> Measure:
    """A question no longer asked; the value is 0 where that lets the part in."""
    return Measure(
        name=field,
        condition=condition,
        asked=f"need.{field} is not null",
        value=value,
        words=words,
        moved=lambda need, _: moved(need, {field: to}),
        fields=(field,),
        cost="2",
    )


def lead(field: str, axial: str, margin: str, most: float, words: str) -> Measure:
    """Leads that reach their holes by so many millimetres more than is free of charge, up to a limit."""
    lacking = f"-({margin})"
    return Measure(
        name=field,
        condition="lead_spacing",
        asked="need.hole_spacing_mm is not null",
        value=f"case when {axial} and {lacking} > 0 and {lacking} <= {most:e} + {WITHIN_MM} then {lacking} end",
        words=words,
        moved=lambda need, by: moved(need, {field: by}),
        fields=(field,),
        cost="value / 5",
        within=f"{WITHIN_MM}",
    )
