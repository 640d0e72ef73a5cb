"""Rows of text, with their line numbers, out of a CSV or XLSX file: what stands there, before it gets a meaning."""

import csv
import io
import re
from collections import Counter
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from subsearch.errors import ListError

DELIMITERS = ",;\t"
LONGEST_CELL = 100_000_000
SAMPLE = 200
MOST_SHARED = 200_000
FOREIGN = {
    b"PK\x03\x04": "a zip file or spreadsheet; save it with the ending .xlsx if it is one",
    b"\xd0\xcf\x11\xe0": "an old or password-protected office file; save it as CSV (UTF-8) or XLSX",
    b"%PDF": "a PDF; ask for the list as CSV or XLSX",
    b"\xff\xfe": "text in UTF-16; save it as CSV (UTF-8)",
    b"\xfe\xff": "text in UTF-16; save it as CSV (UTF-8)",
}


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


def read_table(file: Path) -> Table:
    """Give the rows of a CSV or XLSX file, without the blank ones.

    file: path ending in .csv, .txt, .tsv or .xlsx. Result: Table with 1-based line numbers. Raises ListError.

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
    if suffix not in (".csv", ".txt", ".tsv", ".xlsx"):
        raise ListError(f'"{file.name}" ends in "{suffix}". Lists are read from .csv, .txt, .tsv or .xlsx files.')
    if file.stat().st_size == 0:
        raise ListError(f'"{file.name}" is empty. Save the list again, with its heading line.')
    if suffix == ".xlsx":
        from subsearch.reading.sheets import read_sheet

        rows, notes = read_sheet(file)
    else:
        rows, notes = _read_csv(file)
    if not rows:
        raise ListError(f'"{file.name}" holds only blank lines. Save the list again, with its heading line.')
    return Table(file, rows, notes, ragged=suffix != ".xlsx")


def _read_csv(file: Path) -> tuple[list[Row], tuple[str, ...]]:
    text, notes = _decoded(file)
    delimiter = _delimiter(text)
    before = csv.field_size_limit(LONGEST_CELL)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    rows, line = [], 1
    seen: dict[str, str] = {}  # equal cells share one string: a list of a million lines stays in memory
    try:
        for cells in reader:
            if any(map(str.strip, cells)):
                rows.append(Row(line, tuple(map(seen.setdefault, cells, cells))))
            if len(seen) > MOST_SHARED:
                seen.clear()
            line = reader.line_num + 1
    except csv.Error as error:
        raise ListError(
            f'"{file.name}", line {line}: the quotation marks do not match ({error}). '
            "Inside a quoted cell write each quotation mark twice, and close the cell."
        ) from error
    finally:
        csv.field_size_limit(before)
    return rows, notes


def _decoded(file: Path) -> tuple[str, tuple[str, ...]]:
    raw = file.read_bytes()
    for start, what in FOREIGN.items():
        if raw.startswith(start):
            raise ListError(f'"{file.name}" is not text but {what}.')
    sample = raw[:65_536]
    control = sum(byte < 32 and byte not in b"\t\r\n\f" for byte in sample)
    if control > len(sample) / 20:
        raise ListError(f'"{file.name}" is not text: it holds binary data. Save the list as CSV (UTF-8) or XLSX.')
    try:
        return raw.decode("utf-8-sig"), ()
    except UnicodeDecodeError:
        pass
    try:
        text = raw.decode("cp1252")
    except UnicodeDecodeError as error:
        raise ListError(
            f'"{file.name}" is neither UTF-8 nor Windows-1252 text (byte {error.start + 1}). Save it as CSV (UTF-8).'
        ) from error
    return text, ("The file is not UTF-8; it was read as Windows-1252. Look at µ, Ω and umlauts.",)


def _delimiter(text: str) -> str:
    """The sign that cuts most lines into the same, large number of cells; a comma between digits proves nothing."""
    lines = [line for line in text[:2_000_000].splitlines()[:SAMPLE] if line.strip()]
    without_decimals = [re.sub(r"(?<=\d),(?=\d)", "", line) for line in lines]
    before = csv.field_size_limit(LONGEST_CELL)
    try:
        return max(DELIMITERS, key=lambda mark: _evenness(without_decimals if mark == "," else lines, mark))
    finally:
        csv.field_size_limit(before)


def _evenness(lines: list[str], delimiter: str) -> int:
    widths: Counter[int] = Counter()
    for line in lines:
        with suppress(csv.Error):  # quotation marks that do not match speak against this delimiter in this line
            widths.update(map(len, csv.reader([line], delimiter=delimiter, strict=True)))
    return max(((width - 1) * count for width, count in widths.items()), default=0)
