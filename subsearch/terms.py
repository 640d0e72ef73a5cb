"""The one list of terms: what every room calls a thing, in which unit, and which values are sane.

A name ends in its unit. Docstring units, column comments, intake ranges, axis titles and labels are read from here
or checked against it. Null always means "not stated"; "none" is a word.
"""

from dataclasses import dataclass

WET, POLYMER, HYBRID, TANTALUM = "wet aluminium", "polymer aluminium", "hybrid aluminium", "tantalum"
FILM_PET, FILM_PP, C0G, CLASS_2, PAPER = "film PET", "film PP", "ceramic C0G", "ceramic class 2", "paper"
TECHNOLOGIES = (WET, POLYMER, HYBRID, TANTALUM, FILM_PET, FILM_PP, C0G, CLASS_2, PAPER)
WITHOUT_POLARITY = (FILM_PET, FILM_PP, C0G, CLASS_2, PAPER)
ROLES = (
    "coupling",
    "bypass",
    "feedback leg",
    "rail decoupling",
    "reservoir",
    "regulator output",
    "timing",
    "filter or equaliser",
    "bootstrap",
    "loudspeaker crossover",
    "interference suppression",
)


@dataclass(frozen=True)
class Term:
    """A name, the unit its values are in ("" for text and counts), what it means, and its sane values."""

    name: str
    unit: str
    meaning: str
    low: float | None = None
    high: float | None = None
    words: tuple[str, ...] = ()


PART_TERMS = (
    Term("maker", "", "who makes the part"),
    Term("part_number", "", "the maker's part number"),
    Term("series", "", "the maker's name for the family"),
    Term("technology", "", "how the capacitor is built", words=TECHNOLOGIES),
    Term("polarity", "", "whether it stands voltage of one sign only", words=("polar", "bipolar")),
    Term("capacitance_f", "F", "nominal capacitance", 1e-13, 10),
    Term("tolerance_low_pct", "%", "tolerance below nominal, a negative number", -100, 0),
    Term("tolerance_high_pct", "%", "tolerance above nominal", 0, 300),
    Term("rated_v", "V", "rated d.c. voltage", 1, 20_000),
    Term("rated_ac_v", "V", "rated a.c. voltage, rms at mains frequency", 1, 10_000),
    Term("lowest_c", "°C", "lower category temperature", -80, 25),
    Term("rated_c", "°C", "upper category temperature, at which the life is stated", 40, 250),
    Term("life_h", "h", "life at the upper category temperature", 100, 200_000),
    Term("life_basis", "", "what that life means", words=("endurance", "load life", "useful life")),
    Term("life_reference", "", "where the temperature of that life is taken", words=("ambient", "case")),
    Term("tan_delta", "", "loss factor, upper limit", 1e-6, 3),
    Term("tan_delta_hz", "Hz", "frequency at which the loss factor is stated", 1, 1e7),
    Term("esr_ohm", "Ω", "equivalent series resistance, upper limit", 1e-5, 1e5),
    Term("esr_hz", "Hz", "frequency at which the series resistance is stated", 1, 1e7),
    Term("ripple_a", "A", "rated ripple current, rms, at the upper category temperature", 1e-4, 200),
    Term("ripple_hz", "Hz", "frequency at which the ripple current is stated", 1, 1e7),
    Term("leakage_rule", "", "the maker's leakage limit, as written"),
    Term("leakage_factor", "", "what that limit lets leak for each µF·V, in µA, at rated voltage and 20 °C", 0, 10),
    Term("leakage_plus_a", "A", "what that limit adds to it", 0, 0.1),
    Term("leakage_floor_a", "A", "what that limit lets leak however small the part", 0, 0.1),
    Term("shape", "", "the outline of the body", words=("can", "box", "axial")),
    Term("along_mm", "mm", "nominal body size in the line of the leads", 0.5, 300),
    Term("across_mm", "mm", "nominal body size across the line of the leads", 0.5, 300),
    Term("tall_mm", "mm", "nominal body height with the leads down", 0.5, 300),
    Term("along_plus_mm", "mm", "the maker's plus tolerance on the size along", 0, 20),
    Term("across_plus_mm", "mm", "the maker's plus tolerance on the size across", 0, 20),
    Term("tall_plus_mm", "mm", "the maker's plus tolerance on the height", 0, 20),
    Term("lead_spacing_mm", "mm", "lead spacing where the leads leave the body", 0.5, 150),
    Term("delivered_spacing_mm", "mm", "lead spacing as delivered, where taping or forming has changed it", 0.5, 150),
    Term("lead_diameter_mm", "mm", "diameter of a lead", 0.2, 5),
    Term("lead_form", "", "how the leads are delivered", words=("straight", "formed", "cut", "snap-in")),
    Term("lead_length_mm", "mm", "length of the shorter lead", 1, 150),
    Term("vent", "", "whether the case has a pressure relief", words=("vented", "none")),
    Term("safety_class", "", "class of interference suppression capacitor", words=("X1", "X2", "Y1", "Y2", "none")),
    Term(
        "life_cycle",
        "",
        "what the maker says of its future",
        words=("active", "not for new designs", "discontinued"),
    ),
)

OFFER_TERMS = (
    Term("supplier", "", "who sells it; the builder's own drawer is a supplier whose price is 0"),
    Term("supplier_number", "", "the supplier's own number for the offer"),
    Term("currency", "", "three-letter currency of the prices"),
    Term("stock", "", "pieces in stock; 0 when on order", 0, 1e9),
    Term("minimum", "", "fewest pieces one can buy", 1, 1e7),
    Term("pack", "", "pieces are sold in multiples of this", 1, 1e7),
    Term("lead_time_days", "", "days until delivery when not in stock", 0, 2_000),
    Term("date_seen", "", "the day the offer was seen"),
    Term("date_bought", "", "the day it was bought, for parts in the builder's own drawer"),
    Term("condition", "", "what state the parts are in", words=("new", "old stock", "pulled")),
    Term("date_code", "", "date code printed on the parts, as written"),
    Term("traceable", "", "whether the supplier shows where the parts came from", words=("yes", "no")),
)

BREAK_TERMS = (
    Term("from_quantity", "", "the price holds from this many pieces", 1, 1e7),
    Term("unit_price", "", "price of one piece in the offer's currency", 0, 1e5),
)

TERMS = {term.name: term for term in (*PART_TERMS, *OFFER_TERMS, *BREAK_TERMS)}
