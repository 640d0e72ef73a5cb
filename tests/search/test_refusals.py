"""Why not: every condition in words and numbers, the nearest refusals, the counts."""

from dataclasses import replace
from pathlib import Path

import duckdb
import pytest

from subsearch.catalog.store import open_to_write
from subsearch.errors import UnknownNameError
from subsearch.search.candidates import find
from subsearch.search.criteria import CRITERION_NAMES, LABELS
from subsearch.search.refusals import answers, nearest_refused, refused_by, why
from subsearch.search.requirement import Requirement

ASKED = Requirement(
    reference="C9", pieces=5, role="coupling", capacitance_f=47e-6, rated_v=25.0, reverses=True, lead_style="radial",
    hole_spacing_mm=2.5, left_mm=4.0, right_mm=4.0, headroom_mm=12.0, working_c=60.0, hours_a_day=24.0,
    life_wanted_y=10.0, ripple_a=0.2, ripple_hz=100.0, esr_most_ohm=1.0, esr_hz=120.0,
)  # fmt: skip


def test_why_agrees_with_the_answers_of_the_search(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED])[0]
    every = answers(demo_con, ASKED)
    for maker, number in list(every)[::97]:
        said = {one.name: one.answer for one in found.why(maker, number)}
        assert said == {name: every[maker, number][name] for name in said}
        # what is not asked is not answered either
        assert set(CRITERION_NAMES) - set(said) == {"voltage_ac", "leakage", "safety", "hole"}


def test_sentences_carry_the_numbers(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED])[0]
    rows = demo_con.execute(
        "select maker, part_number, rated_v from part where shape = 'can' and rated_v < 25 and tall_mm > 12 limit 3"
    ).fetchall()
    for maker, number, volts in rows:
        said = {one.name: str(one) for one in found.why(maker, number)}
        assert said["voltage"] == f"rated d.c. voltage: no (rated voltage {volts:g} V; at least 25 V is needed)"
        assert "headroom" in said["body"] and "short" in said["body"]
        assert all("{" not in sentence and "None" not in sentence for sentence in said.values())


def test_a_tantalum_part_must_be_rated_at_twice_the_voltage(demo_con: duckdb.DuckDBPyConnection) -> None:
    rows = demo_con.execute("select maker, part_number, rated_v from part where technology = 'tantalum'").fetchall()
    need = Requirement(rated_v=12.5, technologies=("tantalum", "wet aluminium"))
    kept = {(one.part["maker"], one.part["part_number"]): one.part for one in find(demo_con, [need], 100_000)[0].kept}
    low = [(maker, number, volts) for maker, number, volts in rows if 12.5 <= volts < 25]
    assert low and not {(maker, number) for maker, number, _ in low} & kept.keys()
    assert any(part["technology"] == "tantalum" for part in kept.values())
    maker, number, volts = low[0]
    said = {one.name: str(one) for one in find(demo_con, [need])[0].why(maker, number)}
    assert said["voltage"] == (
        f"rated d.c. voltage: no (rated voltage {volts:g} V; "
        "at least 25 V (2 × 12.5 V, since it is tantalum) is needed)"
    )


def test_nearest_refusals_fail_the_fewest_conditions(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED])[0]
    every = answers(demo_con, ASKED)
    noes: dict[tuple[str | None, str], int] = {
        part: sum(answer is False for answer in its.values()) for part, its in every.items()
    }
    nearest = found.nearest(20)
    fewest = sorted(count for count in noes.values() if count)[:20]
    assert [noes[part] for part in nearest] == fewest
    assert found.refused_count == sum(count > 0 for count in noes.values())


def test_counts_by_criterion(demo_con: duckdb.DuckDBPyConnection) -> None:
    counts = find(demo_con, [ASKED])[0].refused_by()
    every = answers(demo_con, ASKED)
    assert counts == {name: sum(its[name] is False for its in every.values()) for name in CRITERION_NAMES}
    assert set(counts) <= set(LABELS)


def test_a_part_the_catalog_does_not_have(demo_con: duckdb.DuckDBPyConnection) -> None:
    found = find(demo_con, [ASKED])[0]
    maker, number = next(iter(answers(demo_con, ASKED)))
    with pytest.raises(UnknownNameError) as caught:
        found.why(maker, f"{number[:-1]}")
    assert f'The catalog has no part "{number[:-1]}" of the maker "{maker}"' in str(caught.value)
    assert "Did you mean maker" in str(caught.value)
    with pytest.raises(UnknownNameError, match="Look them up in the list"):
        found.why("qqqq", "zzzz")


def test_many_asked_at_once_answer_as_each_alone(demo_con: duckdb.DuckDBPyConnection) -> None:
    others = [ASKED, replace(ASKED, rated_v=400.0, reverses=False), Requirement(reference="C2", capacitance_f=1e-7)]
    near = nearest_refused(demo_con, others, 3)
    assert near == [one.nearest(3) for one in find(demo_con, others)]
    assert len({tuple(one) for one in near}) == 3
    assert refused_by(demo_con, others) == [one.refused_by() for one in find(demo_con, others)]
    named = [(need, *part) for need, parts in zip(others, near, strict=True) for part in parts]
    assert why(demo_con, named) == [why(demo_con, [one])[0] for one in named]


def test_nothing_asked_at_once_answers_nothing(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert (why(demo_con, []), nearest_refused(demo_con, []), refused_by(demo_con, [])) == ([], [], [])


def test_an_empty_catalog_refuses_nothing(tmp_path: Path) -> None:
    with open_to_write(tmp_path / "new.duckdb") as con:
        assert refused_by(con, [ASKED]) == [dict.fromkeys(CRITERION_NAMES, 0)]
        assert nearest_refused(con, [ASKED]) == [[]]
