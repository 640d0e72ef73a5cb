"""More than one in a marking: several capacitors in one can, how many parts there are, a range or an alternative."""

import re
from decimal import Decimal

from subsearch.reading.marking_draft import SAME, Draft
from subsearch.reading.marking_numbers import END, LETTERS, NUM, START, number
from subsearch.reading.marking_units import MADE_OF, PICO, VALUED, is_unclear, power_of
from subsearch.reading.marking_values import farads
from subsearch.units import show

TIMES = r"(?:\d\s*[xX*]\s*)?"
WITH_UNIT = rf"\s*(?i:{MADE_OF})"
JOINT = re.compile(
    rf"{START}(?P<all>{TIMES}{NUM}(?:{WITH_UNIT})?(?:\s*[+&]\s*{TIMES}{NUM}(?:{WITH_UNIT})?){{1,5}})(?![0-9.,]|\s*/\s*-)"
)
ALIKE = re.compile(  # 40-20-20 MFD, 8/8 µF, 30/30 475 V: three or more, or two equal ones
    rf"{START}(?P<all>(?P<a>{NUM})(?P<by>[-/])(?:(?P=a)|{NUM}(?P=by){NUM}(?:(?P=by){NUM})?)(?:{WITH_UNIT}|(?=\s*\0)))"
)
TWICE = re.compile(  # 50uF/50uF 350V: with the same unit behind both
    rf"{START}(?P<all>(?P<a>{NUM})\s*(?P<u>(?i:{MADE_OF}))\s*/\s*(?P=a)\s*(?P=u))(?![0-9{LETTERS}])"
)
EACH = re.compile(rf"(?:(?P<c>\d)\s*[xX*]\s*)?(?P<n>{NUM})\s*(?P<u>(?i:{MADE_OF}))?")
FEWEST_BARE = 4  # sums of smaller numbers without a unit are something else
EITHER = re.compile(
    rf"{START}(?P<n>{NUM})(?:\s*(?P<u1>(?i:{MADE_OF})))?\s*(?P<by>-|~|/|\.\.\.?|to|or|bis|oder|ou|o|à|a|do|до|или)\s*(?P<n2>{NUM})\s*(?P<u>(?i:{MADE_OF}))"
)
# Words for pieces. Common practice.
PIECES = (
    r"pcs?\.?|ea\.?|pieces|off|stk\.?|stück|st\.|pz\.?|pezzi|pièces|unidades|uds?\.?|piezas|stuks|szt\.?|ks\.?|шт\.?"
    r"|個|个|개"
)
AHEAD = rf"(?=\(?(?:{NUM}{WITH_UNIT}|\d{{0,4}}[µunpUNP]\d))"
# Words for a quantity. Common practice.
QUANTITY = r"qty|quantity|menge|anz(?:ahl)?|qté|q\.?tà|cant\.?|aantal|ilość|počet|кол(?:-во)?|数量|수량|n\.|nr\.?"
QUANTITY_HINTS = ("q", "menge", "anz", "cant", "aantal", "ilo", "poč", "кол", "数量", "수량", "n.", "nr")
NUMBERED = re.compile(
    rf"(?<![{LETTERS}0-9])(?:{QUANTITY})\s*[:.=]?\s*(?P<c>[1-9]\d{{0,3}})(?![0-9{LETTERS}.,])", re.IGNORECASE
)
COUNT = re.compile(rf"{START}(?P<c>[1-9]\d{{0,2}})\s*(?:[xX*]|(?i:{PIECES}))\s*{AHEAD}")
COUNT_BEHIND = re.compile(
    rf"\(\s*[xX*]?\s*(?P<c>[1-9]\d{{0,2}})\s*[xX*]?\s*\)|(?<=[\s\0])[xX*]\s*(?P<c2>[1-9]\d{{0,2}}){END}(?![.,]\d|[\"/]|\s*in\b)"
    rf"|{START}(?P<c5>[1-9]\d{{0,2}})\s?[xX*]\s*$|{START}(?P<c3>[1-9]\d{{0,3}})\s*(?i:{PIECES})(?![A-Za-z])|(?i:lot|pack|set|bag|lotto|lote|satz)\s*(?i:of|de|di|da|von|mit)?"
    rf"\s*(?P<c4>[1-9]\d{{0,2}}){END}"
)
CROSSED = re.compile(rf"{START}(?P<a>\d{{1,3}})\s*[xX*]\s*(?P<b>\d{{1,3}}){END}(?!\s*(?:mm|[xX*]))")
MOST_SECTIONS = 4
SPANS = ("-", "~", "/", "..", "...", "to", "bis")  # not "or": that is an alternative
TRIMMER = Decimal("2.5")  # a value that may be set over such a range is a trimmer's
CAN_F, CAN_V = 4e-6, 150  # from here on two of one value may sit in one can


def several(draft: Draft) -> None:
    """Read sections of one can, a count in front, and two values of which one is meant."""
    _joint(draft)
    numbered = NUMBERED.search(draft.rest) if draft.holds(QUANTITY_HINTS) else None
    if found := numbered or COUNT.search(draft.rest):
        draft.state("count", int(found["c"]), draft.take(found))
    _either(draft)


def bare_cans(draft: Draft) -> None:
    """Read 2x50 or 32x32 beside the voltage of a can, where no unit stands, as its sections, not as a size."""
    found = CROSSED.search(draft.rest)
    if found is None or draft.stated.get("rated_v", 0.0) < CAN_V or VALUED.search(draft.rest):
        return
    first, second = int(found["a"]), int(found["b"])
    few, value = (first, second) if first <= second else (second, first)
    each = [value] * few if 1 < few <= MOST_SECTIONS else [first, second] if first == second else []
    sections = [farads(Decimal(one), -6) for one in each]
    if sections and all(sections):
        _sections(draft, tuple(one for one in sections if one), draft.take(found), bare=True)


def _joint(draft: Draft) -> None:
    """Several capacitors in one can: the last unit holds for those without one."""
    together = JOINT.finditer(draft.rest) if draft.holds("+&") else ()
    for found in [*ALIKE.finditer(draft.rest), *TWICE.finditer(draft.rest), *together]:
        each = [
            (number(one["n"], draft.mark).value, one["u"])
            for one in EACH.finditer(found["all"])
            for _ in range(int(one["c"] or 1))
        ]
        unit = each[-1][1]
        if unit is None and "+" not in found["all"] and draft.stated.get("rated_v", 0.0) < CAN_V:
            continue
        if unit is None and (
            min(value for value, _ in each) < FEWEST_BARE or re.match(r"\s*[V%]", draft.rest[found.end() :])
        ):
            continue
        sections = [farads(value, _power(own or unit or "µF")) for value, own in each]
        if all(sections):
            _sections(draft, tuple(one for one in sections if one), draft.take(found), bare=unit is None)
            return


def _power(unit: str) -> int:
    return -6 if is_unclear(unit) else power_of(unit)


def _sections(draft: Draft, sections: tuple[float, ...], piece: str, bare: bool = False) -> None:
    draft.state("sections", sections, piece)
    draft.state("capacitance_f", sections[0], piece)
    if bare:
        shown = " + ".join(show(one, "F") for one in sections)
        draft.doubt(f'"{piece}" was taken as {shown}: no unit is printed.', "capacitance_f sections", piece)


def _either(draft: Draft) -> None:
    """A range or an alternative in one unit: the first is taken, the other told; a wide range is a trimmer's."""
    if not (found := EITHER.search(draft.rest)) or "sections" in draft.stated:
        return
    power = _power(found["u"])
    first_power = _power(found["u1"] or found["u"])
    first, second = (number(found[name], draft.mark).value for name in ("n", "n2"))
    one_f, other_f = farads(first, first_power), farads(second, power)
    if one_f is None or other_f is None:
        return
    piece = draft.take(found)
    if power == first_power == PICO and found["by"] in SPANS and second >= TRIMMER * first:
        draft.refuse(f'"{piece}" is a range over which a trimmer is set, not the value of a fixed capacitor.')
        return
    draft.state("capacitance_f", one_f, piece)
    if abs(other_f / one_f - 1) > SAME:
        sentence = f'"{piece}" names two values; {show(one_f, "F")} was taken.'
        draft.doubt(sentence, "capacitance_f", piece, show(other_f, "F"))


def count_behind(draft: Draft) -> None:
    """Read how many there are where it stands behind the value, once everything else is read."""
    if "capacitance_f" in draft.stated and (found := COUNT_BEHIND.search(draft.rest)):
        draft.state("count", int(next(text for text in found.groups() if text)), draft.take(found))


def one_can_or_two(draft: Draft) -> None:
    """Two of a large, high-voltage value may be parts or sections of one can; the word for a double can decides."""
    stated = draft.stated
    large = stated.get("capacitance_f", 0.0) >= CAN_F and stated.get("rated_v", 0.0) >= CAN_V
    said = stated.get("double", False)
    if not 2 <= stated.get("count", 0) <= 4 or {"sections", "capacitance_f"} & stated.keys() != {"capacitance_f"}:
        return
    if not (large or said):
        return
    value, count = show(stated["capacitance_f"], "F"), stated["count"]
    piece = next(text for name, text in draft.pieces if name == "count")
    if not said and not re.search("[xX×*х]", piece):
        return  # "2 pieces" are two
    if said:
        draft.pieces = [("sections", text) if name == "count" else (name, text) for name, text in draft.pieces]
        stated["sections"] = (stated["capacitance_f"],) * stated.pop("count")
        return
    together = " + ".join([value] * count)
    sentence = f'"{piece}" was taken as {count} parts of {value}; it may be one can that holds {together}.'
    draft.doubt(sentence, "count sections", piece, f"{together} in one can")
