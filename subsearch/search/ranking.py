"""In what order the kept parts are offered: a sum of named contributions, with all weights in one visible place.

A contribution that can't be told because something is not stated adds 0 and is named; so the worth of what is stated
begins at 0 and rises. Ties fall to maker and part number, the same way every time.
"""

from dataclasses import dataclass

from subsearch.formulas.geometry import STRAIGHT_OFFSET_MM
from subsearch.formulas.leads import CAUTION_OFFSET_MM
from subsearch.search.stated import Stated
from subsearch.search.ways import BENT_NAMES, LYING, ROOM


@dataclass(frozen=True)
class Contribution:
    """One reason to prefer a part: its usual weight, the SQL of its worth before the weight, and what it means.

    It is asked where the need states all of its `fields` together, or any of them.
    """

    name: str
    weight: float
    worth: str
    meaning: str
    fields: tuple[str, ...] = ()
    together: bool = True

    @property
    def parameter(self) -> str:
        """The name under which its weight is bound."""
        return f"weight_{self.name.replace(' ', '_')}"

    def value(self, stated: Stated) -> str:
        """SQL of what it adds to the total; null where it can't be told."""
        asked = stated.asked(self.fields, self.together) if self.fields else "true"
        worth = f"${self.parameter}::double * ({self.worth})"
        return {"true": worth, "false": "0e0"}.get(asked, f"case when {asked} then {worth} else 0e0 end")


ROOMY_MM = 2  # more room than that is worth nothing more
LIVES_WANTED = "(life_at_work_h / (need.life_wanted_y * 365 * need.hours_a_day))"

# A CASE answers null for an unknown number, where SQL's least() would answer with its other argument.
CONTRIBUTIONS = (
    Contribution(
        "clearance",
        1.0,
        f"case when tightest_mm < {ROOMY_MM} then tightest_mm / {ROOMY_MM:e} "
        f"when tightest_mm >= {ROOMY_MM} then 1e0 end",
        "tightest margin around the body, up to 2 mm: room for fingers, air and the vent",
        tuple(ROOM),
        together=False,
    ),
    Contribution(
        "capacitance",
        1.0,
        "1 - abs(log2(part.capacitance_f / need.capacitance_f))",
        "closeness to the old value: one for the same, nothing for twice or half of it",
        ("capacitance_f",),
    ),
    Contribution(
        "voltage",
        0.5,
        "case when part.rated_v < 1.5e0 * need.rated_v then (part.rated_v / need.rated_v - 1) / 0.5e0 "
        "when part.rated_v >= 1.5e0 * need.rated_v then 1e0 end",
        "voltage in reserve, flat from 1.5 times the need: more volts only take room",
        ("rated_v",),
    ),
    Contribution(
        "lead spacing",
        1.0,
        f"case when way = '{LYING.name}' then 1e0 when way in {BENT_NAMES} then 0e0 "
        f"when worked_mm <= {STRAIGHT_OFFSET_MM:e} then 1 - worked_mm / {2 * STRAIGHT_OFFSET_MM:e} "
        f"when worked_mm < {CAUTION_OFFSET_MM:e} then 0.5e0 - worked_mm / {2 * CAUTION_OFFSET_MM:e} "
        f"when worked_mm >= {CAUTION_OFFSET_MM:e} then 0e0 end",
        "leads that need no work: one where they meet the holes, half where each is as far off as goes unformed, "
        "less where they must be formed, nothing where the body is laid flat or stood on end",
        ("hole_spacing_mm",),
    ),
    Contribution(
        "life",
        0.5,
        f"case when part.not_worn_by_heat or {LIVES_WANTED} >= 8 then 3e0 "
        f"when {LIVES_WANTED} < 8 then log2({LIVES_WANTED}) end",
        "doublings of the life wanted, flat from eight times; not limited by this rule counts as eight times",
        ("life_wanted_y", "working_c"),
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
