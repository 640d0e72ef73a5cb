"""Lists with a column of descriptions, price breaks in one cell, stock in words, currencies by signs: invented."""

from decimal import Decimal
from pathlib import Path

import pytest

from subsearch.catalog.facts import Refusal, refusals
from subsearch.catalog.intake import Intake, load
from subsearch.catalog.store import open_to_read

Loaded = tuple[Intake, list[tuple[object, ...]], list[Refusal]]


def loaded(folder: Path, text: str, wanted: str, currency: str | None = None) -> Loaded:
    file = folder / "grey-shed.csv"
    file.write_text(text, encoding="utf-8")
    (intake,) = load(folder / "c", [file], currency=currency)
    with open_to_read(folder / "c") as con:
        rows = con.execute(f"select {wanted} from listing where intake = {intake.number} order by line").fetchall()
        return intake, rows, refusals(con, intake.number)


def test_a_description_states_what_no_column_states(tmp_path: Path) -> None:
    text = """MPN;Description;Capacitance;Price;Max temp
Hollow 1;Elko radial 47µF 63V 105°C RM5;;0,50;
Hollow 2;Elko radial 47µF 63V 105°C;100 µF;0,50;85
Hollow 3;Kondensator;100 µF;0,50;85
"""
    wanted = "part_number, capacitance_f, rated_v, rated_c, technology, shape, lead_spacing_mm"
    _, rows, refused = loaded(tmp_path, text, wanted)
    assert rows == [
        ("Hollow 1", 47e-6, 63.0, 105.0, "wet aluminium", "can", 5.0),
        ("Hollow 2", 100e-6, 63.0, 85.0, "wet aluminium", "can", None),
    ]
    (only,) = refused
    assert (only.line, only.heading, only.term, only.fault) == (4, "Description", "rated_v", "unreadable")
    assert only.reason == 'No capacitance can be read in "Kondensator". Write it like 4.7 µF 63 V.'


def test_a_doubtful_value_refuses_the_line_that_needs_it(tmp_path: Path) -> None:
    text = """MPN;Bezeichnung;Spannung;Kapazität;Preis
Hollow 1;Elko 47/16;;;0,50
Hollow 2;Elko 47/16;16 V;47 µF;0,50
Hollow 3;Widerstand 5k6;16 V;;0,50
Hollow 4;;16 V;;0,50
"""
    _, rows, refused = loaded(tmp_path, text, "part_number, technology")
    assert rows == [("Hollow 2", "wet aluminium")]
    assert [(one.line, one.heading, one.term, one.found, one.fault) for one in refused] == [
        (2, "Bezeichnung", "capacitance_f", "Elko 47/16", "unreadable"),
        (4, "Bezeichnung", "capacitance_f", "Widerstand 5k6", "unreadable"),
        (5, "Kapazität", "capacitance_f", "", "missing"),
    ]
    assert refused[0].reason == '"47/16" was taken as 47 µF 16 V: no unit is printed.'


@pytest.mark.parametrize(("price", "capacitance_f"), [("0,50", 1500e-6), ("0.50", 1.5e-6)])
def test_the_decimal_mark_of_the_list_decides_in_a_description_too(
    tmp_path: Path, price: str, capacitance_f: float
) -> None:
    _, rows, refused = loaded(
        tmp_path, f"MPN;Bezeichnung;Preis\nHollow 1;Elko, 1.500µF, 25V;{price}\n", "capacitance_f"
    )
    assert (rows, refused) == ([(capacitance_f,)], [])


def test_price_breaks_in_one_cell_and_in_columns_are_the_same_offer(tmp_path: Path) -> None:
    head = "MPN;Cap uF;Voltage;"
    first = loaded(tmp_path, f'{head}Price\nHollow 1;47;63;"10+ 0,40; 1+ 0,50 €"\n', "currency, prices")
    second = loaded(tmp_path, f"{head}Price 1+ [EUR];10+\nHollow 1;47;63;0,50;0,40\n", "currency, prices")
    breaks = [{"from": 1, "price": Decimal("0.5")}, {"from": 10, "price": Decimal("0.4")}]
    assert first[1] == second[1] == [("EUR", breaks)]


def test_breaks_in_one_cell_that_rise_are_refused(tmp_path: Path) -> None:
    _, rows, (only,) = loaded(tmp_path, "MPN;Cap uF;Voltage;Price\nHollow 1;47;63;1: 0.50 / 10: 0.60\n", "prices")
    assert rows == []
    assert (only.fault, only.heading) == ("breaks", "Price")


def test_a_price_for_a_hundred_is_divided_exactly(tmp_path: Path) -> None:
    text = "MPN;Cap uF;Voltage;Price per 100 [EUR]\nHollow 1;47;63;12.3456\nHollow 2;47;63;3.30/1000\n"
    _, rows, _ = loaded(tmp_path, text, "prices[1].price")
    assert rows == [(Decimal("0.123456"),), (Decimal("0.0033"),)]


def test_a_sign_of_several_currencies_is_settled_by_the_list_or_the_load(tmp_path: Path) -> None:
    head = "MPN;Cap uF;Voltage;Price"
    _, rows, (only,) = loaded(tmp_path, f"{head}\nHollow 1;47;63;2 kr\n", "currency")
    assert rows == []
    assert only.reason.startswith('"kr" is the sign of several currencies: SEK, DKK, NOK or ISK.')
    assert loaded(tmp_path, f"{head}\nHollow 1;47;63;2 kr\n", "currency", "SEK")[1] == [("SEK",)]
    assert loaded(tmp_path, f"{head} [SEK]\nHollow 1;47;63;2 kr\n", "currency")[1] == [("SEK",)]
    assert loaded(tmp_path, f"{head};Currency\nHollow 1;47;63;2 kr;NOK\n", "currency")[1] == [("NOK",)]
    assert loaded(tmp_path, f"{head}\nHollow 1;47;63;2 kr\n", "currency", "EUR")[1] == []


def test_two_currencies_in_one_line_are_a_contradiction(tmp_path: Path) -> None:
    _, rows, (only,) = loaded(tmp_path, "MPN;Cap uF;Voltage;Price;Currency\nHollow 1;47;63;2 €;USD\n", "currency")
    assert rows == []
    assert (only.fault, only.found) == ("contradiction", "EUR, USD")
    assert only.reason == "The line states prices in EUR and USD. Correct the currency that is wrong."


def test_life_at_another_temperature_is_a_contradiction(tmp_path: Path) -> None:
    text = """MPN;Cap uF;Voltage;Price;Life;Max temp
Hollow 1;47;63;2;2000h @105°C;
Hollow 2;47;63;2;2000h @85°C;105
"""
    _, rows, (only,) = loaded(tmp_path, text, "life_h, rated_c")
    assert rows == [(2000.0, 105.0)]
    assert (only.line, only.fault, only.term) == (3, "contradiction", "life_h")
    assert only.reason.startswith("The life is stated at 85.0 °C, but the upper category temperature is 105.0 °C")


def test_stock_in_words_is_not_stated_and_told(tmp_path: Path) -> None:
    text = """MPN;Cap uF;Voltage;Price;Verfügbarkeit
Hollow 1;47;63;2;auf Lager
Hollow 2;47;63;2;ausverkauft
Hollow 3;47;63;2;3-5 Tage
"""
    intake, rows, _ = loaded(tmp_path, text, "stock, lead_time_days")
    assert rows == [(None, None), (0, None), (None, 5)]
    assert intake.notes[-1] == "The stock of 2 kept lines is said in words without a number; it counts as not stated."


def test_a_size_without_its_shape_is_told(tmp_path: Path) -> None:
    intake, rows, _ = loaded(tmp_path, "MPN;Cap uF;Voltage;Price;Size\nHollow 1;47;63;2;10x16\n", "along_mm")
    assert rows == [(None,)]
    assert intake.notes[0] == (
        "1 kept line with a size, but without its shape, so the body is not known. A layout can say the shape for the "
        "whole list."
    )


def test_a_box_by_its_three_letters_needs_no_shape(tmp_path: Path) -> None:
    text = "MPN;Cap uF;Voltage;Price;Size (BxHxL)\nHollow 1;47;63;2;7x13x18\n"
    assert loaded(tmp_path, text, "along_mm, across_mm, tall_mm")[1] == [(18.0, 7.0, 13.0)]


def test_a_size_of_its_own_column_stands_before_the_description(tmp_path: Path) -> None:
    text = """MPN;Description;Price;Size
Hollow 1;Elko radial 47µF 63V 8x11mm;2;10x16
Hollow 2;Elko radial 47µF 63V 8x11mm;2;
"""
    assert loaded(tmp_path, text, "shape, along_mm, across_mm, tall_mm")[1] == [("can", 10, 10, 16), ("can", 8, 8, 11)]


def test_what_another_column_states_stands_before_the_description(tmp_path: Path) -> None:
    text = "MPN;Description;Voltage;Price\nHollow 1;MKP 100n 275V~;250 V~;2\n"
    assert loaded(tmp_path, text, "rated_v, rated_ac_v")[1] == [(None, 250.0)]


def test_where_columns_differ_in_their_decimal_mark_each_decides_for_itself(tmp_path: Path) -> None:
    text = "MPN;Cap uF;Voltage;Price [EUR]\nHollow 1;1.000;63;0.35\nHollow 2;4,7;63;1.250\n"
    _, rows, _ = loaded(tmp_path, text, "capacitance_f, prices[1].price")
    assert sorted(rows) == [(4.7e-6, Decimal("1.25")), (1e-3, Decimal("0.35"))]


def test_an_axial_part_that_is_thicker_than_long_is_refused(tmp_path: Path) -> None:
    head = "MPN;Cap uF;Voltage;Price;Style;Size\n"
    _, rows, (only,) = loaded(
        tmp_path, f"{head}Hollow 1;47;63;1;axial;30x12\nHollow 2;47;63;1;axial;12x30\n", "along_mm, across_mm"
    )
    assert rows == [(30.0, 12.0)]
    assert (only.fault, only.heading, only.found) == ("contradiction", "Size", "12.0 mm long, 30.0 mm thick")
