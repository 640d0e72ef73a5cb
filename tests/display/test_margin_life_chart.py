"""Room against life with the cost as size: tested through its specification and the words that go with it."""

from dataclasses import replace
from types import MappingProxyType
from typing import Any

import duckdb
import pytest

from subsearch.display.charts import svg
from subsearch.display.margin_life_chart import KINDS, margin_life_chart
from subsearch.display.margin_life_words import what_to_see_in_margins
from subsearch.search.answers import Candidate
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

ASKED = Requirement(
    role="coupling", capacitance_f=1e-6, rated_v=35, hole_spacing_mm=5, left_mm=5.5, right_mm=5.5, front_mm=5.5,
    back_mm=5.5, headroom_mm=20, working_c=65, pieces=12,
)  # fmt: skip
Parts = tuple[Candidate, ...]


@pytest.fixture(scope="module")
def parts(demo_con: duckdb.DuckDBPyConnection) -> Parts:
    found = find(demo_con, [ASKED])[0]
    return (*found.kept, *found.open)


def values_of(layer: Any, spec: Any) -> list[dict[str, Any]]:
    values: list[dict[str, Any]] = spec["datasets"][layer["data"]["name"]]
    return values


def with_numbers(one: Candidate, **made: Any) -> Candidate:
    return replace(one, made=MappingProxyType({**one.made, "not_worn_by_heat": False, **made}))


def drawn_of(spec: Any) -> list[dict[str, Any]]:
    return [row for layer in spec["layer"][:2] for row in values_of(layer, spec)]


def test_every_axis_and_the_size_have_a_unit(parts: Parts) -> None:
    encoding = margin_life_chart(parts, "EUR").to_dict()["layer"][0]["encoding"]
    assert [encoding[one]["title"] for one in ("x", "y", "size")] == [
        "Tightest margin around the body [mm]", "Life [years]", "Cost of all pieces [EUR]",
    ]  # fmt: skip
    unknown = margin_life_chart(parts, None).to_dict()["layer"][0]["encoding"]
    assert unknown["size"]["title"] == "Cost of all pieces [currency not stated]"


def test_every_part_has_one_mark_or_is_counted(parts: Parts) -> None:
    drawn = drawn_of(margin_life_chart(parts, "EUR").to_dict())
    names = [row["part"] for row in drawn]
    assert len(names) == len(set(names)) and len(names) < len(parts)
    said = what_to_see_in_margins(parts, "EUR")
    assert said.startswith(f"{len(names)} parts: ")
    left = said.partition("not stated or not asked: ")[2].rstrip(".")
    assert sum(int(one.split()[0]) for one in left.split(", ")) == len(parts) - len(names)


def test_what_heat_does_not_limit_has_a_row_and_no_number(parts: Parts) -> None:
    spec = margin_life_chart(parts, "EUR").to_dict()
    limited, unlimited = (values_of(layer, spec) for layer in spec["layer"][:2])
    assert limited and all(0 <= row["years"] <= 15 for row in limited)
    assert unlimited and {(row["years"], row["life"]) for row in unlimited} == {(None, "not limited by heat")}
    encoding = [layer["encoding"]["y"] for layer in spec["layer"][:2]]
    assert encoding[0]["field"] == "years" and list(encoding[1]) == ["value"]
    assert 0 < encoding[1]["value"] < 260 * 3 / 18, "above the ceiling"
    drawn = svg(margin_life_chart(parts, "EUR"))
    assert "not limited" in drawn and "ceiling 15" in drawn and ">17<" not in drawn


def test_kinds_differ_in_shape_as_well_as_in_filling(parts: Parts) -> None:
    spec = margin_life_chart(parts, "EUR").to_dict()
    encoding = spec["layer"][0]["encoding"]
    for channel in ("shape", "fill"):
        assert encoding[channel]["scale"]["domain"] == list(KINDS)
        assert len(set(encoding[channel]["scale"]["range"])) == len(KINDS)
    kind_of = {row["part"]: row["kind"] for row in drawn_of(spec)}
    for one in parts:
        wanted = "nothing beats" if one.unbeaten else "fits" if one.answer else "open"
        assert wanted in kind_of.get(one.name, wanted)
    assert set(kind_of.values()) == set(KINDS)


def test_smaller_marks_lie_on_larger_ones(parts: Parts) -> None:
    spec = margin_life_chart(parts, "EUR").to_dict()
    costs = [row["cost"] for row in values_of(spec["layer"][0], spec)]
    assert costs == sorted(costs, reverse=True) and costs[0] > costs[-1]


def made_up(one: Candidate, **room_and_years: tuple[float, float]) -> list[Candidate]:
    return [
        replace(
            with_numbers(one, tightest_mm=room, years=years, cost=1.0),
            part={**one.part, "maker": None, "part_number": name},
        )
        for name, (room, years) in room_and_years.items()
    ]


def labels_of(spec: Any) -> dict[str, Any]:
    texts = [layer for layer in spec["layer"] if layer["mark"]["type"] == "text"]
    return {row["names"]: row for layer in texts for row in values_of(layer, spec)}


def test_named_parts_have_a_ring_and_their_names_and_near_ones_share_a_label(parts: Parts) -> None:
    found = made_up(parts[0], A=(0.2, 9.0), B=(0.3, 8.0), C=(3.0, 1.0), D=(3.0, 12.0), E=(3.0, 15.0))
    spec = margin_life_chart(found, "EUR", ["A", "B", "C", "E"]).to_dict()
    rings = [one for one in spec["layer"] if one["mark"].get("size") and one["mark"]["type"] == "point"]
    assert {row["part"] for one in rings for row in values_of(one, spec)} == {"A", "B", "C", "E"}
    labels = labels_of(spec)
    assert {name: one["align"] for name, one in labels.items()} == {"A\nB": "left", "C": "right", "E": "right"}
    assert labels["E"]["dy"] > 0, "below the line of the ceiling"
    between = 260 / 18 / 2
    assert labels["A\nB"]["dy"] == pytest.approx(between - 12 - 6), "in the middle of its marks"
    assert labels["C"]["dy"] == pytest.approx(-12)


def test_a_label_stays_above_the_axis(parts: Parts) -> None:
    found = made_up(parts[0], A=(1.0, 1.0), B=(1.0, 0.5), C=(1.0, 0.5), D=(1.0, 0.1))
    (label,) = labels_of(margin_life_chart(found, "EUR", ["A", "B", "C", "D"]).to_dict()).values()
    mark = 260 * (1 - 1 / 18)
    assert mark + label["dy"] + 4 * 12 == pytest.approx(260)


def test_the_words_name_the_first_in_each_of_the_three(parts: Parts) -> None:
    roomy, lasting, cheap = (
        replace(with_numbers(parts[0], tightest_mm=room, years=years, cost=cost), unbeaten=True,
                part={**parts[0].part, "maker": None, "part_number": name})
        for name, room, years, cost in (("Roomy", 3.0, 2.0, 9.0), ("Lasting", 1.0, 9.0, 8.0), ("Cheap", 0.5, 1.0, 0.5))
    )  # fmt: skip
    assert what_to_see_in_margins([roomy, lasting, cheap], "EUR") == (
        "3 parts: further right leaves more room, higher lasts longer, smaller costs less. Nothing beats 3 of them: "
        "Roomy leaves the most room (3 mm), Lasting lasts longest (9.0 years), Cheap costs least (0.50 EUR)."
    )
    assert what_to_see_in_margins([roomy], None) == (
        "Nothing beats Roomy: 3 mm to spare, 2.0 years, 9.00 (currency not stated)."
    )
    at_ceiling = with_numbers(roomy, years=15.0), replace(parts[0], made={**roomy.made, "not_worn_by_heat": True})
    assert "room and cost decide." in what_to_see_in_margins(at_ceiling, "EUR")
    lost = with_numbers(roomy, tightest_mm=None), with_numbers(roomy, years=None), with_numbers(roomy, cost=None)
    assert what_to_see_in_margins(lost, "EUR") == (
        "Not drawn, since that is not stated or not asked: 1 without cost, 1 without life, 1 without room."
    )
    assert what_to_see_in_margins([], "EUR") == ""


def test_nothing_found_is_drawn_empty() -> None:
    drawn = svg(margin_life_chart([], None))
    assert float(drawn.partition('width="')[2].partition('"')[0]) < 600
