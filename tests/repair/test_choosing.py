"""For every position a choice, or a sentence that says why there is none and what would settle it."""

import re
from dataclasses import replace
from pathlib import Path

import duckdb
import pytest
from repair.common import position, repair

from subsearch.catalog.store import open_to_read, open_to_write
from subsearch.repair.cautions import cautions
from subsearch.repair.choosing import RUNNERS_UP, Choice, choose
from subsearch.repair.folder import Repair, read_repair
from subsearch.repair.positions import Position, Rating
from subsearch.search.candidates import find
from subsearch.search.criteria import LABELS
from subsearch.shipped import shipped

NOT_ASKED = "Not asked: neither capacitance nor rated voltage is filled in."
READ = (
    ' The marking "47/25" reads as 47 µF 25 V: fill that in if you agree. '
    '"47/25" was taken as 47 µF 25 V: no unit is printed.'
)
FITS = re.compile(
    r"(?:The same part as C\d+ \(match group phase shift\): best of \d+ parts that fit all of them, place 1 of \d+ here"
    r"|Best of (?:1 part that fits|\d+ parts that fit))\."
)
OPEN = re.compile(r"Nothing is certain to fit\. .+ might(?: \(\d+ parts like this\))?; not settled: (.+)\. Look it up")
REFUSED = re.compile(r"Nothing fits\. Nearest is (.+), refused for (.+)\.$")


@pytest.fixture(scope="module")
def organ() -> Repair:
    return read_repair(shipped("catalog_demo") / "organ")


@pytest.fixture(scope="module")
def choices(demo_con: duckdb.DuckDBPyConnection, organ: Repair) -> list[Choice]:
    return choose(demo_con, organ)


def of_role(choices: list[Choice], role: str) -> Choice:
    return next(one for one in choices if one.asked.position.role == role and one.candidate)


def pinned(con: duckdb.DuckDBPyConnection, organ: Repair, position: Position, maker: str, number: str) -> Choice:
    pin = replace(position, pinned_maker=maker or None, pinned_part_number=number or None)
    (choice,) = choose(con, replace(organ, positions=(pin,)))
    return choice


def test_each_position_has_its_own_answer_in_order(choices: list[Choice], organ: Repair) -> None:
    assert [one.name for one in choices] == [one.name for one in organ.positions]
    assert [one.asked.position for one in choices] == list(organ.positions)
    for one in choices:
        assert (one.found is None) == (one.asked.requirement is None)
        if one.found is not None:
            assert one.found.requirement is one.asked.requirement


def test_every_position_is_chosen_or_explained(choices: list[Choice]) -> None:
    kinds = set()
    for one in choices:
        if one.found is None:
            assert one.candidate is None
            assert one.sentence.startswith(NOT_ASKED)
        elif one.found.kept:
            assert one.candidate is one.found.kept[0]
            assert FITS.fullmatch(one.sentence), one.sentence
        elif one.found.open:
            assert one.candidate is None
            assert OPEN.match(one.sentence), one.sentence
        else:
            assert one.candidate is None
            assert REFUSED.match(one.sentence), one.sentence
        kinds.add((one.candidate is None, one.sentence.split()[0]))
    assert kinds == {(False, "Best"), (False, "The"), (True, "Not"), (True, "Nothing")}


def test_no_open_part_is_chosen_by_itself(choices: list[Choice]) -> None:
    assert any(one.found and one.found.open and not one.found.kept for one in choices)
    assert any(one.found and one.found.open and one.found.kept for one in choices)
    for one in choices:
        assert one.candidate is None or one.candidate.answer is True


def test_what_is_chosen_is_answered_yes_throughout(choices: list[Choice]) -> None:
    chosen = [one for one in choices if one.candidate and one.found][::3]
    assert len(chosen) > 8
    for one in chosen:
        assert one.found is not None
        assert one.candidate is not None
        answers = one.found.why(one.candidate.part["maker"], one.candidate.part["part_number"])
        assert {answer.answer for answer in answers} == {True}


def test_the_sentence_names_what_is_not_stated(choices: list[Choice]) -> None:
    found = [one for one in choices if one.sentence.startswith("Nothing is certain")]
    assert found
    for one in found:
        assert one.found is not None
        best = one.found.open[0]
        said = OPEN.match(one.sentence)
        assert said is not None
        assert best.not_stated
        answers = one.found.why(best.part["maker"], best.part["part_number"])
        for answer in answers:
            assert (f"{LABELS[answer.name]} ({answer.sentence})" in said[1]) == (answer.answer is None)
        assert [answer.name for answer in answers if answer.answer is None] == list(best.not_stated)
        assert best.name in one.sentence


def test_the_sentence_names_the_nearest_refusal(choices: list[Choice]) -> None:
    found = [one for one in choices if one.sentence.startswith("Nothing fits")]
    assert found
    for one in found:
        assert one.found is not None
        (maker, number) = one.found.nearest(1)[0]
        against = [answer for answer in one.found.why(maker, number) if answer.answer is False]
        assert against
        assert f"Nearest is {maker} {number}, refused for " in one.sentence
        assert all(f"{LABELS[answer.name]} ({answer.sentence})" in one.sentence for answer in against)


def test_cautions_come_with_the_choice(choices: list[Choice]) -> None:
    for one in choices:
        assert one.cautions == cautions(one.asked, one.candidate)
    assert sum(bool(one.cautions) for one in choices) > 10


def test_runners_up_are_given(choices: list[Choice]) -> None:
    counts = [len(one.found.kept) for one in choices if one.found]
    assert max(counts) == RUNNERS_UP


def test_a_pinned_part_that_fits_is_kept(
    demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    before = of_role(choices, "reservoir")
    assert before.found is not None
    third = before.found.kept[2]
    choice = pinned(demo_con, organ, before.asked.position, third.part["maker"], third.part["part_number"])
    assert choice.candidate is not None
    assert choice.candidate.name == third.name
    assert choice.candidate.pinned
    assert choice.sentence == f"Pinned in positions.csv; it fits, as place 3 of {before.found.kept_count}."


def test_a_pinned_part_below_the_runners_up_is_kept(
    demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    before = of_role(choices, "bypass")
    assert before.found is not None
    worst = find(demo_con, [before.found.requirement], 10_000)[0].kept[-1]
    assert worst.place == before.found.kept_count > RUNNERS_UP
    choice = pinned(demo_con, organ, before.asked.position, worst.part["maker"], worst.part["part_number"])
    assert choice.candidate is not None
    assert choice.candidate.name == worst.name
    assert choice.sentence == f"Pinned in positions.csv; it fits, as place {worst.place} of {worst.place}."


def test_a_pinned_part_that_fails_is_kept_and_told(
    demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    wrong = of_role(choices, "reservoir").candidate
    place = of_role(choices, "bypass").asked.position
    assert wrong is not None
    choice = pinned(demo_con, organ, place, wrong.part["maker"], wrong.part["part_number"])
    assert choice.candidate is not None
    assert (choice.candidate.name, choice.candidate.answer) == (wrong.name, False)
    assert choice.sentence.startswith("Pinned in positions.csv, although not everything is answered yes: ")
    assert choice.found is not None
    answers = choice.found.why(wrong.part["maker"], wrong.part["part_number"])
    for answer in answers:
        assert (str(answer) in choice.sentence) == (answer.answer is not True)
    assert f"{LABELS['capacitance']}: no (" in choice.sentence


def test_a_pin_that_can_hurt_is_not_taken(
    demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    polar = of_role(choices, "reservoir").candidate
    assert polar is not None
    maker_and_number = polar.part["maker"], polar.part["part_number"]
    for role, condition in (("loudspeaker crossover", "polarity"), ("interference suppression", "safety")):
        choice = pinned(demo_con, organ, of_role(choices, role).asked.position, *maker_and_number)
        assert choice.candidate is None
        assert choice.sentence.startswith(f"Pinned to {polar.name}, but not taken, since it can hurt: ")
        assert f"{LABELS[condition]}: no (" in choice.sentence


def test_a_pinned_part_that_is_open_is_kept_and_told(
    demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    before = next(one for one in choices if one.found and one.found.open and not one.found.kept)
    assert before.found is not None
    best = before.found.open[0]
    choice = pinned(demo_con, organ, before.asked.position, best.part["maker"], best.part["part_number"])
    assert choice.candidate is not None
    assert (choice.candidate.name, choice.candidate.answer) == (best.name, None)
    for name in best.not_stated:
        assert f"{LABELS[name]}: not stated (" in choice.sentence
    assert ": no (" not in choice.sentence


@pytest.mark.parametrize(
    ("maker", "number", "named"),
    [
        ("Nobody", "Nothing 1", "Nobody Nothing 1"),
        ("Nobody", "", "Nobody (no part number)"),
        ("", "Nothing 1", "(no maker) Nothing 1"),
    ],
)
def test_an_unknown_pin_is_said_and_nothing_else_chosen(
    maker: str, number: str, named: str, demo_con: duckdb.DuckDBPyConnection, organ: Repair, choices: list[Choice]
) -> None:
    choice = pinned(demo_con, organ, of_role(choices, "coupling").asked.position, maker, number)
    assert choice.candidate is None
    assert choice.sentence == (
        f"Pinned to {named}, but the catalog has no offer of it. Correct the pin or load the list it is in."
    )


def test_a_pin_where_nothing_is_asked_does_not_ask(demo_con: duckdb.DuckDBPyConnection) -> None:
    (choice,) = choose(demo_con, repair(position(pinned_maker="Mill", pinned_part_number="Hollow 1")))
    assert (choice.found, choice.candidate) == (None, None)
    assert choice.sentence == NOT_ASKED + READ


def test_an_empty_catalog_is_said(tmp_path: Path) -> None:
    with open_to_write(tmp_path / "new.duckdb"):
        pass
    wanted = repair(
        position(reference="C1", capacitance_f=1e-6), position(reference="C2", rated_voltage=Rating(25, False))
    )
    with open_to_read(tmp_path / "new.duckdb") as con:
        choices = choose(con, wanted)
    assert [one.candidate for one in choices] == [None, None]
    assert {one.sentence for one in choices} == {"Nothing fits. The catalog is empty: load a supplier's list first."}


def test_a_repair_in_which_nothing_is_asked(demo_con: duckdb.DuckDBPyConnection) -> None:
    choices = choose(demo_con, repair(position(), position(reference="C2")))
    assert [one.sentence for one in choices] == [NOT_ASKED + READ, NOT_ASKED + READ]


@pytest.mark.parametrize("role", ["interference suppression", None])
def test_nothing_is_chosen_on_the_mains_without_a_class(demo_con: duckdb.DuckDBPyConnection, role: str | None) -> None:
    place = position(role=role, mains=True, capacitance_f=1e-7, rated_voltage=Rating(250.0, False))
    (choice,) = choose(demo_con, repair(place))
    assert choice.found is not None and choice.found.kept
    assert choice.candidate is None
    assert choice.sentence.startswith("Nothing is chosen. It stands on the mains and its safety class is not filled in")
    (other,) = choose(demo_con, repair(replace(place, role="rail decoupling")))
    assert other.candidate is not None
    assert any("only an X or Y part may be taken" in one for one in other.cautions)
