"""Which lists a catalog was loaded from."""

from datetime import date
from pathlib import Path

from subsearch.catalog.facts import Loaded, loaded
from subsearch.catalog.intake import load
from subsearch.catalog.store import open_to_read

LIST = "Order code,Maker,Part number,Capacitance,Voltage,Price,Currency\n1,Mill,Q 1,10 µF,63 V,0.12,EUR\n2,Mill,,,,,\n"


def test_lists_are_told_with_the_day_they_were_seen(tmp_path: Path) -> None:
    catalog = tmp_path / "c.duckdb"
    for name in ("shed.csv", "barn.csv"):
        (tmp_path / name).write_text(LIST, encoding="utf-8")
    load(catalog, [tmp_path / "shed.csv"], seen=date(2026, 3, 1))
    load(catalog, [tmp_path / "shed.csv"], seen=date(2026, 4, 1))
    load(catalog, [tmp_path / "barn.csv"], seen=date(2026, 5, 1))
    with open_to_read(catalog) as con:
        assert loaded(con) == [
            Loaded("barn", "barn.csv", date(2026, 5, 1), 1, 1, True),
            Loaded("shed", "shed.csv", date(2026, 3, 1), 1, 1, False),
            Loaded("shed", "shed.csv", date(2026, 4, 1), 1, 1, True),
        ]
