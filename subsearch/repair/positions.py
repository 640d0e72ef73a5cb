"""One position on the board, as the builder records it: what each column of positions.csv is called and may hold."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from math import inf
from typing import Any

from subsearch.errors import QuantityError, nearest, one_of
from subsearch.reading.cells import reader_of
from subsearch.terms import ROLES, TERMS
from subsearch.units import read_quantity, show

MOST_F = TERMS["capacitance_f"].high or inf
Cell = Callable[[str], Any]


def _cell(read: Cell, heading: str = "") -> Any:
    return field(default=None, metadata={"read": read, "heading": heading})


def _text(heading: str = "") -> Any:
    return _cell(str, heading)


def _number(  # noqa: PLR0913 - each is one limit a column may have
    unit: str, prefix: str = "", heading: str = "", above: float = -inf, least: float = -inf, most: float = inf
) -> Any:
    def read(text: str) -> float:
        value = read_quantity(text, unit, prefix)
        if value <= above:
            raise QuantityError(f'"{text}" is not above {above:g}. Write a positive size or leave it empty.')
        if value < least:
            raise QuantityError(f'"{text}" is below {least:g}. Write {least:g} or more, or leave it empty.')
        if value > most:
            raise QuantityError(f'"{text}" is more than {show(most, unit)}. Look at its prefix.')
        return value

    return _cell(read, heading)


def _word(*allowed: str) -> Any:
    def read(text: str) -> str:
        if text.lower() not in {word.lower() for word in allowed}:
            hint = nearest(text, [word.lower() for word in allowed])
            raise QuantityError(f'"{text}" is not allowed.{hint} Write {one_of(allowed)}, or leave it empty.')
        return next(word for word in allowed if word.lower() == text.lower())

    return _cell(read)


def _yes_no() -> Any:
    word = _word("yes", "no").metadata["read"]
    return _cell(lambda text: word(text) == "yes")


def _tolerance(text: str) -> tuple[float, float]:
    stated: Any = reader_of("tolerance")(text)
    return stated["tolerance_low_pct"], stated["tolerance_high_pct"]


@dataclass(frozen=True)
class Rating:
    """A voltage rating [V], and whether it is an a.c. one."""

    volts: float
    ac: bool


def read_rating(text: str) -> Rating:
    """A voltage rating as the trade writes it: d.c. unless it says a.c.

    >>> read_rating("63 V"), read_rating("275 V a.c.")
    (Rating(volts=63.0, ac=False), Rating(volts=275.0, ac=True))
    """
    plain = text.lower().replace(".", "").replace(" ", "")
    ac = plain.endswith(("~", "ac", "vac"))
    value = read_quantity(text, "V")
    if value <= 0:
        raise QuantityError(f'"{text}" is not a voltage above 0. Write it like 63 V or 275 V a.c.')
    return Rating(value, ac)


@dataclass(frozen=True, kw_only=True)
class Position:
    """One row of positions.csv. All but the reference and the marking may be empty (None): then nothing is asked."""

    reference: str = field(metadata={"read": str, "heading": ""})
    card: str | None = _text()
    section: str | None = _text()
    role: str | None = _word(*ROLES)
    marking: str | None = _text()
    old_technology: str | None = _text()
    old_tolerance_pct: tuple[float, float] | None = _cell(_tolerance, "old_tolerance")
    old_rating: Rating | None = _cell(read_rating)
    safety_class: str | None = _word("X1", "X2", "Y1", "Y2")
    mains: bool | None = _yes_no()
    supply_rail_v: float | None = _number("V", heading="supply_rail")
    capacitance_f: float | None = _number("F", heading="capacitance", above=0, most=MOST_F)
    rated_voltage: Rating | None = _cell(read_rating)
    sections: str | None = _text()
    polarity: str | None = _word("polar", "bipolar")
    plus_towards: str | None = _text()
    lead_style: str | None = _word("radial", "axial", "snap-in")
    hole_spacing_mm: float | None = _number("mm", above=0)
    hole_diameter_mm: float | None = _number("mm", above=0)
    plated: bool | None = _yes_no()
    left_mm: float | None = _number("mm", above=0)
    right_mm: float | None = _number("mm", above=0)
    front_mm: float | None = _number("mm", above=0)
    back_mm: float | None = _number("mm", above=0)
    free_diameter_mm: float | None = _number("mm", above=0)
    headroom_mm: float | None = _number("mm", above=0)
    may_lie_flat: bool | None = _yes_no()
    temperature_c: float | None = _number("°C")
    temperature_uncertain_k: float | None = _number("K", least=0)
    hot_part_k: float | None = _number("K", least=0)
    dc_lowest_v: float | None = _number("V")
    dc_highest_v: float | None = _number("V")
    ac_peak_v: float | None = _number("V", least=0)
    fault_v: float | None = _number("V")
    ripple_a: float | None = _number("A", "m", "ripple_ma", above=0)
    ripple_hz: float | None = _number("Hz", above=0)
    esr_least_ohm: float | None = _number("Ω", above=0)
    esr_most_ohm: float | None = _number("Ω", above=0)
    esr_hz: float | None = _number("Hz", above=0)
    leakage_most_a: float | None = _number("A", "µ", "leakage_most_ua", above=0)
    source_ohm: float | None = _number("Ω", least=0)
    load_ohm: float | None = _number("Ω", least=0)
    match_group: str | None = _text()
    reading_capacitance_f: float | None = _number("F", heading="reading_capacitance", above=0)
    reading_esr_ohm: float | None = _number("Ω", least=0)
    reading_tan_delta: float | None = _number("")
    reading_leakage_a: float | None = _number("A", "µ", "reading_leakage_ua")
    meter_hz: float | None = _number("Hz", above=0)
    test_v: float | None = _number("V")
    measured: str | None = _word("in circuit", "one lead lifted", "out")
    visual: str | None = _text()
    pinned_maker: str | None = _text()
    pinned_part_number: str | None = _text()
    note: str | None = _text()

    @property
    def name(self) -> str:
        """The reference with its card: "C4 (tone generator)"."""
        return name_of(self.reference, self.card)


def name_of(reference: str, card: str | None) -> str:
    """What a position is called: its reference with its card.

    >>> name_of("C4", "tone generator"), name_of("C4", "")
    ('C4 (tone generator)', 'C4')
    """
    return f"{reference} ({card})" if card else reference


COLUMNS = {one.metadata["heading"] or one.name: one for one in fields(Position)}
"""The headings of positions.csv, each with the field of a position that it fills."""


def values_of(cells: Mapping[str, str]) -> tuple[dict[str, Any], dict[str, str]]:
    """The values of a position by field, and by heading a sentence for each cell that can't be read.

    Args:
        cells: texts by heading of positions.csv; a blank one states nothing.

    >>> values_of({"reference": "C7", "headroom_mm": "12,5", "plated": " ", "mains": "2"})
    ({'reference': 'C7', 'headroom_mm': 12.5}, {'mains': '"2" is not allowed. Write yes or no, or leave it empty.'})
    """
    values: dict[str, Any] = {}
    faults: dict[str, str] = {}
    for heading, text in ((heading, cell.strip()) for heading, cell in cells.items()):
        if text:
            try:
                values[COLUMNS[heading].name] = COLUMNS[heading].metadata["read"](text)
            except QuantityError as error:
                faults[heading] = str(error)
    return values, faults
