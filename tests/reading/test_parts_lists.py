"""Parts lists of every shape (ours): the columns found, the lines put right, and no line lost."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl import Workbook
from organ_list import ORGAN

from subsearch.errors import ListError, SubsearchError
from subsearch.reading import parts_lists
from subsearch.reading.parts_list_headings import Heading, read_heading
from subsearch.reading.parts_lists import PartsList, read_parts_list


def listed(folder: Path, text: str | bytes, name: str = "list.csv") -> PartsList:
    file = folder / name
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_parts_list(file)


def lines(folder: Path, text: str | bytes, name: str = "list.csv") -> list[tuple[str, dict[str, str]]]:
    """References and cells of the lines that name positions."""
    return [(" ".join(one.references), dict(one.cells)) for one in listed(folder, text, name).lines if one.references]


TWO = [("C1 C2", {"value": "47 µF", "voltage": "25 V"}), ("C3", {"value": "100 nF", "voltage": "63 V"})]
SHAPES = {
    "commas": 'Ref,Value,Voltage\n"C1, C2",47 µF,25\nC3,100 nF,63\n',
    "semicolons": "Ref;Value;Voltage\nC1, C2;47 µF;25\nC3;100 nF;63\n",
    "tabs": "Ref\tValue\tVoltage\nC1-C2\t47 µF\t25 V\nC3\t100 nF\t63 V\n",
    "line ends of another system": "Ref;Value;Voltage\r\nC1 C2;47 µF;25\r\nC3;100 nF;63\r\n",
    "preamble": "Radio\nsheet;1\n;;\nRef;Value;Voltage\nC1;C2;47 µF;25\nC3;100 nF;63\n".replace("C1;C2", "C1,C2"),
    "no heading": '"C1,C2",47 µF,25 V\nC3,100 nF,63 V\n',
    "headings swapped": 'Value,Ref,Voltage\n"C1,C2",47 µF,25 V\nC3,100 nF,63 V\n',
    "commas without quotation marks": "Ref,Value,Voltage\nC1,C2,47 µF,25\nC3,100 nF,63\n",
    "a cell in front": "Ref;Value;Voltage\n1;C1,C2;47 µF;25\n2;C3;100 nF;63\n",
    "fewer headings": "Ref;Value\nC1,C2;47 µF;25 V\nC3;100 nF;63 V\n",
    "headings in another order": "Voltage;Value;Ref\n25;47 µF;C1,C2\n63;100 nF;C3\n",
    "unit in the heading": "Ref;Value;U [V]\nC1,C2;47 µF;25\nC3;100 nF;63\n",
    "units below the headings": "Ref;Cap;Voltage\n;[µF];V\nC1,C2;47;25\nC3;0,1;63\n".replace("0,1", "100 nF"),
    "three references a line": "Ref;Value;Voltage\nC1,C2;47 µF;25\nC3;100 nF;63\nR1,R2,R3;1k;\nR4,R5,R6;1k;\n",
    "units in a column": "Ref;Value;Unit;Voltage\nC1,C2;47;µF;25\nC3;100;nF;63\n",
    "shortened headings": "Ref.;Val.;Volt.\nC1,C2;47 µF;25\nC3;100 nF;63\n",
    "wide gaps": "Ref       Value    Voltage\nC1 C2     47 µF    25 V\nC3        100 nF   63 V\n",
    "bars": "Ref | Value | Voltage\nC1, C2 | 47 µF | 25 V\nC3 | 100 nF | 63 V\n",
    "two tables": "Ref;Value;Voltage\nC1,C2;47 µF;25\nFilms\nVoltage;Ref;Value\n63;C3;100 nF\n",
    "headings again": "Ref;Value;Voltage\nC1,C2;47 µF;25\nRef;Value;Voltage\nC3;100 nF;63\n",
}


@pytest.mark.parametrize("text", SHAPES.values(), ids=SHAPES)
def test_shapes(tmp_path: Path, text: str) -> None:
    found = [one for one in lines(tmp_path, text) if one[0][0] == "C"]
    assert [(names, {kind: cells[kind] for kind in ("value", "voltage")}) for names, cells in found] == TWO
    assert all(cells.keys() <= {"value", "voltage", "unused"} for _, cells in found)


def test_a_sheet(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (
        ["Radio", 7],
        [],
        ["Ref", "Cap (nF)", "Voltage", "Qty"],
        ["C1, C2", 47000, 25, 2],
        ["C3", 100.0, 63, 1],
    ):
        sheet.append(row)
    book.save(tmp_path / "list.xlsx")
    found = read_parts_list(tmp_path / "list.xlsx")
    assert [(one.line, one.references, dict(one.cells)) for one in found.lines if one.references] == [
        (4, ("C1", "C2"), {"value": "47000 nF", "voltage": "25 V", "quantity": "2"}),
        (5, ("C3",), {"value": "100 nF", "voltage": "63 V", "quantity": "1"}),
    ]


def test_the_sheet_that_holds_the_list(tmp_path: Path) -> None:
    book = Workbook()
    cover = book.active
    assert cover is not None
    cover.append(["Radio", "C1 to C7 were changed in 1975"])
    for name, rows in {"parts": [["Ref", "Value"], ["C1", "1n"]], "notes": [["Ref", "Value"], ["C2", "2n"]]}.items():
        for row in rows:
            (book[name] if name in book.sheetnames else book.create_sheet(name)).append(row)
    book.save(tmp_path / "list.xlsx")
    found = read_parts_list(tmp_path / "list.xlsx")
    assert [one.references for one in found.lines] == [(), ("C1",)]
    assert found.notes == ('Only the sheet "parts" was read, not "Sheet", "notes".',)


LANGUAGES = {
    "English": "Designator;Value;Rated voltage;Qty;Description",
    "German": "Bauteil;Wert;Nennspannung;Stückzahl;Bemerkung",
    "French": "Repère;Valeur;Tension;Quantité;Désignation",
    "Italian": "Riferimento;Valore;Tensione;Q.tà;Descrizione",
    "Spanish": "Referencia;Valor;Tensión;Cant.;Descripción",
    "Dutch": "Onderdeel;Waarde;Spanning;Aantal;Omschrijving",
    "Polish": "Oznaczenie;Wartość;Napięcie;Ilość;Opis",
    "Czech": "Označení;Hodnota;Napětí;Počet;Popis",
    "Russian": "Поз. обозначение;Номинал;Напряжение;Кол-во;Примечание",
    "Japanese": "部品番号;定数;耐圧;数量;備考",
    "Chinese": "位号;数值;耐压;数量;备注",
    "Chinese (older script)": "位號;數值;耐壓;數量;備註",
    "Korean": "부품번호;값;전압;수량;비고",
}


@pytest.mark.parametrize("headings", LANGUAGES.values(), ids=LANGUAGES)
def test_headings_in_each_language(tmp_path: Path, headings: str) -> None:
    assert lines(tmp_path, f"{headings}\nC7;47;25;1;Z\n") == [
        ("C7", {"value": "47", "voltage": "25 V", "quantity": "1", "description": "Z"})
    ]


@pytest.mark.parametrize(
    ("heading", "kind", "unit"),
    [
        ("Ref.", "reference", ""), ("REFERENCE DESIGNATOR(S)", "reference", ""), ("Part Reference", "reference", ""),
        ("Cap. [µF]", "value", "µF"), ("Capacitance (nF)", "value", "nF"), ("C/µF", "value", "µF"),
        ("pF", "value", "pF"),
        ("Working voltage DC", "voltage", "V"),
        ("Measured voltage", "unused", ""), ("Supply voltage [V]", "unused", "V"),
        ("U (kV)", "voltage", "kV"), ("V", "voltage", "V"),
        ("Tol. %", "tolerance", "%"), ("RM", "lead_spacing", "mm"), ("Qty per board", "quantity", ""),
        ("Q'ty", "quantity", ""), ("Spann.", "voltage", "V"), ("Toler.", "tolerance", "%"), ("Einheit", "unit", ""),
        ("Old marking", "marking", ""), ("Dielectric", "technology", ""), ("DNP", "not_fitted", ""),
        ("Bestückt?", "fitted", ""), ("Platine", "card", ""), ("Item No.", "unused", ""),
    ],
)  # fmt: skip
def test_headings(heading: str, kind: str, unit: str) -> None:
    assert read_heading(heading) == Heading(kind, unit)


@pytest.mark.parametrize("cell", ["", "C12", "47 µF", "100n", "a sentence, and no heading at all", "7 V", "n", "m"])
def test_cells_are_no_headings(cell: str) -> None:
    assert read_heading(cell) is None


@pytest.mark.parametrize(
    ("text", "note"),
    [
        (
            SHAPES["headings swapped"],
            'The column headed "Value" holds the references and values under "Ref": the cells were believed, not the '
            "headings.",
        ),
        (
            SHAPES["a cell in front"],
            "Every line has one cell more in front than the heading line: the headings were moved by one.",
        ),
        (SHAPES["no heading"], "No heading line was found: the columns were told apart by their cells."),
    ],
)
def test_what_was_put_right_is_said(tmp_path: Path, text: str, note: str) -> None:
    assert listed(tmp_path, text).notes == (note,)


@pytest.mark.parametrize(
    ("line", "names", "value", "doubt"),
    [
        (
            "100n 63V;C2",
            "C2",
            "100n 63V",
            "Reference and value stand swapped on this line; the cells were believed, not",
        ),
        ("C1;4;7uF", "C1", "4,7uF", 'The line has a cell too many: "4" and "7uF" were joined.'),
        ("C101-3;1n", "C101 C102 C103", "1n", '"C101-3" was read as C101 to C103.'),
    ],
)
def test_single_lines_put_right(tmp_path: Path, line: str, names: str, value: str, doubt: str) -> None:
    found = listed(tmp_path, f"Ref;Value\nC7;1n\nC8;2n2\n{line}\n").lines[-1]
    assert (" ".join(found.references), found.cells["value"]) == (names, value)
    assert len(found.doubts) == 1 and found.doubts[0].startswith(doubt)


def test_a_voltage_that_a_comma_has_cut_is_joined(tmp_path: Path) -> None:
    found = listed(tmp_path, "Ref,Value,Voltage,Note\nC1,1u,63,film\nC2,1u,1,6kV,film\nC3,4,7u,1,5 kV,film\n").lines
    assert found[2].cells == {"value": "1u", "voltage": "1,6kV", "description": "film"}
    assert found[2].doubts == ('The line has a cell too many: "1" and "6kV" were joined.',)
    assert found[3].cells == {"value": "4,7u", "voltage": "1,5 kV", "description": "film"}


def test_farads_that_a_program_wrote_have_the_unit_of_their_heading(tmp_path: Path) -> None:
    found = listed(tmp_path, "Ref;Capacitance (F)\nC1;4.7e-08\nC2;1E-05\n").lines
    assert [one.cells["value"] for one in found[1:]] == ["4.7e-08 F", "1E-05 F"]


def test_three_references_on_most_lines(tmp_path: Path) -> None:
    text = "Ref;Value\n" + "".join(f"C{n},C{n + 1},C{n + 2};{n}n\n" for n in (1, 4, 7))
    assert [names for names, _ in lines(tmp_path, text)] == ["C1 C2 C3", "C4 C5 C6", "C7 C8 C9"]


def test_a_heading_line_far_down(tmp_path: Path) -> None:
    text = "".join(f"line {number}\n" for number in range(30)) + "Ref;Value\nC1, C2;1n\n"
    found = listed(tmp_path, text)
    assert [one.left for one in found.lines] == [*["above the headings"] * 30, "headings", ""]
    assert found.lines[-1].references == ("C1", "C2")


@pytest.mark.parametrize("cell", ["C4 47 µF 25 V", "47 µF 25 V: C4", "C4: 47 µF 25 V", "C4 = 47 µF 25 V"])
def test_reference_and_value_in_one_cell(tmp_path: Path, cell: str) -> None:
    assert lines(tmp_path, f"C1 1n\nC2, C3 10n\nC5 1n\n{cell}\n")[-1] == ("C4", {"value": "47 µF 25 V"})


def test_references_that_go_on_in_the_next_line(tmp_path: Path) -> None:
    found = listed(tmp_path, "Ref;Value\nC1, C2,;100n\nC3;\nC4;\n").lines
    assert [one.cells for one in found[1:]] == [{"value": "100n"}, {"value": "100n"}, {}]
    assert found[2].doubts == ("It has the value of line 2, whose references end with a comma.",)


def test_positions_that_are_plain_numbers(tmp_path: Path) -> None:
    assert lines(tmp_path, "Pos;Wert\n101;47µF\n102;10k\n") == [("101", {"value": "47µF"}), ("102", {"value": "10k"})]


LEFT = {
    "C8;DNP;": ("not fitted", 'Not fitted: "DNP".'),
    "C8;100n (not fitted);": ("not fitted", 'Not fitted: "not fitted".'),
    "C8;100n;DNP for now": ("not fitted", 'Not fitted: "DNP".'),
    "C8;nicht bestückt;": ("not fitted", 'Not fitted: "nicht bestückt".'),
    "C8;100n;未実装": ("not fitted", 'Not fitted: "未実装".'),
    "C8 (n.b.);100n;": ("not fitted", 'Not fitted: "n.b.".'),
    ";100n;": ("no reference", "No reference stands on it."),
    "total;20;": ("no reference", "No reference stands on it."),
    "-;--;.": ("blank", "Nothing is written on it."),
    "C1-C9999;100n;": ("references that can't be read", '"C1-C9999" would be 9999 positions; one range may name up to '
                       "1000. Look at its end."),
    "Ref;Value;Note": ("headings", "It holds the headings."),
}  # fmt: skip


@pytest.mark.parametrize("line", LEFT)
def test_lines_left_and_why(tmp_path: Path, line: str) -> None:
    found = listed(tmp_path, f"Ref;Value;Note\nC1;47n;\n{line}\n").lines[-1]
    assert (found.line, found.left, found.reason) == (3, *LEFT[line])


@pytest.mark.parametrize("remark", ["N.B. a matched pair", "za 14 dni", "10 nF", "none of these", "n/f or 1n"])
def test_remarks_that_leave_no_line(tmp_path: Path, remark: str) -> None:
    assert listed(tmp_path, f"Ref;Value;Remark\nC1;47n;{remark}\n").lines[-1].left == ""


@pytest.mark.parametrize(
    ("heading", "cell", "left"),
    [
        ("Fitted", "no", "not fitted"), ("Fitted", "yes", ""), ("DNP", "x", "not fitted"), ("DNP", "", ""),
        ("Qty", "0", "not fitted"), ("Qty", "1", ""), ("Bestückt", "nein", "not fitted"), ("未実装", "1", "not fitted"),
    ],
)  # fmt: skip
def test_columns_that_say_what_is_fitted(tmp_path: Path, heading: str, cell: str, left: str) -> None:
    assert listed(tmp_path, f"Ref;Value;{heading}\nC1;47n;{cell}\n").lines[-1].left == left


def test_every_line_of_the_organ_is_there(tmp_path: Path) -> None:
    found = listed(tmp_path, ORGAN)
    filled = [number for number, line in enumerate(ORGAN.splitlines(), 1) if line.strip(";")]
    assert [one.line for one in found.lines] == filled
    assert found.notes == ()


def test_a_list_with_too_many_positions(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(parts_lists, "MOST_POSITIONS", 3)
    with pytest.raises(ListError) as caught:
        listed(tmp_path, "Ref;Value\nC1-C4;1n\n")
    assert str(caught.value) == '"list.csv" names more than 3 positions. Look at its ranges.'


CELLS = st.sampled_from(
    [
        "C1",
        "C1-C3",
        "C2, C9",
        "R1",
        "47uF",
        "100n 63V",
        "Ref",
        "Value",
        "Qty",
        "1",
        "25",
        "DNP",
        "",
        "-",
        "C1-C9999",
        "x",
    ]
) | st.text(max_size=12)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(rows=st.lists(st.lists(CELLS, max_size=5), max_size=8), mark=st.sampled_from([",", ";", "\t"]))
def test_any_table_is_read_or_refused(tmp_path: Path, rows: list[list[str]], mark: str) -> None:
    text = "\n".join(mark.join(row) for row in rows)
    try:
        found = listed(tmp_path, text.encode("utf-8", "replace"))
    except SubsearchError:
        return
    assert len({one.line for one in found.lines}) == len(found.lines)
    assert all(bool(one.references) != bool(one.left and not one.references) for one in found.lines)
    assert [one.line for one in found.lines] == sorted(one.line for one in found.lines)
