"""A marking while it is read: what is still unread, what was found with its piece of text, and every doubt."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from math import isclose
from typing import Any

SAME = 0.011  # two prints of one value may differ by rounding
TAKEN = "\0"  # stands for each sign that has been read; matches neither a letter, a digit nor a space


@dataclass(frozen=True)
class Doubt:
    """What the trade would not agree on: a sentence, the names of what it touches, the piece, the other reading."""

    sentence: str
    fields: tuple[str, ...] = ()
    piece: str = ""
    other: str = ""

    def __str__(self) -> str:
        """The sentence."""
        return self.sentence


@dataclass
class Draft:
    """A marking on its way.

    printed: the text as it stands. rest: the same, in one spelling of signs and of equal length; what was read is
    TAKEN. mark: the decimal mark that the numbers of this text leave no doubt of, or "". against: why it is no
    capacitor. others: what else it may be, with the piece of text that says so.
    """

    printed: str
    rest: str
    mark: str = ""
    stated: dict[str, Any] = field(default_factory=dict)
    pieces: list[tuple[str, str]] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    against: str = ""
    others: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Keep the whole text in small letters, for `holds`."""
        self.small = self.rest.lower()

    def holds(self, hints: Iterable[str]) -> bool:
        """Whether any of these stands in the text: far quicker than to look for a long pattern that can't match."""
        return any(hint in self.small for hint in hints)

    def take(self, found: re.Match[str], group: int | str = 0) -> str:
        """Mark what matched as read; the piece of text as it was printed."""
        return self.take_span(*found.span(group))

    def take_span(self, start: int, end: int) -> str:
        """Mark a stretch as read; the piece of text as it was printed."""
        self.rest = f"{self.rest[:start]}{TAKEN * (end - start)}{self.rest[end:]}"
        return self.printed[start:end].strip(" ,;")

    def piece(self, found: re.Match[str], group: int | str = 0) -> str:
        """What matched, as it was printed."""
        return self.printed[found.start(group) : found.end(group)].strip(" ,;")

    def state(self, name: str, value: Any, piece: str, shown: str = "") -> None:
        """Keep what a piece of text states; a second piece that says otherwise is a doubt, and the first one stays.

        shown: the value in words, for the doubt.
        """
        if name not in self.stated:
            self.stated[name] = value
            self.pieces.append((name, piece))
        elif not _same(self.stated[name], value):
            first = next(text for term, text in self.pieces if term == name)
            self.doubt(f'"{first}" and "{piece}" contradict each other; the first was taken.', name, piece, shown)

    def doubt(self, sentence: str, fields: str, piece: str = "", other: str = "") -> None:
        """Keep a doubt; fields: names of what it touches, with spaces between."""
        one = Doubt(sentence, tuple(fields.split()), piece, other)
        if one not in self.doubts:
            self.doubts.append(one)

    def refuse(self, sentence: str) -> None:
        """Say why this is no capacitor; the first reason stays."""
        self.against = self.against or sentence


def _same(one: Any, other: Any) -> bool:
    numbers = isinstance(one, float) and isinstance(other, float)
    return isclose(one, other, rel_tol=SAME) if numbers else bool(one == other)
