"""The demo's report, made once, and a small repair's report with what a test puts into it."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import duckdb
import pytest

from subsearch.catalog.facts import loaded
from subsearch.catalog.rates import stored_rates
from subsearch.display.report import Report
from subsearch.repair.choosing import choose
from subsearch.repair.folder import read_repair
from subsearch.repair.reasons import reasons
from subsearch.shipped import shipped
from subsearch.shopping.plan import plan

Reporting = Callable[[Path], Report]


@pytest.fixture(scope="session")
def reporting(demo_con: duckdb.DuckDBPyConnection) -> Reporting:
    """Reports on the repair of a folder, out of the demo's catalog."""

    def report_on(folder: Path) -> Report:
        repair = read_repair(folder)
        choices = choose(demo_con, repair)
        return Report(
            repair, choices, reasons(demo_con, choices), plan(demo_con, choices), loaded(demo_con),
            stored_rates(demo_con), Path("some/demo.duckdb"), date(2026, 11, 2),
        )  # fmt: skip

    return report_on


@pytest.fixture(scope="session")
def organ(reporting: Reporting) -> Report:
    return reporting(shipped("catalog_demo") / "organ")
