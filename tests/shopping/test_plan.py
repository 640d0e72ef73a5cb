"""The shopping list: exact money, never more than an offer has, never dearer than another way to buy each part."""

import random
from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import duckdb
import pytest

from subsearch.catalog.store import open_to_write
from subsearch.repair.choosing import Choice, choose
from subsearch.repair.folder import read_repair
from subsearch.shopping.plan import ShoppingList, plan

MAKER = "Hollin"


@pytest.fixture
def con(tmp_path: Path) -> Iterator[duckdb.DuckDBPyConnection]:
    """An empty catalog with two rates."""
    with open_to_write(tmp_path / "small.duckdb") as opened:
        opened.execute("insert into currency_rate values ('EUR', 1, null), ('GBP', 1.2, null)")
        yield opened


def put_part(con: duckdb.DuckDBPyConnection, pk: int, capacitance_f: float) -> None:
    con.execute(
        "insert into part by name select $pk as pk, $maker as maker, $number as part_number, $f as capacitance_f,"
        " 63.0 as rated_v, 'film PET' as technology, 0 as contradictions",
        {"pk": pk, "maker": MAKER, "number": f"part {pk}", "f": capacitance_f},
    )


def put_offer(con: duckdb.DuckDBPyConnection, pk: int, number: str, **offer: Any) -> None:
    values: dict[str, Any] = {
        "supplier": "Shed",
        "currency": "EUR",
        "stock": 1000,
        "minimum": None,
        "pack": None,
    } | offer
    prices = values.pop("prices")
    con.execute(
        "insert into offer by name select $pk as pk, $number as supplier_number, $supplier as supplier,"
        " $currency as currency, $stock as stock, $minimum as minimum, $pack as pack, 'new' as condition,"
        " $prices as prices",
        {"pk": pk, "number": number, "prices": [{"from": q, "price": Decimal(p)} for q, p in prices], **values},
    )


def repair_of(folder: Path, positions: list[tuple[str, str, str]], cards: dict[str, int]) -> Path:
    """A repair's folder with positions of (reference, card, capacitance), each pinned to the part of that value."""
    folder.mkdir()
    tables = "\n".join(f'[cards."{name}"]\ncount = {count}' for name, count in cards.items())
    (folder / "repair.toml").write_text(f'name = "shelf radio"\n{tables}\n', encoding="utf-8")
    lines = [f"{reference},{card},,{capacitance}" for reference, card, capacitance in positions]
    (folder / "positions.csv").write_text("\n".join(["reference,card,marking,capacitance", *lines]), encoding="utf-8")
    return folder


def planned(con: duckdb.DuckDBPyConnection, folder: Path) -> tuple[list[Choice], ShoppingList]:
    choices = choose(con, read_repair(folder))
    return choices, plan(con, choices)


def test_quantities_are_summed_over_positions_and_cards(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", prices=[(1, "0.50"), (10, "0.30")])
    folder = repair_of(tmp_path / "r", [("C1", "tone", "1 µF"), ("C2", "tone", "1 µF"), ("C3", "base", "1 µF")],
                       {"tone": 5, "base": 1})  # fmt: skip
    _, shopping = planned(con, folder)
    (line,) = shopping.lines
    assert (line.needed, line.purchase.ordered, line.purchase.unit_price) == (11, 11, Decimal("0.30"))
    assert line.positions == ("C1 (tone)", "C2 (tone)", "C3 (base)")
    assert shopping.total == Decimal("3.30") and shopping.currency == "EUR" and not shopping.short


def test_more_pieces_where_a_break_makes_them_cheaper(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", prices=[(1, "0.50"), (10, "0.20")])
    _, shopping = planned(con, repair_of(tmp_path / "r", [("C1", "tone", "1 µF")], {"tone": 6}))
    assert [(line.needed, line.purchase.ordered, line.purchase.cost) for line in shopping.lines] == [
        (6, 10, Decimal("2.00"))
    ]


def test_other_currencies_count_by_their_rate_and_none_without(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", prices=[(1, "0.59")])
    put_offer(con, 1, "B", currency="GBP", prices=[(1, "0.50")])
    put_offer(con, 1, "C", currency="CHF", prices=[(1, "0.01")])
    put_part(con, 2, 47e-6)
    put_offer(con, 2, "D", currency="CHF", prices=[(1, "0.70")])
    _, shopping = planned(con, repair_of(tmp_path / "r", [("C1", "", "1 µF"), ("C2", "", "47 µF")], {}))
    assert [line.offer.printed["supplier_number"] for line in shopping.lines] == ["A", "D"]
    assert shopping.total == Decimal("0.59")
    assert [line.own_cost for line in shopping.lines] == [Decimal("0.59"), None]
    assert len(shopping.without_rate) == 1


def test_what_no_single_offer_has_comes_from_several(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", stock=4, prices=[(1, "0.10")])
    put_offer(con, 1, "B", stock=7, pack=5, prices=[(1, "0.20")])
    put_offer(con, 1, "C", stock=3, minimum=10, prices=[(1, "0.01")])
    folder = repair_of(tmp_path / "r", [(f"C{n}", "", "1 µF") for n in range(1, 9)], {})
    _, shopping = planned(con, folder)
    assert [(x.offer.printed["supplier_number"], x.needed, x.purchase.ordered) for x in shopping.lines] == [
        ("A", 3, 3),
        ("B", 5, 5),
    ]
    assert not shopping.short


def test_what_nobody_has_enough_of_is_said(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", stock=4, prices=[(1, "0.10")])
    folder = repair_of(tmp_path / "r", [(f"C{n}", "", "1 µF") for n in range(1, 7)], {})
    _, shopping = planned(con, folder)
    assert [line.needed for line in shopping.lines] == [4]
    assert "2 more are needed for C1, C2, C3, C4, C5, C6" in shopping.short[0]


def cheapest_by_trying(pieces: int, offers: list[dict[str, Any]]) -> Decimal:
    """Every offer, every number of pieces it can sell, at the price of the highest break not above it."""
    costs = []
    for offer in offers:
        for ordered in range(max(pieces, offer["minimum"]), offer["stock"] + 1):
            if ordered % offer["pack"] == 0:
                price = [price for quantity, price in offer["prices"] if quantity <= ordered][-1]
                costs.append(ordered * Decimal(price) * (Decimal("1.2") if offer["currency"] == "GBP" else 1))
    return min(costs)


def test_each_line_is_the_cheapest_way_by_trying_all(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    draw = random.Random(7)
    positions, expected = [], {}
    for pk in range(1, 61):
        put_part(con, pk, pk * 1e-9)
        offers = []
        for number in range(draw.randint(1, 4)):
            breaks = sorted(draw.sample(range(2, 40), draw.randint(0, 3)))
            price = draw.randint(20, 90)
            prices = [(1, f"0.{price}")]
            for quantity in breaks:
                price = max(1, price - draw.randint(0, 25))
                prices.append((quantity, f"0.{price:02d}"))
            offer = {
                "currency": draw.choice(["EUR", "GBP"]), "minimum": draw.choice([1, 1, 5]), "pack": draw.choice([1, 5]),
                "stock": draw.randint(40, 90), "prices": prices,
            }  # fmt: skip
            offers.append(offer)
            put_offer(con, pk, f"{pk}-{number}", **offer)
        pieces = draw.randint(1, 35)
        positions.append((f"C{pk}", f"card {pieces}", f"{pk} nF"))
        expected[f"part {pk}"] = cheapest_by_trying(pieces, offers)
    cards = {f"card {pieces}": pieces for pieces in range(1, 36)}
    folder = repair_of(tmp_path / "r", positions, cards)
    file = folder / "positions.csv"
    rows = [line.split(",") for line in file.read_text(encoding="utf-8").splitlines()]
    pins = [f"{','.join(row)},{MAKER},part {row[3].removesuffix(' nF')}" for row in rows[1:]]
    file.write_text("\n".join([f"{','.join(rows[0])},pinned_maker,pinned_part_number", *pins]), encoding="utf-8")
    _, shopping = planned(con, folder)
    found = {line.part["part_number"]: line.own_cost for line in shopping.lines}
    assert found == expected
    assert shopping.total == sum(expected.values(), Decimal(0)).quantize(Decimal("0.01"), ROUND_HALF_UP)


def test_what_costs_nothing_needs_no_rate(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", prices=[(1, "0.20")])
    put_offer(con, 1, "B", supplier="own drawer", currency=None, prices=[(1, "0")])
    choices, shopping = planned(con, repair_of(tmp_path / "r", [("C1", "", "1 µF")], {}))
    assert [line.offer.printed["supplier"] for line in shopping.lines] == ["own drawer"]
    assert (shopping.total, shopping.without_rate) == (Decimal("0.00"), ())
    assert choices[0].candidate is not None and choices[0].candidate.made["cost"] == 0


def test_prices_without_rates_are_not_compared(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    con.execute("delete from currency_rate")
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", supplier="Attic", currency="EUR", prices=[(1, "0.50")])
    put_offer(con, 1, "B", supplier="Barn", currency="GBP", prices=[(1, "0.05")])
    _, shopping = planned(con, repair_of(tmp_path / "r", [("C1", "", "1 µF")], {}))
    assert [line.offer.printed["supplier"] for line in shopping.lines] == ["Attic"]  # by name, not by number
    assert (shopping.currency, shopping.lines[0].own_cost) == (None, None)


PINNED = "reference,marking,capacitance,pinned_maker,pinned_part_number\nC1,x,1 µF,Hollin,part 1\n"


@pytest.mark.parametrize(("stock", "ordered"), [(None, [1]), (0, [])])
def test_a_pin_settles_what_is_not_stated_but_not_what_is_refused(
    con: duckdb.DuckDBPyConnection, tmp_path: Path, stock: int | None, ordered: list[int]
) -> None:
    put_part(con, 1, 1e-6)
    put_offer(con, 1, "A", stock=stock, prices=[(1, "0.20")])
    folder = repair_of(tmp_path / "r", [], {})
    (folder / "positions.csv").write_text(PINNED, encoding="utf-8")
    _, shopping = planned(con, folder)
    assert [line.purchase.ordered for line in shopping.lines] == ordered
    told = ["Hollin part 1, for C1: no offer of it can be bought. Shed: in stock: 0; needed: 1."]
    assert list(shopping.short) == ([] if ordered else told)
