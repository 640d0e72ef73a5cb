"""`subsearch positions` drafts a repair from a parts list that `subsearch repair` then runs on."""

from pathlib import Path

import pytest
from cli.common import Say
from organ_list import ORGAN, REFERENCES


@pytest.fixture
def organ(bench: Path) -> Path:
    (bench / "organ").mkdir()
    (bench / "organ" / "parts.csv").write_bytes(ORGAN.encode("cp1252"))
    return bench / "organ"


def test_what_is_told(organ: Path, say: Say) -> None:
    said = say("positions", "organ/parts.csv")
    assert (said.status, said.err) == (0, "")
    assert said.out.startswith("parts.csv: 29 lines read, 15 taken, 14 left; 18 positions drafted\n")
    for line in (
        '  The file is not UTF-8; it was read as Windows-1252, with "1µF" and "µF" in it. Look at such signs.',
        "  10 µF, 25 V: C102, C205",
        "  15 nF, 63 V: C107–C109",
        "  32 µF + 32 µF, 350 V: C302",
        "  no value filled in, voltage not filled in: C113, C208",
        "Doubts about 6 positions; a field in doubt is not filled in:",
        "  C107–C109: The list says 2 pieces for 3 references.",
        "Left, above the headings: 2 lines",
        "Left, not a capacitor: 6 lines",
        "  line 22: C305: a variable capacitor.",
        "  a resistor: 1 line",
        "  a diode: 1 line",
        "  line 31: C103: drafted already from line 7.",
        "  line 29: No reference stands on it.  [Summen]",
        "Written: organ/positions.csv",
        "Written: organ/repair.toml",
    ):
        assert f"{line}\n" in said.out, line


def test_a_repair_runs_on_the_draft(organ: Path, say: Say) -> None:
    assert say("positions", "organ/parts.csv").status == 0
    said = say("repair", "organ")
    assert said.status in (0, 1) and said.err == ""
    assert f"parts: {len(REFERENCES)} positions" in said.out


def test_a_draft_goes_where_it_is_told_and_over_nothing_unasked(organ: Path, say: Say) -> None:
    assert say("positions", "organ/parts.csv", "--out", "deep/down").status == 0
    drafted = (organ.parent / "deep" / "down" / "positions.csv").read_bytes()
    assert sorted(file.name for file in organ.iterdir()) == ["parts.csv"]
    (organ / "positions.csv").write_text("mine", encoding="utf-8")
    assert say("positions", "organ/parts.csv").status == 5
    assert (organ / "positions.csv").read_text(encoding="utf-8") == "mine"
    assert say("positions", "organ/parts.csv", "--replace").status == 0
    assert (organ / "positions.csv").read_bytes() == drafted


def test_many_lines_are_counted(bench: Path, say: Say) -> None:
    others = "".join(f"R{number};10k\n" for number in range(1, 40))
    (bench / "many.csv").write_text(
        f"Ref;Value\nC1;1u\nC2;10k\n{others}" + "".join(f"{number};1u\n" for number in range(20)), encoding="utf-8"
    )
    said = say("positions", "many.csv", "--out", "new")
    assert 'Left, not a capacitor: 40 lines\n  line 3: C2: "10k" speaks of a resistor' in said.out
    assert "  a resistor: 39 lines\n" in said.out
    assert said.out.count("No reference stands on it.") == 12
    assert "  and 8 more\n" in said.out


def test_positions_of_several_cards_are_told_apart(bench: Path, say: Say) -> None:
    text = "Board;Ref;Value;Voltage\nPreamp;C1;10µ;25\nPreamp;C2;47/16;\nPower;C1;10µ;25\nPower;C2;47/16;\n"
    (bench / "cards.csv").write_text(text, encoding="utf-8")
    said = say("positions", "cards.csv", "--out", "new")
    assert "  10 µF, 25 V: C1 (Power); C1 (Preamp)\n" in said.out
    assert '  C2 (Power); C2 (Preamp): "47/16" was taken as 47 µF 16 V: no unit is printed.\n' in said.out


def test_signs_that_steer_a_terminal_are_not_printed(bench: Path, say: Say) -> None:
    many = "".join(f"C{number};1u\n" for number in range(2, 30))
    (bench / "odd.csv").write_text(f"Ref;Value\nC1;\x1b[31m1u\n;\x1b[2J\n{many}", encoding="utf-8")
    said = say("positions", "odd.csv", "--out", "new")
    assert said.status == 0 and "[2J]" in said.out
    assert "\x1b" not in said.out + said.err
