"""Which fields the needs of one statement state: what nobody asks is left out of its text.

Reading and planning a statement takes longer than answering it on a small catalog, so its text holds only the
conditions and numbers that are asked. A single need stands in it as bound values, so that the database knows them when
it plans; several needs stand in a list that is bound as one parameter.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, get_type_hints

from subsearch.search.requirement import Requirement

SQL_TYPES = {
    float: "double", float | None: "double", int: "integer", bool: "boolean", bool | None: "boolean",
    str: "varchar", str | None: "varchar",
    tuple[str, ...]: "varchar[]", tuple[str, ...] | None: "varchar[]",
}  # fmt: skip
UNASKED = ("old_tolerance_pct", "temperature_uncertain_k")  # fields that shape others or what is shown, and ask nothing
FIELDS = {name: SQL_TYPES[kind] for name, kind in get_type_hints(Requirement).items() if name not in UNASKED}
TYPES = {"number": "integer", **FIELDS}
NEED = re.compile(r'(?<![\w."])"?need"?\."?(\w+)"?')
PARAMETER = re.compile(r"\$(\w+)")
NEEDS = "asked as (select unnest($needs, recursive := true)),\nneed as materialized (select {} from asked)"


@dataclass(frozen=True)
class Stated:
    """The fields stated by some of the needs and those stated by every one; `alone`: there is only one need."""

    some: frozenset[str]
    every: frozenset[str] = frozenset()
    alone: bool = False

    def says(self, *fields: str) -> bool:
        """Whether some need states one of these fields."""
        return not self.some.isdisjoint(fields)

    def asked(self, fields: tuple[str, ...], together: bool = False) -> str:
        """SQL that is true where the need states one of the fields, or all of them together; never null."""
        enough = all if together else any
        if not enough(field in self.some for field in fields):
            return "false"
        if enough(field in self.every for field in fields):
            return "true"
        if together:
            return " and ".join(is_stated(field) for field in fields if field not in self.every)
        return " or ".join(map(is_stated, fields))

    def where(self, field: str, sql: str) -> str:
        """The SQL where the need states the field; true where it does not."""
        asked = self.asked((field,))
        return {"true": f"({sql})", "false": "true"}.get(asked, f"(not ({asked}) or ({sql}))")

    def joined(self, rows: str) -> str:
        """SQL of a FROM in which the need of each row is at hand."""
        return rows if self.alone else f"{rows} join need using (number)"

    def written(self, *ctes: str, last: str) -> str:
        """The statement out of its parts, with the need's fields in it as they are bound."""
        text = ",\n".join(ctes) + "\n" + last
        if self.alone:
            return ("with " if ctes else "") + NEED.sub(self._bound, text)
        names = ["number", *sorted({name for name in NEED.findall(text) if name in self.some})]
        text = NEED.sub(lambda named: named[0] if named[1] in names else _unasked(named), text)
        fields = ", ".join(f"{name}::{TYPES[name]} as {name}" for name in names)
        return "with " + NEEDS.format(fields) + ("," if ctes else "") + "\n" + text

    def _bound(self, named: re.Match[str]) -> str:
        name = named[1]
        if name == "number":
            return "0"
        return f"$need_{name}::{TYPES[name]}" if name in self.some else _unasked(named)


def is_stated(field: str) -> str:
    """SQL that is true where the need states the field; never null."""
    return f"need.{field}" if FIELDS[field] == "boolean" else f"need.{field} is not null"


def columns(named: Mapping[str, str]) -> str:
    """Columns with their names."""
    return ",\n        ".join(f"{sql} as {name}" for name, sql in named.items())


def struct(named: Mapping[str, str]) -> str:
    """One struct of them."""
    return "{" + ", ".join(f"'{name}': {sql}" for name, sql in named.items()) + "}"


def _unasked(named: re.Match[str]) -> str:
    return f"null::{TYPES[named[1]]}"


EVERYTHING = Stated(frozenset(FIELDS))
"""As if every field were stated by some need: the whole text."""


def stated(needs: Sequence[Mapping[str, Any]]) -> Stated:
    """What the needs state: a field that is None or False asks nothing.

    >>> sorted(stated([{"rated_v": 25.0, "working_c": 0.0, "reverses": False}]).some)
    ['rated_v', 'working_c']
    """
    each = [{name for name in FIELDS if need.get(name) is not None and need[name] is not False} for need in needs]
    return Stated(frozenset().union(*each), frozenset.intersection(*map(frozenset, each)), len(needs) == 1)


def parameters(sql: str, needs: Sequence[Mapping[str, Any]], others: Mapping[str, Any]) -> dict[str, Any]:
    """The values to bind to a statement: those that its text names."""
    values = {"needs": list(needs), **others}
    if len(needs) == 1:
        values |= {f"need_{name}": value for name, value in needs[0].items()}
    return {name: values[name] for name in set(PARAMETER.findall(sql))}
