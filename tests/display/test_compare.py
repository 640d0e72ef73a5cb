"""Parts side by side: what is told of each, what is left out, and which does best, said in words."""

from dataclasses import replace
from typing import Any

import duckdb
import pytest

from subsearch.display.compare import compare_table, compared, offered
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found, find
from subsearch.search.requirement import Requirement

NEED = Requirement(
    capacitance_f=100e-6, rated_v=25, pieces=12, hole_spacing_mm=2.5, headroom_mm=15, working_c=85, hours_a_day=4,
    esr_hz=100_000, esr_most_ohm=2,
)  # fmt: skip


@pytest.fixture(scope="module")
def found(demo_con: duckdb.DuckDBPyConnection) -> Found:
    return find(demo_con, [NEED])[0]


def changed(one: Candidate, **changes: Any) -> Candidate:
    """A part with other facts, offer or numbers: whichever of them has the name. Invented."""
    rows: dict[str, Any] = {}
    for where in ("part", "offer", "made"):
        row = getattr(one, where)
        rows[where] = {name: changes.get(name, value) for name, value in row.items()}
    return replace(one, **rows)


def cells(candidates: list[Candidate], need: Requirement = NEED) -> dict[str, list[str]]:
    return dict(compared(candidates, need))


def test_every_number_that_is_compared_is_there(found: Found) -> None:
    one = found.kept[0]
    rows = cells([one])
    assert list(rows)[:4] == ["how it stands", "value", "technology", "polarity"]
    assert rows["how it stands"] == [f"place {one.place}"]
    assert rows["rated voltage"] == ["25 V, just what is needed"]
    assert rows["ESR"][0].endswith(" at 100 kHz")
    assert rows["cost of all, in your currency"] == [f"{one.made['cost']:.2f}, for 12"]
    assert rows["score"] == [f"{one.total:.2f}"]
    assert {
        "body, nominal", "body, at its largest", "lead spacing", "lead diameter", "room left", "mounted", "life",
        "life without the ceiling", "rated ripple current", "temperatures", "price of one", "sold", "supplier",
        "in stock", "condition", "life cycle",
    } <= rows.keys()  # fmt: skip


def test_what_is_not_stated_is_said_and_a_row_of_it_left_out(found: Found) -> None:
    one, other = changed(found.kept[0], lead_diameter_mm=None), changed(found.kept[1], lead_diameter_mm=0.6)
    assert cells([one, other])["lead diameter"] == ["not stated", "0.6 mm"]
    assert "lead diameter" not in cells([one])
    bare = changed(one, along_max_mm=None, lowest_c=None, rated_c=None, ripple_a=None, esr_at_ohm=None, esr_ohm=None)
    assert not {"body, at its largest", "temperatures", "rated ripple current", "ESR"} & cells([bare]).keys()
    assert cells([changed(one, lowest_c=None, rated_c=105.0)])["temperatures"] == ["not stated to 105 °C"]


def test_what_does_best_is_marked_by_a_word(found: Found) -> None:
    one, two, three = found.kept[:3]
    parts = [changed(one, tightest_mm=1.0, cost=3.0), changed(two, tightest_mm=2.0, cost=2.0)]
    assert cells(parts)["room left"] == ["1 mm", "2 mm (most)"]
    assert cells(parts)["cost of all, in your currency"] == ["3.00, for 12", "2.00, for 12 (least)"]
    same = [*parts, changed(three, tightest_mm=2.0 + 1e-9, cost=None)]
    assert cells(same)["room left"] == ["1 mm", "2 mm (most)", "2 mm (most)"], "who reads the same is marked the same"
    assert cells(same)["cost of all, in your currency"][2] == "not stated"
    alike = [changed(part, tightest_mm=1.0) for part in found.kept[:2]]
    assert cells(alike)["room left"] == ["1 mm", "1 mm"]


def test_a_life_that_is_longer_is_marked(found: Found) -> None:
    one, two = found.kept[:2]
    parts = [
        changed(part, years=years, shortest_y=None, longest_y=None, not_worn_by_heat=False, life_at_work_h=hours)
        for part, years, hours in ((one, 4.0, 6000.0), (two, 9.0, 13000.0))
    ]
    assert cells(parts)["life"] == ["4.0 years", "9.0 years (longest)"]
    assert cells(parts)["life without the ceiling"][1].endswith(" h (longest)")


VOLTS = {
    "more": ("wet aluminium", 63.0, "63 V, 38 V above the 25 V needed"),
    "less": ("wet aluminium", 16.0, "16 V, 9 V below the 25 V needed"),
    "tantalum": ("tantalum", 63.0, "63 V, 13 V above the 50 V needed"),
}


@pytest.mark.parametrize("name", VOLTS)
def test_the_rated_voltage_is_told_against_the_need(name: str, found: Found) -> None:
    technology, rated, told = VOLTS[name]
    part = changed(found.kept[0], technology=technology, rated_v=rated)
    assert cells([part])["rated voltage"] == [told]
    assert cells([part], Requirement(capacitance_f=1e-4))["rated voltage"] == [f"{rated:g} V"]


def test_the_series_resistance_is_told_at_the_frequency_that_is_asked(found: Found) -> None:
    one = changed(found.kept[0], esr_at_ohm=0.5, esr_ohm=0.035, esr_hz=100_000.0)
    assert cells([one], replace(NEED, esr_hz=120.0))["ESR"] == ["500 mΩ at 120 Hz"]
    unasked = replace(NEED, esr_hz=None, esr_most_ohm=None)
    assert cells([one], unasked)["ESR"] == ["35 mΩ at 100 kHz"]
    assert cells([changed(one, esr_hz=None)], unasked)["ESR"] == ["35 mΩ at a frequency not stated"]


def test_how_it_is_sold(found: Found) -> None:
    one = changed(found.kept[0], minimum=10, pack=5, currency=None, supplier_number=None)
    assert cells([one])["sold"] == ["from 10 pieces, in packs of 5"]
    assert cells([changed(one, minimum=1, pack=1)])["sold"] == ["singly"]
    assert "(currency not stated) from 1" in cells([one])["price of one"][0]
    assert offered(one).startswith(f"{one.offer['supplier']}: ")
    assert f"({found.kept[0].offer['supplier_number']}): " in offered(found.kept[0])


def test_an_open_part_says_what_is_not_stated(found: Found) -> None:
    assert cells([found.open[0]])["how it stands"][0].startswith("open, not stated: ")


def test_the_table_is_in_the_panel_s_dress_and_bold_where_parts_differ(found: Found) -> None:
    one, two = found.kept[0], changed(found.kept[0], lead_diameter_mm=0.95)
    table = compare_table([one, two], NEED)
    assert table.startswith('<div class="subs-text"><h4>Side by side</h4>')
    assert table.count('<th scope="col">') == 2
    assert '<th scope="row">lead diameter</th><td><b>0.5 mm</b></td><td><b>0.95 mm</b></td>' in table
    assert table.count("<b>") == 2
    assert "No part is picked." in compare_table([], NEED) and "<table" not in compare_table([], NEED)


def test_hostile_text_stays_text(found: Found) -> None:
    table = compare_table([changed(found.kept[0], part_number="<img src=x>", supplier="<b onclick=x>")], NEED)
    assert "<img" not in table and "<b " not in table
    assert "&lt;img src=x&gt;" in table and "&lt;b onclick=x&gt;" in table
