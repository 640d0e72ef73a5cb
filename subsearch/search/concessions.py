"""Every concession once: how it is measured in SQL, the requirement that makes it, and its words.

A row stands for one kind of concession on one condition of criteria.py; names in the SQL are those used there.
"""

from collections.abc import Mapping
from dataclasses import replace

from subsearch.formulas.geometry import AXIAL_LEADS_MM
from subsearch.search.criteria import TIMES, among
from subsearch.search.measures import Measure, changed, limit, sides, word_taken
from subsearch.search.roles import BY_ROLE, NO_ROLE
from subsearch.search.way import WITHIN_MM

FARTHEST = 2  # a capacitance under half or over twice of what is taken is another part, no near miss
OTHER_CONDITION = "other_condition"  # each state that the part is sold in and that is not taken


def _role_takes() -> str:
    """SQL that is true where the role lets that technology in; who wants another one pins it."""
    taken = {name: among("part.technology", role.technologies) for name, role in BY_ROLE.items()}
    roles = " ".join(f"when {name!r} then {its}" for name, its in taken.items())
    return f"case need.role {roles} else {among('part.technology', NO_ROLE.technologies)} end"


ASKS_LIFE = "need.life_wanted_y is not null and need.working_c is not null and not part.not_worn_by_heat"
COOLER_C = f"""case when not ({ASKS_LIFE}) or cool_enough_c >= part.rated_c then part.rated_c
    when cool_enough_c < part.rated_c then cool_enough_c end"""
CALMER_A = f"""case when not ({ASKS_LIFE}) or ripple_for_life_a >= usable_ripple_a then usable_ripple_a
    when ripple_for_life_a < usable_ripple_a then ripple_for_life_a end"""
# A larger part from the mains to earth lets more current through whoever touches the chassis.
NOT_TO_EARTH = "coalesce(need.safety_class not in ('Y1', 'Y2'), true)"

MEASURES = (
    limit(
        "capacitance_low_f",
        "capacitance",
        f"case when part.capacitance_f <= need.capacitance_low_f and "
        f"part.capacitance_f * {FARTHEST} >= need.capacitance_low_f then part.capacitance_f end",
        "taking {then.capacitance_low_f} instead of {now.capacitance_low_f} at least ({pct} lower)",
        -1,
    ),
    replace(
        limit(
            "capacitance_high_f",
            "capacitance",
            "case when part.capacitance_f >= need.capacitance_high_f and "
            f"part.capacitance_f <= {FARTHEST} * need.capacitance_high_f then part.capacitance_f end",
            "taking {then.capacitance_high_f} instead of {now.capacitance_high_f} at most ({pct} higher)",
            1,
        ),
        only=NOT_TO_EARTH,
    ),
    replace(
        limit(
            "rated_v",
            "voltage",
            f"part.rated_v / {TIMES}",
            "if it measures {measured} or less, switching on and faults included, {then.rated_v} would do",
            -1,
        ),
        only="not coalesce(need.voltage_measured, false)",
        is_clause=True,
    ),
    replace(
        limit(
            "rated_ac_v",
            "voltage_ac",
            "part.rated_ac_v",
            "if the a.c. voltage never exceeds {then.rated_ac_v}, that rating instead of {now.rated_ac_v} would do",
            -1,
        ),
        only="need.safety_class is null",
        is_clause=True,
    ),
    word_taken(
        "technologies",
        "technology",
        "part.technology",
        "taking {word} as well",
        f"case when {_role_takes()} and not list_contains(need.technologies, part.technology) then 0e0 end",
    ),
    *sides(),
    Measure(
        name="bent_nearer_mm",
        condition="lead_spacing",
        value=f"case when room_lying and -span_margin_mm > 0 "
        f"and -span_margin_mm <= {AXIAL_LEADS_MM:e} + {WITHIN_MM} then -span_margin_mm end",
        words="holes {by_mm} further apart, or axial leads bent nearer to the body by half of that each,",
        moved=lambda need, by: replace(need, bent_nearer_mm=(need.bent_nearer_mm or 0.0) + by),
        fields=("bent_nearer_mm",),
        cost="value / 5",
        within=f"{WITHIN_MM}",
        asked_by=("hole_spacing_mm",),
    ),
    Measure(
        name="may_lie_flat",
        condition="body",
        value="case when lies then 0e0 end",
        words="laying it flat, where the board has the room and the old part need not stand,",
        moved=lambda need, _: replace(need, may_lie_flat=True),
        fields=("may_lie_flat",),
        cost="2",
        others=("lead_spacing",),
        asked_by=("hole_spacing_mm",),
        only="not coalesce(need.may_lie_flat, false)",
    ),
    changed(
        "lead_style",
        "lead_style",
        None,
        "0e0",
        "taking any other than {now.lead_style} leads as well",
    ),
    Measure(
        "working_c",
        "temperature",
        f"case when {COOLER_C} >= -55 then {COOLER_C} end",
        "{by_k} cooler ({cool_c} instead of {now.working_c})",
        lambda need, to: replace(need, working_c=to),
        ("working_c",),
        "(need.working_c - value) / 10",
        nearest=-1,
        others=("life",),
    ),
    limit(
        "life_wanted_y",
        "life",
        "life_at_work_h / (365 * need.hours_a_day)",
        "wanting {years_then} years of life instead of {years_now}",
        -1,
    ),
    replace(
        limit("ripple_a", "ripple", CALMER_A, "a ripple current of {then.ripple_a} instead of {now.ripple_a}", -1),
        others=("life",),
    ),
    limit(
        "esr_least_ohm",
        "esr",
        "case when esr_at_ohm <= need.esr_least_ohm then esr_at_ohm end",
        "a series resistance of {then.esr_least_ohm} instead of {now.esr_least_ohm} at least",
        -1,
    ),
    limit(
        "esr_most_ohm",
        "esr",
        "case when esr_at_ohm >= need.esr_most_ohm then esr_at_ohm end",
        "a series resistance of {then.esr_most_ohm} instead of {now.esr_most_ohm} at most",
        1,
    ),
    limit(
        "leakage_most_a",
        "leakage",
        "case when part.leakage_a >= need.leakage_most_a then part.leakage_a end",
        "a leakage current of {then.leakage_most_a} instead of {now.leakage_most_a} at most",
        1,
    ),
    word_taken("conditions", "condition", OTHER_CONDITION, "taking {word} parts as well (measure them first)", "0e0"),
    Measure(
        "pieces",
        "stock",
        "case when most_in_stock > 0 then most_in_stock end",
        "buying {then.pieces} instead of {now.pieces} at once",
        lambda need, to: replace(need, pieces=int(to)),
        ("pieces",),
        "log2(need.pieces / value)",
        nearest=-1,
        asked_by=("in_stock",),
    ),
    changed("in_stock", "stock", False, "case when need.in_stock and on_order then 0e0 end", "waiting for delivery"),
)
BY_NAME: Mapping[str, Measure] = {measure.name: measure for measure in MEASURES}
FIRM = {
    "polarity": "a polar part can burst where the voltage reverses",
    "hole": "a plated hole loses its plating when it is opened",
    "safety": "the class stands between the mains and a person",
    "source": "a part of a safety class comes from a source that shows where it came from",
}
"""Conditions on which nothing is conceded, whatever it would let in, and why."""
MEASURED = "the voltage needed follows from what was measured"
