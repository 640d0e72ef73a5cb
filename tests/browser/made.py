"""A small catalog and a small repair, invented, for the notebooks that the tests write themselves."""

import csv
from pathlib import Path

from subsearch.catalog.intake import load

TRAP = '<img src=x onerror="window.ran=1">'  # it would run where a text is taken for markup
HEADINGS = (
    "Manufacturer", "Part number", "Technology", "Polarity", "Capacitance", "Voltage", "Highest temperature", "Life",
    "Style", "Diameter", "Length", "Lead spacing", "Stock", "Price", "Currency",
)  # fmt: skip
PANEL = """from pathlib import Path
from subsearch.display.panel import Panel
"""
POSITION = """capacitance="47 µF", rated_voltage="25 V", role="rail decoupling", polarity="polar",
    hole_spacing_mm="2.5 mm", headroom_mm="15 mm", left_mm="5 mm", right_mm="5 mm", front_mm="5 mm", back_mm="5 mm",
    temperature_c="55 °C", hours_a_day="4", years_wanted="10", pieces="2\""""
REPAIR = """name = "Radio of the weir"
story = "It hums."
hours_a_day = 4
years_wanted = 10
[sections."chassis"]
temperature_c = 50
[cards."main"]
count = 2
section = "chassis"
"""
POSITIONS = """reference,marking,card,role,capacitance,rated_voltage,polarity,plus_towards,hole_spacing_mm,headroom_mm
C1,47/25,main,rail decoupling,47 µF,25 V,polar,left,2.5,15
C2,47/35,main,coupling,47 µF,35 V,polar,right,2.5,13
"""


def make_catalog(folder: Path, *, maker: str = "Grisbeck", supplier: str = "Weir Barn") -> None:
    """Write parts.duckdb with parts from 16 to 63 V, the higher the voltage the larger."""
    sizes = [(16, 5, 2), (25, 5, 2), (35, 6.3, 2.5), (50, 6.3, 2.5), (63, 8, 3.5)]
    with (folder / "list.csv").open("w", encoding="utf-8", newline="") as file:
        lines = csv.writer(file)
        lines.writerow(HEADINGS)
        for volts, wide, spacing in sizes:
            lines.writerow(
                [maker, f"{maker} {volts}", "Al electrolytic", "polar", "47 µF", f"{volts} V", "105 °C", "5000 h",
                 "radial", f"{wide} mm", "11 mm", f"{spacing} mm", 400, volts / 100, "EUR"]
            )  # fmt: skip
    load(folder / "parts.duckdb", [folder / "list.csv"], supplier=supplier)


def make_repair(folder: Path) -> None:
    """Write the folder of a repair with two positions."""
    folder.mkdir()
    (folder / "repair.toml").write_text(REPAIR, encoding="utf-8")
    (folder / "positions.csv").write_text(POSITIONS, encoding="utf-8")


def rows_of(folder: Path) -> dict[str, dict[str, str]]:
    """The rows of a repair's positions.csv by reference."""
    with (folder / "positions.csv").open(encoding="utf-8", newline="") as file:
        return {row["reference"]: row for row in csv.DictReader(file)}
