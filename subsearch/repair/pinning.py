"""One position's row written back into positions.csv; every other row stays as it was read."""

import csv
import io
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path

from subsearch.errors import CellsError, RepairError, known_word, nearest
from subsearch.reading.rows import DELIMITERS, delimiter_of
from subsearch.repair.folder import read_repair
from subsearch.repair.position_rows import POSITIONS, PositionRow, PositionRows, position_rows, said, written
from subsearch.repair.positions import COLUMNS, name_of, values_of
from subsearch.repair.trial import HEADINGS, Trial, note_of
from subsearch.repair.whole_files import replacing

Cells = Mapping[str, str]
TOLD = re.compile(r"\s*\[Conceded: [^\]]*\]")


def with_part(trial: Trial, maker: str | None, part_number: str) -> dict[str, str]:
    """The cells of a trial with a part pinned, and its concessions told in the note; what was measured stays.

    Args:
        trial: as the part was taken.
        maker: None where the list states none.
        part_number: the maker's.

    >>> with_part(Trial({"reference": "C1", "note": "hums"}), None, "Hollow 1")
    {'reference': 'C1', 'note': 'hums', 'pinned_maker': '', 'pinned_part_number': 'Hollow 1'}
    """
    conceded = note_of(trial)
    note = TOLD.sub("", trial.cells.get("note", "")).strip()  # what was told of a part taken before
    note = f"{note} [{conceded.rstrip('.')}]".strip() if conceded else note
    return {**_own(trial.cells), "note": note, "pinned_maker": maker or "", "pinned_part_number": part_number}


def without_part(cells: Cells) -> dict[str, str]:
    """A row without its pin, and without what was conceded for it.

    >>> without_part({"reference": "C1", "pinned_part_number": "Hollow 1", "note": "hums [Conceded: a]"})
    {'reference': 'C1', 'pinned_part_number': '', 'note': 'hums'}
    """
    emptied = {heading: "" for heading in ("pinned_maker", "pinned_part_number") if heading in cells}
    return {**cells, **emptied, "note": TOLD.sub("", cells.get("note", "")).strip()}


def write_row(folder: Path, cells: Cells) -> dict[str, str] | None:
    """Write one position's row, found by reference and card, or a new one; give the row as it was, None for a new one.

    Args:
        folder: a repair's.
        cells: the whole row by heading; what is not there is left empty. What is common to the repair is not written.

    Raises:
        CellsError: texts can't be read.
        RepairError: there is no reference, or the folder could not be read any more. Then nothing is written.
        UnknownNameError: a heading is none of ours.
    """
    row = {heading: text for heading, text in _own(cells).items() if text}
    values, faults = values_of(row)
    if faults:
        raise CellsError(_name(row), faults)
    if "reference" not in values:
        raise RepairError("The reference is empty. Give the position the name printed on the board.")

    def put(rows: list[PositionRow]) -> list[PositionRow]:
        put_in = [_over(one, row) if _name(one.cells) == _name(row) else one for one in rows]
        is_new = all(_name(one.cells) != _name(row) for one in rows)
        return [*put_in, _over(PositionRow(0, {}), row)] if is_new else put_in

    before = _rewritten(folder, put)
    return next((one.cells for one in before.rows if _name(one.cells) == _name(row)), None)


def remove_row(folder: Path, reference: str, card: str = "") -> dict[str, str]:
    """Take one position's row out; give the row as it was.

    Raises:
        RepairError: there is no such position, or no other. Then nothing is written.
    """
    name, names = name_of(reference, card), [_name(one) for one in _cells(position_rows(folder / POSITIONS))]
    if name not in names:
        raise RepairError(f'"{POSITIONS}" has no position {name}.{nearest(name, names)}')
    before = _rewritten(folder, lambda rows: [one for one in rows if _name(one.cells) != name])
    return next(one.cells for one in before.rows if _name(one.cells) == name)


def _rewritten(folder: Path, change: Callable[[list[PositionRow]], list[PositionRow]]) -> PositionRows:
    """Replace the list of positions by the changed one, once that is read back as it was meant; give what it was."""
    file = folder / POSITIONS
    before = position_rows(file)
    rows = change(list(before.rows))
    new = {heading for one in rows for heading in one.as_written} - set(before.headings)
    headings = [*before.headings, *(heading for heading in COLUMNS if heading in new)]
    with replacing(file) as changed:
        changed.write_bytes(_text(headings, [one.as_written for one in rows]).encode("utf-8"))
        read_repair(folder, changed)
        if _stated(_cells(position_rows(changed))) != _stated(one.cells for one in rows):
            raise RepairError(f'"{file}" would be read otherwise than it is meant, so it is left as it is.')
    return before


def _text(headings: Sequence[str], rows: Sequence[Cells]) -> str:
    """The list as CSV, with commas unless the texts in it would hide them."""
    for delimiter in DELIMITERS:
        out = io.StringIO()
        writer = csv.writer(out, delimiter=delimiter, lineterminator="\n")
        writer.writerow(headings)
        writer.writerows([row.get(heading, "") for heading in headings] for row in rows)
        if delimiter_of(out.getvalue()) == delimiter:
            break
    return out.getvalue()


def _over(old: PositionRow, row: Cells) -> PositionRow:
    """A row with these cells and no others; a cell that says the same stays as it is written."""
    cells = {
        heading: old.as_written[heading] if old.cells.get(heading) == text else written(heading, text)
        for heading, text in row.items()
    }
    return PositionRow(old.line, cells)


def _own(cells: Cells) -> dict[str, str]:
    """What of the cells belongs into positions.csv."""
    known = {known_word(heading, HEADINGS, "a heading"): text for heading, text in cells.items()}
    return {heading: said(heading, text) for heading, text in known.items() if heading in COLUMNS}


def _name(cells: Cells) -> str:
    return name_of(cells.get("reference", ""), cells.get("card", ""))


def _cells(table: PositionRows) -> list[dict[str, str]]:
    return [one.cells for one in table.rows]


def _stated(rows: Iterable[Cells]) -> list[dict[str, str]]:
    """What rows say, whatever columns they leave empty."""
    return [{heading: text for heading, text in row.items() if text} for row in rows]
