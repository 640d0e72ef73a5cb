"""What suppliers write in one cell of words and numbers, read by the reader of markings: there is no second grammar."""

import re
from typing import TYPE_CHECKING

from subsearch.errors import QuantityError
from subsearch.reading.numerals import may_be_code
from subsearch.reading.quantities import Stated, Value, in_range, quantity, term_of
from subsearch.terms import HYBRID, POLYMER, TANTALUM, TERMS, WET

if TYPE_CHECKING:
    from subsearch.reading.markings import Reading

VALUES = ("capacitance_f", "rated_v", "rated_ac_v")
NUMBERS = (
    *VALUES, "diameter_mm", "length_mm", "width_mm", "height_mm", "lead_spacing_mm", "rated_c", "life_h",
)  # fmt: skip
WORDS = ("polarity", "technology", "safety_class")
TOLERANCE = ("tolerance_low_pct", "tolerance_high_pct")
STANDING = (WET, POLYMER, HYBRID, TANTALUM)  # radial ones are round; radial films and ceramics mostly are not
FIRST = re.compile(r"\d+\s?[x×](?=\s*[^\W\d_])", re.IGNORECASE)  # 5 x Elko: perhaps so many for the price
LATER = re.compile(r"(?<![\w.,])\d+\s?(?:[x×]|-?er)(?!\w)", re.IGNORECASE)  # 10er, or 5x behind
TITLE = "title"  # of a table whose values stand elsewhere


def read_capacitance(text: str, prefix: str = "") -> Stated:
    """Give a capacitance, also as it is printed on parts: 474K, 0.1 MFD; a tolerance in the code is stated with it.

    prefix: what a bare number is in. Raises QuantityError.

    >>> read_capacitance("4,7 µF"), read_capacitance("47", "n"), read_capacitance("4n7 K")["tolerance_high_pct"]
    ({'capacitance_f': 4.7e-06}, {'capacitance_f': 4.7e-08}, 10.0)
    """
    if prefix and may_be_code(text):
        raise QuantityError(
            f'"{text}" may be {text} {prefix}F, as the heading says, or a code in pF. Write it with its unit.'
        )
    try:
        return {"capacitance_f": quantity("capacitance_f", text, prefix)}
    except QuantityError as error:
        if error.fault == "wrong_unit" or not re.match(r"[\d.,µμunp]", text) or not any(map(str.isalpha, text)):
            raise  # a bare number may be a code or a value whose unit is forgotten, and no marking has a sign
        reading = _read(f"capacitor {text}")  # its heading says so: 474K is no resistor there
        claims = _claims(reading)
        told = claims.keys() - set(TOLERANCE)
        if told != {"capacitance_f"} or _unsure(reading) or reading.not_a_capacitor:
            raise
        in_range(TERMS["capacitance_f"], float(reading.capacitance_f or 0), text)
        return claims


def read_description(text: str, only: str = "", mark: str = "") -> Stated:
    """Give what a description states without a doubt, and why its value can't be taken, for lines that need it.

    only: "title" leaves the values out. mark: the decimal mark of its list, where that is known. Raises nothing: a
    description may hold any words.

    >>> stated = read_description("Elko 2.2uF 50V bipolar")
    >>> stated["capacitance_f"], stated["rated_v"], stated["polarity"]
    (2.2e-06, 50.0, 'bipolar')
    >>> read_description("47/16")
    {'value_doubt': '"47/16" was taken as 47 µF 16 V: no unit is printed.'}
    """
    reading = _read(text, mark)
    claims = {name: value for name, value in _claims(reading).items() if not reading.doubted(_field(name))}
    claims |= _shape(reading, claims, only)
    if only == TITLE:
        return {name: value for name, value in claims.items() if name not in VALUES}
    several = _several(reading, text)
    if several:
        claims = {name: value for name, value in claims.items() if name != "capacitance_f"}
    doubt = several or _doubt(reading)
    return {**claims, "value_doubt": doubt} if doubt else claims


def marked(kind: str, text: str) -> str:
    """Give what the reader of markings makes of a cell of words, or "" where it has a doubt or states more.

    kind: technology or polarity.

    >>> marked("technology", "электролитический"), marked("polarity", "toffee")
    ('wet aluminium', '')
    """
    reading = _read(text)
    return str(_claims(reading).get(kind, "")) if _claims(reading).keys() == {kind} and not _unsure(reading) else ""


def _read(text: str, mark: str = "") -> "Reading":
    from subsearch.reading.markings import read_marking  # many words and patterns, which most lists never need

    return read_marking(text, mark)


def _unsure(reading: "Reading") -> bool:
    return bool(reading.doubts or reading.unread or reading.sections or (reading.count or 1) > 1)


def _field(name: str) -> str:
    return "tolerance" if name in TOLERANCE else name


def _claims(reading: "Reading") -> dict[str, Value]:
    """What it states, each within its sane range."""
    claims: dict[str, Value] = {name: value for name in WORDS if (value := getattr(reading, name))}
    ends = dict(zip(TOLERANCE, reading.tolerance, strict=True)) if reading.tolerance else {}
    for name, value in [*((name, getattr(reading, name)) for name in NUMBERS), *ends.items()]:
        term = term_of(name)
        if value is not None and (term.low is None or term.high is None or term.low <= value <= term.high):
            claims[name] = float(value)
    return claims


def _several(reading: "Reading", text: str) -> str:
    """Why a description may speak of more than one capacitor, or "" where it does not."""
    if reading.sections:
        return f'"{text}" is one can of several capacitors, and a part of the catalog has one capacitance.'
    if (reading.count or 1) > 1:
        return f'"{text}" speaks of {reading.count} capacitors, so what one of them is and costs is not clear.'
    if some := FIRST.match(text.strip()) or LATER.search(reading.unread):
        return f'"{text}" may speak of several capacitors ("{some[0]}"), so what one of them costs is not clear.'
    return ""


def _doubt(reading: "Reading") -> str:
    """Why no value can be taken from a description, or "" where nothing stands against it."""
    if reading.not_a_capacitor:
        return reading.not_a_capacitor
    return " ".join(str(doubt) for doubt in reading.doubts if set(doubt.fields) & set(VALUES))


def _shape(reading: "Reading", claims: Stated, only: str) -> Stated:
    """The shape of the body, as far as the style of its leads, its extents and its technology leave no doubt."""
    if reading.doubted("lead_style"):
        return {}
    if reading.lead_style == "axial":
        return {"shape": "axial"}
    if reading.lead_style == "snap-in":
        return {"shape": "can", "lead_form": "snap-in"}
    if "width_mm" in claims:
        return {"shape": "box"}
    if reading.lead_style != "radial" and "diameter_mm" not in claims:
        return {}
    round_ = claims.get("technology") in STANDING or (only == TITLE and reading.family in (None, "electrolytic"))
    return {"shape": "can"} if round_ and "length_mm" not in claims else {}
