"""S5: python -m speed.bench_load [LINES [ROUNDS]]: a messy list through the intake, against the bare read of it.

The bare read touches every cell and keeps nothing; the load reads every quantity, refuses lines with their reasons,
merges, orders and keeps history. A second list of the same parts shows how that grows. The parsing alone is measured
on the capacitance cells, against pandas' text operations. The greatest memory is that of a process of its own.
"""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

import duckdb

from speed.messy_list import HEADINGS, spoilt, write_messy
from speed.parsing import parsing
from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.intake import load
from subsearch.catalog.store import open_to_read

LINES = 100_000
BARE, TEXT = Goal("bare read", 7), Goal("pandas, cell by cell", 4, faster=True)
# The kernel counts this for the new process alone; getrusage would tell the parent's peak where that is higher.
MEMORY = """import re, sys
from pathlib import Path
from subsearch.catalog.intake import load
load(Path(sys.argv[1]), [Path(sys.argv[2])])
print(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1])"""


def loaded(*files: Path) -> int:
    """Lines that a load of these lists into a new catalog read, kept and refused as they must be."""
    with TemporaryDirectory() as folder:
        taken = load(Path(folder) / "catalog", files)
        with open_to_read(Path(folder) / "catalog") as con:
            (offers,) = con.execute("select count(*) from offer").fetchall()[0]
    assert [one.refused for one in taken] == [spoilt(one.lines_read) for one in taken]
    assert offers == sum(one.kept for one in taken)
    return sum(one.lines_read for one in taken)


def bare(*files: Path) -> int:
    """The database's own read of the same files as text, touching every cell; the lines it has."""
    con, lines = duckdb.connect(), 0
    columns = ", ".join(f"'c{place}': 'VARCHAR'" for place in range(len(HEADINGS)))
    for file in files:
        lines += con.execute(
            f"""select count(*), bit_xor(hash(columns(*))) from read_csv($1, columns = {{{columns}}},
                auto_detect = false, delim = ';', quote = '', header = true, null_padding = true)""",
            [str(file)],
        ).fetchall()[0][0]
    return lines


def ways(*files: Path) -> dict[str, Callable[[], object]]:
    """Give ours and its rival on these lists."""
    return {"load": lambda: loaded(*files), "bare read": lambda: bare(*files)}


def most_memory(file: Path) -> float:
    """Megabytes that a process which only loads this list takes at most."""
    with TemporaryDirectory() as folder:
        command = [sys.executable, "-c", MEMORY, str(Path(folder) / "catalog"), str(file)]
        done = subprocess.run(command, capture_output=True, text=True, check=True)
    return int(done.stdout) / 1000


def main(lines: int = LINES, rounds: int = ROUNDS) -> None:
    """Measure and print the table."""
    tell_machine(rounds)
    with TemporaryDirectory() as folder:
        first, second = Path(folder) / "messy-list.csv", Path(folder) / "other-list.csv"
        cells = write_messy(first, lines)
        write_messy(second, lines, seed=2, prefix="Y")
        tell(f"S5 load, {lines:,} lines", measured(ways(first), rounds), [BARE])
        tell(f"S5 load, two lists of {lines:,}", measured(ways(first, second), max(1, rounds // 3)), [BARE])
        tell(f"S5 parsing, {lines:,} cells", measured(parsing(cells), rounds), [TEXT])
        print(f"S5 load, {lines:,} lines: at most {most_memory(first):,.0f} MB")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:3]))
