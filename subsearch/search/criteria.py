"""Every condition once: the SQL that answers it and the sentence that says the answer.

An answer is true (yes), false (no) or null (not stated). A bare name in the SQL is a number made in derived.py;
`part`, `offer` and `need` are rows. The WHERE of a search, the reason for a refusal and the line of a report all come
from here, and every limit is met within 1e-6 mm or 1e-9 relative, in this one place.
"""

from dataclasses import dataclass

from subsearch.search.requirement import CLASSES_TAKEN
from subsearch.search.ways import WAYS, WITHIN_MM
from subsearch.terms import WITHOUT_POLARITY


@dataclass(frozen=True)
class Criterion:
    """One condition on a part, or on one offer of it.

    `asked` is true where the need asks at all; `exempt` where the question has no meaning for the part, which is then
    answered yes with a sentence of its own.
    """

    name: str
    label: str
    asked: str
    holds: str
    sentence: str
    exempt: str = "false"
    exempt_sentence: str = ""

    def answer(self) -> str:
        """The SQL that gives true, false or null."""
        return f"(not ({self.asked}) or coalesce({self.exempt}, false) or ({self.holds}))"


def at_least(a: str, b: str) -> str:
    """SQL for a ≥ b within 1e-9 relative."""
    return f"{a} >= {b} * (1 - 1e-9)"


def among(name: str, words: tuple[str, ...]) -> str:
    """SQL for a word that is one of ours; null where it is not stated."""
    return f"{name} in ({', '.join(repr(word) for word in words)})"


CLASS_TAKEN = " ".join(
    f"when {asked!r} then {among('part.safety_class', taken)}" for asked, taken in CLASSES_TAKEN.items()
)

PART_CRITERIA = (
    Criterion(
        "capacitance",
        "capacitance in the window",
        "coalesce(need.capacitance_low_f, need.capacitance_high_f) is not null",
        f"{at_least('part.capacitance_f', 'coalesce(need.capacitance_low_f, 0)')} and "
        f"{at_least('''coalesce(need.capacitance_high_f, 'infinity')''', 'part.capacitance_f')}",
        "{part.capacitance_f} nominal; {need.capacitance_low_f} to {need.capacitance_high_f} is taken",
    ),
    Criterion(
        "voltage",
        "rated d.c. voltage",
        "need.rated_v is not null",
        at_least("part.rated_v", "need.rated_v"),
        "rated voltage {part.rated_v}; at least {need.rated_v} is needed",
    ),
    Criterion(
        "voltage_ac",
        "rated a.c. voltage",
        "need.rated_ac_v is not null and need.safety_class is null",
        at_least("part.rated_ac_v", "need.rated_ac_v"),
        "rated a.c. voltage {part.rated_ac_v}; at least {need.rated_ac_v} is needed",
    ),
    Criterion(
        "polarity",
        "polarity",
        "need.reverses",
        "part.polarity = 'bipolar'",
        "{part.polarity}; the voltage here may reverse, so a bipolar part is needed",
        among("part.technology", WITHOUT_POLARITY),
        "{part.technology} has no polarity",
    ),
    Criterion(
        "technology",
        "technology allowed",
        "need.technologies is not null",
        "list_contains(need.technologies, part.technology)",
        "{part.technology}; taken here: {need.technologies}",
    ),
    Criterion(
        "body",
        "body in the space",
        " or ".join(way.asked() for way in WAYS),
        " or ".join(f"({way.holds()})" for way in WAYS),
        "body {part.size}: {made.margins}",
    ),
    Criterion(
        "lead_spacing",
        "lead spacing",
        "need.hole_spacing_mm is not null",
        f"case part.style when 'axial' then span_margin_mm + coalesce(need.bent_nearer_mm, 0) >= -{WITHIN_MM} "
        f"when 'radial' then offset_margin_mm + coalesce(need.formed_mm, 0) >= -{WITHIN_MM} "
        f"when 'snap-in' then offset_margin_mm + coalesce(need.formed_mm, 0) >= -{WITHIN_MM} end",
        "{made.leads}; the holes are {need.hole_spacing_mm} apart",
    ),
    Criterion(
        "lead_style",
        "lead style",
        "need.lead_style is not null",
        "part.style = need.lead_style",
        "{made.style} leads; {need.lead_style} is needed",
    ),
    Criterion(
        "temperature",
        "upper category temperature",
        "need.working_c is not null",
        "part.rated_c >= need.working_c - abs(need.working_c) * 1e-9",
        "made for up to {part.rated_c}; it works at {need.working_c}",
    ),
    Criterion(
        "life",
        "life at the working temperature",
        "need.life_wanted_y is not null and need.working_c is not null",
        at_least(
            "life_at_work_h / (365 * need.hours_a_day)", "need.life_wanted_y"
        ),  # what may be wanted ends at the ceiling
        "{made.years} at {need.working_c}; {need.life_wanted_y} are wanted",
        "part.not_worn_by_heat",
        "not limited by this rule ({part.technology})",
    ),
    Criterion(
        "ripple",
        "ripple current",
        "need.ripple_a is not null",
        at_least("usable_ripple_a", "need.ripple_a"),
        "rated ripple {part.ripple_a} at {part.ripple_hz}; {need.ripple_a} at {need.ripple_hz} flows",
        "part.not_worn_by_heat",
        "not limited by this rule ({part.technology})",
    ),
    Criterion(
        "esr",
        "series resistance in its band",
        "coalesce(need.esr_least_ohm, need.esr_most_ohm) is not null",
        f"{at_least('esr_at_ohm', 'coalesce(need.esr_least_ohm, 0)')} and "
        f"{at_least('''coalesce(need.esr_most_ohm, 'infinity')''', 'esr_at_ohm')}",
        "series resistance {made.esr_at_ohm} at {need.esr_hz} (a stated limit: measure it); "
        "{need.esr_least_ohm} to {need.esr_most_ohm} is wanted",
    ),
    Criterion(
        "safety",
        "safety class",
        "need.safety_class is not null",
        f"coalesce(case need.safety_class {CLASS_TAKEN} end and (need.rated_ac_v is null or "
        f"{at_least('part.rated_ac_v', 'need.rated_ac_v')}), false)",
        "class {part.safety_class}, rated a.c. voltage {part.rated_ac_v}; class {need.safety_class} or stricter, "
        "{need.rated_ac_v} a.c., is needed, and not stated counts as no",
    ),
)
OFFER_CRITERIA = (
    Criterion(
        "condition",
        "condition of the parts",
        "need.conditions is not null",
        "list_contains(need.conditions, offer.condition)",
        "condition {offer.condition}; taken: {need.conditions}",
    ),
    Criterion(
        "stock",
        "enough in stock",
        "need.in_stock",
        "offer.stock >= need.pieces",
        "in stock: {offer.stock}; needed: {need.pieces}",
    ),
    Criterion(
        "source",
        "traceable source",
        "need.safety_class is not null",
        "coalesce(offer.traceable, false)",
        "traceable source: {offer.traceable}; a safety class asks for yes, and not stated counts as no",
    ),
)
OFFER = "offer"  # the answers on one offer are joined first, then over the part's offers: one answer for all of them
NOBODY = "nobody lists it"
CRITERION_NAMES = (*(criterion.name for criterion in PART_CRITERIA), OFFER)
LABELS = {c.name: c.label for c in (*PART_CRITERIA, *OFFER_CRITERIA)} | {OFFER: "an offer that can be bought"}
