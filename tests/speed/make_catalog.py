"""python -m speed.make_catalog FILE OFFERS [SEED]: a catalog of that many invented offers, for measuring speed.

Every value is drawn from a hash of the seed, the row and what is drawn, so the same call gives the same rows on every
machine and with any number of threads. Parts are a third of the offers. All names are invented.
"""

import sys
from pathlib import Path

import duckdb

from subsearch.catalog.merging import ORDER
from subsearch.catalog.store import open_to_write
from subsearch.terms import OFFER_TERMS, PART_TERMS

SHARE_NOT_STATED = 0.02
SOMETIMES_NOT_STATED = (
    "technology", "rated_c", "life_h", "shape", "tall_mm", "across_mm", "lead_spacing_mm", "polarity", "vent",
)  # fmt: skip
E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82)

# technology, up to which draw, decades of capacitance from 10^least pF over so many, rated voltages, shape, volume
# in mm³ for 1 F V, highest temperatures, hours of life
KINDS = """(values
    ('wet aluminium', 0.46, 5, 5, [6.3, 10, 16, 25, 35, 50, 63, 100, 200, 400], 'can', 5e5, [85, 105], [2000, 5000]),
    ('film PET', 0.66, 3, 4, [63, 100, 250, 400, 630], 'box', 3e7, [85, 105, 125], [null]),
    ('film PP', 0.78, 2, 4, [100, 250, 400, 630, 1000], 'box', 8e7, [85, 105], [null]),
    ('ceramic class 2', 0.86, 2, 4, [16, 25, 50, 100], 'box', 2e7, [85, 125], [null]),
    ('ceramic C0G', 0.92, 0, 4, [50, 100, 200], 'box', 2e8, [125], [null]),
    ('polymer aluminium', 0.96, 6, 3, [6.3, 10, 16, 25, 35], 'can', 6e5, [105], [2000, 5000]),
    ('hybrid aluminium', 0.98, 6, 3, [25, 35, 50, 63], 'can', 6e5, [105, 125], [4000, 10000]),
    ('tantalum', 1.01, 5, 4, [6.3, 10, 16, 25, 35], 'can', 5e5, [85, 125], [2000])
) as kinds(technology, up_to, least, decades, volts, shape, bulk, temperatures, lives)"""

MAKERS = ["Grisbeck", "Holmwater", "Lindqvarn", "Ostermoor", "Pellbrook", "Ravensike", "Tarnfield", "Undercombe"]
SUPPLIERS = ["Bramble Parts", "Cinder Lane", "Dovecote", "Eastmarsh", "Fallow Yard", "Greyfriar", "Harrow", "Inkwell"]

DRAWN = f"""select i,
    one(['{"', '".join(MAKERS)}'], draw(i, 'maker')) as maker,
    'X' || i as part_number, technology, shape, temperatures, lives,
    (one({list(E12)}, draw(i, 'digits')) || 'e' || (least - 13 + floor(draw(i, 'decade') * decades)::integer))::double
        as capacitance_f,
    one(volts, draw(i, 'volts'))::double as rated_v, bulk
    from range(1, $parts + 1) as numbers(i) join {KINDS}
    on up_to = (select min(up_to) from {KINDS} where up_to > draw(i, 'kind'))"""

# A can twice as tall as wide, a box twice as long as deep; sizes on a grid of 0.5 mm, leads on the usual spacings.
SIZED = """select *,
    ceil(2 * greatest(4, least(60, (bulk * capacitance_f * rated_v * (0.7 + 0.6 * draw(i, 'size'))) ** (1 / 3.0)))) / 2
        as side
    from drawn"""

PARTS = """select maker, part_number, maker[1:1] || (1 + floor(draw(i, 'series') * 9)) as series, technology,
    case when technology in ('wet aluminium', 'tantalum') and draw(i, 'bipolar') < 0.9 or technology in
        ('polymer aluminium', 'hybrid aluminium') then 'polar' else 'bipolar' end as polarity,
    capacitance_f, -one([5, 10, 20], draw(i, 'tolerance')) as tolerance_low_pct,
    one([5, 10, 20], draw(i, 'tolerance')) as tolerance_high_pct, rated_v,
    case when technology like 'film%' then round(rated_v * 0.6) end as rated_ac_v, -40 as lowest_c,
    one(temperatures, draw(i, 'hot')) as rated_c, one(lives, draw(i, 'life')) as life_h,
    case when life_h is not null then one(['endurance', 'load life', 'useful life'], draw(i, 'basis')) end
        as life_basis,
    case when shape = 'can' then 0.12 else 0.01 end as tan_delta,
    case when shape = 'can' then 120 else 1000 end as tan_delta_hz,
    case when life_h is not null then round(sqrt(capacitance_f * rated_v) * 20, 3) end as ripple_a,
    case when life_h is not null then one([120, 100000], draw(i, 'ripple')) end as ripple_hz,
    if(shape = 'can' and draw(i, 'axial') < 0.1, 'axial', shape) as shape,
    case shape when 'axial' then 2 * side when 'box' then 2 * side else side end as along_mm, side as across_mm,
    case shape when 'can' then 2 * side else side end as tall_mm,
    case shape when 'can' then (case when side < 6 then 2.5 when side < 8 then 3.5 when side < 16 then 5
        when side < 18 then 7.5 else 10 end)
        when 'box' then (case when along_mm < 9 then 5 when along_mm < 13 then 10 when along_mm < 20 then 15
        else 22.5 end) end as lead_spacing_mm,
    0.6 as lead_diameter_mm, case when shape = 'can' and side >= 22 then 'snap-in' else 'straight' end as lead_form,
    case when shape = 'can' and side >= 6.3 then 'vented' else 'none' end as vent,
    case when technology = 'film PP' and draw(i, 'safety') < 0.2 then 'X2' else 'none' end as safety_class
    from sized"""

OFFERS = f"""select 1 + floor(draw(i, 'part') * $parts)::integer as pk,
    one(['{"', '".join(SUPPLIERS)}'], draw(i, 'supplier')) as supplier, 'N' || i as supplier_number,
    case when draw(i, 'currency') < 0.95 then 'EUR' else 'SEK' end as currency,
    case when draw(i, 'stocked') >= 0.03 then floor(exp(draw(i, 'stock') * 9))::integer - 1 end as stock,
    one([1, 1, 1, 5, 10], draw(i, 'minimum')) as minimum, one([1, 1, 1, 5], draw(i, 'pack')) as pack,
    date '2026-10-01' as date_seen,
    case when draw(i, 'condition') < 0.9 then 'new' when draw(i, 'condition') < 0.96 then 'old stock'
        when draw(i, 'condition') < 0.98 then 'pulled' end as condition,
    draw(i, 'traceable') < 0.8 as traceable,
    list_transform([1, 10, 100, 1000][:1 + floor(draw(i, 'breaks') * 4)::integer], lambda b: {{
        'from': b, 'price': round(0.03 * exp(draw(i, 'price') * 4) * b ** -0.15, 4)::decimal(14, 6)}}) as prices
    from range(1, $offers + 1) as numbers(i)"""


def make_catalog(path: Path, offers: int, seed: int = 1) -> None:
    """Give a new catalog file with so many offers for a third as many parts, stored in the order a load stores them."""
    path.unlink(missing_ok=True)
    with open_to_write(path) as con:
        con.execute(f"create temp macro draw(i, what) as hash(i, what, {int(seed)})::double / 18446744073709551616e0")
        con.execute(
            "create temp macro one(words, drawn) as list_extract(words, 1 + floor(drawn * len(words))::integer)"
        )
        con.execute("insert into currency_rate values ('EUR', 1, '2026-10-01'), ('SEK', 0.09, '2026-10-01')")
        _fill(con, offers)


def _fill(con: duckdb.DuckDBPyConnection, offers: int) -> None:
    stated = {
        name: f"case when draw(part_number, '{name} not stated') >= {SHARE_NOT_STATED} then {name} end"
        for name in SOMETIMES_NOT_STATED
    }
    made = f"with drawn as ({DRAWN}), sized as ({SIZED}) {PARTS}"
    printed = _columns_of(con, made, {"parts": 1})
    columns = ", ".join(
        f"{stated.get(term.name, term.name)} as {term.name}" if term.name in printed else f"null as {term.name}"
        for term in PART_TERMS
    )
    parts = max(1, offers // 3)
    con.execute(
        f"insert into part select row_number() over (order by {ORDER}), *, 0 "
        f"from (select {columns} from ({made})) order by {ORDER}",
        {"parts": parts},
    )
    sold = _columns_of(con, OFFERS, {"parts": 1, "offers": 1})
    columns = ", ".join(t.name if t.name in sold else f"null as {t.name}" for t in OFFER_TERMS)
    con.execute(
        f"insert into offer select pk, {columns}, prices from ({OFFERS}) order by pk, supplier, supplier_number",
        {"parts": parts, "offers": offers},
    )


def _columns_of(con: duckdb.DuckDBPyConnection, sql: str, parameters: dict[str, int]) -> set[str]:
    return {column[0] for column in con.execute(f"select * from ({sql}) limit 0", parameters).description or ()}


if __name__ == "__main__":
    make_catalog(Path(sys.argv[1]), int(sys.argv[2]), *map(int, sys.argv[3:4]))
