"""The panel's state kept in a file of the repair's folder, so that it outlives the notebook's kernel."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from itertools import chain, count
from pathlib import Path
from typing import Any

from subsearch.errors import RepairError, SubsearchError
from subsearch.repair.bench import Bench
from subsearch.repair.folder import Repair
from subsearch.repair.plain_values import member, of_kind
from subsearch.repair.trial import Trial
from subsearch.repair.whole_files import replacing

FILE = "panel.json"
EDITION = 1


@dataclass(frozen=True)
class Saved:
    """A saved bench, the texts that the notebook's cell gave when it was saved, and when that was.

    `found` has what was recorded then of the positions that were tried, by name.
    """

    bench: Bench
    given: Mapping[str, str]
    at: datetime
    found: Mapping[str, Mapping[str, str]] = field(default_factory=dict)

    def changed(self, given: Mapping[str, str]) -> dict[str, str]:
        """The texts that the notebook's cell gives otherwise than then, "" where no longer: they win over the state."""
        return {
            heading: given.get(heading, "")
            for heading in (*self.given, *(one for one in given if one not in self.given))
            if given.get(heading, "") != self.given.get(heading, "")
        }

    def trials_now(self, recorded: Mapping[str, Trial], repair: Repair | None) -> dict[str, Trial]:
        """What was tried, with what was changed in the repair's files meanwhile."""
        trials = dict(self.bench.trials)
        for name in {*trials} & {*recorded} & {*self.found}:
            trials[name] = trials[name].found_again(self.found[name], recorded[name].cells)
        return {name: trial.settled(repair) for name, trial in trials.items()}


def save(
    folder: Path, bench: Bench, given: Mapping[str, str], found: Mapping[str, Mapping[str, str]] | None = None
) -> Path:
    """Write the bench into the folder, as a whole or not at all; give the file.

    Args:
        folder: the repair's; it must be there.
        bench: what to keep.
        given: the texts that the notebook's cell passed.
        found: what is recorded of the positions that are tried, by name.

    Raises:
        RepairError: the file that is there can't be read: it is not written over.
    """
    read(folder)
    kept = {
        "edition": EDITION,
        "at": datetime.now(UTC).isoformat(timespec="seconds"),
        "given": dict(given),
        "found": {name: dict(cells) for name, cells in (found or {}).items()},
        "bench": bench.to_json(),
    }
    with replacing(folder / FILE) as new:
        text = json.dumps(kept, ensure_ascii=False, indent=1, sort_keys=True, allow_nan=False)
        new.write_bytes(f"{text}\n".encode())
    return folder / FILE


def read(folder: Path) -> Saved | None:
    """The bench saved in a folder; None where none was.

    Raises:
        RepairError: the file is damaged or of another edition. It stays; `set_aside` makes room for a new one.
    """
    file = folder / FILE
    if not file.exists():
        return None
    try:
        return _saved(json.loads(file.read_bytes().decode("utf-8")))
    except (OSError, ValueError, RecursionError, SubsearchError) as error:
        said = str(getattr(error, "strerror", None) or error).rstrip(".")
        raise RepairError(
            f'"{file}", the saved state of the panel, can\'t be read: {said}. It is kept as it is. Correct it, or '
            "start anew: then it is set aside."
        ) from error


def set_aside(folder: Path) -> Path:
    """Rename the saved file, so that the panel can start anew and nothing is lost; give its new name.

    Raises:
        RepairError: there is no such file.
    """
    file = folder / FILE
    if not file.exists():
        raise RepairError(f'There is no "{file}" to set aside. Start the panel as it is.')
    names = chain(["panel-damaged.json"], (f"panel-damaged-{number}.json" for number in count(2)))
    return file.rename(next(one for one in (folder / name for name in names) if not one.exists()))


def _saved(found: Any) -> Saved:
    edition = member(found, "edition", int)
    if edition != EDITION:
        raise RepairError(f"it is of edition {edition}, and this program reads edition {EDITION}")
    at = datetime.fromisoformat(member(found, "at", str))
    recorded = {name: _texts(of_kind(cells, dict)) for name, cells in member(found, "found", dict).items()}
    return Saved(Bench.from_json(member(found, "bench", dict)), _texts(member(found, "given", dict)), at, recorded)


def _texts(found: Mapping[str, Any]) -> dict[str, str]:
    return {heading: of_kind(text, str) for heading, text in found.items()}
