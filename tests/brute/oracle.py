"""Every condition of a requirement answered on every part, in plain Python: yes, no, or None for not stated.

A condition is answered once for each set of claims that occurs, which is the same as once for each part and quicker.
"""

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal, localcontext
from typing import Any

from brute import conditions as on
from brute.body import CLAIMS, body, lead_spacing
from brute.conditions import Need
from brute.laws import DIGITS, Answer, all_of
from brute.merged import Claims, words

NUMBERS = words("""
capacitance_f capacitance_low_f capacitance_high_f rated_v rated_ac_v hole_spacing_mm hole_diameter_mm free_diameter_mm
left_mm right_mm front_mm back_mm headroom_mm working_c hours_a_day life_wanted_y ripple_a ripple_hz esr_least_ohm
esr_most_ohm esr_hz leakage_most_a
""")
OTHERS = words("""
reference pieces role old_tolerance_pct reverses hole_plated may_lie_flat technologies lead_style
safety_class conditions in_stock
""")
FIELDS = (*NUMBERS, *OTHERS)
UNLESS_SAID: dict[str, Any] = {
    "pieces": 1,
    "reverses": False,
    "may_lie_flat": False,
    "hours_a_day": Decimal(24),
    "conditions": ("new", "old stock"),
    "in_stock": True,
}
WINDOWS: dict[str | None, tuple[int, int]] = {  # per cent below and above the old nominal value
    None: (-20, 50),
    **dict.fromkeys(("coupling", "bypass", "bootstrap", "feedback leg"), (0, 100)),
    "rail decoupling": (-20, 100),
    **dict.fromkeys(("reservoir", "regulator output"), (-10, 50)),
    **dict.fromkeys(("timing", "filter or equaliser", "loudspeaker crossover"), (-5, 5)),
    "interference suppression": (-20, 20),
}
EXACT = ("timing", "filter or equaliser", "loudspeaker crossover")
USUAL = ("wet aluminium", "polymer aluminium", "hybrid aluminium", "film PET", "film PP", "ceramic C0G")
FILM_AND_CERAMIC = ("film PET", "film PP", "ceramic C0G")

Part = tuple[str, str]
Answers = tuple[Answer, ...]

CONDITIONS: dict[str, Callable[..., Answer]] = {
    one.__name__: one
    for one in (
        *(on.capacitance, on.voltage, on.voltage_ac, on.polarity, on.technology, body, lead_spacing, on.hole),
        *(on.lead_style, on.temperature, on.life, on.ripple, on.esr, on.leakage, on.safety, on.offer),
    )
}


@dataclass(frozen=True)
class Column:
    """The different sets of claims that a condition looks at, and which of them each part has."""

    answer: Callable[..., Answer]
    claims: list[tuple[Any, ...]]
    of_part: list[int]


def column(answer: Callable[..., Answer], parts: list[Claims]) -> Column:
    """A condition with all that it will be asked about."""
    names = CLAIMS if answer in (body, lead_spacing) else tuple(inspect.signature(answer).parameters)[1:]
    places: dict[tuple[Any, ...], int] = {}
    of_part = [places.setdefault(tuple(part[name] for name in names), len(places)) for part in parts]
    return Column(answer, list(places), of_part)


@dataclass(frozen=True)
class Told:
    """For each part of the oracle its answers, in the order of CONDITIONS; the kept parts and the open ones."""

    answers: list[Answers]
    kept: set[Part]
    left_open: set[Part]


class Oracle:
    """Answers requirements on the parts it is given."""

    def __init__(self, parts: list[Claims]) -> None:
        self.parts = [(str(part["maker"]), str(part["part_number"])) for part in parts]
        self.columns = [column(answer, parts) for answer in CONDITIONS.values()]

    def told(self, need: Need) -> Told:
        """What is answered on each part, and which parts are kept and open."""
        need = completed(need)
        with localcontext(prec=DIGITS):
            asked = [[one.answer(need, *claims) for claims in one.claims] for one in self.columns]
        by_part = (
            [by_claims[place] for place in one.of_part] for one, by_claims in zip(self.columns, asked, strict=True)
        )
        joined: dict[Answers, tuple[Answers, Answer]] = {}
        rows = [joined.setdefault(row, (row, all_of(row))) for row in zip(*by_part, strict=True)]
        kept, left_open = (
            {part for part, (_, answer) in zip(self.parts, rows, strict=True) if answer is wanted}
            for wanted in (True, None)
        )
        return Told([row for row, _ in rows], kept, left_open)


def completed(asked: Need) -> Need:
    """A need with every field: what is not asked is None, but for the defaults and for what the role asks."""
    need = {**dict.fromkeys(FIELDS), **UNLESS_SAID, **asked}
    if need["technologies"] is None:
        class_2 = () if need["role"] in (*EXACT, "coupling", "feedback leg") else ("ceramic class 2",)
        usual = FILM_AND_CERAMIC if need["role"] == "interference suppression" else USUAL
        need["technologies"] = (*usual, *class_2)
    low, high = WINDOWS[need["role"]]
    if need["role"] in EXACT and need["old_tolerance_pct"] is not None:
        below, above = need["old_tolerance_pct"]
        low, high = max(low, below), min(high, above)
    if need["capacitance_f"] is not None:
        if need["capacitance_low_f"] is None:
            need["capacitance_low_f"] = need["capacitance_f"] * (100 + low) / 100
        if need["capacitance_high_f"] is None:
            need["capacitance_high_f"] = need["capacitance_f"] * (100 + high) / 100
    return need
