"""Rows of text out of the first sheet of an XLSX file that holds anything."""

import datetime
import zipfile
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Any

from subsearch.errors import ListError
from subsearch.reading.rows import Row

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook


def read_sheet(file: Path, wanted: Callable[[list[Row]], bool] | None = None) -> tuple[list[Row], tuple[str, ...]]:
    """Give the rows of the first sheet that holds anything, or that is wanted, and notes on what was left out.

    file: path of an XLSX file. wanted: tells by its rows whether a sheet is; where none is, the first counts.
    Result: rows and notes. Raises ListError.
    """
    if file.read_bytes()[:4] == b"\xd0\xcf\x11\xe0":
        raise ListError(f'"{file.name}" is protected by a password or is an old .xls file. Save it as a plain XLSX.')
    if not zipfile.is_zipfile(file):
        raise ListError(f'"{file.name}" is not an XLSX file, or it is damaged. Save the list again as XLSX or CSV.')
    book = _opened(file)
    try:
        sheets = [(name, _rows(book[name])) for name in _readable(book)]
    except Exception as error:  # the reader's own errors for damaged sheets share no parent
        raise ListError(
            f'"{file.name}" can\'t be read as XLSX ({error}). Save the list again as XLSX or CSV.'
        ) from error
    finally:
        book.close()
    filled = [(name, rows) for name, rows in sheets if rows]
    if not filled:
        return [], ()
    name, rows = next((one for one in filled if wanted and wanted(one[1])), filled[0])
    others = ", ".join(f'"{other}"' for other, _ in filled if other != name)
    notes = [f'Only the sheet "{name}" was read, not {others}.'] if others else []
    notes += _unsaved(file)
    return rows, tuple(notes)


def _opened(file: Path) -> "Workbook":
    from openpyxl import load_workbook

    try:
        return load_workbook(file, read_only=True, data_only=True)
    except Exception as error:  # zip, XML and key errors: whatever a damaged file brings about
        raise ListError(
            f'"{file.name}" can\'t be read as XLSX ({error}). Save the list again as XLSX or CSV.'
        ) from error


def _readable(book: "Workbook") -> list[str]:
    return [sheet.title for sheet in book.worksheets]


def _rows(sheet: Any) -> list[Row]:
    sheet.reset_dimensions()
    return list(_filled(sheet))


def _filled(sheet: Any) -> Iterator[Row]:
    for line, cells in enumerate(sheet.iter_rows(), 1):
        texts = [_text(cell) for cell in cells]
        while texts and not texts[-1].strip():
            texts.pop()
        if texts:
            yield Row(line, tuple(texts))


def _text(cell: Any) -> str:
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return number_text(value, percent="%" in (cell.number_format or ""))
    if isinstance(value, datetime.datetime):
        return value.date().isoformat() if value.time() == datetime.time() else value.isoformat(" ")
    return str(value)


def number_text(value: int | float, percent: bool = False) -> str:
    """Give a stored number as the shortest text that means it; a cell shown in per cent as "20 %".

    >>> number_text(6.3), number_text(4.7e-06), number_text(100.0), number_text(0.2, percent=True)
    ('6.3', '0.0000047', '100', '20 %')
    """
    number = Decimal(repr(value)) * (100 if percent else 1)
    if not number.is_finite():
        return str(value)
    text = f"{number:f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"{text} %" if percent else text


def _unsaved(file: Path) -> list[str]:
    """A formula cell whose result was never stored reads as empty: say so."""
    with zipfile.ZipFile(file) as archive:
        sheets = [name for name in archive.namelist() if name.startswith("xl/worksheets/sheet")]
        empty = sum(archive.read(name).count(b"<v></v>") + archive.read(name).count(b"<v />") for name in sheets)
        formulas = any(b"<f>" in archive.read(name) or b"<f " in archive.read(name) for name in sheets)
    if formulas and empty:
        return ["The sheet holds formulas without a stored result; they read as empty. Open and save it once."]
    return []
