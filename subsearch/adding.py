"""The command that records one part typed in by hand: its options, its questions, and what it says."""

import inspect
import shlex
import sys
from collections.abc import Collection, Mapping
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from subsearch.catalog.typed import DRAWER, FIELDS, NEEDED, Field, TypedError, missing, supplier_named, told
from subsearch.options import DEFAULT_CATALOG, day

INVITED = "Enter leaves a question not stated. Ctrl-C ends, and nothing is recorded."
WHOSE = "whose it is: --drawer, or --supplier and --price"


def add(*, drawer: bool, supplier: str | None, seen: date | None, catalog: Path, **given: str | None) -> None:
    """Record one part and its offer, by options or by questions; the offer replaces an older one of the same part."""
    cells = {field.heading: text for field in FIELDS if (text := given[field.name]) is not None}
    if drawer and supplier is not None:
        raise TypedError("Your own drawer is a supplier itself. Give either --drawer or --supplier.")
    whose = DRAWER if drawer else None if supplier is None else supplier_named(supplier)
    lacking = _lacking(whose, cells)
    if whose is not None and not lacking:
        _record(catalog, whose, cells, seen or date.today())
    elif sys.stdin.isatty():
        _converse(catalog, whose, cells, seen or date.today())
    else:
        raise TypedError(f"No part can be recorded without {'; '.join(lacking)}. Give these options too.")


def _lacking(whose: str | None, cells: Mapping[str, str]) -> list[str]:
    """The options that are needed and not given."""
    fields = [field.option for field in missing(whose or DRAWER, cells)]
    fields = ["--voltage or --ac-voltage" if option == "--voltage" else option for option in fields]
    return [*fields, *([WHOSE] if whose is None else [])]


def _converse(catalog: Path, whose: str | None, cells: dict[str, str], seen: date) -> None:
    """Ask until the part is recorded; if that ends before, what was typed is printed as a command to go on from."""
    typer.echo(INVITED)
    again: Collection[str] = ()
    recorded = False
    try:
        whose = whose or supplier_named(_prompt(f"Supplier (Enter: {DRAWER})")) or DRAWER
        while not recorded:
            _ask(whose, cells, again)
            try:
                _record(catalog, whose, cells, seen)
                recorded = True
            except TypedError as error:
                again = {field.heading for field in FIELDS} & set(error.headings)
                if not again:
                    raise
                typer.echo(f"  {error}")
                for heading in again:
                    cells.pop(heading, None)
    finally:
        if not recorded:
            typer.echo(f"\nNothing was recorded. What you typed:\n{_command(catalog, whose, cells, seen)}")


def _ask(whose: str, cells: dict[str, str], again: Collection[str]) -> None:
    """Ask what is not typed yet, and what must be typed again; "" stands for what is left not stated."""
    for field in FIELDS:
        wanted = field.asked or field.heading in again
        if wanted and field.heading not in cells and field.has_meaning(whose, cells):
            cells[field.heading] = _answer(field, needed=field in missing(whose, cells))


def _answer(field: Field, needed: bool) -> str:
    hint = f" ({field.allowed})" if field.allowed else ""
    while True:
        text = _prompt(f"{field.heading}{hint}{', needed' if needed else ''}")
        fault = field.fault(text)
        if fault is None and (text or not needed):
            return text
        typer.echo(f"  {fault or f'{NEEDED} Type it, or end with Ctrl-C.'}")


def _prompt(question: str) -> str:
    return str(typer.prompt(question, default="", show_default=False)).strip()


def _record(catalog: Path, whose: str, cells: Mapping[str, str], seen: date) -> None:
    from subsearch.catalog.recording import record

    taken = record(catalog, whose, cells, seen=seen)
    first, *rest = told(taken.supplier, taken.number, cells, taken.notes)
    typer.echo(f"{first}:")
    for one in rest:
        typer.echo(f"  {one}")
    typer.echo(f"Catalog: {catalog}")


def _command(catalog: Path, whose: str | None, cells: Mapping[str, str], seen: date) -> str:
    """The command line that says what was typed."""
    words = ["subsearch", "add"]
    words += ["--drawer"] if whose == DRAWER else ["--supplier", whose] if whose else []
    for field in FIELDS:
        words += [field.option, cells[field.heading]] if cells.get(field.heading) else []
    words += [] if seen == date.today() else ["--seen", seen.isoformat()]
    words += [] if catalog == DEFAULT_CATALOG else ["--catalog", str(catalog)]
    return shlex.join(words)


def _option(field: Field) -> inspect.Parameter:
    meaning = "; ".join(part for part in (field.meaning, field.allowed) if part)
    option = typer.Option(field.option, help=f"{meaning[:1].upper()}{meaning[1:]}".rstrip(".") + ".", metavar="TEXT")
    return _parameter(field.name, Annotated[str | None, option], None)


def _parameter(name: str, kind: object, default: object) -> inspect.Parameter:
    return inspect.Parameter(name, inspect.Parameter.KEYWORD_ONLY, default=default, annotation=kind)


# the options are the headings of catalog/typed.py, so that nobody keeps a second list of them
add.__signature__ = inspect.Signature(  # type: ignore[attr-defined]
    [
        _parameter("drawer", Annotated[bool, typer.Option("--drawer", help="It lies in your own drawer.")], False),
        _parameter("supplier", Annotated[str | None, typer.Option(help="Who sells it.")], None),
        *map(_option, FIELDS),
        _parameter("seen", Annotated[Any, day("The day the offer was seen; else today.")], None),
        _parameter("catalog", Annotated[Path, typer.Option("--catalog", help="The catalog file.")], DEFAULT_CATALOG),
    ]
)
