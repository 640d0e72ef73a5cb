"""A bench for the command line: a folder to stand in, a small catalog in it, and a way to say a command."""

import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from cli.common import RATES, SHED, Demo, Said, Say, said_by_process

from subsearch.catalog.intake import load
from subsearch.catalog.rates import load_rates
from subsearch.cli import run


@pytest.fixture(scope="session")
def shed_catalog(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("shed")
    (folder / "shed.csv").write_text(SHED, encoding="utf-8")
    (folder / "rates.csv").write_text(RATES, encoding="utf-8")
    load_rates(folder / "shed.duckdb", folder / "rates.csv")
    load(folder / "shed.duckdb", [folder / "shed.csv"])
    return folder / "shed.duckdb"


@pytest.fixture
def bench(tmp_path: Path, shed_catalog: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder one stands in, with a small catalog, a list, rates and a repair."""
    shutil.copyfile(shed_catalog, tmp_path / "subsearch.duckdb")
    (tmp_path / "shed.csv").write_text(SHED, encoding="utf-8")
    (tmp_path / "rates.csv").write_text(RATES, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def say(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Say:
    """Runs a command as the installed program does, but in this process."""

    def saying(*args: str) -> Said:
        monkeypatch.setattr(sys, "argv", ["subsearch", *args])
        capsys.readouterr()
        with pytest.raises(SystemExit) as ended:
            run()
        out, err = capsys.readouterr()
        return Said(int(ended.value.code or 0), out, err)

    return saying


@pytest.fixture(scope="session")
def demo_run(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Demo]:
    here = tmp_path_factory.mktemp("demo run")
    yield Demo(here / "subsearch-demo", said_by_process("demo", cwd=here))
