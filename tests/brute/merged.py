"""The lines of the lists merged into parts and offers, in plain Python: what the catalog must hold."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any

Row = Mapping[str, Any]
Claims = dict[str, Any]
Key = tuple[str, ...]


def words(text: str) -> tuple[str, ...]:
    """The words of a text."""
    return tuple(text.split())


LEAST = words("rated_v rated_ac_v rated_c life_h ripple_a lead_length_mm tolerance_low_pct")
MOST = words("""
lowest_c tan_delta esr_ohm along_mm across_mm tall_mm along_plus_mm across_plus_mm tall_plus_mm lead_diameter_mm
tolerance_high_pct ripple_hz tan_delta_hz esr_hz leakage_factor leakage_plus_a leakage_floor_a
""")
CAUTIOUS_FIRST = {
    "polarity": ("polar", "bipolar"),
    "safety_class": ("none", "X2", "Y2", "X1", "Y1"),
    "life_basis": ("useful life", "load life", "endurance"),
    "life_reference": ("case", "ambient"),
    "life_cycle": ("discontinued", "not for new designs", "active"),
    "vent": ("vented", "none"),
}
UNKNOWN_IF_DOUBTFUL = words("capacitance_f technology shape lead_spacing_mm delivered_spacing_mm lead_form")
FIRST_TOLD = ("series", "leakage_rule")
PART_CLAIMS = (*LEAST, *MOST, *CAUTIOUS_FIRST, *UNKNOWN_IF_DOUBTFUL, *FIRST_TOLD)
OFFER_CLAIMS = words("""
supplier supplier_number currency stock minimum pack lead_time_days date_seen date_bought condition date_code
""")


def in_order(rows: Iterable[Row]) -> list[Row]:
    """The lines as they are loaded: file after file by name, line after line."""
    return sorted(rows, key=lambda row: (row["file"], row["line"]))


def cautious(term: str, told: list[Any]) -> Any:
    """One claim out of all that are told, in order; nothing told: None."""
    distinct = set(told)
    if len(distinct) < 2:
        return told[0] if told else None
    if term in LEAST:
        return min(distinct)
    if term in MOST:
        return max(distinct)
    if term in CAUTIOUS_FIRST:
        return min(distinct, key=CAUTIOUS_FIRST[term].index)
    return told[0] if term in FIRST_TOLD else None


def merged_parts(rows: Iterable[Row]) -> list[Claims]:
    """Parts by maker and part number, each with its count of contradicting terms and its offers as (), so far."""
    lines: dict[Key, list[Row]] = {}
    for row in in_order(rows):
        lines.setdefault((row["maker"], row["part_number"]), []).append(row)
    return [one_part(key, told) for key, told in lines.items()]


def one_part(key: Key, lines: list[Row]) -> Claims:
    """A part as all its lines claim it."""
    told = {term: [line[term] for line in lines if line[term] is not None] for term in PART_CLAIMS}
    part: Claims = {"maker": key[0], "part_number": key[1]}
    part |= {term: cautious(term, claims) for term, claims in told.items()}
    part["contradictions"] = sum(len(set(claims)) > 1 for claims in told.values())
    part["offers"] = ()
    return part


def offer_key(row: Row) -> Key:
    """What makes lines of one supplier one offer."""
    if row["supplier_number"] is not None:
        return (row["supplier"], row["supplier_number"])
    return (row["supplier"], row["maker"], row["part_number"], row["condition"])


def merged_offers(rows: Iterable[Row]) -> list[Claims]:
    """Offers: the claims of the line with the smallest quantity, and the price breaks of all their lines."""
    lines: dict[Key, list[Row]] = {}
    for row in in_order(rows):
        lines.setdefault(offer_key(row), []).append(row)
    return [one_offer(told) for told in lines.values()]


def one_offer(lines: list[Row]) -> Claims:
    """An offer as its lines state it."""
    first = min(lines, key=lambda line: (line["prices"][0][0], line["line"]))
    claims: Claims = {term: first[term] for term in (*OFFER_CLAIMS, "maker", "part_number")}
    claims["traceable"] = {"yes": True, "no": False}.get(first["traceable"])
    prices: list[tuple[int, Decimal]] = sorted(price for line in lines for price in line["prices"])
    return {**claims, "prices": prices}


def with_offers(parts: list[Claims], offers: list[Claims]) -> list[Claims]:
    """The parts, each with the state, stock and provenance of all its offers."""
    of_part: dict[Key, list[tuple[str | None, Decimal | None, bool | None]]] = {}
    for offer in offers:
        found = (offer["condition"], offer["stock"], offer["traceable"])
        of_part.setdefault((offer["maker"], offer["part_number"]), []).append(found)
    return [{**part, "offers": tuple(of_part.get((part["maker"], part["part_number"]), ()))} for part in parts]
