"""The statement of near misses by two conditions: asked only where no concession on one condition helps."""

from functools import lru_cache

from subsearch.search import parts
from subsearch.search.near import BIT, EVERY, by_name, of_part, offers_of, scanned, unfolded
from subsearch.search.stated import Stated

TOLD = 3  # so many pairs of each need
MOST_AGAINST = 4  # temperature, life and ripple count as one concession at most, and one more condition


@lru_cache
def pairs(stated: Stated) -> str:
    """For each need the pairs of concessions that lose least: each pair once, at the part that it costs least for."""
    on_claims = [f"(({c.answer(stated)}) is not true)::integer" for c in parts.asked(stated) if c.on_claims]
    settled = " ".join(f"when '{m.name}' then {sum(BIT[name] for name in m.eases)}" for m in of_part(stated))
    return stated.written(
        *scanned(stated, [f"{' + '.join(['0', *on_claims])} <= {MOST_AGAINST}"]),
        f"worth as (select * from judged where bit_count(against) between 1 and {MOST_AGAINST})",
        *offers_of(stated, "worth"),
        f"""eased as (
    select part.number, part.pk, part.maker, part.part_number, part.against,
        unnest([{unfolded(stated, False)}], recursive := true)
    from {stated.joined("near as part")})""",
        f"""priced as (
    select eased.*, {by_name(stated, "cost")} as cost, case name {settled} end as settles
    from {stated.joined("eased")} where value is not null)""",
        f"""pairs as (
    select one.number, {{'name': one.name, 'value': one.value, 'word': one.word}} as one,
        {{'name': other.name, 'value': other.value, 'word': other.word}} as other,
        one.cost + other.cost as cost, one.maker, one.part_number
    from priced as one join priced as other using (number, pk)
    where one.name < other.name and (one.settles & other.settles) = 0
        and (one.against & ({EVERY} - one.settles - other.settles)) = 0)""",
        """best as (
    select * from pairs
    qualify row_number() over (partition by number, one.name, other.name order by cost, maker, part_number) = 1)""",
        last=f"""select number, one, other from best
qualify row_number() over (partition by number order by cost, one.name, other.name) <= {TOLD}
order by number, cost, one.name, other.name""",
    )
