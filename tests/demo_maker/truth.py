"""The truth about the four lists: what each kept line states, and every fault of the others."""

from dataclasses import dataclass
from decimal import Decimal

from demo_maker.build import build
from demo_maker.layouts import LAYOUTS
from demo_maker.leakage import numbers
from demo_maker.lists import Line
from demo_maker.values import Value

NAMES = """
maker part_number series technology polarity capacitance_f tolerance_low_pct tolerance_high_pct rated_v rated_ac_v
lowest_c rated_c life_h life_basis life_reference tan_delta tan_delta_hz esr_ohm esr_hz ripple_a ripple_hz
leakage_rule leakage_factor leakage_plus_a leakage_floor_a
shape along_mm across_mm tall_mm along_plus_mm across_plus_mm tall_plus_mm lead_spacing_mm
delivered_spacing_mm lead_diameter_mm lead_form lead_length_mm vent safety_class life_cycle
supplier supplier_number currency stock minimum pack lead_time_days date_seen date_bought condition date_code
traceable
"""
TERMS = tuple(NAMES.split())
Told = Value | int | list[tuple[int, Decimal]]


@dataclass(frozen=True)
class Truth:
    """Kept lines (file, line, every term, prices), faults (file, line, term, fault) and data lines by file."""

    rows: list[dict[str, Told]]
    faults: set[tuple[str, int, str, str]]
    lines_read: dict[str, int]


def truth(seed: int = 1974) -> Truth:
    """What a reader of the four lists must find."""
    rows: list[dict[str, Told]] = []
    faults: set[tuple[str, int, str, str]] = set()
    read: dict[str, int] = {}
    for layout, lines in zip(LAYOUTS, build(seed), strict=True):
        first = len(layout.preamble) + 2
        read[layout.file] = len(lines)
        for number, line in enumerate(lines, first):
            faults |= {(layout.file, number, term, fault) for term, fault in line.faults}
            if not line.faults:
                rows.append({"file": layout.file, "line": number, **told(line)})
    return Truth(rows, faults, read)


def told(line: Line) -> dict[str, Told]:
    """Every term of a kept line, with its price breaks."""
    stated: dict[str, Told] = {term: line.claims.get(term) for term in TERMS}
    return {**stated, **numbers(line.claims.get("leakage_rule")), "prices": list(line.prices)}
