"""Positions drafted from parts lists (ours): filled in only without doubt, each line taken or left with its reason."""

import csv
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from organ_list import ORGAN, REFERENCES

from subsearch.errors import RepairError, SubsearchError
from subsearch.repair.claims import Claim, Claims
from subsearch.repair.draft import Draft
from subsearch.repair.drafting import draft_positions
from subsearch.repair.folder import Repair, read_repair
from subsearch.repair.positions import COLUMNS, Position, Rating
from subsearch.repair.settling import Said, settled


def drafted(folder: Path, text: str, name: str = "radio.csv") -> Draft:
    (folder / name).write_text(text, encoding="utf-8")
    return draft_positions(folder / name)


def one(folder: Path, line: str, headings: str = "Ref;Value;Voltage;Tolerance;Description;Package") -> Position:
    return drafted(folder, f"{headings}\n{line}\n").positions[0]


def doubts(folder: Path, *lines: str, headings: str = "Ref;Value;Voltage;Description;Qty") -> tuple[str, ...]:
    return drafted(folder, "\n".join([headings, *lines]) + "\n").doubts.get("C1", ())


AC = Rating(275.0, True)
FILLED: dict[str, dict[str, Any]] = {
    "C1;47µF;25": {"capacitance_f": 47e-6, "rated_voltage": Rating(25.0, False), "old_rating": Rating(25.0, False)},
    "C1;47µF 25V": {"capacitance_f": 47e-6, "rated_voltage": Rating(25.0, False), "marking": "47µF 25V"},
    "C1;4,7µF;50 V;10": {"old_tolerance_pct": (-10.0, 10.0), "marking": "4,7µF 50 V ±10 %"},
    "C1;4,7µF;50 V;-10/+50": {"old_tolerance_pct": (-10.0, 50.0)},
    "C1;10µ;35;;bipolar": {"polarity": "bipolar", "capacitance_f": 10e-6},
    "C1;100n;50;;X7R": {"old_technology": "ceramic class 2"},
    "C1;10µF;16;;Tantalperle": {"old_technology": "tantalum"},
    "C1;100n;63;;MKT;RM 7,5": {"old_technology": "film PET", "hole_spacing_mm": 7.5},
    "C1;47µF;40;;Elko axial": {"old_technology": "wet aluminium", "lead_style": "axial"},
    "C1;0,1µF X2;275V~": {"safety_class": "X2", "rated_voltage": AC, "old_rating": AC},
    "C1;0,1µF 630V= 275V~;": {"rated_voltage": Rating(630.0, False), "old_rating": AC},
    "C1;2A474J;": {"capacitance_f": 470e-9, "rated_voltage": Rating(100.0, False)},
    "C1;1µF;n/a;-;~": {"marking": "1µF", "capacitance_f": 1e-6, "rated_voltage": None},
    "C1;104;": {"capacitance_f": 100e-9, "marking": "104"},
    "C1,C2;2 x 47µF;": {"capacitance_f": 47e-6},
    "C1;32+32µF;350": {"sections": "32 µF + 32 µF", "capacitance_f": None, "rated_voltage": Rating(350.0, False)},
    "C1;;;;CAP ALU 10UF 35V": {"capacitance_f": 10e-6, "marking": "CAP ALU 10UF 35V"},
    "C1;50 µF;;;Elko 350/385 V": {"capacitance_f": 50e-6, "rated_voltage": Rating(350.0, False)},
    "C1;47µ;;;CAP ALU 47UF 35V RADIAL": {"capacitance_f": 47e-6, "rated_voltage": Rating(35.0, False)},
}  # fmt: skip


@pytest.mark.parametrize("line", FILLED)
def test_what_the_list_says_is_filled_in(tmp_path: Path, line: str) -> None:
    position = one(tmp_path, line)
    assert {name: getattr(position, name) for name in FILLED[line]} == FILLED[line]
    assert position.note is not None and position.note.startswith("From line 2 of the parts list: ")
    assert "Doubt" not in position.note


def test_the_note_names_all_that_was_filled_in(tmp_path: Path) -> None:
    position = one(tmp_path, "C1;47µF;25;20;Elko radial RM 5, Ø 8, 105 °C;")
    assert position.note == (
        "From line 2 of the parts list: capacitance 47 µF, rated voltage 25 V, old tolerance ±20 %, old technology wet "
        "aluminium, lead style radial, hole spacing 5 mm. Also there: diameter 8 mm, made for 105 °C, "
        '"Elko radial RM 5, Ø 8, 105 °C".'
    )
    filled = {name for name, value in vars(position).items() if value is not None}
    assert filled == {
        "reference", "marking", "note", "capacitance_f", "rated_voltage", "old_rating", "old_tolerance_pct",
        "old_technology", "lead_style", "hole_spacing_mm",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("line", "empty", "doubt"),
    [
        ("C1;47/16", ("capacitance_f", "rated_voltage", "old_rating"), '"47/16" was taken as 47 µF 16 V: no unit'),
        ("C1;47", ("capacitance_f",), '"47" was taken as 47 µF'),
        ("C1;50;12", ("capacitance_f", "rated_voltage"), '"50" was taken as 50 µF: no unit is printed.'),
        ("C1;see the plan", ("capacitance_f",), 'No capacitance can be read in "see the plan".'),
        ("C1;47µ;;;CAP 4.7UF", ("capacitance_f",), "The list says capacitance 47 µF and 4.7 µF: look at the part."),
        ("C1;47µ 16V;25", ("rated_voltage", "old_rating"), "The list says rated voltage 16 V and 25 V: look at"),
        ("C1;2x3,3µF", ("capacitance_f",), "The list writes 2 of them: look how many stand there."),
    ],
)
def test_what_is_in_doubt_stays_empty_and_is_told(
    tmp_path: Path, line: str, empty: tuple[str, ...], doubt: str
) -> None:
    draft = drafted(tmp_path, f"Ref;Value;Voltage;Tolerance;Description\n{line}\n")
    (position,) = draft.positions
    assert {name: getattr(position, name) for name in empty} == dict.fromkeys(empty)
    assert len(draft.doubts["C1"]) == 1 and draft.doubts["C1"][0].startswith(doubt)
    assert f"Doubt: {draft.doubts['C1'][0]}" in (position.note or "")


def test_a_doubt_that_another_text_settles_is_told_but_fills(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value;Description\nC1;47/16;CAP ALU 47UF 16V\n")
    assert draft.positions[0].capacitance_f == 47e-6
    assert len(draft.doubts["C1"]) == 1


def test_a_text_that_a_field_does_not_take_is_a_doubt() -> None:
    claims = Claims("1n", (Claim("hole_spacing_mm", "0"),), (), (), "")
    cells, doubted = settled("C1", "", [Said(2, claims)])
    assert "hole_spacing_mm" not in cells
    assert doubted == ('Hole spacing: "0" is not above 0. Write a positive size or leave it empty.',)


def test_a_voltage_without_a_value_is_told_as_the_old_rating_and_not_asked(tmp_path: Path) -> None:
    position = one(tmp_path, "C1;2x50µF;350;;Elko")  # asked alone, 350 V would take any small film capacitor
    assert (position.capacitance_f, position.rated_voltage, position.old_rating) == (None, None, Rating(350.0, False))
    assert position.note is not None and "old rating 350 V" in position.note


def test_lists_that_give_every_line_twice(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value;Qty\nC1;47µ 25V;1\nC2;47µ 25V;1\nC10;1µ;1\n\nC1,C2;47µ 25V;2\nC10;1µ;1\n")
    assert [position.reference for position in draft.positions] == ["C1", "C2", "C10"]
    assert [(left.line, left.reason) for left in draft.left if left.kind == "given again"] == [
        (6, "C1, C2: drafted already from lines 2 and 3."),
        (7, "C10: drafted already from line 4."),
    ]
    assert draft.positions[0].note == "From lines 2 and 6 of the parts list: capacitance 47 µF, rated voltage 25 V."
    assert not draft.doubts


def test_summed_lines_may_come_first(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value;Voltage\nC1-C3;47µ;\nC1;47µ;25\nC2;47µ;25\nC4;1µ;63\n")
    assert [position.rated_voltage for position in draft.positions] == [Rating(25.0, False)] * 2 + [
        None, Rating(63.0, False)
    ]  # fmt: skip
    assert [left.kind for left in draft.left] == ["headings", "given again", "given again"]


def test_lines_that_contradict_each_other(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value\nC1;47µ 25V\nC2;1µ\nC1;100µ 25V\n")
    assert draft.positions[0].capacitance_f is None
    assert (draft.positions[0].rated_voltage, draft.positions[0].old_rating) == (None, Rating(25.0, False))
    assert draft.doubts == {"C1": ("The list says capacitance 47 µF (line 2) and 100 µF (line 4): look at the part.",)}


def test_a_line_that_is_new_in_part_is_taken(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value\nC1;47µ\nC1, C2;47µ\n")
    assert [(taken.line, taken.references) for taken in draft.taken] == [(2, ("C1",)), (3, ("C2",))]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("C1,C2;1µ;;;3", "The list says 3 pieces for 2 references."),
        ("C1;1µ;;;2 pcs", "The list says 2 pieces for 1 reference."),
        ("C1;1µ;;;2x", "The list says 2 pieces for 1 reference."),
        ("C1;1µ;;;1", None),
        ("C1;1µ;;;1.0", None),
        ("C1;1µ;;;some", None),
    ],
)
def test_a_quantity_that_is_not_the_number_of_references(tmp_path: Path, line: str, said: str | None) -> None:
    assert doubts(tmp_path, line) == ((said,) if said else ())


LEFT = {
    "R1-R3;4k7;;": "R1–R3: a resistor.",
    "IC1;;;": "IC1: an integrated circuit.",
    "CN1;;;4 pin": "CN1: a connector.",
    "CR1;1N4007;;": "CR1: a diode.",
    "CV1;5-30p;;": "CV1: a variable capacitor.",
    "C1;100p;;trimmer": "C1: a variable capacitor.",
    "C1;10k;;": 'C1: "10k" speaks of a resistor, not of a capacitor.',
    "R7;100n;;": "R7: a resistor.",
    "T1, R2;;;": "T1: a transformer or a transistor; R2: a resistor.",
    "AB1;104;;": "AB1: neither its letters nor its value say that it is a capacitor.",
    "AB1;something;;": "AB1: neither its letters nor its value say that it is a capacitor.",
}


@pytest.mark.parametrize("line", LEFT)
def test_other_parts_are_left(tmp_path: Path, line: str) -> None:
    left = drafted(tmp_path, f"Ref;Value;Voltage;Description\nC9;1µ;;\n{line}\n").left[-1]
    assert (left.line, left.kind, left.reason) == (3, "not a capacitor", LEFT[line])


@pytest.mark.parametrize(
    ("line", "doubt"),
    [
        ("EL1;50µF 350V;", "EL1: taken for its value, since such letters are seldom a capacitor's."),
        ("CR1;10µF 16V;", "CR1: taken for its value, since such letters are seldom a capacitor's."),
        ("CT1;10µF 16V;", None),
        ("X1;100n X2;safety capacitor", None),
        ("CE1;100µF;", None),
        ("C1, R5;100n;", "Also on this line, and left out: R5: a resistor."),
    ],
)
def test_unusual_letters(tmp_path: Path, line: str, doubt: str | None) -> None:
    draft = drafted(tmp_path, f"Ref;Value;Description\n{line}\n")
    (position,) = draft.positions
    assert draft.doubts.get(position.reference) == ((doubt,) if doubt else None)


@pytest.mark.parametrize(
    ("line", "doubted"),
    [
        ("C1;47n 630V;across the line", True),
        ("C1;10n 400V;Netzfilter", True),
        ("C1;5000p 250V~;", True),
        ("C1;100n X2 275V~;", False),
        ("C1;0,1µF 630V= 275V~;", False),
        ("C1;22p;near crystal", False),
    ],
)
def test_what_may_stand_on_the_mains_is_doubted(tmp_path: Path, line: str, doubted: bool) -> None:
    doubts = drafted(tmp_path, f"Ref;Value;Remark\n{line}\n").doubts.get("C1", ())
    assert any("fill in mains and safety_class" in doubt for doubt in doubts) == doubted


@pytest.mark.parametrize(("other", "capacitance_f"), [("0,1µF", 4700e-6), ("0.1µF", 4.7e-6), ("1µF", None)])
def test_the_other_lines_decide_the_decimal_mark(tmp_path: Path, other: str, capacitance_f: float | None) -> None:
    first, _ = drafted(tmp_path, f"Ref;Value;Remark\nC1;4.700µF 25V;\nC2;{other};\n").positions
    assert first.capacitance_f == capacitance_f


def test_a_line_without_a_value_is_left(tmp_path: Path) -> None:
    left = drafted(tmp_path, "Ref;Value;Qty\nC1;1µ;1\nC2-C4;;3\n").left[-1]
    assert (left.kind, left.reason) == ("no value", "C2–C4: no value stands on it.")


def test_positions_come_in_the_order_of_the_board(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value\nC10;1µ\nC2;1µ\nCE1;1µ\nC1;1µ\nC2A;1µ\n")
    assert [position.reference for position in draft.positions] == ["C1", "C2", "C2A", "C10", "CE1"]


def check(draft: Draft, lines: int) -> None:
    assert draft.lines_read == len(draft.taken) + len(draft.left) == lines
    numbers = [taken.line for taken in draft.taken] + [left.line for left in draft.left]
    assert len(numbers) == len(set(numbers))
    assert sum(len(taken.references) for taken in draft.taken) == len(draft.positions)
    assert all(left.kind and left.reason for left in draft.left)


def test_the_organ(tmp_path: Path) -> None:
    draft = drafted(tmp_path, ORGAN, "organ.csv")
    check(draft, 29)
    assert tuple(position.reference for position in draft.positions) == REFERENCES
    assert repr(draft) == (
        "organ.csv: 18 positions from 15 of 29 lines, 14 left (2 above the headings, 1 headings, 1 not fitted, "
        "1 no value, 6 not a capacitor, 1 no reference, 2 given again); doubts about 6 positions"
    )
    assert list(draft.doubts) == ["C103", "C107", "C108", "C109", "C113", "C208"]
    assert draft.doubts["C103"] == ("The list says capacitance 47 µF (line 7) and 22 µF (line 31): look at the part.",)


def test_a_draft_is_a_table_in_a_notebook(tmp_path: Path) -> None:
    draft = drafted(tmp_path, ORGAN)
    table = draft.table()
    assert list(table["reference"]) == list(REFERENCES)
    assert set(table.columns) <= set(COLUMNS)
    assert list(draft.left_table()["kind"][:3]) == ["above the headings", "above the headings", "headings"]
    assert list(draft.left_table().columns) == ["line", "kind", "reason", "text"]


def written(draft: Draft, folder: Path) -> Repair:
    draft.write(folder)
    return read_repair(folder)


def test_a_written_draft_is_a_repair(tmp_path: Path) -> None:
    draft = drafted(tmp_path, ORGAN, "organ.csv")
    assert draft.write(tmp_path / "mine") == (tmp_path / "mine" / "positions.csv", tmp_path / "mine" / "repair.toml")
    repair = read_repair(tmp_path / "mine")
    assert (repair.name, repair.positions) == ("organ", draft.positions)
    with (tmp_path / "mine" / "positions.csv").open(encoding="utf-8", newline="") as file:
        assert next(csv.reader(file)) == list(COLUMNS)


def test_an_own_repair_toml_stays(tmp_path: Path) -> None:
    (tmp_path / "repair.toml").write_text('name = "My own"\nhours_a_day = 3\n', encoding="utf-8")
    draft = drafted(tmp_path, "Ref;Value\nC1;1µ\n")
    assert draft.write(tmp_path) == (tmp_path / "positions.csv",)
    assert read_repair(tmp_path).hours_a_day == 3


def test_boards_become_cards(tmp_path: Path) -> None:
    repair = written(drafted(tmp_path, 'Board;Ref;Value\nA "1";C1;1µ\nB;C1;2µ2\nB;C2;1n\n'), tmp_path / "mine")
    assert [position.name for position in repair.positions] == ['C1 (A "1")', "C1 (B)", "C2 (B)"]
    assert repair.card_counts == {'A "1"': 1, "B": 1}


def test_boards_that_an_own_repair_toml_does_not_have(tmp_path: Path) -> None:
    (tmp_path / "repair.toml").write_text('[cards."A"]\ncount = 2\n', encoding="utf-8")
    drafted(tmp_path, "Board;Ref;Value\nA;C1;1µ\nB;C2;2µ2\n").write(tmp_path)
    first, second = read_repair(tmp_path).positions
    assert (first.reference, first.card, second.reference, second.card) == ("C1", "A", "C2", None)
    assert (second.note or "").startswith("Board: B. From line 3")
    with pytest.raises(RepairError) as caught:
        drafted(tmp_path, "Board;Ref;Value\nB;C1;1µ\nC;C1;2µ2\n").write(tmp_path, replace=True)
    assert str(caught.value) == (
        f'C1 stands on several boards, but "{tmp_path / "repair.toml"}" does not have the board "B". Add [cards."B"] '
        "with count = 1 to it."
    )


def test_a_broken_repair_toml_is_said(tmp_path: Path) -> None:
    (tmp_path / "repair.toml").write_text("name = ", encoding="utf-8")
    with pytest.raises(RepairError) as caught:
        drafted(tmp_path, "Ref;Value\nC1;1µ\n").write(tmp_path)
    assert str(caught.value).startswith(f'"{tmp_path / "repair.toml"}" can\'t be read: ')
    assert not (tmp_path / "positions.csv").exists()


def test_what_stands_there_is_not_written_over(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value\nC1;1µ\n")
    (tmp_path / "positions.csv").write_text("mine", encoding="utf-8")
    with pytest.raises(RepairError) as caught:
        draft.write(tmp_path)
    assert str(caught.value) == (
        f'"{tmp_path / "positions.csv"}" exists already and is not written over. Name another folder (--out), or say '
        "that it may go (--replace; in a notebook replace=True)."
    )
    assert (tmp_path / "positions.csv").read_text(encoding="utf-8") == "mine"
    assert sorted(file.name for file in tmp_path.iterdir()) == ["positions.csv", "radio.csv"]
    draft.write(tmp_path, replace=True)
    assert read_repair(tmp_path).positions == draft.positions


def test_nothing_is_written_where_nothing_was_found(tmp_path: Path) -> None:
    with pytest.raises(RepairError) as caught:
        drafted(tmp_path, "hello;world\n").write(tmp_path / "new")
    assert str(caught.value) == (
        "No position was drafted, so nothing is written. Look at the reasons of the lines left out."
    )
    assert not (tmp_path / "new").exists()


def test_texts_of_a_list_never_become_formulas(tmp_path: Path) -> None:
    draft = drafted(tmp_path, 'Board;Ref;Value;Description\n"=1+1";C1;"=cmd|1!A1";@x\n')
    repair = written(draft, tmp_path / "mine")
    assert (repair.positions[0].card, repair.positions[0].marking) == ("'=1+1", "=cmd|1!A1")
    assert ",'=cmd|1!A1," in (tmp_path / "mine" / "positions.csv").read_text(encoding="utf-8")


CELLS = st.text(max_size=12) | st.sampled_from([
    "C1", "C1-C3", "C2, C9", "C7", "R1", "47uF", "100n 63V", "47/16", "Ref", "Value", "Qty", "Board", "1", "25", "DNP",
    "", "32+32µF 350V", "2x1n", "0,1 X2 275V~", "C1-C9999", "bipolar", "RM 0", "=1+1", '"',
])  # fmt: skip


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(rows=st.lists(st.lists(CELLS, max_size=5), max_size=8), mark=st.sampled_from([",", ";", "\t"]))
def test_any_list_is_drafted_or_refused(tmp_path: Path, rows: list[list[str]], mark: str) -> None:
    (tmp_path / "any.csv").write_bytes("\n".join(mark.join(row) for row in rows).encode("utf-8", "replace"))
    try:
        draft = draft_positions(tmp_path / "any.csv")
    except SubsearchError:
        return
    check(draft, draft.lines_read)
    if draft.positions:
        draft.write(tmp_path / "mine", replace=True)
        assert len(read_repair(tmp_path / "mine").positions) == len(draft.positions)
    (tmp_path / "mine" / "repair.toml").unlink(missing_ok=True)


def test_the_cell_that_the_readme_shows(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "radio.csv").write_text("Ref;Value\nC1;1µ 63V\nR1;1k\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```python\n(.*?)^```$", readme, re.MULTILINE | re.DOTALL)
    (block,) = [one for one in blocks if "draft_positions" in one]
    exec(block, {})
    assert [position.reference for position in read_repair(tmp_path / "radio").positions] == ["C1"]


def test_what_looks_like_a_code_is_in_doubt_under_a_heading_with_a_unit(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value [µF]\nC1;47\nC2;104\n")
    assert [one.capacitance_f for one in draft.positions] == [47e-6, None]
    assert "The heading gives a unit, but the number looks like a code in pF: look at the part." in draft.doubts["C2"]
    named = drafted(tmp_path, "Ref;Value;Unit\nC1;104;pF\n", "named.csv")
    assert named.positions[0].capacitance_f == 104e-12


@pytest.mark.parametrize("pitch", ["5/7.5", "200", "0.2in"])
def test_a_lead_spacing_that_is_none_in_mm_is_told_and_not_filled_in(tmp_path: Path, pitch: str) -> None:
    (found,) = drafted(tmp_path, f"Ref;Value;Pitch\nC1;47uF;{pitch}\n").positions
    assert found.hole_spacing_mm is None
    assert f'Also there: lead spacing "{pitch}' in (found.note or "")


def test_a_remark_on_a_load_leaves_no_line(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value;Notes\nC1;47uF;no load here, 12 V\nC2;47uF;No load\nC3;47uF (not used);\n")
    assert [one.reference for one in draft.positions] == ["C1"]


def test_ranges_and_sections_take_the_unit_of_their_heading(tmp_path: Path) -> None:
    draft = drafted(tmp_path, "Ref;Value [µF];V;Tol\nC1;32+32;350;\nC2;47;25;-10+50\n")
    assert [(one.sections, one.old_tolerance_pct) for one in draft.positions] == [
        ("32 µF + 32 µF", None),
        (None, (-10.0, 50.0)),
    ]
