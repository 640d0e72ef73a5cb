"""The printable page of a repair: what was asked and chosen, the shopping list, the cautions. One file, no request."""

from collections.abc import Sequence
from datetime import date
from itertools import groupby
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from subsearch.display.words import life_text, margin_text, money_text
from subsearch.repair.asking import unchecked
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.repair.folder import Repair
from subsearch.search.answers import part_name, printed
from subsearch.shopping.files import described, money
from subsearch.shopping.plan import Line, ShoppingList
from subsearch.units import counted


def write_page(
    repair: Repair, choices: Sequence[Choice], shopping: ShoppingList, catalog: Path, file: Path, today: date
) -> None:
    """Write the page as HTML; every text from a list or a folder is escaped."""
    pages = Environment(
        loader=PackageLoader("subsearch.display", "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    text = pages.get_template("page.html").render(
        repair=repair,
        positions=[_row(choice) for choice in choices],
        chosen=sum(choice.candidate is not None for choice in choices),
        suppliers=_by_supplier(shopping),
        shopping=shopping,
        unchecked=_unchecked(choices),
        money=money_text,
        counted=counted,
        cautions=GENERAL,
        catalog=catalog.name,
        today=today.isoformat(),
    )
    file.write_text(text, encoding="utf-8")


def _row(choice: Choice) -> dict[str, Any]:
    asked, candidate = choice.asked, choice.candidate
    position, requirement = asked.position, asked.requirement
    return {
        "name": choice.name,
        "role": position.role or "no role given",
        "marking": position.marking or "",
        "pieces": requirement.pieces if requirement else 0,
        "asked": _asked(choice),
        "part": candidate.name if candidate else "",
        "described": described(candidate.part) if candidate else "",
        "margin": margin_text(candidate) if candidate else "",
        "life": life_text(candidate) if candidate else "",
        "sentence": choice.sentence,
        "notes": [note for note in asked.notes if note != choice.sentence],
        "cautions": choice.cautions,
    }


def _unchecked(choices: Sequence[Choice]) -> list[tuple[str, str]]:
    """What is recorded but not checked, and at which positions."""
    where: dict[str, list[str]] = {}
    for choice in choices:
        for name in unchecked(choice.asked.position):
            where.setdefault(name, []).append(choice.asked.position.reference)
    return [(name, ", ".join(references)) for name, references in where.items()]


def _asked(choice: Choice) -> str:
    requirement = choice.asked.requirement
    if requirement is None:
        return "not asked"
    words = []
    if requirement.capacitance_low_f is not None and requirement.capacitance_high_f is not None:
        low, high = (
            printed("capacitance_f", one) for one in (requirement.capacitance_low_f, requirement.capacitance_high_f)
        )
        words.append(f"{low} to {high}")
    if requirement.rated_v is not None:
        words.append(f"{printed('rated_v', requirement.rated_v)} or more")
    if requirement.rated_ac_v is not None:
        words.append(f"{printed('rated_ac_v', requirement.rated_ac_v)} a.c. or more")
    if requirement.safety_class:
        words.append(f"class {requirement.safety_class}")
    if requirement.reverses:
        words.append("bipolar")
    if requirement.headroom_mm is not None:
        words.append(f"headroom {printed('headroom_mm', requirement.headroom_mm)}")
    if requirement.working_c is not None:
        words.append(f"at {printed('working_c', requirement.working_c)}")
    return ", ".join(words)


def _bought(line: Line) -> dict[str, Any]:
    name = part_name(line.part["maker"], line.part["part_number"])
    return {"line": line, "part": name, "described": described(line.part), "each": money(line.purchase.unit_price)}


def _by_supplier(shopping: ShoppingList) -> list[tuple[str, list[dict[str, Any]]]]:
    return [
        (supplier, [_bought(line) for line in lines])
        for supplier, lines in groupby(shopping.lines, key=lambda line: line.offer.printed["supplier"])
    ]
