"""What several tests share: the demo's catalog, loaded once, and its repair."""

from collections.abc import Iterator
from datetime import date
from importlib.util import find_spec
from pathlib import Path

import duckdb
import pytest

from subsearch.catalog.intake import load
from subsearch.catalog.rates import load_rates
from subsearch.catalog.store import open_to_read
from subsearch.shipped import shipped

DEMO = shipped("catalog_demo")
# Its examples can't be looked for where the library that it races is not installed.
collect_ignore = [] if find_spec("polars") else ["speed/polars_columns.py"]


@pytest.fixture(scope="session")
def demo_catalog(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalog file with the four demo lists and the demo's rates."""
    catalog = tmp_path_factory.mktemp("demo") / "demo.duckdb"
    load_rates(catalog, DEMO / "rates.csv")
    load(catalog, sorted((DEMO / "lists").iterdir()), seen=date(2026, 10, 1))
    return catalog


@pytest.fixture(scope="session")
def demo_con(demo_catalog: Path) -> Iterator[duckdb.DuckDBPyConnection]:
    """The demo's catalog, opened to read."""
    with open_to_read(demo_catalog) as con:
        yield con
