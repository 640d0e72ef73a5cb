"""Laws meet facts: the only file that teaches the laws what a stored column is, and which law serves which part.

`OF_PART` holds the numbers made of a part alone, which then stand in its row; `OF_PAIR` those made of a part and a
need; `YEARS` and `COST` those that take one step more. Each is SQL text.
"""

from collections.abc import Mapping
from functools import lru_cache
from math import isnan, nan
from typing import Any

import duckdb

from subsearch.formulas import buying, conventions, envelope, geometry, life, life_wanted, loss
from subsearch.formulas.carriers import Carrier, pick, step
from subsearch.formulas.lifetime import polymer_lifetime, wet_lifetime
from subsearch.formulas.lifetime_inputs import Duty, StatedLife
from subsearch.search.requirement import Requirement
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, HYBRID, POLYMER, WET


def known(x: Carrier) -> Carrier:
    """The value itself, or None [as x] where it is the unknown of plain numbers.

    >>> known(2.5)
    2.5
    >>> known(float("nan"))
    """
    return None if isinstance(x, float) and isnan(x) else x  # SQL sorts NaN above all numbers: it must become NULL


@pick.register
def _(condition: duckdb.Expression, yes: Carrier, no: Carrier = None) -> duckdb.Expression:
    return duckdb.when(condition).then(known(yes)).otherwise(known(no))


@step.register
def _(x: duckdb.Expression, name: str) -> duckdb.Expression:
    return duckdb.fn(name, x)


def _part(name: str) -> Carrier:
    return duckdb.col("part", name)


def _need(name: str) -> Carrier:
    return duckdb.col("need", name)


def _offer(name: str) -> Carrier:
    return duckdb.col("offer", name)


def _stated(first: Carrier, second: Carrier) -> Carrier:
    """The first where it is stated, else the second."""
    return duckdb.when(first.isnotnull()).then(first).otherwise(second)


def _by_shape(can: Carrier, others: Carrier) -> Carrier:
    """One law for cans, one for boxes and axial bodies; unknown where the shape is not stated."""
    return duckdb.when(IS_CAN).then(can).when(IS_OTHER).then(others).otherwise(None)


SHAPE = _part("shape")
IS_CAN, IS_OTHER = duckdb.lit("can") == SHAPE, SHAPE.isin(duckdb.lit("box"), duckdb.lit("axial"))
IS_SNAP_IN = _stated(_part("lead_form") == duckdb.lit("snap-in"), duckdb.lit(False))
STYLE = (
    duckdb.when(duckdb.lit("axial") == SHAPE)
    .then(duckdb.lit("axial"))
    .when(SHAPE.isnotnull() & IS_SNAP_IN)
    .then(duckdb.lit("snap-in"))
    .when(SHAPE.isnotnull())
    .then(duckdb.lit("radial"))
    .otherwise(None)
)


def _technology(*words: str) -> Carrier:
    return _part("technology").isin(*(duckdb.lit(word) for word in words))


WORN_BY_HEAT = _technology(WET, HYBRID, POLYMER)  # the lower, twofold law also serves polymer parts
NOT_WORN_BY_HEAT = _stated(_technology(FILM_PET, FILM_PP, C0G, CLASS_2), duckdb.lit(False))


def _largest(side: str, can_plus: Carrier, other_plus: Carrier) -> Carrier:
    """The largest size on one side: the maker's plus tolerance, else the usual one."""
    plus = _stated(_part(f"{side}_plus_mm"), _by_shape(can_plus, other_plus))
    return envelope.envelope_mm(_part(f"{side}_mm"), plus)


def _across_plus(side: Carrier) -> Carrier:
    return duckdb.when(IS_SNAP_IN).then(envelope.snap_in_plus_mm(side)).otherwise(envelope.can_plus_mm(side))


ALONG, ACROSS, TALL = _part("along_mm"), _part("across_mm"), _part("tall_mm")
SPACING = _stated(_part("delivered_spacing_mm"), _part("lead_spacing_mm"))
OFFSET = geometry.lead_offset_mm(SPACING, _need("hole_spacing_mm"))

# A rating at a higher frequency says nothing about a lower one; 100 and 120 Hz are as good as equal.
COMPARABLE = _need("ripple_hz").isnull() | (_part("ripple_hz") <= _need("ripple_hz") * duckdb.lit(1.25))
USABLE_RIPPLE = pick(COMPARABLE, _part("ripple_a"), None)
# A life at the case temperature, or one run without ripple, has the whole rise still to come.
RIPPLE_INSIDE = duckdb.when(
    _part("life_basis").isin(*(duckdb.lit(word) for word in conventions.WITH_RIPPLE))
    & _stated(_part("life_reference") != duckdb.lit(conventions.AT_CASE), duckdb.lit(True))
)
RISE = life.rise_k(life.RATED_RISE_K, _need("ripple_a"), USABLE_RIPPLE)
COOL_LIFE = life.life_h(_part("life_h"), _part("rated_c"), _need("working_c"))
WITH_RIPPLE = RIPPLE_INSIDE.then(duckdb.lit(1.0)).otherwise(duckdb.lit(0.0))
RIPPLE_LIFE = life.life_with_ripple_h(COOL_LIFE, RISE, life.RATED_RISE_K, WITH_RIPPLE)
# No ripple stated in the position: no rise and no credit for one, which the report says.
LIFE = pick(WORN_BY_HEAT, pick(_need("ripple_a").isnull(), COOL_LIFE, RIPPLE_LIFE), None)

ESR_FROM_LOSS = loss.esr_ohm(_part("tan_delta"), _part("tan_delta_hz"), _part("capacitance_f"))
ESR = (
    duckdb.when((_part("esr_hz") == _need("esr_hz")) & _part("esr_ohm").isnotnull())
    .then(_part("esr_ohm"))
    .when(_part("tan_delta_hz") == _need("esr_hz"))
    .then(ESR_FROM_LOSS)
    .otherwise(None)
)


def _sql(expressions: dict[str, Carrier]) -> dict[str, str]:
    return {name: str(expression) for name, expression in expressions.items()}


OF_PART = _sql(
    {
        "style": STYLE,
        "not_worn_by_heat": NOT_WORN_BY_HEAT,
        "along_max_mm": _largest("along", _across_plus(ALONG), envelope.box_plus_mm(ALONG)),
        "across_max_mm": _largest("across", _across_plus(ACROSS), envelope.box_plus_mm(ACROSS)),
        "tall_max_mm": _largest("tall", envelope.can_tall_plus_mm(TALL), envelope.box_plus_mm(TALL)),
    }
)
ALONG_MAX, ACROSS_MAX, TALL_MAX = _part("along_max_mm"), _part("across_max_mm"), _part("tall_max_mm")
OF_PAIR = _sql(
    {
        "left_margin_mm": geometry.side_margin_mm(_need("left_mm"), ALONG_MAX),
        "right_margin_mm": geometry.side_margin_mm(_need("right_mm"), ALONG_MAX),
        "front_margin_mm": geometry.side_margin_mm(_need("front_mm"), ACROSS_MAX),
        "back_margin_mm": geometry.side_margin_mm(_need("back_mm"), ACROSS_MAX),
        "headroom_margin_mm": geometry.headroom_margin_mm(_need("headroom_mm"), TALL_MAX),
        "round_margin_mm": _by_shape(
            geometry.can_round_margin_mm(_need("free_diameter_mm"), ACROSS_MAX),
            geometry.outline_round_margin_mm(_need("free_diameter_mm"), ALONG_MAX, ACROSS_MAX),
        ),
        "offset_mm": OFFSET,
        "offset_margin_mm": geometry.STRAIGHT_OFFSET_MM - OFFSET,
        "span_margin_mm": geometry.hole_span_margin_mm(_need("hole_spacing_mm"), ALONG),
        "usable_ripple_a": USABLE_RIPPLE,
        "life_at_work_h": LIFE,
        "esr_at_ohm": ESR,
    }
)
WANTED = _need("life_wanted_y") * _need("hours_a_day") * duckdb.lit(365.0)
LIFE_BY_HEAT = pick(WORN_BY_HEAT, COOL_LIFE, None)
# What would have to change for the life that is wanted: only near misses ask for it.
OF_NEAR_MISS = _sql(
    {
        "cool_enough_c": life_wanted.cool_enough_c(duckdb.col("life_at_work_h"), _need("working_c"), WANTED),
        "ripple_for_life_a": life_wanted.ripple_for_life_a(
            LIFE_BY_HEAT, WANTED, life.RATED_RISE_K, duckdb.col("usable_ripple_a"), WITH_RIPPLE
        ),
    }
)
YEARS = str(life.life_y(duckdb.col("life_at_work_h"), _need("hours_a_day")))

SPAN_LAWS = {WET: wet_lifetime, HYBRID: wet_lifetime, POLYMER: polymer_lifetime}


def life_span_y(
    part: Mapping[str, Any], made: Mapping[str, Any], need: Requirement
) -> tuple[float | None, float | None]:
    """The shortest and the longest life [years] over the published laws and over the temperature's uncertainty.

    Under the same ceiling as the figure, which lies between them. None where an input is not stated, or where heat
    does not limit the part. Of the parts shown only, in plain numbers: the same laws as SQL would make every search
    slower, since the text of a statement takes longer to read than its rows.
    """
    if part["technology"] not in SPAN_LAWS or need.working_c is None:
        return None, None
    numbers = (part["life_h"], part["rated_c"], made["usable_ripple_a"])
    base_h, rated_c, ripple_a = (nan if one is None else one for one in numbers)
    stated = StatedLife(base_h, rated_c, ripple_a, part["life_basis"], part["life_reference"])
    duties = (Duty(need.working_c + k * need.temperature_uncertain_k, 24, need.ripple_a) for k in (1, -1))
    hours = _span_h(part["technology"], stated, *duties)
    shortest, longest = (known(life.life_y(one, need.hours_a_day)) for one in hours)
    return shortest, longest


@lru_cache(maxsize=10_000)
def _span_h(technology: str, stated: StatedLife, hottest: Duty, coolest: Duty) -> tuple[float, float]:
    """The shortest life [h], where it is as hot as may be, and the longest, where it is as cool; NaN where unknown."""
    law = SPAN_LAWS[technology]
    return law(stated, hottest).shortest_h, law(stated, coolest).longest_h


_BREAK_COST = buying.break_cost(
    _need("pieces"),
    _stated(_offer("minimum"), duckdb.lit(1)),  # a list without a minimum or a pack sells single pieces
    _stated(_offer("pack"), duckdb.lit(1)),
    duckdb.col("break", "from"),
    duckdb.col("break", "price").cast("double"),
)
_OFFER_COST = f"list_min(list_transform(offer.prices, lambda break: {_BREAK_COST}))"
# What costs nothing costs nothing in any currency: the builder's own drawer needs no rate.
COST = f"coalesce({_OFFER_COST} * rate.worth::double, case when {_OFFER_COST} = 0 then 0e0 end)"
