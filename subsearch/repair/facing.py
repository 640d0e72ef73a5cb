"""Which way round a part goes: at which hole its plus is, as far as that is recorded, and where its mark then is."""

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from subsearch.repair.in_place import LEFT, RIGHT, Stand
from subsearch.repair.marks import PLUS, mark_of, may_be_polar

HOLE = re.compile(r"(?:to |towards )?(?:the )?(left|right)(?:[- ]hand)?(?: (?:hole|pad|side|end))?", re.IGNORECASE)
EITHER_WAY = "It has no polarity: it goes in either way round."
NOT_RECORDED = "Which hole takes the plus is not recorded, so it is not drawn: trust the circuit."
NOT_STATED = "Its polarity is not stated: it is taken as polar."


def plus_hole(plus_towards: str | None) -> str:
    """The hole that a note on the old plus names, "left" or "right"; empty where it names neither by itself.

    >>> plus_hole("the left hole"), plus_hole("edge connector"), plus_hole("right-hand transistor")
    ('left', '', '')
    """
    found = HOLE.fullmatch((plus_towards or "").strip())
    return found[1].lower() if found else ""


def faced(stand: Stand, part: Mapping[str, Any], plus_towards: str | None) -> Stand:
    """The body with its mark, which stands at a side only where the hole for the plus is known."""
    if not may_be_polar(part["technology"], part["polarity"]):
        return stand
    mark, plus = mark_of(part["technology"], part["shape"]), plus_hole(plus_towards)
    sides = dict(zip((LEFT, RIGHT), stand.lead_sides, strict=True))
    other = {LEFT: RIGHT, RIGHT: LEFT}
    at = plus if mark.sign == PLUS else other.get(plus, "")
    return replace(stand, polar=True, mark=mark if mark.kind else None, mark_faces=sides.get(at, ""))


def facing_notes(part: Mapping[str, Any] | None, plus_towards: str | None) -> tuple[str, ...]:
    """What is known and not known about the way round, of a part, or of an empty space."""
    if part is None:
        return (_towards(plus_towards),)
    if not may_be_polar(part["technology"], part["polarity"]):
        return (EITHER_WAY,)
    words = mark_of(part["technology"], part["shape"]).words
    told = f"{words[0].upper()}{words[1:]}."
    unsure = () if part["polarity"] else (NOT_STATED,)
    return (*unsure, _towards(plus_towards), told)


def _towards(plus_towards: str | None) -> str:
    if not plus_towards or not plus_towards.strip():
        return NOT_RECORDED
    if hole := plus_hole(plus_towards):
        return f"Plus at the {hole} hole, as recorded."
    return f"Plus towards {plus_towards.strip()}, as recorded: look on the board which hole that is."
