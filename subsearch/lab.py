"""The command that opens the notebooks: copied out first, so that what came with the program stays as it is."""

import os
from pathlib import Path
from typing import Annotated

import typer

from subsearch.shipped import copied_out

# Nothing is asked of the network: no news, no check for updates, no list of extensions.
OFFLINE = (
    "--LabApp.news_url=None",
    "--LabApp.check_for_updates_class=jupyterlab.handlers.announcements.NeverCheckForUpdate",
    "--LabApp.extension_manager=readonly",
)


def lab(
    folder: Annotated[Path, typer.Argument(help="Where the notebooks go.")] = Path("subsearch-lab"),
    no_browser: Annotated[bool, typer.Option("--no-browser", help="Print the address, open nothing.")] = False,
) -> None:
    """Copy the notebooks out and open them in JupyterLab."""
    for notebook in copied_out("notebooks", folder, "*.ipynb"):
        typer.echo(f"Notebook: {notebook}")
    _open(folder, no_browser)


def _open(folder: Path, no_browser: bool) -> None:
    from jupyterlab.labapp import LabApp  # takes a second or two to load

    ours, theirs = Path(__file__).parent / "jupyter", os.environ.get("JUPYTER_CONFIG_PATH")
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join([str(ours), *([theirs] if theirs else [])])
    silent = ("--no-browser",) if no_browser else ()
    LabApp.launch_instance([f"--ServerApp.root_dir={folder.resolve()}", *OFFLINE, *silent])
