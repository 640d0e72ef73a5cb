"""A real JupyterLab, opened in the system's own Chromium, from which no request may leave the machine."""

import contextlib
import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.lab_server import LabServer
from playwright.sync_api import Browser, Page, sync_playwright

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
READY = """() => {
    const shown = window.jupyterapp?.shell.currentWidget;
    return shown?.context?.isReady && shown.sessionContext?.session?.kernel?.connectionStatus === 'connected';
}"""
ERRORS = """() => window.jupyterapp.shell.currentWidget.content.model.toJSON().cells
    .flatMap(cell => (cell.outputs ?? []).filter(one => one.output_type === 'error'))
    .map(one => `${one.ename}: ${one.evalue}`)"""


class Notebook:
    """One page with one notebook."""

    def __init__(self, page: Page, server: LabServer) -> None:
        self.page, self.server = page, server

    def run_all(self, name: str) -> None:
        """Open a notebook and run it; a cell that fails fails here."""
        self.page.goto(f"{self.server.url}/doc/tree/{name}?token={self.server.token}&reset")
        self.page.wait_for_function(READY, timeout=60_000)
        self.page.set_default_timeout(180_000)
        self.page.evaluate("async () => { await window.jupyterapp.commands.execute('notebook:run-all-cells') }")
        self.page.set_default_timeout(20_000)
        errors = self.page.evaluate(ERRORS)  # Run All ends well even where a cell fails
        assert not errors, errors

    def shot(self, name: str) -> None:
        """Keep a picture, where SUBSEARCH_SHOTS names a folder for them."""
        if folder := os.environ.get("SUBSEARCH_SHOTS"):
            Path(folder).mkdir(parents=True, exist_ok=True)
            self.page.screenshot(path=Path(folder) / f"{name}.png")


@pytest.fixture(scope="module")
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
def notebook(lab_server: LabServer, chromium: Browser) -> Iterator[Notebook]:
    context = chromium.new_context(viewport={"width": 1280, "height": 900}, locale="en-GB", timezone_id="UTC")
    page = context.new_page()
    page.set_default_timeout(20_000)
    outside: list[str] = []
    broken: list[str] = []
    ours = (lab_server.url, "data:", "blob:")
    page.on("request", lambda request: None if request.url.startswith(ours) else outside.append(request.url))
    page.on("pageerror", lambda error: broken.append(str(error)))
    yield Notebook(page, lab_server)
    with contextlib.suppress(Exception):
        page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.shutdown()")
    context.close()
    assert not outside, f"the page asked for something that is not on this machine: {outside}"
    assert not broken, broken
