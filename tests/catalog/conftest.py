"""Small invented lists for the tests of the catalog."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

Maker = Callable[..., Path]
ORDINARY = {
    "Order code": "a1",
    "Maker": "Mill",
    "Part number": "Hollow 1",
    "Cap uF": "4.7",
    "Voltage": "63 V",
    "Price": "0.5",
}


@pytest.fixture(scope="module")
def make_list(tmp_path_factory: pytest.TempPathFactory) -> Maker:
    """Writes a CSV list: each line is what differs from an ordinary one."""

    def make(*lines: dict[str, str], name: str = "grey-shed.csv") -> Path:
        headings = list(ORDINARY) + sorted({heading for line in lines for heading in line} - ORDINARY.keys())
        file = tmp_path_factory.mktemp("lists") / name
        with file.open("w", encoding="utf-8", newline="") as out:
            writer = csv.DictWriter(out, headings, lineterminator="\n", restval="")
            writer.writeheader()
            writer.writerows({**ORDINARY, **line} for line in lines)
        return file

    return make
