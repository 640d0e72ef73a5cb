"""Ways of mounting: for each whether its leads meet the holes, and what its body takes of the room on each side."""

from collections.abc import Iterable, Iterator
from decimal import Decimal
from typing import NamedTuple

from brute.conditions import Need
from brute.laws import Answer, Number, all_of, any_of, fits

STRAIGHT = Decimal("0.3")
NEAR = Decimal("1e-6")
FORMED = Decimal("2.6")
THROUGH = Decimal(3)  # a lead goes through a board and stands out of it
BENDS_BEYOND = Decimal("0.8")
LIFT = Decimal("0.5")  # between a body that lies and the board
SLEEVE = Decimal("0.5")
USUAL = Decimal(14)  # so long is the longer lead of a can at the least
ROOM = ("left_mm", "right_mm", "front_mm", "back_mm", "headroom_mm", "free_diameter_mm")
CAN_LEADS = (  # up to this diameter of the can, the thickest usual lead
    *((4, "0.45"), (5, "0.5"), ("6.3", "0.5"), (8, "0.6"), (10, "0.6"), ("12.5", "0.6"), (13, "0.6"), (16, "0.8")),
    *((18, "0.8"), (20, "1"), (22, "0.8"), (25, "1")),
)
Takes = dict[str, Number]


class Way(NamedTuple):
    """A way: its name, whether the leads meet the holes, what it takes on each side, and at least in height [mm]."""

    name: str
    leads: Answer
    takes: Takes
    tall: Number = None


class Leads(NamedTuple):
    """What is stated of the leads [mm], and how thick they may be taken."""

    spacing: Number
    stated: Number
    thick: Number
    length: Number
    cut: bool


def room_of(need: Need, way: Way) -> Answer:
    """Whether what the way takes is there, on every side that is asked."""
    too_tall = fits(need["headroom_mm"], way.tall) is False  # whatever its leads add to it
    return all_of([not too_tall, *(fits(need[side], way.takes[side]) for side in ROOM if need[side] is not None)])


def plus(*sizes: Number) -> Number:
    """The sum, if all are stated."""
    return None if None in sizes else sum((size for size in sizes if size is not None), Decimal(0))


def half(size: Number) -> Number:
    """Half of a size, if it is stated."""
    return None if size is None else size / 2


def corner(along: Number, across: Number) -> Number:
    """The diameter of the circle around a rectangle [mm]."""
    return None if along is None or across is None else (along * along + across * across).sqrt()


def usual_lead(shape: str | None, across: Number) -> Number:
    """How thick a lead of such a body usually is [mm]."""
    if across is None or shape not in ("can", "axial"):
        return None
    if shape == "axial":
        return Decimal("0.6") if across <= 8 else Decimal("0.8") if across >= 10 else None
    if not 4 <= across <= 25:
        return None
    return next(Decimal(lead) for can, lead in CAN_LEADS if across <= Decimal(can)) + Decimal("0.05")


def bend(thick: Number) -> Number:
    """From the end of a body to the midline of a lead that is bent down at once [mm]."""
    return None if thick is None else max(thick, BENDS_BEYOND) + radius(thick) + thick / 2


def radius(thick: Decimal) -> Decimal:
    return thick if thick < Decimal("0.8") else thick * (Decimal("1.5") if thick <= Decimal("1.2") else 2)


def worked(off: Number, leads: Leads) -> tuple[Answer, Number]:
    """Whether leads formed by so much will do, and how much higher the body then stands [mm]."""
    if off is None:
        return all_of([None, long_enough(leads, None)]), None
    slope, straight = off, Decimal(0)
    if off > STRAIGHT + NEAR:
        slope, straight = (2 * off * off).sqrt(), max(BENDS_BEYOND, leads.stated or BENDS_BEYOND)
    up = straight + (off if straight else 0)
    return all_of([fits(FORMED, off), long_enough(leads, slope + straight + THROUGH)]), up


def long_enough(leads: Leads, needed: Number, as_usual: bool = False) -> Answer:
    """Whether a lead is long enough; one of a length not stated is, unless cut, or needed longer than is usual."""
    if leads.length is not None:
        return fits(leads.length, needed)
    if leads.cut or (as_usual and (needed is None or needed > USUAL)):
        return None
    return True


def standing(need: Need, part: dict[str, Number], shape: str | None, style: str | None, leads: Leads) -> Iterator[Way]:
    """Upright with straight leads; wires also formed to the holes, to one side, or with a box turned over them."""
    hole, as_made = need["hole_spacing_mm"], part_takes(part, shape)
    if hole is None:
        yield Way("upright", True, as_made)
        return
    off = None if style is None or leads.spacing is None else abs(leads.spacing - hole) / 2
    yield Way("upright", all_of([fits(STRAIGHT, off), long_enough(leads, THROUGH)]), as_made)
    if style != "radial":
        return
    meet, up = worked(off, leads)
    yield Way("formed", meet, as_made | {"headroom_mm": plus(part["tall"], up)}, part["tall"])
    if not any(need[side] is not None for side in ROOM[:4]):
        return
    yield aside(need, part, shape, leads)
    if shape == "box":
        meet, up = worked(half(corner(leads.spacing, hole)), leads)
        turned = part_takes({"along": part["across"], "across": part["along"], "tall": plus(part["tall"], up)}, shape)
        yield Way("turned", meet, turned, part["tall"])


def part_takes(part: dict[str, Number], shape: str | None) -> Takes:
    """What a body takes that stands on its holes as it was made."""
    along, across = half(part["along"]), half(part["across"])
    wide = part["across"] if shape == "can" else corner(part["along"], part["across"]) if shape else None
    return dict(zip(ROOM, (along, along, across, across, part["tall"], wide), strict=True))


def out_of_the_way(one: Number, other: Number, size: Number) -> Number:
    """The least shift from the first side to the second [mm]; a side that is not asked is free."""
    if size is None:
        return None
    return max(size / 2 - (size if one is None else one), Decimal(0)) - max(
        size / 2 - (size if other is None else other), Decimal(0)
    )


def aside(need: Need, part: dict[str, Number], shape: str | None, leads: Leads) -> Way:
    """Both leads formed to one side, by as little as the neighbours ask."""
    right = out_of_the_way(need["left_mm"], need["right_mm"], part["along"])
    back = out_of_the_way(need["front_mm"], need["back_mm"], part["across"])
    takes, off = part_takes(part, shape), None
    if right is not None and back is not None and leads.spacing is not None:
        off = ((abs(leads.spacing - need["hole_spacing_mm"]) / 2 + abs(right)) ** 2 + back**2).sqrt()
    meet, up = worked(off, leads)
    for side, other, moved in (("left_mm", "right_mm", right), ("front_mm", "back_mm", back)):
        takes[side] = plus(takes[side], None if moved is None else -moved)
        takes[other] = plus(takes[other], moved)
    takes["headroom_mm"] = plus(part["tall"], up)
    if right is None or back is None:
        takes["free_diameter_mm"] = None
    elif shape == "can":
        takes["free_diameter_mm"] = plus(part["across"], 2 * (right**2 + back**2).sqrt())
    else:
        takes["free_diameter_mm"] = corner(plus(part["along"], 2 * abs(right)), plus(part["across"], 2 * abs(back)))
    return Way("aside", meet, takes, part["tall"])


def lying(need: Need, nominal_mm: Number, part: dict[str, Number], leads: Leads) -> Iterator[Way]:
    """An axial part between its holes, or on end over one of them."""
    hole, takes = need["hole_spacing_mm"], part_takes(part, "axial")
    yield Way("lying", True if hole is None else fits(hole, plus(nominal_mm, Decimal(5))), takes)
    if hole is None:
        return
    thick, across, reach = leads.thick, part["across"], bend(leads.thick)
    beside = plus(half(across), half(thick), SLEEVE)
    turn = None if thick is None else 2 * (radius(thick) + thick / 2)
    span = None if beside is None or turn is None else max(beside, turn)
    needed = None if reach is None else plus(2 * reach, hole, part["along"], THROUGH)
    meet = all_of([fits(hole, span), long_enough(leads, needed)])
    body, lead = half(plus(across, hole)), half(plus(thick, hole))
    up = {
        "front_mm": half(across),
        "back_mm": half(across),
        "headroom_mm": plus(part["along"], reach, half(thick)),
        "free_diameter_mm": plus(across, hole),
    }
    yield Way("on_end_left", meet, up | {"left_mm": body, "right_mm": lead})
    yield Way("on_end_right", meet, up | {"left_mm": lead, "right_mm": body})


def laid(need: Need, part: dict[str, Number], shape: str | None, leads: Leads) -> Iterator[Way]:
    """A part with wires laid flat to each side, or between the holes of an axial one, where it may lie."""
    hole, along, across, tall = need["hole_spacing_mm"], part["along"], part["across"], part["tall"]
    if hole is None or not need["may_lie_flat"]:
        return
    off = None if leads.spacing is None else abs(leads.spacing - hole) / 2
    reach = bend(leads.thick)
    down = plus(reach, half(across), LIFT)
    slope = None if off is None else off if off <= STRAIGHT + NEAR else (2 * off * off).sqrt()
    meet = all_of([fits(FORMED, off), long_enough(leads, plus(down, slope, THROUGH), True)])
    away = plus(tall, reach, None if slope is None else Decimal(0) if slope == off else off)
    flat = {"left_mm": half(along), "right_mm": half(along), "headroom_mm": plus(across, LIFT)}
    flat["free_diameter_mm"] = corner(along, None if away is None else 2 * away)
    yield Way("laid_front", meet, flat | {"front_mm": away, "back_mm": Decimal(0)})
    yield Way("laid_back", meet, flat | {"front_mm": Decimal(0), "back_mm": away})
    meet = long_enough(leads, plus(reach, half(along), LIFT, hole, half(leads.spacing), THROUGH), True)
    away = plus(tall, reach, hole / 2)
    flat = {"front_mm": half(across), "back_mm": half(across), "headroom_mm": plus(along, LIFT)}
    flat["free_diameter_mm"] = corner(None if away is None else 2 * away, across)
    yield Way("laid_left", meet, flat | {"left_mm": away, "right_mm": hole / 2})
    yield Way("laid_right", meet, flat | {"left_mm": hole / 2, "right_mm": away})
    if shape == "can":
        yield folded(hole, part, leads)


def folded(hole: Decimal, part: dict[str, Number], leads: Leads) -> Way:
    """A can between the holes of an axial part, one lead folded back beside it."""
    along, across, tall, reach = part["along"], part["across"], part["tall"], bend(leads.thick)
    wide = None if leads.thick is None else plus(along, 2 * leads.thick)
    bends = None if reach is None else plus(tall, 2 * reach)
    span = None if bends is None or tall is None else max(tall + 5, bends)
    needed = None if reach is None else plus(reach, half(across), LIFT, THROUGH, hole, 2 * reach, wide)
    takes = dict(zip(ROOM, (half(tall), half(tall), half(wide), half(wide), plus(across, LIFT), corner(tall, wide)),
                     strict=True))  # fmt: skip
    return Way("folded", all_of([fits(hole, span), long_enough(leads, needed, True)]), takes)


def leads_of(ways: Iterable[Way]) -> Answer:
    """Whether the leads meet the holes in any way."""
    return any_of(way.leads for way in ways)


def body_of(need: Need, ways: Iterable[Way]) -> Answer:
    """Whether the body fits in a way whose leads do; in one whose leads may; else by itself."""
    ways = list(ways)
    meet = leads_of(ways)
    if meet is True:
        return any_of(all_of([way.leads, room_of(need, way)]) for way in ways)
    return any_of(room_of(need, way) for way in ways if way.leads is meet or meet is False)
