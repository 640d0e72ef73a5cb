"""Work beside the notebook: the newest is done, what takes long gives way, errors are told, what is stopped is not."""

import asyncio
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from shutil import copyfile
from threading import Event, Thread, Timer, current_thread
from threading import enumerate as enumerate_threads
from typing import Any

import duckdb
import pytest

from subsearch.catalog.background import PATIENCE_S, Background
from subsearch.catalog.kept_open import KeptOpen

ENDLESS = "select count(*) from range(1000000) a, range(1000000) b, range(1000000) c where a.range + b.range = c.range"


@pytest.fixture
def kept(demo_catalog: Path) -> KeptOpen:
    return KeptOpen(demo_catalog)


async def until(holds: Callable[[], Any]) -> None:
    end = time.monotonic() + 30
    while not holds():
        assert time.monotonic() < end, "it does not come about"
        await asyncio.sleep(0.005)


def raised(error: Exception) -> None:
    raise error


def test_of_several_the_newest_is_done_and_the_others_never_begin(kept: KeptOpen) -> None:
    began: list[int] = []
    done: list[int] = []
    go_on = Event()

    def work(con: duckdb.DuckDBPyConnection, number: int) -> int:
        began.append(number)
        go_on.wait(30)
        return number

    async def several() -> None:
        line = Background(kept, raised)
        for number in range(5):
            line.start(partial(work, number=number), done.append)
            if number == 0:
                await until(lambda: began)
        go_on.set()
        await until(lambda: not line.busy)

    asyncio.run(several())
    assert (began, done) == ([0, 4], [0, 4])


def test_it_is_done_in_a_thread_of_its_own_and_told_in_the_loops(kept: KeptOpen) -> None:
    where: list[str] = []

    async def one() -> None:
        line = Background(kept, raised)
        line.start(lambda con: where.append(current_thread().name), lambda _: where.append(current_thread().name))
        await until(lambda: not line.busy)

    asyncio.run(one())
    assert where[0].startswith("subsearch") and where[1] == "MainThread"


def test_what_has_gone_on_for_long_gives_way_to_what_is_newer(kept: KeptOpen) -> None:
    done: list[Any] = []
    failures: list[Exception] = []

    async def two() -> None:
        line = Background(kept, failures.append)
        line.start(lambda con: con.execute(ENDLESS).fetchall(), done.append)
        await asyncio.sleep(PATIENCE_S + 0.1)
        line.start(lambda con: con.execute("select 7").fetchall(), done.append)
        await until(lambda: not line.busy)

    asyncio.run(two())
    assert (done, failures) == ([[(7,)]], [])


def test_what_is_stopped_ends_and_tells_nothing(kept: KeptOpen) -> None:
    done: list[Any] = []
    failures: list[Exception] = []

    async def one() -> None:
        line = Background(kept, failures.append)
        line.start(lambda con: con.execute(ENDLESS).fetchall(), done.append)
        await asyncio.sleep(0.1)
        assert line.busy
        line.stop()
        await until(lambda: not line.busy)
        line.start(lambda con: 1, done.append)
        await until(lambda: not line.busy)

    asyncio.run(one())
    assert (done, failures) == ([1], [])


def test_what_was_stopped_is_not_told_either_where_newer_work_waits_for_its_end(kept: KeptOpen) -> None:
    done: list[str] = []
    go_on = Event()

    def old(con: duckdb.DuckDBPyConnection) -> str:
        go_on.wait(30)
        return "of the question before"

    async def two() -> None:
        line = Background(kept, raised)
        line.start(old, done.append)
        await until(lambda: line.busy_s > 0)
        line.stop()
        assert not line.busy and line.busy_s == 0
        line.start(lambda con: "new", done.append)
        assert line.busy
        go_on.set()
        await until(lambda: not line.busy)

    asyncio.run(two())
    assert done == ["new"]


def test_what_goes_wrong_in_showing_it_is_told_too_and_no_thread_is_left(kept: KeptOpen) -> None:
    failures: list[Exception] = []

    async def one() -> None:
        line = Background(kept, failures.append)
        line.start(lambda con: 1, lambda _: raised(ValueError("can't be shown")))
        await until(lambda: not line.busy)
        await until(lambda: not [one for one in enumerate_threads() if one.name.startswith("subsearch")])

    asyncio.run(one())
    assert [str(one) for one in failures] == ["can't be shown"]


def test_what_goes_wrong_is_told_and_the_next_is_done(kept: KeptOpen) -> None:
    done: list[Any] = []
    failures: list[Exception] = []

    async def two() -> None:
        line = Background(kept, failures.append)
        line.start(lambda con: con.execute("select no_such_column"), done.append)
        await until(lambda: not line.busy)
        line.start(lambda con: 1, done.append)
        await until(lambda: not line.busy)

    asyncio.run(two())
    assert done == [1] and isinstance(failures[0], duckdb.BinderException) and len(failures) == 1


def test_without_a_loop_it_is_done_at_once(kept: KeptOpen) -> None:
    done: list[Any] = []
    failures: list[Exception] = []
    line = Background(kept, failures.append)
    line.start(lambda con: con.execute("select 7").fetchall(), done.append)
    assert done == [[(7,)]]
    line.start(lambda con: 1 / 0, done.append)
    assert done == [[(7,)]] and isinstance(failures[0], ZeroDivisionError)


def test_a_catalog_is_closed_after_a_while_and_opened_again(demo_catalog: Path, tmp_path: Path) -> None:
    catalog = Path(copyfile(demo_catalog, tmp_path / "own.duckdb"))  # the demo's is held by other tests too
    kept = KeptOpen(catalog, 0.05)
    with kept.reading() as con:
        assert con.execute("select count(*) > 0 from part").fetchall() == [(True,)]
        time.sleep(0.2)  # nobody else reads, but this one does
        assert con.execute("select 1").fetchall() == [(1,)]
    end = time.monotonic() + 10
    while kept.is_open:
        assert time.monotonic() < end, "it is not closed"
        time.sleep(0.01)
    duckdb.connect(catalog).close()  # who would write can: it is held by nobody
    with kept.reading() as con:
        kept.close()
        assert con.execute("select 1").fetchall() == [(1,)]
    kept.close()
    assert not kept.is_open


def test_who_would_write_waits_for_who_reads(demo_catalog: Path) -> None:
    kept = KeptOpen(demo_catalog)
    reads, ends = Event(), Event()

    def read() -> None:
        with kept.reading():
            reads.set()
            ends.wait(30)

    reader = Thread(target=read)
    reader.start()
    reads.wait(30)
    kept.close(0.01)
    assert kept.is_open  # it does not pull the catalog away
    Timer(0.2, ends.set).start()
    kept.close(30)
    assert not kept.is_open
    reader.join()
