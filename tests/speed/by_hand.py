"""The same search written by hand, as well as it can be: the rival of `subsearch.search.candidates.find`.

It asks the eight conditions of `asked.py` and nothing else, takes its numbers from the printed laws, and carries narrow
columns until the best are known. `ONE` is for one need bound value by value; `MANY` for a list of needs.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import duckdb

from speed.asked import Answered, answered_rows
from subsearch.search.requirement import Requirement

FIELDS = (
    "capacitance_f", "capacitance_low_f", "capacitance_high_f", "rated_v", "technologies", "hole_spacing_mm",
    "headroom_mm", "working_c", "hours_a_day", "life_wanted_y", "pieces",
)  # fmt: skip
TAKEN = ["new", "old stock"]

# Each part can be mounted in two ways: upright, or an axial one lying between its holes (one); its wires formed to the
# holes, or an axial one on end over the left hole (two).
PART = """select pk, maker, part_number, capacitance_f, rated_v, technology, rated_c, life_h, lead_length_mm,
    coalesce(shape = 'axial', false) as axial,
    shape is not null and not axial and lead_form is distinct from 'snap-in' as wires,
    case when shape in ('can', 'box') then coalesce(delivered_spacing_mm, lead_spacing_mm) end as spacing,
    along_mm + 5 as span,
    tall_mm + coalesce(tall_plus_mm, case when shape = 'can' then if(tall_mm < 20, 1.5e0, 2e0)
        when shape is not null then 0.5e0 end) as tallest,
    greatest(0.8e0, lead_diameter_mm) as straight,
    coalesce(lead_diameter_mm, case when across_mm <= 8 then 0.6e0 when across_mm >= 10 then 0.8e0 end) as thick,
    thick * case when thick < 0.8e0 then 1.5e0 when thick <= 1.2e0 then 2e0 else 2.5e0 end as turn,
    along_mm + coalesce(along_plus_mm, 0.5e0) + straight + turn as bent_along,
    (across_mm + coalesce(across_plus_mm, 0.5e0) + thick + 1) / 2 as beside,
    case when beside >= 2 * turn then beside when beside < 2 * turn then 2 * turn end as end_span
    from main.part"""

LONG = "(lead_length_mm is null or lead_length_mm >= {} - 1e-6)"
MOUNTED = f"""{{headroom_mm}} - tallest as room1, abs(spacing - {{hole_spacing_mm}}) / 2 as off,
    {{headroom_mm}} - if(axial, bent_along + thick / 2, coalesce(tallest + off + straight,
        if(tallest > {{headroom_mm}} + 1e-6, tallest, null))) as room2,
    case when axial then {{hole_spacing_mm}} - span >= -1e-6
        else 0.3e0 - off >= -1e-6 and {LONG.format(3)} end as meets1,
    case when axial then {{hole_spacing_mm}} - end_span >= -1e-6
            and {LONG.format("bent_along + straight + turn + {hole_spacing_mm} + 3")}
        else wires and 2.6e0 - off >= -1e-6 and {LONG.format("off * sqrt(2e0) + straight + 3")} end as meets2"""

MADE = f"""{MOUNTED}, meets1 and room1 >= -1e-6 as way1, meets2 and room2 >= -1e-6 as way2,
    case when way1 then false when way2 then true else way1 is not null end as second, if(second, room2, room1) as room,
    coalesce(technology in ('film PET', 'film PP', 'ceramic C0G', 'ceramic class 2'), false) as lasting,
    case when technology in ('wet aluminium', 'hybrid aluminium', 'polymer aluminium')
        then life_h * 2 ** ((rated_c - {{working_c}}) / 10) / (365 * {{hours_a_day}}) end as years,
    part.rated_v >= {{rated_v}} * (1 - 1e-9) and list_contains({{technologies}}, technology) and (way1 or way2)
        and rated_c >= {{working_c}} - {{working_c}} * 1e-9
        and (lasting or years >= {{life_wanted_y}} * (1 - 1e-9)) as fits"""

SCORE = """case when room < 2 then room / 2 when room >= 2 then 1e0 end as s1,
    1 - abs(log2(fit.capacitance_f / {capacitance_f})) as s2,
    case when fit.rated_v < 1.5e0 * {rated_v} then fit.rated_v / {rated_v} - 1
        when fit.rated_v >= 1.5e0 * {rated_v} then 0.5e0 end as s3,
    case when axial then if(second, 0e0, 1e0) when off <= 0.3e0 then 1 - off / 0.6e0
        when off < 2.6e0 then 0.5e0 - off / 5.2e0 when off >= 2.6e0 then 0e0 end as s4,
    0.5e0 * case when lasting or years >= 8 * {life_wanted_y} then 3e0
        when years < 8 * {life_wanted_y} then log2(years / {life_wanted_y}) end as s5,
    1 / (1 + best.cost / {pieces}) as s6,
    0.25e0 * case when best.stock > 0 then greatest(least(log2(best.stock / {pieces}), 3e0), -3e0) / 3
        when best.stock = 0 then -1e0 end as s7,
    coalesce(s1, 0) + coalesce(s2, 0) + coalesce(s3, 0) + coalesce(s4, 0) + coalesce(s5, 0) + coalesce(s6, 0)
        + coalesce(s7, 0) as total, fits and fit.capacitance_f is not null and offered as answer"""

SOLD = """offer.rowid as lies, supplier, supplier_number, stock,
    list_contains($taken, condition) and stock >= {pieces} as buys,
    list_min(list_transform(prices, lambda b:
        ceil(greatest({pieces}, coalesce(minimum, 1), b."from") / coalesce(pack, 1)) * coalesce(pack, 1)
        * b.price::double)) as printed, if(printed = 0, 0e0, printed * worth::double) as cost"""
BEST = """case when bool_or(buys) then true when bool_or(buys is null) then null else false end as offered,
    arg_min({'lies': lies, 'cost': cost, 'stock': stock}, (case when buys then 0 when buys is null then 1 else 2 end,
        coalesce(cost, 'infinity'), supplier, supplier_number)) as best"""
TOLD = """placed.answer, place, in_all, total, scored.part_number, offer.supplier_number, second, room, off, years,
    best.cost, fact, offer"""
TOP = "arg_min(pk, (-round(total, 9), maker is null, maker, part_number), $most::integer) as pks"  # no window: faster
PLACED = "unnest(pks) as pk, generate_subscripts(pks, 1) as place"


def asking(text: str, of: str) -> str:
    """The text with the fields of the need in it: bound ones, or those of a row."""
    for field in FIELDS:
        text = text.replace("{" + field + "}", of + field)
    return text


ONE = asking(
    f"""with fit as materialized (
    select *, {MADE} from (
        {PART} where capacitance_f between {{capacitance_low_f}} * (1 - 1e-9) and {{capacitance_high_f}} * (1 + 1e-9)
        union all {PART} where capacitance_f is null) as part
    where fits is not false),
offered as (select pk, {BEST} from (
        select pk, {SOLD} from offer join (select pk from fit) using (pk) left join currency_rate using (currency))
    group by pk),
scored as materialized (
    select fit.*, best, {SCORE} from fit join offered using (pk) where offered is not false),
placed as (select answer, in_all, {PLACED} from (select answer, count(*) as in_all, {TOP} from scored group by answer))
select {TOLD} from placed join scored using (pk) join main.part as fact using (pk)
    join offer on offer.rowid = best.lies""",
    "$",
)

MANY = asking(
    f"""with need as materialized (select unnest($needs, recursive := true)),
windows as (
    select number, value from (select distinct capacitance_f as value from main.part) join need
        on value between capacitance_low_f * (1 - 1e-9) and capacitance_high_f * (1 + 1e-9)),
fit as materialized (
    select number, pieces, part.*, {MADE}
    from ({PART}) as part join windows on value = part.capacitance_f join need using (number) where fits is not false
    union all select number, pieces, part.*, {MADE}
    from ({PART} where capacitance_f is null) as part cross join need where fits is not false),
offered as (select pk, pieces, {BEST} from (
        select pk, asked.pieces, {SOLD.replace("{pieces}", "asked.pieces")}
        from offer join (select distinct pk, pieces from fit) as asked using (pk)
        left join currency_rate using (currency))
    group by pk, pieces),
scored as materialized (
    select fit.*, best, {SCORE} from fit join offered using (pk, pieces) join need using (number)
    where offered is not false),
placed as (select number, answer, in_all, {PLACED} from (
        select number, answer, count(*) as in_all, {TOP} from scored group by number, answer))
select number, {TOLD} from placed join scored using (number, pk) join main.part as fact using (pk)
    join offer on offer.rowid = best.lies""",
    "need.",
)


def one(con: duckdb.DuckDBPyConnection, asked: Requirement, most: int) -> list[tuple[Any, ...]]:
    """Give the best kept and the best open parts for one need, with their facts and best offers."""
    values = {field: getattr(asked, field) for field in FIELDS}
    technologies = {"technologies": list(asked.technologies or ())}
    return con.execute(ONE, {**values, **technologies, "taken": TAKEN, "most": most}).fetchall()


def many(con: duckdb.DuckDBPyConnection, asked: Sequence[Requirement], most: int) -> list[list[tuple[Any, ...]]]:
    """Give the same for many needs in one statement: each different one is searched once."""
    unnamed = [replace(requirement, reference="") for requirement in asked]
    places = {requirement: number for number, requirement in enumerate(dict.fromkeys(unnamed))}
    bound = [
        {field: getattr(requirement, field) for field in FIELDS}
        | {"number": number, "technologies": list(requirement.technologies or ())}
        for requirement, number in places.items()
    ]
    rows: list[list[tuple[Any, ...]]] = [[] for _ in places]
    for row in con.execute(MANY, {"needs": bound, "taken": TAKEN, "most": most}).fetchall():
        rows[row[0]].append(row[1:])
    return [rows[places[requirement]] for requirement in unnamed]


def same(rows: list[tuple[Any, ...]]) -> Answered:
    """What of an answer by hand must be equal to ours."""
    return answered_rows(row[:6] for row in rows)
