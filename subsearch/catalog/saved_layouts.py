"""A saved layout: how one supplier's lists are read, in a small TOML file that the builder can correct."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from subsearch.catalog.heading_cells import Column
from subsearch.catalog.layouts import Layout, check, two_rows
from subsearch.errors import ListError
from subsearch.reading.plain_files import HEAD_ROWS
from subsearch.reading.rows import Row


@dataclass(frozen=True)
class SavedLayout:
    """What a layout file says of a supplier's lists; columns in their order, those left out with an empty kind."""

    file: Path
    heading_line: int | None
    decimal_mark: str
    currency: str | None
    shape: str
    columns: tuple[Column, ...]

    def applied(self, name: str, rows: Sequence[Row]) -> Layout:
        """Give the layout of a list.

        name: the list's file. rows: its rows. Of headings alike the first of the file is the first of the list.
        Raises ListError where the heading line is another, or what is needed is missing.
        """
        line, cells = self._heading_row(name, rows)
        headings = tuple(cell.strip() for cell in cells)
        waiting = list(self.columns)
        columns, skipped = [], []
        for place, heading in enumerate(headings):
            said = next((one for one in waiting if _tidy(one.heading) == _tidy(heading)), None)
            if said is None or not said.kind:
                skipped += [heading] if heading else []
            else:
                columns.append(Column(place, heading, said.kind, said.hint, said.from_quantity))
            waiting = [one for one in waiting if one is not said]
        layout = Layout(line, headings, tuple(columns), tuple(skipped), self.decimal_mark, self.shape)
        check(name, layout)
        return layout

    def _heading_row(self, name: str, rows: Sequence[Row]) -> tuple[int, Sequence[str]]:
        """The heading line and its cells, together with those of the line above where both are needed."""
        named = (self.heading_line, (self.heading_line or 0) - 1)
        near = [
            row for place, row in enumerate(rows) if place < HEAD_ROWS or row.line in named
        ]  # not a million of them
        lines = [(row.line, row.cells) for row in near]
        lines += [(low.line, two_rows(high, low)) for high, low in pairwise(near)]
        at = [one for one in lines if self.heading_line in (None, one[0])]
        best, chosen = max(lines, key=self._known), max(at, key=self._known, default=None)
        if chosen is None or (not self._known(chosen) and self._known(best)):
            raise ListError(
                f'"{self.file}", heading_line: none of its headings stand in line {self.heading_line} of "{name}"; '
                f"line {best[0]} holds {self._known(best)} of them. Correct heading_line, or take it out."
            )
        return chosen

    def _known(self, line: tuple[int, Sequence[str]]) -> int:
        return sum(any(_tidy(one.heading) == _tidy(cell) for cell in line[1]) for one in self.columns)

    def notes(self, layout: Layout) -> tuple[str, ...]:
        """Give what is to be said of a list that was read by it: that it was, and which headings differ."""
        own = Counter(_tidy(one.heading) for one in self.columns if one.heading)
        its = Counter(_tidy(heading) for heading in layout.headings if heading)
        said = [f'Read by the layout "{self.file}".']
        if new := its - own:
            said.append(f"The layout does not name these headings of the list, left out: {', '.join(new)}.")
        if gone := own - its:
            said.append(f"The layout names headings that the list does not have: {', '.join(gone)}.")
        return tuple(said)


def _tidy(heading: str) -> str:
    return " ".join(heading.split())
