"""What the package is checked against knows nothing of the package."""

import ast
from collections.abc import Iterator

from house.common import ROOT, Fault, assert_none, faults_of, imports

NAMES = (
    *("oracle", "needs", "merged", "laws", "conditions", "body", "limits", "concessions"),
    *("several", "two_bodies", "few_parts"),
)
FILES = [ROOT / "tests" / "brute" / f"{name}.py" for name in NAMES]


def dependent(module: str, tree: ast.Module) -> Iterator[Fault]:
    for one in imports(tree):
        if one.target.split(".")[0] == "subsearch" or one.target.startswith("."):
            yield one.line, f"imports {one.target}"


def test_brute_force_is_independent() -> None:
    assert_none(faults_of(dependent, FILES))


def test_demo_maker_is_independent() -> None:
    files = list((ROOT / "tests" / "demo_maker").glob("*.py"))
    assert len(files) > 1
    assert_none(faults_of(dependent, files))


def test_checker_can_fail() -> None:
    for text in ("from subsearch.terms import TERMS", "def f():\n    import subsearch", "from ..x import y"):
        assert list(dependent("oracle", ast.parse(text))), text
    assert not list(dependent("oracle", ast.parse("import decimal\nfrom demo_maker import truth")))
