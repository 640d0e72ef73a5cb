"""Where one part, two together or nothing stands in a position, and how far it keeps within the room: in millimetres.

What a law says is asked of formulas/, as the search does; so the gaps here are the margins of the search.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from math import inf

from subsearch.repair.body_sizes import Sized, number, sized
from subsearch.repair.facing import faced, facing_notes, plus_hole
from subsearch.repair.in_place import BACK, FRONT, LEFT, RIGHT, Placed, Room, Stand
from subsearch.repair.placing_bent import folded, lying, on_end, one_above_other, side_by_side
from subsearch.repair.placing_notes import empty_notes, sized_notes
from subsearch.repair.placing_pairs import two_stands
from subsearch.repair.placing_upright import aside, formed, turned, upright
from subsearch.repair.room_left import gaps_of_one, gaps_of_two
from subsearch.search.answers import Candidate, body
from subsearch.search.requirement import Requirement
from subsearch.search.several import Joined
from subsearch.search.ways import ASIDE, BY_NAME, FOLDED, FORMED, LAID, LYING, ON_END, TURNED, UPRIGHT

Placing = Callable[[str, Sized, Room, float], Stand]
PLACING: dict[str, Placing] = {
    UPRIGHT.name: upright,
    FORMED.name: formed,
    ASIDE.name: aside,
    TURNED.name: turned,
    LYING.name: lying,
    FOLDED.name: folded,
    **{way.name: partial(on_end, side) for way, side in zip(ON_END, (LEFT, RIGHT), strict=True)},
    **{way.name: partial(side_by_side, side) for way, side in zip(LAID[:2], (FRONT, BACK), strict=True)},
    **{way.name: partial(one_above_other, side) for way, side in zip(LAID[2:], (LEFT, RIGHT), strict=True)},
}
NO_WAY = "It fits in no way of mounting: this is how it was made to stand."
TWO_STAND = "Both bodies stand in the room that is free; their leads, led to one pair of holes, are not drawn."


def placed(requirement: Requirement, candidate: Candidate | None, plus_towards: str | None = None) -> Placed:
    """One position with a part in it as it would be mounted, or with nothing in it.

    Args:
        requirement: what is asked of the position: its holes and the room about them [mm].
        candidate: the part, of any answer; its way of mounting is taken from the search. None: the empty space.
        plus_towards: what the position records of the old plus. Only where it names the left or the right is the plus
            told to be at a hole: nothing is guessed.

    Returns:
        Where everything is, in mm.

    >>> empty = placed(Requirement(hole_spacing_mm=5.0, left_mm=6.0), None, "left")
    >>> empty.hole_spacing_mm, empty.room.left_mm, empty.plus_at, empty.stands
    (5.0, 6.0, 'left', ())
    """
    empty = _empty(requirement)
    if candidate is None:
        at = "" if requirement.reverses else plus_hole(plus_towards)
        said = facing_notes(None, plus_towards) if plus_towards and not requirement.reverses else ()
        return replace(empty, plus_at=at, notes=(*empty_notes(empty), *said))
    part, told = sized(candidate.part), candidate.made.get("way")
    way = BY_NAME.get(told or "", LYING if part.shape == "axial" else UPRIGHT)
    stand = PLACING[way.name](candidate.name, part, empty.room, empty.hole_spacing_mm)
    leads = tuple(lead for lead in stand.leads if lead.known)
    stand = faced(replace(stand, leads=leads, size=body(candidate.part)), candidate.part, plus_towards)
    return replace(
        empty,
        way=way.name,
        stands=(stand,),
        gaps=gaps_of_one(empty.room, stand, part.shape),
        plus_at=plus_hole(plus_towards) if stand.polar else "",
        notes=(
            *([] if told else [NO_WAY]),
            *sized_notes(part, stand, empty),
            *facing_notes(candidate.part, plus_towards),
        ),
    )


def placed_pair(requirement: Requirement, joined: Joined) -> Placed:
    """One position with two parts in it that stand for one, at the best places that the room has for both.

    Args:
        requirement: what is asked of the position.
        joined: the two, as the search tells of them.

    Returns:
        Where both are, in mm.
    """
    empty = _empty(requirement)
    facts = [member.part for member in joined.members for _ in range(member.times)]
    one, other = two_stands(empty.room, joined.names, [sized(fact) for fact in facts])
    stands = (replace(one, size=body(facts[0])), replace(other, size=body(facts[1])))
    return replace(
        empty,
        way=joined.way,
        stands=stands,
        gaps=gaps_of_two(empty.room, *stands),
        notes=(TWO_STAND, *joined.cautions[:1]),
    )


def _empty(requirement: Requirement) -> Placed:
    names = ("left_mm", "right_mm", "front_mm", "back_mm", "headroom_mm", "free_diameter_mm")
    sizes = [getattr(requirement, name) for name in names]
    return Placed(
        requirement.reference,
        number(requirement.hole_spacing_mm),
        number(requirement.hole_diameter_mm),
        Room(*(inf if size is None else float(size) for size in sizes)),
    )
