"""A load: all lists or none, nothing lost, nothing taken for more than text."""

import subprocess
import sys
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import Workbook

from subsearch.catalog import intake, merging
from subsearch.catalog.facts import counts
from subsearch.catalog.intake import Intake, load
from subsearch.catalog.store import open_to_read
from subsearch.errors import ListError

Maker = Callable[..., Path]


def rows(path: Path, sql: str) -> list[tuple[object, ...]]:
    with open_to_read(path) as con:
        return con.execute(sql).fetchall()


def test_what_comes_of_a_list(tmp_path: Path, make_list: Maker) -> None:
    told: list[tuple[str, int, int]] = []
    file = make_list({"Shelf": "3"}, {"Cap uF": "lots"}, name="grey-shed_2026.csv")
    found = load(tmp_path / "c", [file], progress=lambda *step: told.append(step))
    notes = (
        'The list has no column for the condition; all its lines count as "new".',
        "1 kept lines state no currency; name it with the load to compare their prices.",
    )
    assert found == [Intake(1, "grey shed 2026", "grey-shed_2026.csv", 2, 1, 1, ("Shelf",), notes)]
    assert told == [("grey-shed_2026.csv", 0, 2), ("parts and offers", 1, 2), ("done", 2, 2)]


def test_what_is_said_of_a_list_holds_where_its_lines_do_not_say(tmp_path: Path, make_list: Maker) -> None:
    lines = [{}, {"Order code": "b", "Currency": "CHF", "Seen": "2026-01-02", "Condition": "pulled"}]
    (found,) = load(tmp_path / "c", [make_list(*lines)], supplier="Shed", seen=date(2026, 10, 3), currency="EUR")
    assert found.notes == ()
    assert rows(tmp_path / "c", "select supplier, currency, date_seen, condition from offer order by currency") == [
        ("Shed", "CHF", date(2026, 1, 2), "pulled"),
        ("Shed", "EUR", date(2026, 10, 3), None),
    ]
    assert rows(tmp_path / "c", "select date_seen from listing order by line") == [(None,), (date(2026, 1, 2),)]


def test_loading_twice_gives_the_same_parts_and_offers(tmp_path: Path, make_list: Maker) -> None:
    file = make_list({}, {"Order code": "b", "Cap uF": "10"}, {"Order code": "b", "From qty": "10"})
    path = tmp_path / "c"
    load(path, [file])
    before = [rows(path, f"from {table}") for table in ("part", "offer")]
    (again,) = load(path, [file])
    assert [rows(path, f"from {table}") for table in ("part", "offer")] == before
    assert again.notes[0] == "The very same file was loaded before, as intake 1."
    with open_to_read(path) as con:
        assert (counts(con).parts, counts(con).offers, counts(con).lines, counts(con).refusals) == (1, 2, 6, 0)


def test_a_second_list_that_fails_leaves_the_catalog_as_it_was(tmp_path: Path, make_list: Maker) -> None:
    good, bad = make_list({}), tmp_path / "bad.csv"
    bad.write_text("nothing,here\n1,2\n")
    path = tmp_path / "c"
    with pytest.raises(ListError, match=r'^"bad.csv" has no heading for a part number, a capacitance, a rated'):
        load(path, [good, bad])
    assert list(tmp_path.iterdir()) == [bad]
    load(path, [good])
    before = path.read_bytes()
    with pytest.raises(ListError):
        load(path, [good, bad])
    assert path.read_bytes() == before
    assert sorted(tmp_path.iterdir()) == [bad, path]


def test_a_failure_after_the_lines_are_stored_leaves_nothing(
    tmp_path: Path, make_list: Maker, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, file = tmp_path / "c", make_list({})
    load(path, [file])
    before = path.read_bytes()

    def fail(con: object) -> None:
        rebuild(con)  # type: ignore[arg-type]
        raise KeyboardInterrupt

    rebuild = merging.rebuild
    monkeypatch.setattr(intake, "rebuild", fail)
    for target in (path, tmp_path / "new"):
        with pytest.raises(KeyboardInterrupt):
            load(target, [file])
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_what_a_cell_holds_is_only_ever_text(tmp_path: Path, make_list: Maker) -> None:
    odd = ["'); drop table part; --", '"quoted"', "=cmd|'/c calc'!A1", "nul \0 inside", "🔋", "x" * 100_000, "$1 {} %s"]
    lines = [{"Order code": text, "Maker": text, "Part number": text, "Series": text} for text in odd]
    path = tmp_path / "c"
    load(path, [make_list(*lines)])
    found = rows(path, "select maker, part_number, series, supplier_number from part join offer using (pk)")
    assert sorted(map(str, found)) == sorted(str((text,) * 4) for text in odd)
    assert rows(path, "select printed[1] from listing order by line") == [(text,) for text in odd]


def test_hostile_headings_and_refused_texts_are_only_text(tmp_path: Path, make_list: Maker) -> None:
    heading = "\"; drop table part; -- ' {} $1"
    (found,) = load(tmp_path / "c", [make_list({heading: "1", "Cap uF": "'; drop table part; -- {}"})])
    assert (found.skipped_headings, found.refused) == ((heading,), 1)
    assert rows(tmp_path / "c", "select found from refusal") == [("'; drop table part; -- {}",)]


def test_a_sheet(tmp_path: Path) -> None:
    book = Workbook()
    page = book.worksheets[0]
    page.append(["Invented demonstration"])
    page.append(["Our code", "Mfr part no", "Cap uF", "Voltage", "Style", "Size mm", "Price (from 1)", "10+"])
    page.append([17, "Hollow 1", 4.7, "6V3", "axial", "8x18", 0.35, None])
    page.append([18, "Hollow 2", 0.1, 100, "box", "18x9x15", 0.5, 0.45, None, "beside the table"])
    page.append([19, "Hollow 3", "lots", 100, "radial", "Ø10", 0.5])
    book.save(tmp_path / "list.xlsx")
    (found,) = load(tmp_path / "c", [tmp_path / "list.xlsx"])
    assert (found.lines_read, found.kept, found.refused) == (3, 2, 1)
    listing = (
        "select line, supplier_number, rated_v, along_mm, across_mm, tall_mm, len(prices), len(printed) from listing"
    )
    assert rows(tmp_path / "c", listing) == [(3, "17", 6.3, 18, 8, 8, 1, 10), (4, "18", 100, 18, 9, 15, 2, 10)]


def test_sizes_by_shape(tmp_path: Path, make_list: Maker) -> None:
    sizes = {"Diameter": "8", "Length": "18", "Diameter plus": "0.5", "Length plus": "2"}
    box = {"Length": "18", "Width": "7", "Height": "14"}
    lines = [
        {**sizes, "Style": "radial"},
        {**sizes, "Style": "axial"},
        {**box, "Style": "box"},
        {**sizes, "Style": "snap-in", "Length": ""},
        {**sizes, "Style": ""},
        {"Size": "18x7x14"},
        {"Size": "18x7"},
    ]
    file = make_list(*({**line, "Order code": str(number)} for number, line in enumerate(lines)))
    load(tmp_path / "c", [file])
    names = "shape, lead_form, along_mm, across_mm, tall_mm, along_plus_mm, across_plus_mm, tall_plus_mm"
    assert rows(tmp_path / "c", f"select {names} from listing order by line") == [
        ("can", None, 8, 8, 18, 0.5, 0.5, 2),
        ("axial", None, 18, 8, 8, 2, 0.5, 0.5),
        ("box", None, 18, 7, 14, None, None, None),
        ("can", "snap-in", 8, 8, None, 0.5, 0.5, 2),
        (None, None, None, 8, None, None, None, None),
        (None, None, 18, 7, 14, None, None, None),
        (None, None, None, None, None, None, None, None),
    ]


def test_a_list_of_decimal_commas_settles_what_a_comma_means(tmp_path: Path, make_list: Maker) -> None:
    file = make_list({"Cap uF": "1,250", "Price": "0,5"}, {"Cap uF": "1.250", "Order code": "b", "Price": "0,4"})
    load(tmp_path / "c", [file])
    assert rows(tmp_path / "c", "select capacitance_f from listing order by line") == [(1.25e-6,), (1250e-6,)]


def test_one_text_under_two_headings_is_read_as_each_says(tmp_path: Path) -> None:
    file = tmp_path / "list.csv"
    file.write_text("Part number;Cap uF;Voltage;Price EUR;Price CHF 10+\nHollow 1;4.7;63;0.5;\nHollow 2;4.7;63;;0.5\n")
    load(tmp_path / "c", [file])
    assert rows(tmp_path / "c", "select currency, prices[1].price from listing order by line") == [
        ("EUR", Decimal("0.5")),
        ("CHF", Decimal("0.5")),
    ]


def test_slow_libraries_are_imported_only_when_a_list_is_loaded() -> None:
    slow = "import sys, subsearch.catalog.intake; print({'pandas', 'numpy', 'openpyxl'} & sys.modules.keys())"
    done = subprocess.run([sys.executable, "-c", slow], capture_output=True, text=True, check=True)
    assert done.stdout == "set()\n"


def test_no_list_at_all(tmp_path: Path) -> None:
    with pytest.raises(ListError, match=r"^No list was named. Name at least one CSV or XLSX file.$"):
        load(tmp_path / "c", [])
    assert list(tmp_path.iterdir()) == []


def test_a_list_with_headings_only(tmp_path: Path, make_list: Maker) -> None:
    (found,) = load(tmp_path / "c", [make_list()])
    assert (found.lines_read, found.kept, found.refused) == (0, 0, 0)
