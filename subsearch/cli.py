"""The command line: parses words, calls rooms, prints what a person can read.

Exit status: 0 done, 1 nothing fits what was asked, 2 wrong words on the command line, 3 a list, 4 the catalog file,
5 a repair's folder, 6 a requirement, 7 a file that can't be read or written.
"""

import io
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Annotated, Any, NoReturn

import typer

from subsearch import __version__
from subsearch.adding import add
from subsearch.drafting import positions
from subsearch.errors import CatalogError, ListError, RepairError, SubsearchError
from subsearch.finding import find
from subsearch.lab import lab
from subsearch.laying_out import layout
from subsearch.options import DEFAULT_CATALOG, currency_named, day, progress

STATUS = {ListError: 3, CatalogError: 4, RepairError: 5, SubsearchError: 6, OSError: 7}
app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    help="Find parts sold today that can stand in for the old capacitors of a repair, and buy the whole set.",
)
Catalog = Annotated[Path, typer.Option("--catalog", help="The catalog file.")]
app.command()(lab)


def run() -> None:
    """Run the command line; every failure that a person can mend ends in one sentence and its exit status."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a file in an old encoding lacks Ω and µ, which must not end the run
    try:
        app()
    except (SubsearchError, OSError) as error:
        _end(error)
    except Exception as error:
        from subsearch.catalog.store import in_words  # only now: the command line starts without the database

        if (said := in_words(error)) is None:
            raise
        _end(said)


def _end(error: SubsearchError | OSError) -> NoReturn:
    said = error if isinstance(error, SubsearchError) else _os_sentence(error)
    print(f"error: {said}", file=sys.stderr)
    raise SystemExit(next(status for kind, status in STATUS.items() if isinstance(error, kind))) from None


def _os_sentence(error: OSError) -> str:
    named = error.filename or "A file"
    return f'"{named}" can\'t be read or written: {error.strerror}. Check the path, its rights and the disk.'


@app.command()
def load(
    files: Annotated[list[Path], typer.Argument(help="Suppliers' lists, CSV or XLSX.")],
    catalog: Catalog = DEFAULT_CATALOG,
    supplier: Annotated[str | None, typer.Option(help="Whose lists they are; else the file's name says it.")] = None,
    seen: Annotated[Any, day("The day the lists were seen; else today.")] = None,
    currency: Annotated[Any, currency_named("Currency of prices that state none.")] = None,
    layout: Annotated[Path | None, typer.Option(help="A layout file for them; else the supplier's own.")] = None,
) -> None:
    """Load suppliers' lists into the catalog."""
    from subsearch.catalog.intake import load as load_lists

    with progress() as tell:
        intakes = load_lists(
            catalog, files, supplier=supplier, seen=seen, currency=currency, layout=layout, progress=tell
        )
    _print_intakes(intakes, catalog)
    raise typer.Exit(0 if any(one.kept for one in intakes) else 1)


app.command()(layout)
app.command()(add)


@app.command()
def rates(
    file: Annotated[Path, typer.Argument(help="CSV with the headings currency, worth, dated.")],
    catalog: Catalog = DEFAULT_CATALOG,
) -> None:
    """Keep what currencies are worth in your own, the one with the worth 1."""
    from subsearch.catalog.rates import load_rates
    from subsearch.display.summary import print_rates

    print_rates(load_rates(catalog, file), catalog)


app.command()(find)


app.command()(positions)


@app.command()
def repair(
    folder: Annotated[Path, typer.Argument(help="The folder with repair.toml and positions.csv.")],
    catalog: Catalog = DEFAULT_CATALOG,
    out: Annotated[Path | None, typer.Option(help="Where the files go; else into the repair's folder.")] = None,
) -> None:
    """Search a whole repair at once and write its shopping list and report."""
    raise typer.Exit(_repair(folder, catalog, out or folder))


@app.command()
def demo(
    folder: Annotated[Path, typer.Argument(help="Where the demo goes.")] = Path("subsearch-demo"),
) -> None:
    """Copy out the invented demo, load its lists, search its repair and write the shopping list."""
    from subsearch.catalog.intake import load as load_lists
    from subsearch.catalog.rates import load_rates
    from subsearch.shipped import copied_out

    copied_out("catalog_demo", folder)
    catalog = folder / "subsearch.duckdb"
    load_rates(catalog, folder / "rates.csv")
    with progress() as tell:
        intakes = load_lists(catalog, sorted((folder / "lists").iterdir()), seen=date(2026, 10, 1), progress=tell)
    print("All names, parts and prices of this demo are invented.\n")
    _print_intakes(intakes, catalog)
    print()
    raise typer.Exit(_repair(folder / "organ", catalog, folder))


def _print_intakes(intakes: Sequence[Any], catalog: Path) -> None:
    from subsearch.catalog.facts import refusals
    from subsearch.catalog.store import open_to_read
    from subsearch.display.summary import print_intakes

    with open_to_read(catalog) as con:
        print_intakes(intakes, [refusals(con, one.number) for one in intakes], catalog)


def _repair(folder: Path, catalog: Path, out: Path) -> int:
    from subsearch.catalog.facts import loaded
    from subsearch.catalog.rates import stored_rates
    from subsearch.catalog.store import open_to_read
    from subsearch.display.report import Report, write_report
    from subsearch.display.summary import print_repair
    from subsearch.repair.choosing import choose
    from subsearch.repair.folder import read_repair
    from subsearch.repair.reasons import reasons
    from subsearch.shopping.files import write_csv
    from subsearch.shopping.plan import plan

    described = read_repair(folder)
    with progress() as tell, open_to_read(catalog) as con:
        tell(f"{len(described.positions)} positions", 0, 2)
        choices = choose(con, described)
        tell("shopping list", 1, 2)
        shopping, why = plan(con, choices), reasons(con, choices)
        behind = loaded(con), stored_rates(con), catalog, date.today()
    out.mkdir(parents=True, exist_ok=True)
    listed, page = out / "shopping-list.csv", out / "report.html"
    write_csv(shopping, listed)
    write_report(Report(described, choices, why, shopping, *behind), page)
    print_repair(described, list(zip(choices, why, strict=True)), shopping, catalog, (listed, page))
    return 0 if any(choice.candidate for choice in choices) else 1


@app.callback(invoke_without_command=True)
def _main(
    version: Annotated[bool, typer.Option("--version", help="Print the version and end.")] = False,
) -> None:
    if version:
        print(f"subsearch {__version__}")
        raise typer.Exit
