"""The four demonstration lists, loaded: every kept line value for value, every fault, nothing else."""

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import duckdb
import pytest
from demo_maker import Truth, truth

from subsearch.catalog.facts import counts
from subsearch.catalog.intake import Intake, load
from subsearch.catalog.rates import load_rates
from subsearch.catalog.store import open_to_read
from subsearch.terms import OFFER_TERMS, PART_TERMS

DEMO = Path(__file__).parents[2] / "catalog_demo"
LISTS = sorted((DEMO / "lists").iterdir())
NAMES = [term.name for term in (*PART_TERMS, *OFFER_TERMS)]


@pytest.fixture(scope="module")
def told() -> Truth:
    return truth()


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("demo") / "demo.catalog"


@pytest.fixture(scope="module")
def intakes(path: Path) -> list[Intake]:
    return load(path, LISTS)


@pytest.fixture(scope="module")
def con(path: Path, intakes: list[Intake]) -> Iterator[duckdb.DuckDBPyConnection]:
    assert intakes
    with open_to_read(path) as con:
        yield con


def test_kept_and_refused_are_the_lines_read(intakes: list[Intake], told: Truth) -> None:
    assert {intake.file: intake.lines_read for intake in intakes} == told.lines_read
    assert all(intake.kept + intake.refused == intake.lines_read for intake in intakes)
    assert all(intake.kept and intake.refused for intake in intakes)


def test_each_list_skips_one_heading(intakes: list[Intake]) -> None:
    assert {intake.file: intake.skipped_headings for intake in intakes} == {
        "Duskpenny_Surplus.csv": ("Bin",),
        "Fernwhistle_Parts.csv": ("Remarks",),
        "Kupferlaub_Versand.csv": ("Bemerkung",),
        "Osierdown_Components.xlsx": ("Aisle",),
    }


def test_the_faults_are_those_that_were_planted(con: duckdb.DuckDBPyConnection, told: Truth) -> None:
    rows = con.execute("select file, line, term, fault from refusal join intake using (intake)").fetchall()
    assert len(rows) == len(set(rows))
    assert set(rows) == told.faults


def test_every_kept_line_states_what_the_list_states(con: duckdb.DuckDBPyConnection, told: Truth) -> None:
    names = ", ".join(f"listing.{name}" for name in NAMES)
    found = con.execute(
        f"""select file, line, {names}, list_transform(prices, lambda b: (b."from", b.price))
        from listing join intake using (intake)"""
    ).fetchall()
    kept = {(row[0], row[1]): row[2:] for row in found}
    wanted = {(row["file"], row["line"]): row for row in told.rows}
    assert kept.keys() == wanted.keys()
    for place, row in wanted.items():
        stated = dict(zip((*NAMES, "prices"), kept[place], strict=True))
        assert stated == {name: as_stored(name, row[name]) for name in stated}, place


def as_stored(name: str, value: object) -> object:
    if name == "traceable":
        return {"yes": True, "no": False, None: None}[str(value) if value else None]
    return float(value) if isinstance(value, Decimal) else value


def test_the_rates(tmp_path: Path) -> None:
    rates = load_rates(tmp_path / "c", DEMO / "rates.csv")
    assert [rate.currency for rate in rates if rate.worth == 1] == ["EUR"]
    assert "CHF" not in {rate.currency for rate in rates}


def test_parts_and_offers(con: duckdb.DuckDBPyConnection, told: Truth) -> None:
    numbers = {(row["maker"], row["part_number"]) for row in told.rows}
    offers = {(row["supplier"], row["supplier_number"]) for row in told.rows}
    found = counts(con)
    assert (found.parts, found.offers, found.lines) == (len(numbers), len(offers), len(told.rows))
    assert found.refusals == len({(file, line) for file, line, _, _ in told.faults})
    (contradicted,) = con.execute("select count(*) from part where contradictions > 0").fetchall()[0]
    assert contradicted >= 24
