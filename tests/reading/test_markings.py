"""Markings: what each doubt says, what is refused and why, and which piece of text stands behind what is stated.

Whole markings with all that they state are in markings_ours/; the values here are ours too.
"""

import pytest

from subsearch.reading.markings import Reading, read_marking
from subsearch.reading.words import read_word


def test_each_claim_names_its_piece_of_text() -> None:
    found = read_marking("Elko 2.2uF 50V bipolar ±20 % Ø8×11,5 RM 3,5 105°C 2000h, 4 Stk")
    assert dict(found.pieces_of_text) == {
        "technology": "Elko",
        "family": "Elko",
        "capacitance_f": "2.2uF",
        "rated_v": "50V",
        "polarity": "bipolar",
        "tolerance": "±20 %",
        "diameter_mm": "Ø8×11,5",
        "height_mm": "Ø8×11,5",
        "lead_spacing_mm": "RM 3,5",
        "rated_c": "105°C",
        "life_h": "2000h",
        "count": "4 Stk",
    }
    assert found.doubts == ()
    assert found.unread == ""


@pytest.mark.parametrize(
    ("marking", "doubts", "fields", "others"),
    [
        ("47/16", ['"47/16" was taken as 47 µF 16 V: no unit is printed.'], "capacitance_f rated_v", [""]),
        ("330u/16", ['"16" was taken as 16 V: no unit is printed.'], "rated_v", [""]),
        ("100 25V", ['"100" was taken as 100 µF: no unit is printed.'], "capacitance_f", ["10 pF, if it is a code"]),
        (
            "4 mF 10V",
            ['"4 mF" was taken as millifarad; on old parts it may mean microfarad.'],
            "capacitance_f",
            ["4 µF"],
        ),
        (
            "4 mF 350V",
            ['"4 mF" was taken as microfarad, as on old parts; today it means millifarad.'],
            "capacitance_f",
            ["4000 µF"],
        ),
        (
            "1.500µF",
            [
                '"1.500µF" was taken as 1500 µF; with the other decimal mark it is 1.5 µF, and nothing else in the '
                "text decides."
            ],
            "capacitance_f",
            ["1.5 µF"],
        ),
        (
            "0.047uF (474K)",
            ['"474K" is a code for 0.47 µF, which contradicts 47 nF printed beside it; the latter was taken.'],
            "capacitance_f",
            ["0.47 µF"],
        ),
        ("10-22uF", ['"10-22uF" names two values; 10 µF was taken.'], "capacitance_f", ["22 µF"]),
        ("47uF 16/25V", ['"16/25V" names two voltages; 16 V was taken.'], "rated_v", ["25 V"]),
        ("100n 63V (100V)", ['"63V" and "100V" contradict each other; the first was taken.'], "rated_v", ["100 V"]),
        ("100n -15V", ['"-15V" was taken as the rail beside the part, not as its rating.'], "rated_v", [""]),
        ("-10uF 25V", ['"10uF" stands behind a minus, and no capacitance is below 0.'], "capacitance_f", [""]),
        (
            "0,1 µF + 100 Ω 250 V~",
            ['"100 Ω" beside "0,1 µF" is a resistor of its own; a capacitor stands in for one of the two.'],
            "capacitance_f",
            [""],
        ),
        ("1OuF 25V", ['"1O" was taken as a slip for "10".'], "capacitance_f", [""]),
        ("10uU 25V", ['"10uU" was taken as a slip for "10uF".'], "capacitance_f", [""]),
        ("47\ufffdF 25V", ['"47\ufffdF" was taken as a slip for "47µF".'], "capacitance_f", [""]),
        (
            "500 cm",
            ['"500 cm" was taken as 555 pF: before the war 1 cm meant 1.11 pF. It may be a length.'],
            "capacitance_f",
            [""],
        ),
        (
            "R47",
            ['"R47" was taken as 0.47 µF: the R is only a decimal mark. On a small ceramic it is pF, else Ω.'],
            "capacitance_f",
            ["0.47 pF, or a resistor"],
        ),
        (
            "221K",
            ['"221K" was taken as a code for 220 pF; alone it may also be a resistor of 221 kΩ.'],
            "capacitance_f",
            ["a resistor of 221 kΩ"],
        ),
        (
            "47k/160V",
            ['"47k" was taken as 47 nF, as old lists write it; it may be a resistor.'],
            "capacitance_f",
            ["a resistor"],
        ),
        ("100pF NP", ['"NP" was taken as the ceramic NP0; it may mean bipolar.'], "technology polarity", ["bipolar"]),
        (
            "10uF NP0",
            ['"NP0" was taken as bipolar: no ceramic of that name is made so large.'],
            "technology polarity",
            ["ceramic C0G"],
        ),
        (
            "0.1uF 275V",
            ['"275V" was taken as an a.c. rating, which only parts for the mains have; it does not say so.'],
            "rated_v rated_ac_v",
            ["275 V d.c."],
        ),
        (
            "2x32µF 450V",
            ['"2x" was taken as 2 parts of 32 µF; it may be one can that holds 32 µF + 32 µF.'],
            "count sections",
            ["32 µF + 32 µF in one can"],
        ),
        ("47uF?", ['A question mark stands beside "47uF": whoever wrote it was not sure.'], "capacitance_f", [""]),
        (
            "100uF 15mm",
            ['"15mm" was taken as the lead spacing: nothing says which size it is.'],
            "lead_spacing_mm",
            [""],
        ),
        ("104", ['"104" has no unit; alone it is taken as nothing.'], "capacitance_f", ["0.1 µF, if it is a code"]),
    ],
)
def test_what_is_doubted(marking: str, doubts: list[str], fields: str, others: list[str]) -> None:
    found = read_marking(marking)
    assert [str(doubt) for doubt in found.doubts] == doubts
    assert [doubt.other for doubt in found.doubts] == others
    assert {name for doubt in found.doubts for name in doubt.fields} == set(fields.split())
    assert all(found.doubted(name) for name in fields.split())


@pytest.mark.parametrize(
    ("marking", "why"),
    [
        ("", "The text is empty."),
        ("DNP", '"DNP" says that nothing is fitted there.'),
        ("nicht bestückt", '"nicht bestückt" says that nothing is fitted there.'),
        ("5k6", '"5k6" speaks of a resistor, not of a capacitor.'),
        ("33R", '"33R" speaks of a resistor, not of a capacitor.'),
        ("4R7", '"4R7" reads as a resistor: the R stands in place of the decimal mark of ohms.'),
        ("100K", '"100K" reads as a resistor of 100 kΩ.'),
        ("10uH 1A", '"10uH" speaks of an inductor, not of a capacitor.'),
        ("7D431K", '"7D431K" speaks of a varistor, not of a capacitor.'),
        ("5.6V/1W", '"1W" speaks of a part with a power in W, not of a capacitor.'),
        ("trimmer 22pF", '"trimmer" speaks of a trimmer, not of a capacitor.'),
        ("5-60pF", '"5-60pF" is a range over which a trimmer is set, not the value of a fixed capacitor.'),
        ("4N35", '"4N35" speaks of a semiconductor, not of a capacitor.'),
        ("8 MHz 18pF", '"8 MHz" speaks of a part with a frequency, not of a capacitor.'),
        ("2 Hollow 45", 'No capacitance can be read in "2 Hollow 45". Write it like 4.7 µF 63 V.'),
        ("1 kV", 'No capacitance can be read in "1 kV". Write it like 4.7 µF 63 V.'),
        ("x" * 301, "The marking has 301 characters, more than 300. Give one part's only."),
    ],
)
def test_what_is_no_capacitor(marking: str, why: str) -> None:
    found = read_marking(marking)
    assert found.not_a_capacitor == why
    assert found.capacitance_f is None


@pytest.mark.parametrize(
    ("marking", "capacitance_f"),
    [("4.7e-8 F 100V", 47e-9), ("4,7E-08F 100V", 47e-9), ("1e-5 F 100V", 10e-6), ("0.000000047 F 100V", 47e-9)],
)
def test_farads_as_programs_write_them(marking: str, capacitance_f: float) -> None:
    found = read_marking(marking)
    assert (found.capacitance_f, found.rated_v, found.doubts, found.unread) == (capacitance_f, 100.0, (), "")


def test_an_exponent_without_its_number_is_no_capacitance() -> None:
    assert read_marking("4.7777777777e-8 F").capacitance_f is None


@pytest.mark.parametrize("marking", ["50uF/50uF 350V", "50 µF / 50 µF 350 V"])
def test_a_value_printed_twice_is_two_sections(marking: str) -> None:
    found = read_marking(marking)
    assert (found.sections, found.rated_v, found.doubts) == ((50e-6, 50e-6), 350.0, ())
    assert read_marking("0.1µF/100nF").sections == ()


def test_a_reading_shows_what_is_stated_alone() -> None:
    pieces = "(('rated_v', '63V'), ('capacitance_f', '47uF'))"
    assert repr(read_marking("47uF 63V")) == f"Reading(capacitance_f=4.7e-05, rated_v=63.0, pieces_of_text={pieces})"
    assert eval(repr(read_marking("47/16 Grisbeck"))) == read_marking("47/16 Grisbeck")


def test_what_is_not_understood_is_told() -> None:
    found = read_marking("47uF 63V Grisbeck 0805 #7")
    assert (found.capacitance_f, found.rated_v, found.unread) == (47e-6, 63.0, "Grisbeck 0805 #7")


def test_a_marking_without_capacitance_keeps_what_it_states() -> None:
    found = read_marking("63 V 105 °C")
    assert found == Reading(
        rated_v=63.0,
        rated_c=105.0,
        pieces_of_text=(("rated_c", "105 °C"), ("rated_v", "63 V")),
        not_a_capacitor=found.not_a_capacitor,
    )


@pytest.mark.parametrize(
    "words",
    ["bipolar", "bi-polar", "Bi-Polar", "bi polar", "BI", "BP", "B.P.", "NP", "N.P.", "N/P", "non polar",
     "non-polarised", "nonpolar", "un-polarised", "unpolarized", "ungepolt"],
)  # fmt: skip
def test_no_word_for_bipolar_is_read_as_polar(words: str) -> None:
    for marking in (f"10uF 25V {words}", f"{words} 10uF 25V"):
        found = read_marking(marking)
        assert (found.polarity, found.doubts) == ("bipolar", ())
        assert (found.capacitance_f, found.rated_v) == (10e-6, 25.0)
    assert read_word("polarity", words) == "bipolar"


@pytest.mark.parametrize("marking", ["10nF NP0", "10uF 25V", "10uF polar"])
def test_what_is_not_bipolar(marking: str) -> None:
    assert read_marking(marking).polarity == ("polar" if "polar" in marking else None)


@pytest.mark.parametrize(
    ("mark", "capacitance_f", "doubted"), [(",", 1500e-6, False), (".", 1.5e-6, False), ("", 1500e-6, True)]
)
def test_the_list_decides_what_the_text_leaves_open(mark: str, capacitance_f: float, doubted: bool) -> None:
    found = read_marking("1.500µF 25V", mark)
    assert (found.capacitance_f, found.doubted("capacitance_f")) == (capacitance_f, doubted)
    assert read_marking("1.500µF 6,3V", mark).capacitance_f == 1500e-6
