"""Planted faults: a slip in a law, and the test that must go red. Kept in the TOML files beside this one."""

import shlex
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
HERE = Path(__file__).parent


@dataclass(frozen=True)
class Fault:
    """What the slip is, the file it stands in, the text and what it is exchanged for, and the test that sees it."""

    what: str
    file: str
    old: str
    new: str
    red: str

    @property
    def test(self) -> tuple[str, ...]:
        """The arguments of the test command: a test file, or one test of it, and words that choose among its tests."""
        return tuple(shlex.split(self.red))

    def planted(self, text: str) -> str:
        """The text of the file with the slip in it."""
        found = text.count(self.old)
        if found != 1:
            raise LookupError(f"{self.what}: the text to change stands {found} times in {self.file}, not once")
        return text.replace(self.old, self.new)


def read_faults() -> Iterator[Fault]:
    """Every planted fault."""
    for file in sorted(HERE.glob("*.toml")):
        for fault in tomllib.loads(file.read_text(encoding="utf-8"))["fault"]:
            yield Fault(**fault)
