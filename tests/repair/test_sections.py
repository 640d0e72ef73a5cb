"""Positions whose can holds several capacitors: singles are told, and no single part is chosen for all."""

import duckdb
from repair.common import position, repair

from subsearch.repair.choosing import Choice, choose
from subsearch.repair.positions import Rating
from subsearch.repair.reasons import reasons

CAN = {"reference": "C9", "marking": "32+32 350", "rated_voltage": Rating(350.0, False), "role": "reservoir"}


def chosen(con: duckdb.DuckDBPyConnection, **values: object) -> Choice:
    (choice,) = choose(con, repair(position(**{**CAN, **values})))
    return choice


def test_singles_are_told_and_nothing_is_chosen(demo_con: duckdb.DuckDBPyConnection) -> None:
    choice = chosen(demo_con, rated_voltage=Rating(35.0, False), sections="47 + 22 µF", free_diameter_mm=30.0,
                    section="chassis")  # fmt: skip
    assert choice.candidate is None
    assert choice.sentence.startswith(
        "Nothing is chosen by itself, since the can holds several: 2 singles for the sections of the can, "
        "each in a round place of 15 mm: "
    )
    assert " for 47 µF; " in choice.sentence and " for 22 µF; the set lasts 15 years (ceiling)" in choice.sentence
    (behind,) = reasons(demo_con, [choice])
    assert (behind.near, behind.two, behind.nearest) == ((), (), ())


def test_what_can_not_be_read_is_said(demo_con: duckdb.DuckDBPyConnection) -> None:
    said = chosen(demo_con, sections="32+32").sentence
    assert said.startswith("Nothing is chosen, since the can holds several: ") and "like 32 + 32 µF." in said


def test_a_pin_goes_before(demo_con: duckdb.DuckDBPyConnection) -> None:
    assert "Pinned to Mill X1" in chosen(
        demo_con, sections="8 + 8 µF", pinned_maker="Mill", pinned_part_number="X1"
    ).sentence  # fmt: skip
