"""The shopping list as a CSV file. Text from suppliers' lists stays text: no cell of it becomes a formula."""

import csv
from decimal import Decimal
from itertools import chain, count
from pathlib import Path

from subsearch.reading.spreadsheet_text import text_only
from subsearch.search.answers import Row, body, value_text
from subsearch.shopping.plan import Line, ShoppingList

HEADINGS = (
    "supplier", "supplier_number", "maker", "part_number", "description", "needed", "order", "from_quantity",
    "unit_price", "currency", "cost", "own_currency", "own_cost", "positions",
)  # fmt: skip


def write_csv(shopping: ShoppingList, file: Path) -> None:
    """Write the list, one line a purchase, in UTF-8 with commas; money as decimals, never rounded."""
    with file.open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(HEADINGS)
        writer.writerows([text_only(cell) for cell in _cells(line, shopping.currency)] for line in shopping.lines)


def unused(file: Path) -> Path:
    """The file's name, or one like it that is free: a list of an earlier day is never written over.

    >>> unused(Path("none") / "shopping-list.csv").name
    'shopping-list.csv'
    """
    others = (file.with_stem(f"{file.stem}-{number}") for number in count(2))
    return next(one for one in chain([file], others) if not one.exists())


def described(part: Row) -> str:
    """A part in one line: value, voltage, technology, body."""
    return f"{value_text(part)} {part['technology'] or 'technology not stated'}, {body(part)}"


def money(amount: Decimal) -> str:
    """A decimal as it is, without an exponent or needless zeros, but with two places at least.

    >>> money(Decimal("12.300000")), money(Decimal("0.0385"))
    ('12.30', '0.0385')
    """
    plain = amount.normalize()
    exponent = plain.as_tuple().exponent
    places = max(2, -exponent if isinstance(exponent, int) else 2)
    return f"{amount:.{places}f}"


def _cells(line: Line, own_currency: str | None) -> list[str]:
    offer, purchase = line.offer.printed, line.purchase
    return [
        offer["supplier"],
        offer["supplier_number"] or "",
        line.part["maker"] or "",
        line.part["part_number"],
        described(line.part),
        str(line.needed),
        str(purchase.ordered),
        str(purchase.from_quantity),
        money(purchase.unit_price),
        offer["currency"] or "",
        money(purchase.cost),
        (own_currency or "") if line.own_cost is not None else "",
        "" if line.own_cost is None else money(line.own_cost),
        "; ".join(line.positions),
    ]
