"""A catalog that is read again and again: opened when it is needed, and closed when nobody has read for a while.

Opening takes longer than many a search; but while it is open nobody can load a list into it.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Condition, Timer

import duckdb

from subsearch.catalog.store import open_to_read


class KeptOpen:
    """A catalog file and its connection, if it is open; `idle_s` [s] after the last reading it is closed.

    Several threads may read at once. Raises CatalogError when it is opened.

    >>> with KeptOpen(Path("none")).reading():
    ...     pass
    Traceback (most recent call last):
    subsearch.errors.CatalogError: There is no catalog "none". Load a supplier's list first, or check the path.
    """

    def __init__(self, path: Path, idle_s: float = 0.0) -> None:
        self.path, self.idle_s = path, idle_s
        self._free = Condition()
        self._con: duckdb.DuckDBPyConnection | None = None
        self._readers = 0
        self._timer: Timer | None = None

    @contextmanager
    def reading(self) -> Iterator[duckdb.DuckDBPyConnection]:
        """A connection of the caller's own, to read with; another one is interrupted without it."""
        with self._free:
            if self._timer is not None:
                self._timer.cancel()
            if self._con is None:
                self._con = open_to_read(self.path)
            self._readers += 1
            cursor = self._con.cursor()
        try:
            yield cursor
        finally:
            cursor.close()
            with self._free:
                self._readers -= 1
                self._free.notify_all()
            self._close_later()

    @property
    def is_open(self) -> bool:
        """Whether a connection is held: then nobody can write the catalog."""
        return self._con is not None

    def close(self, wait_s: float = 0.0) -> None:
        """Close it, unless somebody still reads after that wait [s]."""
        with self._free:
            self._free.wait_for(lambda: self._readers == 0, wait_s)
            if self._con is not None and self._readers == 0:
                self._con.close()
                self._con = None

    def _close_later(self) -> None:
        if not self.idle_s:
            self.close()
            return
        with self._free:
            if self._timer is not None:
                self._timer.cancel()
            self._timer = Timer(self.idle_s, self.close)
            self._timer.daemon = True
            self._timer.start()
