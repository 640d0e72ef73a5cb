"""What came of a parts list, in lines for the terminal: positions, doubts, and the lines left with their reasons."""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING

from subsearch.display.terminal import say
from subsearch.reading.reference_names import in_order, runs
from subsearch.units import counted, show

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from subsearch.repair.draft import Draft, Left
    from subsearch.repair.positions import Position

SHOWN = 12  # so many lines of one kind are told; left_table() has all
OTHER = re.compile(r"(?!C)[^:;]+: (an? [a-z, ]+)\.")  # a capacitor's letters are told, whatever the line says
SELDOM_READ = ("headings", "above the headings", "blank")


def print_draft(draft: Draft, written: Sequence[Path] = ()) -> None:
    """Print what came of a parts list, and the files written from it."""
    for line in draft_lines(draft, written):
        say(line)


def draft_lines(draft: Draft, written: Sequence[Path] = ()) -> Iterator[str]:
    """The lines that tell what came of a parts list.

    draft: what `draft_positions` gave. written: the files written from it.
    """
    yield (
        f"{draft.file.name}: {counted(draft.lines_read, 'line')} read, {len(draft.taken)} taken, "
        f"{len(draft.left)} left; {counted(len(draft.positions), 'position')} drafted"
    )
    yield from (f"  {note}" for note in draft.notes)
    yield from _values(draft.positions)
    if draft.doubts:
        yield f"\nDoubts about {counted(len(draft.doubts), 'position')}; a field in doubt is not filled in:"
        for doubt, those in _grouped(draft).items():
            yield f"  {_names(those)}: {doubt}"
    yield from _left(draft)
    if draft.positions:
        yield "\nLook through what was filled in: it is what the list says, not what stands on the board."
    yield from (f"Written: {file}" for file in written)
    if not draft.positions:
        yield "No capacitor was found in the list, so nothing is written."


def _values(positions: Sequence[Position]) -> Iterator[str]:
    """Each different value with the positions that have it."""
    by_value: dict[str, list[Position]] = {}
    for one in positions:
        volts = one.rated_voltage or one.old_rating
        rating = "voltage not filled in" if volts is None else f"{show(volts.volts, 'V')}{' a.c.' if volts.ac else ''}"
        rating = f"old rating {rating}" if volts and not one.rated_voltage else rating
        value = (
            one.sections or show(one.capacitance_f, "F") if one.sections or one.capacitance_f else "no value filled in"
        )
        by_value.setdefault(f"{value}, {rating}", []).append(one)
    if by_value:
        yield "\nDrafted:"
    for value, those in by_value.items():
        yield f"  {value}: {_names(those)}"


def _names(positions: Sequence[Position]) -> str:
    """Their references in the shortest words, those of a card with its name behind them."""
    by_card: dict[str | None, list[str]] = {}
    for one in positions:
        by_card.setdefault(one.card, []).append(one.reference)
    return "; ".join(
        f"{runs(sorted(names, key=in_order))}{f' ({card})' if card else ''}" for card, names in by_card.items()
    )


def _grouped(draft: Draft) -> dict[str, list[Position]]:
    """Each doubt once, with the positions it is about."""
    found: dict[str, list[Position]] = {}
    for one in draft.positions:
        for doubt in draft.doubts.get(one.name, ()):
            found.setdefault(doubt, []).append(one)
    return found


def _left(draft: Draft) -> Iterator[str]:
    for kind in dict.fromkeys(one.kind for one in draft.left):
        its = [one for one in draft.left if one.kind == kind]
        yield f"\nLeft, {kind}: {counted(len(its), 'line')}"
        if kind in SELDOM_READ:
            continue
        told, many = _told(its)
        for one in told[:SHOWN]:
            yield f"  line {one.line}: {one.reason}{f'  [{one.text}]' if kind == 'no reference' else ''}"
        if len(told) > SHOWN:
            yield f"  and {len(told) - SHOWN} more"
        yield from (f"  {what}: {counted(count, 'line')}" for what, count in many.items())


def _told(left: Sequence[Left]) -> tuple[list[Left], Counter[str]]:
    """The lines to tell one by one, and how many only name another part, by what it is: most of any list."""
    found = [(one, OTHER.fullmatch(one.reason)) for one in left]
    return [one for one, other in found if not other], Counter(other[1] for _, other in found if other)
