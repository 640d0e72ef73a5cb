"""What can go wrong, in sentences: what was found, what is allowed, the nearest right thing, what to do next.

One root, so that a caller can catch all of it; each kind also has a builtin parent, so that a caller need not know us.
The text of every error is asserted in a test.
"""

from collections.abc import Iterable, Mapping
from difflib import get_close_matches


class SubsearchError(Exception):
    """The root: whatever else it is, its text is a sentence for the person at the bench."""

    def _render_traceback_(self) -> list[str]:
        """What a notebook shows of it: the sentence alone."""
        return [str(self)]


class QuantityError(SubsearchError, ValueError):
    """A quantity can't be read, has a unit of another kind, or lies outside its sane range."""

    def __init__(self, message: str, fault: str = "unreadable") -> None:
        super().__init__(message)
        self.fault = fault


class ListError(SubsearchError, ValueError):
    """A supplier's list can't be used as a whole: unreadable, or a needed heading is missing."""


class RepairError(SubsearchError, ValueError):
    """A repair's folder can't be used: a file is missing, or a cell in it can't be read."""


class CellsError(SubsearchError, ValueError):
    """Texts of a position can't be read; `faults` has a sentence for each, by its heading."""

    def __init__(self, reference: str, faults: Mapping[str, str]) -> None:
        super().__init__("; ".join(f"{reference}, {heading}: {fault}" for heading, fault in faults.items()))
        self.faults = faults


class RequirementError(SubsearchError, ValueError):
    """What is asked contradicts itself or can't be met by anything."""


class CatalogError(SubsearchError, RuntimeError):
    """The catalog file is missing, is not one of ours, or is held by another process."""


class UnknownNameError(SubsearchError, LookupError):
    """A name that is none of ours: the text names the nearest right one."""


def one_of(words: Iterable[str]) -> str:
    """The allowed words as a phrase.

    >>> one_of(["can", "box", "axial"])
    'can, box or axial'
    """
    words = list(words)
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def nearest(found: str, allowed: Iterable[str]) -> str:
    """A hint that names the nearest allowed word, or nothing.

    >>> nearest("axail", ["can", "box", "axial"])
    ' Did you mean "axial"?'
    """
    words = {word.lower(): word for word in allowed}
    close = get_close_matches(found.lower(), words, n=1, cutoff=0.5)
    return f' Did you mean "{words[close[0]]}"?' if close else ""


def known_word(found: str, allowed: Iterable[str], what: str) -> str:
    """The word itself where it is allowed.

    Args:
        found: the word given.
        allowed: the words that are taken.
        what: what such a word names, with its article.

    Raises:
        UnknownNameError: another word; the text names the nearest.

    >>> known_word("axial", ("can", "box", "axial"), "a shape")
    'axial'
    """
    words = list(allowed)
    if found not in words:
        raise UnknownNameError(f'"{found}" is not {what}.{nearest(found, words)} Allowed are {one_of(words)}.')
    return found
