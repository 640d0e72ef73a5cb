"""What the trade knows of a part that was chosen: each rule where it is called for, and nowhere else."""

from datetime import date
from typing import Any

import duckdb
import pytest
from repair.common import asked, candidate, position, repair

from subsearch.repair.ageing import age_of, made
from subsearch.repair.cautions import cautions
from subsearch.repair.choosing import choose
from subsearch.repair.corner import corner_note
from subsearch.repair.positions import Rating
from subsearch.search.answers import Candidate
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, HYBRID, ROLES, TANTALUM, WET

TODAY = date(2026, 10, 17)
FILM: dict[str, Any] = {"technology": FILM_PET, "polarity": None, "shape": "box"}


def said(place: dict[str, Any], part: dict[str, Any], start: str) -> list[str]:
    values: dict[str, Any] = {"capacitance_f": 47e-6, "rated_voltage": Rating(25.0, False)}
    texts = cautions(asked(**(values | place)), candidate(**part), TODAY)
    return [text for text in texts if text.startswith(start)]


@pytest.mark.parametrize("role", [None, *ROLES])
@pytest.mark.parametrize(("times", "larger"), [(0.9, False), (1.0, False), (1.1, True), (2.0, True), (2.2, True)])
def test_more_capacitance_has_its_price(role: str | None, times: float, larger: bool) -> None:
    texts = said({"role": role}, {"capacitance_f": 47e-6 * times}, "Larger ")
    twice = times > 2
    assert bool(texts) == ((role == "reservoir" and larger) or (role == "feedback leg" and twice))
    if texts and role == "reservoir":
        assert ("surge limit of the rectifier" in texts[0]) == twice
        assert "Never answer a blown fuse with a larger one." in texts[0]
    if texts and role == "feedback leg":
        assert texts[0].startswith(
            "Larger feedback leg: 103.4 µF in place of 47 µF (120 % more). It settles more slowly"
        )


@pytest.mark.parametrize(
    ("polarity", "part", "expected"),
    [
        ("polar", {"polarity": "bipolar"}, True), ("polar", {"polarity": "polar"}, False),
        ("polar", {"polarity": None}, False), ("bipolar", {"polarity": "bipolar"}, False),
        (None, {"polarity": "bipolar"}, False), ("polar", FILM | {"polarity": "bipolar"}, False),
    ],
)  # fmt: skip
def test_a_bipolar_part_in_a_polar_position(polarity: str | None, part: dict[str, Any], expected: bool) -> None:
    assert bool(said({"polarity": polarity}, part, "Bipolar part in a polar position: ")) == expected


@pytest.mark.parametrize("role", [None, *ROLES])
def test_a_long_film_body_in_a_sensitive_stage(role: str | None) -> None:
    sensitive = role in ("coupling", "timing", "filter or equaliser")
    long = {"along_mm": 18.0, "across_mm": 7.0, "tall_mm": 12.5}
    for technology, sizes, expected in (
        (FILM_PET, long, sensitive), (FILM_PP, long | {"along_mm": None, "tall_mm": 15.1}, sensitive),
        (FILM_PP, long | {"along_mm": 15.0}, False), (C0G, long, False), (WET, long, False),
    ):  # fmt: skip
        assert bool(said({"role": role}, FILM | sizes | {"technology": technology}, "Film body ")) == expected
    if sensitive:
        (text,) = said({"role": role}, FILM | long, "Film body ")
        assert text.startswith("Film body 18 mm long in a sensitive stage: it picks up hum. Turn its outer foil to the")


def test_class_2_and_pulled_parts() -> None:
    for technology in (CLASS_2, C0G, FILM_PET):
        assert bool(said({}, FILM | {"technology": technology}, "Class 2 ceramic: ")) == (technology == CLASS_2)
    for condition in (None, "new", "old stock", "pulled"):
        assert bool(said({}, {"condition": condition}, "Pulled from used equipment: ")) == (condition == "pulled")


@pytest.mark.parametrize(
    ("rated_v", "words"),
    [
        (50.0, ""), (49.9, " Rated 49.9 V, it has too little in reserve"), (63.0, ""),
        (25.0, " Rated 25 V, it has too little in reserve"), (None, " Its rated voltage is not stated"),
    ],
)  # fmt: skip
def test_tantalum_below_twice_the_voltage(rated_v: float | None, words: str) -> None:
    fire = "Tantalum burns when it fails or is fitted the wrong way round: limit the current."
    (text,) = said({}, {"technology": TANTALUM, "rated_v": rated_v}, "Tantalum ")
    wanted = f"{words}: common practice is 50 V, 2 times the 25 V needed." if words else ""
    assert text == f"{fire}{wanted}"
    assert said({"rated_voltage": None}, {"technology": TANTALUM, "rated_v": rated_v}, "Tantalum ") == [fire]


def lain(**offer: Any) -> Candidate:
    one = candidate(condition=offer.pop("condition", "old stock"), technology=offer.pop("technology", WET))
    return Candidate(**{**vars(one), "offer": {**one.offer, **offer}})


AGES = [
    ({}, None, "Its date is not stated, so it may be over three years old."),
    ({"date_code": "?"}, None, 'Its date code "?" can\'t be read, so it may be over three years old.'),
    ({"date_code": "1208"}, True, "By its date code 1208 it is of 2012, over three years old."),
    ({"date_code": "2341"}, True, "By its date code 2341 it is of 2023, over three years old."),
    ({"date_code": "2342"}, None, "By its date code 2342 it is of 2023, so it may be over three years old."),
    ({"date_code": "2343"}, False, "By its date code 2343 it is of 2023."),
    ({"date_code": "EO"}, True, "By its date code EO it is of 1974 or 1994 or 2014, over three years old."),
    ({"date_code": "R9"}, True, "By its date code R9 it is of 1983 or 2003 or 2023, over three years old."),
    ({"date_code": "RO"}, None, "By its date code RO it is of 1983 or 2003 or 2023, so it may be over three years"),
    ({"date_code": "R"}, None, "By its date code R it is of 1983 or 2003 or 2023, so it may be over three years old."),
    ({"date_code": "2650"}, False, "By its date code 2650 it is of 2026."),
    ({"date_bought": date(2023, 10, 16)}, True, "It was bought on 2023-10-16, over three years ago."),
    ({"date_bought": date(2023, 10, 17)}, None, "Its date is not stated, so it may be over three years old."),
    ({"date_bought": date(2026, 1, 1), "date_code": "1208"}, True, "By its date code 1208 it is of 2012, over three"),
    ({"date_code": "2345", "date_seen": date(2027, 1, 1)}, True, "By its date code 2345 it is of 2023, over three"),
]  # fmt: skip


@pytest.mark.parametrize(("offer", "over", "words"), AGES)
def test_the_age_of_what_has_been_lying(offer: dict[str, Any], over: bool | None, words: str) -> None:
    part = lain(**offer)
    age = age_of(part.offer, TODAY)
    assert age.over is over and age.words.startswith(words)
    for condition, technology in (
        ("old stock", WET),
        ("old stock", HYBRID),
        ("new", WET),
        (None, WET),
        ("pulled", WET),
    ):
        one = lain(condition=condition, technology=technology, **offer)
        texts = [text for text in cautions(asked(), one, TODAY) if text.startswith("Old stock: measure it")]
        assert bool(texts) == (condition == "old stock" or over is True)
        assert not texts or ("is reformed first" in texts[0]) == (technology == WET and over is not False)


def test_all_cycles_of_a_letter_and_no_later_year() -> None:
    assert [first.year for first, _ in made("E", 2010)] == [1974, 1994]
    assert made("2650", 2025) == () and made("G9", 2026) == ()


@pytest.mark.parametrize(
    ("values", "note"),
    [
        (
            {"source_ohm": 4700.0, "load_ohm": 47000.0},
            "Low tones: with 1 µF and 51.7 kΩ (source and load) they are 3 dB down at 3.078 Hz; with the old 0.47 µF "
            "at 6.55 Hz.",
        ),
        (
            {"load_ohm": 100e3, "capacitance_f": 1e-6},
            "Low tones: with 1 µF and 100 kΩ (the load; the source, which is not recorded, can only lower it) they are "
            "3 dB down at 1.592 Hz, as with the old part.",
        ),
        (
            {"source_ohm": 10e3, "capacitance_f": None},
            "Low tones: with 1 µF and 10 kΩ (the source; the load, which is not recorded, lowers it) they are 3 dB "
            "down at 15.92 Hz.",
        ),
        ({}, None), ({"source_ohm": 0.0}, None), ({"role": "bypass", "load_ohm": 1e3}, None),
    ],
)  # fmt: skip
def test_the_corner_of_a_coupling_capacitor(values: dict[str, Any], note: str | None) -> None:
    place = position(**({"role": "coupling", "capacitance_f": 0.47e-6} | values))
    assert corner_note(place, candidate(capacitance_f=1e-6)) == (() if note is None else (note,))
    assert corner_note(place, None) == ()


def test_the_corner_stands_among_the_notes_of_the_choice(demo_con: duckdb.DuckDBPyConnection) -> None:
    place = position(role="coupling", capacitance_f=1e-6, rated_voltage=Rating(25.0, False), load_ohm=47e3)
    (choice,) = choose(demo_con, repair(place))
    assert choice.candidate is not None
    assert choice.asked.notes[-1].startswith("Low tones: with ")
