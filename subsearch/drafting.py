"""The command that drafts a repair's positions from a parts list."""

from pathlib import Path
from typing import Annotated

import typer


def positions(
    parts_list: Annotated[Path, typer.Argument(metavar="LIST", help="The parts list, CSV or XLSX.")],
    out: Annotated[Path | None, typer.Option(help="The repair's folder; else the one the list lies in.")] = None,
    replace: Annotated[bool, typer.Option("--replace", help="A positions.csv that is there may go.")] = False,
) -> None:
    """Draft a repair's positions.csv from a parts list."""
    from subsearch.display.drafted import print_draft
    from subsearch.repair.drafting import draft_positions

    draft = draft_positions(parts_list)
    written = draft.write(out or parts_list.parent, replace) if draft.positions else ()
    print_draft(draft, written)
    raise typer.Exit(0 if draft.positions else 1)
