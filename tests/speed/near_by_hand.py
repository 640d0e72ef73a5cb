"""Near misses written by hand, as well as they can be: the rival of the statement in `subsearch.search.near`.

For the eight conditions of `asked.py`: how many parts each alone keeps out, and for each concession on them its least
value and how many parts that lets in. Two scans: inside the window of capacitance all conditions are looked at; outside
it only parts that meet all others and can be bought count, so their values are counted and no row is kept.
"""

from collections.abc import Iterable, Iterator, Mapping
from math import inf, isclose

import duckdb

from speed.by_hand import FIELDS, MOUNTED, PART, TAKEN, asking
from subsearch.search.requirement import Requirement
from subsearch.search.roles import role_named
from subsearch.terms import TERMS

LYING = "coalesce(lead_length_mm >= {0} - 1e-6, {0} <= 14)"

Row = tuple[str, str, str | None, float | None, int]
Told = tuple[tuple[str, str, str, float, int], ...]
CONDITIONS = ("voltage", "technology", "body", "lead_spacing", "temperature", "life", "offer")
BIT = {name: 1 << place for place, name in enumerate(CONDITIONS)}
TOO_HOT = BIT["temperature"] + BIT["life"]  # one concession settles both
MOUNTING = BIT["body"] + BIT["lead_spacing"]  # and another these two
STATES = [(word, word.replace(" ", "_")) for word in TERMS["condition"].words]

ANSWERS = asking(
    f"""{MOUNTED}, room1 >= -1e-6 as fits1, (axial or wires) and room2 >= -1e-6 as fits2,
    coalesce(technology in ('film PET', 'film PP', 'ceramic C0G', 'ceramic class 2'), false) as lasting,
    case when technology in ('wet aluminium', 'hybrid aluminium', 'polymer aluminium')
        then life_h * 2 ** ((rated_c - {{working_c}}) / 10) / (365 * {{hours_a_day}}) end as years,
    part.rated_v >= {{rated_v}} * (1 - 1e-9) as is_voltage, meets1 or meets2 as is_lead_spacing,
    list_contains({{technologies}}, technology) as is_technology,
    rated_c >= {{working_c}} - {{working_c}} * 1e-9 as is_temperature,
    case when is_lead_spacing then meets1 and fits1 or meets2 and fits2
        when is_lead_spacing is null then meets1 is not false and fits1 or meets2 is not false and fits2
        else fits1 or fits2 end as is_body,
    lasting or years >= {{life_wanted_y}} * (1 - 1e-9) as is_life""",
    "$",
)
# Laid flat beside its holes, both leads side by side; a can between the holes of an axial part; or one lead over the
# other. Of the few parts that only this might let in.
FLAT = f"""along_mm + coalesce(along_plus_mm, if(shape = 'can' and along_mm >= 20, 1e0, 0.5e0)) as longest,
        across_mm + coalesce(across_plus_mm, if(shape = 'can' and across_mm >= 20, 1e0, 0.5e0)) as widest,
        coalesce(lead_diameter_mm, case when shape = 'can' and across_mm >= 4 then
            case when across_mm <= 4 then 0.5e0 when across_mm <= 6.3e0 then 0.55e0 when across_mm <= 13 then 0.65e0
            when across_mm <= 18 then 0.85e0 when across_mm <= 20 then 1.05e0 when across_mm <= 22 then 0.85e0
            when across_mm <= 25 then 1.05e0 end end) as wire,
        greatest(0.8e0, wire)
            + wire * case when wire < 0.8e0 then 1.5e0 when wire <= 1.2e0 then 2e0 else 2.5e0 end as reach,
        coalesce(wires and (
            $headroom_mm - widest - 0.5e0 >= -1e-6 and (
                2.6e0 - off >= -1e-6
                    and {LYING.format("reach + widest / 2 + 3.5e0 + off * if(off <= 0.300001e0, 1, sqrt(2e0))")}
                or shape = 'can' and holes - tallest - 5 >= -1e-6 and holes - tallest - 2 * reach >= -1e-6
                    and {LYING.format("3 * reach + widest / 2 + 3.5e0 + holes + longest + 2 * wire")})
            or $headroom_mm - longest - 0.5e0 >= -1e-6
                and {LYING.format("reach + longest / 2 + 3.5e0 + holes + spacing / 2")}), false) as lies"""
CLAIMS = "shape, along_mm, along_plus_mm, across_mm, across_plus_mm, lead_diameter_mm"
ON_PART = [name for name in CONDITIONS if name != "offer"]
AGAINST = " + ".join(f"if(is_{name}, 0, {BIT[name]})" for name in ON_PART)
REFUSED = " + ".join(f"if(is_{name} is false, {BIT[name]}, 0)" for name in ON_PART)

# The least that would have to be conceded on one part, by concession; null where none is enough.
CONCEDED = {
    "rated_v": ("voltage", "rated_v"),
    "headroom_mm": ("body", "least(if(meets1, -room1, null), if(meets2, -room2, null))"),
    "bent_nearer_mm": (
        "lead_spacing",
        "if(axial and fits1 and span > holes and span - holes <= 5.000001e0, span - holes, null)",
    ),
    "may_lie_flat": ("body", "if(lies, 0, null)"),
    "working_c": (
        "temperature",
        "case when if(lasting, rated_c, cooler) >= -55 then if(lasting, rated_c, cooler) end",
    ),
    "life_wanted_y": ("life", "if(years > 0, years, null)"),
    "pieces": ("offer", "if(most_in_stock > 0, most_in_stock, null)"),
    "in_stock": ("offer", "if(on_order, 0, null)"),
}
LARGEST = {"rated_v", "working_c", "life_wanted_y", "pieces"}
IN_MM = {"headroom_mm", "bent_nearer_mm"}
EASES = {"working_c": TOO_HOT, "may_lie_flat": MOUNTING}


def _stands_against(name: str, condition: str) -> str:
    return f"against & {127 - EASES[name]} = 0 and against > 0" if name in EASES else f"against = {BIT[condition]}"


def _all(texts: Iterable[str]) -> str:
    return ",\n    ".join(texts)


VALUES = _all(
    f"case when {_stands_against(name, its)} then ({value})::double end as {name}"
    for name, (its, value) in CONCEDED.items()
)
LEAST = _all(f"{'max' if name in LARGEST else 'min'}({name}) as {name}" for name in CONCEDED)
COUNTS = _all(
    f"any_value(least_of.{name}), count(*) filter (abs(near.{name} - least_of.{name}) <= "
    f"{'1e-6' if name in IN_MM else f'abs(least_of.{name}) * 1e-9'})"
    for name in CONCEDED
)
ALONE = _all(f"count(*) filter (against = {BIT[name]} and refused = {BIT[name]})" for name in CONDITIONS)
LOOKED_AT = sorted({0, TOO_HOT, MOUNTING, *(BIT[name] for name in ON_PART)})

NEAR = f"""with inside as materialized (
    select *, {AGAINST} as against, {REFUSED} as refused
    from (select *, {ANSWERS} from ({PART.replace("lead_length_mm", f"lead_length_mm, {CLAIMS}", 1)}
        where capacitance_f between $capacitance_low_f * (1 - 1e-9) and $capacitance_high_f * (1 + 1e-9)) as part)
    where against in ({", ".join(map(str, LOOKED_AT))})),
outside as (
    select pk, capacitance_f from (select *, {ANSWERS} from ({PART}
        where capacitance_f < $capacitance_low_f * (1 - 1e-9) or capacitance_f > $capacitance_high_f * (1 + 1e-9)
        ) as part)
    where {" and ".join(f"is_{name}" for name in ON_PART)}),
values_outside as (
    select capacitance_f, count(*) as parts from outside
    where pk in (select pk from offer where list_contains($taken, condition) and stock >= $pieces)
    group by capacitance_f),
sold as (
    select pk, case when bool_or(buys) then true when bool_or(buys is null) then null else false end as offered,
        max(stock) filter (takes) as most_in_stock, coalesce(bool_or(takes), false) as on_order,
        {_all(f"bool_or(condition = {word!r} and not takes and stock >= $pieces) as {state}" for word, state in STATES)}
    from (select pk, stock, condition, list_contains($taken, condition) as takes, takes and stock >= $pieces as buys
        from offer join (select pk from inside) using (pk))
    group by pk),
near as materialized (
    select {_all(state for _, state in STATES)}, technology, against, refused, {VALUES}
    from (select inside.* exclude (against, refused), sold.* exclude (pk),
        inside.against + if(offered, 0, {BIT["offer"]}) as against,
        inside.refused + if(coalesce(offered, sold.pk is not null), 0, {BIT["offer"]}) as refused,
        $hole_spacing_mm as holes, {FLAT}, $working_c + 10 * log2(years / $life_wanted_y) as cool,
        case when cool >= rated_c then rated_c when cool < rated_c then cool end as cooler
        from inside left join sold using (pk))
    where against > 0),
least_of as (select {LEAST} from near)
select (select map_from_entries(list(row(capacitance_f, parts))) from values_outside),
    (select histogram(technology) from near
        where against = {BIT["technology"]} and not list_contains($technologies, technology)
            and list_contains($role_takes, technology)),
    {_all(f"count(*) filter (against = {BIT['offer']} and {state})" for _, state in STATES)},
    {ALONE},
    {COUNTS}
from near cross join least_of"""


def near(con: duckdb.DuckDBPyConnection, asked: Requirement) -> Told:
    """Give how many parts each condition alone keeps out, and each concession with its least value and count."""
    values = {field: getattr(asked, field) for field in FIELDS if field != "capacitance_f"}
    values |= {"technologies": list(asked.technologies or ()), "taken": TAKEN}
    values["role_takes"] = list(role_named(asked.role).technologies)
    outside, technologies, *row = con.execute(NEAR, values).fetchall()[0]
    states = dict(zip((word for word, _ in STATES), row, strict=False))
    counts, pairs = row[len(STATES) : len(STATES) + len(CONDITIONS)], row[len(STATES) + len(CONDITIONS) :]
    rows: list[Row] = [
        ("alone", name, None, None, parts) for name, parts in zip(CONDITIONS, counts, strict=True) if parts
    ]
    rows += _of_capacitance(outside or {}, asked)
    for name, value, parts in zip(CONCEDED, pairs[::2], pairs[1::2], strict=True):
        rows += [("concession", name, None, value, parts)] if parts else []
    for name, words in (("technologies", technologies), ("conditions", states)):
        rows += [("concession", name, word, 0.0, parts) for word, parts in (words or {}).items() if parts]
    return told(rows)


def _of_capacitance(outside: Mapping[float, int], asked: Requirement) -> Iterator[Row]:
    low, high = asked.capacitance_low_f or 0.0, asked.capacitance_high_f or inf
    if outside:
        yield "alone", "capacitance", None, None, sum(outside.values())
    if below := [value for value in outside if low / 2 <= value <= low]:
        yield _lets_in("capacitance_low_f", max(below), outside)
    if above := [value for value in outside if high <= value <= 2 * high]:
        yield _lets_in("capacitance_high_f", min(above), outside)


def _lets_in(name: str, nearest: float, outside: Mapping[float, int]) -> Row:
    parts = sum(parts for value, parts in outside.items() if isclose(value, nearest, rel_tol=1e-9))
    return "concession", name, None, nearest, parts


def told(rows: Iterable[Row]) -> Told:
    """What must be equal of such rows, in one order; values to nine places, since the laws are worked out otherwise."""
    return tuple(
        sorted((kind, name, word or "", float(f"{value or 0:.9g}"), parts) for kind, name, word, value, parts in rows)
    )
