"""Codes in a marking: three digits with their letters, the voltage in two signs before them, R as decimal mark."""

import re

from subsearch.errors import QuantityError
from subsearch.reading.codes import CodedPart, part_code, value_code_f
from subsearch.reading.marking_draft import SAME, Draft
from subsearch.reading.marking_numbers import LETTERS, START, WORD_END
from subsearch.reading.marking_ratings import FIGURES, MAINS_V
from subsearch.reading.marking_values import LEAST_F
from subsearch.reading.tolerance_letters import tolerance_letter_pct
from subsearch.reading.voltage_codes import LISTED
from subsearch.terms import C0G, TANTALUM, TECHNOLOGIES, WET
from subsearch.units import show

CODE = re.compile(
    rf"{START}(?P<v>[0-4][A-HJKLPQVWZ])?(?P<c>[1-9]\d[0-9])(?:(?P<t>[BCDFGJKMZ])(?:(?P<volts>\d{{2,4}})V?)?)?{WORD_END}"
)
PAIR = re.compile(rf"{START}(?P<c>[1-9]\d)(?P<t>[CDFGJK]){WORD_END}")
LONE = re.compile(rf"(?<![0-9{LETTERS}%°±])(?P<t>[JKMGZ]){WORD_END}(?!\s*=)")  # Z = 0.1 Ω is an impedance
VOLTAGE = re.compile(rf"{START}(?P<v>[0-4][A-HJKLPQVWZ]){WORD_END}")
POINT = re.compile(rf"{START}(?P<c>\d{{0,3}}R\d{{1,2}})(?P<t>[JKM])?(?![0-9.,{LETTERS}])")
# The two figures of a value. Source: preferred series (IEC 60063)
PREFERRED = re.compile("1[0123568]|2[0247]|3[0369]|4[37]|5[16]|6[28]|75|82|91")
RESISTOR = ("K", "M")
EVIDENCE = ("rated_v", "rated_ac_v", "technology", "family", "safety_class", "polarity", "capacitance_f", "capacitor")


def codes(draft: Draft) -> None:
    """Read codes that have a letter; what an earlier value contradicts is a doubt."""
    for code in list(CODE.finditer(draft.rest)):
        if code["v"] or code["t"]:
            _code(draft, code)
    if "capacitance_f" in draft.stated and (found := VOLTAGE.search(draft.rest)) and found["v"] in LISTED:
        draft.state("rated_v", float(LISTED[found["v"]]), draft.take(found))
    if found := POINT.search(draft.rest):
        _point(draft, found)


def bare_codes(draft: Draft) -> None:
    """Read three digits alone, which are a code only beside something else that a capacitor has."""
    lone = LONE.search(draft.rest)
    if "capacitance_f" in draft.stated:
        _again(draft)
    elif (lone or _evident(draft)) and (found := _three_digits(draft)):
        _three(draft, found, bool(lone))
    elif draft.stated.get("family") in ("ceramic", "mica") and (found := PAIR.search(draft.rest)):
        piece = draft.take(found)
        draft.state("capacitance_f", float(f"{found['c']}e-12"), piece)
        _tolerance(draft, found["t"], piece)
    if lone and "capacitance_f" in draft.stated and "tolerance" not in draft.stated:
        _tolerance(draft, lone["t"], draft.take(lone))


def _evident(draft: Draft) -> bool:
    return any(name in draft.stated for name in EVIDENCE)


def _three_digits(draft: Draft) -> re.Match[str] | None:
    every = [one for one in CODE.finditer(draft.rest) if not one["v"] and not one["t"]]
    if len(every) > 1 or "safety_class" in draft.stated:
        every = [one for one in every if float(one["c"]) not in FIGURES and float(one["c"]) not in MAINS_V]
    return every[0] if len(every) == 1 else None


def _three(draft: Draft, found: re.Match[str], lone: bool) -> None:
    """Three digits: a code on ceramic, film and tantalum; on a can 470 is 470 µF in full, left for another step."""
    ceramic = draft.stated.get("family") in ("ceramic", "mica")
    can = draft.stated.get("technology") == WET or draft.stated.get("polarity") is not None
    in_full = found["c"].endswith("0")
    if can or (in_full and not ceramic and not lone):
        return
    code_f, full_f = value_code_f(found["c"]), float(f"{found['c']}e-12")
    piece = draft.take(found)
    draft.state("capacitance_f", full_f if in_full else code_f, piece)
    shown, other = (show(one, "F") for one in ((full_f, code_f) if in_full else (code_f, full_f)))
    if in_full:
        draft.doubt(f'"{piece}" was taken as {shown} in full; it may be a code.', "capacitance_f", piece, other)
    elif not (ceramic or lone or "capacitor" in draft.stated or draft.stated.get("technology") == TANTALUM):
        sentence = f'"{piece}" was taken as a code for {shown}; no unit is printed.'
        draft.doubt(sentence, "capacitance_f", piece, f"{found['c']} µF")


def _again(draft: Draft) -> None:
    """The value said again as a code, such as 0.1µF (104); another code is a doubt."""
    found = _three_digits(draft)
    if found is None or found["c"] in ("105", "125", "155") or found["c"].endswith(("0", "7", "8")):
        return
    if abs(value_code_f(found["c"]) / draft.stated["capacitance_f"] - 1) < SAME:
        draft.take(found)
    elif PREFERRED.match(found["c"]) and float(found["c"]) not in (*FIGURES, *MAINS_V):
        _contradicts(draft, value_code_f(found["c"]), draft.take(found))


def _contradicts(draft: Draft, code_f: float, piece: str) -> None:
    known, other = show(draft.stated["capacitance_f"], "F"), show(code_f, "F")
    sentence = f'"{piece}" is a code for {other}, which contradicts {known} printed beside it; the latter was taken.'
    draft.doubt(sentence, "capacitance_f", piece, other)


def _technology(draft: Draft) -> str:
    technology = draft.stated.get("technology", "")
    if not technology and draft.stated.get("family") == "ceramic":
        return C0G
    return technology if technology in TECHNOLOGIES else ""


def _tolerance(draft: Draft, letter: str, piece: str) -> None:
    try:
        low_high = tolerance_letter_pct(letter, _technology(draft), draft.stated.get("capacitance_f", float("nan")))
    except QuantityError as error:
        draft.doubt(str(error), "tolerance", piece)
        return
    draft.state("tolerance", low_high, piece, f"{low_high[0]:g}/+{low_high[1]:g} %")


def _code(draft: Draft, found: re.Match[str]) -> None:
    letter = found["t"] or ""
    evident = _evident(draft) or found["v"] or found["volts"] or VOLTAGE.search(draft.rest)
    try:
        part = part_code(f"{found['v'] or ''}{found['c']}{letter}", _technology(draft))
    except QuantityError:
        return  # not a code after all: a later step may know what it is
    if letter and letter in "BCD" and (part.capacitance_f > 10.1e-12 or not evident):
        return
    if letter in RESISTOR and found["c"].endswith("0") and not evident:
        draft.refuse(f'"{found[0]}" reads as a resistor of {found["c"]} {letter.replace("K", "k")}Ω.')
        return
    piece, known = draft.take(found), draft.stated.get("capacitance_f")
    _take_code(draft, part, piece)
    for sentence in part.doubts:
        draft.doubt(sentence, "capacitance_f rated_v tolerance", piece)
    if found["volts"] and float(found["volts"]) in FIGURES:
        draft.state("rated_v", float(found["volts"]), piece)
    shown, other = show(part.capacitance_f, "F"), f"a resistor of {found['c']} kΩ"
    if known is None and letter == "K" and not evident:
        sentence = f'"{piece}" was taken as a code for {shown}; alone it may also be {other}.'
        draft.doubt(sentence, "capacitance_f", piece, other)
    elif known is None and letter and found["c"].endswith("0"):
        sentence = f'"{piece}" was taken as a code for {shown}; some print the value in full.'
        draft.doubt(sentence, "capacitance_f", piece, f"{found['c']} pF")


def _take_code(draft: Draft, part: CodedPart, piece: str) -> None:
    known = draft.stated.get("capacitance_f")
    if known is not None and abs(part.capacitance_f / known - 1) > SAME:
        _contradicts(draft, part.capacitance_f, piece)
    else:
        draft.state("capacitance_f", part.capacitance_f, piece)
    if part.rated_v is not None:
        draft.state("rated_v", part.rated_v, piece, show(part.rated_v, "V"))
    if part.tolerance_pct is not None:
        draft.state("tolerance", part.tolerance_pct, piece)


def _point(draft: Draft, found: re.Match[str]) -> None:
    """R47 on a capacitor is 0.47 µF, on a small ceramic one pF; 4R7 alone is a resistor."""
    leading, evident = found["c"].startswith(("R", "0R")), _evident(draft)
    if not leading and not evident:
        draft.refuse(f'"{found[0]}" reads as a resistor: the R stands in place of the decimal mark of ohms.')
    if "capacitance_f" in draft.stated or draft.against or not re.search("[1-9]", found["c"]):
        return
    capacitance_f = value_code_f(found["c"].removeprefix("0"), _technology(draft) or WET)
    if not float(LEAST_F) <= capacitance_f:
        return
    piece = draft.take(found)
    draft.state("capacitance_f", capacitance_f, piece)
    if found["t"]:
        _tolerance(draft, found["t"], piece)
    if not _technology(draft):
        shown, small = show(capacitance_f, "F"), show(capacitance_f * 1e-6, "F")
        sentence = f'"{piece}" was taken as {shown}: the R is only a decimal mark. On a small ceramic it is pF, else Ω.'
        draft.doubt(sentence, "capacitance_f", piece, f"{small}, or a resistor")
