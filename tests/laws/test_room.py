"""The laws know no database and no table, and load without numpy: the command line must start fast."""

import subprocess
import sys

LOADS_ALL = """
import importlib, pkgutil, sys, subsearch.formulas as room
for module in pkgutil.iter_modules(room.__path__):
    importlib.import_module(f"{room.__name__}.{module.name}")
allowed = {"subsearch", "subsearch.terms", "subsearch.units", "subsearch.errors", room.__name__}
print(sorted(n for n in sys.modules if n.partition(".")[0] in {"duckdb", "_duckdb", "numpy", "pandas"}
             or n.startswith("subsearch") and n not in allowed and not n.startswith(room.__name__ + ".")))
"""


def test_the_room_loads_alone() -> None:
    done = subprocess.run([sys.executable, "-c", LOADS_ALL], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
