"""A part typed in by hand in the notebook: recorded, found again, and every bad text a sentence at its field."""

import subprocess
import sys
from pathlib import Path
from shutil import copy
from typing import Any

import pytest

from subsearch.catalog.facts import counts
from subsearch.catalog.store import open_to_read
from subsearch.catalog.typed import FIELDS
from subsearch.display import by_hand as by_hand_module
from subsearch.display.by_hand import ELSEWHERE, ByHand
from subsearch.errors import CatalogError
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

ROD = {
    "part_number": "Rod 1", "maker": "Mill", "technology": "film PP", "capacitance": "100 nF", "voltage": "63 V",
    "shape": "box", "size": "7.2x2.5x6.5", "lead_spacing": "5 mm", "stock": "4", "condition": "old stock",
}  # fmt: skip
NEEDED = {"part_number": "Rod 1", "capacitance": "100 nF", "voltage": "63 V"}
TRAP = '<img src=x onerror="alert(1)">'


@pytest.fixture
def catalog(demo_catalog: Path, tmp_path: Path) -> Path:
    return Path(copy(demo_catalog, tmp_path / "own.duckdb"))


@pytest.fixture
def names() -> list[str]:
    return []


@pytest.fixture
def box(catalog: Path, names: list[str]) -> ByHand:
    return ByHand(catalog, names.append)


def type_in(box: ByHand, **texts: str) -> None:
    """As the browser does: all texts at once."""
    box.form.values = {**box.form.values, **texts}


def press(box: ByHand, **texts: str) -> str:
    type_in(box, **texts)
    box.button.click()
    return str(box.said.value)


def shown(box: ByHand) -> dict[str, dict[str, Any]]:
    return {one["name"]: one for group in box.form.groups for one in group["controls"]}


def offers(catalog: Path) -> list[tuple[Any, ...]]:
    with open_to_read(catalog) as con:
        return con.execute(
            "select supplier, maker, part_number, stock, currency from offer join part using (pk) "
            "where part_number = 'Rod 1' order by all"
        ).fetchall()


def test_a_recorded_part_is_found_and_the_box_is_empty_for_the_next(
    box: ByHand, catalog: Path, names: list[str]
) -> None:
    said = press(box, **ROD)
    assert said.startswith('<div class="subs-text"><div role="status"><p><b>Recorded for own drawer (intake ')
    assert all(f"<li>{line}</li>" in said for line in ("Part number: Rod 1", "Maker: Mill", f"Catalog: {catalog}"))
    assert names == ["Mill Rod 1"]
    assert (dict(box.form.values), dict(box.form.faults)) == ({"whose": "own drawer", "supplier": ""}, {})
    with open_to_read(catalog) as con:
        asked = Requirement(capacitance_f=1e-7, rated_v=63, hole_spacing_mm=5, headroom_mm=8)
        found = find(con, [asked], best=1000)[0]
        assert [one.offer["supplier"] for one in found.kept if one.name == "Mill Rod 1"] == ["own drawer"]
    box.button.click()
    assert box.said.value == said, "a second click of the same hand hides nothing"
    assert "It replaces this supplier&#x27;s offer of intake" in press(box, **ROD)


def test_notes_are_said(box: ByHand) -> None:
    said = press(box, **NEEDED)
    assert "<li>The condition is not stated, so searches show the part as open.</li>" in said
    assert "<li>The stock is not stated, so searches show the part as open.</li>" in said


def test_a_supplier_s_part_has_a_price_and_the_next_comes_from_there_too(box: ByHand, catalog: Path) -> None:
    assert "bought" in shown(box) and not {"supplier", "price", "order_code"} & shown(box).keys()
    type_in(box, whose=ELSEWHERE)
    assert {"supplier", "price", "currency", "order_code"} <= shown(box).keys() and "bought" not in shown(box)
    said = press(box, **ROD)
    assert box.form.faults == {
        "supplier": 'The supplier\'s name is empty. Give a name, or "own drawer" for what is your own.',
        "price": "No part is recorded without it.",
    }
    assert "Nothing was recorded." in said and 'role="alert"' in said
    press(box, supplier=" Weir  Barn ", price="0,35 GBP")
    assert offers(catalog) == [("Weir Barn", "Mill", "Rod 1", 4, "GBP")]
    assert box.form.values == {"whose": ELSEWHERE, "supplier": " Weir  Barn "}
    press(box, **ROD, supplier="Own Drawer", price="")
    assert ("own drawer", "Mill", "Rod 1", 4, "EUR") in offers(catalog)


def test_what_means_something_only_after_another_appears_with_it(box: ByHand) -> None:
    assert not {"size", "lead_spacing", "lead_form", "life_means", "ripple_frequency"} & shown(box).keys()
    type_in(box, shape="can", life="2000 h", ripple="0.3 A")
    assert {"size", "lead_spacing", "lead_form", "life_means", "ripple_frequency"} <= shown(box).keys()
    type_in(box, shape="", technology="film PP", ripple="")
    assert not {"size", "polarity", "ripple", "ripple_frequency"} & shown(box).keys()


def test_what_is_typed_stays_in_sight_and_is_not_left_out_unseen(box: ByHand, catalog: Path) -> None:
    type_in(box, whose=ELSEWHERE, price="0.35 EUR")
    type_in(box, **{**NEEDED, "whose": "own drawer"})
    assert "price" in shown(box)
    said = press(box)
    assert box.form.faults["price"].startswith("What lies in your own drawer costs nothing, not 0.35.")
    assert "What lies in your own drawer costs nothing, not 0.35." in said
    press(box, price="")
    assert [one[:1] for one in offers(catalog)] == [("own drawer",)]
    assert "price" not in shown(box)


def test_needed_first_words_to_choose_from_and_examples(box: ByHand) -> None:
    titles = [group["title"] for group in box.form.groups]
    assert titles[:2] == ["Where it comes from", "Needed"]
    assert [one["name"] for one in box.form.groups[1]["controls"]] == list(NEEDED)
    assert [group["open"] for group in box.form.groups] == [True, True, True, True, False]
    controls = shown(box)
    assert controls["polarity"]["options"] == [["", "not stated"], ["polar", "polar"], ["bipolar", "bipolar"]]
    assert controls["life"]["hint"] == "like 2000 h" and controls["maker"]["hint"] == "who makes the part"
    assert {one["kind"] for one in controls.values()} == {"choice", "text"}


def test_every_field_can_be_typed_in(box: ByHand) -> None:
    ways: dict[str, Any] = {}
    for whose in ("own drawer", ELSEWHERE):
        type_in(box, whose=whose, shape="can", life="9", ripple="9 A", esr="1 Ω")
        ways |= shown(box)
    assert ways.keys() == {field.name for field in FIELDS} | {"whose", "supplier"}


BAD = {
    "unit": ({"capacitance": "4.7 V"}, "capacitance", '"4.7 V" has the unit "V", but a quantity in F is wanted here'),
    "number": ({"stock": "few"}, "stock", '"few" is not'),
    "date": ({"bought": "soon"}, "bought", '"soon" is not a date. Write it as year-month-day, like 2026-10-03.'),
    "size": ({"shape": "can", "size": "big"}, "size", '"big"'),
    "sane": ({"voltage": "63 MV"}, "voltage", '"63 MV"'),
}
REFUSED = {
    "contradiction": ({"technology": "film PP", "polarity": "polar"}, "polarity", "but a film PP part has no polarity"),
    "shape": ({"size": "6x11"}, "shape", "A size means nothing without the shape of the body."),
    "needed": ({"part_number": " "}, "part_number", "No part is recorded without it."),
}


@pytest.mark.parametrize("name", [*BAD, *REFUSED])
def test_what_is_wrong_is_a_sentence_at_its_field_and_nothing_typed_is_lost(
    name: str, box: ByHand, catalog: Path, names: list[str]
) -> None:
    texts, control, sentence = (BAD | REFUSED)[name]
    before = catalog.read_bytes()
    type_in(box, **NEEDED, maker="Mill")
    type_in(box, **texts)
    assert (control in box.form.faults) == (name in BAD), "read as soon as it is typed"
    said = press(box)
    assert sentence in box.form.faults[control]
    assert control in shown(box)
    assert "Nothing was recorded." in said and 'role="alert"' in said
    assert box.form.values == {"whose": "own drawer", **NEEDED, "maker": "Mill", **texts}
    assert catalog.read_bytes() == before and not names
    mended = {one: NEEDED.get(one, "") for one in texts}
    type_in(box, **mended)
    assert control not in box.form.faults
    assert "Recorded for own drawer" in press(box)


def test_each_contradiction_stands_at_its_own_field(box: ByHand) -> None:
    press(box, **NEEDED, technology="film PP", polarity="polar", shape="can", size="6x11", lead_spacing="9 mm")
    faults = box.form.faults
    assert "film PP" in faults["polarity"] and "apart" in faults["lead_spacing"]
    assert "apart" not in faults["polarity"]


def test_before_is_called_only_where_something_is_to_be_written(catalog: Path) -> None:
    calls: list[str] = []
    con = open_to_read(catalog)

    def before() -> None:
        calls.append("before")
        con.close()

    box = ByHand(catalog, calls.append, before)
    press(box, **NEEDED, stock="few")
    assert not calls
    press(box, stock="4")
    assert calls == ["before", "Rod 1"]


def test_a_catalog_held_open_is_a_sentence_and_nothing_typed_is_lost(box: ByHand, catalog: Path) -> None:
    with open_to_read(catalog):
        said = press(box, **NEEDED)
    assert "is held by another process. Wait until its load has ended, or close it there." in said
    assert box.form.values == {"whose": "own drawer", **NEEDED}
    assert "Recorded for" in press(box)


def test_a_catalog_held_by_another_process_is_a_sentence(box: ByHand, catalog: Path) -> None:
    code = f"import duckdb, sys; con = duckdb.connect({str(catalog)!r}); print('held', flush=True); sys.stdin.read()"
    with subprocess.Popen(
        [sys.executable, "-c", code], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout and other.stdout.readline() == "held\n"
        assert "is held by another process (PID " in press(box, **NEEDED)
        other.communicate("")
    assert "Recorded for" in press(box)


def test_no_folder_or_no_catalog_of_ours_is_a_sentence(tmp_path: Path, names: list[str]) -> None:
    assert "There is no folder" in press(ByHand(tmp_path / "gone" / "c", names.append), **NEEDED)
    (tmp_path / "text").write_text("not a catalog")
    assert "can&#x27;t be opened as a catalog" in press(ByHand(tmp_path / "text", names.append), **NEEDED)
    assert "Recorded for" in press(ByHand(tmp_path / "new", names.append), **NEEDED), "an absent one is made"
    assert names == ["Rod 1"]


def test_hostile_text_stays_text(box: ByHand, catalog: Path, names: list[str]) -> None:
    said = press(box, **{**NEEDED, "part_number": TRAP, "maker": TRAP, "capacitance": TRAP})
    assert "<img" not in said and "&lt;img" in said
    assert box.form.faults["capacitance"].startswith(f'"{TRAP}"')  # text in the form, which puts it in as text
    said = press(box, whose=ELSEWHERE, supplier=TRAP, price="1 EUR", capacitance="1 nF")
    assert "<img" not in said and said.count("&lt;img") == 3
    assert names == [f"{TRAP} {TRAP}"]
    with open_to_read(catalog) as con:
        assert con.execute("select count(*) from offer where supplier = $1", [TRAP]).fetchall() == [(1,)]


def test_a_fault_of_ours_or_of_who_is_called_is_a_sentence(catalog: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def gone(name: str) -> None:
        raise CatalogError(f"{name} can't be looked for.")

    box = ByHand(catalog, gone)
    said = press(box, **NEEDED)
    assert "Recorded for own drawer" in said and "<li>Rod 1 can&#x27;t be looked for.</li>" in said
    assert len(offers(catalog)) == 1
    monkeypatch.setattr(by_hand_module, "record", lambda *_: 1 / 0)
    assert "This should not happen (ZeroDivisionError: division by zero)." in press(box, **NEEDED)
    assert box.form.values["part_number"] == "Rod 1"
    monkeypatch.setattr(by_hand_module, "groups", lambda _: 1 / 0)
    type_in(box, maker="Mill")
    assert "This should not happen (ZeroDivisionError" in box.said.value


def test_recording_adds_one_line_to_the_catalog_s_count(box: ByHand, catalog: Path) -> None:
    with open_to_read(catalog) as con:
        lines = counts(con).lines
    press(box, **ROD)
    with open_to_read(catalog) as con:
        assert counts(con).lines == lines + 1
