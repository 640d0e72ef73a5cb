"""Near misses of 300 requirements on the demo's catalog against plain Python: counts, smallest concessions, pairs."""

from collections import Counter
from decimal import Decimal, localcontext

import duckdb
import pytest

from brute.asking import requirement
from brute.concessions import KINDS, Smallest, alone, smallest
from brute.laws import DIGITS
from brute.merged import Claims
from brute.needs import Asked, draw
from brute.oracle import Oracle, Told
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.candidates import find
from subsearch.search.concessions import BY_NAME
from subsearch.search.measures import Measure, moved
from subsearch.search.near import near
from subsearch.search.requirement import Requirement
from subsearch.search.ways import SIDES

SEED, MANY = 42, 300
AT_SIDES = set(SIDES)
Found = dict[tuple[str, str | None], tuple[float, int]]


@pytest.fixture(scope="module")
def asked(parts: list[Claims]) -> list[Asked]:
    return draw(parts, SEED, MANY)


@pytest.fixture(scope="module")
def answered(oracle: Oracle, asked: list[Asked]) -> list[Told]:
    return [oracle.told(need) for need in asked]


@pytest.fixture(scope="module")
def found(demo_con: duckdb.DuckDBPyConnection, asked: list[Asked]) -> tuple[list[dict[str, int]], list[Found]]:
    keeps_out: list[dict[str, int]] = [{} for _ in asked]
    concessions: list[Found] = [{} for _ in asked]
    for row in rows_of(demo_con, *asked_of(near, [requirement(need) for need in asked])):
        if row["kind"] == "alone":
            keeps_out[row["number"]][row["name"]] = row["parts"]
        else:
            concessions[row["number"]][row["name"], row["word"]] = row["value"], row["parts"]
    return keeps_out, concessions


@pytest.fixture(scope="module")
def wanted(parts: list[Claims], asked: list[Asked], answered: list[Told]) -> list[Smallest]:
    with localcontext(prec=DIGITS):
        return [smallest(need, parts, one.answers) for need, one in zip(asked, answered, strict=True)]


def test_what_each_condition_alone_keeps_out(
    found: tuple[list[dict[str, int]], list[Found]], asked: list[Asked], answered: list[Told]
) -> None:
    for counts, one, need in zip(found[0], answered, asked, strict=True):
        assert counts == alone(one.answers), need


def test_smallest_concessions(
    found: tuple[list[dict[str, int]], list[Found]], asked: list[Asked], wanted: list[Smallest]
) -> None:
    for its, right, need in zip(found[1], wanted, asked, strict=True):
        assert its.keys() == right.keys(), need
        for name, (value, count) in its.items():
            assert value == pytest.approx(float(right[name][0]), rel=1e-9, abs=1e-9), (name, need)
            assert count == right[name][1], (name, need)


def test_a_concession_made_lets_in_what_was_counted_and_a_smaller_one_nothing(
    demo_con: duckdb.DuckDBPyConnection, oracle: Oracle, asked: list[Asked], wanted: list[Smallest]
) -> None:
    """Every concession asked again: in all it lets in what the oracle counts; less by 1 % of it, nothing.

    More room at a side may also move a body whose leads are both formed to one side: what that lets in, before or
    with the others, is left to the oracle, asked again.
    """
    made = [
        (number, name[0], BY_NAME[name[0]], float(value) if name[1] is None else name[1], count)
        for number, right in enumerate(wanted)
        for name, (value, count) in right.items()
    ]
    before = [one.kept_count for one in find(demo_con, [requirement(need) for need in asked], 1)]
    needs = [requirement(asked[number]) for number, *_ in made]
    conceded = [one[2].moved(need, one[3]) for need, one in zip(needs, made, strict=True)]
    for (number, name, measure, value, count), then, now in zip(
        made, conceded, find(demo_con, conceded, 1), strict=True
    ):
        let_in = now.kept_count - before[number]
        if AT_SIDES.isdisjoint(measure.fields):
            assert let_in == count, (name, value, asked[number])
        else:
            assert now.kept_count == again_kept(oracle, asked[number], measure, then), (name, value, asked[number])
            assert let_in >= count, (name, value, asked[number])
    less = [
        (one, moved(need, {field: nearly(getattr(need, field), getattr(then, field)) for field in one[2].fields}))
        for one, need, then in zip(made, needs, conceded, strict=True)
        if isinstance(one[3], float) and one[3] != 0 and one[1] != "pieces"
    ]
    for ((number, name, measure, value, _), then), now in zip(
        less, find(demo_con, [need for _, need in less], 1), strict=True
    ):
        again = (
            before[number] if AT_SIDES.isdisjoint(measure.fields) else again_kept(oracle, asked[number], measure, then)
        )
        assert now.kept_count == again, (name, value, asked[number])
    assert len(less) > 200


def again_kept(oracle: Oracle, need: Asked, measure: Measure, then: Requirement) -> int:
    """How many parts the oracle keeps with the room conceded."""
    return len(oracle.told({**need, **{field: Decimal(str(getattr(then, field))) for field in measure.fields}}).kept)


def nearly(was: float | None, then: float) -> float:
    """99 % of the way."""
    return (was or 0.0) + 0.99 * (then - (was or 0.0))


def test_the_needs_tell_something(wanted: list[Smallest]) -> None:
    seen = Counter(name for one in wanted for name, _ in one)
    assert {kind.__name__ for kind, _, _ in KINDS} - seen.keys() <= {"bent_nearer_mm"}
    assert {"technologies", "conditions", "headroom_mm", "left_mm", "left_mm right_mm"} <= seen.keys()
