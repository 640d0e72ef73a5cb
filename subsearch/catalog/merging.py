"""All living lines merged into parts and offers: contradicting claims are counted, the more cautious one wins."""

from collections.abc import Collection

import duckdb

from subsearch.catalog.faults import OFFER_KEY
from subsearch.catalog.store import empty_again
from subsearch.catalog.typed import TYPED_IN
from subsearch.terms import OFFER_TERMS, PART_TERMS

LEAST = ("rated_v", "rated_ac_v", "rated_c", "life_h", "ripple_a", "lead_length_mm", "tolerance_low_pct")
MOST = (
    "lowest_c", "tan_delta", "esr_ohm", "along_mm", "across_mm", "tall_mm", "along_plus_mm", "across_plus_mm",
    "tall_plus_mm", "lead_diameter_mm", "tolerance_high_pct", "ripple_hz", "tan_delta_hz", "esr_hz",
    "leakage_factor", "leakage_plus_a", "leakage_floor_a",
)  # fmt: skip
FIRST = ("series", "leakage_rule")
LAST_WORD_WINS = {  # from the bold claim to the cautious one
    "polarity": ("bipolar", "polar"),
    "safety_class": ("Y1", "Y2", "X1", "X2", "none"),
    "life_basis": ("endurance", "load life", "useful life"),
    "life_reference": ("ambient", "case"),
    "life_cycle": ("active", "not for new designs", "discontinued"),
    "vent": ("none", "vented"),
}
ORDER = "capacitance_f, rated_v, maker, part_number"
TERM_NAMES = [term.name for term in (*PART_TERMS, *OFFER_TERMS)]
LIVING = "(from listing anti join dead on listing.rowid = dead.row)"
# Where a supplier has one list only, all its lines live. Of several lists the newest line of an offer lives; typed
# again, a part corrects what was typed before, its condition too.
DEAD = f"""create or replace temp table dead as
    with keyed as (
        select listing.rowid as row, listing.supplier, maker, part_number, intake, {OFFER_KEY} as key,
            if(file = $1 and supplier_number is null, intake, null) as by_hand
        from listing join intake using (intake)
        where listing.supplier in (select supplier from listing group by supplier having min(intake) <> max(intake)))
    select row from keyed
    qualify not (intake = max(intake) over (partition by supplier, key)
        and coalesce(by_hand = max(by_hand) over (partition by supplier, maker, part_number), true))"""


def rebuild(con: duckdb.DuckDBPyConnection) -> None:
    """Make `part` and `offer` anew from the living lines of `listing`.

    con: connection to a catalog, inside a transaction.
    """
    con.execute(DEAD, [TYPED_IN])
    counted = ", ".join(f"count({term})" for term in TERM_NAMES)
    counts = con.execute(f"select {counted} from listing").fetchall()[0]
    stated = {term for term, count in zip(TERM_NAMES, counts, strict=True) if count or term in ORDER.split(", ")}
    empty_again(con, "part")
    empty_again(con, "offer")
    for statement in (_parts(stated), _offers(stated), "drop table dead"):
        con.execute(statement)


def _claim(term: str) -> str:
    """The claim of several lines together."""
    if term in LEAST:
        return f"min({term})"
    if term in MOST:
        return f"max({term})"
    if term in FIRST:
        return f"arg_min({term}, (intake, line)) filter ({term} is not null)"
    if term in LAST_WORD_WINS:
        words = ", ".join(f"'{word}'" for word in LAST_WORD_WINS[term])
        return f"arg_max({term}, list_position([{words}], {term}))"
    return f"if(min({term}) = max({term}), min({term}), null)"


def _apart(lines: str, *key: str) -> tuple[str, str]:
    """Lines that stand alone with their key, and those that share it: most need no merging, and merging takes memory.

    lines: a relation, asked for twice. Two keys with one hash are merged apart, only later than need be.
    """
    mark = f"hash({', '.join(key)})"
    shared = f"(select {mark} as mark from {lines} group by mark having count(*) > 1)"
    return f"{lines} where {mark} not in {shared}", f"{lines} where {mark} in {shared}"


def _parts(stated: Collection[str]) -> str:
    """Parts in their order: what anyone states of any.

    Numbering writes on one core only; a table in between would be quicker, but stay in memory until the load ends.
    """
    terms = [term.name for term in PART_TERMS if term.name in stated and term.name not in ("maker", "part_number")]
    claims = ", ".join(["maker", "part_number", *(f"{_claim(term)} as {term}" for term in terms)])
    # not "is distinct from": with no claim at all both are null, and nothing contradicts
    contradictions = " + ".join(["0", *(f"coalesce((min({term}) <> max({term}))::integer, 0)" for term in terms)])
    alone, shared = _apart(LIVING, "maker", "part_number")
    columns = ", ".join(term.name if term.name in stated else "null" for term in PART_TERMS)
    return f"""insert into part
        select row_number() over (), {columns}, contradictions from (
            select {", ".join(["maker", "part_number", *terms])}, 0 as contradictions from {alone}
            union all
            select {claims}, {contradictions} as contradictions from {shared} group by maker, part_number
            order by {ORDER})"""


def _offers(stated: Collection[str]) -> str:
    """Lines of one offer join; a supplier's number that stands on two parts is an offer for each."""
    terms = [term.name for term in OFFER_TERMS if term.name != "supplier"]
    held = [term for term in terms if term in stated or term == "date_seen"]
    seen = {"date_seen": "coalesce(line.date_seen, intake.seen)"}
    packed = ", ".join(f"{term} := {seen.get(term, f'line.{term}')}" for term in held)
    columns = ", ".join(["supplier", *(f"claims.{term}" if term in held else "null" for term in terms)])
    alone, shared = _apart("placed", "supplier", "key", "maker", "part_number")
    # two lines may give the same quantity only where a list mixes rows and columns: the higher price stands
    return f"""insert into offer
        with placed as not materialized (
            select line.supplier, {OFFER_KEY} as key, maker, part_number, line.prices as breaks,
                struct_pack({packed}) as claims, (prices[1]."from", line.line) as place
            from {LIVING} as line join intake using (intake)
            where len(line.prices) > 0), -- a line of a size table makes its part known, not an offer
        joined as (
            select supplier, key, maker, part_number, claims, breaks from {alone}
            union all
            select supplier, key, maker, part_number, arg_min(claims, place) as claims,
                list_sort(flatten(list(breaks))) as breaks
            from {shared} group by supplier, key, maker, part_number)
        select pk, {columns},
            list_filter(breaks, lambda b, i: i = len(breaks) or breaks[i + 1]."from" <> b."from")
        from joined join part
            on part.part_number = joined.part_number and part.maker is not distinct from joined.maker
        order by pk, supplier, key"""
