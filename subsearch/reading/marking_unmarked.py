"""Values in a marking that are written with a letter, but without a unit: .1K63, 104Z 50 V, old M22 and 10k."""

import re
from decimal import Decimal

from subsearch.errors import QuantityError
from subsearch.reading.codes import part_code
from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, NUM, START, WORD_END, is_round, number
from subsearch.reading.marking_ratings import FIGURES
from subsearch.reading.marking_units import MADE_OF, POWERS
from subsearch.reading.marking_values import farads
from subsearch.reading.tolerance_letters import tolerance_letter_pct
from subsearch.units import show

COMPACT = re.compile(
    rf"{START}(?P<c>\d{{0,4}}[µunp]\d{{0,3}})(?P<t>[JKMGFZ])(?:(?P<volts>\d{{2,4}})\s?V?{WORD_END}|{WORD_END})(?![.,*]\d)"
)
BESIDE = re.compile(  # 470u16, 47n63V
    rf"{START}(?P<c>{NUM})(?P<p>[µunp])(?P<volts>\d{{2,3}})(?P<v>\s?[Vv](?:dc|DC)?)?{WORD_END}(?![.,*]\d)"
)
NO_UNIT = re.compile(
    rf"{START}(?P<n>0?[.,]\d{{1,4}}|\d[.,]\d)\s?(?P<t>[JKZ]|M(?=\d))(?:(?P<volts>\d{{2,4}})V?)?{WORD_END}"
)
THREE = re.compile(
    rf"{START}(?P<n>{NUM})\s*/\s*(?:(?P<t>5|10|20)|\0+)\s*/\s*(?P<volts>\d{{2,4}})\s*V?{WORD_END}(?!\s*(?:/|(?i:{MADE_OF})))"
)
# Central Europe once counted k as 1000 pF, M as 1 µF and G as 1000 µF, also in place of the point. Common practice
OLD = re.compile(
    rf"{START}(?P<w>\d{{0,3}}(?:[.,]\d{{1,2}})?)(?P<p>[kKMG])(?P<d>\d{{0,2}})(?P<slash>\s*/\s*(?:\d+\s*V|\0))?(?![0-9{LETTERS}](?<!V))"
)
FEWEST_PF = 100
OLD_POWERS = {"k": -9, "K": -9, "M": -6, "G": -3}


def unmarked(draft: Draft) -> None:
    """Read values whose unit is left out because letter and voltage follow."""
    if found := COMPACT.search(draft.rest):
        _compact(draft, found)
    elif found := BESIDE.search(draft.rest):
        _beside(draft, found)
    elif found := THREE.search(draft.rest):
        _three(draft, found)
    elif found := NO_UNIT.search(draft.rest):
        _no_unit(draft, found)


def old_letters(draft: Draft) -> None:
    """Read k, M and G as capacitances, where a voltage or the kind of the part says that it is no resistor."""
    found = OLD.search(draft.rest)
    if found is None or not (found["w"] or found["d"]) or (found["d"] and re.search("[.,]", found["w"])):
        return
    if re.fullmatch(r"\d{3}", found["w"]) and not found["w"].endswith("0"):
        return  # 472M is a code with its tolerance
    letter, family = found["p"], draft.stated.get("family")
    rated = "rated_v" in draft.stated or found["slash"]
    evident = family in ("ceramic", "film", "paper", "mica") or found["slash"] if letter in "kK" else rated or family
    value = Decimal(f"{(found['w'] or '0').replace(',', '.')}{'.' + found['d'] if found['d'] else ''}")
    capacitance_f = farads(value, OLD_POWERS[letter]) if value else None
    if not evident or capacitance_f is None or re.search(r"[µunp]F?\b|мкФ", draft.rest):
        return
    piece = draft.take_span(found.start(), found.end("d"))
    draft.state("capacitance_f", capacitance_f, piece)
    sentence = f'"{piece}" was taken as {show(capacitance_f, "F")}, as old lists write it; it may be a resistor.'
    draft.doubt(sentence, "capacitance_f", piece, "a resistor")


def _compact(draft: Draft, found: re.Match[str]) -> None:
    """4n7K and 100nJ63 are complete; the F of 22nF is its unit and no tolerance."""
    if found["t"] == "F" and found["volts"] is None:
        return
    try:
        part = part_code(f"{found['c']}{found['t']}", draft.stated.get("technology", ""))
    except QuantityError:
        return
    piece = draft.take(found)
    draft.state("capacitance_f", part.capacitance_f, piece)
    if part.tolerance_pct:
        draft.state("tolerance", part.tolerance_pct, piece)
    _volts(draft, found["volts"], piece)


def _beside(draft: Draft, found: re.Match[str]) -> None:
    """470u16 is 470 µF 16 V, for no value has so many figures; 1u50 may be either."""
    value, power, volts = number(found["c"], draft.mark).value, POWERS[found["p"]], float(found["volts"])
    capacitance_f = farads(value, power)
    if capacitance_f is None or volts not in FIGURES or (len(found["c"]) == 1 and not found["v"]):
        return
    piece = draft.take(found)
    draft.state("capacitance_f", capacitance_f, piece)
    draft.state("rated_v", volts, piece)
    if not found["v"]:
        sentence = f'"{piece}" was taken as {show(capacitance_f, "F")} {show(volts, "V")}: no V is printed.'
        other = f"{found['c']}.{found['volts']} {found['p']}F" if found["c"].isdigit() else ""
        draft.doubt(sentence, "capacitance_f rated_v", piece, other)


def _volts(draft: Draft, text: str | None, piece: str) -> None:
    if text:
        draft.state("rated_v", float(text), piece)


def _no_unit(draft: Draft, found: re.Match[str]) -> None:
    """.1K63 is 0.1 µF, ±10 %, 63 V: small numbers before letter and voltage are µF."""
    volts = found["volts"]
    rated = "rated_v" in draft.stated or (volts and float(volts) in FIGURES)
    if is_round(found["n"]) and rated:
        _without_unit(draft, found, -6, tolerance_letter_pct(found["t"]))


def _three(draft: Draft, found: re.Match[str]) -> None:
    """0,22/10/400 is value, tolerance and voltage; from 100 on the value is in pF, as on polystyrene."""
    if is_round(found["n"]) and float(found["volts"]) in FIGURES:
        percent = float(found["t"] or 0)
        value = Decimal(found["n"].replace(",", "."))
        _without_unit(draft, found, -12 if value >= FEWEST_PF else -6, (-percent, percent) if percent else None)


def _without_unit(draft: Draft, found: re.Match[str], power: int, tolerance: tuple[float, float] | None) -> None:
    capacitance_f = farads(Decimal(found["n"].replace(",", ".")), power)
    if capacitance_f is not None:
        piece = draft.take(found)
        draft.state("capacitance_f", capacitance_f, piece)
        if tolerance:
            draft.state("tolerance", tolerance, piece)
        _volts(draft, found["volts"], piece)
        draft.doubt(f'"{piece}" was taken as {show(capacitance_f, "F")}: no unit is printed.', "capacitance_f", piece)
