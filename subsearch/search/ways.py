"""Ways of mounting, each one a row of the kind that way.py describes.

A part fits if any way holds. The first way that holds, in the order of WAYS, is the one that is offered.
"""

from subsearch.search.way import Margin, Way

ROOM = {
    "left_mm": "left",
    "right_mm": "right",
    "front_mm": "front",
    "back_mm": "back",
    "free_diameter_mm": "across the free diameter",
    "headroom_mm": "headroom",
}
SIDES = ("left_mm", "right_mm", "front_mm", "back_mm")
HOLES, LIE = "hole_spacing_mm", "may_lie_flat"
RADIAL, AXIAL = "coalesce(part.style = 'radial', false)", "coalesce(part.style = 'axial', false)"  # tags are not formed
BOX, CAN = f"{RADIAL} and part.shape = 'box'", f"{RADIAL} and part.shape = 'can'"


def _room(prefix: str = "", *sides: str, **others: str) -> tuple[Margin, ...]:
    """The margins of the room: the upright ones, with a prefix on those sides (all, if none is named), or others."""
    made = {field: f"{'round' if field == 'free_diameter_mm' else words}_margin_mm" for field, words in ROOM.items()}
    made |= {field: prefix + made[field] for field in (sides or made)}
    return tuple(Margin((made | others)[field], field, words) for field, words in ROOM.items())


def _long_enough(made: str, needed: str = "") -> Margin:
    return Margin(made, HOLES, "lead length", "lead_length_mm", needed)


def _formed(prefix: str) -> tuple[Margin, ...]:
    return Margin(f"{prefix}forming_margin_mm", HOLES, "reach of formed leads"), _long_enough(f"{prefix}lead_margin_mm")


def _laid(side: str, made: dict[str, str], leads: tuple[Margin, ...]) -> Way:
    name = f"laid flat to the {side}"
    room = _room(**made)
    return Way(f"laid_{side}", name, f"{name} of its holes, its leads bent down", RADIAL, room, leads, (HOLES, LIE))


def _on_end(side: str, other: str) -> Way:
    room = _room("on_end_", "free_diameter_mm", "headroom_mm", **{f"{side}_mm": f"body_{side}_margin_mm"},
                 **{f"{other}_mm": f"lead_{other}_margin_mm"})  # fmt: skip
    leads = Margin("on_end_span_margin_mm", HOLES, "hole spacing"), _long_enough("on_end_lead_margin_mm")
    return Way(
        f"on_end_{side}",
        f"on end over the {side} hole",
        f"on end over the {side} hole, its upper lead bent back down beside it",
        AXIAL,
        room,
        leads,
        (HOLES,),
        ("left_mm", "right_mm") if side == "right" else (),
    )


UPRIGHT = Way(
    "upright",
    "upright",
    "standing as it was made, centred on the two holes",
    "coalesce(part.style != 'axial', true)",
    _room(),
    (Margin("offset_margin_mm", HOLES, "reach of straight leads"), _long_enough("lead_margin_mm")),
)
FORMED = Way(
    "formed",
    "leads formed",
    "standing centred on the two holes, its leads formed to their spacing",
    RADIAL,
    _room(headroom_mm="formed_headroom_margin_mm"),
    (Margin("forming_margin_mm", HOLES, "reach of formed leads"), _long_enough("formed_lead_margin_mm")),
    (HOLES,),
)
ASIDE = Way(
    "aside",
    "both leads formed to one side",
    "standing beside its holes, out of its neighbour's way, both leads formed to one side",
    RADIAL,
    _room("aside_"),
    _formed("aside_"),
    (HOLES,),
    SIDES,
)
TURNED = Way(
    "turned",
    "turned by a quarter",
    "turned by a quarter over its holes, its leads formed to them",
    BOX,
    _room("turned_", *SIDES, "headroom_mm"),
    _formed("turned_"),
    (HOLES,),
    SIDES,
)
LYING = Way(
    "lying",
    "lying between its holes",
    "lying on the board, both leads bent down",
    AXIAL,
    _room(),
    (Margin("span_margin_mm", HOLES, "hole spacing"),),
)
FOLDED = Way(
    "folded",
    "laid flat between the holes",
    "between the holes of an axial part, one lead folded back beside it in a sleeve",
    CAN,
    _room("folded_", *SIDES, "free_diameter_mm", headroom_mm="side_headroom_margin_mm"),
    (Margin("folded_span_margin_mm", HOLES, "hole spacing"), _long_enough("folded_lead_margin_mm", "folded_lead_mm")),
    (HOLES, LIE),
)
SIDE = {"free_diameter_mm": "side_round_margin_mm", "headroom_mm": "side_headroom_margin_mm"}
END = {"free_diameter_mm": "end_round_margin_mm", "headroom_mm": "end_headroom_margin_mm"}
SIDE_LEADS = (
    Margin("forming_margin_mm", HOLES, "reach of formed leads"),
    _long_enough("side_lead_margin_mm", "side_lead_mm"),
)
END_LEADS = (_long_enough("end_lead_margin_mm", "end_lead_mm"),)
LAID = (
    _laid("front", SIDE | {"front_mm": "side_front_margin_mm", "back_mm": "side_near_back_mm"}, SIDE_LEADS),
    _laid("back", SIDE | {"back_mm": "side_back_margin_mm", "front_mm": "side_near_front_mm"}, SIDE_LEADS),
    _laid("left", END | {"left_mm": "end_left_margin_mm", "right_mm": "end_near_right_mm"}, END_LEADS),
    _laid("right", END | {"right_mm": "end_right_margin_mm", "left_mm": "end_near_left_mm"}, END_LEADS),
)
ON_END = (_on_end("left", "right"), _on_end("right", "left"))
WAYS = (UPRIGHT, FORMED, ASIDE, TURNED, LYING, *ON_END, *LAID, FOLDED)
LAID_NAMES = tuple(way.name for way in (*LAID, FOLDED))
BENT_NAMES = (*LAID_NAMES, *(way.name for way in ON_END))
AS_MADE = (UPRIGHT.name, LYING.name)  # what nobody needs to be told
FORMED_NAMES = (FORMED.name, ASIDE.name, TURNED.name)
OFFSETS = {ASIDE.name: "aside_offset_mm", TURNED.name: "turned_offset_mm"}  # of the ways that move the leads otherwise
BY_NAME = {way.name: way for way in WAYS}
