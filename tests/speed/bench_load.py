"""S5: python -m speed.bench_load [LINES]: a messy list through the intake, against the database's bare read of it.

The bare read touches every cell and keeps nothing; the load reads every quantity, refuses lines with their reasons,
merges, orders and keeps history. pandas parses the quantity cells alone, by its own text operations.
"""

import sys
from collections.abc import Callable
from math import isnan
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

import duckdb
import pandas

from speed.rounds import ROUNDS, Goal, measured, tell, tell_machine
from subsearch.catalog.intake import load
from subsearch.catalog.store import open_to_read
from subsearch.errors import QuantityError
from subsearch.reading.cells import reader_of

LINES = 100_000
E12 = ("1", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2")
SPOILT = 100  # one line in so many can't be read
BARE, TEXT = Goal("bare read", 7), Goal("pandas text operations", 4, faster=True)
POWERS = {"F": 1.0, "mF": 1e-3, "µF": 1e-6, "uF": 1e-6, "nF": 1e-9, "pF": 1e-12}


def write_messy(path: Path, lines: int, seed: int = 1) -> list[str]:
    """Write an invented list of that many lines; the capacitance cells, as they stand in it."""
    dice, cells = Random(seed), []
    with path.open("w", encoding="utf-8") as file:
        file.write("Part number;Maker;Technology;Capacitance;Voltage;Size;Shape;Lead spacing;Price;Currency;Stock\n")
        for line in range(lines):
            spaced, unit = dice.choice(("", " ", "  ")), dice.choice(("µF", "uF", "nF"))
            spacing = dice.choice((5, 7.5, 10, 15))
            value = dice.choice(E12) if dice.random() < 0.8 else f"{dice.randint(10, 999)}.0"
            cell = f"{value}{spaced}{unit}" if line % SPOILT else "to be agreed"
            cells.append(cell)
            file.write(
                f"Z{line};{dice.choice(('Grisbeck', 'Holmwater', 'Ravensike'))};film PET;{cell};"
                f"{dice.choice((63, 100, 250, 400))}{spaced}V;{spacing + 3}x{dice.randint(3, 9)}x"
                f"{dice.randint(6, 15)};box;{spacing} mm;{dice.randint(1, 900) / 100:.2f};EUR;"
                f"{dice.randint(0, 5000)}\n"
            )
    return cells


def loaded(file: Path) -> tuple[int, int]:
    """Lines kept and refused by a load into a new catalog."""
    with TemporaryDirectory() as folder:
        (one,) = load(Path(folder) / "catalog", [file])
        with open_to_read(Path(folder) / "catalog") as con:
            (offers,) = con.execute("select count(*) from offer").fetchall()[0]
    assert offers == one.kept
    return one.kept, one.refused


def bare(file: Path) -> tuple[int, int]:
    """The database's own read of the same file as text, touching every cell; the lines it has that are not spoilt."""
    con = duckdb.connect()
    lines, spoilt, *_ = con.execute(
        f"""select count(*), count(*) filter (where "Capacitance" = 'to be agreed'), bit_xor(hash(columns(*)))
        from read_csv('{file}', all_varchar = true, delim = ';', header = true)"""
    ).fetchall()[0]
    return lines - spoilt, spoilt


def read_each(cells: list[str]) -> list[float | None]:
    """The quantities of these cells by our reader, each distinct text once; None where one can't be read."""
    reader = reader_of("capacitance_f")

    def read(text: str) -> float | None:
        try:
            return float(f"{reader(text)['capacitance_f']:.6g}")
        except QuantityError:
            return None

    known = {text: read(text) for text in set(cells)}
    return [known[text] for text in cells]


def by_pandas(cells: list[str]) -> list[float | None]:
    """The same by pandas' text operations."""
    parts = pandas.Series(cells).str.extract(r"^\s*([\d.]+)\s*([mµunp]?F)\s*$")
    values = pandas.to_numeric(parts[0]) * parts[1].map(POWERS).astype(float)
    return [None if isnan(value) else float(f"{value:.6g}") for value in values]


def ways(file: Path) -> dict[str, Callable[[], object]]:
    """Give ours and its rival on one list."""
    return {"load": lambda: loaded(file), "bare read": lambda: bare(file)}


def parsing(cells: list[str]) -> dict[str, Callable[[], object]]:
    """Give ours and its rival on the quantity cells of a list."""
    return {"our reader, distinct texts": lambda: read_each(cells), "pandas text operations": lambda: by_pandas(cells)}


def main(lines: int = LINES, rounds: int = ROUNDS) -> None:
    """Measure and print the table."""
    tell_machine(rounds)
    with TemporaryDirectory() as folder:
        file = Path(folder) / "messy-list.csv"
        cells = write_messy(file, lines)
        tell(f"S5 load, {lines:,} lines", measured(ways(file), rounds), [BARE])
        tell(f"S5 parsing, {lines:,} cells", measured(parsing(cells), rounds), [TEXT])


if __name__ == "__main__":
    main(*map(int, sys.argv[1:2]))
