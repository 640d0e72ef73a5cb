"""S9: python -m speed.bench_start: a cold `subsearch find` on the demo, against importing duckdb and the bare query."""

import json
import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory, gettempdir

from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.intake import load
from subsearch.catalog.rates import load_rates
from subsearch.search import statements
from subsearch.search.asking import asked as asked_of
from subsearch.search.candidates import BEST
from subsearch.search.requirement import Requirement
from subsearch.search.weights import Weights
from subsearch.shipped import shipped

GOAL = Goal("duckdb and the bare query", 2)
ASKED = Requirement(capacitance_f=47e-6, rated_v=25, hole_spacing_mm=2.5, headroom_mm=12, working_c=55)
WORDS = (
    "find", "--capacitance", "47 µF", "--voltage", "25 V", "--hole-spacing", "2.5 mm", "--headroom", "12 mm",
    "--temperature", "55 °C",
)  # fmt: skip
FORBIDDEN = ("pandas", "numpy", "altair", "IPython", "ipywidgets", "jupyterlab", "openpyxl", "jinja2")
OURS = "from subsearch.cli import run; run()"
BARE = """import json, sys, duckdb
asked = json.load(open(sys.argv[2], encoding="utf-8"))
cursor = duckdb.connect(sys.argv[1], read_only=True).execute(asked["sql"], asked["parameters"])
names = [column[0] for column in cursor.description]
counts = {row[names.index("answer")]: row[names.index("in_all")] for row in cursor.fetchall()}
print(counts.get(True, 0), counts.get(None, 0))"""


def demo_catalog(folder: Path) -> Path:
    """Give a catalog of the demo's lists."""
    demo, catalog = shipped("catalog_demo"), folder / "demo.duckdb"
    load_rates(catalog, demo / "rates.csv")
    load(catalog, sorted((demo / "lists").iterdir()), seen=date(2026, 10, 1))
    return catalog


def printed(*arguments: str) -> str:
    """What a new process of this Python prints, its modules compiled beforehand as an installation compiles them."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    kept["PYTHONPYCACHEPREFIX"] = str(Path(gettempdir()) / "subsearch-speed-bytecode")
    ended = subprocess.run([sys.executable, *arguments], capture_output=True, check=False, encoding="utf-8", env=kept)
    assert ended.returncode in (0, 1) and not ended.stderr, ended.stderr  # 1: nothing fits, which is an answer too
    return ended.stdout


def imported(catalog: Path) -> set[str]:
    """The modules that a `subsearch find` has imported when it ends."""
    told = printed("-c", f"import sys, atexit; atexit.register(lambda: print(*sys.modules)); {OURS}", *WORDS,
                   "--catalog", str(catalog))  # fmt: skip
    return set(told.splitlines()[-1].split())


def ways(catalog: Path, folder: Path) -> Mapping[str, Callable[[], str]]:
    """Give ours and its rival; each tells how many parts fit and how many are open."""
    bound = folder / "asked.json"
    sql, values = asked_of(statements.find, [ASKED], most=BEST, **Weights().parameters())
    bound.write_text(json.dumps({"sql": sql, "parameters": values}), encoding="utf-8")

    def ours() -> str:
        told = printed("-c", OURS, *WORDS, "--catalog", str(catalog))
        (line,) = [line for line in told.splitlines() if line.startswith("Fitting: ")]
        return " ".join(part.split(": ")[1] for part in line.split(". ")[:2])

    return {
        "subsearch find": ours,
        "duckdb and the bare query": lambda: printed("-c", BARE, str(catalog), str(bound)).strip(),
    }


def main(rounds: int = ROUNDS) -> None:
    """Measure and print the table."""
    tell_machine(rounds)
    with TemporaryDirectory() as folder:
        catalog = demo_catalog(Path(folder))
        tell("S9 cold start", measured(ways(catalog, Path(folder)), rounds), [GOAL])
        needless = imported(catalog) & set(FORBIDDEN)
        print(f"S9 imported without need: {', '.join(sorted(needless)) or 'nothing'}")


if __name__ == "__main__":
    main()
