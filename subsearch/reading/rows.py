"""Rows of text, with their line numbers, out of a CSV or XLSX file: what stands there, before it gets a meaning."""

import csv
import io
import re
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from subsearch.errors import ListError
from subsearch.reading.decoding import text_of

TEXT_FILES = (".csv", ".txt", ".tsv")
DELIMITERS = ",;\t"
LONGEST_CELL = 100_000_000
SAMPLE = 200
HEAD_TEXT = 2_000_000  # characters in which the sample is looked for
MOST_SHARED = 200_000
NO_DELIMITER = re.compile(r"(?<=\d),(?=\d)|(?<=\d), ?(?=[A-Z]{1,3}\d.*[;\t])")  # the commas of 1,5 and of C1,C2,C3;100n


@dataclass(frozen=True, slots=True)
class Row:
    """One row: the line of the file (or row of the sheet) it begins on, and its cells as they stand."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """All rows of one file that hold anything, what is to be said about reading them, and whether widths are fixed.

    In a CSV file a row with another number of cells is damaged; a sheet has no such thing (`ragged` is False).
    """

    file: Path
    rows: list[Row]
    notes: tuple[str, ...]
    ragged: bool


def read_table(file: Path, wanted: Callable[[list[Row]], bool] | None = None) -> Table:
    """Give the rows of a CSV or XLSX file, without the blank ones.

    file: path ending in .csv, .txt, .tsv or .xlsx. wanted: tells the sheet to read by its rows; else the first that
    holds anything. Result: Table with 1-based line numbers. Raises ListError.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "list.csv"
    ...     _ = file.write_text("number;value\\n\\nA 1;4,7 uF\\n")
    ...     read_table(file).rows
    [Row(line=1, cells=('number', 'value')), Row(line=3, cells=('A 1', '4,7 uF'))]
    """
    file = Path(file)
    if not file.exists():
        raise ListError(f'There is no file "{file}". Check the name and the folder.')
    if file.is_dir():
        raise ListError(f'"{file}" is a folder, not a list. Name the files in it one by one.')
    suffix = file.suffix.lower()
    if suffix not in (*TEXT_FILES, ".xlsx"):
        raise ListError(f'"{file.name}" ends in "{suffix}". Lists are read from .csv, .txt, .tsv or .xlsx files.')
    if file.stat().st_size == 0:
        raise ListError(f'"{file.name}" is empty. Save the list again, with its heading line.')
    if suffix == ".xlsx":
        from subsearch.reading.sheets import read_sheet

        rows, notes = read_sheet(file, wanted)
    else:
        rows, notes = _read_csv(file)
    if not rows:
        raise ListError(f'"{file.name}" holds only blank lines. Save the list again, with its heading line.')
    return Table(file, rows, notes, ragged=suffix != ".xlsx")


def _read_csv(file: Path) -> tuple[list[Row], tuple[str, ...]]:
    text, notes = text_of(file.read_bytes(), file.name)
    return list(csv_rows(text, delimiter_of(text), file.name)), notes


def csv_rows(text: str, delimiter: str, name: str) -> Iterator[Row]:
    """Give the rows of a CSV text that hold anything.

    text: with the ends of its lines as they stand in the file. name: the file's, for the sentence. Raises ListError.

    >>> list(csv_rows('a;b\\r\\n;\\n"c\\nd";e', ";", "list.csv"))
    [Row(line=1, cells=('a', 'b')), Row(line=3, cells=('c\\nd', 'e'))]
    """
    before = csv.field_size_limit(LONGEST_CELL)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    line = 1
    seen: dict[str, str] = {}  # equal cells share one string: a list of a million lines stays in memory
    try:
        for cells in reader:
            if any(map(str.strip, cells)):
                yield Row(line, tuple(map(seen.setdefault, cells, cells)))
            if len(seen) > MOST_SHARED:
                seen.clear()
            line = reader.line_num + 1
    except csv.Error as error:
        raise ListError(
            f'"{name}", line {line}: the quotation marks do not match ({error}). '
            "Inside a quoted cell write each quotation mark twice, and close the cell."
        ) from error
    finally:
        csv.field_size_limit(before)


def delimiter_of(text: str) -> str:
    """Give the sign that cuts most lines into the same, large number of cells.

    text: a CSV text, or its beginning. A comma between digits, or between the names of positions, proves nothing.

    >>> delimiter_of("a;b\\n1,5;2,5\\n")
    ';'
    """
    lines = [line for line in text[:HEAD_TEXT].splitlines()[:SAMPLE] if line.strip()]
    without_lists = [NO_DELIMITER.sub("", line) for line in lines]
    before = csv.field_size_limit(LONGEST_CELL)
    try:
        return max(DELIMITERS, key=lambda mark: _evenness(without_lists if mark == "," else lines, mark))
    finally:
        csv.field_size_limit(before)


def _evenness(lines: list[str], delimiter: str) -> int:
    widths: Counter[int] = Counter()
    for line in lines:
        with suppress(csv.Error):  # quotation marks that do not match speak against this delimiter in this line
            widths.update(map(len, csv.reader([line], delimiter=delimiter, strict=True)))
    return max(((width - 1) * count for width, count in widths.items()), default=0)
