"""The pins of a repair's positions.csv, kept in step with the parts that are taken and given back."""

from collections.abc import Mapping
from pathlib import Path

from subsearch.errors import RepairError
from subsearch.repair.bench import Taken
from subsearch.repair.pinning import with_part, without_part, write_row
from subsearch.repair.position_rows import POSITIONS
from subsearch.repair.trial import Trial, trials_of


class Pins:
    """Those of one folder; a part given back leaves the row as it was before it was taken."""

    def __init__(self, folder: Path, recorded: Mapping[str, Trial]) -> None:
        self._folder, self._known = folder, dict(recorded)  # as each row was read or written last
        self._rows: dict[str, Mapping[str, str]] = {}  # before a part was pinned there

    def follow(self, before: Mapping[str, Taken], after: Mapping[str, Taken]) -> None:
        """Pin what is taken after and was not before, and put back the row of what is taken no longer.

        Raises:
            RepairError: positions.csv can't be read or written, or somebody else changed the row meanwhile.
        """
        for name in dict.fromkeys([*before, *after]):
            one = after.get(name)
            if one is None and name in self._known:  # else the position itself is gone
                self._write(name, self._rows.get(name) or without_part(self._known[name].cells))
            elif one is not None and one != before.get(name):
                row = self._write(name, with_part(one.trial, one.maker, one.part_number)) or one.trial.cells
                self._rows.setdefault(name, without_part(row) if name in before else row)

    def _write(self, name: str, cells: Mapping[str, str]) -> Mapping[str, str] | None:
        if trials_of(self._folder).get(name) != self._known.get(name):
            raise RepairError(
                f"{name} was changed in {POSITIONS} after it was read here. Run the notebook's cell again, so that "
                "nothing of it is lost."
            )
        row = write_row(self._folder, cells)
        self._known[name] = trials_of(self._folder)[name]
        return row
