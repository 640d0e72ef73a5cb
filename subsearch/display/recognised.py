"""What the command line says of a list whose layout was recognised: each column, what is left out, what is missing."""

from pathlib import Path

from subsearch.catalog.layout_writing import Recognised, unit_of
from subsearch.display.terminal import visible
from subsearch.units import counted

WIDEST = 32


def print_recognised(found: Recognised, file: Path) -> None:
    """Print what was recognised of a list, and where it was written."""
    kept = found.kept
    print(
        visible(
            f"{found.supplier}: {len(kept)} of {_count(found)} headings of {found.list_name} are recognised, in "
            f"line {found.layout.line}."
        )
    )
    width = min(WIDEST, max((len(column.heading) for column in kept), default=0))
    for column in kept:
        unit = f" [{unit_of(column)}]" if unit_of(column) else ""
        start = f" from {counted(column.from_quantity, 'piece')}" if column.from_quantity else ""
        print(visible(f"  {column.heading:<{width}}  {column.kind}{unit}{start}"))
    for place, why in sorted(found.left_out.items()):
        print(visible(f"  {found.layout.headings[place]:<{width}}  left out: {why}"))
    if found.missing:
        print(f"  Still missing: {', '.join(found.missing)}. Say in the file which column states it.")
    if not found.decimal_mark:
        print("  The numbers do not tell the decimal mark; the file can say it.")
    print(f"Written: {file}\nCorrect it where it is wrong; the next load of this supplier's lists follows it.")


def _count(found: Recognised) -> int:
    return sum(bool(heading) for heading in found.layout.headings)
