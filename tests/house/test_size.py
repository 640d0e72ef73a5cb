"""Files and functions are short enough to be read at once. What a docstring and a signature take is not counted."""

import ast
from collections.abc import Iterator

from house.common import PACKAGE, ROOT, Fault, faults_of, kept_files

FILE_AIM, FILE_BOUND = 200, 220
FUNCTION_AIM, FUNCTION_BOUND = 25, 40
TABLES = ("subsearch/formulas/sources.py",)  # one line a source; names of publishers may stand in no second file


def statement_lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines from the first statement after the docstring to the last."""
    body = node.body[1:] if ast.get_docstring(node) else node.body
    return (body[-1].end_lineno or body[-1].lineno) - body[0].lineno + 1 if body else 0


def long_functions(tree: ast.Module, above: int) -> Iterator[Fault]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and statement_lines(node) > above:
            yield node.lineno, f"{node.name} has {statement_lines(node)} lines"


def long_files(lengths: dict[str, int], above: int) -> list[str]:
    return [f"{name} has {length} lines" for name, length in lengths.items() if length > above]


def test_no_file_is_too_long() -> None:
    files = [file for file in kept_files() if file.is_relative_to(PACKAGE)]
    lengths = {str(file.relative_to(ROOT)): len(file.read_text(encoding="utf-8").splitlines()) for file in files}
    assert lengths
    lengths = {name: length for name, length in lengths.items() if name not in TABLES}
    assert not long_files(lengths, FILE_BOUND), f"aim: {FILE_AIM} lines. Above it: {long_files(lengths, FILE_AIM)}"


def test_no_function_is_too_long() -> None:
    above_aim = faults_of(lambda _, tree: long_functions(tree, FUNCTION_AIM))
    above_bound = faults_of(lambda _, tree: long_functions(tree, FUNCTION_BOUND))
    assert not above_bound, f"aim: {FUNCTION_AIM} lines. Above it: {above_aim}"


def test_checkers_can_fail() -> None:
    short = ast.parse("def f(\n    a,\n    b,\n):\n    '''Says.\n\n    More.\n    '''\n    return a\n")
    long = ast.parse("class C:\n    def f(self):\n" + "        x = 1\n" * 41)
    assert not list(long_functions(short, 1))
    assert list(long_functions(long, FUNCTION_BOUND)) == [(2, "f has 41 lines")]
    assert long_files({"a.py": 221, "b.py": 220}, FILE_BOUND) == ["a.py has 221 lines"]
