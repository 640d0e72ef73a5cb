"""One position of the report in words: what was asked, what was chosen and why, and what was not."""

from collections.abc import Sequence
from typing import Any

import pandas as pd

from subsearch.display.asked import conditions
from subsearch.display.charts import COLUMNS
from subsearch.display.words import adding_up, life_text, margin_text, span_text, together, uncapped_text
from subsearch.formulas.life import CEILING_Y
from subsearch.repair.choosing import Choice
from subsearch.repair.reasons import Reasons
from subsearch.search.answers import Candidate, printed
from subsearch.search.requirement import Requirement
from subsearch.search.ways import AS_MADE, BENT_NAMES, BY_NAME
from subsearch.shopping.files import described, money
from subsearch.shopping.plan import ShoppingList
from subsearch.units import show


def view_of(choice: Choice, reasons: Reasons, shopping: ShoppingList) -> dict[str, Any]:
    """What the template of a position is filled with."""
    asked, candidate, found = choice.asked, choice.candidate, choice.found
    position, requirement = asked.position, asked.requirement
    return {
        "name": choice.name,
        "role": position.role or "no role given",
        "marking": position.marking or "",
        "old": position.old_technology or "",
        "note": position.note or "",
        "pieces": requirement.pieces if requirement else 0,
        "asked": conditions(requirement) if requirement else [],
        "notes": [note for note in asked.notes if note != choice.sentence],
        "part": candidate.name if candidate else "",
        "described": described(candidate.part) if candidate else "",
        "sentence": choice.sentence,
        "numbers": _numbers(candidate, requirement) if candidate and requirement else [],
        "bought": _bought(choice.name, shopping),
        "cautions": choice.cautions,
        "ranked": _ranked(candidate, reasons),
        "found": found,
        "reasons": reasons,
    }


def _numbers(one: Candidate, need: Requirement) -> list[tuple[str, str]]:
    """What the chosen part leaves: room by direction, offset of the leads, life, and what else was asked."""
    mounted = "" if one.made["way"] in AS_MADE else one.made["way"]
    told = [("mounted", mounted), ("room", _room(one, need)), ("leads", _leads(one, need))]
    told.append(("life", _life(one, need)))
    if need.esr_least_ohm is not None or need.esr_most_ohm is not None:
        told.append(("ESR", f"{printed('esr_ohm', one.made['esr_at_ohm'])} at {show(need.esr_hz, 'Hz')}"))
    if need.leakage_most_a is not None and one.made["leakage_a"] is not None:
        told.append(("leakage", f"{printed('leakage_a', one.made['leakage_a'])} at most when new"))
    if need.ripple_a is not None and not one.made["not_worn_by_heat"]:
        ripple = printed("ripple_a", one.part["ripple_a"])
        told.append(("ripple", f"{ripple} rated at {printed('ripple_hz', one.part['ripple_hz'])}"))
    return [(label, words) for label, words in told if words]


def _room(one: Candidate, need: Requirement) -> str:
    return together(
        [
            (m.words, _mm(one.made[m.made]).removesuffix(" mm"))
            for m in BY_NAME[one.made["way"]].margins
            if getattr(need, m.asked_by) is not None
        ]
    )


def _mm(left: float | None) -> str:
    return printed("margin_mm", None if left is None else round(left, 2) + 0.0)


def _leads(one: Candidate, need: Requirement) -> str:
    offset = one.made["worked_mm"]
    if need.hole_spacing_mm is None:
        return ""
    if one.made["way"] in BENT_NAMES:
        return "bent; see the cautions for the length they need"
    if one.made["style"] == "axial":
        return f"{_mm(one.made['span_margin_mm'])} spare between the holes after both bends"
    if offset is None:
        return "not stated"
    return f"{_mm(offset)} off each hole" if round(offset, 2) else "meet the holes"


def _life(one: Candidate, need: Requirement) -> str:
    """The figure, its span over the published laws, and the hours without the ceiling."""
    hours, span = uncapped_text(one), span_text(one, need.temperature_uncertain_k)
    figure = f"{life_text(one)}{f'; {span}' if span else ''}"
    return f"{figure}{f'; {hours} switched on without the ceiling' if hours else ''}"


def _bought(name: str, shopping: ShoppingList) -> list[str]:
    """From whom this position's part is ordered, and what one piece costs."""
    lines = [line for line in shopping.lines if name in line.positions]
    return [
        f"{line.offer.printed['supplier']}, {money(line.purchase.unit_price)} "
        f"{line.offer.printed['currency'] or '(currency not stated)'} each"
        for line in lines
    ]


def _ranked(chosen: Candidate | None, reasons: Reasons) -> list[dict[str, Any]]:
    """The chosen part and the runners-up, with contributions that add up."""
    everyone = ([chosen] if chosen else []) + list(reasons.runners_up)
    return [
        {
            "name": one.name,
            "unbeaten": one.unbeaten,
            "chosen": one is chosen,
            "life": life_text(one),
            "margin": margin_text(one) or "not asked",
            "worth": adding_up(one.contributions),
            "total": f"{one.total:.3f}",
        }
        for one in everyone
    ]


def weakest_first(choices: Sequence[Choice]) -> pd.DataFrame:
    """The choices as the table of the chart: shortest life first, then least room; not stated before all others."""
    chosen = [(choice.name, choice.candidate) for choice in choices if choice.candidate is not None]
    rows = sorted((_row(name, one) for name, one in chosen), key=_weakness)
    table = pd.DataFrame(rows, columns=list(COLUMNS))
    return table.astype({"years": float, "margin_mm": float})


def _row(name: str, one: Candidate) -> tuple[str, float | None, str, float | None, str]:
    limited = not one.made["not_worn_by_heat"]
    years = one.made["years"] if limited else None
    return name, years, life_text(one), one.made["tightest_mm"], margin_text(one) or "not asked"


def _weakness(row: tuple[str, float | None, str, float | None, str]) -> tuple[float, float]:
    _, years, life, margin, _ = row
    unlimited = float("inf") if life == "not limited by heat" else float("-inf")
    return unlimited if years is None else years, float("inf") if margin is None else margin


def what_to_see(table: pd.DataFrame) -> str:
    """What the chart shows, said in words: the shortest life, the least room, and what has no number."""
    unknown = list(table.position[table.life == "not stated"])
    worn = table.dropna(subset=["years"])
    below, tight = worn[worn.years < CEILING_Y], table.dropna(subset=["margin_mm"])
    said = [f"Life is not stated for {', '.join(unknown)}: take it for the weakest."] if unknown else []
    if len(below):
        said.append(f"The shortest life is that of {below.position.iloc[0]}: {below.life.iloc[0]}.")
    elif len(worn):
        said.append(f"Every part that heat wears out reaches the ceiling of {CEILING_Y:g} years.")
    if len(tight):
        least = tight.sort_values("margin_mm", kind="stable").iloc[0]
        short = f"{least.margin}, so the body is too large there" if least.margin_mm < 0 else f"{least.margin} to spare"
        said.append(f"The least room is left at {least.position}: {short}.")
    return " ".join(said)
