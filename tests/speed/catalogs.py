"""The catalogs that are measured, made once and kept: in the folder SUBSEARCH_SPEED names, else in the system's own."""

import os
from collections.abc import Iterator, Sequence
from pathlib import Path
from tempfile import gettempdir

from speed.make_catalog import make_catalog

SIZES = (100_000, 1_000_000)


def catalogs(sizes: Sequence[int]) -> Iterator[tuple[int, Path]]:
    """Give each size asked, or the usual sizes, with its catalog file, made if it is not there."""
    folder = Path(os.environ.get("SUBSEARCH_SPEED", Path(gettempdir()) / "subsearch-speed"))
    folder.mkdir(parents=True, exist_ok=True)
    for offers in sizes or SIZES:
        path = folder / f"{offers}.duckdb"
        if not path.exists():
            making = folder / f"{offers}.making"
            make_catalog(making, offers)
            making.rename(path)
        yield offers, path
