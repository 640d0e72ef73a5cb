"""References as lists write them (ours): single ones, ranges and mixtures; nothing is made up, and nothing explodes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from subsearch.errors import QuantityError
from subsearch.reading.reference_names import in_order, prefix_of, runs
from subsearch.reading.references import LONGEST, MOST, References, is_references, read_references, split_references

ONE_TO_FOUR = ("C1", "C2", "C3", "C4")
WRITTEN = {
    "C1": ("C1",),
    "C1-C4": ONE_TO_FOUR,
    "C1–C4": ONE_TO_FOUR,
    "C1 — C4": ONE_TO_FOUR,
    "C1−C4": ONE_TO_FOUR,
    "C1…C4": ONE_TO_FOUR,
    "C1..C4": ONE_TO_FOUR,
    "C1 ... C4": ONE_TO_FOUR,
    "C1~C4": ONE_TO_FOUR,
    "C1〜C4": ONE_TO_FOUR,
    "C1÷C4": ONE_TO_FOUR,
    "C1-4": ONE_TO_FOUR,
    "C1 to C4": ONE_TO_FOUR,
    "C1 bis C4": ONE_TO_FOUR,
    "C1 à C4": ONE_TO_FOUR,
    "C1 a C4": ONE_TO_FOUR,
    "C1 t/m C4": ONE_TO_FOUR,
    "C1 do C4": ONE_TO_FOUR,
    "C1 až C4": ONE_TO_FOUR,
    "C1 по C4": ONE_TO_FOUR,
    "C1至C4": ONE_TO_FOUR,
    "C1, C2, C5": ("C1", "C2", "C5"),
    "C1,C2,C5,": ("C1", "C2", "C5"),
    "C1 C2": ("C1", "C2"),
    "C1;C3": ("C1", "C3"),
    "C1/C3": ("C1", "C3"),
    "C1 + C2 & C3": ("C1", "C2", "C3"),
    "C1\nC2": ("C1", "C2"),
    "C1、C2": ("C1", "C2"),
    "C1・C2": ("C1", "C2"),
    "- C1": ("C1",),
    "• C1, C2": ("C1", "C2"),
    "C1 and C2": ("C1", "C2"),
    "C1 und C2": ("C1", "C2"),
    "C1, C2 et C3": ("C1", "C2", "C3"),
    "C1 y C2": ("C1", "C2"),
    "C1, 2, 5": ("C1", "C2", "C5"),
    "C1,2,5": ("C1", "C2", "C5"),
    "C1-3,5,7": ("C1", "C2", "C3", "C5", "C7"),
    "C101A": ("C101A",),
    "C101a": ("C101a",),
    "C101A-C": ("C101A", "C101B", "C101C"),
    "C101A/B": ("C101A", "C101B"),
    "C101/201": ("C101", "C201"),
    "C101-3": ("C101", "C102", "C103"),
    "C12-1": ("C12-1",),
    "C603,604,605": ("C603", "C604", "C605"),
    "C2 L": ("C2L",),
    "C2 L, C2 R": ("C2L", "C2R"),
    "A:C1": ("A:C1",),
    "MAIN_C2-MAIN_C4": ("MAIN_C2", "MAIN_C3", "MAIN_C4"),
    "C5-C3": ("C3", "C4", "C5"),
    "C1-C3, C7; C9 C12…C14": ("C1", "C2", "C3", "C7", "C9", "C12", "C13", "C14"),
    "C1, C1": ("C1",),
    "C001-C003": ("C001", "C002", "C003"),
    "C 12": ("C12",),
    "C_12": ("C12",),
    "c1": ("C1",),
    "CE3": ("CE3",),
    "1C23": ("1C23",),
    "A1C3-A1C5": ("A1C3", "A1C4", "A1C5"),
    "(C1, C2)": ("C1", "C2"),
    "C7*": ("C7",),
    "С1, С2": ("C1", "C2"),  # Cyrillic
    "Ｃ１～Ｃ４": ONE_TO_FOUR,
    "R1, C2": ("R1", "C2"),
}
NONE = ["", "  ", "47µF", "100n", "u47", "p33", "C0G", "X7R", "25 V", "µ47", "Elko", "-", "4C", "Condensateur 3", "47"]


@pytest.mark.parametrize("text", WRITTEN)
def test_references_are_read(text: str) -> None:
    found = read_references(text)
    assert (found.names, found.unread) == (WRITTEN[text], "")
    assert is_references(text)


@pytest.mark.parametrize("text", NONE)
def test_what_is_no_reference_names_none(text: str) -> None:
    assert read_references(text).names == ()
    assert not is_references(text)


@pytest.mark.parametrize(
    ("text", "names", "unread"),
    [
        ("C1 47 µF", ("C1",), "47 µF"),
        ("C1, C2: 100n", ("C1", "C2"), "100n"),
        ("C1, 47n", ("C1",), "47n"),
        ("C1, 4,7", ("C1",), "4,7"),
        ("C5,4,7", ("C5",), "4,7"),
        ("C1,4,7 µF", ("C1",), "4,7 µF"),
        ("C1 - 47 µF 25 V", ("C1",), "- 47 µF 25 V"),
        ("C1 ... 47 nF", ("C1",), "... 47 nF"),
        ("C1, 10 MFD", ("C1",), "10 MFD"),
        ("C1, 25 V", ("C1",), "25 V"),
        ("C1 22,5", ("C1",), "22,5"),
        ("C3 (DNP)", ("C3",), "DNP"),
        ("C1 2", ("C1",), "2"),
    ],
)
def test_reading_stops_where_something_else_begins(text: str, names: tuple[str, ...], unread: str) -> None:
    assert read_references(text) == References(names, unread)


@pytest.mark.parametrize("sign", [": ", " - ", " – ", " ... ", " -> ", " = "])
def test_what_leads_from_a_reference_to_its_value_is_no_part_of_it(sign: str) -> None:
    assert split_references(f"C1{sign}47 µF 25 V") == ("C1", "47 µF 25 V")
    assert split_references(f"C1{sign}.047") == ("C1", ".047")


@pytest.mark.parametrize(
    ("text", "doubt"),
    [
        ("C101-3", '"C101-3" was read as C101 to C103.'),
        ("C5-C3", '"C5-C3" runs backwards; it was read as C3 to C5.'),
    ],
)
def test_an_odd_range_is_said(text: str, doubt: str) -> None:
    assert read_references(text).doubts == (doubt,)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (
            "C1-C999999",
            '"C1-C999999" would be 999999 positions; one range may name up to 1000. Look at its end.',
        ),
        ("C1-R4", '"C1-R4" goes from C1 to R4, which is no range. Write the references one by one.'),
        ("C1A-C3B", '"C1A-C3B" is no range that can be counted. Write the references one by one.'),
        ("C1 " * LONGEST, f"The cell has {3 * LONGEST} signs; references take at most {LONGEST}. Split the line."),
    ],
)
def test_what_is_no_range_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read_references(text)
    assert str(caught.value) == sentence


NAMES = st.builds(
    "{}{}{}".format,
    st.sampled_from(["C", "CE", "CX", "R", "IC"]),
    st.integers(1, 9999),
    st.sampled_from(["", "A", "b"]),
)


@given(
    names=st.lists(NAMES, min_size=1, max_size=20, unique=True), mark=st.sampled_from([", ", ",", " ", ";", "/", "\n"])
)
def test_a_list_comes_back(names: list[str], mark: str) -> None:
    assert read_references(mark.join(names)) == References(tuple(names))


@given(
    first=st.integers(1, 9000),
    more=st.integers(1, MOST - 1),
    mark=st.sampled_from(["-", " - ", "–", "…", "..", " to ", "~"]),
    prefix=st.sampled_from(["C", "CE", "1C"]),
)
def test_a_range_comes_back(first: int, more: int, mark: str, prefix: str) -> None:
    found = read_references(f"{prefix}{first}{mark}{prefix}{first + more}")
    assert found == References(tuple(f"{prefix}{number}" for number in range(first, first + more + 1)))
    assert read_references(runs(list(found.names))) == found


@given(text=st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        found = read_references(text)
    except QuantityError:
        return
    assert len(found.names) <= MOST * (len(text) + 1)
    assert all(any(char.isdigit() for char in name) for name in found.names)
    split_references(text)


def test_the_letters_of_a_reference() -> None:
    names = {
        "C12": "C",
        "CE3": "CE",
        "c1": "C",
        "A1C3": "C",
        "1C23": "C",
        "C12-1": "C",
        "A:C1": "C",
        "PSU_CE3": "CE",
        "101": "",
        "": "",
    }
    assert {name: prefix_of(name) for name in names} == names


def test_natural_order() -> None:
    names = ["C10", "R1", "C2", "CE1", "C2A", "C1", "C12-1", "7"]
    assert sorted(names, key=in_order) == ["7", "C1", "C2", "C2A", "C10", "C12-1", "CE1", "R1"]
    assert runs(["C1", "C2", "C4", "C5", "C6", "CE7"]) == "C1, C2, C4–C6, CE7"


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("C1 47 µF 25 V", ("C1", "47 µF 25 V")),
        ("C1, C2 = 100n", ("C1, C2", "100n")),
        ("47 µF 25 V: C1, C2", ("C1, C2", "47 µF 25 V")),
        ("10k R1", ("R1", "10k")),
        ("no reference", ("", "no reference")),
        ("C1-R4 47n", ("", "C1-R4 47n")),
    ],
)
def test_references_and_value_in_one_text(text: str, parts: tuple[str, str]) -> None:
    assert split_references(text) == parts
