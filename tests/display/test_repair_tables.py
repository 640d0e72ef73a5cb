"""A whole repair in a notebook: tables and lists as they are shown, with text that stays text."""

import re
from dataclasses import replace
from decimal import Decimal
from html import unescape
from pathlib import Path

import pytest
from display.conftest import Reporting

from subsearch.display.repair_tables import (
    cautions_of,
    found_table,
    in_all,
    position_named,
    shopping_table,
    without_a_part,
    written,
)
from subsearch.display.report import Report
from subsearch.errors import UnknownNameError
from subsearch.repair.cautions import GENERAL

TRAP = "<img src=x onerror=alert(1)>"
FOLDER = (
    'name = "Radio"\n[cards."{trap}"]\ncount = 1\n',
    "reference,card,marking,capacitance,rated_voltage,pinned_maker,pinned_part_number\n"
    "C1{trap},{trap},47/25,47 µF,25 V,{trap},{trap}\n",
)


def cells(shown: str) -> list[list[str]]:
    """The rows of a table as it is shown, without its headings."""
    rows = re.findall(r"<tr>(.*?)</tr>", shown.partition("<tbody>")[2], re.DOTALL)
    return [[unescape(cell) for cell in re.findall(r"<td[^>]*>(.*?)</td>", row, re.DOTALL)] for row in rows]


def test_every_position_has_its_line_with_a_part_or_a_sentence(organ: Report) -> None:
    rows = cells(found_table(organ.choices, "EUR").to_html())
    assert [row[1] for row in rows] == [one.asked.position.reference for one in organ.choices]
    assert [row[0] for row in rows if row[0]] == [
        "tone generator", "vibrato and percussion", "power supply", "crossover",
    ]  # fmt: skip
    for row, choice in zip(rows, organ.choices, strict=True):
        if choice.candidate is None:
            assert row[4:] == [choice.sentence, "", "", ""]
        else:
            assert row[4].startswith(f"{choice.candidate.name}: ") and all(row[2:])
    c101 = dict(zip(["card", "position", "pieces", "asked", "part", "life", "margin", "cost"], rows[0], strict=True))
    assert (c101["pieces"], c101["life"], c101["margin"], c101["cost"]) == (
        "12", "not limited by heat", "1.5\N{NO-BREAK SPACE}mm", "0.84\N{NO-BREAK SPACE}EUR",
    )  # fmt: skip
    assert (
        c101["asked"] == "1 µF to 2 µF for 1 µF; 35 V or more; left and right 5.5, front and back 4.5, headroom 12 mm"
    )


def test_a_cost_is_rounded_as_on_the_list(organ: Report) -> None:
    costs = {row[1]: row[-1] for row in cells(found_table(organ.choices, "EUR").to_html())}
    alone = [line for line in organ.shopping.lines if len(line.positions) == 1]
    assert any(line.own_cost is not None and line.own_cost % Decimal("0.01") == Decimal("0.005") for line in alone)
    bought = cells(shopping_table(organ.shopping).to_html())
    for row in bought:
        if "," not in row[-1]:
            assert costs[row[-1].split()[0]] == row[-2]


def test_a_cost_that_is_not_stated_is_said(organ: Report) -> None:
    first = organ.choices[0]
    assert first.candidate is not None
    unknown = replace(first, candidate=replace(first.candidate, made={**first.candidate.made, "cost": None}))
    assert cells(found_table([unknown], "EUR").to_html())[0][-1] == "not stated"


def test_near_misses_stand_with_the_positions_that_have_no_part(organ: Report) -> None:
    shown = unescape(without_a_part(organ.choices, organ.reasons)._repr_html_())
    for choice, why in zip(organ.choices, organ.reasons, strict=True):
        assert (f"<h4>{choice.name}</h4>" in shown) is (choice.candidate is None)
        if choice.candidate is None:
            assert choice.sentence in shown
            assert all(f"<li>{sentence}</li>" in shown for sentence in (*why.near, *why.two))
    with_parts = [one for one in zip(organ.choices, organ.reasons, strict=True) if one[0].candidate is not None]
    none = without_a_part(*zip(*with_parts, strict=True))
    assert none.markup == "<p>Every position has a part.</p>"


def test_cautions_for_all_work_stand_open_and_the_others_are_folded(organ: Report) -> None:
    shown = unescape(cautions_of(organ.choices).markup)
    before, _, folded = shown.partition("<details>")
    assert all(f"<li>{one}</li>" in before for one in GENERAL)
    assert "Local codes and licensed practice come first." in before
    assert all(f"<li>{caution}</li>" in folded for choice in organ.choices for caution in choice.cautions)
    assert "<details>" not in cautions_of([replace(organ.choices[0], cautions=())]).markup


def test_the_list_has_every_line_and_its_sum(organ: Report) -> None:
    rows = cells(shopping_table(organ.shopping).to_html())
    lines = organ.shopping.lines
    assert [(row[3], row[4]) for row in rows] == [(str(one.needed), str(one.purchase.ordered)) for one in lines]
    suppliers = list(dict.fromkeys(line.offer.printed["supplier"] for line in lines))
    assert [row[0] for row in rows if row[0]] == suppliers
    assert in_all(organ.shopping) == "32 lines, 227 pieces, 36.93 EUR in all, without postage."
    short = replace(organ.shopping, short=("One is short.",))
    assert in_all(short).endswith(" One is short.")


def test_a_line_without_a_rate_keeps_its_own_currency(organ: Report) -> None:
    line = organ.shopping.lines[0]
    foreign = replace(line, offer=replace(line.offer, printed={**line.offer.printed, "currency": "XTS"}, worth=None))
    shopping = replace(organ.shopping, lines=(foreign,))
    assert cells(shopping_table(shopping).to_html())[0][6].endswith("\N{NO-BREAK SPACE}XTS")
    assert "Not in this sum: 1 line in a currency without a rate." in in_all(shopping)


def test_a_position_is_found_by_its_name_or_its_reference(organ: Report) -> None:
    c301 = position_named(organ.choices, "C301")
    assert c301.name == "C301 (power supply)" and position_named(organ.choices, c301.name) is c301
    with pytest.raises(UnknownNameError) as unknown:
        position_named(organ.choices, "C301 (supply)")
    assert str(unknown.value) == (
        'The repair has no position "C301 (supply)". Did you mean "C301 (power supply)"? Write its reference and card, '
        'like "C101 (tone generator)".'
    )
    with pytest.raises(UnknownNameError, match=r"2 positions are called C301\. Add the card: C301 \(power supply\)"):
        position_named([c301, c301], "C301")


def test_hostile_text_stays_text(reporting: Reporting, tmp_path: Path) -> None:
    for name, content in zip(("repair.toml", "positions.csv"), FOLDER, strict=True):
        (tmp_path / name).write_text(content.format(trap=TRAP), encoding="utf-8")
    report = reporting(tmp_path)
    shown = [
        found_table(report.choices, TRAP).to_html(),
        without_a_part(report.choices, report.reasons).markup,
        cautions_of([replace(report.choices[0], cautions=(TRAP,))]).markup,
        written([Path(TRAP)]).markup,
    ]
    assert all("<img" not in one and "&lt;img" in one for one in shown)
