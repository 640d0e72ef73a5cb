"""The catalog's parts and offers against the same lists merged in plain Python, value for value."""

from datetime import date
from typing import Any

import duckdb

from brute.asking import as_float
from brute.merged import OFFER_CLAIMS, PART_CLAIMS, Claims

LIST_SEEN = date(2026, 10, 1)  # the day given when the demo is loaded stands in where a line states none


def rows_of(con: duckdb.DuckDBPyConnection, sql: str) -> list[dict[str, Any]]:
    found = con.execute(sql)
    names = [column[0] for column in found.description or ()]
    return [dict(zip(names, row, strict=True)) for row in found.fetchall()]


def test_merged_parts(demo_con: duckdb.DuckDBPyConnection, parts: list[Claims]) -> None:
    names = ("maker", "part_number", *PART_CLAIMS, "contradictions")
    found = rows_of(demo_con, "select * from part order by pk")
    assert sorted(found[0]) == sorted(["pk", *names])
    wanted = {(part["maker"], part["part_number"]): {name: as_float(part[name]) for name in names} for part in parts}
    assert {(row["maker"], row["part_number"]): {name: row[name] for name in names} for row in found} == wanted
    assert [row["pk"] for row in found] == list(range(1, len(parts) + 1))
    order = [tuple(row[name] for name in ("capacitance_f", "rated_v", "maker", "part_number")) for row in found]
    assert order == sorted(order)
    assert sum(part["contradictions"] for part in parts) > 40


def test_merged_offers(demo_con: duckdb.DuckDBPyConnection, offers: list[Claims]) -> None:
    names = ("maker", "part_number", *OFFER_CLAIMS, "traceable", "prices")
    found = rows_of(demo_con, "select offer.*, maker, part_number from offer join part using (pk) order by pk")
    assert sorted(found[0]) == sorted(["pk", *names])
    wanted = {(offer["supplier"], offer["supplier_number"]): as_stored(offer) for offer in offers}
    assert len(found) == len(wanted)
    assert {(row["supplier"], row["supplier_number"]): {name: row[name] for name in names} for row in found} == wanted


def as_stored(offer: Claims) -> Claims:
    prices = [{"from": quantity, "price": price} for quantity, price in offer["prices"]]
    stored = {name: as_float(value) for name, value in offer.items()}
    return {**stored, "prices": prices, "date_seen": offer["date_seen"] or LIST_SEEN}
