"""positions.csv as texts: its headings and its rows, before a cell gets a meaning."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from subsearch.errors import ListError, RepairError, nearest
from subsearch.reading.rows import Row, read_table
from subsearch.reading.spreadsheet_text import as_meant, text_only
from subsearch.repair.positions import COLUMNS

POSITIONS = "positions.csv"
IN_THE_TOML = ("card", "section")  # names that must stand in repair.toml as they stand here


@dataclass(frozen=True)
class PositionRow:
    """One row: the line it begins on, and its cells by heading exactly as they stand in the file."""

    line: int
    as_written: Mapping[str, str]

    @property
    def cells(self) -> dict[str, str]:
        """What each cell says: no blanks around it, no apostrophe that only keeps a spreadsheet from running it."""
        return {heading: said(heading, cell) for heading, cell in self.as_written.items()}


@dataclass(frozen=True)
class PositionRows:
    """The headings of a list of positions, in their order, and its rows."""

    headings: tuple[str, ...]
    rows: tuple[PositionRow, ...]


def position_rows(file: Path) -> PositionRows:
    """The rows of a list of positions; whether their cells can be read is not looked at.

    Raises:
        RepairError: there is no such file or it can't be read, a heading is unknown or there twice, a needed one is
            missing, or a row is wider or narrower than the headings. The text names file and line.
    """
    try:
        table = read_table(file)
    except ListError as error:
        raise RepairError(f"The list of positions: {error}") from error
    headings = tuple(cell.strip() for cell in table.rows[0].cells)
    for heading in headings:
        if heading not in COLUMNS:
            hint = nearest(heading, COLUMNS)
            raise RepairError(f'"{file.name}" has the heading "{heading}", which is none of ours.{hint}')
        if headings.count(heading) > 1:
            raise RepairError(f'"{file.name}" has the heading "{heading}" twice. Keep one of the two columns.')
    if "reference" not in headings or "marking" not in headings:
        raise RepairError(f'"{file.name}" needs the headings reference and marking; it has {", ".join(headings)}.')
    return PositionRows(headings, tuple(_row(file, row, headings) for row in table.rows[1:]))


def rows(folder: Path) -> list[dict[str, str]]:
    """What the cells of each position of a repair's folder say, by heading, in the order of the file.

    Raises:
        RepairError: as `position_rows`.
    """
    return [row.cells for row in position_rows(folder / POSITIONS).rows]


def _row(file: Path, row: Row, headings: tuple[str, ...]) -> PositionRow:
    if len(row.cells) != len(headings):
        raise RepairError(
            f'"{file.name}", line {row.line}: {len(row.cells)} cells under {len(headings)} headings. Add or remove '
            "separators."
        )
    return PositionRow(row.line, dict(zip(headings, row.cells, strict=True)))


def said(heading: str, cell: str) -> str:
    """What a cell under that heading says.

    >>> said("marking", " '=1+1 "), said("headroom_mm", "12 ")
    ('=1+1', '12')
    """
    return cell.strip() if heading in IN_THE_TOML else as_meant(cell.strip())


def written(heading: str, text: str) -> str:
    """A text as a cell under that heading: what is no number never becomes a formula.

    >>> written("marking", "=1+1"), written("dc_lowest_v", "-12 V")
    ("'=1+1", '-12 V')
    """
    is_text = COLUMNS[heading].metadata["read"] is str and heading not in IN_THE_TOML
    return text_only(text.strip()) if is_text else text.strip()
