"""The repair's folder: repair.toml and positions.csv."""

import csv
from pathlib import Path

from demo_maker.organ_rest import CROSSOVER, CROSSOVER_CARD, SUPPLY, SUPPLY_CARD, VIBRATO, VIBRATO_CARD
from demo_maker.organ_tone import CARD, PRESETS, TONE

Fields = dict[str, str]
HEADINGS = """
reference card section role marking old_technology old_tolerance old_rating safety_class mains supply_rail capacitance
rated_voltage sections polarity plus_towards lead_style hole_spacing_mm hole_diameter_mm plated left_mm right_mm
front_mm back_mm free_diameter_mm headroom_mm may_lie_flat temperature_c temperature_uncertain_k hot_part_k
dc_lowest_v dc_highest_v ac_peak_v fault_v ripple_ma ripple_hz esr_least_ohm esr_most_ohm esr_hz leakage_most_ua
source_ohm load_ohm match_group reading_capacitance reading_esr_ohm reading_tan_delta reading_leakage_ua meter_hz
test_v measured visual pinned_maker pinned_part_number note
"""
NAMED = ("reference", "role", "marking", "capacitance", "rated_voltage", "hole_spacing_mm")
CARDS = {"tone generator": 12, "vibrato and percussion": 1, "power supply": 1, "crossover": 2}
REPAIR = """\
# Invented: no such organ was ever built.
name = "Stage organ of 1974"
story = "A touring stage organ of 1974 came back from a damp barn with wandering tones and a \
hum that grows as it warms. Its twelve tone cards stand so close together that most of today's cans are too \
tall for them."
hours_a_day = 4
years_wanted = 10

[sections."tone generators"]
temperature_c = 42

[sections."percussion"]
temperature_c = 45

[sections."supply"]
temperature_c = 58

[sections."cabinet"]
temperature_c = 35

[cards."tone generator"]
count = 12
section = "tone generators"

[cards."vibrato and percussion"]
count = 1
section = "percussion"

[cards."power supply"]
count = 1
section = "supply"

[cards."crossover"]
count = 2
section = "cabinet"
"""


def fields(text: str) -> Fields:
    """The fields of a text "name=value; name=value", presets by their name alone."""
    found: Fields = {}
    for piece in text.replace("\n", ";").split(";"):
        name, equals, value = (part.strip() for part in piece.partition("="))
        if equals:
            found[name] = value
        elif name:
            found |= fields(PRESETS[name])
    return found


def card_positions(card: str, text: str) -> list[Fields]:
    """The positions of one card."""
    made: list[Fields] = []
    for block in text.strip().split("\nC"):
        head, _, rest = block.partition("\n")
        named = dict(zip(NAMED, (cell.strip() for cell in head.split("|")), strict=True))
        named["reference"] = f"C{named['reference'].removeprefix('C')}"
        if named["rated_voltage"]:
            named["old_rating"] = f"{named['rated_voltage']} d.c."
        made.append({**fields(card), **named, **fields(rest)})
    return made


def positions() -> list[Fields]:
    """All positions of the organ, each card once."""
    pairs = ((CARD, TONE), (VIBRATO_CARD, VIBRATO), (SUPPLY_CARD, SUPPLY), (CROSSOVER_CARD, CROSSOVER))
    return [position for card, text in pairs for position in card_positions(card, text)]


def write_organ(folder: Path) -> None:
    """Write repair.toml and positions.csv into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "repair.toml").write_text(REPAIR, encoding="utf-8", newline="\n")
    with (folder / "positions.csv").open("w", encoding="utf-8", newline="") as stream:
        writer = csv.DictWriter(stream, HEADINGS.split(), restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(positions())
