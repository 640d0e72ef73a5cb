"""In what order the kept parts are offered: a sum of named contributions, with all weights in one visible place.

A contribution that can't be told because something is not stated adds 0 and is named; so the worth of what is stated
begins at 0 and rises. Ties fall to maker and part number, the same way every time.
"""

from dataclasses import dataclass

from subsearch.formulas.geometry import STRAIGHT_OFFSET_MM


@dataclass(frozen=True)
class Contribution:
    """One reason to prefer a part: its usual weight, the SQL of its worth before the weight, and what it means."""

    name: str
    weight: float
    worth: str
    meaning: str
    asked: str = "true"

    @property
    def parameter(self) -> str:
        """The name under which its weight is bound."""
        return f"weight_{self.name.replace(' ', '_')}"

    def value(self) -> str:
        """SQL of what it adds to the total; null where it can't be told."""
        return f"case when {self.asked} then ${self.parameter}::double * ({self.worth}) else 0e0 end"


LIVES_WANTED = "(life_at_work_h / (need.life_wanted_y * 365 * need.hours_a_day))"

# A CASE answers null for an unknown number, where SQL's least() would answer with its other argument.
CONTRIBUTIONS = (
    Contribution(
        "clearance",
        1.0,
        "case when tightest_mm < 2 then tightest_mm / 2e0 when tightest_mm >= 2 then 1e0 end",
        "tightest margin around the body, up to 2 mm: room for fingers, air and the vent",
        "coalesce(need.left_mm, need.right_mm, need.front_mm, need.back_mm, need.free_diameter_mm, need.headroom_mm) "
        "is not null",
    ),
    Contribution(
        "capacitance",
        1.0,
        "1 - abs(log2(part.capacitance_f / need.capacitance_f))",
        "closeness to the old value: one for the same, nothing for twice or half of it",
        "need.capacitance_f is not null",
    ),
    Contribution(
        "voltage",
        0.5,
        "case when part.rated_v < 1.5e0 * need.rated_v then (part.rated_v / need.rated_v - 1) / 0.5e0 "
        "when part.rated_v >= 1.5e0 * need.rated_v then 1e0 end",
        "voltage in reserve, flat from 1.5 times the need: more volts only take room",
        "need.rated_v is not null",
    ),
    Contribution(
        "lead spacing",
        0.5,
        f"case part.style when 'axial' then 1e0 else 1 - offset_mm / {STRAIGHT_OFFSET_MM:e} end",
        "straight leads: one where they meet the holes, nothing where each is as far off as goes unformed",
        "need.hole_spacing_mm is not null",
    ),
    Contribution(
        "life",
        0.5,
        f"case when part.not_worn_by_heat or {LIVES_WANTED} >= 8 then 3e0 "
        f"when {LIVES_WANTED} < 8 then log2({LIVES_WANTED}) end",
        "doublings of the life wanted, flat from eight times; not limited by this rule counts as eight times",
        "need.life_wanted_y is not null and need.working_c is not null",
    ),
    Contribution(
        "price",
        1.0,
        "1 / (1 + cost / need.pieces)",
        "cost of one piece in the builder's currency when all are bought: one for nothing, half for 1.00",
    ),
    Contribution(
        "stock",
        0.25,
        "case when offer.stock > 0 then greatest(least(log2(offer.stock / need.pieces), 3e0), -3e0) / 3e0 "
        "when offer.stock = 0 then -1e0 end",
        "stock against what is needed, up to eight times",
    ),
)
