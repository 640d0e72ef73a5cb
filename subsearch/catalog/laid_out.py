"""A list ready to be staged: where its lines stand, their layout, and what is to be said of it."""

from dataclasses import dataclass, replace

from subsearch.catalog.layouts import Layout, find_layout
from subsearch.catalog.saved_layouts import SavedLayout
from subsearch.catalog.size_tables import as_lines
from subsearch.reading.currencies import ELSEWHERE
from subsearch.reading.plain_files import PlainFile
from subsearch.reading.rows import Row, Table, read_table


@dataclass(frozen=True)
class LaidOut:
    """What is staged of a list, below its heading line; `by_cell` where each line is a cell of a size table."""

    source: Table | PlainFile
    layout: Layout
    notes: tuple[str, ...] = ()
    by_cell: bool = False


def lay_out(source: Table | PlainFile, supplier: str, saved: SavedLayout | None, currency: str | None) -> LaidOut:
    """Give a list ready to be staged: by the saved layout of its supplier, as a size table, or by its headings.

    supplier: its name, which a size table without a title is called by. currency: of prices that state none.
    Raises ListError where the list can't be used as a whole.
    """
    if saved is None and (sizes := as_lines(_as_table(source), supplier)):
        if isinstance(source, PlainFile):  # only its first rows were at hand
            sizes = as_lines(read_table(source.file), supplier) or sizes
        heading = Row(sizes.layout.line, sizes.layout.headings)
        lines = Table(source.file, [heading, *sizes.rows], source.notes, source.ragged)
        return LaidOut(lines, sizes.layout, sizes.notes, by_cell=True)
    name = source.file.name
    layout = find_layout(name, source.rows) if saved is None else saved.applied(name, source.rows)
    return LaidOut(source, _told(layout, currency), saved.notes(layout) if saved else ())


def _as_table(source: Table | PlainFile) -> Table:
    """The rows at hand, of a plain file the first only."""
    return Table(source.file, source.rows, source.notes, source.ragged)


def _told(layout: Layout, currency: str | None) -> Layout:
    """The layout whose price cells know that the list or the load says the currency, for signs that several share."""
    said = ELSEWHERE if "currency" in layout.kinds else f"{ELSEWHERE}{currency}" if currency else ""
    columns = [
        replace(column, hint=f"{said}{column.hint}")
        if column.kind == "unit_price" and column.hint[:1] in ("", "/")
        else column
        for column in layout.columns
    ]
    return replace(layout, columns=tuple(columns))
