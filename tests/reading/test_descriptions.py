"""A column of descriptions (ours, invented), read by the reader of markings; what is doubtful is not stated."""

import pytest

from subsearch.reading.cells import reader_of

STATED = {
    "Elko radial 47µF 63V 105°C RM5": {
        "capacitance_f": 47e-6, "rated_v": 63.0, "technology": "wet aluminium", "rated_c": 105.0,
        "lead_spacing_mm": 5.0, "shape": "can",
    },
    "Elko 100µF 25V bipolar radial 8x11,5mm 2000h": {
        "capacitance_f": 100e-6, "rated_v": 25.0, "technology": "wet aluminium", "polarity": "bipolar",
        "life_h": 2000.0, "diameter_mm": 8.0, "height_mm": 11.5, "shape": "can",
    },
    "Folie 100nF 630V RM15 18x7x13mm ±10%": {
        "capacitance_f": 100e-9, "rated_v": 630.0, "length_mm": 18.0, "width_mm": 7.0, "height_mm": 13.0,
        "shape": "box", "lead_spacing_mm": 15.0, "tolerance_low_pct": -10.0, "tolerance_high_pct": 10.0,
    },
    "MKP 100n 275V~ X2 RM15": {
        "capacitance_f": 100e-9, "rated_ac_v": 275.0, "technology": "film PP", "safety_class": "X2",
        "lead_spacing_mm": 15.0,
    },
    "Axial electrolytic 22uF 450V 16x36": {
        "capacitance_f": 22e-6, "rated_v": 450.0, "technology": "wet aluminium", "diameter_mm": 16.0, "length_mm": 36.0,
        "shape": "axial",
    },
    "Al-Elko 2200uF 63V snap-in": {
        "capacitance_f": 2200e-6, "rated_v": 63.0, "technology": "wet aluminium", "shape": "can",
        "lead_form": "snap-in",
    },
    "Condensateur film 1µF 400V radial": {"capacitance_f": 1e-6, "rated_v": 400.0},
}  # fmt: skip
DOUBTED = {
    "Elko 47/16": '"47/16" was taken as 47 µF 16 V: no unit is printed.',
    "Widerstand 5k6 0,25W": '"Widerstand" speaks of a resistor, not of a capacitor.',
    "Dual 32+32uF 450V": '"Dual 32+32uF 450V" is one can of several capacitors, and a part of the catalog has one',
    "10 Stk 100nF 50V": '"10 Stk 100nF 50V" speaks of 10 capacitors, so what one of them is and costs is not clear.',
    "5x Elko 10µF 25V": '"5x Elko 10µF 25V" may speak of several capacitors ("5x"), so what one of them costs',
    "10 x Elko 10µF 25V": '"10 x Elko 10µF 25V" may speak of several capacitors ("10 x")',
    "Elko 10µF 25V 10er Pack": '"Elko 10µF 25V 10er Pack" may speak of several capacitors ("10er")',
    "Kondensator": 'No capacitance can be read in "Kondensator". Write it like 4.7 µF 63 V.',
}


@pytest.mark.parametrize("text", STATED)
def test_what_a_description_states(text: str) -> None:
    assert reader_of("description")(text) == STATED[text]


@pytest.mark.parametrize("text", DOUBTED)
def test_a_doubt_about_the_value_is_stated_and_the_value_is_not(text: str) -> None:
    stated = reader_of("description")(text)
    assert "capacitance_f" not in stated
    assert str(stated["value_doubt"]).startswith(DOUBTED[text])


def test_a_title_states_no_values() -> None:
    stated = reader_of("description", "title")("Hollow 105, radial electrolytic, 105°C 2000h, 47µF 63V")
    assert stated == {"technology": "wet aluminium", "rated_c": 105.0, "life_h": 2000.0, "shape": "can"}


def test_an_empty_cell_states_nothing() -> None:
    assert reader_of("description")("  ") == {}
