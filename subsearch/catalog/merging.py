"""All living lines merged into parts and offers: contradicting claims are counted, the more cautious one wins."""

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


def rebuild(con: duckdb.DuckDBPyConnection) -> None:
    """Make `part` and `offer` anew from the living lines of `listing`.

    con: connection to a catalog, inside a transaction.
    """
    con.execute(
        f"""create or replace temp table living as
        with keyed as (
            select listing.supplier, maker, part_number, intake, line, {OFFER_KEY} as key,
                if(file = $1 and supplier_number is null, intake, null) as by_hand
            from listing join intake using (intake))
        select intake, line, key from keyed
        qualify intake = max(intake) over (partition by supplier, key)
            and coalesce(by_hand = max(by_hand) over (partition by supplier, maker, part_number), true)""",
        [TYPED_IN],  # typed again, a part corrects what was typed before, its condition too
    )
    empty_again(con, "part")
    empty_again(con, "offer")
    con.execute(_parts())
    con.execute(_offers())
    con.execute("drop table living")


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


def _parts() -> str:
    terms = [term.name for term in PART_TERMS if term.name not in ("maker", "part_number")]
    claims = ", ".join(f"{_claim(term)} as {term}" for term in terms)
    # not "is distinct from": with no claim at all both are null, and nothing contradicts
    contradictions = " + ".join(f"coalesce((min({term}) <> max({term}))::integer, 0)" for term in terms)
    columns = ", ".join(term.name for term in PART_TERMS)
    return f"""insert into part
        with merged as (
            select maker, part_number, {claims}, {contradictions} as contradictions
            from listing join living using (intake, line) group by maker, part_number)
        select row_number() over (order by {ORDER}), {columns}, contradictions from merged order by {ORDER}"""


def _offers() -> str:
    """Lines of one offer join; a supplier's number that stands on two parts is an offer for each."""
    terms = [term.name for term in OFFER_TERMS if term.name != "supplier"]
    seen = {"date_seen": "coalesce(listing.date_seen, intake.seen)"}
    packed = ", ".join(f"{term} := {seen.get(term, f'listing.{term}')}" for term in terms)
    columns = ", ".join(["supplier", *(f"claims.{term}" for term in terms)])
    # two lines may give the same quantity only where a list mixes rows and columns: the higher price stands
    return f"""insert into offer
        with placed as (
            select listing.supplier, key, maker, part_number, listing.prices as breaks,
                struct_pack({packed}) as claims, (prices[1]."from", line) as place
            from listing join living using (intake, line) join intake using (intake)),
        joined as (
            select supplier, key, maker, part_number, arg_min(claims, place) as claims,
                list_sort(flatten(list(breaks))) as breaks
            from placed group by supplier, key, maker, part_number)
        select pk, {columns},
            list_filter(breaks, lambda b, i: i = len(breaks) or breaks[i + 1]."from" <> b."from")
        from joined join part
            on part.part_number = joined.part_number and part.maker is not distinct from joined.maker
        order by pk, supplier, key"""
