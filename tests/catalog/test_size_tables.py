"""The trade's size table, invented: recognised by its shape, every filled cell a line, parts without offers."""

from pathlib import Path

import pytest
from openpyxl import Workbook

from subsearch.catalog.facts import counts, refusals
from subsearch.catalog.intake import Intake, load
from subsearch.catalog.layout_writing import recognise
from subsearch.catalog.store import open_to_read
from subsearch.errors import ListError
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

TABLE = """Hollow 105, radial electrolytic, 105°C 2000h
Dimensions ØD×L in mm
µF \\ V;6,3;10;16;25
10;-;;5x11;5 x 11
47;;5x11;5x11;6,3x11
1.000;8x11,5;10×16;;12,5x20
2200;10x20
Lead spacing by diameter.
"""


def taken(folder: Path, text: str, name: str = "hollow.csv") -> Intake:
    (folder / name).write_text(text, encoding="utf-8")
    (intake,) = load(folder / "c", [folder / name])
    assert intake.kept + intake.refused == intake.lines_read
    return intake


def rows(folder: Path, sql: str) -> list[tuple[object, ...]]:
    with open_to_read(folder / "c") as con:
        return con.execute(sql).fetchall()


def test_every_filled_cell_is_a_part_with_its_size(tmp_path: Path) -> None:
    intake = taken(tmp_path, TABLE)
    assert (intake.lines_read, intake.kept, intake.refused, intake.skipped_headings) == (9, 9, 0, ())
    wanted = "part_number, capacitance_f, rated_v, shape, across_mm, tall_mm, rated_c, life_h, technology"
    found = rows(tmp_path, f"select {wanted} from listing order by line")
    assert found[0] == (
        "Hollow 105 10 µF 16 V 5x11", 10e-6, 16.0, "can", 5.0, 11.0, 105.0, 2000.0, "wet aluminium",
    )  # fmt: skip
    assert [row[0] for row in found[4:]] == [
        "Hollow 105 47 µF 25 V 6.3x11",
        "Hollow 105 1000 µF 6.3 V 8x11.5",
        "Hollow 105 1000 µF 10 V 10x16",
        "Hollow 105 1000 µF 25 V 12.5x20",
        "Hollow 105 2200 µF 6.3 V 10x20",
    ]


def test_what_was_taken_for_what_is_told(tmp_path: Path) -> None:
    assert taken(tmp_path, TABLE).notes == (
        "This is a size table: voltages stand in line 3, sizes below. Every filled cell is a line; its parts are known "
        'with their sizes, but nobody offers them. They are named after "Hollow 105", as in "Hollow 105 47 µF 16 V '
        '10x16".',
    )


def test_such_a_part_has_no_offer_and_the_search_says_so(tmp_path: Path) -> None:
    taken(tmp_path, TABLE)
    with open_to_read(tmp_path / "c") as con:
        assert (counts(con).parts, counts(con).offers) == (9, 0)
        found = find(con, [Requirement(capacitance_f=47e-6, rated_v=16)])[0]
        assert (len(found.kept), len(found.open)) == (0, 0)
        said = [answer for answer in found.why(None, "Hollow 105 47 µF 16 V 5x11") if answer.answer is False]
    assert [answer.sentence for answer in said] == ["nobody lists it"]


def test_a_supplier_that_lists_the_part_makes_it_one_with_an_offer(tmp_path: Path) -> None:
    taken(tmp_path, TABLE)
    text = "MPN;Cap uF;Voltage;Price;Currency\nHollow 105 47 µF 16 V 5x11;47;16;0,4;EUR\n"
    taken(tmp_path, text, "grey-shed.csv")
    assert rows(tmp_path, "select tall_mm, supplier from part join offer using (pk)") == [(11.0, "grey shed")]


def test_a_wrong_cell_is_refused_with_its_place(tmp_path: Path) -> None:
    intake = taken(tmp_path, "Hollow\nµF;16 V;25 V\n10;5x11;10y16\nlots;;8x11\n22;;;9x9\n;5x11;\n47;5x11;\n")
    assert (intake.lines_read, intake.kept) == (6, 2)
    with open_to_read(tmp_path / "c") as con:
        found = [(one.line, one.term, one.found, one.reason) for one in refusals(con, 1)]
    assert [one[:3] for one in found] == [
        (3003, "along_mm", "10y16"),
        (4003, "capacitance_f", "lots µF"),
        (5004, "rated_v", ""),
        (6002, "capacitance_f", ""),
    ]
    assert found[0][3].endswith("Write it like 10x16, 18x9x15 or Ø10. It stands in line 3, column 3 of the file.")


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("µF/V,10 WV,16 WV\n47,5x11,\"6,3x11\"\n", ["a b 47 µF 10 V 5x11", "a b 47 µF 16 V 6.3x11"]),
        ("Cap;10V;16V\n0.1 µF;5x11;-\n100 nF;;5x7\n", ["a b 0.1 µF 10 V 5x11", "a b 0.1 µF 16 V 5x7"]),
        ("Sizes in mm, C in nF\nC;250 V~;400 V~\n47;18x7x13;18x8x14\n",
         ["Sizes in mm 47 nF 250 V~ 18x7x13", "Sizes in mm 47 nF 400 V~ 18x8x14"]),
        ("Hollow\nµF;630;1.000\n0,1;18x7x13;26,5x9x18\n",
         ["Hollow 0.1 µF 630 V 18x7x13", "Hollow 0.1 µF 1000 V 26.5x9x18"]),
        ("µF;16 V;25 V\n47;0.12;0.14\n", None),
        # the sizes tell the decimal mark; then nothing does
        ("µF;16;25\n470;10x16;10x20\n1.000;10x20;12,5x20\n", [
            "a b 470 µF 16 V 10x16", "a b 470 µF 25 V 10x20", "a b 1000 µF 16 V 10x20", "a b 1000 µF 25 V 12.5x20",
        ]),
        ("µF;16;25\n1.000;10x20;10x25\n", ["a b 1000 µF 16 V 10x20", "a b 1000 µF 25 V 10x25"]),
        ("µF,6.3,\"1,000\"\n0.1,5x7,5x8\n", ["a b 0.1 µF 6.3 V 5x7", "a b 0.1 µF 1000 V 5x8"]),
        ("MPN;10;100\nHollow 1;0.5;0.4\n", None),
        ("Hollow A\nµF;16;25\n47;5x11;6x11\nHollow B\nµF;50;63\n47;8x11;8x12\n",
         ["Hollow A 47 µF 16 V 5x11", "Hollow A 47 µF 25 V 6x11",
          "Hollow B 47 µF 50 V 8x11", "Hollow B 47 µF 63 V 8x12"]),
    ],
)  # fmt: skip
def test_other_tables_and_what_is_none(tmp_path: Path, text: str, parts: list[str] | None) -> None:
    if parts is None:
        with pytest.raises(ListError, match="has no heading for"):
            taken(tmp_path, text)
        return
    taken(tmp_path, text, "a_b.csv")
    assert [row[0] for row in rows(tmp_path, "select part_number from listing order by line")] == parts


def test_without_a_shape_in_the_title_the_body_is_not_known(tmp_path: Path) -> None:
    intake = taken(tmp_path, "µF;16;25\n47;5x11;6x11\n")
    assert rows(tmp_path, "select distinct shape, tall_mm from part") == [(None, None)]
    assert intake.notes[-1] == (
        "2 kept lines with a size, but without its shape, so the body is not known. Write radial or axial in the title."
    )


def test_an_axial_title(tmp_path: Path) -> None:
    taken(tmp_path, "Hollow, axial\nµF;16;25\n47;6.5x18;8x18\n")
    assert rows(tmp_path, "select along_mm, across_mm from listing order by line") == [(18.0, 6.5), (18.0, 8.0)]


def test_a_sheet(tmp_path: Path) -> None:
    book = Workbook()
    page = book.worksheets[0]
    for line in (["Hollow radial"], ["µF", 6.3, 16, 25], [0.47, None, "5x11", "5x11"], [1000, "8x11.5"]):
        page.append(line)
    book.save(tmp_path / "hollow.xlsx")
    (intake,) = load(tmp_path / "c", [tmp_path / "hollow.xlsx"])
    assert (intake.lines_read, intake.kept) == (3, 3)
    assert rows(tmp_path, "select rated_v, capacitance_f from listing order by line") == [
        (16.0, 0.47e-6),
        (25.0, 0.47e-6),
        (6.3, 1e-3),
    ]


def test_a_value_without_a_unit_anywhere_is_refused(tmp_path: Path) -> None:
    intake = taken(tmp_path, "Value;16 V;25 V\n47;5x11;6x11\n")
    assert (intake.kept, intake.refused) == (0, 2)
    with open_to_read(tmp_path / "c") as con:
        assert refusals(con, 1)[0].reason.startswith('"47" has no unit. Write it like 4.7 µF.')


def test_it_needs_no_layout(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text(TABLE, encoding="utf-8")
    with pytest.raises(ListError, match=r'^"a.csv" is a size table, which needs no layout. Load it as it is.$'):
        recognise(tmp_path / "a.csv", "a")
