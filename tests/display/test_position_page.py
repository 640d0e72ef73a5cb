"""One position as a page: cautions first and beside the part, everything asked and answered, room to write by hand."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import date
from html import escape, unescape
from pathlib import Path
from typing import Any

import duckdb
import pytest
from display.conftest import Reporting
from display.written import TRAP, outside, text_of

from subsearch.display.charts import svg
from subsearch.display.compare import compared, offered
from subsearch.display.life_chart import life_chart
from subsearch.display.position_page import PositionPage, write_position_page
from subsearch.display.report import OF_ONE_PART, OF_TWO, Report
from subsearch.formulas import leakage
from subsearch.formulas.sources import SOURCES, sources_of
from subsearch.repair.cautions import GENERAL
from subsearch.search.answers import SAID
from subsearch.search.criteria import LABELS
from subsearch.search.sweep import LifeAt

CHART = svg(life_chart([LifeAt("A", 85.0, 2.0), LifeAt("A", 95.0, 1.0)], 55))
DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" aria-label="drawn"><path d="M0 0h9"/></svg>'
ORDER = (
    "Before you begin", "At this position", "For all work of this kind", "What is asked", "Asked", "Conceded", "Taken",
    "Why: every condition", "Its score is a sum", "To scale, and how long it lasts", "Side by side",
    "What else was found", "By hand", "The same in Python", "Where the numbers come from",
)  # fmt: skip


def page_of(con: duckdb.DuckDBPyConnection, report: Report, name: str, **changes: Any) -> PositionPage:
    choice, behind = next(
        pair for pair in zip(report.choices, report.reasons, strict=True) if pair[0].asked.position.reference == name
    )
    assert choice.found and choice.candidate
    part = choice.candidate.part
    answers = replace(choice.found, con=con).why(part["maker"], part["part_number"])
    told: dict[str, Any] = {
        "choice": choice, "catalog": Path("some/demo.duckdb"), "today": date(2026, 11, 2), "taken": True,
        "answers": answers, "near": behind.near, "two": behind.two, "conceded": ["Headroom 14 mm instead of 12 mm."],
        "compared": (choice.candidate, *behind.runners_up), "drawing": DRAWING, "chart": CHART,
        "code": "find(open_to_read(catalog), [Requirement(reference='C7')], best=50)[0]",
    }  # fmt: skip
    return PositionPage(**{**told, **changes})


def written(page: PositionPage, folder: Path) -> str:
    write_position_page(page, folder / "page.html")
    return (folder / "page.html").read_text(encoding="utf-8")


@pytest.fixture
def reservoir(demo_con: duckdb.DuckDBPyConnection, organ: Report) -> PositionPage:
    return page_of(demo_con, organ, "C302")


@pytest.fixture
def said(reservoir: PositionPage, tmp_path: Path) -> str:
    return text_of(re.sub(r"<style>.*?</style>", "", written(reservoir, tmp_path), flags=re.DOTALL))


def test_everything_is_there_in_order(said: str, reservoir: PositionPage) -> None:
    name = reservoir.choice.name
    assert said.startswith(f"{name}: one position {name} One position, on 2026-11-02, from the catalog demo.duckdb.")
    places: list[int] = []
    for heading in ORDER:
        places.append(said.index(heading, places[-1] if places else 0))
    assert places == sorted(places)


def test_cautions_stand_first_and_again_beside_the_part(said: str, reservoir: PositionPage) -> None:
    own = reservoir.choice.cautions
    assert any(one.startswith("Reservoir: ") for one in own) and any(one.startswith("Polarity: ") for one in own)
    first = said[said.index("Before you begin") : said.index("What is asked")]
    beside = said[said.index("Taken") : said.index("Why: every condition")]
    assert all(one in first and one in beside for one in own)
    assert all(one in first for one in GENERAL)
    assert GENERAL[0] in beside and "Local codes and licensed practice come first." in beside


def test_mains_and_class_are_said_twice(demo_con: duckdb.DuckDBPyConnection, organ: Report, tmp_path: Path) -> None:
    text = text_of(written(page_of(demo_con, organ, "C304"), tmp_path))
    assert text.count("Mains: unplug, and work behind an isolating transformer.") == 2
    assert text.count("only a part of that class or stricter") == 2


def test_nothing_says_that_a_part_is_safe(said: str) -> None:
    assert re.findall(r"[^.]*\bsafe\b[^.]*\.", said)
    assert all("Nothing here says that a part is safe" in one for one in re.findall(r"[^.]*\bsafe\b[^.]*\.", said))


def test_the_part_is_explained(said: str, reservoir: PositionPage) -> None:
    candidate = reservoir.choice.candidate
    assert candidate
    assert all(f"{LABELS[one.name]} {SAID[one.answer]} {one.sentence}" in said for one in reservoir.answers)
    assert len(reservoir.answers) > 6
    assert f"order {offered(candidate)}" in said
    assert f"{candidate.total:.3f}" in said
    score = said[said.index("Its score is a sum") :]
    assert all(f"+ {name}" in score for name in candidate.contributions)
    assert "Conceded Headroom 14 mm instead of 12 mm." in said
    assert "find(open_to_read(catalog), [Requirement(reference='C7')], best=50)[0]" in said
    need = reservoir.choice.asked.requirement
    assert need
    rows = compared(reservoir.compared, need)
    assert len(rows) > 15 and all(" ".join(" ".join([label, *cells]).split()) in said for label, cells in rows)


def test_a_part_that_is_only_looked_at_is_not_called_taken(
    demo_con: duckdb.DuckDBPyConnection, organ: Report, tmp_path: Path
) -> None:
    said = text_of(written(page_of(demo_con, organ, "C302", taken=False), tmp_path))
    assert "Looked at, not taken" in said and "the part looked at" in said and "the part taken" not in said


def test_near_misses_are_told(demo_con: duckdb.DuckDBPyConnection, organ: Report, tmp_path: Path) -> None:
    page = page_of(demo_con, organ, "C305", two=("Two of them in parallel would do.",))
    assert page.near
    said = text_of(written(page, tmp_path))
    assert all(one in said for one in page.near)
    assert "Two in place of one, never chosen by itself: Two of them in parallel would do." in said
    assert "two in parallel" not in text_of(written(replace(page, two=()), tmp_path)).lower()


def test_there_is_room_to_write_by_hand(said: str, reservoir: PositionPage, tmp_path: Path) -> None:
    page = written(reservoir, tmp_path)
    hand = page[page.index(">By hand<") : page.index("The same in Python")]
    assert hand.count('class="box"') == 6
    text = text_of(hand)
    for one in (
        "old part, before",
        "after fitting",
        "date",
        "ESR",
        "leakage",
        "discharged through a resistor",
        "fitted on",
    ):
        assert one in text
    assert "the old plus faced: rectifier;" in text
    position = replace(reservoir.choice.asked.position, reading_esr_ohm=1.2, plus_towards=None)
    asked = replace(reservoir.choice.asked, position=position)
    page = written(replace(reservoir, choice=replace(reservoir.choice, asked=asked)), tmp_path)
    assert '<th scope="row">ESR</th><td>1.2 Ω</td><td></td><td></td>' in page
    assert "the old plus faced: ;" in text_of(page)


def test_where_the_numbers_come_from(said: str, reservoir: PositionPage, tmp_path: Path) -> None:
    end = said[said.index("Where the numbers come from") :]
    for key in sources_of(law for law in OF_ONE_PART if law is not leakage):
        assert f"{key} : {SOURCES[key].title}" in end and f"({SOURCES[key].status})" in end
    only = sources_of((leakage, *OF_TWO)).keys() - sources_of(law for law in OF_ONE_PART if law is not leakage).keys()
    assert len(only) > 10 and not any(f"{key} : {SOURCES[key].title}" in end for key in only)
    asked = reservoir.choice.asked
    assert asked.requirement
    leaks = replace(asked, requirement=replace(asked.requirement, leakage_most_a=1e-6))
    page = replace(reservoir, choice=replace(reservoir.choice, asked=leaks), two=("Two would do.",))
    end = text_of(written(page, tmp_path))
    assert all(f"{key} : {SOURCES[key].title}" in end for key in sources_of((*OF_ONE_PART, *OF_TWO)))


def test_the_page_asks_for_nothing_outside_itself(reservoir: PositionPage, tmp_path: Path) -> None:
    page = written(reservoir, tmp_path)
    assert page.count("<svg") == 2
    assert outside(page) == []
    style = re.findall(r"<style>(.*?)</style>", page, re.DOTALL)[0]
    assert style.count("{") == style.count("}") > 40, "a brace too many would undo the rule behind it"


def test_hostile_text_stays_text(reporting: Reporting, demo_con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    quoted = TRAP.replace('"', '""')
    (tmp_path / "repair.toml").write_text('name = "Radio"\n', encoding="utf-8")
    (tmp_path / "positions.csv").write_text(
        "reference,marking,old_technology,note,capacitance,rated_voltage,polarity,plus_towards\n"
        f'C1,"{quoted}","{quoted}","{quoted}",47 µF,25 V,polar,"{quoted}"\n',
        encoding="utf-8",
    )
    hostile = {"near": (TRAP,), "two": (TRAP,), "conceded": (TRAP,), "code": TRAP, "catalog": Path("/<b onclick=x>")}
    page = written(page_of(demo_con, reporting(tmp_path), "C1", **hostile), tmp_path)
    assert outside(page) == []
    assert TRAP not in page
    assert page.count(escape("<script>")) >= 9
    ET.fromstring(page[page.index("<svg") : page.index("</svg>") + 6])


def test_a_position_without_a_part_says_why(reporting: Reporting, tmp_path: Path) -> None:
    (tmp_path / "repair.toml").write_text('name = "Radio"\n', encoding="utf-8")
    (tmp_path / "positions.csv").write_text(
        "reference,marking,rated_voltage,mains\nC1,x,19 kV,yes\nC2,x,,\n", encoding="utf-8"
    )
    report = reporting(tmp_path)
    for choice in report.choices:
        page = written(PositionPage(choice=choice, catalog=Path("c"), today=date(2026, 11, 2)), tmp_path)
        said = unescape(text_of(page))
        assert f"No part {choice.sentence}" in said
        assert all(one in said for one in (*GENERAL, *choice.cautions))
        absent = ("Side by side", "To scale", "Why: every condition", "Its score", "The same in Python", "Conceded")
        assert not any(one in said for one in absent)
