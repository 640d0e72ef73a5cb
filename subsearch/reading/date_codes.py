"""The date printed on a capacitor as a code. A code comes round again, so every year that it may mean is given.

There is no clock here: the caller says which year is the last that can be meant.
"""

import re

from subsearch.errors import QuantityError, one_of
from subsearch.reading.quoting import quoted

# Source: year letters, later year letters, year letters from memory
YEAR_LETTERS = "ABCDEFHJKLMNPRSTUVWX"  # A is 1970, 1990, 2010
NEVER_LETTERS = "GIOQYZ"  # Source: year letters
FIRST_YEAR = 1970  # Source: first cycle of year letters
CYCLE = len(YEAR_LETTERS)
MONTHS = "123456789OND"  # the last three by their names: October, November, December. Source: month characters
LAST_WEEK = 53


def letter_years(letter: str, last_year: int) -> tuple[int, ...]:
    """Every year that a year letter may mean, rising: one in each cycle of 20 years.

    Args:
        letter: one capital letter.
        last_year: the last year that can be meant, such as the one in which the equipment was made.

    Raises:
        QuantityError: a letter that is never used, or no letter; no year up to the last.

    Source: year letters, later year letters, year letters from memory, first cycle of year letters

    >>> letter_years("E", 2026), letter_years("E", 1985)
    ((1974, 1994, 2014), (1974,))
    """
    bare = letter.strip()
    if len(bare) == 1 and bare in NEVER_LETTERS:
        raise QuantityError(
            f'The letter "{bare}" is never used for a year, so as not to be misread. Used are {YEAR_LETTERS}. '
            "Look at the marking again."
        )
    if len(bare) != 1 or bare not in YEAR_LETTERS:
        hint = f' Did you mean "{bare.upper()}"?' if len(bare) == 1 and bare.upper() in YEAR_LETTERS else ""
        raise QuantityError(
            f"{quoted(letter)} is no year letter.{hint} Used are {YEAR_LETTERS}. Give one of them, like E for 1994."
        )
    first = FIRST_YEAR + YEAR_LETTERS.index(bare)
    return _some(letter, tuple(range(first, int(last_year) + 1, CYCLE)), first, last_year)


def month_character(character: str) -> int:
    """The month that a month character stands for: 1 to 9, then O, N and D.

    Raises:
        QuantityError: no month character.

    Source: month characters

    >>> month_character("9"), month_character("O")
    (9, 10)
    """
    bare = character.strip()
    if len(bare) == 1 and bare in MONTHS:
        return MONTHS.index(bare) + 1
    meant = "O" if bare == "0" else bare.upper()
    hint = f' Did you mean "{meant}"?' if len(meant) == 1 and meant in MONTHS else ""
    raise QuantityError(
        f"{quoted(character)} is no month character.{hint} Allowed are {one_of(MONTHS)}. Give one of them."
    )


def letter_months(code: str, last_year: int) -> tuple[tuple[int, int], ...]:
    """Every year and month that a code of a year letter and a month character may mean, rising.

    Args:
        code: two characters, such as "E9".
        last_year: the last year that can be meant.

    Raises:
        QuantityError: not two characters, or one of them is none of the code; no year up to the last.

    Source: year letters, month characters

    >>> letter_months("EO", 2000)
    ((1974, 10), (1994, 10))
    """
    bare = code.strip()
    if len(bare) != 2:
        raise QuantityError(f"{quoted(code)} is no code of year and month: that is two characters. Write it like E9.")
    month = month_character(bare[1])
    return tuple((year, month) for year in letter_years(bare[0], last_year))


def year_weeks(code: str, last_year: int) -> tuple[tuple[int, int], ...]:
    """Every year and week that four digits may mean, the year first, rising: years come round after a century.

    Args:
        code: four digits, such as "1208" for week 8 of 2012.
        last_year: the last year that can be meant.

    Raises:
        QuantityError: not four digits; no week from 1 to 53; no year up to the last.

    Some makers print the week first: where both readings are dates, only the equipment can tell.
    Source: year and week

    >>> year_weeks("1208", 2026)
    ((2012, 8),)
    """
    bare = code.strip()
    if not re.fullmatch(r"[0-9]{4}", bare):
        raise QuantityError(f"{quoted(code)} is no code of year and week: that is four digits. Write it like 1208.")
    week = int(bare[2:])
    if not 1 <= week <= LAST_WEEK:
        raise QuantityError(
            f'"{bare}" would be week {week}, but weeks go from 1 to {LAST_WEEK}. The week may be printed first: '
            "look at other parts of the equipment."
        )
    first = FIRST_YEAR + (int(bare[:2]) - FIRST_YEAR) % 100
    years = _some(code, tuple(range(first, int(last_year) + 1, 100)), first, last_year)
    return tuple((year, week) for year in years)


def _some(code: str, years: tuple[int, ...], first: int, last_year: int) -> tuple[int, ...]:
    if not years:
        raise QuantityError(
            f"{quoted(code)} is {first} at the earliest, after the last year asked for, {int(last_year)}. "
            "Give a later year, or look at the marking again."
        )
    return years
