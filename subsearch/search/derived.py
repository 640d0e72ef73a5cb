"""Laws meet facts: the only file that teaches the laws what a stored column is, and which law serves which part.

`OF_PART` holds the numbers made of a part alone, `OF_PAIR` those made of a part and a need; `YEARS`, `OF_NEAR_MISS` and
`COST` take one step more. Each is SQL text; a number once made stands in the part's row under its name. Those of
mounting are made in derived_ways.py.
"""

from math import isnan

import duckdb

from subsearch.formulas import axials, buying, cans, conventions, envelope, leakage, life, life_wanted, loss
from subsearch.formulas.carriers import Carrier, pick, step
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


def of_part(name: str) -> Carrier:
    """A claim of a part, or a number made of it."""
    return duckdb.col("part", name)


def of_need(name: str) -> Carrier:
    """What a need states."""
    return duckdb.col("need", name)


def _offer(name: str) -> Carrier:
    return duckdb.col("offer", name)


def stated_or(first: Carrier, second: Carrier) -> Carrier:
    """The first where it is stated, else the second."""
    return duckdb.when(first.isnotnull()).then(first).otherwise(second)


def by_shape(can: Carrier, others: Carrier) -> Carrier:
    """One law for cans, one for boxes and axial bodies; unknown where the shape is not stated."""
    return duckdb.when(IS_CAN).then(can).when(IS_OTHER).then(others).otherwise(None)


SHAPE = of_part("shape")
IS_CAN, IS_OTHER = duckdb.lit("can") == SHAPE, SHAPE.isin(duckdb.lit("box"), duckdb.lit("axial"))
IS_SNAP_IN = stated_or(of_part("lead_form") == duckdb.lit("snap-in"), duckdb.lit(False))
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
    return of_part("technology").isin(*(duckdb.lit(word) for word in words))


WORN_BY_HEAT = _technology(WET, HYBRID, POLYMER)  # the lower, twofold law also serves polymer parts
NOT_WORN_BY_HEAT = stated_or(_technology(FILM_PET, FILM_PP, C0G, CLASS_2), duckdb.lit(False))


def _largest(side: str, can_plus: Carrier, other_plus: Carrier) -> Carrier:
    """The largest size on one side: the maker's plus tolerance, else the usual one."""
    plus = stated_or(of_part(f"{side}_plus_mm"), by_shape(can_plus, other_plus))
    return envelope.envelope_mm(of_part(f"{side}_mm"), plus)


def _across_plus(side: Carrier) -> Carrier:
    return duckdb.when(IS_SNAP_IN).then(envelope.snap_in_plus_mm(side)).otherwise(envelope.can_plus_mm(side))


ALONG, ACROSS, TALL = of_part("along_mm"), of_part("across_mm"), of_part("tall_mm")

# A rating at a higher frequency says nothing about a lower one; 100 and 120 Hz are as good as equal.
COMPARABLE = of_need("ripple_hz").isnull() | (of_part("ripple_hz") <= of_need("ripple_hz") * duckdb.lit(1.25))
USABLE_RIPPLE = pick(COMPARABLE, of_part("ripple_a"), None)
# A life at the case temperature, or one run without ripple, has the whole rise still to come.
RIPPLE_INSIDE = duckdb.when(
    of_part("life_basis").isin(*(duckdb.lit(word) for word in conventions.WITH_RIPPLE))
    & stated_or(of_part("life_reference") != duckdb.lit(conventions.AT_CASE), duckdb.lit(True))
)
RISE = life.rise_k(life.RATED_RISE_K, of_need("ripple_a"), USABLE_RIPPLE)
COOL_LIFE = life.life_h(of_part("life_h"), of_part("rated_c"), of_need("working_c"))
WITH_RIPPLE = RIPPLE_INSIDE.then(duckdb.lit(1.0)).otherwise(duckdb.lit(0.0))
RIPPLE_LIFE = life.life_with_ripple_h(COOL_LIFE, RISE, life.RATED_RISE_K, WITH_RIPPLE)
# No ripple stated in the position: no rise and no credit for one, which the report says.
LIFE = pick(WORN_BY_HEAT, pick(of_need("ripple_a").isnull(), COOL_LIFE, RIPPLE_LIFE), None)

# Bends need the thickness of a lead; where it is not stated, the usual one of such a body. A hole asks what is stated.
USUAL_LEAD = (
    duckdb.when(IS_CAN)
    .then(cans.can_lead_max_mm(ACROSS))
    .when(duckdb.lit("axial") == SHAPE)
    .then(axials.axial_lead_mm(ACROSS))
    .otherwise(None)
)

ESR_FROM_LOSS = loss.esr_ohm(of_part("tan_delta"), of_part("tan_delta_hz"), of_part("capacitance_f"))
ESR = (
    duckdb.when((of_part("esr_hz") == of_need("esr_hz")) & of_part("esr_ohm").isnotnull())
    .then(of_part("esr_ohm"))
    .when(of_part("tan_delta_hz") == of_need("esr_hz"))
    .then(ESR_FROM_LOSS)
    .otherwise(None)
)

LEAKAGE = leakage.stated_leakage_a(
    *(of_part(name) for name in ("capacitance_f", "rated_v", "leakage_factor", "leakage_plus_a", "leakage_floor_a"))
)


def texts(expressions: dict[str, Carrier]) -> dict[str, str]:
    """The text of each."""
    return {name: str(expression) for name, expression in expressions.items()}


OF_PART = texts(
    {
        "style": STYLE,
        "not_worn_by_heat": NOT_WORN_BY_HEAT,
        "along_max_mm": _largest("along", _across_plus(ALONG), envelope.box_plus_mm(ALONG)),
        "across_max_mm": _largest("across", _across_plus(ACROSS), envelope.box_plus_mm(ACROSS)),
        "tall_max_mm": _largest("tall", envelope.can_tall_plus_mm(TALL), envelope.box_plus_mm(TALL)),
        "spacing_mm": stated_or(of_part("delivered_spacing_mm"), of_part("lead_spacing_mm")),
        "thick_mm": stated_or(of_part("lead_diameter_mm"), USUAL_LEAD),
        "leakage_a": LEAKAGE,
    }
)
OF_PAIR = texts({"usable_ripple_a": USABLE_RIPPLE, "life_at_work_h": LIFE, "esr_at_ohm": ESR})
# What such a number comes to where no need states a field that it can do without.
SIMPLER = {
    ("usable_ripple_a", "ripple_hz"): str(of_part("ripple_a")),
    ("life_at_work_h", "ripple_a"): str(pick(WORN_BY_HEAT, COOL_LIFE, None)),
}
WANTED = of_need("life_wanted_y") * of_need("hours_a_day") * duckdb.lit(365.0)
LIFE_BY_HEAT = pick(WORN_BY_HEAT, COOL_LIFE, None)
# What would have to change for the life that is wanted: only near misses ask for it.
OF_NEAR_MISS = texts(
    {
        "cool_enough_c": life_wanted.cool_enough_c(of_part("life_at_work_h"), of_need("working_c"), WANTED),
        "ripple_for_life_a": life_wanted.ripple_for_life_a(
            LIFE_BY_HEAT, WANTED, life.RATED_RISE_K, of_part("usable_ripple_a"), WITH_RIPPLE
        ),
    }
)
YEARS = str(life.life_y(of_part("life_at_work_h"), of_need("hours_a_day")))


# A list without a minimum or a pack sells single pieces.
OF_OFFER = texts(
    {"minimum": stated_or(_offer("minimum"), duckdb.lit(1)), "pack": stated_or(_offer("pack"), duckdb.lit(1))}
)
_BREAK_COST = buying.break_cost(
    of_need("pieces"),
    _offer("minimum"),
    _offer("pack"),
    duckdb.col("break", "from"),
    duckdb.col("break", "price").cast("double"),
)
PRINTED_COST = f"list_min(list_transform(offer.prices, lambda break: {_BREAK_COST}))"
# What costs nothing costs nothing in any currency: the builder's own drawer needs no rate.
COST = "case when offer.printed_cost = 0 then 0e0 else offer.printed_cost * offer.worth end"
