"""The statement of near misses by two conditions: asked only where no concession on one condition helps."""

from subsearch.search.concessions import MEASURES
from subsearch.search.near import AGAINST, BIT, EVERY, MADE, NAMES, OF_PART, offers_of, unfolded
from subsearch.search.statements import JUDGED, NEED, PARTS

TOLD = 3  # so many pairs of each need
MOST_AGAINST = 4  # temperature, life and ripple count as one concession at most, and one more condition
COST = "case name " + " ".join(f"when '{measure.name}' then {measure.cost}" for measure in MEASURES) + " end"
SETTLES = (
    "case name "
    + " ".join(f"when '{measure.name}' then {sum(BIT[name] for name in measure.eases)}" for measure in MEASURES)
    + " end"
)
BOUNDED = " + ".join(f"(is_{name} is not true)::integer" for name in NAMES)

PAIRS = f"""with {NEED},
{PARTS},
judged as (
    select *, {AGAINST} as against from (select {JUDGED}, {MADE} from need cross join part)
    where {BOUNDED} between 1 and {MOST_AGAINST}
),
{offers_of("judged")},
unfolded as (
    select near.number, near.pk, near.against, unnest([{unfolded(OF_PART, False)}], recursive := true)
    from near join need using (number) join part using (pk)
),
priced as (
    select unfolded.*, {COST} as cost, {SETTLES} as settles
    from unfolded join need using (number) where value is not null
),
pairs as (
    select one.number, {{'name': one.name, 'value': one.value, 'word': one.word}} as one,
        {{'name': other.name, 'value': other.value, 'word': other.word}} as other,
        one.cost + other.cost as cost, maker, part_number
    from priced as one join priced as other using (number, pk) join part using (pk)
    where one.name < other.name and (one.settles & other.settles) = 0
        and (one.against & ({EVERY} - one.settles - other.settles)) = 0
),
best as (
    select * from pairs
    qualify row_number() over (partition by number, one.name, other.name order by cost, maker, part_number) = 1
)
select number, one, other from best
qualify row_number() over (partition by number order by cost, one.name, other.name) <= {TOLD}
order by number, cost, one.name, other.name"""
"""For each need the pairs of concessions that lose least: each pair once, at the part that it costs least for."""
