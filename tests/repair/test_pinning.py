"""One row is written back, every other stays as it was read, and the folder is never left unreadable."""

import os
import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from repair.common import write

from subsearch.errors import CellsError, RepairError, UnknownNameError
from subsearch.repair.conceding import Conceded
from subsearch.repair.folder import read_repair
from subsearch.repair.pinning import remove_row, with_part, write_row
from subsearch.repair.position_rows import position_rows, rows
from subsearch.repair.positions import COLUMNS
from subsearch.repair.trial import Trial, trials_of
from subsearch.shipped import shipped

ORGAN = shipped("catalog_demo") / "organ"
PLAIN = "reference,marking,card,headroom_mm\nC1,47/25,main,12\nC1,47/25,side,\nC2,x,main, 9 mm \n"


def organ(folder: Path) -> Path:
    return write(
        folder, (ORGAN / "positions.csv").read_text(encoding="utf-8"), (ORGAN / "repair.toml").read_text("utf-8")
    )


def written(folder: Path) -> str:
    return (folder / "positions.csv").read_text(encoding="utf-8")


def test_only_the_position_pinned_is_another(tmp_path: Path) -> None:
    before = read_repair(organ(tmp_path))
    lines = written(tmp_path).splitlines()
    for at, (name, trial) in enumerate(trials_of(tmp_path).items()):
        earlier = write_row(tmp_path, with_part(trial, "Mill", "Hollow 1"))
        after = read_repair(tmp_path)
        changed = [one.name for one, was in zip(after.positions, before.positions, strict=True) if one != was]
        assert changed == [name]
        assert (after.positions[at].pinned_maker, after.positions[at].pinned_part_number) == ("Mill", "Hollow 1")
        now = written(tmp_path).splitlines()
        assert [one for one in range(len(lines)) if lines[one] != now[one]] == [at + 1]
        assert earlier is not None and write_row(tmp_path, earlier) == {
            **earlier,
            "pinned_maker": "Mill",
            "pinned_part_number": "Hollow 1",
        }
        assert written(tmp_path).splitlines() == lines and read_repair(tmp_path) == before


def test_a_row_is_found_by_reference_and_card(tmp_path: Path) -> None:
    write(tmp_path, PLAIN)
    assert write_row(tmp_path, {"reference": "C1", "card": "side", "marking": "new"}) == {
        "reference": "C1", "marking": "47/25", "card": "side", "headroom_mm": "",
    }  # fmt: skip
    assert written(tmp_path) == PLAIN.replace("C1,47/25,side", "C1,new,side")


def test_columns_that_are_new_are_added_and_what_is_left_out_is_emptied(tmp_path: Path) -> None:
    write(tmp_path, PLAIN)
    write_row(tmp_path, with_part(Trial({"reference": "C1", "card": "main", "plated": "no"}), None, "Hollow 1"))
    assert written(tmp_path) == (
        "reference,marking,card,headroom_mm,plated,pinned_part_number\nC1,,main,,no,Hollow 1\nC1,47/25,side,,,\n"
        "C2,x,main, 9 mm ,,\n"
    )
    assert read_repair(tmp_path).positions[0].pinned_maker is None


def test_a_position_that_is_not_there_is_appended_and_taken_out_again(tmp_path: Path) -> None:
    before = read_repair(write(tmp_path, PLAIN))
    assert write_row(tmp_path, {"reference": "C1", "capacitance": "1 µF"}) is None
    assert [one.name for one in read_repair(tmp_path).positions] == ["C1 (main)", "C1 (side)", "C2 (main)", "C1"]
    assert remove_row(tmp_path, "C1")["capacitance"] == "1 µF"
    assert read_repair(tmp_path) == before
    assert remove_row(tmp_path, "C1", "side")["marking"] == "47/25"
    with pytest.raises(RepairError, match=r'"positions.csv" has no position C1 \(sied\). Did you mean "C1 \(main\)"'):
        remove_row(tmp_path, "C1", "sied")


def test_what_is_common_and_what_is_conceded_stays_out_of_the_measured_columns(tmp_path: Path) -> None:
    write(tmp_path, PLAIN)
    made = Conceded("4.5 mm more headroom", (("headroom_mm", 16.5),)), Conceded("waiting for delivery", ())
    trial = Trial({"reference": "C1", "card": "main", "headroom_mm": "12", "pieces": "7", "note": "hums"}, made)
    write_row(tmp_path, with_part(trial, "Mill", "Hollow 1"))
    (row, *_) = rows(tmp_path)
    assert row["headroom_mm"] == "12" and "pieces" not in row
    assert row["note"] == "hums [Conceded: 4.5 mm more headroom; waiting for delivery]"
    again = Trial({**row, "note": f"{row['note']} at night"}, made[:1])
    assert with_part(again, "Mill", "Hollow 2")["note"] == "hums at night [Conceded: 4.5 mm more headroom]"
    assert with_part(Trial(row), "Mill", "Hollow 2")["note"] == "hums"


ODD = {
    "semicolons": "reference;marking;note\nC1;47/25;a, b\nC2;4,7 µF;c\n".encode(),
    "a mark at the start": "\ufeffreference,marking,note\nC1,47/25,a\nC2,4.7 µF,c\n".encode(),
    "Latin-1": "reference;marking;note\nC1;47/25;Gehäuse gewölbt\nC2;4,7 µF;größer\n".encode("latin-1"),
    "UTF-16": "reference\tmarking\tnote\nC1\t47/25\ta\nC2\t4,7 µF\tc\n".encode("utf-16"),
    "quoted ends of lines": b'reference,marking,note\r\nC1,47/25,"a\r\nb"\r\nC2,"4,7","say ""c""\n"\r\n',
    "blank lines and blanks": b" reference , marking,note\n\nC1 , 47/25, a \n,,\nC2,x,  c\n",
    "texts that would run": b"reference,marking,note\nC1,=1+1,-2\nC2,'=1+1,@c\n",
    "semicolons within": b'reference;marking;note\nC1;"%s";\nC2;"%s";\n'.replace(b"%s", b"a;b;c;d;e;f;g;h;i;j;k;l;m;n"),
}


@pytest.mark.parametrize("raw", ODD.values(), ids=ODD)
def test_odd_files_keep_what_they_say(raw: bytes, tmp_path: Path) -> None:
    write(tmp_path, "")
    (tmp_path / "positions.csv").write_bytes(raw)
    before, table = read_repair(tmp_path), position_rows(tmp_path / "positions.csv")
    write_row(tmp_path, with_part(trials_of(tmp_path)["C2"], "Mühle", "Hollow 1"))
    after = read_repair(tmp_path)
    assert after.positions[0] == before.positions[0]
    was, now = before.positions[1], after.positions[1]
    assert (now.marking, now.note) == (was.marking, was.note)
    assert now.pinned_maker == "Mühle"
    kept = position_rows(tmp_path / "positions.csv").rows[0].as_written
    assert {name: kept[name] for name in table.headings} == table.rows[0].as_written
    written(tmp_path)  # as UTF-8


CELLS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=6) | st.sampled_from(
    ["=1+1", "'=1", "-", '"', ",", ";", "a\nb", "µ", "Ã¤", "'"]
)
NAMED = ("marking", "visual", "note", "pinned_maker", "pinned_part_number", "old_technology")
ROWS = st.lists(st.fixed_dictionaries(dict.fromkeys(NAMED, CELLS)), min_size=1, max_size=3)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)
@given(ROWS, st.data())
def test_any_texts_come_back(tmp_path: Path, texts: list[dict[str, str]], data: st.DataObject) -> None:
    """Or the list stays as it was, and that is said."""
    write(tmp_path, "reference,marking\nC0,x\n")
    for at, cells in enumerate(texts):
        before = rows(tmp_path)
        try:
            write_row(tmp_path, {"reference": f"C{at}", **cells})
        except RepairError:
            assert rows(tmp_path) == before
            continue
        row = rows(tmp_path)[-1] if at else rows(tmp_path)[0]
        if row["reference"] == f"C{at}":
            for heading, text in cells.items():
                meant = text.strip()
                assert row.get(heading, "") == (meant[1:] if meant.startswith("'=") else meant)
    assert [one for one in tmp_path.iterdir() if one.name.startswith(".")] == []


def test_part_numbers_like_formulas_are_kept_apart_and_found_again(tmp_path: Path) -> None:
    write(tmp_path, PLAIN)
    write_row(tmp_path, {"reference": "C2", "card": "main", "pinned_part_number": "-470/25", "dc_lowest_v": "-2 V"})
    assert ",-2 V,'-470/25" in written(tmp_path)
    pinned = read_repair(tmp_path).positions[2]
    assert (pinned.pinned_part_number, pinned.dc_lowest_v) == ("-470/25", -2.0)
    assert trials_of(tmp_path)["C2 (main)"].cells["pinned_part_number"] == "-470/25"


REFUSED = {
    "a bad text": ({"reference": "C2", "headroom_mm": "x"}, CellsError, 'C2, headroom_mm: "x" is not a quantity'),
    "no reference": ({"card": "main"}, RepairError, "The reference is empty. Give the position the name printed"),
    "an unknown heading": ({"reference": "C2", "hight": "3"}, UnknownNameError, '"hight" is not a heading.'),
    "an unknown card": ({"reference": "C9", "card": "mian"}, RepairError, 'C9: the card "mian" is not in repair.toml.'),
}


@pytest.mark.parametrize(("cells", "kind", "sentence"), REFUSED.values(), ids=REFUSED)
def test_what_is_refused_leaves_the_file(
    cells: dict[str, str], kind: type[Exception], sentence: str, tmp_path: Path
) -> None:
    write(tmp_path, PLAIN)
    with pytest.raises(kind) as caught:
        write_row(tmp_path, cells)
    assert str(caught.value).startswith(sentence)
    assert written(tmp_path) == PLAIN
    assert sorted(one.name for one in tmp_path.iterdir()) == ["positions.csv", "repair.toml"]


def test_the_last_position_stays(tmp_path: Path) -> None:
    write(tmp_path, "reference,marking\nC1,x\n")
    with pytest.raises(RepairError, match="has a heading line but no position"):
        remove_row(tmp_path, "C1")
    assert written(tmp_path) == "reference,marking\nC1,x\n"


@pytest.mark.parametrize("step", ["fsync", "replace", "copymode"])
def test_a_crash_in_the_middle_leaves_the_old_file(step: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def crash(*_: object) -> None:
        raise OSError(28, "No space left on device", "positions.csv")

    write(tmp_path, PLAIN)
    monkeypatch.setattr({"fsync": os, "replace": Path, "copymode": shutil}[step], step, crash)
    with pytest.raises(OSError, match="No space left"):
        write_row(tmp_path, {"reference": "C2", "card": "main"})
    monkeypatch.undo()
    assert written(tmp_path) == PLAIN
    assert sorted(one.name for one in tmp_path.iterdir()) == ["positions.csv", "repair.toml"]


def test_a_link_still_leads_to_the_list(tmp_path: Path) -> None:
    folder, elsewhere = tmp_path / "radio", tmp_path / "elsewhere"
    folder.mkdir()
    elsewhere.mkdir()
    write(folder, PLAIN)
    (folder / "positions.csv").rename(elsewhere / "kept.csv")
    (folder / "positions.csv").symlink_to(elsewhere / "kept.csv")
    write_row(folder, {"reference": "C2", "card": "main"})
    assert (folder / "positions.csv").is_symlink()
    assert "C2,,main," in (elsewhere / "kept.csv").read_text(encoding="utf-8")


def test_every_column_can_be_written(tmp_path: Path) -> None:
    organ(tmp_path)
    for name, trial in trials_of(tmp_path).items():
        write_row(tmp_path, trial.cells)
        assert trials_of(tmp_path)[name] == trial
    assert written(tmp_path).splitlines()[0] == ",".join(COLUMNS)
