"""The statement of near misses: which parts one condition alone keeps out, and the least that lets one in.

Two scans, since nothing but capacitance can be conceded outside its window: inside it all conditions are looked at,
outside it only the parts that answer yes to all others are.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache, reduce
from operator import or_

from subsearch.search import mounted, parts
from subsearch.search.concessions import MEASURES, OTHER_CONDITION
from subsearch.search.criteria import OFFER, OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.measures import Measure
from subsearch.search.numbers import claims, with_numbers
from subsearch.search.stated import Stated
from subsearch.search.statements import ANY_OFFER, offer_answer

NAMES = tuple(criterion.name for criterion in PART_CRITERIA)
OFFERED = tuple(criterion.name for criterion in OFFER_CRITERIA)
# A bit for each condition that is not answered yes: one number to compare keeps the statement short to plan.
BIT = {name: 1 << place for place, name in enumerate((*NAMES, OFFER))} | dict.fromkeys(OFFERED, 1 << len(NAMES))
EVERY = (1 << len(NAMES) + 1) - 1
(OF_OFFER,) = (measure for measure in MEASURES if measure.word == OTHER_CONDITION)


def _bits(names: Iterable[str]) -> int:
    return reduce(or_, (BIT[name] for name in names), 0)


# What may stand against a part that one concession lets in: nothing on the part itself, one condition, or those that
# one concession settles together.
TOGETHER = {*((name,) for name in NAMES), *(measure.eases for measure in MEASURES if measure.condition in NAMES)}
WORTH_A_LOOK = sorted(
    {sum(_bits([name]) for name in some) for names in TOGETHER for some in (names, names[:1], names[1:])}
)


def of_part(stated: Stated) -> list[Measure]:
    """The concessions that may be asked, but for the one that is taken once for each condition a part is sold in."""
    return [one for one in MEASURES if one is not OF_OFFER and one.asked(stated) != "false"]


def against(stated: Stated) -> str:
    """SQL of the bits of all conditions that are not answered yes."""
    bits = [f"case when is_{one.name} then 0 else {BIT[one.name]} end" for one in parts.asked(stated)]
    return " + ".join(["0", *bits])


def scanned(stated: Stated, scans: Sequence[str]) -> list[str]:
    """Common table expressions that end in `judged`: the parts of these scans with all that the concessions ask."""
    more = {
        "ways": _where_asked(stated, ("body",), mounted.room_left(stated)),
        "lies": _where_asked(stated, ("body", "lead_spacing"), mounted.lies(stated)),
    }
    used = " ".join([*more.values(), *(one.value for one in of_part(stated)), *parts.ways_and_answers(stated)])
    carried = ", ".join(f"part.{name}" for name in sorted({*parts.ALWAYS, *claims(stated, used)}))
    everyone = "main.part as part" if stated.alone else "need cross join main.part as part"
    rows = " union all ".join(
        f"select need.number as number, false as pinned, {carried} from {everyone} where {scan}" for scan in scans
    )
    return [
        f"part as materialized ({with_numbers(stated, used, rows)})",
        f"""judged as materialized (
    select part.*, {more["ways"]} as ways, {more["lies"]} as lies, {against(stated)} as against
    from {stated.joined(f"({parts.judged(stated, 'part')}) as part")})""",
    ]


def _where_asked(stated: Stated, names: tuple[str, ...], sql: str) -> str:
    """The SQL where one of these conditions is not answered yes: for most parts it need not be worked out."""
    told = " and ".join(f"is_{one.name}" for one in parts.asked(stated) if one.name in names)
    return f"case when {told or 'true'} then null else {sql} end"


def _scans(stated: Stated) -> list[str]:
    others = [c.answer(stated) for c in parts.asked(stated) if c.on_claims and c is not parts.CAPACITANCE]
    failing = " + ".join(["0", *(f"(({one}) is not true)::integer" for one in others)])
    window = parts.CAPACITANCE.answer(stated)
    return [f"({window}) and {failing} <= 1", f"not ({window}) and {' and '.join(['true', *others])}"]


def offers_of(stated: Stated, judged: str) -> list[str]:
    """Common table expressions that end in `near`: with what the offers answer, and what one of them would concede."""
    each = {one.name: one.answer(stated) for one in OFFER_CRITERIA}
    rest = {name: " and ".join(each[one] for one in OFFERED if one != name) for name in OFFERED}
    sold = stated.joined(f"(select number, pk from {judged}) as part join offer using (pk)")
    return [
        f"""sold as (
    select part.number, part.pk, {ANY_OFFER.format(offer_answer(stated))} as offers_answer,
        max(offer.stock) filter (where {rest["stock"]}) as most_in_stock,
        coalesce(bool_or({rest["stock"]}), false) as on_order,
        list(distinct offer.condition) filter (where {rest["condition"]} and not ({each["condition"]})) as conditions
    from {sold} group by part.number, part.pk)""",
        f"""near as (
    select part.* exclude (against), case when sold.pk is null then false else offers_answer end as is_{OFFER},
        part.against + case when offers_answer then 0 else {BIT[OFFER]} end as against,
        most_in_stock, on_order, sold.conditions as other_conditions
    from {judged} as part left join sold using (number, pk))""",
    ]


def unfolded(stated: Stated, alone: bool) -> str:
    """SQL for a list of concessions on one part; `alone`: only where all other conditions are answered yes."""
    return ",\n        ".join(_one(measure, stated, alone) for measure in of_part(stated))


def _one(measure: Measure, stated: Stated, alone: bool) -> str:
    """SQL of one concession on one part, as a struct; its value is null where it is none."""
    only = [measure.asked(stated)] + ([f"(against & {EVERY & ~_bits(measure.eases)}) = 0"] if alone else [])
    only = [one for one in only if one != "true"]
    value = f"case when {' and '.join(only)} then {measure.value} end" if only else measure.value
    return f"{{'name': '{measure.name}', 'value': ({value})::double, 'word': ({measure.word})::varchar}}"


def by_name(stated: Stated, what: str) -> str:
    """SQL that picks one text of each measure by the name of the concession."""
    its = [f"when '{one.name}' then {getattr(one, what)}" for one in (*of_part(stated), OF_OFFER)]
    return f"case name {' '.join(its)} end"


def _easable(stated: Stated) -> str:
    """SQL that leaves out the many parts that only a capacitance too far away keeps out."""
    near_enough = [f"({one.value}) is not null" for one in of_part(stated) if one.condition == "capacitance"]
    return f"against > 0 and ({' or '.join([f'against != {_bits([parts.CAPACITANCE.name])}', *near_enough])})"


@lru_cache
def near(stated: Stated) -> str:
    """For each need how many parts each condition alone keeps out; for each concession its least value and count."""
    alone = [f"when against = {BIT[name]} and is_{name} is false then '{name}'"
             for name in (*(one.name for one in parts.asked(stated)), OFFER)]  # fmt: skip
    sign, within = by_name(stated, "nearest"), by_name(stated, "within").replace("value", "least_value")
    return stated.written(
        *scanned(stated, _scans(stated)),
        f"worth as (select * from judged where against in ({', '.join(map(str, WORTH_A_LOOK))}))",
        *offers_of(stated, "worth"),
        f"""eased as (
    select part.number, part.pk, unnest([{unfolded(stated, True)}], recursive := true)
    from {stated.joined("near as part")} where {_easable(stated)}
    union all
    select part.number, part.pk, '{OF_OFFER.name}', 0e0, unnest(other_conditions)
    from {stated.joined("near as part")} where {OF_OFFER.asked(stated)} and against = {BIT[OFFER]})""",
        f"""signed as (
    select *, min(({sign}) * value) over (partition by number, name, word) * ({sign}) as least_value
    from eased where value is not null)""",
        f"lonely as (select number, case {' '.join(alone)} end as name from near)",
        last=f"""select number, 'alone' as kind, name, null as word, null as value, count(*) as parts
from lonely where name is not null group by number, name
union all
select number, 'concession', name, word, any_value(least_value), count(distinct pk)
from signed where abs(value - least_value) <= {within} group by number, name, word
order by number, kind, name, word""",
    )
