"""Where a part stands whose leads are bent: an axial one between its holes or on end, a radial one laid flat.

Bends are taken as corners, as the laws of lead lengths take them. Each body starts where its leads let it start; what
it is shorter than at its largest is missing at its far end.
"""

from subsearch.formulas.geometry import lead_offset_mm
from subsearch.formulas.laid_flat import (
    bend_height_mm,
    bend_reach_mm,
    lying_length_mm,
    lying_reach_mm,
    lying_tall_mm,
)
from subsearch.formulas.leads import formed_height_mm, straight_before_bend_mm
from subsearch.formulas.on_end import end_reach_mm, on_end_tall_mm
from subsearch.repair.body_sizes import Sized, Sizes
from subsearch.repair.in_place import (
    BACK,
    DOWN,
    FRONT,
    LEFT,
    RIGHT,
    UP,
    Room,
    Solid,
    Span,
    Stand,
    about,
    through_board,
)
from subsearch.search.derived_ways import LIFT_MM

SIGNS = {LEFT: -1, RIGHT: 1, FRONT: -1, BACK: 1}


def lying(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """An axial part on the board between its holes, both leads bent down."""
    largest, nominal = (_lain(sizes) for sizes in (part.largest, part.nominal))
    up, leads = largest.z.middle, []
    for at, end in ((-1, nominal.x.low), (1, nominal.x.high)):
        hole = at * holes_mm / 2
        if at * (hole - end) >= 0:  # holes nearer than the ends of the body have no way for its leads
            leads.append(through_board(part.lead_mm, (end, 0.0, up), (hole, 0.0, up)))
    return Stand(name, nominal, largest, largest, tuple(leads))


def _lain(sizes: Sizes) -> Solid:
    return Solid(about(0.0, sizes.along_mm), about(0.0, sizes.across_mm), Span(0.0, sizes.tall_mm), "x")


def on_end(side: str, name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """An axial part upright over one hole, its upper lead bent back down to the other."""
    at, (along, across, _) = SIGNS[side] * holes_mm / 2, part.largest
    reach, thick = bend_reach_mm(part.thick_mm), part.thick_mm
    over = along + reach
    upper = ((at, 0.0, part.nominal.along_mm), (at, 0.0, over), (-at, 0.0, over))
    own = through_board(part.lead_mm, (at, 0.0, 0.0)), through_board(part.lead_mm, *upper)
    body, beside = float(end_reach_mm(holes_mm, across)), float(end_reach_mm(holes_mm, thick))
    is_left = side == LEFT
    return Stand(
        name,
        _on_end(part.nominal, at),
        largest=_on_end(part.largest, at),
        taken=Solid(
            Span(-body, beside) if is_left else Span(-beside, body),
            about(0.0, across),
            Span(0.0, float(on_end_tall_mm(along, bend_height_mm(thick)))),
            "z",
        ),
        leads=own if is_left else own[::-1],
        lead_sides=(DOWN, UP) if is_left else (UP, DOWN),
    )


def _on_end(sizes: Sizes, at: float) -> Solid:
    return Solid(about(at, sizes.across_mm), about(0.0, sizes.across_mm), Span(0.0, sizes.along_mm), "z")


def side_by_side(side: str, name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A radial part laid flat to the front or the back, its leads side by side."""
    _, across, tall = part.largest
    offset, reach = float(lead_offset_mm(part.spacing_mm, holes_mm)), float(bend_reach_mm(part.thick_mm))
    spread, to = float(formed_height_mm(offset)), SIGNS[side]
    near, far = reach + spread, float(lying_length_mm(tall, reach + spread))
    up, bend = LIFT_MM + across / 2, near - straight_before_bend_mm(part.thick_mm)
    leads = []
    for at in (-1, 1):
        out, hole = at * part.spacing_mm / 2, at * holes_mm / 2
        points = (out, to * near, up), (out, to * bend, up), (hole, to * (bend - spread), up), (hole, 0.0, up)
        leads.append(through_board(part.lead_mm, *points))

    def laid(sizes: Sizes) -> Solid:
        y, z = _from(to * near, sizes.tall_mm, to), Span(LIFT_MM, float(lying_tall_mm(sizes.across_mm, LIFT_MM)))
        return Solid(about(0.0, sizes.along_mm), y, z, _round(part, "y"))

    largest = laid(part.largest)
    taken = largest._replace(y=_from(0.0, far, to), z=Span(0.0, largest.z.high))
    return Stand(name, laid(part.nominal), largest, taken, tuple(leads), vent_faces=_vent(part, side), looks_from=RIGHT)


def one_above_other(side: str, name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A radial part laid flat to the left or the right, its leads one above the other."""
    along, _, tall = part.largest
    reach, near, to = float(bend_reach_mm(part.thick_mm)), holes_mm / 2, SIGNS[side]
    start, far = near + reach, float(lying_reach_mm(holes_mm, tall, reach))
    low, high = (LIFT_MM + along / 2 + at * part.spacing_mm / 2 for at in (-1, 1))
    lower = through_board(part.lead_mm, (to * start, 0.0, low), (to * near, 0.0, low))
    upper = through_board(part.lead_mm, (to * start, 0.0, high), (-to * near, 0.0, high))

    def laid(sizes: Sizes) -> Solid:
        x, z = _from(to * start, sizes.tall_mm, to), Span(LIFT_MM, float(lying_tall_mm(sizes.along_mm, LIFT_MM)))
        return Solid(x, about(0.0, sizes.across_mm), z, _round(part, "x"))

    largest, is_left = laid(part.largest), side == LEFT
    return Stand(
        name,
        laid(part.nominal),
        largest,
        taken=Solid(_from(-to * near, near + far, to), largest.y, Span(0.0, largest.z.high)),
        leads=(lower, upper) if is_left else (upper, lower),
        lead_sides=(DOWN, UP) if is_left else (UP, DOWN),
        vent_faces=_vent(part, side),
    )


def folded(name: str, part: Sized, room: Room, holes_mm: float) -> Stand:
    """A radial can between the holes of an axial part: one lead to the right hole, the other folded back to the left.

    The room for the folded lead is kept on both sides; it is drawn at the back.
    """
    along, across, tall = part.largest
    thick, reach = part.thick_mm, float(bend_reach_mm(part.thick_mm))
    up, apart, end = LIFT_MM + across / 2, part.spacing_mm / 2, tall / 2
    beside, low = (along + thick) / 2, up - apart
    around = ((end, 0.0), (end + reach, 0.0), (end + reach, beside), (-end - reach, beside), (-end - reach, 0.0))
    back = through_board(part.lead_mm, *((x, y, low) for x, y in around), (-holes_mm / 2, 0.0, low))
    down = through_board(part.lead_mm, (end, 0.0, up + apart), (holes_mm / 2, 0.0, up + apart))

    def laid(sizes: Sizes) -> Solid:
        x, z = _from(end, sizes.tall_mm, -1), Span(LIFT_MM, float(lying_tall_mm(sizes.across_mm, LIFT_MM)))
        return Solid(x, about(0.0, sizes.along_mm), z, _round(part, "x"))

    largest = laid(part.largest)
    taken = Solid(about(0.0, tall), about(0.0, along + 2 * thick), Span(0.0, largest.z.high))
    return Stand(
        name,
        laid(part.nominal),
        largest,
        taken,
        leads=(back, down),
        lead_sides=(DOWN, UP),
        vent_faces=_vent(part, LEFT),
    )


def _from(start: float, size: float, to: int) -> Span:
    """A size from a start on, to the side of higher or of lower numbers."""
    return Span(start, start + size) if to > 0 else Span(start - size, start)


def _round(part: Sized, axis: str) -> str:
    return axis if part.shape == "can" else ""


def _vent(part: Sized, side: str) -> str:
    return side if part.shape == "can" and part.vented else ""
