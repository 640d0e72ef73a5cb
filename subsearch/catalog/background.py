"""Work beside the notebook: in a thread, so that typing goes on; of several pieces the newest; it can be stopped."""

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from time import monotonic
from typing import Any

import duckdb

from subsearch.catalog.kept_open import KeptOpen

AGAIN_S = 0.05
PATIENCE_S = 0.5  # work that has gone on for longer gives way to newer work; what is quick is shown first
Work = Callable[[duckdb.DuckDBPyConnection], Any]
Then = Callable[[Any], None]


def running_loop() -> asyncio.AbstractEventLoop | None:
    """The loop that runs here, as in a notebook; None where none does, as in a script.

    >>> running_loop() is None
    True
    """
    try:
        return asyncio.get_running_loop()
    except RuntimeError:
        return None


class Background:
    """One line of work on a catalog. Where no loop runs that could call back, the work is done at once, here.

    `then` takes what the work gives, `failed` what it raised; both are called where the loop runs, and neither for
    work that was stopped or has given way.
    """

    def __init__(self, catalog: KeptOpen, failed: Callable[[Exception], None]) -> None:
        self._catalog, self._failed = catalog, failed
        self._next: tuple[Work, Then] | None = None
        self._task: asyncio.Task[None] | None = None
        self._con: duckdb.DuckDBPyConnection | None = None
        self._begun = 0.0
        self._loop: asyncio.AbstractEventLoop | None = None
        self._wanted = False  # whether what goes on is still wanted

    @property
    def busy(self) -> bool:
        """Whether wanted work goes on or waits."""
        return self._next is not None or (self._wanted and self._goes_on)

    @property
    def busy_s(self) -> float:
        """How long wanted work has gone on [s]; 0 where none goes on."""
        return monotonic() - self._begun if self._wanted and self._goes_on else 0.0

    @property
    def _goes_on(self) -> bool:
        return self._task is not None and not self._task.done()

    def start(self, work: Work, then: Then) -> None:
        """Do this next; what waited is forgotten, and what has gone on for long gives way."""
        loop = running_loop()
        if loop is None:
            self.now(work, then)
            return
        self._next = work, then
        if not self._goes_on:
            self._loop = loop
            self._task = loop.create_task(self._go_on())
        elif monotonic() - self._begun > PATIENCE_S:
            self._wanted = False
            self._end()

    def now(self, work: Work, then: Then) -> None:
        """Do this at once, and give back when it is done."""
        self.stop()
        try:
            result = self._done(work)
        except Exception as error:  # noqa: BLE001 - told, whatever it is
            self._failed(error)
        else:
            then(result)

    def stop(self) -> None:
        """End what goes on and forget what waits."""
        self._wanted, self._next = False, None
        self._end()

    def _end(self) -> None:
        """Interrupt what goes on, again and again: what has not begun a statement yet hears nothing of it."""
        con = self._con
        if self._wanted or (con is None and not self._goes_on):
            return
        if con is not None:
            with suppress(duckdb.ConnectionException):  # closed meanwhile, so there is nothing to end
                con.interrupt()
        if self._loop is not None and self._goes_on:
            self._loop.call_later(AGAIN_S, self._end)

    def _done(self, work: Work) -> Any:
        with self._catalog.reading() as con:
            self._con = con
            try:
                return work(con)
            finally:
                self._con = None

    async def _go_on(self) -> None:
        pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix="subsearch")  # no thread is left when all is done
        try:
            while self._next is not None:
                (work, then), self._next = self._next, None
                self._begun, self._wanted = monotonic(), True
                await self._one(pool, work, then)
        finally:
            pool.shutdown(wait=False)

    async def _one(self, pool: ThreadPoolExecutor, work: Work, then: Then) -> None:
        try:
            result = await asyncio.get_running_loop().run_in_executor(pool, self._done, work)
            if self._wanted:
                then(result)
        except Exception as error:  # noqa: BLE001 - told, whatever it is
            if self._wanted and self._next is None:
                self._failed(error)
