"""A repair's folder read into positions: every column, every default, and a sentence for what can't be read."""

from dataclasses import fields
from pathlib import Path

import pytest
from repair.common import TOML, position, read, write

from subsearch.errors import RepairError
from subsearch.repair.folder import read_repair
from subsearch.repair.positions import COLUMNS, Position, Rating
from subsearch.search.weights import Weights
from subsearch.shipped import shipped
from subsearch.terms import ROLES

CELLS = {
    "reference": ("C7", "C7"), "card": ("main", "main"), "section": ("lid", "lid"), "role": ("Bypass", "bypass"),
    "marking": ("47/25", "47/25"), "old_technology": ("wet aluminium", "wet aluminium"),
    "old_tolerance": ("-10/+50 %", (-10.0, 50.0)), "old_rating": ("250 V a.c.", Rating(250.0, True)),
    "safety_class": ("x2", "X2"), "mains": ("yes", True), "supply_rail": ("-15 V", -15.0),
    "capacitance": ("4,7 uF", 4.7e-6), "rated_voltage": ("63 V", Rating(63.0, False)), "sections": ("2", "2"),
    "polarity": ("polar", "polar"), "plus_towards": ("edge", "edge"), "lead_style": ("snap-in", "snap-in"),
    "hole_spacing_mm": ("2.5", 2.5), "hole_diameter_mm": ("1 mm", 1.0), "plated": ("no", False),
    "left_mm": ("5.5", 5.5), "right_mm": ("5.6", 5.6), "front_mm": ("4.5", 4.5), "back_mm": ("4.6", 4.6),
    "free_diameter_mm": ("7", 7.0), "headroom_mm": ("12.5", 12.5), "may_lie_flat": ("no", False),
    "temperature_c": ("-5", -5.0), "temperature_uncertain_k": ("5 K", 5.0),
    "hot_part_k": ("14 K", 14.0), "dc_lowest_v": ("-0.2", -0.2),
    "dc_highest_v": ("15.3", 15.3), "ac_peak_v": ("0", 0.0), "fault_v": ("22 V", 22.0), "ripple_ma": ("450", 0.45),
    "ripple_hz": ("100", 100.0), "esr_least_ohm": ("0.03", 0.03), "esr_most_ohm": ("400 mΩ", 0.4),
    "esr_hz": ("100 kHz", 1e5), "leakage_most_ua": ("5", 5e-6), "source_ohm": ("4k7", 4700.0),
    "load_ohm": ("47000", 47000.0), "match_group": ("pair", "pair"), "reading_capacitance": ("21 µF", 21e-6),
    "reading_esr_ohm": ("14", 14.0), "reading_tan_delta": ("0.31", 0.31), "reading_leakage_ua": ("3", 3e-6),
    "meter_hz": ("120", 120.0), "test_v": ("25", 25.0), "measured": ("one lead lifted", "one lead lifted"),
    "visual": ("domed vent", "domed vent"), "pinned_maker": ("Mill", "Mill"),
    "pinned_part_number": ("Hollow 1", "Hollow 1"), "note": ("ask, first", "ask, first"),
}  # fmt: skip


def quoted(cell: str) -> str:
    return f'"{cell}"' if "," in cell else cell


def test_every_column_is_read_into_its_field(tmp_path: Path) -> None:
    assert CELLS.keys() == COLUMNS.keys()
    (found,) = read(tmp_path, f"{','.join(CELLS)}\n{','.join(quoted(cell) for cell, _ in CELLS.values())}\n").positions
    assert {heading: getattr(found, COLUMNS[heading].name) for heading in CELLS} == {
        heading: value for heading, (_, value) in CELLS.items()
    }
    assert found.name == "C7 (main)"


def test_all_but_reference_and_marking_may_be_empty(tmp_path: Path) -> None:
    (found,) = read(tmp_path, f"{','.join(CELLS)}\nC7{',' * (len(CELLS) - 1)}\n").positions
    assert found == Position(reference="C7")
    assert [one.name for one in fields(Position) if getattr(found, one.name) is not None] == ["reference"]
    assert found.name == "C7"


def test_order_separators_and_blank_lines_do_not_matter(tmp_path: Path) -> None:
    text = "\ufeffmarking;capacitance;reference\r\n\r\n47/25;4,7 µF;C1\r\n;;\r\n10/63; 10 µF ;C2\r\n"
    first, second = read(tmp_path, text).positions
    assert first == position(capacitance_f=4.7e-6)
    assert second == position(reference="C2", marking="10/63", capacitance_f=1e-5)


def test_what_is_common_to_all(tmp_path: Path) -> None:
    found = read(tmp_path, "reference,marking,card\nC1,x,main\nC1,x,side\nC1,x,\n")
    assert (found.name, found.story, found.hours_a_day, found.years_wanted) == ("Radio", "It hums.", 4, 10)
    assert found.section_c == {"chassis": 40.0, "lid": 25.5}
    assert [found.pieces(one) for one in found.positions] == [2, 1, 1]
    assert [one.name for one in found.positions] == ["C1 (main)", "C1 (side)", "C1"]


def test_what_is_common_may_be_left_out(tmp_path: Path) -> None:
    folder = tmp_path / "old radio"
    folder.mkdir()
    found = read(folder, "reference,marking\nC1,x\n", "")
    assert (found.name, found.story, found.hours_a_day, found.years_wanted) == ("old radio", "", 24, None)
    assert (found.section_c, found.card_counts) == ({}, {})


@pytest.mark.parametrize("role", ROLES)
def test_every_role_is_known(role: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"reference,marking,role\nC1,x,{role.upper()}\n").positions[0].role == role


def test_a_card_gives_its_section_to_its_positions(tmp_path: Path) -> None:
    common = '[sections.lid]\ntemperature_c = 30\n[cards.main]\ncount = 2\nsection = "lid"\n'
    (found,) = read(tmp_path, "reference,marking,card\nC1,x,main\n", common).positions
    assert found.section == "lid"


def test_the_demo_repair_is_read() -> None:
    found = read_repair(shipped("catalog_demo") / "organ")
    assert len({one.name for one in found.positions}) == len(found.positions) > 30
    assert {one.role for one in found.positions} == {*ROLES, None}
    assert all(one.marking for one in found.positions)


REFUSED = {
    "unknown section": (
        "reference,marking,section\nC1,x,cellar\n",
        'C1: the section "cellar" is not in repair.toml. It has chassis or lid.',
    ),
    "unknown card": (
        "reference,marking,card\nC1,x,mian\n",
        'C1: the card "mian" is not in repair.toml. Did you mean "main"? It has main or side.',
    ),
    "doubled reference": (
        "reference,marking,card\nC1,x,main\nC1,x,side\nC1,y,main\n",
        "C1 (main) stands in positions.csv twice. Give each position its own reference.",
    ),
    "bad cell": (
        "reference,marking,headroom_mm\nC1,x,12\nC2,x,0\n",
        '"positions.csv", line 3, headroom_mm: "0" is not above 0. Write a positive size or leave it empty.',
    ),
    "bad word": (
        "reference,marking,measured\nC1,x,yes\n",
        '"positions.csv", line 2, measured: "yes" is not allowed. Write in circuit, one lead lifted or out, or',
    ),
    "line of a quoted note": (
        'reference,marking,note,role\nC1,x,"two\nlines",bypass\nC2,x,,bypas\n',
        '"positions.csv", line 4, role: "bypas" is not allowed. Did you mean "bypass"?',
    ),
    "ragged": (
        "reference,marking\nC1,x,y\n",
        '"positions.csv", line 2: 3 cells under 2 headings. Add or remove separators.',
    ),
    "no reference": (
        "reference,marking\n ,x\n",
        '"positions.csv", line 2: the reference is empty. Give each position the name printed on the board.',
    ),
    "unknown heading": (
        "reference,marking,capacity\nC1,x,1 µF\n",
        '"positions.csv" has the heading "capacity", which is none of ours. Did you mean "capacitance"?',
    ),
    "no marking": (
        "reference,note\nC1,x\n",
        '"positions.csv" needs the headings reference and marking; it has reference, note.',
    ),
    "no position": (
        "reference,marking\n",
        '"positions.csv" has a heading line but no position. Write one line for each capacitor.',
    ),
    "empty": ("", 'The list of positions: "positions.csv" is empty. Save the list again, with its heading line.'),
}


@pytest.mark.parametrize(("text", "sentence"), REFUSED.values(), ids=REFUSED)
def test_what_is_said_of_positions(text: str, sentence: str, tmp_path: Path) -> None:
    with pytest.raises(RepairError) as caught:
        read(tmp_path, text)
    assert str(caught.value).startswith(sentence)


def test_sections_and_cards_without_any_in_repair_toml(tmp_path: Path) -> None:
    with pytest.raises(RepairError, match=r'the section "lid" is not in repair.toml. Add \[sections."lid"\] to it.'):
        read(tmp_path, "reference,marking,section\nC1,x,lid\n", "")
    with pytest.raises(RepairError, match=r'the card "main" is not in repair.toml. Add \[cards."main"\] to it.'):
        read(tmp_path, "reference,marking,card\nC1,x,main\n", "")


def test_missing_files_are_named(tmp_path: Path) -> None:
    with pytest.raises(RepairError, match=r"There is no folder .*gone\". Name the folder that holds repair.toml and"):
        read_repair(tmp_path / "gone")
    folder = write(tmp_path, "reference,marking\nC1,x\n", TOML)
    (folder / "positions.csv").unlink()
    with pytest.raises(RepairError, match=r"^The list of positions: There is no file .*positions.csv\""):
        read_repair(folder)
    (folder / "repair.toml").unlink()
    with pytest.raises(RepairError, match=r"repair.toml\" is missing. It holds name, hours_a_day and years_wanted"):
        read_repair(folder)


def test_own_weights_and_an_uncertain_temperature(tmp_path: Path) -> None:
    text = "reference,marking\nC1,x\n"
    assert (read(tmp_path, text, "").weights, read(tmp_path, text, "").temperature_uncertain_k) == (Weights(), 0.0)
    own = read(tmp_path, text, 'temperature_uncertain_k = 5\n[weights]\nlife = 2\n"lead spacing" = 0\n')
    assert own.weights == Weights({"life": 2.0, "lead spacing": 0.0})
    assert own.temperature_uncertain_k == 5


@pytest.mark.parametrize(
    ("common", "sentence"),
    [
        ("weights = 3", "repair.toml: weights must be a table, [weights], with lines like life = 2."),
        ('[weights]\nlife = "2"', 'repair.toml, [weights]: life is "2". Write a number, like life = 2.'),
        (
            "[weights]\nlif = 2",
            'repair.toml, [weights]: "lif" is not a contribution to the score. Did you mean "life"? Allowed are '
            "clearance, capacitance, voltage, lead spacing, life, price or stock.",
        ),
        (
            "[weights]\nprice = -1",
            "repair.toml, [weights]: The weight of price is -1; allowed is 0 to 1,000,000. 0 leaves it out, 1 is "
            "usual.",
        ),
    ],
)
def test_what_is_said_of_weights(common: str, sentence: str, tmp_path: Path) -> None:
    with pytest.raises(RepairError) as caught:
        read(tmp_path, "reference,marking\nC1,x\n", common)
    assert str(caught.value) == sentence
