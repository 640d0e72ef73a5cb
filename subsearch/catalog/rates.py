"""What one unit of each currency is worth in the builder's own currency, as the builder's own file says."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path

import duckdb

from subsearch.catalog.store import empty_again, open_to_write
from subsearch.errors import ListError, QuantityError
from subsearch.reading.cells import reader_of
from subsearch.reading.rows import Row, read_table

HEADINGS = ("currency", "worth", "dated")
HELP = 'Write lines like "EUR,1," for your own currency and "GBP,1.17,2026-10-01" for others.'


@dataclass(frozen=True)
class Rate:
    """One currency: what one unit is worth in the builder's own currency, and the day of that rate or None."""

    currency: str
    worth: Decimal
    dated: date | None


def load_rates(path: Path, file: Path) -> list[Rate]:
    """Give the rates of a file after storing them in place of all earlier ones.

    path: the catalog file, made if absent. file: CSV with the headings currency, worth, dated. Exactly one currency
    has the worth 1: the builder's own. Raises ListError, and CatalogError for the catalog file.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "rates.csv"
    ...     _ = file.write_text("currency,worth,dated\\nEUR,1,\\nGBP,1.17,2026-10-01\\n")
    ...     [(rate.currency, str(rate.worth)) for rate in load_rates(Path(folder) / "c", file)]
    [('EUR', '1'), ('GBP', '1.17')]
    """
    rates = read_rates(file)
    with open_to_write(path) as con:
        empty_again(con, "currency_rate")
        for rate in rates:
            con.execute("insert into currency_rate values ($1, $2, $3)", [rate.currency, rate.worth, rate.dated])
    return rates


def stored_rates(con: duckdb.DuckDBPyConnection) -> list[Rate]:
    """Give the rates that stand in a catalog, the builder's own currency first; con: an open connection."""
    rows = con.execute("select currency, worth, dated from currency_rate order by worth <> 1, currency").fetchall()
    return [Rate(currency, worth.normalize(), dated) for currency, worth, dated in rows]


def read_rates(file: Path) -> list[Rate]:
    """Give the rates of a file, without storing them; file: as for load_rates. Raises ListError."""
    table = read_table(file)
    name = table.file.name
    heading, *rows = table.rows
    if tuple(cell.strip().casefold() for cell in heading.cells) != HEADINGS:
        raise ListError(f'"{name}" must begin with the headings {",".join(HEADINGS)}. {HELP}')
    rates = [_rate(name, row) for row in rows]
    names = [rate.currency for rate in rates]
    if twice := sorted({currency for currency in names if names.count(currency) > 1}):
        raise ListError(f'"{name}" names {twice[0]} more than once. Keep one line for each currency.')
    own = [rate.currency for rate in rates if rate.worth == 1]
    if len(own) != 1:
        found = f"these have: {', '.join(own)}" if own else "none has"
        raise ListError(f'"{name}": exactly one currency must have the worth 1, your own; {found}. {HELP}')
    return rates


def _rate(name: str, row: Row) -> Rate:
    cells = (*row.cells, "", "", "")[: max(3, len(row.cells))]
    where = f'"{name}", line {row.line}: '
    if len(cells) > 3:
        raise ListError(f"{where}{len(cells)} cells where 3 are allowed. Write a decimal point in the worth. {HELP}")
    try:
        currency = str(reader_of("currency")(cells[0]).get("currency", ""))
        dated = reader_of("date_seen")(cells[2]).get("date_seen")
        worth = Decimal(cells[1].strip().replace(",", "."))
    except QuantityError as error:
        raise ListError(f"{where}{error}") from error
    except InvalidOperation as error:
        raise ListError(f'{where}"{cells[1]}" is not a number. {HELP}') from error
    if not currency:
        raise ListError(f"{where}the currency is missing. {HELP}")
    if not (worth.is_finite() and Decimal("1e-9") <= worth < Decimal("1e9")):
        raise ListError(f'{where}"{cells[1]}" can\'t be the worth of a currency; it must be above 0. {HELP}')
    return Rate(currency, worth, dated if isinstance(dated, date) else None)
