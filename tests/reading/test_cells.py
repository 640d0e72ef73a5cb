"""One reader for each kind of column: what a cell states, and the fault of one that can't be read."""

from datetime import date
from decimal import Decimal

import pytest

from subsearch.errors import QuantityError
from subsearch.reading.cells import reader_of
from subsearch.reading.numerals import decimal_mark, settled
from subsearch.reading.words import SPOKEN
from subsearch.terms import TERMS


@pytest.mark.parametrize(
    ("kind", "hint", "text", "stated"),
    [
        ("capacitance_f", "", "4,7 µF", {"capacitance_f": 4.7e-6}),
        ("capacitance_f", "u", "47", {"capacitance_f": 47e-6}),
        ("capacitance_f", "", "  ", {}),
        ("rated_v", "", "6V3", {"rated_v": 6.3}),
        ("rated_v", "", "275 V~", {"rated_ac_v": 275.0}),
        ("rated_ac_v", "", "275 V a.c.", {"rated_ac_v": 275.0}),
        ("life_h", "", "2.000 h", {"life_h": 2000.0}),
        ("life_h", "", "2,000", {"life_h": 2000.0}),
        ("esr_hz", "k", "100", {"esr_hz": 100e3}),
        ("tan_delta", "", "0,12", {"tan_delta": 0.12}),
        ("stock", "", ">1000", {"stock": 1000}),
        ("stock", "", "1.000+", {"stock": 1000}),
        ("stock", "", "On Order", {"stock": 0}),
        ("stock", "", "auf Bestellung", {"stock": 0}),
        ("minimum", "", "10 pcs", {"minimum": 10}),
        ("lead_time_days", "", "3 weeks", {"lead_time_days": 21}),
        ("lead_time_days", "", "14", {"lead_time_days": 14}),
        ("unit_price", "", "0,35", {"unit_price": Decimal("0.35")}),
        ("unit_price", "", "€ 0.35", {"unit_price": Decimal("0.35"), "currency": "EUR"}),
        ("unit_price", "", "1.234,50 CHF", {"unit_price": Decimal("1234.5"), "currency": "CHF"}),
        ("unit_price", "GBP", "2", {"unit_price": Decimal(2), "currency": "GBP"}),
        ("unit_price", "", "0.30000000000000004", {"unit_price": Decimal("0.3")}),
        ("unit_price", "", "0", {"unit_price": Decimal(0)}),
        ("currency", "", "£", {"currency": "GBP"}),
        ("date_seen", "", "2026-10-03", {"date_seen": date(2026, 10, 3)}),
        ("date_seen", "", "3.10.2026", {"date_seen": date(2026, 10, 3)}),
        ("traceable", "", "Ja", {"traceable": True}),
        ("traceable", "", "no", {"traceable": False}),
        ("tolerance", "", "±20 %", {"tolerance_low_pct": -20.0, "tolerance_high_pct": 20.0}),
        ("tolerance", "", "20", {"tolerance_low_pct": -20.0, "tolerance_high_pct": 20.0}),
        ("tolerance", "", "+/-5%", {"tolerance_low_pct": -5.0, "tolerance_high_pct": 5.0}),
        ("tolerance", "", "−10 / +50 %", {"tolerance_low_pct": -10.0, "tolerance_high_pct": 50.0}),
        ("tolerance", "", "+50/-10 %", {"tolerance_low_pct": -10.0, "tolerance_high_pct": 50.0}),
        ("tolerance", "", "0/+100 %", {"tolerance_low_pct": 0.0, "tolerance_high_pct": 100.0}),
        ("tolerance", "", "M", {"tolerance_low_pct": -20.0, "tolerance_high_pct": 20.0}),
        ("size", "", "10x16", {"size_1_mm": 10.0, "size_2_mm": 16.0}),
        ("size", "", "Ø 10 × 12,5 mm", {"size_1_mm": 10.0, "size_2_mm": 12.5}),
        ("size", "", "18x9x15", {"size_1_mm": 18.0, "size_2_mm": 9.0, "size_3_mm": 15.0}),
        ("size", "", "Ø10", {"size_1_mm": 10.0}),
        ("style", "", "Snap-in", {"shape": "can", "lead_form": "snap-in"}),
        ("style", "", "Quader", {"shape": "box"}),
        ("style", "", "Through Hole", {}),
        ("style", "", "radial leaded", {"shape": "can"}),
        ("safety_class", "", "X1/Y2", {"safety_class": "Y2"}),
        ("safety_class", "", "Y1 / X1", {"safety_class": "Y1"}),
        ("temperatures", "", "-40…+105 °C", {"lowest_c": -40.0, "rated_c": 105.0}),
        ("maker", "", "  Two   words ", {"maker": "Two words"}),
    ],
)
def test_what_a_cell_states(kind: str, hint: str, text: str, stated: dict[str, object]) -> None:
    assert reader_of(kind, hint)(text) == stated


@pytest.mark.parametrize(
    ("kind", "text", "fault", "sentence"),
    [
        ("rated_v", "6.3 A", "wrong_unit", '"6.3 A" has the unit "A"'),
        ("capacitance_f", "lots", "unreadable", '"lots" is not a quantity in F'),
        ("capacitance_f", "1,250 µF", "unreadable", "may mean thousands or a decimal comma"),
        ("rated_v", "0", "out_of_range", '"0" is outside the sane range of rated_v (rated d.c. voltage): 1 V'),
        ("life_h", "-5 h", "out_of_range", "100 h to 200000 h. Check the cell and the unit in the heading."),
        ("length_mm", "-16 mm", "out_of_range", '"-16 mm" is outside the sane range of a body size: 0.5 mm to 300 mm.'),
        ("diameter_plus_mm", "25", "out_of_range", "a plus tolerance of the body: 0 mm to 20 mm."),
        ("stock", "lots", "unreadable", '"lots" is not a plain number'),
        ("stock", "2.5", "unreadable", '"2.5" is not a whole number, which stock (pieces in stock'),
        ("minimum", "0", "out_of_range", "minimum (fewest pieces one can buy): 1 to 10000000."),
        ("lead_time_days", "soon", "unreadable", '"soon" is not a lead time. Write it in days, like 14.'),
        ("unit_price", "ask", "unreadable", '"ask" is not a price. Write it like 0.35 or 0.35 EUR ('),
        ("unit_price", "$1", "unknown_word", '"$" is the sign of several currencies: USD,'),
        ("unit_price", "-0.30", "out_of_range", "0 to 100000"),
        ("unit_price", "1,250", "unreadable", "may mean thousands or a decimal comma"),
        ("currency", "money", "unknown_word", '"money" is not a currency. Write its three letters, like EUR.'),
        ("date_seen", "10/03/2026", "unreadable", '"10/03/2026" is not a date. Write it as year-month-day,'),
        ("tolerance", "wide", "unreadable", '"wide" is not a tolerance. Write it like ±20 % or -10/+50 %.'),
        ("tolerance", "+10/+50 %", "out_of_range", "tolerance below nominal, a negative number"),
        ("size", "10", "unreadable", '"10" is not a body size in mm. Write it like 10x16, 18x9x15 or Ø10.'),
        ("size", "1x2x3x4", "unreadable", "is not a body size"),
        ("temperatures", "-40", "unreadable", '"-40" is not a range of temperatures. Write it like -40/+105 °C.'),
        ("polarity", "bipollar", "unknown_word", 'Use polar or bipolar. Did you mean "bipolar"?'),
        ("safety_class", "X3", "unknown_word", '"X3" is not a known word for safety_class (class of'),
    ],
)  # fmt: skip
def test_a_fault_has_its_code_and_sentence(kind: str, text: str, fault: str, sentence: str) -> None:
    with pytest.raises(QuantityError) as caught:
        reader_of(kind)(text)
    assert caught.value.fault == fault
    assert sentence in str(caught.value)


def test_every_term_with_words_has_its_table_and_reads_its_own_words() -> None:
    worded = {name: term.words for name, term in TERMS.items() if term.words}
    assert {name: tuple(SPOKEN[name]) for name in worded} == {
        name: tuple(SPOKEN[name]) for name in SPOKEN if set(SPOKEN[name]) <= set(worded[name])
    }
    for name, words in worded.items():
        for word in words:
            expected = word == "yes" if name == "traceable" else word
            assert reader_of(name)(word.upper()) == {name: expected}


def test_no_spoken_word_means_two_things() -> None:
    for name, words in SPOKEN.items():
        spoken = [text for ours, texts in words.items() for text in {ours.casefold(), *texts.casefold().split(", ")}]
        assert len(spoken) == len(set(spoken)), name


def test_every_term_has_a_reader() -> None:
    for name in TERMS:
        assert reader_of(name)("") == {}


def test_the_decimal_mark_of_a_list() -> None:
    assert decimal_mark(["6,3 V", "1.250"]) == ","
    assert decimal_mark(["0.1234 EUR", "1,250"]) == "."
    assert decimal_mark(["6,3", "6.3"]) == ""
    assert decimal_mark(["1.250", "1,250,000", "±20"]) == ""
    assert [settled(text, ",") for text in ("1.250.000 h", "6,3 V", "1.250,5")] == ["1250000 h", "6.3 V", "1250.5"]
    assert [settled(text, ".") for text in ("1,250,000 h", "6.3 V", "1,250.5")] == ["1250000 h", "6.3 V", "1250.5"]
