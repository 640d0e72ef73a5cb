"""The whole folder: what it is, the lists, the rates, the repair."""

from pathlib import Path

from demo_maker.files import write_lists
from demo_maker.organ import write_organ

RATES = "currency,worth,dated\nEUR,1,2026-10-12\nGBP,1.17,2026-10-12\n"
README = """\
# Demonstration data

Everything in this folder is invented: the makers, the series, the parts and their claims, the suppliers, the prices,
the exchange rates and the organ. Nothing here describes a thing that can be bought, and no figure may be used for a
real repair.

| file | what it is |
| --- | --- |
| `lists/` | price lists of four suppliers, each in its own manner; some lines are spoiled on purpose |
| `rates.csv` | what one unit of a currency is worth in euros; the Swiss franc is left out on purpose |
| `organ/repair.toml` | a stage organ of 1974: its cards, sections and temperatures |
| `organ/positions.csv` | its capacitors: what they do, what is printed on them, and the space they stand in |

The files are written by `tests/demo_maker`; a test checks that they are exactly what it writes. Change the maker,
not the files:

    PYTHONPATH=tests python -m demo_maker catalog_demo
"""


def write_everything(folder: Path, seed: int = 1974) -> None:
    """Write the whole demonstration folder."""
    write_lists(folder / "lists", seed)
    write_organ(folder / "organ")
    (folder / "rates.csv").write_text(RATES, encoding="utf-8", newline="\n")
    (folder / "README.md").write_text(README, encoding="utf-8", newline="\n")
