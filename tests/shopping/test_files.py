"""The list as a file: exact decimals, and text from suppliers' lists that stays text."""

import csv
from decimal import Decimal
from pathlib import Path
from types import MappingProxyType

import pytest

from subsearch.formulas.buying import Purchase
from subsearch.reading.spreadsheet_text import text_only
from subsearch.search.offers import Offer
from subsearch.shopping.files import HEADINGS, money, write_csv
from subsearch.shopping.plan import Line, ShoppingList

PART = {
    "maker": "=cmd|' /C calc'!A0", "part_number": '"quoted", and ; more', "capacitance_f": 1e-6, "rated_v": 63.0,
    "rated_ac_v": None, "safety_class": None, "technology": "film PET", "shape": "box", "along_mm": 7.2,
    "across_mm": 5.0, "tall_mm": None,
}  # fmt: skip


def line(worth: str | None) -> Line:
    printed = {"supplier": "@shed", "supplier_number": None, "currency": "GBP", "stock": 5}
    offer = Offer(MappingProxyType(printed), None if worth is None else Decimal(worth))
    purchase = Purchase(3, 1, Decimal("0.038500"), Decimal("0.115500"))
    return Line(MappingProxyType(PART), offer, 2, purchase, ("C1 (tone)", "C2"))


def test_cells(tmp_path: Path) -> None:
    file = tmp_path / "list.csv"
    write_csv(ShoppingList((line("1.17"), line(None)), (), "EUR"), file)
    with file.open(encoding="utf-8", newline="") as text:
        heading, first, second = list(csv.reader(text))
    assert tuple(heading) == HEADINGS
    cells = dict(zip(heading, first, strict=True))
    assert cells["maker"] == "'=cmd|' /C calc'!A0" and cells["supplier"] == "'@shed"
    assert cells["part_number"] == '"quoted", and ; more'
    assert cells["description"] == "1 µF 63 V film PET, 7.2 × 5 × ? mm"
    assert (cells["needed"], cells["order"], cells["unit_price"], cells["cost"]) == ("2", "3", "0.0385", "0.1155")
    assert (cells["own_currency"], cells["own_cost"]) == ("EUR", "0.135135")
    assert cells["positions"] == "C1 (tone); C2"
    assert second[-3:-1] == ["", ""]  # no rate is kept: the cost in the own currency is not stated


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_no_cell_becomes_a_formula(start: str) -> None:
    assert text_only(f"{start}1") == f"'{start}1"


def test_money_is_never_rounded() -> None:
    amounts = ["12.30", "100", "0.000001", "1E+2", "0"]
    assert [money(Decimal(text)) for text in amounts] == ["12.30", "100.00", "0.000001", "100.00", "0.00"]
