"""The demo's parts and offers with claims taken away or exchanged at random: what no tidy list would ever state."""

from decimal import Decimal
from random import Random
from typing import Any

import duckdb

from brute.merged import Claims

Changes = dict[tuple[str, Any], list[str]]
SHARE = 0.12


def sizes(text: str) -> tuple[Decimal | None, ...]:
    """The numbers of a text, and once "not stated" for every number."""
    found = [Decimal(word) for word in text.split()]
    return (*found, *[None] * len(found))


PART_POOLS: dict[str, tuple[Any, ...]] = {
    "technology": (
        None,
        None,
        None,
        "wet aluminium",
        "tantalum",
        "paper",
        "film PET",
        "ceramic class 2",
        "hybrid aluminium",
    ),
    "polarity": (None, None, "polar", "bipolar"),
    "capacitance_f": sizes("0.000001 0.0001"),
    "rated_v": sizes("25 63"),
    "rated_ac_v": sizes("63 275"),
    "rated_c": sizes("85 105"),
    "life_h": sizes("1000 20000"),
    "life_basis": (None, "endurance", "load life", "useful life"),
    "life_reference": (None, "ambient", "case", "case"),
    "tan_delta": sizes("0.2 0.08"),
    "tan_delta_hz": sizes("100 120 1000"),
    "esr_ohm": sizes("0.05 0.5"),
    "esr_hz": sizes("120 100000"),
    "ripple_a": sizes("0.1 1.5"),
    "ripple_hz": sizes("125 150 125.5 100000"),
    "leakage_factor": sizes("0.002 0.01"),
    "leakage_plus_a": sizes("0 0.00001"),
    "leakage_floor_a": sizes("0 0.000003"),
    "shape": (None, None, None, "can", "box", "axial"),
    "along_mm": sizes("5 19.9 20"),
    "across_mm": sizes("5 19.9 20"),
    "tall_mm": sizes("11 19.9 20 20.1"),
    "along_plus_mm": sizes("0 0.3 1"),
    "across_plus_mm": sizes("0 0.3 1"),
    "tall_plus_mm": sizes("0 0.5 3"),
    "lead_spacing_mm": sizes("2.5 5 7.5"),
    "delivered_spacing_mm": sizes("2.5 5"),
    "lead_form": (None, "straight", "formed", "cut", "snap-in", "snap-in"),
    "safety_class": (None, "none", "X1", "X2", "Y1", "Y2"),
}
OFFER_POOLS: dict[str, tuple[Any, ...]] = {
    "condition": (None, None, "new", "old stock", "pulled"),
    "stock": sizes("0 1 12 96"),
    "traceable": (None, True, False),
}


def key_of(claims: Claims) -> str:
    """What a part is told by, or an offer."""
    names = ("supplier", "supplier_number") if "supplier" in claims else ("maker", "part_number")
    return " / ".join(claims[name] for name in names)


def shake(told: list[Claims], pools: dict[str, tuple[Any, ...]], dice: Random) -> tuple[list[Claims], Changes]:
    """The claims with about one in eight changed, and the changes."""
    changes: Changes = {}
    shaken: list[Claims] = []
    for claims in sorted(told, key=key_of):
        new = {term: dice.choice(pool) for term, pool in pools.items() if dice.random() < SHARE}
        new |= round_again({**claims, **new})
        shaken.append({**claims, **new})
        for change in new.items():
            changes.setdefault(change, []).append(key_of(claims))
    return shaken, changes


def round_again(claims: Claims) -> Claims:
    """A can has one diameter, whatever was changed."""
    return {"across_mm": claims["along_mm"]} if claims.get("shape") == "can" else {}


def store(con: duckdb.DuckDBPyConnection, table: str, changes: Changes) -> None:
    """Writes the changes into a catalog."""
    named = "maker || ' / ' || part_number" if table == "part" else "supplier || ' / ' || supplier_number"
    for (term, value), keys in changes.items():
        stored = float(value) if isinstance(value, Decimal) else value
        con.execute(f"update {table} set {term} = ? where {named} in (select unnest(?))", [stored, keys])
