"""What README.md tells the reader to type works, and prints what README.md says it prints."""

import os
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest
import typer
from house.common import ROOT, assert_none

from subsearch.cli import app

README = (ROOT / "README.md").read_text(encoding="utf-8")
LEFT_OUT = ("…", "...")  # a line of these stands for lines that README does not show


class Typed(NamedTuple):
    """A command line of a fenced block, and the lines shown below it as its output."""

    command: str
    shown: list[str]


class Ran(NamedTuple):
    """A command line as it ended: its exit status, what it printed, and what it said of errors."""

    typed: Typed
    status: int
    printed: str
    errors: str


def typed_in(readme: str) -> list[Typed]:
    """The command lines of the fenced blocks that run subsearch, each once, in order, with the output shown.

    In a block with a prompt, lines without one are output; so is a whole block without a language and a prompt, of
    the command above it.
    """
    found: dict[str, list[str]] = {}
    last = ""
    for language, block in re.findall(r"^```(\w*)\n(.*?)^```", readme, re.MULTILINE | re.DOTALL):
        prompt = "$ " if block.startswith("$ ") else ""
        for line in block.replace("\\\n", " ").splitlines():
            is_typed = line.startswith(prompt) if prompt else bool(language)
            if is_typed:
                command = re.fullmatch(r"(?:\S*/)?(subsearch .*)", line.removeprefix(prompt))
                last = command[1] if command else ""
                if last:
                    found.setdefault(last, [])
            elif last and line.strip() and line.strip() not in LEFT_OUT:
                found[last].append(line.rstrip())
    return [Typed(command, shown) for command, shown in found.items()]


def run_in(folder: Path, typed: Typed) -> Ran:
    """One command line, run in a folder as a reader's terminal would."""
    path = os.pathsep.join([str(Path(sys.executable).parent), os.environ.get("PATH", "")])
    name, *rest = shlex.split(typed.command, comments=True)
    program = shutil.which(name, path=path)
    assert program, f"{name} is not installed"
    env = {**os.environ, "PYTHONUTF8": "1"}
    ended = subprocess.run(
        [program, *rest], cwd=folder, env=env, capture_output=True, encoding="utf-8", timeout=120, check=False
    )
    return Ran(typed, ended.returncode, ended.stdout, ended.stderr)


def not_printed(ran: Ran) -> list[str]:
    """Lines that README shows and the command did not print."""
    printed = {line.rstrip() for line in ran.printed.splitlines()}
    return [f"{ran.typed.command}: {line}" for line in ran.typed.shown if line not in printed]


def not_named(readme: str, commands: list[str]) -> list[str]:
    return [name for name in commands if not re.search(rf"\bsubsearch {re.escape(name)}\b", readme)]


@pytest.fixture(scope="module")
def every_run(tmp_path_factory: pytest.TempPathFactory) -> list[Ran]:
    """Every command line of README.md, run in order in one folder that was empty."""
    folder = tmp_path_factory.mktemp("reader")
    return [run_in(folder, typed) for typed in typed_in(README)]


def test_first_command_is_the_demo() -> None:
    assert [one.command for one in typed_in(README)][:1] == ["subsearch demo"]


def test_every_command_works(every_run: list[Ran]) -> None:
    assert every_run
    assert_none(f"{one.typed.command}: status {one.status}: {one.errors}" for one in every_run if one.status)


def test_readme_shows_what_is_printed(every_run: list[Ran]) -> None:
    assert_none(line for one in every_run for line in not_printed(one))


def test_readme_names_every_command() -> None:
    commands = list(getattr(typer.main.get_command(app), "commands", {}))
    assert len(commands) > 2
    assert_none(not_named(README, commands))


BAD = """Type `subsearch load x.csv`:
```console
$ subsearch --version
subsearch 0
  …

$ ls
subsearch.duckdb
```
```sh
pip install .
bin/subsearch find \\
  --capacitance '150 nonsense'  # too much
```
```
subsearch finds nothing
```
"""


def test_checkers_can_fail(tmp_path: Path) -> None:
    version, find = typed_in(BAD)
    assert version == Typed("subsearch --version", ["subsearch 0"])
    assert shlex.split(find.command, comments=True) == ["subsearch", "find", "--capacitance", "150 nonsense"]
    assert find.shown == ["subsearch finds nothing"]
    assert not_printed(run_in(tmp_path, version)) == ["subsearch --version: subsearch 0"]
    assert run_in(tmp_path, find).status
    assert not_named(BAD, ["load", "loads", "find", "demo"]) == ["loads", "demo"]
