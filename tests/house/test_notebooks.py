"""Notebooks come with the package, open alike, and are kept without outputs."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from house.common import ROOT

NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))
OPENING = ("**What this is for.**", "**Run it first:**", "**Change this first:**")


def read(file: Path) -> dict[str, Any]:
    notebook: dict[str, Any] = json.loads(file.read_text(encoding="utf-8"))
    return notebook


def faults(notebook: dict[str, Any]) -> list[str]:
    """What a notebook lacks that the others have."""
    cells, said = notebook["cells"], []
    opening = "".join(cells[0]["source"])
    code = [cell for cell in cells if cell["cell_type"] == "code"]
    if not opening.startswith("# ") or not opening.partition("\n")[0].endswith("?"):
        said.append("its title is no question")
    said += [f"it does not open with {words}" for words in OPENING if words not in opening]
    if any(cell["outputs"] or cell["execution_count"] for cell in code):
        said.append("its outputs are not cleared")
    if "assert " not in "".join(code[-1]["source"]):
        said.append("it does not end with asserts")
    ids = [cell["id"] for cell in cells]
    if len(set(ids)) < len(ids):
        said.append("two cells have one id")
    return said


@pytest.mark.parametrize("file", NOTEBOOKS, ids=lambda file: file.stem)
def test_a_notebook_is_a_worked_problem(file: Path) -> None:
    assert faults(read(file)) == []


def test_the_package_takes_every_notebook_and_nothing_they_write() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    taken = project["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    named = {one: place for one, place in taken.items() if one.startswith("notebooks")}
    assert named == {f"notebooks/{one.name}": f"subsearch/notebooks/{one.name}" for one in NOTEBOOKS}


def test_the_checker_can_fail() -> None:
    cell = {"cell_type": "code", "id": "a", "source": ["print(1)"], "outputs": [{}], "execution_count": 1}
    spoilt = {"cells": [{"cell_type": "markdown", "id": "a", "source": ["# A title"]}, cell]}
    assert len(faults(spoilt)) == 1 + len(OPENING) + 3
