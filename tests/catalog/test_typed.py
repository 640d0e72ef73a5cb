"""A part typed in by hand is a claim like any other: read, refused, kept, merged and replaced as a list's line is."""

import datetime
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from subsearch.catalog.facts import counts
from subsearch.catalog.heading_cells import read_heading
from subsearch.catalog.intake import load
from subsearch.catalog.rates import load_rates
from subsearch.catalog.recording import record
from subsearch.catalog.store import open_to_read
from subsearch.catalog.typed import DRAWER, FIELDS, TypedError, missing

Maker = Callable[..., Path]
CELLS = {"Part number": "Hollow 1", "Maker": "Mill", "Capacitance": "4,7 µF", "Voltage": "63 V"}
KNOWN = {"Stock": "3", "Condition": "old stock"}
SEEN = datetime.date(2026, 11, 2)
TODAY = datetime.date(2026, 10, 3)


def rows(path: Path, sql: str) -> list[tuple[Any, ...]]:
    with open_to_read(path) as con:
        return con.execute(sql).fetchall()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A catalog whose own currency is EUR."""
    (tmp_path / "rates.csv").write_text("currency,worth,dated\nEUR,1,\nGBP,1.17,\n", encoding="utf-8")
    load_rates(tmp_path / "c", tmp_path / "rates.csv")
    return tmp_path / "c"


def test_a_part_of_the_own_drawer(path: Path) -> None:
    more = {"Bought": "2026-10-03", "Shape": "can", "Size": "6.3x11", "Life": "2000 h", "Life means": "load life"}
    taken = record(path, "Own  Drawer", {**CELLS, **KNOWN, **more}, seen=SEEN)
    assert (taken.number, taken.supplier, taken.file, taken.lines_read, taken.kept, taken.refused, taken.notes) == (
        (1, DRAWER, "typed in", 1, 1, 0, ())
    )
    assert rows(
        path,
        "select maker, part_number, capacitance_f, rated_v, shape, along_mm, tall_mm, life_h, life_basis from part",
    ) == [("Mill", "Hollow 1", 4.7e-6, 63, "can", 6.3, 11, 2000, "load life")]
    assert rows(path, "select currency, stock, condition, date_bought, date_seen, prices from offer") == [
        ("EUR", 3, "old stock", TODAY, SEEN, [{"from": 1, "price": Decimal(0)}])
    ]
    assert rows(path, "select headings, seen from intake")[0][0][:2] == ["Part number", "Maker"]


def test_texts_by_term_and_an_alternating_rating(path: Path) -> None:
    cells = {"part_number": "Q 1", "capacitance_f": "100 nF", "rated_ac_v": "275 V", "unit_price": "0.35 GBP"}
    taken = record(path, "Weir Barn", {**cells, "maker": " "})
    assert taken.notes == (
        "No condition was typed, so it counts as new.",
        "The stock is not stated, so searches show the part as open.",
    )
    assert rows(path, "select maker, rated_v, rated_ac_v from part") == [(None, None, 275)]
    assert rows(path, "select supplier, currency, condition from offer") == [("Weir Barn", "GBP", "new")]


def test_a_second_part_stays_beside_the_first(path: Path) -> None:
    for number in ("Hollow 1", "Hollow 2"):
        assert not record(path, DRAWER, {**CELLS, **KNOWN, "Part number": number}).notes
    record(path, "Weir Barn", {**CELLS, "Price": "0.35"})
    assert rows(path, "select part_number, supplier from offer join part using (pk) order by all") == [
        ("Hollow 1", "Weir Barn"),
        ("Hollow 1", DRAWER),
        ("Hollow 2", DRAWER),
    ]


def test_the_same_part_again_replaces_its_offer_and_keeps_the_history(path: Path) -> None:
    record(path, DRAWER, CELLS)
    record(path, DRAWER, {**CELLS, "Maker": "Weir"})
    again = record(path, DRAWER, {**CELLS, **KNOWN, "Stock": "9", "Voltage": "50 V"})
    assert again.notes == ("It replaces this supplier's offer of intake 1.",)
    assert rows(path, "select maker, rated_v, contradictions, stock, condition from part join offer using (pk)") == [
        ("Mill", 50, 0, 9, "old stock"),
        ("Weir", 63, 0, None, None),
    ]
    with open_to_read(path) as con:
        assert (counts(con).lines, counts(con).refusals) == (3, 0)


def test_two_conditions_are_told_apart_by_an_order_code(path: Path) -> None:
    record(path, DRAWER, {**CELLS, **KNOWN, "Order code": "tray 1"})
    record(path, DRAWER, {**CELLS, **KNOWN, "Order code": "tray 2", "Condition": "pulled"})
    assert rows(path, "select condition from offer order by all") == [("old stock",), ("pulled",)]


def test_typed_parts_and_lists_meet(path: Path, make_list: Maker) -> None:
    """A line of a list keeps its place beside a typed one, replaces it, or contradicts it, by the rules of lists."""
    listed = make_list({"Supplier": "Weir Barn", "Order code": ""}, {"Supplier": "Barn 2", "Order code": ""})
    load(path, [listed], currency="EUR")
    assert rows(path, "select supplier from offer order by all") == [("Barn 2",), ("Weir Barn",)]
    taken = record(path, "Weir Barn", {**CELLS, "Voltage": "50 V", "Price": "0.1"})
    assert taken.notes[0] == "It replaces this supplier's offer of intake 1."
    taken = record(path, "Barn 2", {**CELLS, "Order code": "a2", "Price": "0.1"})
    assert "It replaces this supplier's offer of intake 1." not in taken.notes
    assert rows(path, "select supplier from offer order by all") == [("Barn 2",), ("Barn 2",), ("Weir Barn",)]
    assert rows(path, "select rated_v, contradictions from part") == [(50, 1)]


BAD = {
    "unit": (
        {"Capacitance": "4.7 V"},
        'Capacitance: "4.7 V" has the unit "V", but a quantity in F is wanted here, like 4.7 µF.',
        ("Capacitance",),
    ),
    "word": ({"Technology": "flim PP"}, 'Did you mean "film pp"?', ("Technology",)),
    "missing": (
        {"Part number": "", "Voltage": " "},
        "Part number: The line states no number of the maker's, and no line is kept without it. Fill the cell in the "
        "list. Voltage: The line states no rated d.c. voltage, nor an a.c. one,",
        ("Part number", "Voltage"),
    ),
    "contradiction": (
        {"Technology": "film PP", "Polarity": "polar"},
        "Polarity: The line says polar, but a film PP part has no polarity.",
        ("Polarity",),
    ),
    "dear": (
        {"Price": "0.350"},
        "What lies in your own drawer costs nothing, not 0.35. Leave the price out, or name the supplier who asks it.",
        ("Price",),
    ),
    "size": (
        {"Size": "6x11"},
        "A size means nothing without the shape of the body. Say can, box or axial too, or leave the size out.",
        ("Shape", "Size"),
    ),
    "heading": ({"Capacitanse": "1 µF"}, '"Capacitanse" names nothing that can be recorded. Did you mean', ()),
    "twice": (
        {"capacitance_f": "1 µF"},
        '"Capacitance" and "capacitance_f" both mean capacitance_f. Leave one out.',
        ("Capacitance", "capacitance_f"),
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_what_can_not_be_recorded_is_said_and_leaves_the_catalog(name: str, path: Path) -> None:
    cells, sentence, headings = BAD[name]
    record(path, DRAWER, CELLS)
    before = path.read_bytes()
    with pytest.raises(TypedError) as refused:
        record(path, DRAWER, {**CELLS, **cells})
    assert sentence in str(refused.value)
    assert refused.value.headings == headings
    assert path.read_bytes() == before


def test_each_heading_has_its_own_sentence(path: Path) -> None:
    with pytest.raises(TypedError) as refused:
        record(path, DRAWER, {**CELLS, "Part number": "", "Capacitance": "4.7 V"})
    faults = refused.value.faults
    assert list(faults) == list(refused.value.headings)
    assert faults["Part number"].startswith("The line states no number of the maker's,")
    assert faults["Capacitance"].startswith('"4.7 V" has the unit "V"')
    assert all(f"{heading}: {fault}" in str(refused.value) for heading, fault in faults.items())


def test_what_only_the_drawer_or_a_supplier_has(path: Path) -> None:
    with pytest.raises(TypedError, match=r"Only your own drawer has a day on which .* \"Barn\"\. Leave that day out\."):
        record(path, "Barn", {**CELLS, "Price": "1", "Bought": "2026-10-03"})
    with pytest.raises(TypedError, match="Price: The line states no price, and no line is kept without it"):
        record(path, "Barn", CELLS)
    with pytest.raises(TypedError, match=r"The supplier's name is empty. Give a name, or \"own drawer\" for what is"):
        record(path, " ", CELLS)


def test_a_new_catalog_is_not_left_behind(tmp_path: Path) -> None:
    with pytest.raises(TypedError):
        record(tmp_path / "new", DRAWER, {**CELLS, "Stock": "few"})
    assert not list(tmp_path.iterdir())


def test_an_order_code_belongs_to_one_part(path: Path) -> None:
    record(path, DRAWER, {**CELLS, "Order code": "tray 1"})
    record(path, DRAWER, {**CELLS, "Order code": "tray 1", "Stock": "2"})
    with pytest.raises(TypedError, match=r'code "tray 1" of own drawer already belongs to Mill Hollow 1\. Give anot'):
        record(path, DRAWER, {**CELLS, "Order code": "tray 1", "Maker": ""})
    assert rows(path, "select maker, stock from part join offer using (pk)") == [("Mill", 2)]


def test_no_currency_is_said(tmp_path: Path) -> None:
    (note,) = record(tmp_path / "c", DRAWER, {**CELLS, **KNOWN}).notes
    assert note == "It has no currency, so its cost is never compared. Load rates or name one, and add it again."


def test_every_heading_is_understood_by_the_intake() -> None:
    read = {field.heading: read_heading(0, field.heading) for field in FIELDS}
    assert {heading: column and column.kind for heading, column in read.items()} == {
        field.heading: field.kind for field in FIELDS
    }
    assert {field.after for field in FIELDS} - {""} <= set(read)


def test_what_is_asked_depends_on_what_is_typed() -> None:
    def asked(supplier: str, **cells: str) -> set[str]:
        return {field.name for field in FIELDS if field.has_meaning(supplier, cells)}

    assert {"polarity", "life", "ripple", "bought"} <= asked(DRAWER)
    assert not {"polarity", "life", "ripple"} & asked(DRAWER, Technology="PP-Folie")
    assert not {"price", "currency", "size", "life_means"} & asked(DRAWER)
    assert {"size", "life_means"} <= asked(DRAWER, Shape="can", Life="2000 h")
    assert {"price", "currency"} <= asked("Barn")
    assert "bought" not in asked("Barn")
    assert "currency" not in asked("Barn", Price="0.35 EUR")
    assert [field.name for field in missing("Barn", {"AC voltage": "275 V"})] == ["part_number", "capacitance", "price"]
