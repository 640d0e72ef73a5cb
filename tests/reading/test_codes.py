"""Codes printed on capacitors: written by a small writer and read back exactly; what is no code says why."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as some

from subsearch.errors import QuantityError
from subsearch.reading.cells import LETTERS
from subsearch.reading.codes import CodedPart, part_code, resistance_code_ohm, value_code_f
from subsearch.reading.date_codes import (
    MONTHS,
    NEVER_LETTERS,
    YEAR_LETTERS,
    letter_months,
    letter_years,
    month_character,
    year_weeks,
)
from subsearch.reading.tolerance_letters import ELECTROLYTIC, tolerance_letter_f, tolerance_letter_pct
from subsearch.reading.voltage_codes import LISTED, voltage_code
from subsearch.terms import TECHNOLOGIES

E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91)
LETTER_OF = {"p": -12, "n": -9, "u": -6, "µ": -6, "μ": -6, "m": -3}


def letter_codes(figures: int, letter: str) -> dict[str, float]:
    """The ways to write 0.47, 4.7, 47 and 470 with a letter, and what each means."""
    one, two = divmod(figures, 10)
    power = LETTER_OF[letter]
    return {
        f"{letter}{figures}": float(f"0.{figures}e{power}"),
        f"0{letter}{figures}": float(f"0.{figures}e{power}"),
        f"{one}{letter}{two}": float(f"{one}.{two}e{power}"),
        f"{figures}{letter}": float(f"{figures}e{power}"),
        f"{figures}0{letter}": float(f"{figures}0e{power}"),
    }


@pytest.mark.parametrize("letter", LETTER_OF)
def test_letter_codes_come_back_exactly(letter: str) -> None:
    for figures in E24:
        for code, value in letter_codes(figures, letter).items():
            assert value_code_f(code) == value, code
            doubts = (f'"{code}" was taken as millifarad; on old parts it may mean microfarad.',) * (letter == "m")
            assert part_code(f"{code}K") == CodedPart(value, None, (-10, 10), doubts)


def test_digit_codes_come_back_exactly() -> None:
    noughts = {"9": -1, "8": -2} | {str(count): count for count in range(8)}
    for figures in E24:
        for digit, count in noughts.items():
            value = float(Decimal(figures) * Decimal(10) ** (count - 12))
            assert value_code_f(f"{figures}{digit}") == value_code_f(f" {figures}{digit} ") == value
            assert part_code(f"1H{figures}{digit}J") == CodedPart(value, 50, (-5, 5))


def test_an_r_on_a_capacitor_needs_its_technology() -> None:
    for technology in TECHNOLOGIES:
        power = -12 if technology.startswith("ceramic") else -6
        assert value_code_f("R47", technology) == float(f"0.47e{power}")
        assert value_code_f("4R7", technology) == float(f"4.7e{power}")
    assert part_code("R47K", "film PET").capacitance_f == 4.7e-7
    with pytest.raises(QuantityError) as caught:
        value_code_f("R47")
    assert str(caught.value) == (
        '"R47" may be µF or pF: the R is only a decimal point. State the technology, or write it like 0.47 µF.'
    )
    assert (resistance_code_ohm("0R5"), resistance_code_ohm("47R"), resistance_code_ohm("1M5")) == (0.5, 47, 1.5e6)


@pytest.mark.parametrize("letter", LETTER_OF)
def test_an_f_is_the_unit_behind_a_prefix(letter: str) -> None:
    for figures in E24:
        code, value = f"{figures}{letter}F", float(f"{figures}e{LETTER_OF[letter]}")
        assert value_code_f(code) == value_code_f(code[:-1]) == value
        found, with_letter = part_code(code), part_code(f"1H{code}J")
        assert (found.capacitance_f, found.tolerance_pct, bool(found.doubts)) == (value, None, letter == "m")
        assert (with_letter.capacitance_f, with_letter.rated_v, with_letter.tolerance_pct) == (value, 50, (-5, 5))
    assert part_code("4n7F") == CodedPart(4.7e-9, None, (-1, 1))
    assert part_code("2A471F") == CodedPart(4.7e-10, 100, (-1, 1))
    assert part_code("470F").capacitance_f == 4.7e-11 and part_code("470F").doubts == (
        '"470F" was taken as 47 pF with the tolerance letter F; the F may be the unit. Read the marking again.',
    )


def test_too_small_an_electrolytic_is_doubted() -> None:
    assert part_code("1V101", "film PP").doubts == part_code("1V101").doubts == ()
    for technology in ELECTROLYTIC:
        assert part_code("1V101", technology) == CodedPart(
            1e-10,
            35,
            None,
            ('"1V101" was taken as 100 pF, less than an electrolytic usually has. Read the marking again.',),
        )
        assert part_code("1V104M", technology) == CodedPart(1e-7, 35, (-20, 20))
        close = part_code("1V104F", technology)
        assert close.tolerance_pct is None and "no electrolytic is made so close" in close.doubts[0]


SYMMETRIC = {"E": 0.005, "L": 0.01, "P": 0.02, "W": 0.05, "B": 0.1, "C": 0.25, "D": 0.5, "F": 1, "G": 2, "H": 3}
SYMMETRIC |= {"J": 5, "K": 10, "M": 20, "N": 30}
UNEVEN = {"Q": (-10, 30), "T": (-10, 50), "S": (-20, 50), "Z": (-20, 80), "X": (-20, 40)}


def test_tolerance_letters_are_one_to_one() -> None:
    film = {letter: tolerance_letter_pct(letter, "film PP") for letter in (*SYMMETRIC, *UNEVEN)}
    assert film == {letter: (-percent, percent) for letter, percent in SYMMETRIC.items()} | UNEVEN
    assert len(set(film.values())) == len(film)
    cell_letters = {letter: (-percent, percent) for letter, percent in LETTERS.items()}
    assert cell_letters.items() <= film.items()  # lists print some of the same letters


def test_an_electrolytic_is_never_made_so_close() -> None:
    for technology in ("wet aluminium", "tantalum"):
        assert tolerance_letter_pct("P", technology) == (0, 100)
        assert tolerance_letter_pct("W", technology) == (0, 200)
        assert tolerance_letter_pct("M", technology) == (-20, 20)
        for letter in "ELBCDF":
            with pytest.raises(
                QuantityError, match=r"but no electrolytic is made so close\. Read the marking again\.$"
            ):
                tolerance_letter_pct(letter, technology)
    for letter, meanings in {"P": "±0.02 % or, on an electrolytic, 0/+100 %", "W": "±0.05 % or"}.items():
        with pytest.raises(QuantityError) as caught:
            tolerance_letter_pct(letter)
        assert meanings in str(caught.value) and "State the technology" in str(caught.value)


def test_letters_in_pf_hold_up_to_10_pf() -> None:
    assert tolerance_letter_pct("C", "ceramic C0G", 2e-12) == (-12.5, 12.5)
    assert tolerance_letter_pct("F", "ceramic C0G", 10e-12) == (-10, 10)
    assert tolerance_letter_pct("F", "ceramic C0G", 11e-12) == (-1, 1)
    assert tolerance_letter_pct("J", "ceramic C0G", 2e-12) == (-5, 5)
    assert part_code("4p7C", "ceramic C0G").tolerance_pct == pytest.approx((-5.319149, 5.319149), abs=1e-6)
    for size in (1e-12, 0.0, -1.0):
        with pytest.raises(QuantityError, match=r"itself\. Check the capacitance\.$"):
            tolerance_letter_pct("G", "ceramic C0G", size)
    with pytest.raises(QuantityError) as caught:
        tolerance_letter_f("J")
    assert str(caught.value) == (
        '"J" is no tolerance in pF. Up to 10 pF there are B for ±0.1 pF, C for ±0.25 pF, D for ±0.5 pF, F for ±1 pF, '
        "G for ±2 pF. Give one of them."
    )


def test_letters_that_state_nothing_say_so() -> None:
    for letter, why in {"A": "agreed between maker and buyer", "U": "no standard was found that says so"}.items():
        with pytest.raises(QuantityError, match=f'The letter "{letter}" .*{why}.*Leave the tolerance empty'):
            tolerance_letter_pct(letter)
    with pytest.raises(QuantityError) as caught:
        tolerance_letter_pct("k")
    assert str(caught.value) == (
        '"k" is no tolerance letter. Did you mean "K"? Allowed are B, C, D, E, F, G, H, J, K, L, M, N, P, Q, S, T, W, '
        "X or Z. Or write the tolerance in %, like ±20 %."
    )
    found = part_code("1H104U")
    assert found.tolerance_pct is None and found.rated_v == 50 and "−10/+75 %" in found.doubts[0]


def test_every_listed_voltage_is_certain_and_what_is_computed_is_doubted() -> None:
    for code, volts in LISTED.items():
        assert voltage_code(code).rated_v == volts and not voltage_code(code).doubts
        assert part_code(f"{code}225").rated_v == volts
    for code, volts in {"1B": 12.5, "0V": 3.5, "3J": 6300, "4A": 10_000, "1F": 31.5, "0W": 4.5}.items():
        found = voltage_code(code)
        assert found.rated_v == volts and "stands in no table here" in found.doubts[0]
    assert part_code("1B225M").doubts == voltage_code("1B").doubts
    irregular = {code: LISTED[code] for code in ("0L", "2Q", "2Z", "2P")}
    assert irregular == {"0L": 5.5, "2Q": 110, "2Z": 180, "2P": 220}
    for wrong in ("1L", "1Q", "3Z", "5A", "2I", "A2", "2", ""):
        with pytest.raises(QuantityError, match=r"is no voltage code\. It is a digit from 0 to 4.*like 63 V\.$"):
            voltage_code(wrong)
    with pytest.raises(QuantityError, match='Did you mean "2A"'):
        voltage_code("2a")


def test_every_letter_and_year() -> None:
    for year in range(1970, 2040):
        letter = YEAR_LETTERS[(year - 1970) % 20]
        assert year in letter_years(letter, year)
        assert [other for other in YEAR_LETTERS if year in letter_years(other, 2039)] == [letter]
        for month, character in enumerate("123456789OND", 1):
            assert (year, month) in letter_months(f"{letter}{character}", 2039)
        for week in (1, 52, 53):
            assert (year, week) in year_weeks(f"{year % 100:02}{week:02}", 2039)
    assert len(YEAR_LETTERS) == 20 and not set(YEAR_LETTERS) & set(NEVER_LETTERS)
    assert letter_years("V", 2010) == (1987, 2007)  # one hobby page has it a letter off: 2008
    assert year_weeks("7510", 2080) == ((1975, 10), (2075, 10))


@pytest.mark.parametrize(
    ("read", "sentence"),
    [
        (lambda: letter_years("G", 2026), 'The letter "G" is never used for a year, so as not to be misread.'),
        (lambda: letter_years("e", 2026), '"e" is no year letter. Did you mean "E"? Used are ABCDEFHJKLMNPRSTUVWX.'),
        (lambda: letter_years("AB", 2026), '"AB" is no year letter. Used are ABCDEFHJKLMNPRSTUVWX. Give one of them'),
        (lambda: letter_years("X", 1980), '"X" is 1989 at the earliest, after the last year asked for, 1980. Give a'),
        (lambda: month_character("0"), '"0" is no month character. Did you mean "O"? Allowed are 1, 2, 3, 4, 5, 6, 7,'),
        (lambda: month_character("d"), '"d" is no month character. Did you mean "D"?'),
        (lambda: letter_months("E", 2026), '"E" is no code of year and month: that is two characters. Write it like'),
        (
            lambda: year_weeks("120", 2026),
            '"120" is no code of year and week: that is four digits. Write it like 1208.',
        ),
        (lambda: year_weeks("1254", 2026), '"1254" would be week 54, but weeks go from 1 to 53. The week may be'),
        (lambda: year_weeks("1200", 2026), '"1200" would be week 0, but weeks go from 1 to 53.'),
        (lambda: year_weeks("3001", 2026), '"3001" is 2030 at the earliest, after the last year asked for, 2026.'),
        (lambda: value_code_f("47"), '"47" is no value code: that is three digits, or digits with a letter. Write it'),
        (lambda: value_code_f("4F7"), '"4F7" would be whole farads, which no part here has. Look for a prefix before'),
        (lambda: value_code_f("470F"), '"470F" would be whole farads, which no part here has.'),
        (lambda: part_code("F47K"), '"F47" would be whole farads, which no part here has.'),
        (lambda: value_code_f("047"), '"047" begins with 0, but the first digit of a value code is 1 to 9. Write it'),
        (lambda: value_code_f("0u00"), '"0u00" is no value code, for it has no digit from 1 to 9. Write it like 474,'),
        (lambda: value_code_f("0R0", "film PET"), '"0R0" is no value code, for it has no digit from 1 to 9.'),
        (lambda: part_code("000K"), '"000" is no value code, for it has no digit from 1 to 9.'),
        (lambda: value_code_f("4" * 99), f'"{"4" * 30}…" is no value code:'),
        (lambda: part_code("2A"), '"2A" is no code of voltage, value and tolerance. Write it like 2A474J or 104K.'),
        (lambda: part_code("2L474J"), '"2L" is no voltage code. It is a digit from 0 to 4 and one of the letters'),
        (lambda: resistance_code_ohm("4u7"), '"4u7" is no value code of a resistor. Write it like R47, 4R7 or 2k2.'),
    ],
)
def test_what_is_no_code_says_why(read: Callable[[], object], sentence: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read()
    assert str(caught.value).startswith(sentence)


near_codes = some.one_of(
    some.text(alphabet="0123456789pnuµmFRABCDEGHJKLMNOPQSTUVWXZk .²٣+-", max_size=8),
    some.from_regex(r"([0-4][A-Z])?([0-9]{3}|[0-9]{0,3}[pnuFR][0-9]{0,3})[A-Z]?", fullmatch=True),
)


@given(some.one_of(some.text(), near_codes), some.sampled_from(("", *TECHNOLOGIES)), some.integers(-5, 3000))
@example("٣٣٣", "", 2026)
@example("²²²", "", 2026)
@example("000", "", 2026)
@example("1\n04", "", 2026)
def test_any_text_is_read_or_refused_in_a_sentence(text: str, technology: str, year: int) -> None:
    readers: tuple[Callable[[], object], ...] = (
        lambda: value_code_f(text, technology),
        lambda: part_code(text, technology),
        lambda: resistance_code_ohm(text),
        lambda: tolerance_letter_pct(text, technology),
        lambda: tolerance_letter_f(text),
        lambda: voltage_code(text),
        lambda: letter_years(text, year),
        lambda: letter_months(text, year),
        lambda: month_character(text),
        lambda: year_weeks(text, year),
    )
    for read in readers:
        try:
            read()
        except QuantityError as error:
            assert str(error).endswith((".", "?")) and len(str(error)) < 400


@given(near_codes)
def test_a_value_that_is_read_is_above_0(text: str) -> None:
    try:
        found = part_code(text, "film PET")
    except QuantityError:
        return
    assert found.capacitance_f > 0 and (found.rated_v is None or found.rated_v > 0)
    assert found.tolerance_pct is None or found.tolerance_pct[0] <= 0 < found.tolerance_pct[1]


def test_months_are_twelve() -> None:
    assert [month_character(character) for character in MONTHS] == list(range(1, 13))
