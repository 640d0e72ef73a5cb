"""What one line of a parts list claims of its positions, field by field, each with its doubts."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from subsearch.errors import QuantityError
from subsearch.reading.markings import Reading
from subsearch.reading.parts_list_cells import CODE
from subsearch.reading.parts_list_columns import reading_of
from subsearch.reading.parts_lists import Listed
from subsearch.reading.quoting import quoted
from subsearch.reading.sizes import read_spacing
from subsearch.units import show

OWN_COLUMNS = {  # columns beside the value, and what of a reading each may add to it
    "voltage": ("rated_v", "rated_ac_v"),
    "tolerance": ("tolerance",),
    "technology": ("technology",),
    "polarity": ("polarity",),
    "safety_class": ("safety_class",),
}
BESIDE = ("marking", "description", "package")  # texts that may say more than the value, or something else
HEADINGS = {
    "capacitance_f": ("capacitance",),
    "rated_v": ("rated_voltage", "old_rating"),
    "rated_ac_v": ("rated_voltage", "old_rating"),
    "tolerance": ("old_tolerance",),
    "technology": ("old_technology",),
    "polarity": ("polarity",),
    "safety_class": ("safety_class",),
    "lead_style": ("lead_style",),
    "lead_spacing_mm": ("hole_spacing_mm",),
    "sections": ("sections",),
}
SIZES = {"diameter_mm": "diameter", "length_mm": "length", "width_mm": "width", "height_mm": "height"}
LONGEST = 200
TIMES = "The list writes {} of them: look how many stand there."


@dataclass(frozen=True)
class Claim:
    """That a field of positions.csv holds this text, and why it is in doubt ("" where it is not)."""

    heading: str
    text: str
    doubt: str = ""


@dataclass(frozen=True)
class Claims:
    """All that one line says of its positions: its marking, claims by heading, doubts, and what no field holds."""

    marking: str
    claims: tuple[Claim, ...]
    doubts: tuple[str, ...]
    also: tuple[str, ...]
    another_part: str  # why the value is no capacitor's; "" where it may be one's

    @property
    def sure(self) -> bool:
        """Whether a capacitance is stated without doubt."""
        return any(claim.heading in ("capacitance", "sections") and not claim.doubt for claim in self.claims)


def claims_of(line: Listed, by_reference: bool = True) -> Claims:
    """What a line of a parts list claims: its value with the columns beside it first, then description and package.

    Args:
        line: with its texts by kind of column.
        by_reference: whether a reference on it is a capacitor's: then a value like "104" is read as one's.

    >>> found = claims_of(Listed(3, "", ("C1",), {"value": "47 µF", "voltage": "25 V"}))
    >>> found.marking, [(claim.heading, claim.text) for claim in found.claims]
    ('47 µF 25 V', [('capacitance', '47 µF'), ('rated_voltage', '25 V'), ('old_rating', '25 V')])
    """
    marking = _marking(line)
    main = reading_of(marking, line.decimal_mark)
    if by_reference and main.capacitance_f is None and CODE not in line.doubts:
        hinted = reading_of(f"capacitor {marking}", line.decimal_mark)
        main = hinted if hinted.capacitance_f is not None else main
    doubts = [str(doubt) for doubt in main.doubts]
    many = main.count or 1
    if many not in (1, len(line.references)):
        doubts.append(TIMES.format(many))
    claims = list(_claims(main, len(line.references)))
    also = list(_also(main))
    for kind in (*OWN_COLUMNS, *BESIDE, "lead_spacing"):
        text = line.cells.get(kind, "")
        if not text or _holds(marking, text):
            continue
        if kind == "lead_spacing" and not _is_spacing(text):
            also.append(f'lead spacing "{text[:LONGEST]}"')
            continue
        beside = _beside(kind, text, marking, main, line.decimal_mark)
        sure = [claim for claim in _claims(beside, len(line.references)) if not claim.doubt]
        allowed = {heading for field in OWN_COLUMNS.get(kind, HEADINGS) for heading in HEADINGS[field]}
        claims += [claim for claim in sure if claim.heading in allowed]
        also += [said for said in _also(beside) if said not in also]
        if kind in BESIDE and text.casefold() not in {piece.casefold() for _, piece in beside.pieces_of_text}:
            also.append(f'"{text[:LONGEST]}"')
    also += [cells for cells in (line.cells.get("maker"),) if cells]
    another_part = _another_part(main, marking)
    if (
        not doubts
        and main.not_a_capacitor
        and not another_part
        and not any(one.heading == "capacitance" for one in claims)
    ):
        doubts.insert(0, f"No capacitance can be read in {quoted(marking)}.")
    printed = line.cells.get("marking", marking)[:LONGEST]
    return Claims(printed, tuple(claims), tuple(doubts), tuple(also), another_part)


def _another_part(reading: Reading, marking: str) -> str:
    """Why a text is no capacitor's; that nothing can be read in it is no such reason."""
    why = reading.not_a_capacitor
    return "" if not marking or why.startswith("No capacitance can be read") else why


def _marking(line: Listed) -> str:
    """The text of the list that stands for the marking: the value, with what the columns beside it add."""
    cells = line.cells
    value = cells.get("value", "")
    if not value:
        return next((cells[kind] for kind in BESIDE if cells.get(kind)), "")[:LONGEST]
    alone = reading_of(value)
    pieces = [value]
    for kind, fields in OWN_COLUMNS.items():
        stated = alone.capacitance_f is not None and any(getattr(alone, field) for field in fields)
        if cells.get(kind) and not stated:  # a bare 50 alone would be volts
            pieces.append(cells[kind])
    return " ".join(pieces)[:LONGEST]


def _is_spacing(text: str) -> bool:
    """Whether a cell states one lead spacing in mm: not two, none in inches, none that is out of proportion."""
    try:
        return bool(read_spacing("lead_spacing_mm", text))
    except QuantityError:
        return False


def _holds(marking: str, text: str) -> bool:
    return " ".join(text.split()) in marking


def _beside(kind: str, text: str, marking: str, main: Reading, mark: str) -> Reading:
    """What a text from another column says: alone where it states a value, else beside the one that is known.

    Alone, the first of "350/385 V" would be a value.
    """
    text = f"RM {text}" if kind == "lead_spacing" else text.replace("_", " ")  # packages keep words apart so
    alone = reading_of(text, mark)
    sure = alone.capacitance_f is not None and not any("capacitance_f" in doubt.fields for doubt in alone.doubts)
    if sure or main.capacitance_f is None or kind not in BESIDE:
        return alone
    return replace(reading_of(f"{marking} {text}", mark), capacitance_f=None, count=None)


def _claims(reading: Reading, pieces: int) -> Iterator[Claim]:
    """What a reading states, for the fields of positions.csv; what a doubt touches is claimed with it."""
    doubted = {field: str(doubt) for doubt in reading.doubts for field in doubt.fields}
    if (reading.count or 1) not in (1, pieces):
        doubted["capacitance_f"] = doubted.get("capacitance_f") or TIMES.format(reading.count)
    for field, headings in HEADINGS.items():
        value: Any = getattr(reading, field)
        if value in (None, (), "none") or (field == "capacitance_f" and reading.sections):
            continue
        both = field in ("rated_v", "rated_ac_v") and reading.rated_v and reading.rated_ac_v
        for heading in headings if not both else (("rated_voltage",) if field == "rated_v" else ("old_rating",)):
            yield Claim(heading, _text(field, value), doubted.get(field, ""))


def _text(field: str, value: Any) -> str:
    """A value as a cell of positions.csv."""
    if field == "tolerance":
        low, high = value
        return f"±{high:g} %" if -low == high else f"{low:+g}/{high:+g} %"
    if field == "sections":
        return " + ".join(show(one, "F") for one in value)
    if field == "capacitance_f":
        return show(value, "F")
    if field in ("rated_v", "rated_ac_v"):
        return f"{show(value, 'V')}{' a.c.' if field == 'rated_ac_v' else ''}"
    return f"{value:g}" if isinstance(value, float) else str(value)


def _also(reading: Reading) -> Iterator[str]:
    """What a reading states and no field of positions.csv holds: told, since it helps at the bench."""
    if reading.family and not reading.technology:
        yield reading.family
    for field, word in SIZES.items():
        if (size := getattr(reading, field)) is not None:
            yield f"{word} {show(size, 'mm')}"
    if reading.rated_c is not None:
        yield f"made for {show(reading.rated_c, '°C')}"
    if reading.life_h is not None:
        yield show(reading.life_h, "h")
