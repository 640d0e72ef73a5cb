"""The lists as files."""

import csv
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

from openpyxl import Workbook

from demo_maker.build import build
from demo_maker.layouts import LAYOUTS, Layout
from demo_maker.lists import Line
from demo_maker.writing import Cell

ENCODINGS = {0: ("utf-8", ","), 1: ("cp1252", ";"), 3: ("utf-8-sig", "\t")}


def write_lists(folder: Path, seed: int) -> None:
    """Write the four lists into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for layout, lines in zip(LAYOUTS, build(seed), strict=True):
        if layout.index in ENCODINGS:
            write_csv(folder / layout.file, layout, lines)
        else:
            write_xlsx(folder / layout.file, layout, lines)


def write_csv(path: Path, layout: Layout, lines: list[Line]) -> None:
    """One list as CSV in its encoding."""
    encoding, delimiter = ENCODINGS[layout.index]
    with path.open("w", encoding=encoding, newline="") as stream:
        writer = csv.writer(stream, delimiter=delimiter, lineterminator="\n")
        writer.writerows([text] for text in layout.preamble)
        writer.writerow(layout.slots.values())
        writer.writerows([text_of(value) for value in line.cells] for line in lines)


def text_of(value: Cell) -> str:
    """A cell as text."""
    return value.isoformat() if isinstance(value, date) else str(value)


def write_xlsx(path: Path, layout: Layout, lines: list[Line]) -> None:
    """One list as a workbook with one sheet, numbers as numbers."""
    book = Workbook(write_only=True)
    book.properties.created = book.properties.modified = datetime(2026, 10, 12)
    sheet = book.create_sheet("Price list")
    for text in layout.preamble:
        sheet.append([text])
    sheet.append(list(layout.slots.values()))
    for line in lines:
        sheet.append([stored(value) for value in line.cells])
    book.save(path)


def stored(value: Cell) -> str | int | float | date | None:
    """A cell as a workbook stores it."""
    if isinstance(value, Decimal):
        return int(value) if value == int(value) else float(value)
    return value or None
