"""Rows out of CSV and XLSX files: lines, encodings, delimiters; a sentence for each file that can't be read."""

import datetime
import zipfile
from pathlib import Path

import pytest
from openpyxl import Workbook

from subsearch.errors import ListError
from subsearch.reading.rows import Row, Table, read_table
from subsearch.reading.sheets import number_text


def table_of(folder: Path, content: str | bytes, name: str = "list.csv") -> Table:
    file = folder / name
    file.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_table(file)


def cells(table: Table) -> list[tuple[str, ...]]:
    return [row.cells for row in table.rows]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_delimiter_is_decided_on_the_content(tmp_path: Path, delimiter: str) -> None:
    text = f"Invented, all of it; really\na{delimiter}b{delimiter}c\n" + f'1{delimiter}"2,5"{delimiter}3\n' * 5
    assert cells(table_of(tmp_path, text))[1:3] == [("a", "b", "c"), ("1", "2,5", "3")]


def test_decimal_commas_do_not_win_over_semicolons(tmp_path: Path) -> None:
    text = "a;b;c;d\n" + "1,5;2,5;3,5;4,5\n" * 50
    assert cells(table_of(tmp_path, text))[1] == ("1,5", "2,5", "3,5", "4,5")


@pytest.mark.parametrize(
    ("encoding", "notes"),
    [("utf-8", ()), ("utf-8-sig", ()), ("utf-16", ()),
     ("cp1252", ('The file is not UTF-8; it was read as Windows-1252, with "Größe" and "µF" in it. Look at such '
                 "signs.",))],
)  # fmt: skip
def test_encodings(tmp_path: Path, encoding: str, notes: tuple[str, ...]) -> None:
    table = table_of(tmp_path, "Größe;Wert\n1;4,7 µF\n".encode(encoding))
    assert (cells(table), table.notes) == ([("Größe", "Wert"), ("1", "4,7 µF")], notes)


def test_lines_are_those_of_the_file(tmp_path: Path) -> None:
    table = table_of(tmp_path, 'a,b\r\n\r\n1,"two\nlines"\n , \n3,4\n')
    assert table.rows == [Row(1, ("a", "b")), Row(3, ("1", "two\nlines")), Row(6, ("3", "4"))]


def test_odd_cells_stay_as_they_are(tmp_path: Path) -> None:
    odd = ["=cmd|'/c calc'!A1", "'); drop table part; --", "nul \0 inside", "🔋", "x" * 300_000]
    table = table_of(tmp_path, "a,b,c,d,e\n" + ",".join(odd) + "\n")
    assert cells(table)[1] == tuple(odd)


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("list.csv", b"", '"list.csv" is empty. Save the list again, with its heading line.'),
        ("list.csv", b" \n;;\n", '"list.csv" holds only blank lines. Save the list again, with its heading line.'),
        ("list.pdf", b"x", '"list.pdf" ends in ".pdf". Lists are read from .csv, .txt, .tsv or .xlsx files.'),
        ("list.csv", b"PK\x03\x04..", '"list.csv" is not text but a zip file or spreadsheet; save it with the ending '
                                      ".xlsx if it is one."),
        ("list.csv", b"\xff\xfea\0b", '"list.csv" begins as UTF-16 text but can\'t be read so (byte 3). '
                                     "Save it as CSV (UTF-8)."),
        ("list.csv", b"a\x00\x01\x02\x03b" * 9, '"list.csv" is not text: it holds binary data. '
                                                "Save the list as CSV (UTF-8) or XLSX."),
        ("list.csv", b"a;b\n\x81\x90\xfe;2\n", '"list.csv" is not UTF-8, and in no other encoding that is tried does '
                                            'it make sense (as code page 866 it would hold "БР■"). '
                                            "Save it as CSV (UTF-8)."),
        ("list.xlsx", b"not a sheet", '"list.xlsx" is not an XLSX file, or it is damaged. '
                                      "Save the list again as XLSX or CSV."),
        ("list.xlsx", b"\xd0\xcf\x11\xe0" * 9, '"list.xlsx" is protected by a password or is an old .xls file. '
                                               "Save it as a plain XLSX."),
    ],
)  # fmt: skip
def test_each_unreadable_file_has_its_sentence(tmp_path: Path, name: str, content: bytes, sentence: str) -> None:
    with pytest.raises(ListError) as caught:
        table_of(tmp_path, content, name)
    assert str(caught.value) == sentence


def test_a_missing_file_and_a_folder(tmp_path: Path) -> None:
    with pytest.raises(ListError, match=r'^There is no file ".*none.csv". Check the name and the folder.$'):
        read_table(tmp_path / "none.csv")
    with pytest.raises(ListError, match=r"is a folder, not a list. Name the files in it one by one.$"):
        read_table(tmp_path)


def test_unmatched_quotation_marks_name_the_line(tmp_path: Path) -> None:
    with pytest.raises(ListError) as caught:
        table_of(tmp_path, 'a,b\n1,2\n3,"4"5\n')
    assert str(caught.value) == (
        "\"list.csv\", line 3: the quotation marks do not match (',' expected after '\"'). "
        "Inside a quoted cell write each quotation mark twice, and close the cell."
    )


def sheet(folder: Path, *sheets: list[list[object]]) -> Path:
    book = Workbook()
    book.remove(book.worksheets[0])
    for number, rows in enumerate(sheets, 1):
        page = book.create_sheet(f"Page {number}")
        for row in rows:
            page.append(row)
    book.save(folder / "list.xlsx")
    return folder / "list.xlsx"


def test_a_sheet_gives_the_shortest_text_of_each_cell(tmp_path: Path) -> None:
    day = datetime.datetime(2026, 10, 3)
    rows: list[list[object]] = [["preamble"], [], [4.7, 100.0, 4.7e-06, True, day, None, "6V3", None]]
    table = read_table(sheet(tmp_path, rows))
    assert table.rows == [
        Row(1, ("preamble",)),
        Row(3, ("4.7", "100", "0.0000047", "yes", "2026-10-03", "", "6V3")),
    ]
    assert (table.notes, table.ragged) == ((), False)


def test_a_cell_shown_in_per_cent_is_in_per_cent(tmp_path: Path) -> None:
    file = sheet(tmp_path, [["a"], [0.2]])
    from openpyxl import load_workbook

    book = load_workbook(file)
    book.worksheets[0]["A2"].number_format = "0%"
    book.save(file)
    assert cells(read_table(file)) == [("a",), ("20 %",)]


def test_the_first_sheet_that_holds_anything_is_read(tmp_path: Path) -> None:
    table = read_table(sheet(tmp_path, [], [["a"]], [["b"]]))
    assert (cells(table), table.notes) == ([("a",)], ('Only the sheet "Page 2" was read, not "Page 3".',))


def test_a_formula_without_a_stored_result_is_said(tmp_path: Path) -> None:
    table = read_table(sheet(tmp_path, [["a", "b"], [1, "=A2+1"]]))
    assert cells(table)[1] == ("1",)
    assert table.notes == (
        "The sheet holds formulas without a stored result; they read as empty. Open and save it once.",
    )


def test_a_sheet_that_states_a_wrong_extent_is_read_whole(tmp_path: Path) -> None:
    right = sheet(tmp_path, [["a", "b"], ["c", "d"]])
    wrong = tmp_path / "wrong.xlsx"
    with zipfile.ZipFile(right) as archive, zipfile.ZipFile(wrong, "w") as copy:
        for name in archive.namelist():
            copy.writestr(name, archive.read(name).replace(b'ref="A1:B2"', b'ref="A1"'))
    assert wrong.read_bytes() != right.read_bytes()
    assert cells(read_table(wrong)) == [("a", "b"), ("c", "d")]


def test_a_damaged_sheet_is_one_sentence(tmp_path: Path) -> None:
    file = tmp_path / "list.xlsx"
    with zipfile.ZipFile(file, "w") as archive:
        archive.writestr("nothing.xml", "<a/>")
    with pytest.raises(ListError, match=r"^\"list.xlsx\" can't be read as XLSX \(.*\). Save the list again"):
        read_table(file)


@pytest.mark.parametrize(
    ("value", "text"), [(6.3, "6.3"), (1e-13, "0.0000000000001"), (0, "0"), (12345678, "12345678")]
)
def test_number_text(value: float, text: str) -> None:
    assert number_text(value) == text
