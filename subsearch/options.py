"""The words of the command line: options whose text is read as a quantity or a day, and the bar shown for long work."""

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import Any

import typer

from subsearch.errors import RequirementError, SubsearchError
from subsearch.units import EXAMPLES, read_quantity

DEFAULT_CATALOG = Path("subsearch.duckdb")


def parsed(read: Callable[[str], Any], example: str, meaning: str) -> Any:
    """An option whose text a reader turns into a value; what it can't read is said beside the option's name."""

    def parse(text: Any) -> Any:
        if not isinstance(text, str):
            return text
        try:
            return read(text)
        except SubsearchError as error:
            raise typer.BadParameter(str(error)) from error

    return typer.Option(parser=parse, metavar=example, help=meaning)


def quantity(unit: str, meaning: str) -> Any:
    """An option that is a quantity in this unit."""
    return parsed(lambda text: read_quantity(text, unit), f"'{EXAMPLES[unit]}'", meaning)


def rating(meaning: str) -> Any:
    """An option that is a voltage rating, d.c. or a.c."""

    def read(text: str) -> Any:
        from subsearch.repair.positions import read_rating

        return read_rating(text)

    return parsed(read, f"'{EXAMPLES['V']}'", meaning)


def weigh(meaning: str) -> Any:
    """An option that gives a contribution to the score its weight; it may be said several times."""

    def read(text: str) -> tuple[str, float]:
        name, equals, number = text.partition("=")
        try:
            return name.strip(), float(number if equals else "none")
        except ValueError as error:
            raise SubsearchError(f'"{text}" is not a weight. Write it like life=2.') from error

    return parsed(read, "NAME=NUMBER", meaning)


def weights(pairs: Sequence[tuple[str, float]] | None) -> Any:
    """The weights that were said, each contribution once."""
    from subsearch.search.weights import Weights

    names = [name for name, _ in pairs or ()]
    for name in names:
        if names.count(name) > 1:
            raise RequirementError(f"The weight of {name} is said twice. Say it once.")
    return Weights(dict(pairs or ()))


def day(meaning: str) -> Any:
    """An option that is a day of the calendar."""

    def read(text: str) -> date:
        try:
            return date.fromisoformat(text)
        except ValueError as error:
            raise SubsearchError(f'"{text}" is not a day. Write it like 2026-10-01.') from error

    return parsed(read, "2026-10-01", meaning)


def currency_named(meaning: str) -> Any:
    """An option that is a currency in three letters."""

    def read(text: str) -> str:
        from subsearch.reading.cells import reader_of

        return str(reader_of("currency")(text or "(nothing)")["currency"])

    return parsed(read, "EUR", meaning)


@contextmanager
def progress() -> Iterator[Callable[[str, int, int], None]]:
    """A bar on the terminal's error stream, so that output can be piped; none where that is no terminal."""
    from rich.console import Console
    from rich.progress import Progress

    console = Console(stderr=True)
    with Progress(console=console, transient=True, disable=not console.is_terminal) as bar:
        task = bar.add_task("", total=1)
        yield lambda what, done, of: bar.update(task, description=what, completed=done, total=of)
