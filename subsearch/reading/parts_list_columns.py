"""Which column of a parts list holds what: by its headings, and by its cells where headings are missing or wrong."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence, Set
from dataclasses import dataclass, field
from functools import lru_cache

from subsearch.errors import QuantityError
from subsearch.reading.markings import Reading, read_marking
from subsearch.reading.parts_list_headings import Heading, read_heading
from subsearch.reading.reference_names import prefix_of
from subsearch.reading.references import is_references, read_references
from subsearch.reading.rows import Row

SAMPLE = 400  # rows of a block whose cells are looked at
NEVER_REFERENCES = ("package", "quantity", "voltage", "tolerance", "card")
FREE = ("", "description", "technology", "reference", "value")  # columns whose cells may turn out to be values
reading_of = lru_cache(maxsize=8192)(read_marking)


@dataclass(frozen=True)
class Columns:
    """What each column of a block holds, by its place from 0; `""` is a column without a known heading."""

    kinds: Mapping[int, Heading]
    reference: int | None
    value: int | None
    width: int  # cells of the heading line; 0 where there is none
    bare_numbers: bool = False  # whether positions have numbers without letters
    notes: tuple[str, ...] = ()
    labels: Mapping[int, str] = field(default_factory=dict)  # headings that are not known: told with their cells


def is_heading(cells: Sequence[str]) -> bool:
    """Whether a row is a heading line: two known headings or more, of a reference or a value, and no reference below.

    >>> is_heading(["Ref", "Value", "Shelf"]), is_heading(["C1", "47 µF"]), is_heading(["Name", "Jo"])
    (True, False, False)
    """
    filled = [cell for cell in cells if cell.strip()]
    found = {one.kind for cell in filled if (one := read_heading(cell))}
    known = sum(read_heading(cell) is not None for cell in filled)
    if len(found) < 2 or not found & {"reference", "value"} or known * 2 < len(filled):
        return False
    return not any(is_references(cell) and read_heading(cell) is None for cell in filled)


def find_columns(heading: Sequence[str], rows: Sequence[Row]) -> Columns:
    """What the columns of a block hold.

    heading: the heading line's cells, or none. rows: those below it.

    >>> columns = find_columns(["Value", "Ref"], [Row(2, ("C1", "47 µF")), Row(3, ("C2", "100n"))])
    >>> columns.reference, columns.value, len(columns.notes)
    (0, 1, 1)
    """
    sample = rows[:SAMPLE]
    kinds = {place: one for place, cell in enumerate(heading) if (one := read_heading(cell))}
    names = _by_place(sample, _reference_names)
    reference = _most(names, {place for place, one in kinds.items() if one.kind in NEVER_REFERENCES}, kinds)
    if shift := _shift(kinds, reference, sample, len(heading)):
        kinds = {place + 1: one for place, one in kinds.items()}
    headed = [place for place, one in kinds.items() if one.kind == "reference"]
    bare = reference is None and bool(headed)
    if bare:
        reference = headed[0]
    value = _value(kinds, reference, sample)
    labels = {place + shift: cell.strip() for place, cell in enumerate(heading) if cell.strip()}
    labels = {place: label for place, label in labels.items() if place not in kinds}
    kinds = {**_unheaded(sample, {reference, value, *kinds, *labels}, reference), **kinds}
    notes = _notes(heading, shift, headed, reference, value)
    return Columns(kinds, reference, value, len(heading) + shift, bare, notes, labels)


def _reference_names(cell: str) -> list[str]:
    if not is_references(cell):
        return []
    try:
        return list(read_references(cell).names)
    except QuantityError:
        return [cell]


def _by_place(rows: Sequence[Row], read: Callable[[str], Sequence[str]]) -> Mapping[int, list[str]]:
    """What the cells of each column give."""
    found: dict[int, list[str]] = {}
    for row in rows:
        for place, cell in enumerate(row.cells):
            if cell.strip():
                found.setdefault(place, []).extend(read(cell))
    return found


def _most(names: Mapping[int, list[str]], never: set[int], kinds: Mapping[int, Heading]) -> int | None:
    """The column that names most different positions; those of capacitors count first, then a heading."""

    def weight(place: int) -> tuple[float, bool, int]:
        different = set(names[place])
        capacitors = sum(prefix_of(name)[:1] == "C" for name in different)
        headed = place in kinds and kinds[place].kind == "reference"
        return capacitors + 0.5 * len(different) + (0.5 if headed else 0), headed, -place

    allowed = [place for place, found in names.items() if found and place not in never]
    return max(allowed, key=weight, default=None)


def _shift(kinds: Mapping[int, Heading], reference: int | None, rows: Sequence[Row], width: int) -> int:
    """1 where every row has one more cell in front than the heading line has headings."""
    headed = [place for place, one in kinds.items() if one.kind == "reference"]
    if reference is None or len(headed) != 1 or reference != headed[0] + 1:
        return 0
    return int(Counter(len(row.cells) for row in rows).most_common(1)[0][0] == width + 1)


def _value(kinds: Mapping[int, Heading], reference: int | None, rows: Sequence[Row]) -> int | None:
    """The column of values: the headed one unless it holds the references, else the one that reads most as values."""
    headed = [place for place, one in kinds.items() if one.kind == "value" and place != reference]
    if len(headed) == 1:
        return headed[0]
    places = {place for row in rows for place in range(len(row.cells))} - {reference}
    free = headed or [place for place in sorted(places) if place not in kinds or kinds[place].kind in FREE]
    weights = {place: sum(_readable(row.cells[place]) for row in rows if place < len(row.cells)) for place in free}
    best = max(weights, key=lambda place: weights[place], default=None)
    return best if best is not None and (weights[best] > 0 or headed) else None


def _unheaded(rows: Sequence[Row], taken: Set[int | None], reference: int | None) -> Mapping[int, Heading]:
    """What columns without a known heading hold, where their cells tell: voltages, or numbers that count something."""
    found: dict[int, Heading] = {}
    for place in range(max((len(row.cells) for row in rows), default=0)):
        if place in taken:
            continue
        filled = [row for row in rows if place < len(row.cells) and row.cells[place].strip()]
        cells = [row.cells[place].strip() for row in filled]
        if cells and all(cell.isdecimal() and len(cell) < 5 for cell in cells):
            right = sum(_counts(row.cells, place, reference) for row in filled)
            found[place] = Heading("quantity" if right * 2 > len(filled) else "unused")
        elif cells and 2 * sum(reading_of(cell).rated_v is not None for cell in cells) > len(cells):
            only = all(reading_of(cell).capacitance_f is None for cell in cells)
            found |= {place: Heading("voltage", "V")} if only else {}
    return found


def _counts(cells: Sequence[str], place: int, reference: int | None) -> bool:
    """Whether the number in a cell is that of the line's references."""
    named = _reference_names(cells[reference]) if reference is not None and reference < len(cells) else []
    return int(cells[place].strip()) == len(named)


def _readable(cell: str) -> float:
    """How far a cell reads as a capacitance."""
    reading: Reading = reading_of(cell)
    if reading.capacitance_f is None or is_references(cell):
        return 0
    return 0.3 if reading.doubts else 1


def _notes(
    heading: Sequence[str], shift: int, headed: Sequence[int], reference: int | None, value: int | None
) -> tuple[str, ...]:
    if shift:
        return ("Every line has one cell more in front than the heading line: the headings were moved by one.",)
    if heading and headed and reference is not None and reference not in headed:
        named = f'headed "{heading[reference].strip()}"' if reference < len(heading) else f"{reference + 1}"
        other = f' and values under "{heading[headed[0]].strip()}"' if value == headed[0] else ""
        return (f"The column {named} holds the references{other}: the cells were believed, not the headings.",)
    return ()
