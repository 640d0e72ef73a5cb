"""Requirements put to the search and to the oracle, and their answers side by side."""

from decimal import Decimal
from typing import Any

import duckdb

from brute.needs import Asked
from brute.oracle import CONDITIONS, Oracle, Part, Told
from subsearch.search.candidates import Found
from subsearch.search.refusals import answers
from subsearch.search.requirement import Requirement

EVERYTHING = 100_000


def requirement(need: Asked) -> Requirement:
    """The need in the search's own words."""
    return Requirement(**{name: as_float(value) for name, value in need.items()})


def as_float(value: Any) -> Any:
    """A Decimal as the catalog holds it; anything else as it is."""
    return float(value) if isinstance(value, Decimal) else value


def named(found: Found) -> tuple[list[Part], list[Part]]:
    """The kept parts and the open ones."""
    kept, left_open = (
        [(one.part["maker"], one.part["part_number"]) for one in some] for some in (found.kept, found.open)
    )
    return kept, left_open


def assert_same_found(found: Found, told: Told, need: Asked) -> None:
    """The same parts are kept and open, each once, and the counts say so."""
    kept, left_open = told.kept, told.left_open
    found_kept, found_open = named(found)
    assert (set(found_kept), set(found_open)) == (kept, left_open), need
    assert (len(found_kept), len(found_open)) == (len(kept), len(left_open)), need
    counts = (found.kept_count, found.open_count, found.refused_count)
    assert counts == (len(kept), len(left_open), len(told.answers) - len(kept) - len(left_open)), need


def assert_same_answers(con: duckdb.DuckDBPyConnection, need: Asked, oracle: Oracle, told: Told) -> None:
    """No condition is answered otherwise on any part; else says which, the answer found and the one wanted."""
    found = {(maker or "", number): its for (maker, number), its in answers(con, requirement(need)).items()}
    wanted = dict(zip(oracle.parts, told.answers, strict=True))
    assert found.keys() == wanted.keys()
    assert set(next(iter(found.values()))) == set(CONDITIONS)
    others = [part for part, its in found.items() if tuple(its[name] for name in CONDITIONS) != wanted[part]]
    first = [
        (part, name, found[part][name], right)
        for part in others[:5]
        for name, right in zip(CONDITIONS, wanted[part], strict=True)
        if found[part][name] is not right
    ]
    if others:
        raise AssertionError(f"{len(others)} parts answered otherwise, such as {first} for {need}")
