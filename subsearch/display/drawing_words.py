"""A drawing in words: the one sentence for who does not see it, and the legend under it."""

from collections.abc import Iterator
from math import isinf, isnan

from subsearch.display.drawing_sizes import number, spare
from subsearch.repair.in_place import Placed, Solid, Stand


def sentence(placed: Placed) -> str:
    """Everything that the drawing shows, in one sentence."""
    parts = [f"{placed.reference} drawn to scale from above and from the side", *_room(placed)]
    for stand in placed.stands:
        parts += _body(stand)
    if not placed.stands:
        parts.append("nothing stands in it")
    elif placed.way:
        parts.insert(1, placed.way)
    parts += [f"{gap.name} {spare(gap.left_mm)}{'' if isnan(gap.left_mm) else ' mm'}" for gap in placed.gaps]
    if placed.plus_at:
        parts.append(f"plus at the {placed.plus_at} hole")
    return f"{'; '.join(parts)}."


def _room(placed: Placed) -> Iterator[str]:
    room = placed.room
    if not isnan(placed.hole_spacing_mm):
        yield f"holes {number(placed.hole_spacing_mm)} mm apart"
    sides = (
        ("left", room.left_mm),
        ("right", room.right_mm),
        ("front", room.front_mm),
        ("back", room.back_mm),
        ("free diameter", room.free_diameter_mm),
        ("headroom", room.headroom_mm),
    )
    free = [f"{name} {number(size)} mm" for name, size in sides if not isinf(size)]
    if free:
        yield f"free: {', '.join(free)}"


def _body(stand: Stand) -> Iterator[str]:
    yield f"{stand.name}, {_sizes(stand.nominal)}, at its largest {_sizes(stand.largest)}"
    if stand.rise_mm > 0:
        yield f"lifted by {number(stand.rise_mm)} mm, since its leads are formed"
    if stand.vent_mm:
        yield f"{number(stand.vent_mm)} mm for its vent above it"
    if stand.mark and stand.mark_faces:
        yield f"its {stand.mark.kind}, {stand.mark.sign}, {stand.mark_faces}"


def _names(placed: Placed) -> Iterator[str]:
    """What stands there and how, with its sizes as they are mounted."""
    if not placed.stands:
        yield "nothing stands in it."
        return
    told = dict.fromkeys(f"{stand.name}, {stand.size}" for stand in placed.stands)
    yield f"{' and '.join(told)}, {placed.way}."


def _sizes(solid: Solid) -> str:
    told = ("wide", "deep", "high")
    sizes = [
        f"{number(span.size)} mm {name}" if span.known else f"{name} not known"
        for span, name in zip((solid.x, solid.y, solid.z), told, strict=True)
    ]
    return ", ".join(sizes)


def legend(placed: Placed) -> Iterator[str]:
    """What the lines mean, as far as they are drawn, and what the picture can't say."""
    lines = []
    for stand in placed.stands[:1]:
        lines += ["solid line: the body as stated", "dashed: at its largest"]
        if stand.vent_mm:
            lines.append("dashes and two dots: room for its vent")
        if stand.mark and stand.mark_faces:
            lines.append(f"filled bar: its {stand.mark.kind}, which is {stand.mark.sign}")
    if placed.excess:
        lines.append("hatched: out of the free space")
    lines += ["dotted: the free space", "dash and dot: middle lines of holes and bodies", "all in mm"]
    text = "; ".join(lines)
    yield " ".join([f"{placed.reference}:", *_names(placed)])
    yield f"{text[0].upper()}{text[1:]}."
    if placed.excess:
        over = (f"{gap.name} by {number(-gap.left_mm)} mm" for gap in placed.excess)
        yield f"Out of the free space: {', '.join(over)}."
    yield from placed.notes
