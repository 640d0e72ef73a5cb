"""A text file that the database cuts by itself and the same file read as rows: the same lines, cells and refusals."""

from collections.abc import Iterator
from contextlib import nullcontext
from pathlib import Path
from random import Random

import duckdb
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from speed.messy_list import spoilt, write_messy

from subsearch.catalog import intake, staged_lines
from subsearch.catalog.intake import load
from subsearch.catalog.layouts import HEADING_ROWS, Layout
from subsearch.catalog.staged_lines import stage_lines
from subsearch.catalog.store import open_to_read, tables
from subsearch.errors import ListError
from subsearch.reading import plain_files
from subsearch.reading.plain_files import HEAD_ROWS, PlainFile, plain_file
from subsearch.reading.rows import HEAD_TEXT, Row, Table, read_table
from subsearch.reading.sheets import read_sheet

Lines = tuple[int | None, list[tuple[object, ...]], list[tuple[object, ...]]]
HEADINGS = "a heading;a longer one;c\n"
CUT = {  # cut by the database
    "plain": "1;2;3\n4;5;6\n",
    "no last end of line": "1;2;3\n4;5;6",
    "blank lines": "\n1;2;3\n\n ;\u00a0;\u2003\n;;\n\n4;5;6\n\n",
    "too few and too many cells": "1;2\n3;4;5\n6;7;8;9\n10\n;;;\n;;;x\n",
    "an end with a separator": "1;2;\n3;4;5;\n",
    "simple quotation marks": '"1;x";2;3\n4;"5";""\n"";"";""\n"";;\n"\u00a0";" ";\n',
    "doubled quotation marks": '"1""x";2;3\n4;"5;""";6\n""""; ;\n',
    "quotation marks inside": '1"x;2;3\n 4"";"5";6\n7; "8";9\n" ";";";"""a"""\n',
    "too many cells in quotation marks": '"1";"2"\n"1";"2";"3";"4;"\n"1";"2"";"\n',
    "odd characters": "\x0b;\x0c;\x1c\n\x85;\u2028;x\ufeff\n🔋;\\N;NULL\n# 1;'2';\\\n",
    "odd spaces": "\x1f;\u2003;\u3000\n\u2060;;\n",
    "ends of lines without a line feed": "1;2;3\r4;5;6\r\r7",
    "ends of lines of all kinds": "1;2;3\r\n4;5;6\n;\r;7;\n\r\n\r\r8",
    "a long line": f"{'x' * 300_000};2;3\n4;5;6\n",
}
READ = {  # read as rows
    "an end of line in quotation marks": '"1\n2";3;4\n5;6;7\n',
    "quotation marks over a blank line": '"1\n\n";3;4\n5;6;7\n',
    "nul": "1;\x00;3\n",
    "the sign that cuts nowhere": "1;\x01;3\n",
    "the sign put aside, in quotation marks": '"\x1f;";2;3\n',
    "a line that is too long": f"{'x' * 1_200_000};2;3\n4;5;6\n",
}
WRONG = {
    "an open cell": '1;2;3\n4;"5;6\n',
    "a mark after a cell": '1;2;3\n4;"5"6;7\n',
    "a cell over lines that stays open": '1;"2\n3";4\n5;"6;7\n',
}


@pytest.fixture(scope="module")
def con() -> Iterator[duckdb.DuckDBPyConnection]:
    with duckdb.connect() as con:
        yield con


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("lists")
    (folder / "list 1 beside it.csv").write_text("never read")
    return folder


def staged(con: duckdb.DuckDBPyConnection, source: Table | PlainFile) -> Lines:
    """What stands in the database of the lines below the first row; None for their number: not cut."""
    first = source.rows[0]
    number = stage_lines(con, source, Layout(first.line, first.cells, (), ()))
    if number is None:
        return None, [], []
    return number, con.execute("from staged").fetchall(), con.execute("from damaged order by line").fetchall()


def written(folder: Path, content: bytes) -> Path:
    file = folder / "list [1]*.csv"  # a name, not a pattern of names
    file.write_bytes(content)
    return file


def both(con: duckdb.DuckDBPyConnection, file: Path) -> bool:
    """Assert that both ways give the same; whether the database cut the file."""
    try:
        table = read_table(file)
    except ListError as error:
        try:
            with plain_file(file) as plain:
                assert plain is None or staged(con, plain)[0] is None
        except ListError as same:
            assert str(same) == str(error)
        return False
    with plain_file(file) as plain:
        cut = staged(con, plain) if plain else (None, [], [])
    if plain is None or cut[0] is None:
        return False
    assert (plain.file, plain.rows, plain.notes) == (file, table.rows[:HEAD_ROWS], table.notes)
    assert cut == staged(con, table)
    assert cut[0] == len(table.rows) - 1
    return True


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("what", CUT)
def test_files_that_are_cut(con: duckdb.DuckDBPyConnection, folder: Path, what: str, mark: str, end: str) -> None:
    assert both(con, written(folder, (mark + HEADINGS + CUT[what]).replace("\n", end).encode()))


@pytest.mark.parametrize("what", READ)
def test_files_that_are_read_as_rows(con: duckdb.DuckDBPyConnection, folder: Path, what: str) -> None:
    file = written(folder, (HEADINGS + READ[what]).encode())
    assert not both(con, file)
    assert len(read_table(file).rows) > 1


@pytest.mark.parametrize("what", WRONG)
def test_quotation_marks_that_do_not_match_keep_their_sentence(tmp_path: Path, what: str) -> None:
    headings = "Part number;Cap uF;Voltage;Price\n"
    file = written(tmp_path, (headings + WRONG[what]).encode())
    with pytest.raises(ListError, match=r'^"list \[1\]\*.csv", line [34]: the quotation marks do not match \('):
        load(tmp_path / "c", [file])


def test_other_encodings_are_copied(con: duckdb.DuckDBPyConnection, folder: Path) -> None:
    assert both(con, written(folder, "a;b\n4,7 µF;2\n".encode("cp1252")))
    assert both(con, written(folder, "a;b\n4,7 µF;2\n".encode()[:-1] + b"\xc2"))
    assert both(con, written(folder, "\ufeff\ufeffa;b\r\ufeff;2\r".encode()))


def test_an_ordinary_file_is_not_copied(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for block in (1 << 19, 4):  # with 4, one block ends between the two signs of an end of line
        monkeypatch.setattr(plain_files, "BLOCK", block)
        for end in ("\n", "\r\n"):
            with plain_file(written(folder, f"a{end}b{end}c{end}d{end}".encode())) as plain:
                assert plain is not None and plain.content == plain.file


CELLS = st.text(st.sampled_from('ab1,; \t"\u00a0\u2028\x1f\x0bé🔋\\'), max_size=6)
QUOTED = CELLS.map(lambda cell: '"' + cell.replace('"', '""') + '"')
ROWS = st.lists(st.one_of(CELLS, QUOTED, st.just("")), max_size=5).map(";".join)
SOUP = st.lists(st.sampled_from(["a", '"', '""', ";", ",", " ", "\n", "\r", "\r\n", '"\n"', "\x00", "é"])).map("".join)
ENDS = st.sampled_from(["\n", "\r\n", "\r"])
TABLES = st.tuples(st.lists(ROWS, max_size=8), ENDS, st.one_of(ENDS, st.just("")))
TEXTS = st.one_of(TABLES.map(lambda drawn: drawn[1].join(drawn[0]) + drawn[2]), SOUP)


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@example(text='"";\n', mark="", block=64)
@given(text=TEXTS, mark=st.sampled_from(["", "\ufeff"]), block=st.sampled_from([1 << 19, 64, 7, 1]))
def test_any_text(
    con: duckdb.DuckDBPyConnection, folder: Path, monkeypatch: pytest.MonkeyPatch, text: str, mark: str, block: int
) -> None:
    monkeypatch.setattr(plain_files, "BLOCK", block)
    both(con, written(folder, (mark + HEADINGS + text).encode()))


def test_a_text_longer_than_its_beginning(con: duckdb.DuckDBPyConnection, folder: Path) -> None:
    rows = [f'{number};"{number}µ";{"x" * 90}\n' for number in range(30_000)]
    assert len("".join(rows)) > HEAD_TEXT
    assert both(con, written(folder, (HEADINGS + "".join(rows)).encode()))
    wide = [f"{number};{'x' * 100_000};3\n" for number in range(HEAD_ROWS - 10)]
    assert not both(con, written(folder, (HEADINGS + "".join(wide)).encode()))


def test_a_row_that_is_cut_off_is_none_of_the_first(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, value in {"BLOCK": 8, "HEAD_TEXT": 8, "HEAD_ROWS": 2}.items():
        monkeypatch.setattr(plain_files, name, value)
    with plain_file(written(folder, b"a;b\n1;2345\n6;7\n8;9\n")) as plain:
        assert plain is not None and plain.rows == [Row(1, ("a", "b")), Row(2, ("1", "2345"))]


def test_the_beginning_holds_the_rows_in_which_headings_are_looked_for() -> None:
    assert HEAD_ROWS >= HEADING_ROWS


def test_rows_are_handed_over_in_turns(
    con: duckdb.DuckDBPyConnection, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(staged_lines, "AT_ONCE", 3)
    text = HEADINGS + "".join(f"{number};\x01;{'x' * 40}\n" for number in range(8)) + "1;2\n"
    number, lines, damaged = staged(con, read_table(written(folder, text.encode())))
    assert (number, damaged) == (9, [(10, ["1", "2"])])
    assert lines == [(number + 2, str(number), "\x01", "x" * 40) for number in range(8)]


def test_rows_of_a_sheet_have_their_own_widths(con: duckdb.DuckDBPyConnection, tmp_path: Path) -> None:
    from openpyxl import Workbook

    book = Workbook()
    for row in (["a", "b", "c"], [1], [1, 2, 3, 4]):
        book.worksheets[0].append(row)
    book.save(tmp_path / "list.xlsx")
    rows, notes = read_sheet(tmp_path / "list.xlsx")
    assert staged(con, Table(tmp_path / "list.xlsx", rows, notes, ragged=False)) == (
        2,
        [(2, "1", "", "", ""), (3, "1", "2", "3", "4")],
        [],
    )


def test_a_messy_list_loads_alike_both_ways(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file, lines = tmp_path / "messy.csv", 3000
    write_messy(file, lines)
    dice, text = Random(1), file.read_text(encoding="utf-8").split("\n")
    for number in range(1, lines + 1):  # quotation marks of all kinds, and blank lines
        cells = text[number].split(";")
        cells[1] = dice.choice((cells[1], f'"{cells[1]}"', f'"{cells[1]}; ""Weir"""', f'{cells[1]} "W"'))
        text[number] = ";".join(cells) + dice.choice(("", "", "\n", "\n;;"))
    file.write_text("\n".join(text), encoding="utf-8", newline="")
    (cut,) = load(tmp_path / "cut", [file], currency="EUR")
    monkeypatch.setattr(intake, "plain_file", lambda file: nullcontext())
    (read,) = load(tmp_path / "read", [file], currency="EUR")
    assert cut == read
    assert (cut.lines_read, cut.refused) == (lines, spoilt(lines))
    with open_to_read(tmp_path / "cut") as one, open_to_read(tmp_path / "read") as other:
        for table in tables():
            columns = "* exclude (loaded)" if table == "intake" else "*"
            rows = one.execute(f"select {columns} from {table}").fetchall()
            assert rows == other.execute(f"select {columns} from {table}").fetchall(), table
        assert one.execute("select count(distinct fault) from refusal").fetchall() == [(9,)]
