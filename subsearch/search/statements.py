"""The statements of a search, put together from criteria, contributions and the numbers of derived.py.

Only names written in this room's own files stand in their text; every value is bound.
"""

from collections.abc import Iterable
from typing import get_type_hints

from subsearch.search.criteria import OFFER, OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.derived import COST, OF_PAIR, OF_PART, YEARS
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.requirement import Requirement
from subsearch.search.unbeaten import BEATEN, COMPARED, UNBEATEN
from subsearch.search.ways import UPRIGHT

SQL_TYPES = {
    float: "double", float | None: "double", int: "integer", bool: "boolean", str: "varchar", str | None: "varchar",
    tuple[str, ...]: "varchar[]", tuple[str, ...] | None: "varchar[]",
}  # fmt: skip
UNASKED = ("old_tolerance_pct", "temperature_uncertain_k")  # fields that shape others or what is shown, and ask nothing


NEED_FIELDS = {name: kind for name, kind in get_type_hints(Requirement).items() if name not in UNASKED}
NEED = (
    "asked as (select unnest($needs, recursive := true)),\n"
    "need as (select number::integer as number, most::integer as most, "
    + ", ".join(f"{name}::{SQL_TYPES[kind]} as {name}" for name, kind in NEED_FIELDS.items())
    + " from asked)"
)


PINNED = """coalesce(
    part.maker is not distinct from need.pinned_maker and part.part_number = need.pinned_part_number, false)"""
ANY_OFFER = "case when bool_or({0}) then true when bool_or(({0}) is null) then null else false end"
OFFER_ANSWER = " and ".join(criterion.answer() for criterion in OFFER_CRITERIA)
IN_WINDOW = next(criterion.answer() for criterion in PART_CRITERIA if criterion.name == "capacitance")


def _columns(named: dict[str, str]) -> str:
    return ",\n        ".join(f"{sql} as {name}" for name, sql in named.items())


def _struct(named: dict[str, str]) -> str:
    return "{" + ", ".join(f"'{name}': {sql}" for name, sql in named.items()) + "}"


def _names(names: Iterable[str]) -> str:
    return ", ".join(names)


PART_ANSWER = "(" + " and ".join(f"is_{c.name}" for c in PART_CRITERIA) + ")"
PARTS = f"part as (select *, {_columns(OF_PART)} from main.part)"
JUDGED = f"""need.number, part.pk, {PINNED} as pinned,
        {_columns(OF_PAIR)},
        {_columns({f"is_{c.name}": c.answer() for c in PART_CRITERIA})}"""
"""Columns of one part against one need; each may use the ones before it by name."""

IN_STRUCT = {c.name: f"is_{c.name}" for c in PART_CRITERIA}
NOT_STATED = (
    "list_filter(["
    + _names(f"case when is_{c.name} is null then '{c.name}' end" for c in PART_CRITERIA)
    + f", case when offers_answer is null then '{OFFER}' end], lambda name: name is not null)"
)
SHOWN = {name: f"part.{name}" for name in OF_PART} | {name: name for name in OF_PAIR} | {"years": YEARS}

SCORED = f"""with {NEED},
{PARTS},
fit as (
    select *, {PART_ANSWER} as part_answer from (
        select {JUDGED}
        from need join part on ({IN_WINDOW}) is not false or {PINNED})
    where {PART_ANSWER} is not false or pinned
),
sold as (
    select fit.number, fit.pk, offer.rowid as offer_row, ({OFFER_ANSWER}) as offer_answer,
        {COST} as cost, offer.supplier, offer.supplier_number
    from fit join need using (number) join offer using (pk) left join currency_rate as rate using (currency)
),
offered as (
    select number, pk, {ANY_OFFER.format("offer_answer")} as offers_answer,
        first(struct_pack(offer_row := offer_row, cost := cost) order by
            case when offer_answer then 0 when offer_answer is null then 1 else 2 end,
            cost nulls last, supplier, supplier_number) as best
    from sold group by number, pk
),
tight as (
    select fit.*, {UPRIGHT.tightest()} as tightest_mm, best.cost as cost, best.offer_row as offer_row, offers_answer,
        part_answer and offers_answer as answer
    from fit join offered using (number, pk) join need using (number)
    where (part_answer and offers_answer) is not false or pinned
),
scored as (
    select tight.*, {_struct({one.name: one.value() for one in CONTRIBUTIONS})} as contributions
    from tight join need using (number) join part using (pk) join offer on offer.rowid = offer_row
),
summed as (
    select *, {" + ".join(f'coalesce(contributions."{one.name}", 0e0)' for one in CONTRIBUTIONS)} as total from scored
)"""
"""Every kept or open part with what each contribution adds."""

FIND = f"""{SCORED},
placed as materialized (
    select summed.*, count(*) over (partition by number, answer) as in_all, row_number() over (
        partition by number, answer order by round(total, 9) desc, fact.maker, fact.part_number) as place,
        {_columns(COMPARED)}
    from summed join need using (number) join part using (pk) join main.part as fact using (pk)
)
select number, answer, pinned, place, in_all, total, contributions, fact as part, offer,
    {_struct(SHOWN | {"tightest_mm": "tightest_mm", "cost": "cost"})} as made, {NOT_STATED} as not_stated,
    {UNBEATEN} as unbeaten
from placed join part using (pk) join main.part as fact using (pk) join offer on offer.rowid = placed.offer_row
    join need using (number) left join ({BEATEN}) as beaten using (number, pk)
where place <= need.most or pinned
order by number, answer desc nulls last, place"""

KEPT = f"""{SCORED}
select number, maker, part_number, contributions from summed join main.part as fact using (pk) where answer"""
"""Every kept part with its contributions: what would stand first if other weights were given."""

# How far a refused part is off, to order those that fail equally many conditions: doublings of value and voltage,
# a fifth for each millimetre that is missing, and two for whatever is of another kind.
MISSES = " + ".join(
    f"coalesce({one}, 0)"
    for one in (
        "abs(log2(part.capacitance_f / need.capacitance_f))",
        "greatest(log2(need.rated_v / part.rated_v), 0)",
        *(f"greatest(-{margin.made}, 0) / 5" for margin in UPRIGHT.margins),
        "case part.style when 'axial' then greatest(-span_margin_mm, 0) else greatest(-offset_margin_mm, 0) end / 5",
        *(f"case when not is_{name} then 2 end" for name in ("lead_style", "polarity", "technology", "safety")),
    )
)
ANSWERS = f"""{NEED},
{PARTS},
sold as (
    select need.number, offer.pk, {ANY_OFFER.format(OFFER_ANSWER)} as answer
    from need cross join offer group by need.number, offer.pk
),
judged as (select {JUDGED}, part.maker, part.part_number,
        {MISSES} as distance
    from need cross join part),
answers as (
    select number, maker, part_number, distance,
        {_struct(IN_STRUCT | {OFFER: "case when sold.pk is null then false else sold.answer end"})} as answer
    from judged left join sold using (number, pk)
)"""
"""Every answer on every part: asked for apart, since carrying each refusal back costs more than the search."""

EXPLAIN = f"""with {NEED},
{PARTS},
named as (select number, maker::varchar as maker, part_number
    from (select unnest($named, recursive := true))),
judged as (
    select {JUDGED}, {_struct({c.name: c.asked for c in PART_CRITERIA})} as asked,
        {_struct({c.name: f"coalesce({c.exempt}, false)" for c in PART_CRITERIA})} as exempt
    from need join named using (number)
        join part on part.maker is not distinct from named.maker and part.part_number = named.part_number),
sold as (
    select judged.number, list({{'offer': offer, 'answers': {_struct({c.name: c.answer() for c in OFFER_CRITERIA})}}}
        order by offer.supplier, offer.supplier_number) as offers
    from judged join need using (number) join offer using (pk) group by judged.number)
select judged.number as number, fact as part, need, {_struct(SHOWN)} as made, {_struct(IN_STRUCT)} as answers,
    asked, exempt, offers
from judged join part using (pk) join main.part as fact using (pk) join need using (number)
    left join sold using (number)"""
"""Every answer in full, for one named part to each need."""
