"""Docstrings have one shape, and their units and sources are known ones."""

import ast
import re
from collections.abc import Iterator

from house.common import PACKAGE, Fault, assert_none, faults_of, unit_of_name

from subsearch.formulas.sources import SOURCES
from subsearch.terms import TERMS
from subsearch.units import SPELLINGS

# Of laws, not of any term.
LAW_UNITS = {"none", "H", "years", "s", "W", "dB", "currency", "1 or 0", "cm²", "W/(K cm²)", "eV", "°", "J"}
UNITS = ({term.unit for term in TERMS.values()} | SPELLINGS.keys() | LAW_UNITS) - {""}
Function = ast.FunctionDef | ast.AsyncFunctionDef


def public(tree: ast.Module) -> Iterator[Function | ast.ClassDef]:
    """Public functions and classes of a module, and the public methods of those classes."""
    for node in tree.body:
        if isinstance(node, Function | ast.ClassDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                methods = (one for one in node.body if isinstance(one, Function))
                yield from (one for one in methods if not one.name.startswith("_"))


def undocumented(module: str, tree: ast.Module) -> Iterator[Fault]:
    if not ast.get_docstring(tree):
        yield 1, "the module has no docstring"
    for node in public(tree):
        if not ast.get_docstring(node):
            yield node.lineno, f"{node.name} has no docstring"


def unlawful(module: str, tree: ast.Module) -> Iterator[Fault]:
    """What the docstrings of a module of laws lack. Steps for every carrier have no unit of their own and no source."""
    steps = module.endswith(".carriers")
    for node in public(tree):
        if isinstance(node, Function) and not module.endswith(".sources"):
            text = ast.get_docstring(node) or ""
            found = [*shapeless(node, text), *([] if steps else [*odd_units(node, text), *sourceless(text)])]
            yield from ((node.lineno, f"{node.name}: {what}") for what in found)


def section(text: str, title: str) -> str:
    found = re.search(rf"^{title}:\n((?: {{4}}.*\n?)+)", text, re.MULTILINE)
    return found[1] if found else ""


def stated_args(text: str) -> dict[str, str]:
    """Each argument of the section Args with what is said of it; "a, b: said" says it of both."""
    entries = re.findall(r"^ {4}(\w+(?:, \w+)*): (.*(?:\n {8}.*)*)", section(text, "Args"), re.MULTILINE)
    return {name: said for together, said in entries for name in together.split(", ")}


def shapeless(node: Function, text: str) -> Iterator[str]:
    args = [one for one in (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs) if one.arg != "self"]
    words = [one.arg for one in args if one.annotation and ast.unparse(one.annotation) == "str"]
    stated = stated_args(text)
    if list(stated) != [one.arg for one in args]:
        yield f"Args are {list(stated)}, not {[one.arg for one in args]}"
    numbers = {name: said for name, said in stated.items() if name not in words}
    yield from (f"{name} has no [unit]" for name, said in numbers.items() if not re.match(r"\[.+?\]", said))
    if not re.search(r"\[.+?\]", section(text, "Returns")):
        yield "Returns has no [unit]"
    if not re.search(r"^Holds for \S", text, re.MULTILINE):
        yield "no 'Holds for'"
    if ">>> " not in text:
        yield "no example"


def odd_units(node: Function, text: str) -> Iterator[str]:
    """Units that are none of ours, or not the one that ends the name."""
    for name, said in {**stated_args(text), node.name: section(text, "Returns")}.items():
        for written in re.findall(r"\[(.+?)\]", said):
            yield from (f"[{unit}] is none of the units" for unit in written.split(" and ") if unit not in UNITS)
            if unit_of_name(name) not in (None, written):
                yield f"{name} is in [{written}], but its name ends in {unit_of_name(name)}"


def sourceless(text: str) -> Iterator[str]:
    lines = re.findall(r"^Source: (.+)", text, re.MULTILINE)
    if not lines:
        yield "no 'Source:'"
    keys = [key for line in lines for key in line.split(", ")]
    yield from (f'"{key}" is no key of sources.py' for key in keys if key not in SOURCES)


def test_every_public_name_has_a_docstring() -> None:
    assert_none(faults_of(undocumented))


def test_laws_state_units_range_source_and_example() -> None:
    assert_none(faults_of(unlawful, (PACKAGE / "formulas").glob("*.py")))


def test_undocumented_can_fail() -> None:
    text = "def f(): ...\nclass C:\n    def m(self): ...\n    def _n(self): ...\ndef _g(): ..."
    found = [what for _, what in undocumented("m", ast.parse(text))]
    assert found == ["the module has no docstring"] + [f"{name} has no docstring" for name in "fCm"]


GOOD = '''
def life_h(base_h, rated_c):
    """Life.

    Args:
        base_h: [h] life
            at that temperature.
        rated_c: [°C] temperature.

    Returns:
        [h] the life.

    Holds for wet parts.
    Source: plane geometry

    >>> 1
    1
    """
'''
SPOILS = {
    "        rated_c: [°C] temperature.\n": "Args are ['base_h'], not ['base_h', 'rated_c']",
    "[h] life": "base_h has no [unit]",
    "[h] the life": "Returns has no [unit]",
    "Holds for wet parts.": "no 'Holds for'",
    ">>> 1": "no example",
    "Source: plane geometry": "no 'Source:'",
}


def spoilt(old: str, new: str = "") -> list[str]:
    return [what.removeprefix("life_h: ") for _, what in unlawful("laws", ast.parse(GOOD.replace(old, new)))]


def test_unlawful_can_fail() -> None:
    assert not spoilt("nothing")
    assert {old: spoilt(old) for old in SPOILS} == {old: [what] for old, what in SPOILS.items()}
    assert spoilt("plane geometry", "plane geometry, hearsay") == ['"hearsay" is no key of sources.py']
    assert spoilt("[°C]", "[K]") == ["rated_c is in [K], but its name ends in °C"]
    assert spoilt("[h] the", "[furlong] the")[0] == "[furlong] is none of the units"
