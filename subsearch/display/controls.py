"""The panel's controls: which column of positions.csv each fills, its label, what it means, where its slider ends.

The last group's come from repair.toml in a whole repair; what they say here is then tried, and not written there.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from subsearch.repair.desk import POSITION
from subsearch.repair.positions import COLUMNS
from subsearch.search.requirement import CLASSES_TAKEN, LEAD_STYLES
from subsearch.terms import ROLES

Control = dict[str, Any]


def _text(name: str, label: str, hint: str) -> Control:
    return {"name": name, "label": label, "hint": hint, "kind": "text"}


def _yes(name: str, label: str, hint: str) -> Control:
    return {"name": name, "label": label, "hint": hint, "kind": "yes"}


def _choice(name: str, label: str, hint: str, words: Sequence[str], empty: str = "not said") -> Control:
    options = [["", empty], *([word, word] for word in words)]
    return {"name": name, "label": label, "hint": hint, "kind": "choice", "options": options}


def _measure(name: str, label: str, hint: str, unit: str, reach: tuple[float, float, float]) -> Control:
    low, high, step = reach
    return {
        "name": name, "label": label, "hint": hint, "kind": "measure",
        "unit": unit, "low": low, "high": high, "step": step,
    }  # fmt: skip


SMALL, WIDE = (0.5, 40.0, 0.5), (0.5, 60.0, 0.5)
GROUPS: tuple[tuple[str, bool, tuple[Control, ...]], ...] = (
    (
        "What stood there",
        True,
        (
            _text("reference", "Name", "as on the board, like C104"),
            _text("capacitance", "Capacitance", "of the old part, like 47 µF"),
            _text("rated_voltage", "Voltage", "like 25 V or 275 V a.c."),
            _choice("role", "Role", "what it does in the circuit", ROLES),
            _choice("polarity", "Polarity", "of the old part", ("polar", "bipolar")),
            _text("plus_towards", "Plus towards", "left, right, or a name"),
        ),
    ),
    (
        "Room, from the midpoint of the holes",
        True,
        (
            _measure("headroom_mm", "Headroom", "free height above the board, like 12 mm", "mm", WIDE),
            _measure("left_mm", "Left", "free to the left, in the line of the holes", "mm", SMALL),
            _measure("right_mm", "Right", "free to the right, in the line of the holes", "mm", SMALL),
            _measure("front_mm", "Front", "free in front of the line of the holes", "mm", SMALL),
            _measure("back_mm", "Back", "free behind the line of the holes", "mm", SMALL),
            _measure("free_diameter_mm", "Free diameter", "of a round space around the midpoint", "mm", WIDE),
        ),
    ),
    (
        "Holes and leads",
        True,
        (
            _measure("hole_spacing_mm", "Hole spacing", "between the two holes, like 2.5 mm", "mm", (0.5, 60.0, 0.5)),
            _measure("hole_diameter_mm", "Hole diameter", "of each hole, like 1 mm", "mm", (0.4, 3.0, 0.1)),
            _choice("plated", "Plated", "whether the holes are plated through", ("yes", "no"), "not known"),
            _choice("lead_style", "Lead style", "that is wanted", LEAD_STYLES, "any"),
            _yes("may_lie_flat", "Lie flat", "it need not stand; give the hole spacing too"),
        ),
    ),
    (
        "Heat and life",
        True,
        (
            _measure(
                "temperature_c", "Temperature", "at the part while it works, like 55 °C", "°C", (20.0, 110.0, 1.0)
            ),
            _measure("hot_part_k", "Hot part adds", "what a hot part beside it adds, in K", "K", (0.0, 40.0, 1.0)),
            _measure("temperature_uncertain_k", "Uncertain by", "up and down, in K", "K", (0.0, 20.0, 1.0)),
        ),
    ),
    (
        "Measured in the circuit",
        False,
        (
            _text("dc_lowest_v", "D.c. lowest", "in V, with its sign; switching on and off included"),
            _text("dc_highest_v", "D.c. highest", "in V, the same; both decide the voltage needed"),
            _text("ac_peak_v", "A.c. peak", "on top of the d.c., in V"),
            _text("fault_v", "Fault voltage", "the rail that can arrive, in V"),
            _text("supply_rail", "Supply rail", "that it hangs on, like +15 V"),
            _text("ripple_ma", "Ripple current", "like 250 mA"),
            _text("ripple_hz", "Ripple at", "its frequency, like 100 Hz"),
            _text("esr_least_ohm", "ESR at least", "like 0.1 Ω"),
            _text("esr_most_ohm", "ESR at most", "like 0.5 Ω"),
            _text("esr_hz", "ESR at", "its frequency, like 100 kHz"),
            _text("leakage_most_ua", "Leakage", "like 5 µA, allowed as makers state it"),
        ),
    ),
    (
        "Mains, and more of the old part",
        False,
        (
            _yes("mains", "On the mains", "it stands in a mains circuit"),
            _choice("safety_class", "Safety class", "by the old marking", tuple(CLASSES_TAKEN), "none, or not known"),
            _text("old_technology", "Technology", "like wet aluminium"),
            _text("old_tolerance", "Tolerance", "of the old part, like ±10 %"),
            _text("old_rating", "Old rating", "like 63 V, where not as asked"),
            _text("marking", "Marking", "what is printed on it"),
        ),
    ),
    (
        "Of the whole repair",
        True,
        (
            _measure("hours_a_day", "Hours a day", "switched on, like 4; empty is 24", "", (0.5, 24.0, 0.5)),
            _measure("years_wanted", "Years wanted", "of life, 15 at most", "", (0.5, 15.0, 0.5)),
            _text("pieces", "Pieces", "how many of them, like 12"),
        ),
    ),
)
NAMED = ("reference",)  # what the name of a repair's position says already
LABELS: Mapping[str, str] = {one["name"]: one["label"] for _, _, controls in GROUPS for one in controls}
COMMON = tuple(name for name in LABELS if name not in COLUMNS)


def groups(positions: Sequence[str] = ()) -> list[dict[str, Any]]:
    """The groups as the form takes them; with the positions of a repair to choose from, if it is of one.

    >>> [one["title"] for one in groups(["C1", "C2"])][0], COMMON
    ('Which position', ('hours_a_day', 'years_wanted', 'pieces'))
    """
    which = {
        "name": POSITION, "label": "Position", "hint": "of this repair", "kind": "choice",
        "options": [[name, name] for name in positions],
    }  # fmt: skip
    first = [{"title": "Which position", "open": True, "controls": [which]}] if positions else []
    known = NAMED if positions else ()
    return first + [
        {"title": title, "open": is_open, "controls": [one for one in its if one["name"] not in known]}
        for title, is_open, its in GROUPS
    ]
