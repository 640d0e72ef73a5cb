"""The first half of the statement that finds two parts for one position: single parts, grouped into classes.

A class holds the parts that are alike in all that a pair is asked. Its best members are kept in order: the score of a
pair is a number of its two classes plus one of each part, so that no pair of others can be among the best.
"""

import re
from dataclasses import replace

from subsearch.search.criteria import PART_CRITERIA, at_least
from subsearch.search.criterion import Criterion
from subsearch.search.derived import COST, OF_OFFER, OF_PAIR, OF_PART, PRINTED_COST
from subsearch.search.derived_pairs import OF_MEMBER, OF_NEED
from subsearch.search.derived_ways import MARGINS
from subsearch.search.ranking import CONTRIBUTIONS, ROOMY_MM
from subsearch.search.stated import EVERYTHING, TYPES, columns
from subsearch.search.statements import offer_answer
from subsearch.search.way import WITHIN_MM
from subsearch.terms import WITHOUT_POLARITY

OF_HOLES = {name: MARGINS[name] for name in ("hole_margin_mm", "span_margin_mm")}
BY_NAME = {criterion.name: criterion for criterion in PART_CRITERIA}
WORTH = {one.name: one for one in CONTRIBUTIONS}
# What two answer together, or by a rule of their own; every other condition is asked of each as of a single part.
TOGETHER = ("capacitance", "polarity", "body", "life", "ripple", "esr", "leakage")
NOT_ASKED = ("lead_spacing", "safety")  # leads are joined and led to the holes; a safety class never takes two
NO_RIPPLE = "need.ripple_a is null"


def said(text: str, words: dict[str, str]) -> str:
    """SQL with other names in place of whole ones.

    >>> said("part.rated_v >= need.rated_v", {"part.rated_v": "both_v"})
    'both_v >= need.rated_v'
    """
    pattern = "|".join(rf"(?<![\w.]){re.escape(word)}(?!\w)" for word in words)
    return re.sub(pattern, lambda found: words[found[0]], text)


def answer_of(name: str, words: dict[str, str]) -> str:
    """The answer of a condition where other numbers stand for those of a single part."""
    one: Criterion = BY_NAME[name]
    return replace(one, holds=said(one.holds, words), exempt=said(one.exempt, words)).answer()


def worth_of(name: str, words: dict[str, str] | None = None) -> str:
    """SQL of what a contribution adds, with such other numbers; what is not stated adds 0."""
    value = WORTH[name].value(EVERYTHING)
    return f"coalesce({said(value, words) if words else value}, 0e0)"


def used(text: str) -> dict[str, str]:
    """The columns of one part against a need that some SQL names, with those that these name, in their order."""
    found: dict[str, str] = {}
    for name, sql in reversed((OF_PAIR | OF_HOLES).items()):  # a column may use the ones before it
        if re.search(rf"(?<![\w.]){name}(?!\w)", " ".join((text, *found.values()))):
            found = {name: sql, **found}
    return found


ALONE = " and ".join(one.answer() for one in PART_CRITERIA if one.name not in (*TOGETHER, *NOT_ASKED))
ALONE += f" and (not ({NO_RIPPLE}) or {BY_NAME['life'].answer()})"
# An axial part lies between the holes, singly or not.
ALONE += f" and (need.hole_spacing_mm is null or part.style != 'axial' or span_margin_mm >= -{WITHIN_MM})"
ALONE += f" and (need.headroom_mm is null or above_mm >= -{WITHIN_MM})"
# Neither may reach the lower limit by itself: the other one would only take room. Which values are likely is told
# first, of the few that the catalog has: one that not even the largest partner lifts to the limit is of no use.
SPLITS = f"coalesce(not ({at_least('part.capacitance_f', 'need.capacitance_low_f')}), false)"
HALF = answer_of("capacitance", {"part.capacitance_f": "(part.capacitance_f / 2)"})
WITHOUT = ", ".join(map(repr, WITHOUT_POLARITY))
POLAR = f"need.reverses and part.polarity = 'polar' and not coalesce(part.technology in ({WITHOUT}), false)"
OF_SINGLE = used(f"{ALONE} usable_ripple_a life_at_work_h esr_at_ohm")
ONE_PIECE = ", ".join(f"{sql} as {name}" for name, sql in OF_OFFER.items())
RIPPLED = ("usable_ripple_a", "cool_life_h", "with_ripple", "not_worn_by_heat")
KEY = {
    "capacitance_f": "alone.capacitance_f",
    **{name: f"case when need.has_room then alone.{name} end" for name in ("is_round", "long_mm", "deep_mm")},
    "above_mm": f"case when alone.above_mm >= {ROOMY_MM} then {ROOMY_MM} else alone.above_mm end",
    **{name: f"case when not ({NO_RIPPLE}) then alone.{name} end" for name in RIPPLED},
    "esr_at_ohm": "case when need.esr_hz is not null then alone.esr_at_ohm end",
    "leaks_a": "case when need.leakage_most_a is not null then alone.leaks_a end",
    "in_parallel": "alone.in_parallel",
    "back_to_back": "alone.back_to_back",
}
"""What makes two parts alike for every pair; what is not asked makes no difference."""
CLASS = ", ".join(KEY)

OWN = " + ".join(worth_of(name) for name in ("voltage", "price", "stock"))
OWN += f" + case when {NO_RIPPLE} then {worth_of('life')} else 0e0 end"
ITS = "{" + ", ".join(f"'{name}': part.{name}" for name in sorted(set(re.findall(r"\bpart\.(\w+)", OWN)))) + "}"
"""The facts of a part by which its own worth is told."""
# First the offers that can be bought, the cheapest of them, then by name: as for a single part.
BEST_OFFER = """arg_min({'row': offer_row, 'cost': cost, 'stock': stock}, (case when buys then 0 else 1 end,
            coalesce(cost, 'infinity'::double), supplier, supplier_number is null, coalesce(supplier_number, ''),
            offer_row))"""
MEMBER = """{'pk': pk, 'own': own, 'maker': maker, 'part_number': part_number, 'offer_row': best.row,
            'cost': best.cost, 'life_h': life_at_work_h, 'esr_at_ohm': its_esr_ohm, 'lasting': lasting,
            'above_mm': its_above_mm}"""
BY_OWN = "(-own, maker is null, coalesce(maker, ''), part_number)"

NEED = ", ".join(f"{name}::{kind} as {name}" for name, kind in {**TYPES, "most": "integer"}.items())

CLASSES = f"""asked as (select unnest($needs, recursive := true)),
need as materialized (select {NEED} from asked),
part as (select *, {columns(OF_PART)} from main.part as part),
roomy as materialized (
    select *, {columns(OF_NEED)} from need
    where safety_class is null and role is distinct from 'interference suppression'
),
likely as (
    select need.number, part.capacitance_f
    from roomy as need join (select distinct capacitance_f from main.part where capacitance_f is not null) as part
        on {SPLITS} or (need.reverses and {HALF})
    qualify (need.reverses and {HALF}) or {
    at_least(
        f"part.capacitance_f + max(part.capacitance_f) filter (where {SPLITS}) over (partition by need.number)",
        "need.capacitance_low_f",
    )
}
),
alone as materialized (
    select * exclude (is_alone, is_side, is_polar), is_alone and is_side as in_parallel,
        is_alone and is_polar as back_to_back
    from (select need.number, part.pk, part.capacitance_f, part.not_worn_by_heat,
            part.maker, part.part_number, {ITS} as its,
            {columns(OF_SINGLE | OF_MEMBER)},
            {SPLITS} and {BY_NAME["polarity"].answer()} as is_side, {HALF} and {POLAR} as is_polar,
            {ALONE} as is_alone
        from likely join roomy as need using (number) join part on part.capacitance_f = likely.capacitance_f)
    where in_parallel is not false or back_to_back is not false
),
doubled as materialized (
    select *, 1 as times from roomy union all select * replace (2 * pieces as pieces), 2 from roomy
),
sold as (
    select number, pk, times, bool_or(buys) as bought, {BEST_OFFER} as best from (
        select number, pk, times, offer_row, buys, {COST} as cost, stock, supplier, supplier_number from (
            select need.number, offer.pk, need.times, offer.lies as offer_row, ({offer_answer(EVERYTHING)}) as buys,
                {PRINTED_COST} as printed_cost, rate.worth::double as worth, offer.stock, supplier, supplier_number
            from alone join doubled as need using (number)
                join (select * replace ({ONE_PIECE}), rowid as lies from offer) as offer using (pk)
                left join currency_rate as rate using (currency)) as offer)
    where buys is not false group by number, pk, times
),
members as (
    select number, times, need.most, pk, bought, best, maker, part_number, alone.life_at_work_h,
        alone.esr_at_ohm as its_esr_ohm, alone.not_worn_by_heat as lasting,
        alone.above_mm as its_above_mm, {columns(KEY)}, round(({OWN}) / (3 - times), 9) as own
    from (select *, best as offer, best.cost as cost from sold) as sold
        join (select *, its as part from alone) as alone using (number, pk)
        join doubled as need using (number, times)
),
grouped as (
    select number, most, {CLASS},
        count(*) filter (where times = 1) as any_one, count(*) filter (where times = 1 and bought) as sure_one,
        count(*) filter (where times = 2) as any_two, count(*) filter (where times = 2 and bought) as sure_two,
        arg_min({MEMBER}, {BY_OWN}, most + 1) filter (where times = 1 and bought) as singles,
        arg_min({MEMBER}, {BY_OWN}, most) filter (where times = 2 and bought) as doubles
    from members group by number, most, {CLASS}
),
classes as materialized (
    select *, row_number() over (order by number, {CLASS}) as class,
        dense_rank() over (order by number, is_round, long_mm, deep_mm) as outline, singles[1].own as first_own,
        singles[2].own as second_own, doubles[1].own as double_own
    from grouped
)"""
"""For each need the classes of parts, each with how many it holds and its best, bought once or twice a piece."""
