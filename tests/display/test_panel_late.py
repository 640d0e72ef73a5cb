"""The panel where a loop runs, as in a notebook: what comes late, fails or is stopped never passes for an answer."""

import asyncio
import time
from collections.abc import Callable, Coroutine
from dataclasses import replace
from pathlib import Path
from threading import Event
from typing import Any

import duckdb
import pytest
from display.test_panel import ANYWHERE, GIVEN, set_to

from subsearch.display import answers_shown, by_hand, list_shown
from subsearch.display.panel import LATE, SAVE_S, Panel
from subsearch.errors import CatalogError
from subsearch.repair import inquiry
from subsearch.repair.asking import Asked
from subsearch.repair.inquiry import Around
from subsearch.search.candidates import Found
from subsearch.search.near_misses import Concession, NearMisses
from subsearch.search.several import Several

Act = Callable[[Panel], Coroutine[Any, Any, None]]
Run = Callable[[Act], None]


@pytest.fixture
def looks() -> list[Found]:
    """Every answer around which was looked."""
    return []


@pytest.fixture
def run(demo_catalog: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, looks: list[Found]) -> Run:
    """Open a panel where a loop runs, wait until all is shown, and do something with it."""

    def around(_: duckdb.DuckDBPyConnection, asked: Asked, found: Found) -> Around:
        looks.append(found)
        return Around(NearMisses((), (_higher(found),)), Several(found.requirement))

    async def opened(act: Act) -> None:
        panel = Panel(demo_catalog, tmp_path, **GIVEN)
        await until(lambda: panel.answers.around)
        await act(panel)

    monkeypatch.setattr(inquiry, "life_over", lambda *_: [])
    monkeypatch.setattr(inquiry, "around", around)
    return lambda act: asyncio.run(opened(act))


def _higher(found: Found) -> Concession:
    need = found.requirement
    more = replace(need, headroom_mm=(need.headroom_mm or 0) + 1)
    return Concession(("body",), more, 1, None, "1 mm more headroom", "1 mm more headroom lets in 1 part.")


async def until(holds: Callable[[], Any]) -> None:
    end = time.monotonic() + 30
    while not holds():
        assert time.monotonic() < end, "it does not come about"
        await asyncio.sleep(0.005)


def test_what_is_wrong_is_said_until_it_is_mended(run: Run) -> None:
    async def act(panel: Panel) -> None:
        set_to(panel, headroom_mm="tall")
        await asyncio.sleep(SAVE_S + 0.2)
        assert panel.alert.startswith('Headroom: "tall"') and (panel.desk.folder / "panel.json").exists()

    run(act)


def test_a_part_is_not_taken_for_what_it_was_not_found_for(run: Run) -> None:
    async def act(panel: Panel) -> None:
        set_to(panel, mains="yes", role="interference suppression")  # where only a part of its class may stand
        panel.box.take.click()
        assert panel.alert == LATE and panel.desk.bought() == ([], {})
        panel.box.page.click()
        assert panel.alert == LATE and not list(panel.desk.folder.glob("*.html"))

    run(act)


def test_what_another_question_would_let_in_is_not_conceded(run: Run) -> None:
    async def act(panel: Panel) -> None:
        assert panel.box.near.items[0]["action"] == "Concede"
        set_to(panel, headroom_mm="9 mm")
        panel.box.near.press(0)
        assert panel.desk.trial.conceded == ()
        await until(lambda: panel.box.near.items[0]["action"])
        panel.box.near.press(0)
        await until(lambda: panel.requirement and panel.requirement.headroom_mm == 10)

    run(act)


def test_what_lies_around_an_answer_is_looked_at_once_and_not_after_it_was_stopped(
    run: Run, looks: list[Found], monkeypatch: pytest.MonkeyPatch
) -> None:
    go_on = Event()

    def slow(_: duckdb.DuckDBPyConnection, asked: Asked, found: Found) -> Around:
        looks.append(found)
        go_on.wait(30)
        return Around(NearMisses(), Several(found.requirement))

    async def act(panel: Panel) -> None:
        monkeypatch.setattr(inquiry, "around", slow)
        looks.clear()
        set_to(panel, headroom_mm="9 mm")
        await until(lambda: panel.box.near.items and panel.box.near.items[0]["text"] == answers_shown.LOOKING)
        panel.box.near.press(0)
        assert panel.box.near.items == [{"text": answers_shown.STOPPED, "action": "Look again"}]
        panel.box.table.looked_at = panel.box.table.rows[1]["id"]
        await until(lambda: panel.answers.about)
        go_on.set()
        await asyncio.sleep(0.3)
        assert len(looks) == 1 and panel.answers.around is None
        panel.box.near.press(0)
        await until(lambda: panel.answers.around)
        assert len(looks) == 2

    run(act)


def test_what_was_picked_is_undone_and_another_position_begins_with_none(run: Run) -> None:
    async def act(panel: Panel) -> None:
        first, second = (row["id"] for row in panel.box.table.rows[1:3])
        panel.box.table.picked = [first]
        set_to(panel, years_wanted="9")
        await until(lambda: panel.requirement and panel.requirement.life_wanted_y == 9)
        panel.box.table.picked = [first, second]
        panel.box.undo.click()
        assert panel.box.table.picked == [first] and len(panel.answers.drawn) == 2
        panel.box.undo.click()
        panel.box.undo.click()
        assert panel.box.table.picked == [] and len(panel.answers.drawn) == 1

    run(act)


def test_where_a_search_fails_nothing_old_stays(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    async def act(panel: Panel) -> None:
        monkeypatch.setattr(inquiry, "find", lambda *_: 1 / 0)
        set_to(panel, headroom_mm="9 mm")
        await until(lambda: panel.alert)
        box = panel.box
        assert (panel.found, box.table.rows, box.drawing.value, box.near.items) == (None, [], "", [])

    run(act)


def test_a_search_that_gave_way_to_a_part_typed_in_is_done_though_nothing_was_recorded(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: Any) -> None:
        raise CatalogError("The catalog is held by another process.")

    async def act(panel: Panel) -> None:
        monkeypatch.setattr(by_hand, "record", refused)
        panel.by_hand.form.values = {
            "whose": "own drawer", "part_number": "Tray 7", "capacitance": "100 µF", "voltage": "40 V",
        }  # fmt: skip
        set_to(panel, headroom_mm="9 mm")
        panel.by_hand.button.click()
        assert "held by another process" in panel.by_hand.said.value
        await until(lambda: panel.requirement and panel.requirement.headroom_mm == 9)

    run(act)


def test_the_list_that_is_written_is_the_one_that_was_taken(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: Any, **__: Any) -> None:
        raise CatalogError("The catalog is held by another process.")

    async def act(panel: Panel) -> None:
        panel.box.take.click()
        panel.box.write.click()  # before the list was asked
        file = panel.desk.folder / "shopping-list.csv"
        assert panel.found is not None and panel.found.kept[0].part["part_number"] in file.read_text(encoding="utf-8")
        file.unlink()
        panel.box.undo.click()
        monkeypatch.setattr(list_shown, "bought", refused)
        panel.box.redo.click()
        panel.box.write.click()
        assert panel.alert == "The catalog is held by another process." and not file.exists()

    run(act)


def test_where_nothing_is_asked_nothing_of_before_stays(run: Run) -> None:
    async def act(panel: Panel) -> None:
        panel.box.near.press(0)
        await until(lambda: panel.box.conceded.items)
        set_to(panel, **ANYWHERE, capacitance="", rated_voltage="")
        box = panel.box
        assert panel.alert.startswith("Nothing is asked.")
        assert (box.line.value, box.why.value, box.two.value, box.near.note) == ("", "", "", "")
        assert "neither capacitance nor rated voltage" in box.notes.value

    run(act)
