"""The kinds of errors, and the two phrases that every sentence is built with."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from subsearch import errors
from subsearch.errors import CellsError, QuantityError, SubsearchError, UnknownNameError, known_word, nearest, one_of

PARENTS = {
    "QuantityError": ValueError, "ListError": ValueError, "RepairError": ValueError, "RequirementError": ValueError,
    "CatalogError": RuntimeError, "UnknownNameError": LookupError, "CellsError": ValueError,
}  # fmt: skip
ROLES = ("coupling", "feedback leg", "rail decoupling", "reservoir", "regulator output", "timing", "bypass")


def kinds() -> dict[str, type[SubsearchError]]:
    found = {name: one for name, one in vars(errors).items() if isinstance(one, type)}
    return {name: one for name, one in found.items() if issubclass(one, SubsearchError) and one is not SubsearchError}


def test_every_kind_has_the_root_and_one_builtin_parent() -> None:
    assert {name: one.__bases__ for name, one in kinds().items()} == {
        name: (SubsearchError, parent) for name, parent in PARENTS.items()
    }


def test_texts_of_a_position_are_told_each_by_its_heading() -> None:
    error = CellsError("C1", {"headroom_mm": "Too tall.", "role": "Unknown."})
    assert str(error) == "C1, headroom_mm: Too tall.; C1, role: Unknown."
    assert error.faults["role"] == "Unknown."


@pytest.mark.parametrize("name", sorted(set(PARENTS) - {"CellsError"}))
def test_the_text_is_the_sentence(name: str) -> None:
    assert str(kinds()[name]("Nothing is there. Write it.")) == "Nothing is there. Write it."


def test_a_quantity_error_names_its_fault() -> None:
    assert QuantityError("x").fault == "unreadable"
    assert QuantityError("x", "wrong_unit").fault == "wrong_unit"


@pytest.mark.parametrize(
    ("words", "phrase"),
    [(["can"], "can"), (["can", "box"], "can or box"), (["can", "box", "axial"], "can, box or axial")],
)
def test_one_of(words: list[str], phrase: str) -> None:
    assert one_of(words) == phrase
    assert one_of(iter(words)) == phrase
    assert one_of(dict.fromkeys(words, 1)) == phrase


@given(st.lists(st.from_regex(r"[a-z]{4,8}", fullmatch=True), min_size=1, max_size=6))
@settings(deadline=None, derandomize=True)
def test_one_of_names_every_word_once(words: list[str]) -> None:
    phrase = one_of(words)
    assert phrase.replace(" or ", ", ").split(", ") == words
    assert phrase.count(" or ") == (len(words) > 1)


@pytest.mark.parametrize(
    ("found", "hint"),
    [
        ("resevoir", "reservoir"), ("RESERVOIR", "reservoir"), ("cupling", "coupling"), ("feedback", "feedback leg"),
        ("regulator", "regulator output"),
    ],
)  # fmt: skip
def test_nearest_names_the_word_that_was_meant(found: str, hint: str) -> None:
    assert nearest(found, ROLES) == f' Did you mean "{hint}"?'


@pytest.mark.parametrize("found", ["", "x", "zzzzzz", "12345"])
def test_nearest_says_nothing_where_nothing_is_near(found: str) -> None:
    assert nearest(found, ROLES) == ""
    assert nearest("coupling", []) == ""


def test_an_unknown_word_is_told_with_what_is_allowed() -> None:
    assert known_word("timing", ROLES, "a role") == "timing"
    with pytest.raises(UnknownNameError) as caught:
        known_word("timming", ("coupling", "timing"), "a role")
    assert str(caught.value) == '"timming" is not a role. Did you mean "timing"? Allowed are coupling or timing.'
