"""Headings to terms by meaning, with the unit of bare numbers; a sentence where a list can't be used."""

import pytest

from subsearch.catalog.heading_cells import read_heading
from subsearch.catalog.headings import NAMES, SPOKEN
from subsearch.catalog.layouts import find_layout
from subsearch.errors import ListError
from subsearch.reading.rows import Row
from subsearch.reading.spelling import plain_words
from subsearch.terms import TERMS

NEEDED = ("Part number", "Cap uF", "Voltage", "Price")


@pytest.mark.parametrize(
    ("heading", "kind", "hint", "from_quantity"),
    [
        ("Capacitance [µF]", "capacitance_f", "µ", None),
        ("Cap (nF)", "capacitance_f", "n", None),
        ("Kapazität", "capacitance_f", "", None),
        ("Voltage d.c. [V]", "rated_v", "", None),
        ("V AC", "rated_ac_v", "", None),
        ("tan d", "tan_delta", "", None),
        ("tan d Hz", "tan_delta_hz", "", None),
        ("ESR mOhm", "esr_ohm", "m", None),
        ("ESR at [kHz]", "esr_hz", "k", None),
        ("Ripple mA", "ripple_a", "m", None),
        ("Ripple Hz", "ripple_hz", "", None),
        ("Lead time [days]", "lead_time_days", "", None),
        ("Lieferzeit [Tage]", "lead_time_days", "", None),
        ("Ø [mm]", "diameter_mm", "", None),
        ("  L_[mm] ", "length_mm", "", None),
        ("Rastermaß", "lead_spacing_mm", "", None),
        ("Maker’s number", "part_number", "", None),
        ("Temp. low [°C]", "lowest_c", "", None),
        ("Tol %", "tolerance", "", None),
        ("Size mm", "size", "", None),
        ("Price", "unit_price", "", None),
        ("Price (from 1)", "unit_price", "", 1),
        ("Price 10+", "unit_price", "", 10),
        ("Preis ab 100", "unit_price", "", 100),
        ("500+", "unit_price", "", 500),
        ("Unit price [EUR]", "unit_price", "EUR", None),
        ("Preis ab 10 (€)", "unit_price", "EUR", 10),
        ("From qty", "from_quantity", "", None),
    ],
)
def test_read_heading(heading: str, kind: str, hint: str, from_quantity: int | None) -> None:
    found = read_heading(2, heading)
    assert found
    assert (found.place, found.kind, found.hint, found.from_quantity) == (2, kind, hint, from_quantity)


@pytest.mark.parametrize("heading", ["", "Remarks", "Cap V", "Ripple V", "Price 0+", "100", "Life [days]", "'); drop"])
def test_what_names_no_term_is_not_understood(heading: str) -> None:
    assert read_heading(0, heading) is None


def test_every_term_and_every_spoken_name_is_understood() -> None:
    assert SPOKEN.keys() >= TERMS.keys()
    for kind, spoken in SPOKEN.items():
        for name in (kind, *spoken):
            found = read_heading(0, name.title())
            assert found, name
            assert found.kind in NAMES[plain_words(name)], name


def test_the_heading_line_is_the_one_with_most_known_headings() -> None:
    rows = [Row(1, ("Invented",)), Row(2, ("Price list", "Voltage")), Row(4, (*NEEDED, "Shelf")), Row(5, ("x",))]
    layout = find_layout("list.csv", rows)
    assert (layout.line, layout.skipped, len(layout.columns)) == (4, ("Shelf",), 4)


def test_a_term_named_twice_is_an_error() -> None:
    with pytest.raises(ListError) as caught:
        find_layout("list.csv", [Row(3, (*NEEDED, "Capacitance [nF]"))])
    assert str(caught.value) == (
        '"list.csv", line 3: the headings "Cap uF" (column 2) and "Capacitance [nF]" (column 5) both mean '
        "capacitance_f. Rename the one that does not, or leave it out in a layout: subsearch layout writes one."
    )


def test_price_breaks_may_stand_side_by_side_but_not_twice() -> None:
    assert find_layout("list.csv", [Row(1, (*NEEDED, "10+", "100+"))])
    with pytest.raises(ListError, match=r'the headings "10\+" \(column 5\) and "Price from 10" \(column 6\)'):
        find_layout("list.csv", [Row(1, (*NEEDED, "10+", "Price from 10"))])


@pytest.mark.parametrize(
    ("left_out", "missing"),
    [
        ("Part number", "a part number"),
        ("Cap uF", "a capacitance"),
        ("Voltage", "a rated voltage (d.c. or a.c.)"),
        ("Price", "a price"),
    ],
)
def test_a_needed_heading_that_is_missing(left_out: str, missing: str) -> None:
    headings = tuple(heading for heading in NEEDED if heading != left_out)
    with pytest.raises(ListError) as caught:
        find_layout("list.csv", [Row(2, headings)])
    found = ", ".join(f'"{heading}"' for heading in headings)
    assert str(caught.value) == (
        f'"list.csv" has no heading for {missing}. Line 2 was taken as the heading line: {found}. '
        'Name such a column, like "Capacitance [µF]", "Rated voltage", "Part number", "Price 10+", '
        "or say what each heading means in a layout: subsearch layout writes one."
    )


def test_an_ac_voltage_is_voltage_enough() -> None:
    assert find_layout("list.csv", [Row(1, ("Part number", "Cap uF", "V AC", "Price"))])


def test_a_price_heading_with_an_absurd_quantity_is_none() -> None:
    assert read_heading(0, "Price 10000000000") is None
    assert read_heading(0, "Price 10+") is not None
