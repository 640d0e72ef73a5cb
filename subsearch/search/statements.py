"""The statement of a search: the best kept and open parts of each need, with their offers, scores and counts."""

from collections.abc import Mapping
from functools import lru_cache

from subsearch.search import parts
from subsearch.search.criteria import OFFER_CRITERIA
from subsearch.search.derived import COST, OF_OFFER, PRINTED_COST
from subsearch.search.numbers import layers
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.search.stated import Stated, columns
from subsearch.search.unbeaten import BEATEN, UNBEATEN, compared

ANY_OFFER = "case when bool_or({0}) then true when bool_or(({0}) is null) then null else false end"
SHOWN = ("style", "not_worn_by_heat", "offset_mm", "hole_margin_mm", "usable_ripple_a", "life_at_work_h", "esr_at_ohm")
"""Numbers that come back with a part, whether or not a condition uses them."""
PIN = "pinned_part_number"


def offer_answer(stated: Stated) -> str:
    """SQL of what all conditions on one offer come to."""
    return " and ".join(criterion.answer(stated) for criterion in parts.asked(stated, OFFER_CRITERIA)) or "true"


def offered(stated: Stated, fit: str) -> list[str]:
    """Common table expressions that end in `offered`: what the offers of these parts answer, and each part's best."""
    one = ", ".join(f"{sql} as {name}" for name, sql in OF_OFFER.items())
    source = f"{fit} as part join (select * replace ({one}), rowid as lies from offer) as offer using (pk)"
    return [
        f"""sold as (
    select number, pk, lies, stock, is_offered, supplier, supplier_number, {COST} as cost from (
        select part.number, part.pk, offer.lies, offer.stock, ({offer_answer(stated)}) as is_offered, offer.supplier,
            offer.supplier_number, {PRINTED_COST} as printed_cost, rate.worth::double as worth
        from {stated.joined(source)} left join currency_rate as rate using (currency)) as offer)""",
        f"""offered as (
    select number, pk, offers_answer, best.lies as lies, best.cost as cost, best.stock as stock from (
        select number, pk, {ANY_OFFER.format("is_offered")} as offers_answer,
            arg_min({{'lies': lies, 'cost': cost, 'stock': stock}}, (
                case when is_offered then 0 when is_offered is null then 1 else 2 end,
                coalesce(cost, 'infinity'::double), supplier, supplier_number)) as best
        from sold group by number, pk))""",
    ]


def scored(stated: Stated, used: str, more: Mapping[str, str]) -> list[str]:
    """Common table expressions that end in `scored`: every kept or open part with what each contribution adds."""
    added = {f'"{one.name}"': one.value(stated) for one in CONTRIBUTIONS}
    used = " ".join([used, *added.values()])
    keep = " and ".join(f"is_{one.name} is not false" for one in parts.asked(stated)) or "true"
    pins = " or pinned" if stated.says(PIN) else ""
    numbers = {"total": " + ".join(f"coalesce({name}, 0e0)" for name in added), **more}
    answer = f"(({parts.answer(stated)}) and offers_answer)"
    added_to = f"""select part.*, offer.cost, offer.lies, offers_answer, {answer} as answer,
        {columns(added)}
        from {stated.joined("offered as offer join fit as part using (number, pk)")}
        where {answer} is not false{pins}"""
    return [
        *parts.wanted(stated, used),
        f"fit as materialized (select * from ({parts.judged(stated, 'part', bool(pins))}) where {keep}{pins})",
        *offered(stated, "fit"),
        f"""scored as materialized (
    select part.*, {columns(numbers)} from {stated.joined(f"({added_to}) as part")})""",
    ]


RANK = "(-round(total, 9), maker is null, maker, part_number)"  # the least is first
BEST = f"""best as materialized (
    select number, answer, count(*) as in_all, arg_min(pk, {RANK}, $most::integer) as pks
    from scored group by number, answer),
placed as materialized (
    select number, answer, in_all, unnest(pks) as pk, generate_subscripts(pks, 1) as place from best)"""
# A pinned part comes back from any place, so all are put in order: four times as slow.
BEST_AND_PINNED = f"""placed as materialized (
    select * from (
        select number, answer, pinned, pk, count(*) over (partition by number, answer) as in_all,
            row_number() over (partition by number, answer order by {RANK}) as place
        from scored)
    where place <= $most or pinned)"""


@lru_cache
def find(stated: Stated) -> str:
    """The best kept, the best open and the pinned parts of each need, with counts of all kept and open ones."""
    compares = compared(stated)
    return stated.written(
        *scored(stated, " ".join([*compares.values(), *SHOWN]), compares),
        BEST_AND_PINNED if stated.says(PIN) else BEST,
        last=f"""select scored.*, in_all, place, {UNBEATEN} as unbeaten, fact, offer
from placed join scored using (number, pk) join main.part as fact using (pk) join offer on offer.rowid = scored.lies
    left join ({BEATEN}) as beaten using (number, pk)
order by number, scored.answer desc nulls last, place""",
    )


@lru_cache
def made(stated: Stated) -> frozenset[str]:
    """The numbers that come back with a part: the same whether its need is asked alone or among others."""
    added = [one.value(stated) for one in CONTRIBUTIONS]
    used = " ".join([*compared(stated).values(), *SHOWN, *added, *parts.ways_and_answers(stated)])
    return frozenset(name for layer in layers(stated, used) for name in layer) | {
        "way",
        "worked_mm",
        "tightest_mm",
        "cost",
    }


@lru_cache
def kept(stated: Stated) -> str:
    """Every kept part with its contributions: what would stand first if other weights were given."""
    names = ", ".join(f'"{one.name}"' for one in CONTRIBUTIONS)
    return stated.written(
        *scored(stated, "", {}), last=f"select number, maker, part_number, {names} from scored where answer"
    )
