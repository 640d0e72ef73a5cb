"""The schema reads as prose: every term has its column, every column that may be null says what null means."""

import re

import pytest

from subsearch.catalog.store import tables
from subsearch.reading.cells import PLAIN_NUMBERS
from subsearch.terms import OFFER_TERMS, PART_TERMS, Term

COLUMN = re.compile(r"^    (\w+) ((?:STRUCT\(.*?\)\)\[\])|\w+(?:\(\d+, \d+\))?(?:\[\])?)( NOT NULL)?,? -- (.+)$")
WANTED: dict[str, tuple[Term, ...]] = {
    "part": PART_TERMS,
    "offer": OFFER_TERMS,
    "listing": (*PART_TERMS, *OFFER_TERMS),
}


def lines(table: str) -> list[re.Match[str]]:
    body = tables()[table].strip().splitlines()[1:-1]
    found = [COLUMN.match(line) for line in body]
    assert all(found), [line for line, match in zip(body, found, strict=True) if not match]
    return [match for match in found if match]


def test_the_tables() -> None:
    assert sorted(tables()) == [
        "catalog_edition", "currency_rate", "intake", "listing", "offer", "part", "refusal",
    ]  # fmt: skip


@pytest.mark.parametrize("table", WANTED)
def test_every_term_has_its_column_with_its_meaning_and_unit(table: str) -> None:
    columns = {match[1]: match for match in lines(table)}
    assert [name for name in columns if name in {term.name for term in WANTED[table]}] == [
        term.name for term in WANTED[table]
    ]
    for term in WANTED[table]:
        said = columns[term.name][4]
        assert re.sub(r"\W+", " ", said).startswith(re.sub(r"\W+", " ", term.meaning)), said
        assert not term.unit or f"[{term.unit}]" in said, said
        assert (columns[term.name][2] == "DOUBLE") == bool(term.unit or term.name in PLAIN_NUMBERS), said
        assert term.name == "traceable" or all(word in said for word in term.words), said


@pytest.mark.parametrize("table", sorted(tables()))
def test_a_column_that_may_be_null_says_what_null_means(table: str) -> None:
    for match in lines(table):
        assert ("null: " in match[4]) == (match[3] is None), match[0]
