"""Imports point down the rooms, and what starts the command line stays light."""

import ast
import subprocess
import sys
from collections.abc import Iterator

from house.common import Fault, assert_none, faults_of, imports

SHARED = {"terms", "units", "errors"}
BELOW: dict[str, set[str]] = {"subsearch": set(), "terms": set(), "errors": set(), "shipped": set()}
BELOW["units"] = {"terms", "errors"}
BELOW["reading"] = SHARED | {"reading"}
BELOW["formulas"] = SHARED | {"formulas"}
BELOW["catalog"] = SHARED | {"catalog", "reading"}
BELOW["search"] = SHARED | {"search", "formulas", "catalog"}
BELOW["repair"] = BELOW["search"] | {"repair", "reading"}
BELOW["shopping"] = BELOW["repair"] | {"shopping"}
BELOW["display"] = BELOW["shopping"] | {"display"}
BELOW["options"] = BELOW["display"]  # the words of the command line
BELOW["adding"] = BELOW["display"] | {"adding", "options"}  # one command with many words
BELOW["finding"] = BELOW["adding"] - {"adding"} | {"finding"}
BELOW["drafting"] = BELOW["display"] | {"drafting"}
BELOW["laying_out"] = BELOW["adding"] - {"adding"} | {"laying_out"}
BELOW["lab"] = {"lab", "shipped"}  # the command that opens the notebooks
BELOW["cli"] = BELOW["display"] | {"cli", "lab", "adding", "finding", "drafting", "laying_out", "options", "shipped"}
DATABASE_ROOMS = ("catalog", "search", "repair", "shopping")
HEAVY = ("pandas", "numpy", "duckdb")
NOT_AT_START = (*HEAVY, "openpyxl", "jinja2", "altair", "vl_convert")
MEETING = "subsearch.search.derived"  # the file where laws and facts meet, and those named after it


def room(module: str) -> str:
    return module.split(".")[1] if "." in module else module


def upward(module: str, tree: ast.Module) -> Iterator[Fault]:
    if room(module) not in BELOW:
        yield 1, f"{room(module)} is no room: place it in BELOW here and in the picture of the rooms"
    for one in imports(tree):
        if one.target.startswith("."):
            yield one.line, "imports by a relative name: write it in full"
        elif one.target.split(".")[0] == "subsearch" and room(one.target) not in {
            "__version__",
            *BELOW.get(room(module), ()),
        }:
            yield one.line, f"{room(module)} imports {one.target}, which is not below it"


def laws_outside_the_meeting(module: str, tree: ast.Module) -> Iterator[Fault]:
    """In search, files other than the meeting take named constants from formulas, no laws."""
    if room(module) == "search" and not module.startswith(MEETING):
        for one in imports(tree):
            if one.target.startswith("subsearch.formulas") and not one.target.rpartition(".")[2].isupper():
                yield one.line, f"takes the law {one.target}; laws and facts meet in {MEETING}"


def database_elsewhere(module: str, tree: ast.Module) -> Iterator[Fault]:
    for one in imports(tree):
        if one.target.split(".")[0] == "duckdb":
            if room(module) not in DATABASE_ROOMS:
                yield one.line, f"{room(module)} imports duckdb"
            elif room(module) in ("repair", "shopping") and one.target != "duckdb":
                yield one.line, "write import duckdb, so that it is seen to be used as a type only"
    if room(module) in ("repair", "shopping"):
        for node in set(names(tree, "duckdb")) - set(in_annotations(tree)):
            yield node.lineno, f"{room(module)} uses duckdb for more than a type"


def names(tree: ast.AST, name: str) -> Iterator[ast.Name]:
    yield from (node for node in ast.walk(tree) if isinstance(node, ast.Name) and node.id == name)


def in_annotations(tree: ast.Module) -> Iterator[ast.Name]:
    for node in ast.walk(tree):
        for annotation in (getattr(node, "annotation", None), getattr(node, "returns", None)):
            if annotation is not None:
                yield from names(annotation, "duckdb")


def heavy_at_start(module: str, tree: ast.Module) -> Iterator[Fault]:
    for one in imports(tree):
        if room(module) in (*SHARED, "reading", "formulas") and one.at_start and one.target.split(".")[0] in HEAVY:
            yield one.line, f"{room(module)} imports {one.target} as it starts"


def loaded(statement: str, wanted: tuple[str, ...]) -> list[str]:
    """Which of the wanted modules are loaded after a statement in a new interpreter."""
    code = f"{statement}\nimport sys\nsys.stdout.write(' '.join(n for n in {wanted!r} if n in sys.modules))"
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()


def test_imports_point_down() -> None:
    assert_none(faults_of(upward))


def test_laws_and_facts_meet_in_one_file() -> None:
    assert_none(faults_of(laws_outside_the_meeting))


def test_database_stays_in_its_rooms() -> None:
    assert_none(faults_of(database_elsewhere))


def test_lower_rooms_start_without_heavy_libraries() -> None:
    assert_none(faults_of(heavy_at_start))


def test_command_line_starts_light() -> None:
    assert not loaded("import subsearch.cli", NOT_AT_START)


def test_find_needs_no_pandas() -> None:
    used = "import subsearch.search.candidates, subsearch.catalog.store, subsearch.display.summary"
    assert not loaded(used, ("pandas",))


def test_checkers_can_fail() -> None:
    def found_by(checker: object, module: str, text: str) -> bool:
        assert callable(checker)
        return bool(list(checker(module, ast.parse(text))))

    for module, text in {
        "subsearch.formulas.life": "from subsearch.catalog import store",
        "subsearch.catalog.store": "def f():\n    from subsearch import formulas",
        "subsearch.reading.rows": "import subsearch.catalog.store",
        "subsearch.search.ways": "from subsearch.repair.folder import read_repair",
        "subsearch.units": "from . import terms",
        "subsearch.attic": "import re",
    }.items():
        assert found_by(upward, module, text), text
    assert not found_by(upward, "subsearch.cli", "from subsearch import __version__")
    law = "from subsearch.formulas.life import life_h"
    assert found_by(laws_outside_the_meeting, "subsearch.search.ranking", law)
    assert not found_by(laws_outside_the_meeting, MEETING, law)
    assert found_by(database_elsewhere, "subsearch.display.report", "import duckdb")
    assert found_by(database_elsewhere, "subsearch.shopping.plan", "import duckdb\nduckdb.connect()")
    assert not found_by(database_elsewhere, "subsearch.shopping.plan", "import duckdb\ndef f(c: duckdb.X): ...")
    assert found_by(heavy_at_start, "subsearch.formulas.life", "try:\n    import numpy.linalg\nexcept E: ...")
    assert not found_by(heavy_at_start, "subsearch.formulas.life", "def f():\n    import numpy")
    assert loaded("import wave", ("wave", "pandas")) == ["wave"]
