"""Every condition once: the SQL that answers it and the sentence that says the answer.

An answer is true (yes), false (no) or null (not stated). A bare name in the SQL is a number made in derived.py;
`part`, `offer` and `need` are rows. The WHERE of a search, the reason for a refusal and the line of a report all come
from here, and every limit is met within 1e-6 mm or 1e-9 relative, in this one place.
"""

from subsearch.formulas.voltage import TANTALUM_TIMES
from subsearch.search.criterion import Criterion
from subsearch.search.requirement import CLASSES_TAKEN
from subsearch.search.way import WITHIN_MM
from subsearch.search.ways import ROOM
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, TANTALUM, WITHOUT_POLARITY


def at_least(a: str, b: str) -> str:
    """SQL for a ≥ b within 1e-9 relative."""
    return f"{a} >= {b} * (1 - 1e-9)"


def among(name: str, words: tuple[str, ...]) -> str:
    """SQL for a word that is one of ours; null where it is not stated."""
    return f"{name} in ({', '.join(repr(word) for word in words)})"


TIMES = f"(case when part.technology = '{TANTALUM}' then {TANTALUM_TIMES:e} else 1e0 end)"  # what the voltage counts
CLASS_TAKEN = " ".join(
    f"when {asked!r} then {among('part.safety_class', taken)}" for asked, taken in CLASSES_TAKEN.items()
)

PART_CRITERIA = (
    Criterion(
        "capacitance",
        "capacitance in the window",
        ("capacitance_low_f", "capacitance_high_f"),
        # written so that the database sees from which value to which it must read
        "part.capacitance_f >= coalesce(need.capacitance_low_f, 0) * (1 - 1e-9) and "
        "part.capacitance_f <= coalesce(need.capacitance_high_f, 'infinity') * (1 + 1e-9)",
        "{part.capacitance_f} nominal; {need.capacitance_low_f} to {need.capacitance_high_f} is taken",
        on_claims=True,
    ),
    Criterion(
        "voltage",
        "rated d.c. voltage",
        ("rated_v",),
        at_least("part.rated_v", f"need.rated_v * {TIMES}"),
        "rated voltage {part.rated_v}; at least {made.volts} is needed",
        on_claims=True,
    ),
    Criterion(
        "voltage_ac",
        "rated a.c. voltage",
        ("rated_ac_v",),
        at_least("part.rated_ac_v", "need.rated_ac_v"),
        "rated a.c. voltage {part.rated_ac_v}; at least {need.rated_ac_v} is needed",
        unless="safety_class",
        on_claims=True,
    ),
    Criterion(
        "polarity",
        "polarity",
        ("reverses",),
        "part.polarity = 'bipolar'",
        "{part.polarity}; the voltage here may reverse, so a bipolar part is needed",
        among("part.technology", WITHOUT_POLARITY),
        "{part.technology} has no polarity",
        on_claims=True,
    ),
    Criterion(
        "technology",
        "technology allowed",
        ("technologies",),
        "list_contains(need.technologies, part.technology)",
        "{part.technology}; taken here: {need.technologies}",
        on_claims=True,
    ),
    Criterion(
        "body",
        "body in the space",
        tuple(ROOM),
        "body_fits",
        "body {part.size}: {made.margins}",
    ),
    Criterion(
        "lead_spacing",
        "lead spacing",
        ("hole_spacing_mm",),
        "leads_meet",
        "{made.leads}; the holes are {need.hole_spacing_mm} apart",
    ),
    Criterion(
        "hole",
        "lead in its hole",
        ("hole_diameter_mm",),
        # An unplated hole can be opened, and one not known to be plated is looked at: a caution says so.
        f"need.hole_plated is distinct from true or hole_margin_mm >= -{WITHIN_MM}",
        "lead diameter {part.lead_diameter_mm}; the hole is {need.hole_diameter_mm} wide, plated: {need.hole_plated}",
    ),
    Criterion(
        "lead_style",
        "lead style",
        ("lead_style",),
        "part.style = need.lead_style",
        "{made.style} leads; {need.lead_style} is needed",
    ),
    Criterion(
        "temperature",
        "upper category temperature",
        ("working_c",),
        "part.rated_c >= need.working_c - abs(need.working_c) * 1e-9",
        "made for up to {part.rated_c}; it works at {need.working_c}",
        on_claims=True,
    ),
    Criterion(
        "life",
        "life at the working temperature",
        ("life_wanted_y", "working_c"),
        at_least(
            "life_at_work_h / (365 * need.hours_a_day)", "need.life_wanted_y"
        ),  # what may be wanted ends at the ceiling
        "{made.years} at {need.working_c}; {need.life_wanted_y} are wanted",
        "part.not_worn_by_heat",
        "not limited by this rule ({part.technology})",
        together=True,
    ),
    Criterion(
        "ripple",
        "ripple current",
        ("ripple_a",),
        at_least("usable_ripple_a", "need.ripple_a"),
        "rated ripple {part.ripple_a} at {part.ripple_hz}; {need.ripple_a} at {need.ripple_hz} flows",
        "part.not_worn_by_heat",
        "not limited by this rule ({part.technology})",
    ),
    Criterion(
        "esr",
        "series resistance in its band",
        ("esr_least_ohm", "esr_most_ohm"),
        f"{at_least('esr_at_ohm', 'coalesce(need.esr_least_ohm, 0)')} and "
        f"{at_least('''coalesce(need.esr_most_ohm, 'infinity')''', 'esr_at_ohm')}",
        "series resistance {made.esr_at_ohm} at {need.esr_hz} (a stated limit: measure it); "
        "{need.esr_least_ohm} to {need.esr_most_ohm} is wanted",
    ),
    Criterion(
        "leakage",
        "leakage current",
        ("leakage_most_a",),
        at_least("need.leakage_most_a", "part.leakage_a"),
        "the maker's limit at rated voltage and 20 °C, when new: {made.leaks} (hot, it leaks more); "
        "{need.leakage_most_a} is allowed",
        among("part.technology", (FILM_PET, FILM_PP, C0G, CLASS_2)),
        "{part.technology} leaks next to nothing",
    ),
    Criterion(
        "safety",
        "safety class",
        ("safety_class",),
        f"coalesce(case need.safety_class {CLASS_TAKEN} end and (need.rated_ac_v is null or "
        f"{at_least('part.rated_ac_v', 'need.rated_ac_v')}), false)",
        "class {part.safety_class}, rated a.c. voltage {part.rated_ac_v}; class {need.safety_class} or stricter, "
        "{need.rated_ac_v} a.c., is needed, and not stated counts as no",
        on_claims=True,
    ),
)
OFFER_CRITERIA = (
    Criterion(
        "condition",
        "condition of the parts",
        ("conditions",),
        "list_contains(need.conditions, offer.condition)",
        "condition {offer.condition}; taken: {need.conditions}",
    ),
    Criterion(
        "stock",
        "enough in stock",
        ("in_stock",),
        "offer.stock >= need.pieces",
        "in stock: {offer.stock}; needed: {need.pieces}",
    ),
    Criterion(
        "source",
        "traceable source",
        ("safety_class",),
        "coalesce(offer.traceable, false)",
        "traceable source: {offer.traceable}; a safety class asks for yes, and not stated counts as no",
    ),
)
OFFER = "offer"  # the answers on one offer are joined first, then over the part's offers: one answer for all of them
NOBODY = "nobody lists it"
CRITERION_NAMES = (*(criterion.name for criterion in PART_CRITERIA), OFFER)
LABELS = {c.name: c.label for c in (*PART_CRITERIA, *OFFER_CRITERIA)} | {OFFER: "an offer that can be bought"}
