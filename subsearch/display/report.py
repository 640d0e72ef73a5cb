"""The report of a repair: what came of it, what to buy, why each choice, and where it all comes from.

One HTML file that asks for nothing outside itself. Its parts are the templates in `templates/`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from pathlib import Path
from typing import Any

from markupsafe import Markup

from subsearch.catalog.facts import Loaded
from subsearch.catalog.rates import Rate
from subsearch.display.charts import life_and_margin, svg
from subsearch.display.choice import view_of, weakest_first, what_to_see
from subsearch.display.drawing import side_by_side
from subsearch.display.pages import filled
from subsearch.formulas import (
    axials,
    buying,
    cans,
    combining,
    coupling,
    discharge,
    envelope,
    fits,
    geometry,
    holes,
    inside_can,
    laid_flat,
    leads,
    leakage,
    life,
    life_span,
    life_wanted,
    lifetime,
    loss,
    mounting,
    mounting_cautions,
    mounting_together,
    on_end,
    pair_ripple,
    pair_tolerance,
    practice,
    spaces,
    two_bodies,
    voltage,
)
from subsearch.formulas.sources import sources_of
from subsearch.repair.asking import unchecked
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.repair.folder import Repair
from subsearch.repair.placing import placed
from subsearch.repair.reasons import Reasons
from subsearch.search.answers import part_name
from subsearch.search.ranking import CONTRIBUTIONS
from subsearch.shopping.files import described, money
from subsearch.shopping.plan import Line, ShoppingList

OF_ONE_PART = (
    *(life, life_wanted, lifetime, life_span, loss, leakage, envelope, geometry, laid_flat, leads, fits, holes),
    *(mounting, mounting_cautions, on_end, axials, cans, spaces, voltage, coupling, practice, discharge, buying),
)
OF_TWO = (combining, pair_ripple, pair_tolerance, two_bodies, mounting_together, inside_can)
USED = (*OF_ONE_PART, *OF_TWO)  # the laws behind the numbers of a report


@dataclass(frozen=True)
class Report:
    """All that a report tells: the repair, a choice and its reasons for each position, the list, and the catalog."""

    repair: Repair
    choices: Sequence[Choice]
    reasons: Sequence[Reasons]
    shopping: ShoppingList
    lists: Sequence[Loaded]
    rates: Sequence[Rate]
    catalog: Path
    today: date


def write_report(report: Report, file: Path) -> None:
    """Write the report as HTML; every text from a list or a folder is escaped."""
    file.write_text(filled("report.html", _told(report)), encoding="utf-8")


def _told(report: Report) -> dict[str, Any]:
    shopping, choices = report.shopping, report.choices
    table = weakest_first(choices)
    return {
        "report": report,
        "repair": report.repair,
        "shopping": shopping,
        "positions": [
            view_of(choice, its, shopping) | {"drawn": _drawn(choice)}
            for choice, its in zip(choices, report.reasons, strict=True)
        ],
        "chosen": len(table),
        "suppliers": _by_supplier(shopping),
        "chart": Markup(svg(life_and_margin(table))) if len(table) else "",
        "to_see": what_to_see(table),
        "unchecked": _unchecked(choices),
        "cautions": GENERAL,
        "contributions": CONTRIBUTIONS,
        "sources": sources_of(USED),
    }


def _drawn(choice: Choice) -> str:
    """The chosen part in its place, drawn small; empty where none is chosen."""
    if choice.candidate is None or choice.asked.requirement is None:
        return ""
    place = placed(choice.asked.requirement, choice.candidate, choice.asked.position.plus_towards)
    (drawn,) = side_by_side([place])
    return Markup(drawn)


def _unchecked(choices: Sequence[Choice]) -> list[tuple[str, str]]:
    """What is recorded but not checked, and at which positions."""
    where: dict[str, list[str]] = {}
    for choice in choices:
        for name in unchecked(choice.asked.position):
            where.setdefault(name, []).append(choice.asked.position.reference)
    return [(name, _named(references, len(choices))) for name, references in where.items()]


def _named(references: list[str], among: int) -> str:
    """The references, or how many they are where nobody would read them all."""
    return ", ".join(references) if len(references) <= 12 else f"{len(references)} of {among} positions"


def _bought(line: Line) -> dict[str, Any]:
    name = part_name(line.part["maker"], line.part["part_number"])
    return {"line": line, "part": name, "described": described(line.part), "each": money(line.purchase.unit_price)}


def _by_supplier(shopping: ShoppingList) -> list[tuple[str, list[dict[str, Any]]]]:
    return [
        (supplier, [_bought(line) for line in lines])
        for supplier, lines in groupby(shopping.lines, key=lambda line: line.offer.printed["supplier"])
    ]
