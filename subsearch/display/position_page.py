"""One position as a page to print: cautions, what is asked, the part and why, and room for what is written by hand.

One HTML file that asks for nothing outside itself.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from types import ModuleType
from typing import Any

from markupsafe import Markup

from subsearch.display.choice import view_of
from subsearch.display.compare import SAID as COMPARED_SAID
from subsearch.display.compare import compared, differ, offered
from subsearch.display.pages import filled
from subsearch.display.report import OF_ONE_PART, OF_TWO
from subsearch.display.words import adding_up
from subsearch.formulas import leakage
from subsearch.formulas.sources import sources_of
from subsearch.repair.cautions import GENERAL
from subsearch.repair.choosing import Choice
from subsearch.repair.positions import Position
from subsearch.repair.reasons import Reasons
from subsearch.search.answers import SAID, Answer, Candidate, printed
from subsearch.search.requirement import Requirement
from subsearch.shopping.plan import ShoppingList

NOT_A_LIST = ShoppingList((), (), None)  # one position by itself: nothing is planned
READINGS = {
    "capacitance": "reading_capacitance_f",
    "ESR": "reading_esr_ohm",
    "loss factor": "reading_tan_delta",
    "leakage": "reading_leakage_a",
}


@dataclass(frozen=True, kw_only=True)
class PositionPage:
    """All that a page tells of one position.

    choice: what was asked and found, the part, its cautions. taken: whether the builder took that part, or only looks
    at it. answers: every condition asked of the part. near, two: sentences of near misses and of two in place of one.
    conceded: what was given up on the way. compared: parts side by side. drawing, chart: SVG made here, which is put
    in as it is. code: the line of Python that asks the same.
    """

    choice: Choice
    catalog: Path
    today: date
    taken: bool = False
    answers: Sequence[Answer] = ()
    near: Sequence[str] = ()
    two: Sequence[str] = ()
    conceded: Sequence[str] = ()
    compared: Sequence[Candidate] = ()
    drawing: str = ""
    chart: str = ""
    code: str = ""


def write_position_page(page: PositionPage, file: Path) -> None:
    """Write the page as HTML; every text from a list, a folder or a control is escaped."""
    file.write_text(filled("one_position.html", _told(page)), encoding="utf-8")


def _told(page: PositionPage) -> dict[str, Any]:
    choice, candidate = page.choice, page.choice.candidate
    reasons = Reasons(near=tuple(page.near), two=tuple(page.two))
    asked = choice.asked.requirement
    return {
        "page": page,
        "row": view_of(choice, reasons, NOT_A_LIST) | {"bought": [offered(candidate)] if candidate else []},
        "cautions": GENERAL,
        "first": GENERAL[0],
        "why": [(one.name, SAID[one.answer], one.sentence) for one in page.answers],
        "score": adding_up(candidate.contributions) if candidate else {},
        "total": f"{candidate.total:.3f}" if candidate else "",
        "sides": _side_by_side(page.compared, choice) if asked else [],
        "compared_said": COMPARED_SAID,
        "drawing": Markup(_addressless(page.drawing)),
        "chart": Markup(_addressless(page.chart)),
        "readings": _readings(choice.asked.position),
        "plus_towards": choice.asked.position.plus_towards or "",
        "sources": sources_of(_laws(asked, of_two=bool(page.two))),
    }


def _laws(asked: Requirement | None, of_two: bool) -> list[ModuleType]:
    """The laws behind the page's numbers: of leakage and of two parts only where such numbers stand in it."""
    of_leakage = asked is not None and asked.leakage_most_a is not None
    laws = [*OF_ONE_PART, *(OF_TWO if of_two else ())]
    return [law for law in laws if law is not leakage or of_leakage]


def _side_by_side(candidates: Sequence[Candidate], choice: Choice) -> list[tuple[str, list[str], bool]]:
    need = choice.asked.requirement
    return [] if need is None else [(label, cells, differ(cells)) for label, cells in compared(candidates, need)]


def _readings(position: Position) -> list[tuple[str, str]]:
    """What is measured, and what was read of the old part, if it was."""
    read = {label: getattr(position, field) for label, field in READINGS.items()}
    return [(label, "" if value is None else printed(READINGS[label], value)) for label, value in read.items()]


def _addressless(drawn: str) -> str:
    """A drawing without even the address that names its format: inside a page it needs none."""
    return re.sub(r'\sxmlns(:\w+)?="[^"]*"', "", drawn)
