"""Quantities: read exactly as they are written, printed so that they read back, refused with a sentence."""

from decimal import Decimal
from itertools import product

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from subsearch.errors import QuantityError
from subsearch.units import EXAMPLES, PLAIN_ONLY, PREFIXES, SPELLINGS, read_quantity, show

E24 = [
    f"{tenths / 10:.1f}"
    for tenths in (
        10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91
    )
]  # fmt: skip
POWER = {"p": -12, "n": -9, "µ": -6, "μ": -6, "u": -6, "m": -3}
WITH_PREFIX = sorted(SPELLINGS.keys() - set(PLAIN_ONLY))
steady = settings(deadline=None, derandomize=True, max_examples=200)


def written(number: str, prefix: str) -> list[str]:
    """The ways to write a capacitance."""
    comma = number.replace(".", ",")
    plain = [f"{one}{space}{prefix}F" for one in (number, comma) for space in ("", " ", "\u00a0", "\u202f", "  ")]
    letter = [number.replace(".", prefix), f"{number.replace('.', prefix)}F"] if "." in number else []
    return [*plain, f"{number}{prefix}", f" {number} {prefix}F\t", f"+{number} {prefix}F", *letter]


def shifted(number: str, places: int) -> str:
    return f"{Decimal(number).scaleb(places):f}"


@pytest.mark.parametrize("prefix", POWER)
def test_capacitances_are_exact(prefix: str) -> None:
    seen = 0
    for value, decade in product(E24, range(-1, 5)):
        number = shifted(value, decade)
        for text in written(number, prefix):
            assert read_quantity(text, "F") == float(f"{value}e{decade + POWER[prefix]}"), text
            seen += 1
    assert seen > 24 * 6 * 13
    assert read_quantity("4.7 µF", "F") == 4.7e-6


@pytest.mark.parametrize("value", E24)
def test_resistances_and_voltages_are_exact(value: str) -> None:
    for text in (value.replace(".", "R"), value.replace(".", "R") + "Ω", f"{value} ohm", f"{value}\u2126"):
        assert read_quantity(text, "Ω") == float(value), text
    assert read_quantity(value.replace(".", "k"), "Ω") == float(f"{value}e3")
    assert read_quantity(f"{value} MΩ", "Ω") == float(f"{value}e6")
    assert read_quantity(value.replace(".", "V"), "V") == float(value)
    assert read_quantity(f"{value} kV", "V") == float(f"{value}e3")


def test_a_missing_whole_part_is_nought() -> None:
    assert read_quantity("R22", "Ω") == 0.22
    assert read_quantity("u47", "F") == 0.47e-6
    assert read_quantity(".5 V", "V") == read_quantity(",5 V", "V") == 0.5


@pytest.mark.parametrize("unit", SPELLINGS)
def test_every_spelling_of_a_unit_is_read(unit: str) -> None:
    for spelling in SPELLINGS[unit]:
        assert read_quantity(f"12.5 {spelling}", unit) == 12.5, spelling
        assert read_quantity(f"12,5{spelling}", unit) == 12.5, spelling
    if unit != "F":
        assert read_quantity("12.5", unit) == 12.5


@pytest.mark.parametrize(("text", "value"), {"-20 °C": -20, "\u221220 °C": -20, "\u201320°C": -20, "+5": 5}.items())
def test_signs(text: str, value: float) -> None:
    assert read_quantity(text, "°C") == value


@pytest.mark.parametrize("prefix", [prefix for prefix in PREFIXES if prefix])
def test_a_bare_number_has_the_prefix_of_its_heading(prefix: str) -> None:
    assert read_quantity("4.7", "F", prefix) == float(f"4.7e{PREFIXES[prefix]}")
    assert read_quantity("4.7 nF", "F", prefix) == 4.7e-9
    assert read_quantity("4.7 F", "F", prefix) == 4.7


@given(st.integers(1, 999), st.integers(0, 999), st.sampled_from(["", "-", "+"]))
@steady
def test_a_comma_before_three_digits_is_not_guessed(high: int, low: int, sign: str) -> None:
    text = f"{sign}{high},{low:03}"
    for after in ("", " V"):
        with pytest.raises(QuantityError, match="may mean thousands or a decimal comma") as caught:
            read_quantity(text + after, "V")
        assert caught.value.fault == "unreadable"


@given(st.integers(0, 999), st.integers(0, 999))
@steady
def test_thousands_that_leave_no_doubt(high: int, low: int) -> None:
    assume(high)
    number = high * 1000 + low
    for text in (f"{high} {low:03}", f"{high}\u202f{low:03}", f"{high}.{low:03},0", f"{high},{low:03}.0"):
        assert read_quantity(f"{text} h", "h") == number, text
    assert read_quantity(f"0,{low:03} V", "V") == float(f"0.{low:03}")


REFUSED = [
    ("lots", "F", '"lots" is not a quantity in F. Write it like 4.7 µF.'),
    ("", "", '"" is not a plain number. Write it like 10.'),
    ("± 5", "V", '"± 5" is not a quantity in V. Write it like 63 V.'),
    ("1,500", "h", '"1,500" may mean thousands or a decimal comma. Write it without the separator.'),
    ("1.5.0 V", "V", '"1.5.0 V" has more than one decimal mark. Write it with one, like 1500.5.'),
    ("1,500,000", "h", '"1,500,000" has more than one decimal mark. Write it with one, like 1500.5.'),
    ("47", "F", '"47" has no unit. Write it like 4.7 µF.'),
    ("63 x", "V", '"63 x" can\'t be read from "x" on: a quantity in V is wanted here, like 63 V.'),
    ("4.7µF 63V", "F", '"4.7µF 63V" can\'t be read from "µF 63V" on: a quantity in F is wanted here, like 4.7 µF.'),
    ("1e400", "V", '"1e400" can\'t be read from "0" on: a quantity in V is wanted here, like 63 V.'),
]
OTHER_UNIT = [
    ("63 V", "F", '"63 V" has the unit "V", but a quantity in F is wanted here, like 4.7 µF.'),
    ("5 cm", "mm", '"5 cm" has the unit "cm", but a quantity in mm is wanted here, like 12.5 mm.'),
    ("2 mF", "V", '"2 mF" has the unit "mF", but a quantity in V is wanted here, like 63 V.'),
    ("5 k", "mm", '"5 k" has the unit "k", but a quantity in mm is wanted here, like 12.5 mm.'),
    ("5 kmm", "mm", '"5 kmm" has the unit "kmm", but a quantity in mm is wanted here, like 12.5 mm.'),
    ("3 W", "", '"3 W" has the unit "W", but a plain number is wanted here, like 10.'),
]


@pytest.mark.parametrize(("text", "unit", "sentence"), REFUSED)
def test_what_cannot_be_read(text: str, unit: str, sentence: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read_quantity(text, unit)
    assert (str(caught.value), caught.value.fault) == (sentence, "unreadable")


@pytest.mark.parametrize(("text", "unit", "sentence"), OTHER_UNIT)
def test_units_of_another_kind(text: str, unit: str, sentence: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read_quantity(text, unit)
    assert (str(caught.value), caught.value.fault) == (sentence, "wrong_unit")


@given(st.text(), st.sampled_from(sorted(SPELLINGS)))
@steady
def test_any_text_is_a_number_or_a_sentence(text: str, unit: str) -> None:
    try:
        assert isinstance(read_quantity(text, unit), float)
    except QuantityError as error:
        assert str(error).startswith(f'"{text}" ')


@pytest.mark.parametrize("unit", EXAMPLES)
def test_every_example_is_read(unit: str) -> None:
    assert read_quantity(EXAMPLES[unit], unit) > 0


@pytest.mark.parametrize(("text", "unit"), [("2m5", "mm"), ("4k7", ""), ("1k5", "h"), ("1M0", "%")])
def test_no_prefix_where_the_trade_writes_none(text: str, unit: str) -> None:
    with pytest.raises(QuantityError):
        read_quantity(text, unit)


@pytest.mark.parametrize("text", ["1.5,5", "1.5,500", "12,34.5"])
def test_thousands_stand_before_three_digits(text: str) -> None:
    with pytest.raises(QuantityError):
        read_quantity(text, "V")


@given(st.integers(1, 9999), st.integers(-12, 3), st.sampled_from(sorted(SPELLINGS)), st.sampled_from([1, -1]))
@steady
def test_four_figures_survive_being_printed(figures: int, power: int, unit: str, sign: int) -> None:
    value = sign * float(f"{figures}e{power}")
    assert read_quantity(show(value, unit), unit) == value


@given(st.floats(1e-11, 1e7), st.sampled_from(sorted(SPELLINGS)))
@steady
def test_every_value_reads_back_within_its_figures(value: float, unit: str) -> None:
    text = show(value, unit)
    assert read_quantity(text, unit) == pytest.approx(value, rel=5.01e-4)
    assert show(read_quantity(text, unit), unit) == text
    assert "e" not in text.removesuffix(unit).lower()


@given(st.floats(1e-10, 10), st.sampled_from(WITH_PREFIX))
@steady
def test_printed_numbers_are_short(value: float, unit: str) -> None:
    assume(unit != "V")  # volts are printed without a prefix
    number = show(value, unit).split()[0]
    assert float(number) < 1000 or unit in ("F", "Hz")
    assert float(number) >= 0.1 or unit in ("A", "Hz", "Ω")


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (None, "mm", "not stated"), (4.7e-6, "F", "4.7 µF"), (1e-7, "F", "0.1 µF"), (99.99e-9, "F", "99.99 nF"),
        (0.047, "F", "47000 µF"), (1e-12, "F", "1 pF"), (0.0, "V", "0 V"), (6.3, "V", "6.3 V"), (1000.0, "V", "1000 V"),
        (12345.6, "V", "12346 V"), (0.35, "A", "350 mA"), (1.4, "A", "1.4 A"), (15e-6, "A", "15 µA"),
        (0.2, "Ω", "200 mΩ"), (47_000, "Ω", "47 kΩ"), (2.2e6, "Ω", "2.2 MΩ"), (100_000, "Hz", "100 kHz"),
        (-40.0, "°C", "-40 °C"), (7.0, "", "7"), (12.345678, "mm", "12.35 mm"), (2000.0, "h", "2000 h"),
    ],
)  # fmt: skip
def test_how_values_are_printed(value: float | None, unit: str, text: str) -> None:
    assert show(value, unit) == text
