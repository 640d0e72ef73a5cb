"""Arbitrary text: never an exception, never a capacitance without a piece of the text that gives it."""

import re
import unicodedata

from hypothesis import example, given, settings
from hypothesis import strategies as st

from subsearch.reading.marking_signs import begin
from subsearch.reading.markings import Reading, read_marking

FRAGMENTS = (
    "47", "4.7", "4,7", "1.500", "3,300", "0", "104", "474", "2A", "1H", "u", "µ", "n", "p", "m", "F", "µF", "nF",
    "pF", "mF", "MFD", "mmfd", "мкФ", "пФ", "k", "K", "M", "G", "R", "J", "Z", "V", "kV", "WV", "V~", "VDC", "В", "/",
    "-", "+", "±", "%", "x", "×", "*", "Ø", "RM", "LS", "D", "H", "L", "P", "mm", "cm", "°C", "h", "X2", "Y1", "NP",
    "NP0", "BP", "Elko", "film", "tantal", "ceramic", "電解", "trimmer", "R47", "R0", "C12", "(", ")", ",", ".", ":",
    "?", "or", "O", "=", "surge", "rail", "DNP", "2x", "pcs", "Ω", "H", "W", "A", "Hz", "cap", "\0", "\u2212",
    "\uff14", "&micro;", "Î¼",
)  # fmt: skip
CODE = re.compile(r"[1-9]\d\d?[A-Z]?")
made_up = st.lists(st.sampled_from(FRAGMENTS) | st.just(" "), max_size=14).map("".join)


def checked(marking: str) -> Reading:
    reading = read_marking(marking)
    printed = begin(marking).printed
    assert all(piece in printed for _, piece in reading.pieces_of_text)
    assert (reading.capacitance_f is None) == bool(reading.not_a_capacitor)
    if reading.capacitance_f is not None:
        assert 1e-13 <= reading.capacitance_f <= 10
        (piece,) = (text for name, text in reading.pieces_of_text if name == "capacitance_f")
        assert any(unicodedata.category(sign) == "Nd" for sign in piece)
        letters = re.search(r"[^\W\d_]", piece)
        assert letters or reading.doubted("capacitance_f") or CODE.fullmatch(unicodedata.normalize("NFKC", piece))
    return reading


@given(st.text(max_size=310))
@example("\u00bc\u338c 1" * 30)
@example("\u00bd" * 300)  # one sign that stands for three
@example("10\u0663")  # a digit of another script
def test_any_text(marking: str) -> None:
    checked(marking)


@settings(max_examples=1500, deadline=None)
@given(made_up)
def test_any_heap_of_fragments(marking: str) -> None:
    checked(marking)


@settings(max_examples=400, deadline=None)
@given(made_up)
def test_reading_twice_gives_the_same(marking: str) -> None:
    assert read_marking(marking) == read_marking(marking)


@given(st.text(alphabet=st.characters(exclude_categories=("Nd", "No", "Nl")), max_size=60))
def test_no_number_no_capacitance(marking: str) -> None:
    assert checked(marking).capacitance_f is None


@given(st.text(alphabet=st.characters(min_codepoint=0x370, exclude_categories=["Cs"]), max_size=60))
def test_other_scripts(marking: str) -> None:
    checked(marking)
