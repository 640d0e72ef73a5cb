"""Laws meet facts, for two parts together: the other half of derived.py, which see.

`OF_NEED` holds the free room of a need; `OF_MEMBER` what a part brings into a pair; `OF_OUTLINES`, `CORNERS` and
`BETWEEN` how two outlines stand in a rectangle; `OF_TWO` and `OF_LIVES` the numbers of two classes `one` and `other`.
All are SQL.
"""

from collections.abc import Mapping
from math import inf, nan
from typing import Any

import duckdb

from subsearch.formulas import combining, geometry, life, pair_ripple, pair_tolerance, two_bodies
from subsearch.formulas.carriers import Carrier, least, most, pick
from subsearch.formulas.fits import Body
from subsearch.formulas.mounting_cautions import vent_cautions
from subsearch.search.derived import IS_CAN, IS_OTHER, LIFE_BY_HEAT, NOT_WORN_BY_HEAT, WITH_RIPPLE, known

PARALLEL, BACK_TO_BACK = "two in parallel", "two back to back"
INFINITE = duckdb.lit("infinity").cast("double")


def _col(of: str, name: str) -> Carrier:
    return duckdb.col(of, name)


def _or(x: Carrier, other: Carrier) -> Carrier:
    return duckdb.when(x.isnotnull()).then(x).otherwise(other)


def _sql(expressions: dict[str, Carrier]) -> dict[str, str]:
    return {name: str(expression) for name, expression in expressions.items()}


RADIUS = _col("need", "free_diameter_mm") / duckdb.lit(2)


def _reach(side: str) -> Carrier:
    """The room to one side, no farther than the free diameter reaches; infinite where neither is asked."""
    return least(_or(_col("need", side), INFINITE), _or(RADIUS, INFINITE))


def _both(one: str, other: str) -> Carrier:
    return _col("need", one).isnotnull() & _col("need", other).isnotnull()


HAS_ROUND = _col("need", "free_diameter_mm").isnotnull()
OF_NEED = _sql(
    {
        "free_along_mm": _reach("left_mm") + _reach("right_mm"),
        "free_across_mm": _reach("front_mm") + _reach("back_mm"),
        "has_room": HAS_ROUND | _both("left_mm", "right_mm") | _both("front_mm", "back_mm"),
        "has_round": HAS_ROUND,
    }
)
OF_NEED["only_round"] = " and ".join(  # no side is nearer than the free diameter, so that it alone decides
    f"coalesce(need.{side} >= {RADIUS}, true)" for side in ("left_mm", "right_mm", "front_mm", "back_mm")
)

ALONG, ACROSS = _col("part", "along_max_mm"), _col("part", "across_max_mm")
IS_ROUND = duckdb.when(IS_CAN).then(duckdb.lit(True)).when(IS_OTHER).then(duckdb.lit(False)).otherwise(None)
OF_MEMBER = _sql(
    {
        "is_round": IS_ROUND,
        "long_mm": duckdb.when(IS_CAN).then(most(ALONG, ACROSS)).when(IS_OTHER).then(ALONG).otherwise(None),
        "deep_mm": duckdb.when(IS_CAN).then(most(ALONG, ACROSS)).when(IS_OTHER).then(ACROSS).otherwise(None),
        "above_mm": geometry.headroom_margin_mm(_col("need", "headroom_mm"), _col("part", "tall_max_mm")),
        "cool_life_h": LIFE_BY_HEAT,
        "with_ripple": WITH_RIPPLE,
        "leaks_a": pick(
            NOT_WORN_BY_HEAT, duckdb.lit(0.0), _col("part", "leakage_a")
        ),  # film and ceramic: next to nothing
    }
)


def _rim(of: str) -> Carrier:
    return duckdb.when(_col(of, "is_round")).then(_col(of, "long_mm") / duckdb.lit(2)).otherwise(duckdb.lit(0.0))


FREE_ALONG, FREE_ACROSS = _col("need", "free_along_mm"), _col("need", "free_across_mm")
OF_OUTLINES = _sql(
    {
        "spare_along_mm": FREE_ALONG - _col("one", "long_mm") - _col("other", "long_mm"),
        "spare_across_mm": FREE_ACROSS - _col("one", "deep_mm") - _col("other", "deep_mm"),
        "rim_mm": _rim("one") + _rim("other"),
        "walls_mm": two_bodies.walls_margin_mm(
            FREE_ALONG,
            FREE_ACROSS,
            most(_col("one", "long_mm"), _col("other", "long_mm")),
            most(_col("one", "deep_mm"), _col("other", "deep_mm")),
        ),
    }
)
CORNERS = str(
    two_bodies.corner_margin_mm(duckdb.col("spare_along_mm"), duckdb.col("spare_across_mm"), duckdb.col("rim_mm"))
)
BETWEEN = str(least(duckdb.col("corners_mm"), duckdb.col("walls_mm")))

IS_BACK_TO_BACK = _col("two", "way") == duckdb.lit(BACK_TO_BACK)
ONE_F, OTHER_F = _col("one", "capacitance_f"), _col("other", "capacitance_f")
IN_PARALLEL_F = str(combining.parallel_f(ONE_F, OTHER_F))
RIPPLE = _col("need", "ripple_a")


def _carried(own_f: Carrier, other_f: Carrier) -> Carrier:
    return pick(IS_BACK_TO_BACK, RIPPLE, pair_ripple.shared_ripple_a(RIPPLE, own_f, other_f))


ONE_OHM, OTHER_OHM = _col("one", "esr_at_ohm"), _col("other", "esr_at_ohm")
ONE_LEAKS, OTHER_LEAKS = _col("one", "leaks_a"), _col("other", "leaks_a")
OF_TWO = _sql(
    {
        "joint_f": pick(IS_BACK_TO_BACK, combining.back_to_back_f(ONE_F), combining.parallel_f(ONE_F, OTHER_F)),
        "joint_ohm": pick(
            IS_BACK_TO_BACK, pair_ripple.back_to_back_ohm(ONE_OHM), pair_ripple.parallel_ohm(ONE_OHM, OTHER_OHM)
        ),
        "joint_leaks_a": pick(IS_BACK_TO_BACK, ONE_LEAKS, ONE_LEAKS + OTHER_LEAKS),  # one behind the other, or both
        "one_carries_a": _carried(ONE_F, OTHER_F),
        "other_carries_a": _carried(OTHER_F, ONE_F),
        "round_mm": duckdb.when(_col("one", "is_round") & _col("other", "is_round"))
        .then(
            two_bodies.two_cans_round_margin_mm(
                _col("need", "free_diameter_mm"), _col("one", "long_mm"), _col("other", "long_mm")
            )
        )
        .otherwise(None),
    }
)


def _life(of: str) -> Carrier:
    """Life under its own share of the ripple; without a ripple it is that of the part alone."""
    rise = life.rise_k(life.RATED_RISE_K, duckdb.col(f"{of}_carries_a"), _col(of, "usable_ripple_a"))
    return life.life_with_ripple_h(_col(of, "cool_life_h"), rise, life.RATED_RISE_K, _col(of, "with_ripple"))


OF_LIVES = _sql({f"{of}_life_h": _life(of) for of in ("one", "other")})


def _number(x: float | None) -> float:
    return nan if x is None else x


def together(way: str, one: Mapping[str, Any], other: Mapping[str, Any], esr_hz: float | None) -> dict[str, Any]:
    """What two parts are together that only has to be shown: tolerance, voltage, series resistance; None where unknown.

    The series resistance is the one stated at the frequency asked, or else at one that both state.
    """
    c, other_c = one["capacitance_f"], other["capacitance_f"]
    ohms, hz = (one["esr_at_ohm"], other["esr_at_ohm"]), esr_hz
    if hz is None and one["esr_hz"] is not None and one["esr_hz"] == other["esr_hz"]:
        ohms, hz = (one["esr_ohm"], other["esr_ohm"]), one["esr_hz"]
    ends = [
        pair_tolerance.parallel_pct(c, _number(one[end]), other_c, _number(other[end]))
        if way == PARALLEL
        else _number(one[end])
        for end in ("tolerance_low_pct", "tolerance_high_pct")
    ]
    volts, law = (_number(one["rated_v"]), _number(other["rated_v"])), combining.back_to_back_v
    ohm = pair_ripple.back_to_back_ohm(_number(ohms[0]))
    if way == PARALLEL:
        law, ohm = combining.parallel_v, pair_ripple.parallel_ohm(*map(_number, ohms))
    joint = {"tolerance_low_pct": ends[0], "tolerance_high_pct": ends[1], "rated_v": law(*volts), "esr_ohm": ohm}
    told = {name: known(value) for name, value in joint.items()}
    return {**told, "esr_hz": None if told["esr_ohm"] is None else hz}


def years_of(life_h: float | None, hours_a_day: float) -> float | None:
    """Years of life under the ceiling; None where it is not known.

    >>> years_of(8760, 24)
    1.0
    """
    years: float | None = known(life.life_y(_number(life_h), hours_a_day))
    return years


def set_years(years: list[float | None]) -> float | None:
    """How long a set lasts: as long as its shortest-lived part; None where one is not known.

    >>> set_years([7.5, 12.0]), set_years([7.5, None])
    (7.5, None)
    """
    shortest: float | None = known(combining.set_life_h([_number(one) for one in years]))
    return shortest


def vents_of(part: Mapping[str, Any], above_mm: float | None) -> tuple[str, ...]:
    """What the vent of one of them asks for, with so much room above it; an unasked headroom is no limit."""
    if part["shape"] == "axial":  # its vent is at an end
        return ()
    along_mm, across_mm, tall_mm = (_number(part[f"{side}_mm"]) for side in ("along", "across", "tall"))
    vented = {"vented": True, "none": False}.get(part["vent"])
    body = Body(along_mm, across_mm, tall_mm, part["shape"], vented=vented)
    return tuple(vent_cautions(body, inf if above_mm is None else above_mm))
