"""Copies of the tree, and the answer of their tests.

One process a copy loads the libraries once and then forks for each question, which is three times as fast as starting
Python anew. Nothing of the package itself is loaded before the fork, so each child reads the copy as it is then.
"""

import os
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

from planted.faults import ROOT

COPIED = ("subsearch", "tests", "catalog_demo", "notebooks", "pyproject.toml")
GREEN, RED = 0, 1  # what the test command answers; anything else means that no test ran
OPTIONS = ["-q", "-x", "-p", "no:cacheprovider", "-o", "addopts=", "--import-mode=importlib", "--doctest-modules"]
ASKED = """
import os, sys
import duckdb, hypothesis, numpy, pandas, pytest, scipy.optimize
sys.dont_write_bytecode = True
for line in sys.stdin:
    said, *arguments = line.rstrip("\\n").split("\\t")
    child = os.fork()
    if child == 0:
        output = os.open(said, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(output, 1)
        os.dup2(output, 2)
        ended = int(pytest.main(arguments))
        sys.stdout.flush()
        os._exit(ended)
    print(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), flush=True)
"""


def copy_tree(to: Path) -> Path:
    """A copy of what the tests need, without what they left behind."""
    for name in COPIED:
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, to / name, ignore=shutil.ignore_patterns("__pycache__", ".*"))
        else:
            shutil.copy2(ROOT / name, to / name)
    return to


@cache
def _server(tree: Path) -> "subprocess.Popen[str]":
    """The process that answers for a copy; it ends with this one, when its input closes."""
    paths = {"PYTHONPATH": os.pathsep.join((str(tree), str(tree / "tests"))), "PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1"}
    return subprocess.Popen(
        [sys.executable, "-c", ASKED],
        cwd=tree,
        env=os.environ | paths,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        bufsize=1,
    )


def answers(tree: Path, *arguments: str) -> tuple[int, str]:
    """How the tests of a copy end, and what they said."""
    said = tree / "said.txt"
    server = _server(tree)
    assert server.stdin and server.stdout
    server.stdin.write("\t".join((str(said), *OPTIONS, *arguments)) + "\n")
    ended = server.stdout.readline()
    if not ended:
        raise RuntimeError(f"the tests of {tree} can't be asked: their process ended with {server.wait()}")
    return int(ended), said.read_text(encoding="utf-8", errors="replace")
