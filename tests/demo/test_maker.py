"""The demonstration data is exactly what its maker writes, has the wanted size, and is physically plausible."""

import csv
from collections import Counter, defaultdict
from contextlib import closing
from decimal import Decimal
from pathlib import Path

import pytest
from demo_maker import Truth, truth
from demo_maker.build import build
from demo_maker.everything import write_everything
from demo_maker.layouts import LAYOUTS
from demo_maker.organ import CARDS, positions
from demo_maker.parts import make_parts
from demo_maker.truth import TERMS
from demo_maker.values import Claims, number
from openpyxl import load_workbook

from subsearch.terms import OFFER_TERMS, PART_TERMS, ROLES, TECHNOLOGIES
from subsearch.terms import TERMS as KNOWN

COMMITTED = Path(__file__).parents[2] / "catalog_demo"
CASES = """
C101 polarity bipolar
C104 fault_v 22
C106 match_group upper tone filter
C107 match_group lower tone filter
C204 lead_style axial
C206 rated_voltage 64 V
C301 lead_style snap-in
C301 ripple_ma 1400
C303 esr_hz 100000
C304 safety_class X2
C304 mains yes
C304 old_rating 275 V a.c.
C305 safety_class Y2
C306 hot_part_k 14
C401 headroom_mm 13
C401 polarity bipolar
"""


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo")
    write_everything(folder)
    return folder


@pytest.fixture(scope="module")
def told() -> Truth:
    return truth()


@pytest.fixture(scope="module")
def parts() -> list[Claims]:
    return make_parts(1974).listed


def share(parts: list[Claims], **wanted: str) -> float:
    """The share of parts that claim all of this."""
    return sum(all(part.get(term) == value for term, value in wanted.items()) for part in parts) / len(parts)


def rows(path: Path) -> list[tuple[object, ...]]:
    """All cells of a workbook's only sheet."""
    with closing(load_workbook(path, read_only=True)) as book:
        (sheet,) = book.worksheets
        return list(sheet.iter_rows(values_only=True))


def test_committed_files_are_what_the_maker_writes(written: Path) -> None:
    names = sorted(str(path.relative_to(written)) for path in written.rglob("*") if path.is_file())
    assert names == sorted(str(path.relative_to(COMMITTED)) for path in COMMITTED.rglob("*") if path.is_file())
    for name in names:
        if name.endswith(".xlsx"):
            assert rows(COMMITTED / name) == rows(written / name), name
        else:
            assert (COMMITTED / name).read_bytes() == (written / name).read_bytes(), name


def test_the_folder_is_small() -> None:
    assert sum(path.stat().st_size for path in COMMITTED.rglob("*") if path.is_file()) < 3_000_000


def test_numbers_of_parts_offers_and_lines(told: Truth, written: Path) -> None:
    assert 5_500 <= len({row["part_number"] for row in told.rows}) <= 6_500
    assert 8_500 <= len({(row["file"], row["supplier_number"]) for row in told.rows}) <= 9_500
    spoiled = Counter(file for file, _ in {fault[:2] for fault in told.faults})
    kept = Counter(str(row["file"]) for row in told.rows)
    assert {file: kept[file] + spoiled[file] for file in kept} == told.lines_read
    for layout in LAYOUTS[:2]:
        text = (written / "lists" / layout.file).read_text("utf-8" if layout.index == 0 else "cp1252")
        assert text.count("\n") == told.lines_read[layout.file] + len(layout.preamble) + 1


def test_each_part_has_one_to_three_suppliers(told: Truth) -> None:
    suppliers: dict[object, set[object]] = defaultdict(set)
    for row in told.rows:
        suppliers[row["part_number"]].add(row["supplier"])
    assert {len(found) for found in suppliers.values()} == {1, 2, 3}


def test_scarce_kinds_are_scarce(parts: list[Claims]) -> None:
    assert 0.6 < share(parts, technology="wet aluminium", polarity="polar") < 0.8
    assert 0.02 < share(parts, technology="wet aluminium", polarity="bipolar") < 0.04
    assert 0.01 < share(parts, shape="axial") < 0.03
    assert 0.005 < share(parts, technology="tantalum") < 0.02
    low = {"Stonewhit", "Willowpin", "Evenpebble"}
    assert 0.02 < sum(part["series"] in low for part in parts) / len(parts) < 0.05
    assert {part.get("safety_class") for part in parts} == {None, "none", "X1", "X2", "Y1", "Y2"}
    assert {part["technology"] for part in parts} == set(TECHNOLOGIES) - {"paper"}


def test_some_parts_leave_things_out(parts: list[Claims]) -> None:
    cans = [part for part in parts if part["shape"] == "can"]
    assert 0.04 < sum(not part.get("tall_mm") for part in cans) / len(cans) < 0.07
    led = [part for part in parts if part["shape"] != "axial"]
    assert 0.04 < sum(not part.get("lead_spacing_mm") for part in led) / len(led) < 0.07
    wet = [part for part in parts if "aluminium" in str(part["technology"])]
    assert 0.04 < sum(not part.get("life_h") for part in wet) / len(wet) < 0.07


def test_a_gap_is_a_gap_in_every_list(parts: list[Claims], told: Truth) -> None:
    silent = {part["part_number"] for part in parts if not part.get("tall_mm")}
    assert silent
    assert all(row["tall_mm"] is None for row in told.rows if row["part_number"] in silent)


def test_a_few_dozen_parts_are_contradicted(told: Truth) -> None:
    claims: dict[tuple[str, str], set[object]] = defaultdict(set)
    for row in told.rows:
        for term in ("life_h", "tall_mm", "ripple_a", "along_mm", "esr_ohm", "capacitance_f", "rated_v"):
            if row[term] is not None:
                claims[str(row["part_number"]), term].add(row[term])
    against = Counter(term for (_, term), found in claims.items() if len(found) > 1)
    assert sum(against.values()) == 48
    assert set(against) == {"life_h", "tall_mm", "ripple_a"}


def test_many_kinds_of_fault(told: Truth) -> None:
    assert len({fault[2:] for fault in told.faults}) >= 14
    lines = Counter(fault[:2] for fault in told.faults)
    assert 60 <= len(lines) <= 95
    assert sum(count == 2 for count in lines.values()) >= 4
    kinds = {fault for *_, fault in told.faults}
    assert kinds == {
        *("missing", "unreadable", "wrong_unit", "out_of_range", "unknown_word"),
        *("cells", "breaks", "repeated", "contradiction"),
    }
    assert {term for _, _, term, _ in told.faults} - {""} <= set(KNOWN)


def test_a_bad_break_leaves_the_other_lines_of_its_offer(told: Truth) -> None:
    lines = {(row["file"], row["line"]): row["supplier_number"] for row in told.rows}
    bad = [(file, line) for file, line, term, _ in told.faults if term == "unit_price" and file.startswith("Duskpenny")]
    assert sum((file, line - 1) in lines and (file, line) not in lines for file, line in bad) >= 3


def test_truth_has_every_term_and_sane_values(told: Truth) -> None:
    assert set(TERMS) == {term.name for term in (*PART_TERMS, *OFFER_TERMS)}
    for row in told.rows:
        for term in TERMS:
            value, sane = row[term], KNOWN[term]
            if isinstance(value, Decimal) and sane.low is not None and sane.high is not None:
                assert sane.low <= value <= sane.high, (row["part_number"], term)
            elif value is not None and sane.words:
                assert value in sane.words, (row["part_number"], term)


def test_clean_lines_have_falling_prices_and_lead_inside_the_body(told: Truth) -> None:
    for row in told.rows:
        prices = row["prices"]
        assert isinstance(prices, list)
        assert prices == sorted(prices)
        assert [price for _, price in prices] == sorted((price for _, price in prices), reverse=True)
        spacing, along = row["lead_spacing_mm"], row["along_mm"]
        assert not isinstance(spacing, Decimal) or (isinstance(along, Decimal) and spacing < along)


def test_volume_grows_with_charge_within_a_series(parts: list[Claims]) -> None:
    series: dict[object, list[tuple[Decimal, Decimal]]] = defaultdict(list)
    for part in parts:
        if "aluminium" in str(part["technology"]) and part.get("tall_mm") and part["part_number"] != "Ryebarrow 9039":
            volume = number(part, "along_mm") * number(part, "across_mm") * number(part, "tall_mm")
            series[part["series"]].append((number(part, "capacitance_f") * number(part, "rated_v"), volume))
    assert len(series) > 20
    for name, found in series.items():
        volumes = [volume for _, volume in sorted(found)]
        assert volumes == sorted(volumes), name
        assert volumes[0] < volumes[-1], name


def test_ripple_grows_with_the_can_at_one_voltage(parts: list[Claims]) -> None:
    found: dict[tuple[str, Decimal], list[tuple[Decimal, Decimal]]] = defaultdict(list)
    for part in parts:
        if part["series"] in ("Lumenfold", "Peatglow", "Saltmarrow", "Stonewhit"):
            key = (str(part["series"]), number(part, "rated_v"))
            found[key].append((number(part, "capacitance_f"), number(part, "ripple_a")))
    assert len(found) == 8 + 8 + 6 + 8
    for key, pairs in found.items():
        ratings = [ripple for _, ripple in sorted(pairs)]
        assert ratings == sorted(ratings), key
        assert ratings[0] < ratings[-1], key


def test_the_organ() -> None:
    found = positions()
    assert 33 <= len(found) <= 38
    assert 220 <= sum(CARDS[position["card"]] for position in found) <= 240
    assert len({position["reference"] for position in found}) == len(found)
    assert {position["role"] for position in found} == {*ROLES, ""}
    by_reference = {position["reference"]: position for position in found}
    for case in CASES.strip().splitlines():
        reference, term, value = case.split(" ", 2)
        assert by_reference[reference][term] == value, case
    unasked = by_reference["C208"]
    assert not unasked["capacitance"]
    assert not unasked["rated_voltage"]
    with (COMMITTED / "organ" / "positions.csv").open(encoding="utf-8", newline="") as stream:
        assert all(None not in row for row in csv.DictReader(stream))


def test_the_only_open_part_is_listed_and_alone(told: Truth) -> None:
    close = {
        row["part_number"]
        for row in told.rows
        if Decimal("0.000038") <= Decimal(str(row["capacitance_f"])) <= Decimal("0.000042")
    }
    assert close == {"Ryebarrow 9039"}


def test_another_seed_makes_other_data() -> None:
    assert build(1974)[0][0].cells != build(1975)[0][0].cells
