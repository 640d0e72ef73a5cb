"""The tables, the requirement and the position use the terms, and the unit ends the name."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import Field, field, fields, make_dataclass
from typing import Any, NamedTuple, get_args, get_type_hints

import pytest
from house.common import PACKAGE, SUFFIXES, assert_none, unit_of_name

from subsearch.repair.positions import Position
from subsearch.search.requirement import Requirement
from subsearch.terms import BREAK_TERMS, OFFER_TERMS, PART_TERMS, TERMS, Term

NUMBERS = ("DOUBLE", "INTEGER", "BIGINT", "DECIMAL")
PART, OFFER = [term.name for term in PART_TERMS], [term.name for term in OFFER_TERMS]
TABLES = {
    "part": ["pk", *PART, "contradictions"],
    "offer": ["pk", *OFFER, "prices"],
    "listing": ["intake", "line", "printed", *PART, *OFFER, "prices"],
}
WITHOUT_SUFFIX = {"hours_a_day", "reading_tan_delta"}  # a ratio of times, and a number without a unit
SCHEMA = (PACKAGE / "catalog" / "schema.sql").read_text(encoding="utf-8")


class Column(NamedTuple):
    """A column of the schema: its name, what stands between name and comment, and the comment."""

    name: str
    type: str
    comment: str


def columns(schema: str, table: str) -> list[Column]:
    found = re.search(rf"CREATE TABLE {table} \(\n(.*?)\n\);", schema, re.DOTALL)
    assert found, f"the schema has no table {table}"
    return [Column(*one) for one in re.findall(r'^\s*"?(\w+)"? (.+?),? -- (.+)$', found[1], re.MULTILINE)]


def misfits(found: Iterable[Column]) -> Iterator[str]:
    """Where a column differs from its term: in type, unit, words, or in saying what null means."""
    for name, kind, comment in found:
        if "NOT NULL" not in kind and "null: " not in comment:
            yield f"{name} does not say what null means"
        term = TERMS.get(name)
        if term is None:
            continue
        if kind.startswith(NUMBERS) != (term.low is not None):
            yield f"{name} is {kind}, and the term {'has no' if term.low is None else 'has a'} range"
        if term.unit and f"[{term.unit}]" not in comment:
            yield f"{name} does not say its unit, {term.unit}"
        if not kind.startswith("BOOLEAN"):
            yield from (f'{name} does not name "{word}"' for word in term.words if word not in comment)


def odd_terms(terms: Iterable[Term]) -> Iterator[str]:
    for term in terms:
        if (unit_of_name(term.name) or "") != term.unit:
            yield f'the term {term.name} is in "{term.unit}"'
        if (term.low is None) != (term.high is None):
            yield f"the term {term.name} has half a range"


def odd_fields(record: type[Any]) -> Iterator[str]:
    """Numbers whose name does not end in a unit, and those said to be in another unit than the name's."""
    hints = get_type_hints(record)
    every: tuple[Field[Any], ...] = fields(record)
    for one in every:
        is_number = float in (hints[one.name], *get_args(hints[one.name]))
        if is_number and one.name not in WITHOUT_SUFFIX and unit_of_name(one.name) is None:
            yield f"{record.__name__}.{one.name} ends in none of {', '.join(SUFFIXES)}"
        if one.metadata.get("unit") and one.metadata["unit"] != unit_of_name(one.name):
            yield f"{record.__name__}.{one.name} is in {one.metadata['unit']}"


@pytest.mark.parametrize("table", TABLES)
def test_columns_are_the_terms(table: str) -> None:
    found = columns(SCHEMA, table)
    assert [column.name for column in found] == TABLES[table]
    assert_none(misfits(found))


def test_every_term_is_used() -> None:
    assert {*PART, *OFFER, *(term.name for term in BREAK_TERMS)} == TERMS.keys()
    for table in ("offer", "listing"):
        prices = next(column.type for column in columns(SCHEMA, table) if column.name == "prices")
        assert len(re.findall(r"\w+\"? (INTEGER|DECIMAL)", prices)) == len(BREAK_TERMS), prices


def test_unit_ends_the_name() -> None:
    assert_none(odd_terms(TERMS.values()))


@pytest.mark.parametrize("record", [Requirement, Position])
def test_numbers_asked_for_name_their_unit(record: type[Any]) -> None:
    assert_none(odd_fields(record))


def test_checkers_can_fail() -> None:
    text = (
        "CREATE TABLE part (\n"
        "    maker DOUBLE, -- who\n"
        "    rated_v VARCHAR NOT NULL, -- rating\n"
        "    vent VARCHAR -- vented or not; null: not stated\n"
        ");"
    )
    assert list(misfits(columns(text, "part"))) == [
        "maker does not say what null means",
        "maker is DOUBLE, and the term has no range",
        "rated_v is VARCHAR NOT NULL, and the term has a range",
        "rated_v does not say its unit, V",
        'vent does not name "none"',
    ]
    assert len(list(odd_terms([Term("rated_v", "mV", ""), Term("life", "h", "", 1, 2), Term("stock", "", "", 1)]))) == 3
    record = make_dataclass(
        "Record", [("height", float | None), ("note", str), ("tall_mm", float, field(metadata={"unit": "V"}))]
    )
    assert len(list(odd_fields(record))) == 2
