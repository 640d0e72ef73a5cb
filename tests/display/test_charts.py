"""Charts are tested through their specification: what is drawn, in which order, with which units."""

from collections.abc import Iterator
from typing import Any

import pandas as pd
import pytest

from subsearch.display.charts import COLUMNS, life_and_margin, svg
from subsearch.display.choice import weakest_first, what_to_see
from subsearch.display.drawn import Drawn
from subsearch.display.report import Report
from subsearch.display.span_chart import span_chart
from subsearch.formulas.life import CEILING_Y
from subsearch.formulas.lifetime import wet_lifetime
from subsearch.formulas.lifetime_inputs import Duty, StatedLife

ROWS = [
    ("C3", None, "not stated", None, "not asked"),
    ("C1", 4.2, "4.2 years", 0.25, "0.25 mm"),
    ("C9", 15.0, "15 years (ceiling)", 2.0, "2 mm"),
    ("C4", None, "not limited by heat", -1.5, "-1.5 mm"),
]


def table(rows: list[Any]) -> pd.DataFrame:
    return pd.DataFrame(rows, columns=list(COLUMNS)).astype({"years": float, "margin_mm": float})


def encodings(spec: Any) -> Iterator[tuple[str, Any]]:
    """Every channel of every layer."""
    if isinstance(spec, dict):
        yield from spec.get("encoding", {}).items()
        for value in spec.values():
            yield from encodings(value)
    elif isinstance(spec, list):
        for value in spec:
            yield from encodings(value)


def test_every_axis_of_numbers_has_its_unit() -> None:
    axes = [one for name, one in encodings(life_and_margin(table(ROWS)).to_dict()) if name in ("x", "y")]
    assert {one["title"] for one in axes if one["type"] == "quantitative"} == {
        "life at its working temperature [years]",
        "tightest margin around the body [mm]",
    }


def test_the_order_of_the_table_is_kept_and_the_ceiling_marked() -> None:
    spec = life_and_margin(table(ROWS)).to_dict()
    assert all(one["sort"] is None for name, one in encodings(spec) if name == "y")
    marks = [layer["mark"]["type"] for layer in spec["hconcat"][0]["layer"]]
    assert marks == ["bar", "text", "rule"]
    rule = spec["hconcat"][0]["layer"][2]
    assert spec["datasets"][rule["data"]["name"]] == [{"years": CEILING_Y}]


def test_what_has_no_number_is_said_and_gets_no_bar() -> None:
    drawn = svg(life_and_margin(table(ROWS)))
    for _, _, life, _, margin in ROWS:
        assert life in drawn and margin.removeprefix("-") in drawn
    bars = drawn.count('aria-roledescription="bar"')
    assert bars == sum(row[1] is not None for row in ROWS) + sum(row[3] is not None for row in ROWS)
    assert drawn.count('aria-roledescription="rule mark"') == 1


@pytest.mark.parametrize("rows", [ROWS[:1], ROWS[3:], ROWS[1:2] * 1, [("C" * 300, *ROWS[1][1:])]])
def test_odd_tables_are_drawn_too(rows: list[Any]) -> None:
    drawn = svg(life_and_margin(table(rows)))
    assert drawn.startswith("<svg") and "NaN" not in drawn and "http" not in drawn


def test_weakest_first(organ: Report) -> None:
    rows = weakest_first(organ.choices).to_dict("records")
    assert len(rows) == sum(choice.candidate is not None for choice in organ.choices)
    limited = [row["life"] != "not limited by heat" for row in rows]
    assert limited == sorted(limited, reverse=True) and 0 < sum(limited) < len(rows)
    years = [(row["years"], row["margin_mm"]) for row in rows if row["life"] != "not limited by heat"]
    assert years == sorted(years)


def test_what_to_see_names_the_weakest() -> None:
    assert what_to_see(table(ROWS)) == (
        "Life is not stated for C3: take it for the weakest. The shortest life is that of C1: 4.2 years. "
        "The least room is left at C4: -1.5 mm, so the body is too large there."
    )
    assert what_to_see(table(ROWS[2:3])) == (
        "Every part that heat wears out reaches the ceiling of 15 years. The least room is left at C9: 2 mm to spare."
    )
    assert what_to_see(table([])) == ""


def test_the_span_of_a_life_is_a_band_around_its_figure() -> None:
    lives = {
        float(at_c): wet_lifetime(StatedLife(2000, 105, basis="load life"), Duty(at_c, 8)) for at_c in (45, 55, 65)
    }
    spec = span_chart(lives, 55, 43_800).to_dict()
    axes = [one for name, one in encodings(spec) if name in ("x", "y") and "title" in one]
    assert {one["title"] for one in axes} == {"Temperature at the part [°C]", "Life [h]"}
    rows = spec["datasets"][spec["layer"][0]["data"]["name"]]
    assert all(row["shortest_h"] <= row["life_h"] <= row["longest_h"] for row in rows)
    assert [row["life_h"] for row in rows] == [128_000, 64_000, 32_000]
    shown = Drawn(span_chart(lives, 55, 43_800), "What to see.")._repr_html_()
    assert "calendar ceiling, 43,800 h" in shown and "works at 55 °C: 64,000 h" in shown and "What to see." in shown
    assert spec["layer"][1]["encoding"]["y"]["axis"]["values"] == [100_000, 300_000]
    assert "works at 50 °C<" in Drawn(span_chart(lives, 50, 43_800), "")._repr_html_()
    assert "http" not in shown
    assert "<i>" not in Drawn(span_chart(lives, 55, 43_800), "<i>")._repr_html_()


def test_what_is_drawn_lets_the_page_through() -> None:
    assert life_and_margin(table(ROWS)).to_dict()["background"] == "transparent"
    drawn = svg(life_and_margin(table(ROWS)))
    assert "#ddd" not in drawn and 'fill="white"' not in drawn
