"""The parts that nothing beats: no other kept part is at least as good in life, margin and cost, and better in one.

Whoever weighs the three otherwise than the score does still chooses one of these. Life counts in years under the
ceiling; a part that heat does not limit outlasts all that it does limit. What the position does not ask (no
temperature, no room) leaves all parts equal. A part of which one of the three is not stated beats no other, and of
itself it can't be told whether it is beaten: null.
"""

from subsearch.search.derived import YEARS
from subsearch.search.stated import Stated
from subsearch.search.ways import ROOM

# Sums of decimals in doubles differ in their last digits: what differs by less than this is the same.
LIFE = f"case when part.not_worn_by_heat then 'infinity'::double else round({YEARS}, 9) end"


def compared(stated: Stated) -> dict[str, str]:
    """The three numbers that are compared, as columns."""
    return {
        "best_life": _if(stated.asked(("working_c",)), LIFE),
        "best_margin": _if(stated.asked(tuple(ROOM)), "round(tightest_mm, 6)"),
        "best_cost": "round(cost, 9)",
    }


def _if(asked: str, number: str) -> str:
    return {"true": number, "false": "0e0"}.get(asked, f"case when {asked} then {number} else 0e0 end")


# Only the parts that come back are compared with all others, so this grows with the kept parts and not their square.
BEATEN = """select distinct number, one.pk, true as is_beaten
    from placed join scored as one using (number, pk) join scored as other using (number)
    where one.answer and other.answer
        and other.best_life >= one.best_life and other.best_margin >= one.best_margin
        and other.best_cost <= one.best_cost
        and (other.best_life > one.best_life or other.best_margin > one.best_margin
            or other.best_cost < one.best_cost)"""
UNBEATEN = """case when scored.answer and best_life is not null and best_margin is not null and best_cost is not null
        then is_beaten is null end"""
