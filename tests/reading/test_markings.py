"""Markings of old parts: what is read with certainty, what is read with a doubt, and what is not read."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from subsearch.reading.markings import Reading, read_marking
from subsearch.reading.words import read_word


@pytest.mark.parametrize(
    ("marking", "expected"),
    [
        ("330u 6V3", (330e-6, 6.3, None, None, None)),
        ("4,7µF 63V", (4.7e-6, 63.0, None, None, None)),
        ("6u8/35V", (6.8e-6, 35.0, None, None, None)),
        ("100n", (100e-9, None, None, None, None)),
        ("u47 16WV", (0.47e-6, 16.0, None, None, None)),
        ("2.2uF 50V bipolar", (2.2e-6, 50.0, None, "bipolar", None)),
        ("22µ/16V NP", (22e-6, 16.0, None, "bipolar", None)),
        ("8 MFD 450 VDC", (8e-6, 450.0, None, None, None)),
        ("0,1 µF 250 V~", (0.1e-6, None, 250.0, None, None)),
        ("0.1uF 275 V a.c. ±20 %", (0.1e-6, None, 275.0, None, (-20.0, 20.0))),
        ("1000u -10/+50% 40V", (1000e-6, 40.0, None, None, (-10.0, 50.0))),
        ("1n5 2 kV", (1.5e-9, 2000.0, None, None, None)),
    ],
)
def test_certain(marking: str, expected: tuple[object, ...]) -> None:
    found = read_marking(marking)
    assert (found.capacitance_f, found.rated_v, found.rated_ac_v, found.polarity, found.tolerance) == expected
    assert found.doubts == ()


def test_each_claim_names_its_piece_of_text() -> None:
    found = read_marking("2.2uF 50V bipolar ±20 %")
    assert dict(found.pieces_of_text) == {
        "capacitance_f": "2.2uF",
        "rated_v": "50V",
        "polarity": "bipolar",
        "tolerance": "±20 %",
    }


@pytest.mark.parametrize(
    ("marking", "capacitance_f", "rated_v", "doubts"),
    [
        ("47/16", 47e-6, 16.0, ['"47/16" was taken as 47 µF 16 V: no unit is printed.']),
        ("330u/16", 330e-6, 16.0, ['"16" was taken as 16 V: no unit is printed.']),
        ("100 25V", 100e-6, 25.0, ['"100" was taken as 100 µF: no unit is printed.']),
        ("4 mF 10V", 4e-3, 10.0, ['"4 mF" was taken as millifarad; on old parts it may mean microfarad.']),
        ("32+32µF 450V", 32e-6, 450.0, ['"32" was not understood.']),
        ("47uF 63V NP0", 47e-6, 63.0, ['"NP0" was not understood.']),
        ("1 kV", None, 1000.0, ['No capacitance can be read in "1 kV". Write it like 4.7 µF 63 V.']),
    ],
)
def test_doubtful(marking: str, capacitance_f: float | None, rated_v: float, doubts: list[str]) -> None:
    found = read_marking(marking)
    assert (found.capacitance_f, found.rated_v, list(found.doubts)) == (capacitance_f, rated_v, doubts)


@pytest.mark.parametrize("marking", ["", "10k", "2 Hollow 45", "104", "R47", "x" * 201])
def test_no_capacitor(marking: str) -> None:
    found = read_marking(marking)
    assert found.doubts
    assert found == Reading(doubts=found.doubts)


@given(st.text(alphabet="0123456789.,/ µunpmFVkWac±%+-~xX", max_size=30))
def test_never_raises_and_never_states_nothing_silently(marking: str) -> None:
    found = read_marking(marking)
    assert found.doubts or found.capacitance_f is not None


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
