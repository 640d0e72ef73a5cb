"""Lines merged into parts and offers: contradictions counted, the cautious claim wins, the newest list holds."""

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path

import pytest

from subsearch.catalog.intake import load
from subsearch.catalog.merging import FIRST, LAST_WORD_WINS, LEAST, MOST
from subsearch.catalog.store import open_to_read
from subsearch.terms import TERMS

Maker = Callable[..., Path]


def rows(path: Path, sql: str) -> list[tuple[object, ...]]:
    with open_to_read(path) as con:
        return con.execute(sql).fetchall()


CONTRADICTIONS = [
    ("Voltage", "rated_v", "63", "50", 50),
    ("V AC", "rated_ac_v", "63", "50", 50),
    ("Tmax", "rated_c", "105", "85", 85),
    ("Life", "life_h", "2000", "1000", 1000),
    ("Ripple mA", "ripple_a", "350", "300", 0.3),
    ("Lead length", "lead_length_mm", "20", "15", 15),
    ("Tolerance", "tolerance_low_pct", "10", "20", -20),
    ("Tolerance", "tolerance_high_pct", "10", "20", 20),
    ("Tmin", "lowest_c", "-55", "-40", -40),
    ("tan d", "tan_delta", "0.1", "0.2", 0.2),
    ("ESR", "esr_ohm", "0.1", "0.2", 0.2),
    ("along mm", "along_mm", "8", "10", 10),
    ("across mm", "across_mm", "8", "10", 10),
    ("tall mm", "tall_mm", "8", "10", 10),
    ("along plus mm", "along_plus_mm", "0.5", "1", 1),
    ("across plus mm", "across_plus_mm", "0.5", "1", 1),
    ("tall plus mm", "tall_plus_mm", "0.5", "1", 1),
    ("Lead dia", "lead_diameter_mm", "0.6", "0.8", 0.8),
    ("Ripple Hz", "ripple_hz", "120", "1e5", 1e5),
    ("tan d Hz", "tan_delta_hz", "100", "120", 120),
    ("ESR Hz", "esr_hz", "120", "1e5", 1e5),
    ("Polarity", "polarity", "bipolar", "polar", "polar"),
    ("Safety", "safety_class", "X1", "none", "none"),
    ("Safety", "safety_class", "X1", "X2", "X2"),
    ("Safety", "safety_class", "Y1", "Y2", "Y2"),
    ("Safety", "safety_class", "Y2", "X1", "X1"),
    ("Life basis", "life_basis", "endurance", "load life", "load life"),
    ("Life basis", "life_basis", "load life", "useful life", "useful life"),
    ("Life taken at", "life_reference", "ambient", "case", "case"),
    ("Status", "life_cycle", "active", "NRND", "not for new designs"),
    ("Status", "life_cycle", "NRND", "obsolete", "discontinued"),
    ("Vent", "vent", "none", "vented", "vented"),
    ("Cap uF", "capacitance_f", "4.7", "5", None),
    ("Technology", "technology", "polymer", "hybrid", None),
    ("Shape", "shape", "can", "box", None),
    ("Pitch", "lead_spacing_mm", "3.5", "5", None),
    ("Delivered spacing", "delivered_spacing_mm", "3.5", "5", None),
    ("Lead form", "lead_form", "straight", "cut", None),
    ("Series", "series", "Meadow", "Marsh", "first"),
    ("Leakage", "leakage_rule", "small", "large", "first"),
]


@pytest.fixture(scope="module")
def merged(make_list: Maker, tmp_path_factory: pytest.TempPathFactory) -> dict[bool, Path]:
    """Catalogs of all cases, one part each: the one claim loaded first, and the other first.

    A third list that carries the same parts and states as little as a list can changes nothing.
    """
    lists = [
        make_list(
            *({"Order code": str(n), "Part number": str(n), case[0]: case[side]} for n, case in numbered), name=name
        )
        for side, name in ((2, "one.csv"), (3, "other.csv"))
        for numbered in [list(enumerate(CONTRADICTIONS))]
    ]
    silent = [
        {"Order code": str(n), "Part number": str(n), case[0]: str(case[2]) if case[0] in ("Cap uF", "Voltage") else ""}
        for n, case in enumerate(CONTRADICTIONS)
    ]
    paths = {turned: tmp_path_factory.mktemp("merged") / "c" for turned in (False, True)}
    for turned, path in paths.items():
        intakes = load(path, [*(lists[::-1] if turned else lists), make_list(*silent, name="silent.csv")])
        assert not any(intake.refused for intake in intakes)
    return paths


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("number", range(len(CONTRADICTIONS)), ids=lambda n: "{1}: {2}, {3}".format(*CONTRADICTIONS[n]))
def test_contradicting_claims(merged: dict[bool, Path], number: int, turned: bool) -> None:
    _, term, one, other, wins = CONTRADICTIONS[number]
    found = rows(merged[turned], f"select {term}, contradictions from part where part_number = '{number}'")
    wanted = (other if turned else one) if wins == "first" else wins
    assert found == [(wanted, 2 if term.startswith("tolerance") else 1)]


def test_every_rule_names_terms_and_words_as_they_are() -> None:
    named = [*LEAST, *MOST, *FIRST, *LAST_WORD_WINS]
    assert len(named) == len(set(named))
    assert set(named) <= set(TERMS)
    assert all(set(words) == set(TERMS[term].words) for term, words in LAST_WORD_WINS.items())


def test_one_claim_and_agreeing_claims_contradict_nothing(tmp_path: Path, make_list: Maker) -> None:
    files = [make_list({"Life": life}, name=f"{n}.csv") for n, life in enumerate(["2000", "2000 h", ""])]
    load(tmp_path / "c", files)
    assert rows(tmp_path / "c", "select life_h, contradictions from part") == [(2000, 0)]
    assert rows(tmp_path / "c", "select supplier from offer order by all") == [("0",), ("1",), ("2",)]


def test_parts_stand_in_their_order_and_offers_in_theirs(tmp_path: Path, make_list: Maker) -> None:
    lines = [
        {"Order code": f"{m} {c} {v} {n}", "Cap uF": c, "Voltage": v, "Maker": m, "Part number": f"{c} {v} {n}"}
        for c in ("47", "4.7") for v in ("63", "16") for m in ("Weir", "Mill") for n in "21"
    ]  # fmt: skip
    load(tmp_path / "c", [make_list(*lines)])
    found = rows(tmp_path / "c", "select pk, capacitance_f, rated_v, maker, part_number from part")
    assert [row[0] for row in found] == list(range(1, 17))
    assert [row[1:] for row in found] == sorted(row[1:] for row in found)
    offers = rows(
        tmp_path / "c", "select offer.pk, maker || ' ' || part_number, supplier_number from offer join part using (pk)"
    )
    assert [row[0] for row in offers] == list(range(1, 17))
    assert all(number == part for _, part, number in offers)


def test_price_breaks_in_rows_join_into_one_offer(tmp_path: Path, make_list: Maker) -> None:
    """What else is claimed comes from the line with the lowest quantity."""
    file = make_list(
        {"From qty": "100", "Price": "0.3", "Stock": "7"},
        {"From qty": "1", "Price": "0.5", "Stock": "9"},
        {"From qty": "10", "Price": "0.4", "Stock": "8"},
    )
    load(tmp_path / "c", [file])
    assert rows(tmp_path / "c", 'select stock, list_transform(prices, lambda b: (b."from", b.price)) from offer') == [
        (9, [(1, Decimal("0.5")), (10, Decimal("0.4")), (100, Decimal("0.3"))])
    ]


def test_price_breaks_in_columns_ascend_and_leave_gaps_out(tmp_path: Path, make_list: Maker) -> None:
    gap = {"100+": "0.3", "Price 10+": "", "Price": "0.5", "Price 1000+": "0.3"}
    load(tmp_path / "c", [make_list(gap, {**gap, "Order code": "b", "Price 10+": "0.4", "Price": ""})])
    assert rows(tmp_path / "c", 'select list_transform(prices, lambda b: (b."from", b.price)) from offer') == [
        ([(1, Decimal("0.5")), (100, Decimal("0.3")), (1000, Decimal("0.3"))],),
        ([(10, Decimal("0.4")), (100, Decimal("0.3")), (1000, Decimal("0.3"))],),
    ]


def test_the_newest_list_that_holds_an_offer_wins(tmp_path: Path, make_list: Maker) -> None:
    old = make_list({"Life": "1000"}, {"Order code": "b", "Part number": "Hollow 2"}, name="old.csv")
    new = make_list({"Life": "2000", "Price": "0.7"}, name="new.csv")
    load(tmp_path / "c", [old, new], supplier="Grey Shed")
    found = rows(
        tmp_path / "c", "select part_number, life_h, contradictions, prices[1].price from part join offer using (pk)"
    )
    assert found == [("Hollow 1", 2000, 0, Decimal("0.7")), ("Hollow 2", None, 0, Decimal("0.5"))]


def test_a_suppliers_number_on_two_parts_is_an_offer_for_each(tmp_path: Path, make_list: Maker) -> None:
    file = make_list({"From qty": "1"}, {"From qty": "10", "Part number": "Hollow 2", "Price": "0.9"})
    load(tmp_path / "c", [file])
    assert rows(tmp_path / "c", "select part_number, prices[1].price, len(prices) from part join offer using (pk)") == [
        ("Hollow 1", Decimal("0.5"), 1),
        ("Hollow 2", Decimal("0.9"), 1),
    ]


def test_a_part_without_a_maker_is_a_part(tmp_path: Path, make_list: Maker) -> None:
    load(tmp_path / "c", [make_list({"Maker": ""}, {"Order code": "b"})])
    assert rows(tmp_path / "c", "select maker, count(*) from part join offer using (pk) group by all order by all") == [
        ("Mill", 1),
        (None, 1),
    ]
