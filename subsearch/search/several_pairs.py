"""The second half of that statement: classes paired, judged and ranked, and the best pairs unfolded into parts."""

from dataclasses import replace

from subsearch.search.derived_pairs import (
    BACK_TO_BACK,
    BETWEEN,
    CORNERS,
    IN_PARALLEL_F,
    OF_LIVES,
    OF_OUTLINES,
    OF_TWO,
    PARALLEL,
)
from subsearch.search.several_sql import BY_NAME, CLASSES, NO_RIPPLE, answer_of, said, worth_of
from subsearch.search.stated import columns
from subsearch.search.way import WITHIN_MM


def _of(of: str) -> dict[str, str]:
    """What the numbers of a single part are called of one class of the two."""
    return {
        "usable_ripple_a": f"({of}.usable_ripple_a * need.ripple_a / {of}_carries_a)",
        "life_at_work_h": f"{of}_life_h",
        "part.not_worn_by_heat": f"{of}.not_worn_by_heat",
    }


SIDES = ("one", "other")
LEAKS = replace(
    BY_NAME["leakage"], holds=said(BY_NAME["leakage"].holds, {"part.leakage_a": "joint_leaks_a"}), exempt=""
).answer()
IN_WINDOW = answer_of("capacitance", {"part.capacitance_f": "joint_f"})
# Sides that are nearer than a free diameter, and boxes in a round space, can't be told.
BODY = f"""(not need.has_room or between_mm >= -{WITHIN_MM}) and (not need.has_round or
            case when round_mm < -{WITHIN_MM} then false when round_mm is not null and need.only_round then true end)"""
HEAT = " and ".join(
    f"{answer_of('ripple', _of(side))} and ({NO_RIPPLE} or {answer_of('life', _of(side))})" for side in SIDES
)
ANSWER = f"""{IN_WINDOW} and (case two.way when '{PARALLEL}' then one.in_parallel and other.in_parallel
            else one.back_to_back end) and {BODY} and {HEAT} and {LEAKS}
            and {answer_of("esr", {"esr_at_ohm": "joint_ohm"})}"""
# Of pairs that fit, which alone are scored, every margin asked is known, so that least() skips only what is not asked.
TIGHTEST = """least(case when need.has_room then between_mm end, case when need.has_round then round_mm end,
            one.above_mm, other.above_mm)"""
LIVES = " + ".join(worth_of("life", _of(side)) for side in SIDES)
TERM = (
    f"{worth_of('clearance')} + {worth_of('capacitance', {'part.capacitance_f': 'joint_f'})}"
    f" + case when {NO_RIPPLE} then 0e0 else ({LIVES}) / 2 end"
)
BEST_OWN = """case when alike then one.double_own when one_class = other_class then one.first_own + one.second_own
            else one.first_own + other.first_own end"""


def _pairs(count: str) -> str:
    """SQL for how many different pairs of parts a pair of classes holds."""
    return f"""case when alike then one.{count}_two when one_class = other_class
            then one.{count}_one * (one.{count}_one - 1) // 2 else one.{count}_one * other.{count}_one end"""


NAME = "({0}.maker is null, coalesce({0}.maker, ''), {0}.part_number)"

SEVERAL = f"""with {CLASSES},
narrow as (
    select * exclude (singles, doubles) from classes
),
laid as (
    select number, outline, is_round, long_mm, deep_mm from narrow
    union select number, outline, is_round, deep_mm, long_mm from narrow where is_round = false
),
placed as (
    select number, one_outline, other_outline, max({BETWEEN}) as between_mm from (
        select number, one_outline, other_outline, walls_mm, {CORNERS} as corners_mm from (
            select one.number, one.outline as one_outline, other.outline as other_outline, {columns(OF_OUTLINES)}
            from laid as one join laid as other on one.number = other.number and one.outline <= other.outline
                join roomy as need on need.number = one.number))
    group by number, one_outline, other_outline
),
met as (
    select one.number, '{PARALLEL}' as way, false as alike, one.class as one_class, other.class as other_class,
        {IN_PARALLEL_F} as joint_f
    from narrow as one join narrow as other on one.number = other.number and one.class <= other.class
        join roomy as need on need.number = one.number
    where one.in_parallel is not false and other.in_parallel is not false and {IN_WINDOW}
    union all select number, '{PARALLEL}', true, class, class, null from narrow where in_parallel is not false
    union all select number, '{BACK_TO_BACK}', true, class, class, null from narrow where back_to_back is not false
),
joined as (
    select two.*, one, other, between_mm,
        {columns(OF_TWO)}
    from (select * exclude (joint_f) from met) as two join narrow as one on one.class = one_class
        join narrow as other on other.class = other_class join roomy as need on need.number = two.number
        join placed on placed.number = two.number and one_outline = least(one.outline, other.outline)
            and other_outline = greatest(one.outline, other.outline)
),
measured as (
    select two.*, {columns(OF_LIVES)}, {TIGHTEST} as tightest_mm
    from joined as two join roomy as need using (number)
),
judged as (
    select two.* exclude (one, other, between_mm, round_mm), need.most,
        case when need.has_round then round_mm when need.has_room then between_mm end as gap_mm,
        {ANSWER} as answer, round({TERM}, 9) as term, {BEST_OWN} as best_own,
        {_pairs("sure")} as sure, {_pairs("any")} as any_pairs
    from measured as two join roomy as need using (number)
),
counts as (
    select number, way, sum(case when answer then sure else 0 end)::bigint as kept_count,
        sum(any_pairs - case when answer then sure else 0 end)::bigint as open_count
    from judged where answer is not false and any_pairs > 0 group by number, way
),
best as (
    select judged.* from judged where answer and best_own is not null
    qualify rank() over (partition by number, way order by round(term + best_own, 9) desc) <= most
),
places as (
    select one_place, other_place
    from (select max(most) as most, max(greatest(len(singles), len(doubles))) as held from classes),
        range(1, held + 1) as a(one_place),
        range(1, least(held, greatest(one_place, 2 * (most + 2) // one_place)) + 1) as b(other_place)
),
unfolded as (
    select best.*, case when alike then one.doubles[one_place] else one.singles[one_place] end as one,
        case when alike then one.doubles[one_place] else other.singles[other_place] end as other
    from best join classes as one on one.class = one_class join classes as other on other.class = other_class
        join places on case when alike then one_place = other_place
            when one_class = other_class then one_place < other_place
                and one_place * other_place - one_place * (one_place + 1) // 2 <= best.most
            else one_place * other_place <= best.most end
),
ranked as (
    select *, case when swapped then {{'first': second, 'second': first}} else {{'first': first, 'second': second}} end
        as names
    from (
        select *, round(term + one.own + case when alike then 0e0 else other.own end, 9) as total,
            {NAME.format("one")} as first, {NAME.format("other")} as second, first > second as swapped
        from unfolded where one is not null and other is not null)
),
shown as (
    select * exclude (first, second)
    from ranked qualify row_number() over (partition by number, way order by total desc, names) <= most
),
told as (
    select shown.*, one_part as one_fact, other_part as other_fact, one_offer, other_offer
    from shown join main.part as one_part on one_part.pk = shown.one.pk
        join main.part as other_part on other_part.pk = shown.other.pk
        join offer as one_offer on one_offer.pk = shown.one.pk and one_offer.rowid = shown.one.offer_row
        join offer as other_offer on other_offer.pk = shown.other.pk and other_offer.rowid = shown.other.offer_row
)
select counts.number as number, counts.way as way, kept_count, open_count, told.* exclude (number, way)
from counts left join told using (number, way)
order by number, way, total desc, names"""
"""For each need and way how many pairs fit or may fit, and the best that fit, as facts, offers and numbers."""
