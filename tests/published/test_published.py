"""Every published number that checks a law: one row each in the CSV files beside this one."""

import csv
import importlib
import inspect
import pkgutil
import re
from math import isclose
from pathlib import Path
from types import ModuleType

import pytest

import subsearch.formulas
from subsearch.formulas.sources import SOURCES, STATUSES

HEADINGS = ["id", "law", "inputs", "expected", "within", "why", "unit", "source", "place", "status"]
Row = dict[str, str]


def rows() -> list[Row]:
    found = []
    for file in sorted(Path(__file__).parent.glob("*.csv")):
        with file.open(newline="", encoding="utf-8") as text:
            reader = csv.DictReader(text)
            assert reader.fieldnames == HEADINGS, file.name
            found += list(reader)
    return found


def modules() -> list[ModuleType]:
    package = subsearch.formulas
    return [importlib.import_module(f"{package.__name__}.{m.name}") for m in pkgutil.iter_modules(package.__path__)]


ROWS = rows()
LAWS = {name: value for module in modules() for name, value in vars(module).items() if not name.startswith("_")}


def result(row: Row) -> float:
    """The last law of the row; each one's result is among the inputs of the next, by its own name or the one given."""
    inputs = {name: float(value) for name, value in re.findall(r"(\w+)=([^;]+)", row["inputs"])}
    used: set[str] = set()
    for part in row["law"].split(", "):
        name, _, law = part.rpartition("=")
        if callable(LAWS[law]):
            taken = {n: inputs[n] for n in inspect.signature(LAWS[law]).parameters if n in inputs}
            value = float(LAWS[law](**taken))
            used |= taken.keys()
        else:
            value = float(LAWS[law])
        inputs[name or law] = value
    assert inputs.keys() - used == {name or law}, "an input of the row is used by none of its laws"
    return value


def agrees(value: float, expected: float, within: str) -> bool:
    if band := re.fullmatch(r"(\S+) to (\S+) times", within):
        return float(band[1]) <= value / expected <= float(band[2])
    if within == "at least":
        return value >= expected
    size, kind = within.split()
    return isclose(
        value, expected, **{"relative": {"rel_tol": float(size)}, "absolute": {"abs_tol": float(size)}}[kind]
    )


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['id']}, {row['source']}" for row in ROWS])
def test_published(row: Row) -> None:
    value = result(row)
    assert agrees(value, float(row["expected"]), row["within"]), f"{value} {row['unit']}, not {row['expected']}: {row}"


def test_rows_are_filled() -> None:
    for row in ROWS:
        empty = [
            name for name in HEADINGS if not row[name].strip() and (name != "inputs" or callable(LAWS[row["law"]]))
        ]
        assert not empty, f"{row['id']}: {empty}"
        assert row["status"] in STATUSES, row["id"]
    assert len({row["id"] for row in ROWS}) == len(ROWS)


def test_every_law_and_constant_names_a_source_and_every_source_is_used() -> None:
    named: set[str] = set()
    for module in modules():
        text = inspect.getsource(module)
        found = [key.strip() for keys in re.findall(r"Source: (.+)", text) for key in keys.split(", ")]
        named |= set(found)
        if module.__name__.endswith((".carriers", ".sources")):
            continue
        for name, law in inspect.getmembers(module, inspect.isfunction):
            if law.__module__ == module.__name__ and not name.startswith("_"):
                assert "Source: " in (law.__doc__ or ""), f"{name} names no source"
    assert named == SOURCES.keys()


def test_sources_are_filled() -> None:
    for key, source in SOURCES.items():
        assert all(vars(source).values()), key
        assert source.status in STATUSES, key
