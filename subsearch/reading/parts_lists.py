"""A parts list, line by line: the references each line names and what its columns say, or why it names none."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from subsearch.errors import ListError, QuantityError
from subsearch.reading.marking_numbers import mark_of
from subsearch.reading.parts_list_cells import arranged, names_capacitors, states_not_fitted, uncut, unfolded
from subsearch.reading.parts_list_columns import SAMPLE, Columns, find_columns, is_heading
from subsearch.reading.parts_list_headings import is_units, with_units
from subsearch.reading.references import is_references, read_references
from subsearch.reading.rows import Row, read_table

HEADING_ROWS = 60  # a heading line stands among so many first rows
ABOVE, HEADING, BLANK, NO_REFERENCE, NOT_FITTED, BAD_RANGE = (
    "above the headings", "headings", "blank", "no reference", "not fitted", "references that can't be read",
)  # fmt: skip
MOST_POSITIONS = 100_000
MARKED = ("value", "voltage", "description", "tolerance")  # columns whose numbers show the decimal mark


@dataclass(frozen=True)
class Listed:
    """One line of a parts list that holds anything.

    `cells` are its texts by kind of column (of HEADINGS, "value" and "description" among them), bare numbers with the
    unit of their heading. `decimal_mark` is that of the whole list, where it leaves no doubt. Where `left` is not
    empty it names no position to look at, and `reason` says why.
    """

    line: int
    text: str
    references: tuple[str, ...] = ()
    cells: Mapping[str, str] = field(default_factory=dict)
    doubts: tuple[str, ...] = ()
    left: str = ""
    reason: str = ""
    decimal_mark: str = ""


@dataclass(frozen=True)
class PartsList:
    """All lines of a parts list that hold anything, in order, and what is to be said about reading them."""

    file: Path
    lines: tuple[Listed, ...]
    notes: tuple[str, ...]


def read_parts_list(file: Path) -> PartsList:
    """The lines of a parts list: CSV, TSV, semicolons or XLSX, in any usual encoding, with or without a heading line.

    file: path ending in .csv, .txt, .tsv or .xlsx. Columns are known by their headings in several languages and by
    their cells; a heading line further down begins anew. Raises ListError.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "list.csv"
    ...     _ = file.write_text("Bauteil;Wert;Spannung\\nC1, C2;47 µF;25\\n", encoding="utf-8")
    ...     lines = read_parts_list(file).lines
    >>> lines[1].references, lines[1].cells
    (('C1', 'C2'), {'value': '47 µF', 'voltage': '25 V'})
    """
    table = read_table(file, _names_parts)
    rows = [Row(row.line, tuple(unfolded(cells))) for row, cells in zip(table.rows, uncut(table.rows), strict=True)]
    notes = list(table.notes)
    lines: list[Listed] = []
    for heading, block in _blocks(rows):
        headings = [heading] if heading else []
        if heading and block and is_units(block[0].cells):
            headings.append(block.pop(0))
        columns = find_columns(with_units([row.cells for row in headings]), block)
        notes += columns.notes
        lines += [Listed(row.line, _text(row), left=HEADING, reason="It holds the headings.") for row in headings]
        lines += _continued([_listed(row, columns) for row in block], block)
    first = next((row for row in rows[:HEADING_ROWS] if is_heading(row.cells)), None)
    if first is None:
        notes.append("No heading line was found: the columns were told apart by their cells.")
    lines = [_above(one) if first and one.line < first.line else one for one in lines]
    if sum(len(one.references) for one in lines) > MOST_POSITIONS:
        raise ListError(f'"{table.file.name}" names more than {MOST_POSITIONS} positions. Look at its ranges.')
    mark = _decimal_mark(lines)
    return PartsList(table.file, tuple(replace(one, decimal_mark=mark) for one in lines), tuple(dict.fromkeys(notes)))


def _decimal_mark(lines: Sequence[Listed]) -> str:
    """The decimal mark of the whole list, "" where its values leave that open or disagree."""
    texts = (one.cells.get(kind, "") for one in lines for kind in MARKED)
    marks = {mark_of(text) for text in texts} - {""}
    return marks.pop() if len(marks) == 1 else ""


def _names_parts(rows: list[Row]) -> bool:
    """Whether a sheet is a parts list: it has a heading line, or three cells at least that name capacitors."""
    if any(is_heading(row.cells) for row in rows[:HEADING_ROWS]):
        return True
    return sum(names_capacitors(cell) for row in rows[:SAMPLE] for cell in row.cells) > 2


def _blocks(rows: Sequence[Row]) -> Iterator[tuple[Row | None, list[Row]]]:
    """Each heading line with the rows below it; first the rows without one. A heading that comes again is one more."""
    heading: Row | None = None
    block: list[Row] = []
    for row in rows:
        if is_heading(row.cells):
            if heading or block:
                yield heading, block
            heading, block = row, []
        else:
            block.append(row)
    yield heading, block


def _text(row: Row) -> str:
    return " | ".join(" ".join(cell.split()) for cell in row.cells if cell.strip())


def _above(one: Listed) -> Listed:
    return replace(one, references=(), left=ABOVE, reason="It stands above the headings.")


def _listed(row: Row, columns: Columns) -> Listed:
    """One row with its references and the texts of its columns."""
    text = _text(row)
    if not any(char.isalnum() for char in text):
        return Listed(row.line, text, left=BLANK, reason="Nothing is written on it.")
    found = arranged(row.cells, columns)
    one = Listed(row.line, text, (), found.cells, found.doubts)
    if columns.bare_numbers and found.reference.strip().isdecimal():
        return _fitted(replace(one, references=(found.reference.strip(),)))
    try:
        read = read_references(found.reference)
    except QuantityError as error:
        return replace(one, left=BAD_RANGE, reason=str(error))
    if not read.names:
        return replace(one, left=NO_REFERENCE, reason="No reference stands on it.")
    return _fitted(replace(one, references=read.names, doubts=(*one.doubts, *read.doubts)))


def _continued(lines: Sequence[Listed], rows: Sequence[Row]) -> Iterator[Listed]:
    """The lines, those with the value of the line before whose references go on in them."""
    before: Listed | None = None
    for line, row in zip(lines, rows, strict=True):
        one = line
        if before and line.references and not line.left and not line.cells:
            said = f"It has the value of line {before.line}, whose references end with a comma."
            one = replace(line, cells=before.cells, doubts=(*line.doubts, said))
        goes_on = any(cell.rstrip().endswith(",") and is_references(cell) for cell in row.cells)
        before = one if goes_on and one.references else None
        yield one


def _fitted(one: Listed) -> Listed:
    piece = states_not_fitted(one.cells)
    return replace(one, left=NOT_FITTED, reason=f'Not fitted: "{piece}".') if piece else one
