"""Whatever stands in cells and headings: kept and refused lines are the lines read, and errors are sentences."""

import csv
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from subsearch.catalog.facts import refusals
from subsearch.catalog.heading_cells import read_heading
from subsearch.catalog.headings import SPOKEN
from subsearch.catalog.intake import load
from subsearch.catalog.layout_files import read_layout
from subsearch.catalog.layout_writing import recognise, write_layout
from subsearch.catalog.store import open_to_read
from subsearch.errors import ListError, QuantityError, SubsearchError
from subsearch.reading.cells import reader_of

SIGNS = "0123456789.,:;/@()[]+-±×xØ %°µuFVACDKMRL€$£kr złabhpcs~<>=*|'\"…日個"
FORMS = """47 µF|4,7|63 V|275 V~|10x16|18x9x15|0,35 €|1: 0.50 / 10: 0.40|12,50/100|auf Lager|>1000|±20 %|-40…+105|call|
2000h @85°C|Elko radial 47µF 63V|32+32µF|2 weeks|RM5|kr 2|474K|D10 L16|3-5 days"""
CELLS = st.one_of(
    st.text(SIGNS, max_size=12),
    st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=8),
    st.sampled_from(FORMS.replace("\n", "").split("|")),
)
HEADS = """MPN|Cap uF|Voltage|Price|Price 10+|Stock|Tolerance|Size|Style|Temperature range|Life|Lead time|Description|
Pitch|Currency|Max temp|Order code|Diameter|Length|Price per 100"""
HEADINGS = HEADS.replace("\n", "").split("|")
MANY = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@MANY
@given(st.lists(st.lists(CELLS, min_size=len(HEADINGS), max_size=len(HEADINGS)), min_size=1, max_size=6))
def test_intake_loses_nothing(lines: list[list[str]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "grey-shed.csv"
        with file.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out, lineterminator="\n").writerows([HEADINGS, *lines])
        try:
            (intake,) = load(Path(folder) / "c", [file])
        except ListError:
            return
        filled = sum(any(cell.strip() for cell in line) for line in lines)
        assert intake.kept + intake.refused == intake.lines_read == filled
        with open_to_read(Path(folder) / "c") as con:
            told = refusals(con, intake.number)
            assert len({one.line for one in told}) == intake.refused
            assert all(one.reason.endswith((".", "?")) for one in told)


@MANY
@given(st.lists(CELLS, min_size=4, max_size=4), st.lists(st.lists(CELLS, min_size=1, max_size=5), max_size=6))
def test_a_size_table_loses_nothing(first: list[str], lines: list[list[str]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "hollow.csv"
        rows = [["Hollow radial"], ["µF", "16 V", "25 V", "35 V"], ["47", "5x11", "6x11", "8x11"], first, *lines]
        with file.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out, lineterminator="\n").writerows(rows)
        try:
            (intake,) = load(Path(folder) / "c", [file])
        except ListError:
            return
        assert intake.kept + intake.refused == intake.lines_read >= 3


@settings(max_examples=400, deadline=None)
@given(st.sampled_from(sorted(SPOKEN)), CELLS, st.sampled_from(["", "µ", "EUR", "~", "EUR/100", "LWH", "weeks"]))
def test_a_cell_states_something_or_is_refused(kind: str, text: str, hint: str) -> None:
    owner = {"µ": "capacitance_f", "LWH": "size", "weeks": "lead_time_days"}.get(hint, "unit_price")
    try:
        reader_of(kind, hint if kind == owner else "")(text)
    except QuantityError as error:
        assert str(error).endswith((".", "?"))


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=30))
def test_any_heading_means_a_kind_or_nothing(heading: str) -> None:
    found = read_heading(0, heading)
    assert found is None or found.kind in SPOKEN


@MANY
@given(st.lists(st.text(max_size=10), min_size=1, max_size=6))
def test_any_layout_that_is_written_can_be_read_again(headings: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        file, layout = Path(folder) / "a.csv", Path(folder) / "a.toml"
        with file.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out, lineterminator="\n").writerows([headings, ["1"] * len(headings)])
        try:
            found = recognise(file, "a")
        except SubsearchError:
            return
        write_layout(found, layout)
        named = tuple(heading for heading in found.layout.headings if heading)
        assert tuple(column.heading for column in read_layout(layout).columns) == named
