"""Pairs written by hand in the form of classes: the rival of `subsearch.search.several.several`.

It asks what `ASKED_PAIRS` of bench_pairs.py asks and nothing else, and carries narrow columns until the best are known.
"""

from typing import Any

import duckdb

from subsearch.search.requirement import Requirement

FIELDS = (
    "capacitance_f", "capacitance_low_f", "capacitance_high_f", "rated_v", "technologies", "headroom_mm", "left_mm",
    "front_mm", "working_c", "life_wanted_y", "pieces", "reverses",
)  # fmt: skip
Answered = tuple[tuple[tuple[str, int, int], ...], tuple[tuple[str, tuple[str, ...], float], ...]]

SINGLE = """select pk, maker, part_number, c, volts, is_can, long, deep, above, lasting, years, fits,
        c < $capacitance_low_f * (1 - 1e-9) and (not $reverses or lasting or polarity = 'bipolar') as splits,
        $reverses and polarity = 'polar' and not coalesce(lasting or technology = 'paper', false)
            and c between $capacitance_low_f * 2 * (1 - 1e-9) and $capacitance_high_f * 2 * (1 + 1e-9) as halves
    from (select pk, maker, part_number, capacitance_f as c, rated_v as volts, polarity, technology,
            if(shape is null, null, shape = 'can') as is_can,
            along_mm + if(shape = 'can', if(lead_form is not distinct from 'snap-in' or along_mm >= 20, 1e0, 0.5e0),
                0.5e0) as largest_along,
            across_mm + if(shape = 'can', if(lead_form is not distinct from 'snap-in' or across_mm >= 20, 1e0, 0.5e0),
                0.5e0) as largest_across,
            if(shape is null, null, if(is_can, greatest(largest_along, largest_across), largest_along)
                + 0 * largest_across) as long,
            if(shape is null, null, if(is_can, greatest(largest_along, largest_across), largest_across)
                + 0 * largest_along) as deep,
            $headroom_mm - (tall_mm + if(shape is null, null, if(is_can, if(tall_mm < 20, 1.5e0, 2e0), 0.5e0)))
                as above,
            coalesce(technology in ('film PET', 'film PP', 'ceramic C0G', 'ceramic class 2'), false) as lasting,
            case when technology in ('wet aluminium', 'hybrid aluminium', 'polymer aluminium')
                then life_h * 2 ** ((rated_c - $working_c) / 10) / (365 * 24) end as years,
            rated_v >= $rated_v * (1 - 1e-9) and list_contains($technologies, technology) and above >= -1e-6
                and rated_c >= $working_c - $working_c * 1e-9
                and (lasting or years >= $life_wanted_y * (1 - 1e-9)) as fits
        from part where capacitance_f < $capacitance_low_f * (1 - 1e-9) or ($reverses and capacitance_f
            between $capacitance_low_f * 2 * (1 - 1e-9) and $capacitance_high_f * 2 * (1 + 1e-9)))
    where (fits and splits) is not false or (fits and halves) is not false
    qualify (fits and halves) is not false or c + max(c) filter (where (fits and splits) is not false) over ()
        >= $capacitance_low_f * (1 - 1e-9)"""

OWN = """0.5e0 * coalesce(case when volts < 1.5e0 * $rated_v then (volts / $rated_v - 1) / 0.5e0
            when volts >= 1.5e0 * $rated_v then 1e0 end, 0)
        + coalesce(1 / (1 + best.cost / (times * $pieces)), 0)
        + 0.25e0 * coalesce(case when best.stock > 0 then greatest(least(log2(best.stock / (times * $pieces)), 3e0),
            -3e0) / 3 when best.stock = 0 then -1e0 end, 0)
        + 0.5e0 * coalesce(case when lasting or years >= 8 * $life_wanted_y then 3e0
            when years < 8 * $life_wanted_y then log2(years / $life_wanted_y) end, 0)"""
MARGIN = """2 * $left_mm - one.long - other.long as sa, 2 * $front_mm - one.deep - other.deep as sb,
        if(one.is_can, one.long / 2, 0) + if(other.is_can, other.long / 2, 0) as rim,
        if(sa > sb, sa, sb) as spare, spare + rim as wide, if(sa > sb, sb, sa) + rim as narrow,
        2 * (wide + narrow) + rim as half,
        if(narrow <= 2 * spare / 3, spare / 3,
            (half - sqrt(greatest(half * half - 7 * (wide * wide + narrow * narrow - rim * rim), 0))) / 7) as corner,
        least(2 * $left_mm - greatest(one.long, other.long), 2 * $front_mm - greatest(one.deep, other.deep)) / 2
            as walls"""
BEST = "(-own, maker is null, coalesce(maker, ''), part_number)"
MEMBER = "{'own': own, 'maker': maker, 'part_number': part_number}"

PAIRS = f"""with single as materialized ({SINGLE}),
sold as (select pk, times, bool_or(buys) as bought,
        arg_min({{'cost': cost, 'stock': stock}}, (case when buys then 0 else 1 end, coalesce(cost, 'infinity'),
            supplier, supplier_number)) as best
    from (select offer.pk, times, list_contains(['new', 'old stock'], condition)
                and stock >= times * $pieces as buys, stock, supplier, supplier_number,
            list_min(list_transform(prices, lambda b:
                ceil(greatest(times * $pieces, coalesce(minimum, 1), b."from") / coalesce(pack, 1))
                * coalesce(pack, 1) * b.price::double)) as printed,
            if(printed = 0, 0e0, printed * worth::double) as cost
        from offer join (select pk from single) using (pk) cross join (select unnest([1, 2]) as times)
            left join currency_rate using (currency))
    where buys is not false group by pk, times),
classes as materialized (select *, row_number() over () as class,
        dense_rank() over (order by is_can, long, deep) as outline from (
    select c, is_can, long, deep, above, fits and splits as splits, fits and halves as halves,
        count(*) filter (where times = 1) as any1, count(*) filter (where times = 1 and bought) as sure1,
        count(*) filter (where times = 2) as any2, count(*) filter (where times = 2 and bought) as sure2,
        arg_min({MEMBER}, {BEST}, $most + 1) filter (where times = 1 and bought) as ones,
        arg_min({MEMBER}, {BEST}, $most) filter (where times = 2 and bought) as twos
    from (select *, round(({OWN}) / (3 - times), 9) as own from sold join single using (pk)) group by all)),
laid as (select distinct outline, is_can, long, deep from classes union
    select outline, is_can, deep, long from classes where not is_can),
placed as (select first_one, second_one, max(if(known is null, null, least(corner, walls))) as gap from (
        select one.outline as first_one, other.outline as second_one,
        one.long + one.deep + other.long + other.deep as known, {MARGIN}
        from laid as one join laid as other on one.outline <= other.outline)
    group by all),
slim as (select * exclude (ones, twos), ones[1].own as own1, ones[2].own as own1b, twos[1].own as own2 from classes),
met as (select way, alike, x, y, joint, gap, sure, anyone, bests,
        splitting and joint between $capacitance_low_f * (1 - 1e-9) and $capacitance_high_f * (1 + 1e-9)
            and gap >= -1e-6 as answer,
        round(coalesce(case when least(gap, high1, high2) < 2 then least(gap, high1, high2) / 2 else 1e0 end, 0)
            + 1 - abs(log2(joint / $capacitance_f)), 9) as term
    from (
        select 'two in parallel' as way, false as alike, one.class as x, other.class as y, one.outline as ox,
            other.outline as oy, one.c + other.c as joint, one.splits and other.splits as splitting,
            one.above as high1, other.above as high2,
            if(x = y, one.sure1 * (one.sure1 - 1) // 2, one.sure1 * other.sure1) as sure,
            if(x = y, one.any1 * (one.any1 - 1) // 2, one.any1 * other.any1) as anyone,
            if(x = y, one.own1 + one.own1b, one.own1 + other.own1) as bests
        from slim as one join slim as other on one.class <= other.class and one.c + other.c
            between $capacitance_low_f * (1 - 1e-9) and $capacitance_high_f * (1 + 1e-9)
        union all select 'two in parallel', true, class, class, outline, outline, 2 * c, splits, above, above, sure2,
            any2, own2 from slim where splits is not false
        union all select 'two back to back', true, class, class, outline, outline, c / 2, halves, above, above, sure2,
            any2, own2 from slim where halves is not false)
        join placed on first_one = least(ox, oy) and second_one = greatest(ox, oy)),
counts as (select way, sum(if(answer, sure, 0))::bigint as kept, sum(anyone - if(answer, sure, 0))::bigint as opened
    from met where answer is not false and anyone > 0 group by way),
best as (select * from met where answer and bests is not null
    qualify rank() over (partition by way order by round(term + bests, 9) desc) <= $most),
unfolded as (select best.*, if(alike, one.twos[i], one.ones[i]) as a, if(alike, one.twos[j], other.ones[j]) as b
    from best join classes as one on one.class = x join classes as other on other.class = y
        join (select i, j from range(1, $most + 2) as r(i), range(1, $most + 2) as s(j) where i = j
            or i * j <= 2 * ($most + 2)) on case when alike then i = j when x = y then i < j
            and i * j - i * (i + 1) // 2 <= $most else i * j <= $most end),
ranked as (select way, round(term + a.own + if(alike, 0e0, b.own), 9) as total,
        (coalesce(a.maker, ''), a.part_number) > (coalesce(b.maker, ''), b.part_number) as turned,
        if(turned, (coalesce(b.maker, ''), b.part_number, coalesce(a.maker, ''), a.part_number),
            (coalesce(a.maker, ''), a.part_number, coalesce(b.maker, ''), b.part_number)) as names
    from unfolded where a is not null and b is not null
    qualify row_number() over (partition by way order by total desc, names) <= $most)
select way, kept, opened, total, names from counts left join ranked using (way) order by way, total desc, names"""


def pairs(con: duckdb.DuckDBPyConnection, asked: Requirement, most: int) -> Answered:
    """Give the counts of each way and the best pairs by name with their scores."""
    values: dict[str, Any] = {field: getattr(asked, field) for field in FIELDS}
    rows = con.execute(PAIRS, {**values, "technologies": list(asked.technologies or ()), "most": most}).fetchall()
    counts = tuple(dict.fromkeys((row[0], row[1], row[2]) for row in rows))
    told = [(way, tuple(names), total) for way, _, _, total, names in rows if total is not None]
    best = tuple((way, _names(names), round(total, 6)) for way, names, total in told)
    return counts, best


def _names(names: tuple[str, ...]) -> tuple[str, ...]:
    return f"{names[0]} {names[1]}", f"{names[2]} {names[3]}"
