"""Cans that hold several capacitors: examples of our own."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import QuantityError
from subsearch.reading.sections import read_sections


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("32+32µF", (32e-6, 32e-6)),
        ("32 + 16 µF", (32e-6, 16e-6)),
        ("50+50+25 uF", (50e-6, 50e-6, 25e-6)),
        ("2 × 16 µF", (16e-6, 16e-6)),
        ("2x8+16 µF", (8e-6, 8e-6, 16e-6)),
        ("8 µF + 470 nF", (8e-6, 470e-9)),
        ("100/100 µF", (100e-6, 100e-6)),
        ("32+32µF 350V", (32e-6, 32e-6)),
        ("50 + 50 µF 350 V d.c.", (50e-6, 50e-6)),
    ],
)
def test_sections_are_read(text: str, expected: tuple[float, ...]) -> None:
    assert read_sections(text) == pytest.approx(expected)


@pytest.mark.parametrize(
    "text",
    [
        "2",
        "32+32",
        "32 µF",
        "5 x 8 µF",
        "99999999999 x 8 µF",
        "8+8+8+8+8 µF",
        "32 + lots µF",
        "+ µF",
        "0 + 32 µF",
        "0 x 32 µF",
        "1000 F + 1000 F",
    ],
)
def test_what_can_not_be_told_is_said(text: str) -> None:
    with pytest.raises(QuantityError):
        read_sections(text)


@given(some.text(max_size=30) | some.from_regex(r"[0-9+x/ .,µuFn]{1,24}", fullmatch=True))
def test_any_text_gives_values_above_0_or_a_sentence(text: str) -> None:
    try:
        values = read_sections(text)
    except QuantityError as error:
        assert "like " in str(error) or "Write" in str(error)
    else:
        assert 2 <= len(values) <= 4 and all(0 < value <= 10 for value in values)
