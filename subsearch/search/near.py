"""The statements of near misses: which parts one condition alone keeps out, and the least that lets one in.

Two scans, since nothing but capacitance can be conceded outside its window: inside it all conditions are looked at,
outside it only the parts that answer yes to all others are.
"""

from collections.abc import Iterable
from functools import reduce
from operator import or_

from subsearch.search.concessions import MEASURES, OTHER_CONDITION
from subsearch.search.criteria import OFFER, OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.derived import OF_NEAR_MISS
from subsearch.search.measures import Measure
from subsearch.search.statements import ANY_OFFER, IN_WINDOW, JUDGED, NEED, OFFER_ANSWER, PARTS

NAMES = tuple(criterion.name for criterion in PART_CRITERIA)
OFFERED = tuple(criterion.name for criterion in OFFER_CRITERIA)
# A bit for each condition that is not answered yes: one number to compare keeps the statement short to plan.
BIT = {name: 1 << place for place, name in enumerate((*NAMES, OFFER))} | dict.fromkeys(OFFERED, 1 << len(NAMES))
EVERY = (1 << len(NAMES) + 1) - 1
AGAINST = " + ".join(f"case when is_{name} then 0 else {BIT[name]} end" for name in NAMES)


def _bits(names: Iterable[str]) -> int:
    return reduce(or_, (BIT[name] for name in names), 0)


def _nothing_but(names: Iterable[str]) -> str:
    """SQL that is true where every condition but these is answered yes."""
    return f"(against & {EVERY & ~_bits(names)}) = 0"


# What may stand against a part that one concession lets in: nothing on the part itself, one condition, or the two that
# one concession settles. The optimizer writes `against` out wherever it stands, so the scans name it once.
TOGETHER = {
    *((name,) for name in NAMES),
    *(measure.eases for measure in MEASURES if measure.condition in NAMES),
}
WORTH_A_LOOK = sorted({0, *map(_bits, TOGETHER)})
MADE = ", ".join(f"{sql} as {name}" for name, sql in OF_NEAR_MISS.items())
ANSWER_OF = {criterion.name: criterion.answer() for criterion in OFFER_CRITERIA}


def offers_of(parts: str) -> str:
    """SQL: the parts with what their offers answer, and what an offer that fails one thing only would concede."""
    rest = {name: " and ".join(ANSWER_OF[one] for one in OFFERED if one != name) for name in OFFERED}
    return f"""sold as (
    select one.number, one.pk, {ANY_OFFER.format(OFFER_ANSWER)} as offers_answer,
        max(offer.stock) filter (where {rest["stock"]}) as most_in_stock,
        coalesce(bool_or({rest["stock"]}), false) as on_order,
        list(distinct offer.condition) filter (where {rest["condition"]} and not ({ANSWER_OF["condition"]}))
            as conditions
    from {parts} as one join need using (number) join offer using (pk) group by one.number, one.pk
),
near as (
    select one.* exclude (against), case when sold.pk is null then false else offers_answer end as is_{OFFER},
        against + case when offers_answer then 0 else {BIT[OFFER]} end as against,
        most_in_stock, on_order, sold.conditions as other_conditions
    from {parts} as one left join sold using (number, pk)
)"""


def _one(measure: Measure, alone: bool) -> str:
    """SQL of one concession on one part, as a struct; its value is null where it is none."""
    others = f" and {_nothing_but(measure.eases)}" if alone else ""
    value = f"case when {measure.asked}{others} then {measure.value} end"
    return f"{{'name': '{measure.name}', 'value': ({value})::double, 'word': ({measure.word})::varchar}}"


def unfolded(measures: Iterable[Measure], alone: bool) -> str:
    """SQL for a list of concessions on one part; `alone`: only where all other conditions are answered yes."""
    return ",\n        ".join(_one(measure, alone) for measure in measures)


# An offer that fails for its condition only is taken once for each condition that its part is sold in.
OF_PART = tuple(measure for measure in MEASURES if measure.word != OTHER_CONDITION)
(OF_OFFER,) = (measure for measure in MEASURES if measure.word == OTHER_CONDITION)
SIGN = "case name " + " ".join(f"when '{m.name}' then {m.nearest}" for m in MEASURES) + " end"
WITHIN = "case name " + " ".join(f"when '{m.name}' then {m.within.replace('value', 'least_value')}" for m in MEASURES)

EASED = f"""eased as (
    select near.number, near.pk, unnest([{unfolded(OF_PART, True)}], recursive := true)
    from near join need using (number) join part using (pk) where against > 0
    union all
    select near.number, near.pk, '{OF_OFFER.name}', 0e0, unnest(other_conditions)
    from near join need using (number)
    where {OF_OFFER.asked} and against = {BIT[OFFER]}
)"""
ALONE = " ".join(f"when against = {BIT[name]} and is_{name} is false then '{name}'" for name in (*NAMES, OFFER))

NEAR = f"""with {NEED},
{PARTS},
judged as (
    select *, {AGAINST} as against from (select {JUDGED}, {MADE} from need join part on ({IN_WINDOW}))
    where against in ({", ".join(map(str, WORTH_A_LOOK))})
    union all
    select *, {AGAINST} as against from (select {JUDGED}, {MADE} from need join part on not ({IN_WINDOW}))
    where against = {BIT["capacitance"]}
),
{offers_of("judged")},
{EASED},
signed as (select *, min(({SIGN}) * value) over (partition by number, name, word) * ({SIGN}) as least_value
    from eased where value is not null),
alone as (select number, case {ALONE} end as name from near)
select number, 'alone' as kind, name, null as word, null as value, count(*) as parts
from alone where name is not null group by number, name
union all
select number, 'concession', name, word, any_value(least_value), count(distinct pk)
from signed where abs(value - least_value) <= {WITHIN} end group by number, name, word
order by number, kind, name, word"""
"""For each need: how many parts each condition alone keeps out, and for each concession its least value and count."""
