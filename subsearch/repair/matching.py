"""Match groups: positions of one repair that get one and the same part, which must fit every one of them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import duckdb

from subsearch.repair.asking import Asked
from subsearch.repair.cautions import needs_its_class
from subsearch.search.answers import Answer, Candidate, part_name
from subsearch.search.candidates import Found
from subsearch.search.criteria import LABELS
from subsearch.search.matched import Common, matched
from subsearch.search.requirement import Requirement
from subsearch.search.weights import Weights
from subsearch.units import counted

Pin = tuple[str | None, str]


@dataclass(frozen=True)
class Match:
    """What a match group means for one of its positions.

    `common` is the part for all of them where none is pinned; `pins` the parts that positions of the group are pinned
    to, each with those positions; `others` the other positions of the group.
    """

    group: str
    others: str
    common: Common | None
    pins: tuple[tuple[Pin, str], ...]

    @property
    def part(self) -> Pin | None:
        """Maker and part number of the part for all; None where there is none, or two pins contradict each other."""
        if self.pins:
            return self.pins[0][0] if len(self.pins) == 1 else None
        return None if self.common is None else (self.common.maker, self.common.part_number)

    @property
    def alike(self) -> str:
        """The other positions, and the group they share."""
        return f"{self.others} (match group {self.group})"


def matches(
    con: duckdb.DuckDBPyConnection, all_asked: Sequence[Asked], weights: Weights | None = None
) -> list[Match | None]:
    """What its match group means for each position; None for one in no group, or alone in it.

    Groups without a pin get the best part that fits all their positions, in one statement for all groups. A position
    that is not asked, lacks its safety class or holds several, is in no group.
    """
    members: dict[str, list[int]] = {}
    for at, asked in enumerate(all_asked):
        grouped = "" if asked.position.sections else asked.position.match_group or ""  # a can of several is no one part
        if grouped and asked.requirement is not None and not needs_its_class(asked):
            members.setdefault(" ".join(grouped.split()), []).append(at)
    groups = {name: its for name, its in members.items() if len(its) > 1}
    pins = {name: _pins([all_asked[at] for at in its]) for name, its in groups.items()}
    free = [name for name in groups if not pins[name]]
    asked_together = [[need for at in groups[name] if (need := all_asked[at].requirement)] for name in free]
    common = dict(zip(free, matched(con, asked_together, weights), strict=True))
    found: list[Match | None] = [None] * len(all_asked)
    for name, its in groups.items():
        for at in its:
            others = _named([all_asked[one] for one in its if one != at], all_asked[at].position.card)
            found[at] = Match(name, others, common.get(name), pins[name])
    return found


def _pins(group: Sequence[Asked]) -> tuple[tuple[Pin, str], ...]:
    """Every part that one of the group is pinned to, with the positions that are."""
    pinned: dict[Pin, list[Asked]] = {}
    for asked in group:
        if is_pinned(asked):
            pin = asked.position.pinned_maker, asked.position.pinned_part_number or "(no part number)"
            pinned.setdefault(pin, []).append(asked)
    return tuple((pin, _named(its, its[0].position.card)) for pin, its in pinned.items())


def is_pinned(asked: Asked) -> bool:
    """Whether the builder has decided on a part for it."""
    return bool(asked.position.pinned_maker or asked.position.pinned_part_number)


def _named(some: Sequence[Asked], card: str | None) -> str:
    """References, with the card where it is another one."""
    return ", ".join(one.position.reference if one.position.card == card else one.position.name for one in some)


def following(requirement: Requirement, match: Match | None) -> Requirement:
    """The requirement that also brings back the part of the match group, as if it were pinned."""
    if match is None or match.part is None or requirement.pinned_part_number is not None:
        return requirement
    maker, number = match.part
    return replace(requirement, pinned_maker=maker, pinned_part_number=number)


def followed(found: Found, requirement: Requirement) -> tuple[Found, Candidate | None]:
    """The answer to the position's own requirement, and the part of the match group as it stands there."""
    kept, opened = (tuple(replace(one, pinned=False) for one in some) for some in (found.kept, found.open))
    part = None if found.pinned is None else replace(found.pinned, pinned=False)
    part = next((one for one in kept if one == part), part)
    return replace(found, requirement=requirement, kept=kept, open=opened, pinned=None), part


def same_part(match: Match, found: Found, part: Candidate | None) -> tuple[Candidate | None, str]:
    """The part that the match group gives to a position that is not pinned itself, or why it gets none."""
    if not match.pins:
        return _best_of_all(match, found, part)
    if len(match.pins) > 1:
        named = "; ".join(f"{positions} to {part_name(*pin)}" for pin, positions in match.pins)
        return None, f"Nothing is chosen: match group {match.group} is pinned to different parts ({named})."
    pin, positions = match.pins[0]
    if part is None:
        return None, f"Nothing is chosen: the catalog has no offer of {part_name(*pin)}, pinned for {positions}."
    if part.answer is True:
        return part, f"The same part as {match.alike}, as pinned; it fits, as place {part.place} of {found.kept_count}."
    against = [one for one in found.why(*pin) if one.answer is not True]
    how = "does not fit here" if part.answer is False else "is not certain to fit here"
    return None, (
        f"Nothing is chosen: {part.name}, pinned for {positions} (match group {match.group}), {how}: {_told(against)}. "
        "Pin a part here too, or another one for all."
    )


def _best_of_all(match: Match, found: Found, part: Candidate | None) -> tuple[Candidate | None, str]:
    if match.common is None or part is None:
        here = (
            f" Here alone {counted(found.kept_count, 'part')} would do, best {found.kept[0].name}."
            if found.kept
            else ""
        )
        return None, f"Nothing is chosen: no part fits here and in {match.alike}.{here}"
    return part, (
        f"The same part as {match.alike}: best of {counted(match.common.fits, 'part')} that "
        f"{'fits' if match.common.fits == 1 else 'fit'} all of them, place {part.place} of {found.kept_count} here."
    )


def beside_a_pin(match: Match | None) -> str:
    """What a position's own pin leaves to be said of its match group."""
    if match is None or len(match.pins) < 2:
        return ""
    return f" Match group {match.group} is pinned to different parts: compare {match.others}."


def _told(answers: Sequence[Answer]) -> str:
    return "; ".join(f"{LABELS[one.name]} ({one.sentence})" for one in answers)
