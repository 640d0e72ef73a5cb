"""What came of a parts list: the positions drafted from it, and what became of each of its lines."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from subsearch.repair.draft_files import write_draft
from subsearch.repair.positions import COLUMNS, Position
from subsearch.units import counted

if TYPE_CHECKING:
    import pandas as pd


@dataclass(frozen=True)
class Taken:
    """A line of the list that gave positions: their references."""

    line: int
    text: str
    references: tuple[str, ...]


@dataclass(frozen=True)
class Left:
    """A line of the list that gave none: the kind of reason, and the reason as a sentence."""

    line: int
    text: str
    kind: str
    reason: str


@dataclass(frozen=True, repr=False)
class Draft:
    """Positions drafted from a parts list. Lines taken and left together are all lines of the list that hold anything.

    positions: sorted by card and reference, C2 before C10. doubts: by the position's name. notes: on the whole list.
    """

    file: Path
    positions: tuple[Position, ...]
    taken: tuple[Taken, ...]
    left: tuple[Left, ...]
    notes: tuple[str, ...]
    doubts: Mapping[str, tuple[str, ...]]
    cells: tuple[Mapping[str, str], ...] = field(default=(), compare=False)

    @property
    def lines_read(self) -> int:
        """How many lines of the list hold anything."""
        return len(self.taken) + len(self.left)

    def __repr__(self) -> str:
        """In words, so that a notebook's cell tells what came of the list."""
        kinds = dict.fromkeys(one.kind for one in self.left)
        why = ", ".join(f"{sum(one.kind == kind for one in self.left)} {kind}" for kind in kinds)
        return (
            f"{self.file.name}: {counted(len(self.positions), 'position')} from {len(self.taken)} of "
            f"{counted(self.lines_read, 'line')}, {len(self.left)} left{f' ({why})' if why else ''}; doubts about "
            f"{counted(len(self.doubts), 'position')}"
        )

    def table(self) -> "pd.DataFrame":
        """The positions as a table: one row each, with the columns of positions.csv that hold anything."""
        import pandas as pd

        frame = pd.DataFrame([dict(cells) for cells in self.cells]).fillna("")
        return frame[[heading for heading in COLUMNS if heading in frame]]

    def left_table(self) -> "pd.DataFrame":
        """The lines left out, each with its reason."""
        import pandas as pd

        return pd.DataFrame([vars(one) for one in self.left], columns=["line", "kind", "reason", "text"])

    def write(self, folder: Path | str, replace: bool = False) -> tuple[Path, ...]:
        """Write `positions.csv` into a repair's folder, and a `repair.toml` where none stands there.

        Raises:
            RepairError: there is a positions.csv and `replace` does not say that it goes; or no position to write.
        """
        return write_draft(Path(folder), self.file.stem, self.cells, replace)
