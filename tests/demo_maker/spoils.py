"""Ways to spoil a line so that the fault is beyond doubt: (base, changes by slot, faults)."""

from dataclasses import dataclass

Fault = tuple[str, str]
NO_PRICE = ""


@dataclass(frozen=True)
class Spoil:
    """What a line needs to be (any, can, film), the texts put into its slots, and the faults that follow."""

    base: str
    texts: dict[str, str]
    faults: tuple[Fault, ...]


def one(base: str, slot: str, text: str, fault: str, term: str | None = None) -> Spoil:
    """One spoiled cell with one fault."""
    return Spoil(base, {slot: text}, ((term or slot, fault),))


def both(first: Spoil, second: Spoil) -> Spoil:
    """Two spoils in one line."""
    base = first.base if first.base != "any" else second.base
    return Spoil(base, first.texts | second.texts, (*first.faults, *second.faults))


SINGLE = (
    one("any", "capacitance_f", "", "missing"),
    one("any", "capacitance_f", "lots", "unreadable"),
    one("any", "capacitance_f", "4.7 kΩ", "wrong_unit"),
    one("any", "capacitance_f", "-10", "out_of_range"),
    one("can", "rated_v", "", "missing"),
    one("any", "rated_v", "63 A", "wrong_unit"),
    one("any", "rated_v", "plenty", "unreadable"),
    one("any", "rated_v", "-16", "out_of_range"),
    one("any", "part_number", "", "missing"),
    one("any", "technology", "toffee", "unknown_word"),
    one("can", "polarity", "sideways", "unknown_word"),
    one("any", "style", "wobbly", "unknown_word", "shape"),
    one("any", "rated_c", "warm", "unreadable"),
    one("any", "rated_c", "900", "out_of_range"),
    one("can", "life_h", "2000 V", "wrong_unit"),
    one("can", "life_h", "for ever", "unreadable"),
    one("can", "life_basis", "hearsay", "unknown_word"),
    one("can", "ripple_a", "300 mV", "wrong_unit"),
    one("any", "tan_delta", "-0.1", "out_of_range"),
    one("any", "stock", "heaps", "unreadable"),
    one("can", "lead_spacing_mm", "5 V", "wrong_unit"),
    one("can", "lead_spacing_mm", "60", "contradiction"),
    one("film", "polarity", "polar", "contradiction"),
    one("any", "unit_price", NO_PRICE, "missing"),
    one("any", "unit_price", "ask us", "unreadable"),
    one("any", "unit_price", "-0.20", "out_of_range"),
)
LENGTHS = (
    one("can", "length", "-16", "out_of_range", "tall_mm"),
    one("can", "length", "tallish", "unreadable", "tall_mm"),
    one("film", "width", "0", "out_of_range", "across_mm"),
    one("film", "height", "9 V", "wrong_unit", "tall_mm"),
)
SURPLUS = (
    one("any", "condition", "chewed", "unknown_word"),
    one("any", "traceable", "perhaps", "unknown_word"),
    one("any", "from_quantity", "0", "out_of_range"),
)
DOUBLE = (
    both(SINGLE[1], SINGLE[5]),
    both(SINGLE[8], SINGLE[19]),
    both(SINGLE[10], SINGLE[14]),
    both(SINGLE[4], SINGLE[18]),
)


def spoils_of(index: int) -> tuple[Spoil, ...]:
    """The spoils of one list: each kind in two of the four lists, as far as its columns go."""
    single = SINGLE[index % 2 :: 2]
    lengths = () if index == 2 else LENGTHS[index % 2 :: 2]
    return (*single, *lengths, *(SURPLUS if index == 3 else ()), *DOUBLE[index % 2 :: 2])
