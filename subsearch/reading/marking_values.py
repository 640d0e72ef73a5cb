"""Capacitances with their unit in a marking, each by itself."""

import re
from collections.abc import Iterator
from decimal import Decimal

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import END, NUM, START, Number, number
from subsearch.reading.marking_units import CENTIMETRE_PF, MADE_OF, UNIT_END, is_unclear, power_of
from subsearch.units import show

MOST_F, LEAST_F = Decimal(10), Decimal("1e-13")  # sane values, as in the terms
AT_MOST_J = 60  # a board-level part that stores more would fill the set: then mF meant microfarad
FEWEST_MF = 30  # so many millifarad stand on no board
# 4u7, u47, 2n2F, 4µF7: the prefix in place of the decimal mark
PLACED = re.compile(
    rf"{START}(?P<w>\d{{0,4}})(?P<p>[µunpmU]|(?<=\d)[NP])(?P<d>\d{{1,3}})(?P<f>F?){END}(?!\*\d)"
    rf"|{START}(?P<w2>\d{{1,3}})(?P<p2>[µunp])F(?P<d2>\d)(?![0-9.,V]){END}"
)
SMALL = r"\d{1,3}(?:[.,]\d{1,8})?[eE]-\d{1,2}|0[.,]\d{7,13}"  # 4.7e-8 F and 0.000000047 F, as programs write them
VALUE = re.compile(rf"{START}(?P<n>{SMALL}|(?<!\d[eE][-+]){NUM})\s*(?P<u>(?i:{MADE_OF}))")
CENTIMETRE = re.compile(rf"{START}(?P<n>{NUM})\s*cm{UNIT_END}")
FEWEST_CM = 20  # a shorter length is a length
USUAL_V = (16.0, 25.0, 35.0, 40.0, 50.0, 63.0, 100.0, 160.0, 250.0, 400.0, 630.0)
HEATER_V = ("5", "6", "12")
PART_NAME = re.compile(r"[A-Z]{2,}[\s-]?$")
FEWEST_P = 10  # fewer are rather pins than pF
OLD_V = 150  # below it uuF is rather a slip for uF than the old unit


def values(draft: Draft) -> None:
    """Read every capacitance that has its unit; the first stands, another one is a doubt."""
    for found in _each(draft):
        _one(draft, *found)
    _centimetres(draft)
    value = next((text for name, text in draft.pieces if name == "capacitance_f"), "")
    if value and draft.printed.lstrip().startswith((f"-{value}", f"\u2212{value}")):
        draft.doubt(f'"{value}" stands behind a minus, and no capacitance is below 0.', "capacitance_f", value)


def farads(value: Decimal, power: int) -> float | None:
    """Give a capacitance [F], or None where none is so small or so large; the point is shifted, nothing multiplied.

    >>> farads(Decimal("4.7"), -6), farads(Decimal("99"), 0)
    (4.7e-06, None)
    """
    exact = value.scaleb(power)
    return float(exact) if LEAST_F <= exact <= MOST_F else None


def _each(draft: Draft) -> Iterator[tuple[re.Match[str], Number, str]]:
    while found := PLACED.search(draft.rest):
        whole, prefix, part = (found["w"], found["p"], found["d"]) if found["p"] else found.group("w2", "p2", "d2")
        if _is_a_device(draft, whole, prefix, part):
            return
        _may_be_something_else(draft, found, whole, prefix, part)
        yield found, Number(Decimal(f"{whole or 0}.{part}")), prefix
    start = 0
    while found := VALUE.search(draft.rest, start):
        start = found.end()
        if _are_pins(draft, found):
            return
        value = number(found["n"], draft.mark)
        if power_of(found["u"]) or farads(value.value, 0) is not None:  # 562F is a code with a letter, not 562 farad
            yield found, value, found["u"]


def _is_a_device(draft: Draft, whole: str, prefix: str, part: str) -> bool:
    """1N60 and 4N35 are semiconductors, 2N2 is 2.2 nF."""
    if prefix in "Nn" and len(part) > 1 and len(whole) == 1 and "rated_v" not in draft.stated:
        draft.refuse(f'"{whole}{prefix}{part}" is the kind of number that diodes, transistors and couplers have.')
        return True
    return False


def _are_pins(draft: Draft, found: re.Match[str]) -> bool:
    """HD-4P and DIP 8P have so many pins; 4P alone may have."""
    if found["u"] != "P" or draft.stated or not found["n"].isdigit():
        return False
    if PART_NAME.search(draft.rest[: found.start()]):
        draft.refuse(f'"{draft.piece(found)}" behind a name tells the number of pins of a connector or a case.')
        return True
    if int(found["n"]) < FEWEST_P:
        piece = draft.piece(found)
        draft.doubt(f'"{piece}" was taken as pF; it may be the number of pins.', "capacitance_f", piece, "pins")
    return False


def _may_be_something_else(draft: Draft, found: re.Match[str], whole: str, prefix: str, part: str) -> None:
    """1u50 may name a voltage, and 6U8 a valve: the first figure of valves is often their heater's voltage."""
    piece = draft.piece(found)
    if len(part) > 1 and whole.strip("0") and float(part) in USUAL_V and "rated_v" not in draft.stated:
        other = f"{whole} {prefix.lower().replace('u', 'µ')}F {part} V"
        draft.doubt(f'"{piece}" was taken as a value alone; it may be {other}.', "capacitance_f rated_v", piece, other)
    if prefix == "U" and whole in HEATER_V and not draft.stated:
        draft.doubt(f'"{piece}" was taken as µF; some valves have such numbers.', "capacitance_f", piece, "a valve")


def _one(draft: Draft, found: re.Match[str], value: Number, unit: str) -> None:
    piece = draft.take(found)
    power = power_in(draft, unit, value.value, piece)
    capacitance_f = farads(value.value, power)
    if capacitance_f is None:
        draft.doubt(f'"{piece}" is no capacitance that a part has.', "capacitance_f", piece)
        return
    first = "capacitance_f" not in draft.stated
    draft.state("capacitance_f", capacitance_f, piece, show(capacitance_f, "F"))
    if value.other is not None and first and (other_f := farads(value.other, power)):
        sentence = (
            f'"{piece}" was taken as {show(capacitance_f, "F")}; with the other decimal mark it is '
            f"{show(other_f, 'F')}, and nothing else in the text decides."
        )
        draft.doubt(sentence, "capacitance_f", piece, show(other_f, "F"))


def power_in(draft: Draft, unit: str, value: Decimal, piece: str) -> int:
    """Give the power of ten of a unit in this marking; of two that it may mean the likelier, and a doubt.

    mF is milli, but old prints mean micro by it: what the part would store tells them apart. uuF is the old unit of
    a pF, or a slip where the voltage is a modern one.
    """
    volts = max(draft.stated.get("rated_v", 0.0), draft.stated.get("rated_ac_v", 0.0))
    if unit.lower() == "uuf" and 0 < volts < OLD_V:
        draft.doubt(
            f'"{piece}" was taken as pF, its old unit; it may be a slip.', "capacitance_f", piece, f"{value} µF"
        )
    if not is_unclear(unit):
        return power_of(unit)
    milli = float(value.scaleb(-3)) * volts**2 / 2 <= AT_MOST_J and value < FEWEST_MF
    taken, other = (-3, -6) if milli else (-6, -3)
    sentence = (
        f'"{piece}" was taken as millifarad; on old parts it may mean microfarad.'
        if milli
        else f'"{piece}" was taken as microfarad, as on old parts; today it means millifarad.'
    )
    other_f = farads(value, other)
    draft.doubt(sentence, "capacitance_f", piece, show(other_f, "F") if other_f else "")
    return taken


def _centimetres(draft: Draft) -> None:
    found = CENTIMETRE.search(draft.rest)
    if found is None or "capacitance_f" in draft.stated:
        return
    value = number(found["n"], draft.mark).value
    capacitance_f = farads(value * Decimal(CENTIMETRE_PF), -12)
    if value >= FEWEST_CM and capacitance_f is not None:
        piece = draft.take(found)
        draft.state("capacitance_f", capacitance_f, piece)
        shown = show(capacitance_f, "F")
        sentence = f'"{piece}" was taken as {shown}: before the war 1 cm meant {CENTIMETRE_PF} pF. It may be a length.'
        draft.doubt(sentence, "capacitance_f", piece)
