"""What the house tests share: the repository's files, the trees of the package, and the unit that ends a name."""

import ast
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "subsearch"
SUFFIXES = {
    "f": "F", "v": "V", "a": "A", "ohm": "Ω", "hz": "Hz", "mm": "mm", "c": "°C", "h": "h", "pct": "%", "k": "K",
    "henry": "H", "y": "years", "s": "s", "w": "W", "db": "dB", "cm2": "cm²", "deg": "°", "ev": "eV", "j": "J",
}  # fmt: skip
Fault = tuple[int, str]
Checker = Callable[[str, ast.Module], Iterable[Fault]]


@dataclass(frozen=True)
class Import:
    """One imported name: its line, its full dotted name, and whether importing the module runs it."""

    line: int
    target: str
    at_start: bool


def imports(node: ast.AST, at_start: bool = True) -> Iterator[Import]:
    """Every import below a node, those inside functions and for types only too."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.Import):
            yield from (Import(child.lineno, alias.name, at_start) for alias in child.names)
        elif isinstance(child, ast.ImportFrom):
            home = "." * child.level + (child.module or "")
            yield from (Import(child.lineno, f"{home}.{alias.name}", at_start) for alias in child.names)
        else:
            inside = isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef)
            for_types = isinstance(child, ast.If) and ast.unparse(child.test).endswith("TYPE_CHECKING")
            yield from imports(child, at_start and not inside and not for_types)


def unit_of_name(name: str) -> str | None:
    """The unit that ends a name; None where none does."""
    return SUFFIXES.get(name.rpartition("_")[2]) if "_" in name else None


def faults_of(checker: Checker, files: Iterable[Path] | None = None) -> list[str]:
    """What a checker finds in the package, or in the files given: each with its file and line."""
    return [
        f"{file.relative_to(ROOT)}:{line} {what}"
        for file in sorted(PACKAGE.rglob("*.py") if files is None else files)
        for line, what in checker(dotted(file), ast.parse(file.read_text(encoding="utf-8")))
    ]


def assert_none(faults: Iterable[str]) -> None:
    """Fail with every fault on a line of its own."""
    found = list(faults)
    assert not found, "\n" + "\n".join(found)


def dotted(file: Path) -> str:
    """The name by which a file of the repository is imported."""
    return ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def kept_files() -> list[Path]:
    """Every file of the repository that .gitignore leaves in."""
    patterns = (ROOT / ".gitignore").read_text(encoding="utf-8").split()
    return sorted(_below(ROOT, [".git", *patterns]))


def _below(folder: Path, patterns: list[str]) -> Iterator[Path]:
    for path in folder.iterdir():
        if any(_ignores(pattern, path) for pattern in patterns):
            continue
        if path.is_dir():
            yield from _below(path, patterns)
        else:
            yield path


def _ignores(pattern: str, path: Path) -> bool:
    if pattern.startswith("/") and path.parent != ROOT:
        return False
    return fnmatch(path.name, pattern.strip("/")) and (path.is_dir() or not pattern.endswith("/"))
