"""The cells of one line of a parts list in their places: swapped, split and joined ones put right, and said."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from subsearch.reading.numerals import may_be_code
from subsearch.reading.parts_list_columns import Columns, is_heading
from subsearch.reading.parts_list_headings import Heading, plain
from subsearch.reading.parts_list_words import NO, NOT_FITTED, YES, words_of
from subsearch.reading.quoting import quoted
from subsearch.reading.reference_names import prefix_of
from subsearch.reading.references import is_references, read_references, split_references
from subsearch.reading.rows import Row
from subsearch.units import PREFIXES, SPELLINGS

BARE = re.compile(r"[-+±]?\s*\d+(?:[.,]\d+)?(?:[eE]-\d{1,2})?(?:\s*(?:/\s*[-+]?|[-+])\s*\d+(?:[.,]\d+)?)?")
YES_WORDS, NO_WORDS = set(words_of(YES)), set(words_of(NO))
MARKS = {word for word in words_of(NOT_FITTED) if len(word) <= 5 and word.isascii()}  # DNP and the like: a whole word
CLEAR = ("DNP", "DNF", "DNI")  # marks that mean nothing else
PHRASES = tuple(word for word in words_of(NOT_FITTED) if word not in MARKS)
UNSURE = ("no load", "not used")  # in a remark they may speak of a current, or of a tap
NOTHING = ("", "n a", "na", "none", "~", "×")  # what stands in a cell that is left out
CUT = (r"\d{1,3}\s*[pnuµμm]?F?\b", r"\d{1,3}\s*[kK]?V")  # what is left of a value, and of a voltage, behind its comma
CODE = "The heading gives a unit, but the number looks like a code in pF: look at the part."
SWAPPED = "Reference and value stand swapped on this line; the cells were believed, not the headings."


@dataclass(frozen=True)
class Arranged:
    """The text of a line's references, its other texts by kind of column, and doubts about it."""

    reference: str
    cells: Mapping[str, str]
    doubts: tuple[str, ...] = ()


def uncut(rows: Sequence[Row]) -> list[tuple[str, ...]]:
    """The cells of each row; of a file that has no delimiter, but commas between references, each line in one cell.

    >>> uncut([Row(1, ("C1 47n",)), Row(2, ("C2", " C3 1u")), Row(3, ("C4 1n",))])
    [('C1 47n',), ('C2, C3 1u',), ('C4 1n',)]
    """
    single = sum(len(row.cells) == 1 for row in rows)
    headed = any(is_heading(row.cells) for row in rows if len(row.cells) > 1)
    if headed or single * 2 < len(rows) or single == len(rows):
        return [row.cells for row in rows]
    return [(", ".join(cell.strip() for cell in row.cells if cell.strip()),) for row in rows]


def unfolded(cells: Sequence[str]) -> Sequence[str]:
    """A line whose columns are kept apart by bars or wide gaps instead of the delimiter of the file, as cells.

    >>> unfolded(["C1   47 µF    25 V"]), unfolded(["C1 | 47n"]), unfolded(["C1", "a  b"])
    (['C1', '47 µF', '25 V'], ['C1', '47n'], ['C1', 'a  b'])
    """
    filled = [cell for cell in cells if cell.strip()]
    if len(filled) != 1:
        return cells
    text = filled[0].strip().strip("|")
    if "|" in text:
        return [piece.strip() for piece in text.split("|")]
    pieces = re.split(r"\s{2,}", text.strip())
    return pieces if len(pieces) > 1 else cells


def arranged(cells: Sequence[str], columns: Columns) -> Arranged:
    """A line's cells by what they hold.

    cells: as they stand. columns: what the headings, or the cells below them, say of each place.
    """
    cells, doubts = _joined(list(cells), columns)
    at = columns.reference
    reference = cells[at] if at is not None and at < len(cells) else ""
    rest = {place: cell for place, cell in enumerate(cells) if place != at and cell.strip()}
    if not (reference.strip() and is_references(reference)) and not columns.bare_numbers:
        reference, rest, said = _searched(reference, rest, columns)
        doubts += said
    if names_only := split_references(reference)[0] if not is_references(reference) else "":
        behind = split_references(reference)[1]
        reference = names_only
        place = columns.value if columns.value is not None and columns.value not in rest else -1
        rest[place] = " ".join(filter(None, (rest.get(place, ""), behind)))
    if any(_is_code(cell, columns.kinds.get(place)) for place, cell in rest.items()):
        doubts.append(CODE)
    return Arranged(reference, _by_kind(rest, columns), tuple(doubts))


def _is_code(cell: str, heading: Heading | None) -> bool:
    """Whether a bare number under a heading of values with a unit looks like a code in pF."""
    return bool(heading and heading.kind == "value" and heading.unit and may_be_code(cell))


def _joined(cells: list[str], columns: Columns) -> tuple[list[str], list[str]]:
    """References that unquoted commas have cut into several cells, joined again; so are cut decimals."""
    at, surplus = columns.reference, len(cells) - columns.width
    doubts: list[str] = []
    if at is None or not columns.width or surplus <= 0 or at >= len(cells) or not is_references(cells[at]):
        return cells, doubts
    while surplus > 0 and at + 1 < len(cells) and is_references(cells[at + 1]):
        cells[at : at + 2] = [f"{cells[at]}, {cells[at + 1]}"]
        surplus -= 1
    volts = next((place for place, one in columns.kinds.items() if one.kind == "voltage"), None)
    for place, behind in sorted((place, CUT[place == volts]) for place in {columns.value, volts} if place is not None):
        if surplus > 0 and place + 1 < len(cells):
            whole, part = cells[place].strip(), cells[place + 1].strip()
            if re.fullmatch(r"\d{1,4}", whole) and re.match(behind, part):
                cells[place : place + 2] = [f"{whole},{part}"]
                surplus -= 1
                doubts.append(f"The line has a cell too many: {quoted(whole)} and {quoted(part)} were joined.")
    return cells, doubts


def _searched(reference: str, rest: dict[int, str], columns: Columns) -> tuple[str, dict[int, str], list[str]]:
    """The references of a line that does not have them in their column: swapped with the value, or in another cell."""
    swaps = [columns.value] if columns.value in rest else []
    others = [place for place in rest if columns.kinds.get(place) is None and place != columns.value]
    for place in (*swaps, *others):
        if place is not None and names_capacitors(rest[place]):
            found = rest.pop(place)
            if reference.strip():
                rest[columns.value if columns.value is not None else -1] = reference
            return found, rest, [SWAPPED] if place == columns.value else []
    if not reference.strip() and len(rest) == 1:
        ((place, text),) = rest.items()
        if columns.kinds.get(place) is None and split_references(text)[0]:
            return text, {}, []
    return reference, rest, []


def names_capacitors(cell: str) -> bool:
    """Whether a cell names capacitors one by one and nothing else.

    >>> names_capacitors("C1, C2"), names_capacitors("C1-4"), names_capacitors("R1")
    (True, False, False)
    """
    return (
        is_references(cell)
        and "-" not in cell
        and all(prefix_of(name)[:1] == "C" for name in read_references(cell).names)
    )


def _by_kind(rest: Mapping[int, str], columns: Columns) -> dict[str, str]:
    """The texts by kind of column; what has no heading is description."""
    found: dict[str, list[str]] = {}
    for place in sorted(rest):
        heading = columns.kinds.get(place)
        kind = heading.kind if heading else "description"
        if place in (columns.value, -1):
            kind = "value"
        elif kind in ("reference", "value"):
            kind = "description"
        text = " ".join(rest[place].split())
        if plain(text) in NOTHING:
            continue
        if place in columns.labels and kind == "description":
            text = f"{columns.labels[place]} {text}"
        unit = heading.unit if heading and kind == heading.kind and not _is_code(text, heading) else ""
        found.setdefault(kind, []).append(with_unit(text, unit))
    texts = {kind: " ".join(one) for kind, one in found.items()}
    unit = texts.pop("unit", "")
    return {**texts, "value": with_unit(texts["value"], unit)} if unit and "value" in texts else texts


def with_unit(text: str, unit: str) -> str:
    """A bare number with the unit that its heading gives; any other text as it is.

    >>> with_unit("47", "µF"), with_unit("47n", "µF"), with_unit("25", "V"), with_unit("10", "%")
    ('47 µF', '47n', '25 V', '±10 %')
    """
    if not unit or not BARE.fullmatch(text.strip()):
        return text
    unit = f"{unit}F" if unit in PREFIXES and unit not in SPELLINGS["V"] else unit
    sign = "±" if unit == "%" and text.strip()[0].isdigit() else ""
    return f"{sign}{text.strip()} {unit}"


def states_not_fitted(cells: Mapping[str, str]) -> str:
    """The text that says that nothing is fitted; empty where none does.

    cells: texts by kind of column.

    >>> states_not_fitted({"value": "100n (DNP)"}), states_not_fitted({"fitted": "no"})
    ('DNP', 'no')
    """
    if cells.get("fitted", "").casefold().strip() in NO_WORDS:
        return cells["fitted"]
    marked = cells.get("not_fitted", "").casefold().strip()
    if marked in YES_WORDS:
        return marked
    if re.fullmatch(r"0+", cells.get("quantity", "").strip()):
        return "quantity 0"
    for kind, text in cells.items():
        lower = f" {plain(text)} "
        sure = (one for one in PHRASES if one not in UNSURE or kind == "value" or plain(text) == one)
        if phrase := next((one for one in sure if _contains(lower, one)), ""):
            return phrase
        words = [word.strip("()[],;:") for word in text.split()]
        alone = kind == "value" or len(words) == 1  # in a remark "N.B." and "14 dni" mean something else
        if mark := next((one for one in words if one.casefold() in MARKS and (alone or one in CLEAR)), ""):
            return mark
    return ""


def _contains(padded: str, phrase: str) -> bool:
    """Whether a plain text holds a phrase: whole words, or any run of signs where words are not kept apart."""
    return f" {plain(phrase)} " in padded if phrase.isascii() or " " in phrase else phrase in padded
