"""A real JupyterLab, opened in the system's own Chromium, from which no request may leave the machine."""

import contextlib
import json
import os
import re
import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path
from time import monotonic
from typing import Any

import pytest
from browser.lab_server import LabServer
from playwright.sync_api import Browser, Page, expect, sync_playwright

CHROMIUM = os.environ.get("SUBSEARCH_CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
FLAGS = [
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",  # a bench without a network
]
WRITTEN = "written.ipynb"
READY = """() => {
    const shown = window.jupyterapp?.shell.currentWidget;
    return shown?.context?.isReady && shown.sessionContext?.session?.kernel?.connectionStatus === 'connected';
}"""
ERRORS = """() => window.jupyterapp.shell.currentWidget.content.model.toJSON().cells
    .flatMap(cell => (cell.outputs ?? []).filter(one => one.output_type === 'error'))
    .map(one => `${one.ename}: ${one.evalue}`)"""


class Notebook:
    """One page with one notebook."""

    def __init__(self, page: Page, server: LabServer, folder: Path) -> None:
        self.page, self.server, self.folder = page, server, folder

    def run_all(self, name: str, expected: Sequence[str] = ()) -> None:
        """Open a notebook in a folder of its own and run it; it must end with these kinds of errors in its cells."""
        if not (self.folder / name).exists():
            shutil.copy(self.server.root / name, self.folder)
        self.page.goto(f"{self.server.url}/doc/tree/{self.folder.name}/{name}?token={self.server.token}&reset")
        self.page.wait_for_function(READY, timeout=60_000)
        self.run_cells(expected)

    def run_written(self, code: str, expected: Sequence[str] = ()) -> None:
        """Write a notebook of one cell, open it and run it."""
        cell: dict[str, Any] = {
            "cell_type": "code",
            "id": "one",
            "metadata": {},
            "execution_count": None,
            "outputs": [],
            "source": code,
        }
        kernel = {"kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"}}
        book = {"cells": [cell], "metadata": kernel, "nbformat": 4, "nbformat_minor": 5}
        (self.folder / WRITTEN).write_text(json.dumps(book), encoding="utf-8")
        self.run_all(WRITTEN, expected)

    def restart(self) -> None:
        """Restart the kernel and run all cells again."""
        self.page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.restartKernel()")
        self.page.wait_for_function(READY, timeout=60_000)
        self.run_cells()

    def run_cells(self, expected: Sequence[str] = ()) -> None:
        """Run all cells; they must end with these kinds of errors."""
        self.page.set_default_timeout(180_000)
        self.page.evaluate("async () => { await window.jupyterapp.commands.execute('notebook:run-all-cells') }")
        self.page.set_default_timeout(20_000)
        errors = self.page.evaluate(ERRORS)  # Run All ends well even where a cell fails
        assert [one.partition(":")[0] for one in errors] == list(expected), errors

    def wait_for_file(self, name: str, text: str) -> None:
        """Wait until a file beside the notebook has this text in it: it is written a moment after the page changed."""
        file, end = self.folder / name, monotonic() + 20
        while not (file.exists() and text in file.read_text(encoding="utf-8")):
            assert monotonic() < end, f"{name} never got {text}"
            self.page.wait_for_timeout(50)

    def shot(self, name: str) -> None:
        """Keep a picture, where SUBSEARCH_SHOTS names a folder for them."""
        if folder := os.environ.get("SUBSEARCH_SHOTS"):
            Path(folder).mkdir(parents=True, exist_ok=True)
            self.page.screenshot(path=Path(folder) / f"{name}.png")


@pytest.fixture(scope="session")
def lab_server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[LabServer]:
    if CHROMIUM is None:
        pytest.skip("no Chromium on this machine: install the system's package chromium, or set SUBSEARCH_CHROMIUM")
    folder = tmp_path_factory.mktemp("lab")
    server = LabServer(folder / "notebooks", folder / "state")
    yield server
    server.stop()


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """The browser, ended with its module: its event loop would otherwise seem to run in all later tests."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def notebook(lab_server: LabServer, chromium: Browser, request: pytest.FixtureRequest) -> Iterator[Notebook]:
    context = chromium.new_context(viewport={"width": 1280, "height": 900}, locale="en-GB", timezone_id="UTC")
    page = context.new_page()
    page.set_default_timeout(20_000)
    expect.set_options(timeout=20_000)
    outside: list[str] = []
    broken: list[str] = []
    ours = (lab_server.url, "data:", "blob:")
    page.on("request", lambda request: None if request.url.startswith(ours) else outside.append(request.url))
    page.on("pageerror", lambda error: broken.append(str(error)))
    page.on("console", lambda said: broken.append(said.text) if said.type == "error" else None)
    folder = lab_server.root / re.sub(r"\W+", "-", request.node.name)  # so that no state is left to another test
    folder.mkdir()
    yield Notebook(page, lab_server, folder)
    with contextlib.suppress(Exception):
        page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.shutdown()")
    context.close()
    assert not outside, f"the page asked for something that is not on this machine: {outside}"
    assert not broken, broken
