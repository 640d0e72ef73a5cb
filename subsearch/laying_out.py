"""The command that writes what was recognised of a supplier's list as a layout file, for the builder to correct."""

from pathlib import Path
from typing import Annotated

import typer

from subsearch.options import DEFAULT_CATALOG


def layout(
    file: Annotated[Path, typer.Argument(metavar="LIST", help="A supplier's list, CSV or XLSX.")],
    catalog: Annotated[Path, typer.Option("--catalog", help="The catalog file; layouts stand beside it.")] = (
        DEFAULT_CATALOG
    ),
    supplier: Annotated[str | None, typer.Option(help="Whose list it is; else the file's name says it.")] = None,
    out: Annotated[Path | None, typer.Option(help="Where the layout goes; else layouts/SUPPLIER.toml.")] = None,
) -> None:
    """Write what is recognised of a list as a layout file, which the next load of this supplier's lists follows."""
    from subsearch.catalog.intake import supplier_of
    from subsearch.catalog.layout_files import layout_file
    from subsearch.catalog.layout_writing import recognise, write_layout
    from subsearch.display.recognised import print_recognised

    found = recognise(file, supplier or supplier_of(file))
    target = out or layout_file(catalog, found.supplier)
    write_layout(found, target)
    print_recognised(found, target)
