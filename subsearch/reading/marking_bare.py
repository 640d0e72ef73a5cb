"""Numbers without a unit in a marking: microfarad, then volts, where that is how the trade would take them."""

import re
from decimal import Decimal

from subsearch.reading.codes import value_code_f
from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import END, LETTERS, NUM, START, is_round, number
from subsearch.reading.marking_ratings import FIGURES, MAINS_V
from subsearch.reading.marking_values import farads
from subsearch.units import show

TWO = re.compile(rf"(?<![/-]){START}(?P<n>{NUM})\s*(?P<by>[/|*-]|\s)\s*(?P<v>\d{{1,4}}(?:[.,]\d)?){END}(?!\s*/)")
ONE = re.compile(rf"(?<![{LETTERS}]-){START}(?P<n>{NUM}){END}(?![.,*]\d)")  # TO-220 is one word
WHOLE = re.compile(rf"\s*(?P<n>{NUM})\s*")
PLUS = re.compile(r"(?<=[\s\d\0])\+\s*$")
FRACTION = re.compile(r"[1-9]\s*/\s*[2-9]")


def bare_numbers(draft: Draft) -> None:
    """Take numbers without a unit as µF and V, never without a doubt that says so."""
    value = "capacitance_f" not in draft.stated
    volts = not {"rated_v", "rated_ac_v"} & draft.stated.keys()
    if value and volts and (found := TWO.search(draft.rest)):
        _two(draft, found)
        return
    if value and (not volts or {"capacitor", "safety_class"} & draft.stated.keys()):
        _value(draft)
    if volts and "capacitance_f" in draft.stated:
        _volts(draft)


def unsure(draft: Draft) -> None:
    """Doubt what the writer doubted, and tell what a number would be that nothing says is a capacitance."""
    value = next((text for name, text in draft.pieces if name == "capacitance_f"), "")
    if value and "?" in draft.rest:
        draft.doubt(f'A question mark stands beside "{value}": whoever wrote it was not sure.', "capacitance_f", value)
    if value and "polarity" not in draft.stated and (found := PLUS.search(draft.rest)):
        draft.state("polarity", "polar", draft.take(found))
    if not value and not draft.others and (found := WHOLE.fullmatch(draft.rest)):
        text = found["n"]
        other = _as_code(text, Decimal(0)) or (show(full, "F") if (full := farads(number(text).value, -6)) else "")
        draft.doubt(f'"{text}" has no unit; alone it is taken as nothing.', "capacitance_f", text, other)


def _two(draft: Draft, found: re.Match[str]) -> None:
    if FRACTION.fullmatch(found[0]) or float(found["v"].replace(",", ".")) not in FIGURES:
        return
    small = re.match(r"0?[.,]", found["n"])  # .047-400: less than one can only be µF
    words = re.search(r"[^\W\d_]{3}", draft.rest) and "capacitor" not in draft.stated
    if not is_round(found["n"]) or ((found["by"] not in "/*" or words) and not small and not _electrolytic(draft)):
        return
    _keep(draft, found, found["n"], float(found["v"].replace(",", ".")))


def _electrolytic(draft: Draft) -> bool:
    return draft.stated.get("family") in ("electrolytic", "tantalum") or "polarity" in draft.stated


def _value(draft: Draft) -> None:
    """One number beside a voltage: only where no word stands there that is not understood."""
    found = ONE.search(draft.rest)
    if not found or not is_round(found["n"]):
        return
    if re.match(r"0?[.,]", found["n"]) or not re.search(r"[^\W\d_]{2}", draft.rest):
        _keep(draft, found, found["n"], None)


def _volts(draft: Draft) -> None:
    for found in ONE.finditer(draft.rest):
        volts = float(number(found["n"], draft.mark).value)
        if volts in FIGURES or ("safety_class" in draft.stated and volts in MAINS_V):
            piece = draft.take(found)
            draft.state("rated_v", volts, piece)
            draft.doubt(f'"{piece}" was taken as {show(volts, "V")}: no unit is printed.', "rated_v", piece)
            return


def _keep(draft: Draft, found: re.Match[str], text: str, volts: float | None) -> None:
    value = number(text, draft.mark).value
    capacitance_f = farads(value, -6)
    if capacitance_f is None:
        return
    piece = draft.take(found)
    draft.state("capacitance_f", capacitance_f, piece)
    shown, fields = show(capacitance_f, "F"), "capacitance_f"
    if volts is not None:
        draft.state("rated_v", volts, piece)
        shown, fields = f"{shown} {show(volts, 'V')}", "capacitance_f rated_v"
    draft.doubt(f'"{piece}" was taken as {shown}: no unit is printed.', fields, piece, _as_code(text, value))


def _as_code(text: str, value: Decimal) -> str:
    """What three digits would mean as a code."""
    if not re.fullmatch(r"[1-9]\d\d", text):
        return ""
    return f"{show(value_code_f(text), 'F')}, if it is a code"
