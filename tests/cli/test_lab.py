"""`subsearch lab` copies the notebooks out and keeps what the builder changed."""

import json
import os
from pathlib import Path

import pytest
from typer.testing import CliRunner

from subsearch import lab
from subsearch.cli import app
from subsearch.shipped import shipped


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Path, bool]]:
    calls: list[tuple[Path, bool]] = []
    monkeypatch.setattr(lab, "_open", lambda folder, no_browser: calls.append((folder, no_browser)))
    return calls


def test_notebooks_are_copied_out_and_never_written_over(tmp_path: Path, opened: list[tuple[Path, bool]]) -> None:
    folder = tmp_path / "mine"
    first = CliRunner().invoke(app, ["lab", str(folder), "--no-browser"])
    assert first.exit_code == 0
    notebook, *others = sorted(folder.glob("*.ipynb"))
    assert others and all(f"Notebook: {one}" in first.output for one in (notebook, *others))
    notebook.write_text("changed")
    assert CliRunner().invoke(app, ["lab", str(folder)]).exit_code == 0
    assert notebook.read_text() == "changed"
    assert opened == [(folder, True), (folder, False)]


def test_jupyter_is_told_to_ask_nothing_of_the_network(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from jupyterlab.labapp import LabApp

    given: list[list[str]] = []
    monkeypatch.setenv("JUPYTER_CONFIG_PATH", "theirs")
    monkeypatch.setattr(LabApp, "launch_instance", given.append)
    lab._open(tmp_path, no_browser=True)
    assert given == [[f"--ServerApp.root_dir={tmp_path}", *lab.OFFLINE, "--no-browser"]]
    ours, theirs = os.environ["JUPYTER_CONFIG_PATH"].split(os.pathsep)
    settings = json.loads((Path(ours) / "labconfig" / "default_setting_overrides.json").read_text())
    assert settings["@jupyterlab/apputils-extension:notification"] == {"checkForUpdates": False, "fetchNews": "false"}
    assert theirs == "theirs"


def test_notebooks_hold_no_outputs() -> None:
    for file in shipped("notebooks").glob("*.ipynb"):
        cells = json.loads(file.read_text(encoding="utf-8"))["cells"]
        assert [cell for cell in cells if cell.get("outputs") or cell.get("execution_count")] == []
