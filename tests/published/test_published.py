"""Every published number that checks a law: one row each in the CSV files beside this one."""

import csv
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterable, Iterator
from math import isclose
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

import subsearch.formulas
from subsearch.formulas.sources import SOURCES, STATUSES, keys_in

HEADINGS = ["id", "law", "inputs", "expected", "within", "why", "unit", "source", "place", "status"]
LATER = "later"  # rows whose laws follow with other work; kept whole, so that none is lost
Row = dict[str, str]


def rows_of(file: Path) -> list[Row]:
    with file.open(newline="", encoding="utf-8") as text:
        reader = csv.DictReader(text)
        assert reader.fieldnames == HEADINGS, file.name
        return list(reader)


def modules() -> list[ModuleType]:
    """The laws, and the codes: what is printed on parts has published tables too."""
    package = subsearch.formulas
    names = [f"{package.__name__}.{one.name}" for one in pkgutil.iter_modules(package.__path__)]
    codes = ("codes", "date_codes", "tolerance_letters", "voltage_codes")
    return [importlib.import_module(name) for name in (*names, *(f"subsearch.reading.{code}" for code in codes))]


def public(module: ModuleType) -> Iterator[tuple[str, Any]]:
    """The functions that a module defines, and its constants."""
    for name, value in vars(module).items():
        if not name.startswith("_") and getattr(value, "__module__", module.__name__) == module.__name__:
            yield name, value


FILES = sorted(Path(__file__).parent.glob("*.csv"))
ROWS = [row for file in FILES if file.stem != LATER for row in rows_of(file)]
LATER_ROWS = rows_of(Path(__file__).parent / f"{LATER}.csv")
LAWS = {name: value for module in modules() for name, value in public(module)}


def clashes(named: Iterable[tuple[str, Any]]) -> list[str]:
    """The public functions and upper-case constants that have two different values: a row could mean only one."""
    values: dict[str, Any] = {}
    checked = [(name, value) for name, value in named if inspect.isfunction(value) or name.isupper()]
    return [name for name, value in checked if values.setdefault(name, value) != value]


def read(text: str) -> Any:
    """A number, several numbers between commas, or else the text itself."""
    try:
        numbers = tuple(float(piece) for piece in text.split(","))
    except ValueError:
        return text
    return numbers if len(numbers) > 1 else numbers[0]


def result(row: Row) -> Any:
    """The last law of the row; each one's result is among the inputs of the next, by its own name or the one given.

    A law may be followed by the field of its answer that is meant: "reach=law.field".
    """
    written = {name: value.strip() for name, value in re.findall(r"(\w+)=([^;]+)", row["inputs"])}
    inputs = {name: read(value) for name, value in written.items()}
    used: set[str] = set()
    for part in row["law"].split(", "):
        name, _, path = part.rpartition("=")
        law, _, field = path.partition(".")
        if callable(LAWS[law]):
            parameters = inspect.signature(LAWS[law]).parameters
            taken = {n: inputs[n] for n in parameters if n in inputs}
            words = {n: written[n] for n in taken.keys() & written if parameters[n].annotation is str}  # 474 is a code
            value = LAWS[law](**taken | words)
            used |= taken.keys()
        else:
            value = LAWS[law]
        value = getattr(value, field) if field else value
        inputs[name or law] = value
    assert inputs.keys() - used == {name or law}, "an input of the row is used by none of its laws"
    return value


def agrees(value: Any, expected: Any, within: str) -> bool:
    if within == "the same":
        return bool(value == expected)
    if within == "one of them":
        return bool(expected in value)
    if isinstance(expected, tuple):
        return len(value) == len(expected) and all(map(agrees, value, expected, [within] * len(expected)))
    if band := re.fullmatch(r"(\S+) to (\S+) times", within):
        return bool(float(band[1]) <= value / expected <= float(band[2]))
    if within == "at least":
        return bool(value >= expected)
    size, kind = within.split()
    return isclose(
        value, expected, **{"relative": {"rel_tol": float(size)}, "absolute": {"abs_tol": float(size)}}[kind]
    )


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['id']}, {row['source']}" for row in ROWS])
def test_published(row: Row) -> None:
    value = result(row)
    assert agrees(value, read(row["expected"]), row["within"]), f"{value} {row['unit']}, not {row['expected']}: {row}"


def test_no_name_means_two_things() -> None:
    assert not clashes(one for module in modules() for one in public(module))
    assert clashes([("SLACK", 1e-9), ("Pair", 1), ("SLACK", 1e-9), ("Pair", 2), ("SLACK", 1e-6)]) == ["SLACK"]
    assert clashes([("law_v", agrees), ("law_v", agrees), ("law_v", result)]) == ["law_v"]


def test_rows_are_filled() -> None:
    for row in ROWS:
        empty = [
            name for name in HEADINGS if not row[name].strip() and (name != "inputs" or callable(LAWS.get(row["law"])))
        ]
        assert not empty, f"{row['id']}: {empty}"
        assert row["status"] in STATUSES, row["id"]
    ids = [row["id"] for row in (*ROWS, *LATER_ROWS)]
    assert len(set(ids)) == len(ids)


def test_rows_for_later_say_what_they_wait_for() -> None:
    for row in LATER_ROWS:
        assert row["law"].startswith("later: ") and row["expected"] and row["source"], row["id"]
        assert row["status"] in STATUSES, row["id"]


def test_every_law_and_constant_names_a_source_and_every_source_is_used() -> None:
    named: set[str] = set()
    for module in modules():
        if module.__name__.endswith((".carriers", ".sources")):
            continue
        named |= keys_in(module)
        for name, law in public(module):
            if inspect.isfunction(law):
                assert "Source: " in (law.__doc__ or ""), f"{name} names no source"
    assert named == SOURCES.keys()


def test_sources_are_filled() -> None:
    for key, source in SOURCES.items():
        assert all(vars(source).values()), key
        assert source.status in STATUSES, key
