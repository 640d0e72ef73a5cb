"""Life over temperature: tested through its specification and the words that go with it."""

from dataclasses import replace
from types import MappingProxyType
from typing import Any

import duckdb
import pytest

from subsearch.display.chart_marks import COLOURS
from subsearch.display.charts import svg
from subsearch.display.life_chart import life_chart, what_to_see_in_lives
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement
from subsearch.search.sweep import LifeAt, life_over

LIVES = [
    LifeAt("A", 55, 15.0, 9.0, 15.0), LifeAt("A", 62, 4.2, 3.0, 5.0), LifeAt("A", 85, 2.0, 2.0, 2.0),
    LifeAt("B", 55, 15.0), LifeAt("B", 62, 6.0), LifeAt("B", 105, 1.0), LifeAt("C", 55, None),
]  # fmt: skip
ASKED = Requirement(role="coupling", capacitance_f=1e-6, rated_v=35, working_c=62, temperature_uncertain_k=5)


def values_of(layer: Any, spec: Any) -> list[dict[str, Any]]:
    values: list[dict[str, Any]] = spec["datasets"][layer["data"]["name"]]
    return values


def layers_of(spec: Any, mark: str) -> list[Any]:
    return [one for one in spec["layer"] if one["mark"]["type"] == mark]


def words_in(spec: Any) -> list[str]:
    return [row["words"] for one in layers_of(spec, "text") for row in values_of(one, spec)]


def test_axis_titles_carry_their_units() -> None:
    for layer in life_chart(LIVES, 62).to_dict()["layer"][:3]:
        titles = [layer["encoding"][axis]["title"] for axis in "xy"]
        assert titles == ["Temperature at the part [°C]", "Life [years]"]


def test_what_has_no_life_has_no_line() -> None:
    spec = life_chart(LIVES, 62).to_dict()
    (line,) = layers_of(spec, "line")
    assert {row["part"] for row in values_of(line, spec)} == {"A", "B"}
    assert len(values_of(line, spec)) == 6


def test_the_band_is_the_span_of_the_part_looked_at() -> None:
    spec = life_chart(LIVES, 62, "B").to_dict()
    (band,) = layers_of(spec, "area")
    assert band["transform"] == [{"filter": "datum.looked_at"}]
    assert {row["part"] for row in values_of(band, spec) if row["looked_at"]} == {"B"}
    assert (band["encoding"]["y"]["field"], band["encoding"]["y2"]["field"]) == ("shortest_y", "longest_y")
    for looked_at in ("", "C"):
        first = life_chart(LIVES, 62, looked_at).to_dict()
        assert {row["part"] for row in values_of(first["layer"][0], first) if row["looked_at"]} == {"A"}


def test_parts_are_told_apart_without_colour() -> None:
    spec = life_chart(LIVES, 62).to_dict()
    (line,), points = layers_of(spec, "line"), layers_of(spec, "point")[0]
    dash, shape, colour = line["encoding"]["strokeDash"], points["encoding"]["shape"], points["encoding"]["color"]
    assert (dash["field"], shape["field"], colour["field"]) == ("part", "part", "part")
    assert shape["legend"] == colour["legend"] and shape["scale"]["domain"] == colour["scale"]["domain"] == ["A", "B"]


def test_the_working_point_lies_on_the_line_and_is_told() -> None:
    spec = life_chart(LIVES, 62, "A").to_dict()
    ring = layers_of(spec, "point")[1]
    assert values_of(ring, spec) == [{"at_c": 62, "years": 4.2}]
    assert words_in(spec) == ["calendar ceiling, 15 years", "works at 62 °C: 4.2 years"]
    hotter = life_chart(LIVES, 90, "A").to_dict()
    assert values_of(layers_of(hotter, "point")[1], hotter) == []
    assert "works at 90 °C" in words_in(hotter)
    assert len(layers_of(life_chart(LIVES, None).to_dict(), "point")) == 1


@pytest.mark.parametrize(("working_c", "align"), [(62, "left"), (85, "right")])
def test_the_words_of_the_working_point_stay_inside(working_c: float, align: str) -> None:
    spec = life_chart(LIVES, working_c).to_dict()
    assert layers_of(spec, "text")[-1]["mark"]["align"] == align


def test_the_ceiling_and_the_life_wanted_are_level_lines_with_words() -> None:
    spec = life_chart(LIVES, 62, "A", wanted_y=10).to_dict()
    levels = [one for one in layers_of(spec, "rule") if "y" in one["encoding"]]
    assert [values_of(one, spec)[0]["years"] for one in levels] == [15, 10]
    assert levels[0]["mark"]["strokeDash"] != levels[1]["mark"]["strokeDash"]
    assert words_in(spec)[:2] == ["calendar ceiling, 15 years", "wanted: 10 years"]
    assert "wanted: 15 years" not in words_in(life_chart(LIVES, 62, "A", wanted_y=15).to_dict())


def test_nothing_to_draw_draws_nothing() -> None:
    for lives, working_c in (([], None), ([], 42.0), ([LifeAt("C", 55, None)], 55.0)):
        spec = life_chart(lives, working_c).to_dict()
        assert words_in(spec) == []
        drawn = svg(life_chart(lives, working_c))
        assert float(drawn.partition('width="')[2].partition('"')[0]) < 600, "a legend without entries has no end"
        assert "Temperature at the part [°C]" in drawn


def luminance(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts]
    return sum(weight * one for weight, one in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


@pytest.mark.parametrize("page", ["#ffffff", "#212121", "#111111"])
@pytest.mark.parametrize("colour", COLOURS)
def test_colours_stand_out_from_light_and_dark_pages(colour: str, page: str) -> None:
    darker, lighter = sorted((luminance(colour), luminance(page)))
    assert (lighter + 0.05) / (darker + 0.05) >= 3


def test_the_sentence_tells_life_span_and_who_lasts_longest(demo_con: duckdb.DuckDBPyConnection) -> None:
    parts = [one for one in find(demo_con, [ASKED])[0].kept if one.made["years"] is not None]
    longest = max(parts, key=lambda one: one.made["years"])
    shorter = next(one for one in parts if one.made["years"] < longest.made["years"])
    said = what_to_see_in_lives(life_over(demo_con, ASKED, [shorter, longest]), ASKED, [shorter, longest])
    assert said.startswith(f"{shorter.name} lasts {shorter.made['years']:.1f} years at 62 °C, ")
    assert "by published laws and 5 K either way." in said
    assert f"{longest.name} lasts longest: " in said
    assert f"The band is the span over the published laws for {shorter.name}." in said
    alone = what_to_see_in_lives(life_over(demo_con, ASKED, [shorter]), ASKED, [shorter])
    assert "longest" not in alone
    same = what_to_see_in_lives([LifeAt(one.name, 62, 3.0) for one in parts[:2]], ASKED, parts[:2])
    assert "All last equally long: 3.0 years." in same


def test_the_sentence_names_what_has_no_line(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED])[0]
    film = next(one for one in found.kept if one.made["not_worn_by_heat"])
    made = {**film.made, "not_worn_by_heat": False}
    unknown = replace(film, part=MappingProxyType({**film.part, "part_number": "?"}), made=MappingProxyType(made))
    said = what_to_see_in_lives(life_over(demo_con, ASKED, [film]), ASKED, [film, unknown])
    assert said == f"{film.name} has no line: not limited by heat. {unknown.name} has no line: life not stated."
    both = what_to_see_in_lives([], ASKED, [unknown, film, film])
    assert both.startswith(f"{film.name} and {film.name} have no line: not limited by heat. ")
    assert what_to_see_in_lives([], ASKED, []) == ""
