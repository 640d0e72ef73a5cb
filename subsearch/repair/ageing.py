"""How long a part has been lying: from the date code printed on it, or the day it was bought."""

from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass
from datetime import date, timedelta

from subsearch.errors import QuantityError
from subsearch.formulas.practice import STORED_Y
from subsearch.reading.date_codes import letter_months, letter_years, year_weeks
from subsearch.search.answers import Row
from subsearch.terms import WET

MEASURE = "Old stock: measure it before you fit it."
REFORM = (
    " A wet part over three years old is reformed first: slowly, through a resistor, never above its rating, and at "
    "dangerous voltage behind a shield with hands off. Reforming does not cure a part that has dried out."
)


@dataclass(frozen=True)
class Age:
    """What is known of it: whether it is over the years of storage (None: it may be, or nobody knows), and in words."""

    over: bool | None
    words: str


Made = tuple[date, date]  # the first and the last day on which it may have been made


def made(code: str, last_year: int) -> tuple[Made, ...]:
    """Every time at which a part with that date code may have been made; none where the code can't be read.

    Args:
        code: as printed: four digits of year and week, or a year letter, alone or with a month character.
        last_year: the last year that can be meant.

    >>> [first.isoformat() for first, _ in made("EO", 2026)], made("?", 2026)
    (['1974-10-01', '1994-10-01', '2014-10-01'], ())
    """
    readers: tuple[Callable[[], Iterable[Made]], ...] = (
        lambda: [_days(date(year, 1, 1) + timedelta(7 * (week - 1)), 6) for year, week in year_weeks(code, last_year)],
        lambda: [_days(date(year, month, 1), 30) for year, month in letter_months(code, last_year)],
        lambda: [_days(date(year, 1, 1), 364) for year in letter_years(code, last_year)],
    )
    for read in readers:
        with suppress(QuantityError):
            return tuple(read())
    return ()


def _days(first: date, more: int) -> Made:
    return first, first + timedelta(more)


def age_of(offer: Row, today: date) -> Age:
    """How old the parts of an offer are, by what it states; the day it was seen counts where that is later."""
    now = max(today, offer["date_seen"] or today)
    code, bought = offer["date_code"], offer["date_bought"]
    if bought is not None and _is_over(bought, now):
        return Age(True, f"It was bought on {bought}, over three years ago.")
    times = made(code, now.year) if code else ()
    if not times:
        unread = f'Its date code "{code}" can\'t be read' if code else "Its date is not stated"
        return Age(None, f"{unread}, so it may be over three years old.")
    of = f"By its date code {code} it is of {' or '.join(str(first.year) for first, _ in times)}"
    if all(_is_over(last, now) for _, last in times):
        return Age(True, f"{of}, over three years old.")
    may_be = any(_is_over(first, now) for first, _ in times)
    return Age(None, f"{of}, so it may be over three years old.") if may_be else Age(False, f"{of}.")


def _is_over(day: date, now: date) -> bool:
    """Whether that day is longer ago than a part should lie unlooked at."""
    return (now.year - day.year, now.month, now.day) > (STORED_Y, day.month, day.day)


def stored(part: Row, offer: Row, today: date) -> list[str]:
    """What to do first with a part that has been lying: old stock, and whatever is surely over three years old."""
    age = age_of(offer, today)
    if offer["condition"] != "old stock" and age.over is not True:
        return []
    reform = REFORM if part["technology"] == WET and age.over is not False else ""
    return [f"{MEASURE} {age.words}{reform}"]
