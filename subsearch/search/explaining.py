"""The statements of every answer on a part: asked apart, since carrying refusals back costs more than a search."""

from functools import lru_cache

from subsearch.search import parts, statements
from subsearch.search.criteria import OFFER, OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.derived import OF_PART
from subsearch.search.numbers import claims, with_numbers
from subsearch.search.stated import Stated, struct
from subsearch.search.ways import UPRIGHT

HOLES = "hole_spacing_mm"
NAMED = """named as (
    select number, maker::varchar as maker, part_number from (select unnest($named, recursive := true)))"""
OF_ANOTHER_KIND = ("lead_style", "polarity", "technology", "safety")


def _distance(stated: Stated) -> str:
    """SQL of how far a refused part is off, to order those that fail equally many conditions.

    Doublings of value and voltage, a fifth for each millimetre missing, and two for whatever is of another kind.
    """
    names = {criterion.name for criterion in parts.asked(stated)}
    off = [
        *(["abs(log2(part.capacitance_f / need.capacitance_f))"] if stated.says("capacitance_f") else []),
        *(["greatest(log2(need.rated_v / part.rated_v), 0)"] if stated.says("rated_v") else []),
        *(f"greatest(-{margin.made}, 0) / 5" for margin in UPRIGHT.margins if stated.says(margin.asked_by)),
        *(["case part.style when 'axial' then greatest(-span_margin_mm, 0) else greatest(-offset_margin_mm, 0) end / 5"]
          if stated.says(HOLES) else []),
        *(f"case when not is_{name} then 2 end" for name in OF_ANOTHER_KIND if name in names),
    ]  # fmt: skip
    return " + ".join(["0", *(f"coalesce({one}, 0)" for one in off)])


def _all_answers(stated: Stated) -> dict[str, str]:
    """The column of each condition's answer; what is not asked is answered yes."""
    names = {criterion.name for criterion in parts.asked(stated)}
    return {c.name: f"is_{c.name}" if c.name in names else "true" for c in PART_CRITERIA}


def _numbered(stated: Stated, used: str, rows: str) -> str:
    used = " ".join([used, *parts.ways_and_answers(stated)])
    carried = ", ".join(f"part.{name}" for name in sorted({*parts.ALWAYS, *claims(stated, used)}))
    return f"part as materialized ({with_numbers(stated, used, rows.format(carried))})"


def answers(stated: Stated, last: str) -> str:
    """A statement over `answers`: every answer on every part for each need."""
    distance = _distance(stated)
    judged = stated.joined(f"({parts.judged(stated, 'part', True)}) as part")
    everyone = "main.part as part" if stated.alone else "need cross join main.part as part"
    offers = "offer" if stated.alone else "need cross join offer"
    whole = _all_answers(stated) | {OFFER: "case when sold.pk is null then false else sold.is_offered end"}
    return stated.written(
        _numbered(stated, distance, "select need.number as number, {} from " + everyone),
        f"""sold as (
    select number, pk, {statements.ANY_OFFER.format("is_one")} as is_offered from (
        select need.number as number, offer.pk, ({statements.offer_answer(stated)}) as is_one from {offers})
    group by number, pk)""",
        f"judged as (select part.*, {distance} as distance from {judged})",
        f"""answers as (
    select judged.number, maker, part_number, distance, {struct(whole)} as answer
    from judged left join sold using (number, pk))""",
        last=last,
    )


@lru_cache
def explain(stated: Stated) -> str:
    """Every answer in full, with the numbers behind it, for one named part to each need."""
    used = " ".join([*statements.SHOWN, *OF_PART])
    exempt = {c.name: f"coalesce({c.exempt}, false)" if c.exempt else "false" for c in PART_CRITERIA}
    joined = "named join main.part as part on part.maker is not distinct from named.maker " \
        "and part.part_number = named.part_number" + ("" if stated.alone else " join need using (number)")  # fmt: skip
    offers = stated.joined("part join offer using (pk)")
    each = {c.name: c.answer(stated) for c in OFFER_CRITERIA}
    return stated.written(
        NAMED,
        _numbered(stated, " ".join([used, *exempt.values()]), "select named.number as number, {} from " + joined),
        f"""sold as (
    select part.number, list({{'offer': offer, 'answers': {struct(each)}}}
        order by offer.supplier, offer.supplier_number) as offers
    from {offers} group by part.number)""",
        last=f"""select part.*, fact, {struct(_all_answers(stated))} as answers,
    {struct({c.name: c.asked(stated) for c in PART_CRITERIA})} as asked, {struct(exempt)} as exempt, offers
from {stated.joined(f"({parts.judged(stated, 'part', True)}) as part")} join main.part as fact using (pk)
    left join sold using (number)""",
    )
