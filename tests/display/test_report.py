"""The report: every position with what was asked, chosen and why; one file that asks for nothing outside itself."""

import re
import xml.etree.ElementTree as ET
from decimal import Decimal
from html import escape, unescape
from pathlib import Path

import pytest
from display.conftest import Reporting
from display.written import TRAP, outside, text_of
from house.common import PACKAGE

from subsearch.display.report import USED, Report, write_report
from subsearch.formulas.sources import SOURCES
from subsearch.repair.cautions import GENERAL
from subsearch.repair.reasons import FEW, MOST_REFUSED
from subsearch.search.criteria import LABELS
from subsearch.search.ranking import CONTRIBUTIONS


def written(report: Report, folder: Path) -> str:
    write_report(report, folder / "report.html")
    return (folder / "report.html").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def page(organ: Report, tmp_path_factory: pytest.TempPathFactory) -> str:
    return written(organ, tmp_path_factory.mktemp("report"))


def sections(page: str) -> dict[str, str]:
    """The text of each position's section, by the position's name."""
    found = re.findall(r'<section class="position">(.*?)</section>', page, re.DOTALL)
    return {unescape(re.findall(r"<h3><strong>(.*?)</strong>", one)[0]): one for one in found}


def test_every_position_is_there_in_order(page: str, organ: Report) -> None:
    assert list(sections(page)) == [choice.name for choice in organ.choices]


def test_every_position_says_what_was_asked_chosen_and_why(page: str, organ: Report) -> None:
    for choice, (name, tagged) in zip(organ.choices, sections(page).items(), strict=True):
        said = text_of(tagged)
        assert choice.sentence in said, name
        assert all(caution in said for caution in choice.cautions), name
        assert all(note in said for note in choice.asked.notes), name
        if choice.candidate is None:
            assert "Nothing chosen" in said and "Chosen:" not in said
        else:
            assert said.count(choice.candidate.name) >= 2, name
            assert "room" in said or choice.asked.requirement is None
        if choice.found is not None:
            counts = f"{choice.found.open_count} open, {choice.found.refused_count} refused."
            assert counts in said, name
            assert "heat works at" in said and "technology" in said, name


def test_contributions_add_up_to_the_score(page: str, organ: Report) -> None:
    rows = 0
    for tagged in sections(page).values():
        for row in re.findall(r"<tr(?: class=\"first\")?><td>(.*?)</tr>", tagged):
            cells = [text_of(cell) for cell in row.split("</td>")]
            *worth, total = [Decimal(cell) for cell in cells[3:-1] if cell != "not stated"]
            assert len(cells) == 4 + len(CONTRIBUTIONS) + 1
            assert sum(worth) == total
            rows += 1
    assert rows > len(organ.choices) * 3


def test_positions_with_few_parts_say_what_stands_in_the_way(page: str, organ: Report) -> None:
    seen = 0
    for choice, behind, tagged in zip(organ.choices, organ.reasons, sections(page).values(), strict=True):
        few = choice.found is not None and (choice.candidate is None or choice.found.kept_count < FEW)
        assert ("Refused for" in tagged) == few == bool(behind.nearest)
        if few:
            seen += 1
            assert len(behind.nearest) == MOST_REFUSED
            said = text_of(tagged)
            for name, count in behind.refused_by:
                assert f"{LABELS[name]} {count}" in said
            for one in (*behind.nearest, *behind.opened):
                assert all(f"{LABELS[answer.name]} ({answer.sentence})" in said for answer in one.answers)
            assert all(sentence in said for sentence in behind.two)
            assert ("Two in place of one, never chosen by itself:" in said) == bool(behind.two)
    assert seen >= 4


def test_what_came_of_it_stands_first(page: str, organ: Report) -> None:
    said = text_of(page)
    assert re.search(r"37 positions, 227 capacitors asked for; a part is chosen for \d+ positions", said)
    without = [choice for choice in organ.choices if choice.candidate is None]
    first = said[: said.index("Before you begin")]
    assert f"Without a choice: {len(without)} positions" in first
    assert all(f"{choice.name} : {choice.sentence}" in first for choice in without)
    two = [behind.two for choice, behind in zip(organ.choices, organ.reasons, strict=True) if choice.candidate is None]
    assert any(two) and all(sentence in first for sentences in two for sentence in sentences)
    order = ("What came of it", "Before you begin", "Shopping list", "Life and margin", "Each position", "Where the")
    assert [said.index(one) for one in order] == sorted(said.index(one) for one in order)
    assert all(caution in said[said.index("Before you begin") : said.index("Shopping list")] for caution in GENERAL)


def test_shopping_list_has_a_box_to_tick_for_each_line(page: str, organ: Report) -> None:
    assert page.count('class="box"') == len(organ.shopping.lines)
    assert f"In all {organ.shopping.total}" in text_of(page)


def test_sources_lists_and_rates_are_named(page: str, organ: Report) -> None:
    end = text_of(page[page.index("Where the numbers come from") :])
    for key in ("ten-degree rule", "loss factor", "plane geometry", "bleed resistor", "price breaks"):
        assert f"{key} {SOURCES[key].title}" in end and SOURCES[key].status in end
    for one in organ.lists:
        assert f"{one.supplier} {one.file} {one.seen} {one.kept} {one.refused}" in end
    assert "From the catalog demo.duckdb on 2026-11-02." in end
    assert "1 GBP = 1.17 EUR (2026-10-12)." in end


def test_the_page_asks_for_nothing_outside_itself(page: str) -> None:
    assert outside(page) == []
    for spoilt in ('<img src="a.png">', '<p onclick="x">', "<style>@import 'x'</style>", "see http://a.example"):
        assert outside(page + spoilt), spoilt


def test_hostile_text_stays_text(reporting: Reporting, tmp_path: Path) -> None:
    quoted = TRAP.replace('"', '""')
    (tmp_path / "repair.toml").write_text(f"name = '''{TRAP}'''\nstory = '''{TRAP}'''\n", encoding="utf-8")
    (tmp_path / "positions.csv").write_text(
        f'reference,marking,old_technology,note,capacitance,plus_towards\n"{quoted}","{quoted}","{quoted}","{quoted}",'
        f'47 µF,"{quoted}"\nC2,,,,,\n',
        encoding="utf-8",
    )
    page = written(reporting(tmp_path), tmp_path)
    assert outside(page) == []
    assert TRAP not in page
    assert page.count(escape(TRAP, quote=False)) >= 1 or page.count("&lt;script&gt;") >= 7
    assert text_of(page).count("onclick=") >= 7
    ET.fromstring(page[page.index("<svg") : page.index("</svg>") + 6])


def test_a_repair_without_any_choice_has_no_chart_and_says_why(reporting: Reporting, tmp_path: Path) -> None:
    (tmp_path / "repair.toml").write_text('name = "Radio"\n', encoding="utf-8")
    (tmp_path / "positions.csv").write_text("reference,marking,rated_voltage\nC1,x,19 kV\n", encoding="utf-8")
    page = written(reporting(tmp_path), tmp_path)
    assert "<svg" not in page and "Nothing to order." in page
    assert text_of(page).count("Nothing fits. Nearest is") == 2
    assert "The nearest refusals:" in page


def test_the_bibliography_covers_the_laws_of_the_search_and_of_the_bench() -> None:
    files = [file for room in ("search", "repair") for file in (PACKAGE / room).glob("*.py")]
    text = "\n".join(file.read_text(encoding="utf-8") for file in files if file.stem != "old_values")  # not in it
    named = set(re.findall(r"^from subsearch\.formulas\.(\w+) import", text, re.MULTILINE))
    for several in re.findall(r"^from subsearch\.formulas import (.+)$", text, re.MULTILINE):
        named |= set(several.split(", "))
    named -= {"carriers", "conventions", "lifetime_inputs", "as_written"}  # words and the grain of numbers only
    assert {module.__name__.rpartition(".")[2] for module in USED} == named | {"life_span"}  # which lifetime asks


@pytest.fixture(scope="module")
def hot(reporting: Reporting, tmp_path_factory: pytest.TempPathFactory) -> tuple[Report, str]:
    """A report on a hot place whose temperature is not certain, weighed otherwise."""
    folder = tmp_path_factory.mktemp("hot")
    (folder / "repair.toml").write_text(
        'hours_a_day = 24\ntemperature_uncertain_k = 5\n[weights]\nprice = 3\n"lead spacing" = 0\n', encoding="utf-8"
    )
    (folder / "positions.csv").write_text(
        "reference,marking,capacitance,rated_voltage,headroom_mm,temperature_c\nC1,x,100 µF,25 V,16,85\n",
        encoding="utf-8",
    )
    report = reporting(folder)
    return report, text_of(written(report, folder))


def test_life_is_told_as_a_span(hot: tuple[Report, str], page: str) -> None:
    report, said = hot
    chosen = report.choices[0].candidate
    assert chosen is not None
    shortest, longest = (f"{chosen.made[name]:.1f}" for name in ("shortest_y", "longest_y"))
    assert float(shortest) < chosen.made["years"] < float(longest)
    assert f"{chosen.made['years']:.1f} years; {shortest} to {longest} by published laws and 5 K either way; " in said
    assert "works at 85 °C, 5 K up or down" in said
    assert "over the published laws and a temperature 5 K higher or lower, under the same ceiling." in said
    assert "the same by all published laws; " in text_of(page)
    assert "over the published laws, under the same ceiling." in text_of(page)


def test_own_weights_stand_in_the_report(hot: tuple[Report, str], page: str) -> None:
    price = next(one.meaning for one in CONTRIBUTIONS if one.name == "price")
    assert f"price , {price} (times 3)" in hot[1]
    assert f"price , {price} (times 1)" in text_of(page)
    assert "(times 0)" in hot[1]


def test_what_nothing_beats_is_marked_and_the_first_place_weighed(page: str, organ: Report) -> None:
    marked = 0
    for choice, behind, tagged in zip(organ.choices, organ.reasons, sections(page).values(), strict=True):
        assert behind.stability in text_of(tagged)
        if choice.candidate is not None:
            marked += bool(choice.candidate.unbeaten)
            assert (f"Chosen: {choice.candidate.name} *" in text_of(tagged)) == bool(choice.candidate.unbeaten)
    assert marked
    assert "A part marked * is one that nothing beats" in page
