"""A layout written, corrected, followed; every error in it a sentence with the file, the key and the nearest word."""

from decimal import Decimal
from pathlib import Path

import pytest

from subsearch.catalog.heading_cells import Column
from subsearch.catalog.intake import Intake, load
from subsearch.catalog.layout_files import layout_file, read_layout, standing_layout
from subsearch.catalog.layout_writing import recognise, write_layout
from subsearch.catalog.saved_layouts import SavedLayout
from subsearch.catalog.store import open_to_read
from subsearch.errors import ListError
from subsearch.reading.rows import Row

LIST = """Grey Shed, all prices in crowns
Ref;Wert;Nennspanung;Dim.;Cost per 100;Qty;Fach
Hollow 1;1.250;63;10x16;40,5;7;A "1"
Hollow 2;0,47;63;5x11;12;3;B
"""


def shed(folder: Path, text: str = LIST, name: str = "grey-shed.csv") -> Path:
    file = folder / name
    file.write_text(text, encoding="utf-8")
    return file


def written(folder: Path, file: Path) -> Path:
    target = layout_file(folder / "c", "grey shed")
    write_layout(recognise(file, "grey shed"), target)
    return target


def listing(folder: Path, intake: Intake, wanted: str) -> list[tuple[object, ...]]:
    with open_to_read(folder / "c") as con:
        return con.execute(f"select {wanted} from listing where intake = $1 order by line", [intake.number]).fetchall()


def corrected(layout: Path, *changes: tuple[str, str]) -> None:
    text = layout.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, text
        text = text.replace(old, new)
    layout.write_text(text, encoding="utf-8")


def test_what_is_recognised_is_written(tmp_path: Path) -> None:
    layout = written(tmp_path, shed(tmp_path))
    assert layout == tmp_path / "layouts" / "grey-shed.toml"
    lines = layout.read_text(encoding="utf-8").splitlines()
    assert lines[0] == "# How the lists of grey shed are read, as recognised in grey-shed.csv."
    assert lines[-13:] == [
        "heading_line = 2",
        'decimal_mark = ","',
        '# currency = "EUR"  # of prices that state none',
        '# shape = "can"  # of bodies whose lines state none: can, box or axial',
        "columns = [",
        '  { heading = "Ref", term = "supplier_number" },',
        '  { heading = "Wert", term = "capacitance_f" },',
        '  { heading = "Nennspanung", leave_out = true },  # not understood; near to "nennspannung", which means '
        "rated_v",
        '  { heading = "Dim.", term = "size", unit = "mm" },',
        '  { heading = "Cost per 100", term = "unit_price", unit = "/100" },',
        '  { heading = "Qty", leave_out = true },  # not understood',
        '  { heading = "Fach", leave_out = true },  # not understood',
        "]",
    ]


def test_a_layout_is_written_corrected_and_followed(tmp_path: Path) -> None:
    file = shed(tmp_path)
    layout = written(tmp_path, file)
    corrected(
        layout,
        ('heading = "Ref", term = "supplier_number"', 'heading = "Ref", term = "part number"'),
        ('heading = "Wert", term = "capacitance_f"', 'heading = "Wert", term = "capacitance_f", unit = "µF"'),
        ('heading = "Nennspanung", leave_out = true', 'heading = "Nennspanung", term = "Spannung", unit = "V"'),
        ('heading = "Qty", leave_out = true', 'heading = "Qty", term = "stock"'),
        ('# currency = "EUR"', 'currency = "SEK"'),
        ('# shape = "can"', 'shape = "can"'),
    )
    (intake,) = load(tmp_path / "c", [file])
    assert (intake.kept, intake.refused, intake.skipped_headings) == (2, 0, ("Fach",))
    assert intake.notes[0] == f'Read by the layout "{layout}".'
    wanted = "part_number, capacitance_f, rated_v, shape, tall_mm, stock, currency, prices[1].price"
    assert listing(tmp_path, intake, wanted) == [
        ("Hollow 1", 1250e-6, 63.0, "can", 16.0, 7, "SEK", Decimal("0.405")),
        ("Hollow 2", 0.47e-6, 63.0, "can", 11.0, 3, "SEK", Decimal("0.12")),
    ]


def test_what_was_written_reads_as_what_was_recognised(tmp_path: Path) -> None:
    heads = 'MPN;Cap uF;V AC;Lead time [weeks];Size BxHxL;Price 10+ [EUR];Price per 100;Odd \\ ""name\x7f'
    file = shed(tmp_path, f'"{heads}"'.replace(";", '";"') + "\na;1;2;3;1x2x3;4;5;6\n")
    found = recognise(file, "grey shed")
    write_layout(found, tmp_path / "a.toml")
    saved = read_layout(tmp_path / "a.toml")
    assert tuple(column for column in saved.columns if column.kind) == found.kept
    assert saved.columns[-1].heading == found.layout.headings[-1]


def test_a_layout_is_never_overwritten(tmp_path: Path) -> None:
    file = shed(tmp_path)
    layout = written(tmp_path, file)
    before = layout.read_bytes()
    with pytest.raises(ListError) as caught:
        written(tmp_path, file)
    assert str(caught.value) == (
        f'"{layout}" stands there already, so nothing was written. Name another file with --out, or move it.'
    )
    assert layout.read_bytes() == before


def test_of_two_headings_with_one_meaning_the_second_waits_for_the_builder(tmp_path: Path) -> None:
    found = recognise(shed(tmp_path, "MPN;Order code;SKU;Product;Description\na;b;c;d;e\n"), "grey shed")
    assert found.left_out == {
        2: 'means supplier_number, as "Order code" does; leave out the one that does not',
        3: 'means description, as "Description" does; leave out the one that does not',
    }
    assert found.missing == ("a price",)


def test_headings_that_differ_from_the_layout_are_told(tmp_path: Path) -> None:
    file = shed(tmp_path, "MPN;Cap uF;Voltage;Price;Old\na;1;2;3;4\n")
    written(tmp_path, file)
    (intake,) = load(tmp_path / "c", [shed(tmp_path, "MPN;New;Cap uF;Voltage;Price\na;9;1;2;3\n")])
    assert intake.kept == 1
    assert intake.skipped_headings == ("New",)
    assert intake.notes[1:3] == (
        "The layout does not name these headings of the list, left out: New.",
        "The layout names headings that the list does not have: Old.",
    )


def test_the_decimal_mark_of_the_layout_settles_what_the_numbers_leave_open(tmp_path: Path) -> None:
    file = shed(tmp_path, "MPN;Cap uF;Voltage;Price\na;1,250;63;2\n")
    layout = written(tmp_path, file)
    (intake,) = load(tmp_path / "c", [file])
    assert intake.refused == 1
    corrected(layout, ("# decimal_mark", "decimal_mark"))
    (intake,) = load(tmp_path / "c", [file])
    assert listing(tmp_path, intake, "capacitance_f") == [(1.25e-6,)]


def test_two_headings_alike_are_told_apart_by_their_order(tmp_path: Path) -> None:
    layout = tmp_path / "a.toml"
    layout.write_text(
        """columns = [
  { heading = "Code", leave_out = true },
  { heading = "Code", term = "part_number" },
  { heading = "Cap uF", term = "capacitance_f", unit = "uF" },
  { heading = "V", term = "rated_v" },
  { heading = "Price", term = "unit_price", unit = "EUR/100", from_quantity = 10 },
]"""
    )
    file = shed(tmp_path, "Code;Code;Cap uF;V;Price\nx;Hollow 1;47;63;40\n")
    (intake,) = load(tmp_path / "c", [file], layout=layout)
    row = ("Hollow 1", "EUR", [{"from": 10, "price": Decimal("0.4")}])
    assert listing(tmp_path, intake, "part_number, currency, prices") == [row]


def test_a_heading_line_over_two_rows_is_found_again(tmp_path: Path) -> None:
    file = shed(tmp_path, "MPN;Cap.;Voltage;Price\n;[nF];[V];[EUR]\nHollow 1;47;63;1\n")
    written(tmp_path, file)
    (intake,) = load(tmp_path / "c", [file])
    assert listing(tmp_path, intake, "capacitance_f, currency") == [(47e-9, "EUR")]


def test_only_the_layout_of_the_supplier_is_followed(tmp_path: Path) -> None:
    written(tmp_path, shed(tmp_path))
    assert standing_layout(tmp_path / "c", "Grey  Shed")
    assert standing_layout(tmp_path / "c", "Weir") is None
    assert layout_file(tmp_path / "c", "../../etc").parent == tmp_path / "layouts"


def test_a_layout_without_what_is_needed_says_so(tmp_path: Path) -> None:
    file = shed(tmp_path)
    written(tmp_path, file)
    with pytest.raises(ListError, match=r'^"grey-shed.csv" has no heading for a part number or a rated voltage'):
        load(tmp_path / "c", [file])


def one(column: str) -> str:
    return f"columns = [{{{column}}}]"


WERT, P = 'heading = "Wert"', 'heading = "P", term = "unit_price"'
WRONG = {
    "columns = ": "is not a layout: ",
    "colums = []": ': "colums" is not a key of a layout. Did you mean "columns"? Allowed are heading_line, ',
    "heading_line = 2": ", columns: a list of columns is wanted, like { heading = ",
    "columns = [1]": ", columns: a list of columns is wanted",
    "heading_line = 0\ncolumns = []": ", heading_line: 0 is not a line of a list. Write its number, like 2.",
    'heading_line = "2"\ncolumns = []': ", heading_line: '2' is not a line of a list.",
    'decimal_mark = ";"\ncolumns = []': """, decimal_mark: ';' is none. Write "," or ".", or take it out.""",
    'currency = "money"\ncolumns = []': ', currency: "money" is not a currency. Write its three letters, like EUR.',
    'shape = "roundish"\ncolumns = []': ', shape: "roundish" is not a known word for shape',
    one(""): ", column 1: heading is missing. Write it as it stands in the list, like heading = ",
    one(WERT): ', column 1, "Wert": term is missing. Name what its cells state, or write leave_out = true.',
    one(f'{WERT}, term = "capacitnce"'): ', column 1, "Wert", term: "capacitnce" is not a term of the catalog. Did you '
    'mean "capacitance"? Or write leave_out = true.',
    one(f'{WERT}, trem = "x"'): ', column 1: "trem" is not a key of a layout. Did you mean "term"?',
    one(f'{WERT}, term = "capacitance_f", unit = "V"'): '"Wert", unit: "V" is not a unit of capacitance_f. Write it '
    "like in 4.7 µF.",
    one(f'{WERT}, term = "maker", unit = "V"'): 'unit: "V" is not a unit of maker. It has none.',
    one(f'{P}, unit = "kr"'): '"P", unit: "kr" is the sign of several currencies',
    one(f"{P}, from_quantity = 0"): '"P", from_quantity: 0 is wrong. It is a whole number, and of a unit_price only.',
    one(f'{WERT}, term = "stock", from_quantity = 2'): '"Wert", from_quantity: 2 is wrong.',
}


@pytest.mark.parametrize("text", WRONG)
def test_each_error_has_its_sentence(tmp_path: Path, text: str) -> None:
    layout = tmp_path / "wrong.toml"
    layout.write_text(text, encoding="utf-8")
    with pytest.raises(ListError) as caught:
        read_layout(layout)
    assert str(caught.value).startswith(f'"{layout}"')
    assert WRONG[text] in str(caught.value)


def test_a_layout_in_another_encoding_is_told(tmp_path: Path) -> None:
    layout = tmp_path / "old.toml"
    layout.write_bytes("heading_line = 1\n# für\n".encode("cp1252"))
    with pytest.raises(ListError, match="line 2 holds a sign that is not UTF-8; save the file as UTF-8"):
        read_layout(layout)


def test_a_heading_line_that_is_another_is_told(tmp_path: Path) -> None:
    file = shed(tmp_path, "Invented\nMPN;Cap uF;Voltage;Price\na;1;2;3\n")
    layout = written(tmp_path, file)
    corrected(layout, ("heading_line = 2", "heading_line = 3"))
    with pytest.raises(ListError) as caught:
        load(tmp_path / "c", [file])
    assert str(caught.value) == (
        f'"{layout}", heading_line: none of its headings stand in line 3 of "grey-shed.csv"; line 2 holds 4 of them. '
        "Correct heading_line, or take it out."
    )


def test_no_layout_at_that_place(tmp_path: Path) -> None:
    with pytest.raises(ListError, match=r'^There is no layout ".*a.toml". Check the name, or write one with subsearch'):
        load(tmp_path / "c", [shed(tmp_path)], layout=tmp_path / "a.toml")


def test_a_heading_line_far_below_is_found_where_the_layout_names_it() -> None:
    kinds = ("part_number", "capacitance_f", "rated_v", "unit_price")
    rows = [Row(line, (f"note {line}",)) for line in range(1, 150)]
    rows += [Row(150, kinds), *(Row(line, kinds) for line in range(151, 400))]
    columns = tuple(Column(place, kind, kind) for place, kind in enumerate(kinds))
    layout = SavedLayout(Path("l.toml"), 150, "", None, "", columns).applied("list.xlsx", rows)
    assert (layout.line, len(layout.columns)) == (150, 4)
