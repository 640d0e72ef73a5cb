"""What one view shows of a position: holes, room, leads, bodies with their marks, and what reaches out of the room."""

from math import isinf, isnan

from subsearch.display.drawing_pen import Pen
from subsearch.display.drawing_views import BOARD_DRAWN_MM, View, room_outline
from subsearch.display.outlines import Outline
from subsearch.repair.in_place import Placed, Stand
from subsearch.repair.marks import GROOVE, MINUS

SHARE = 0.16  # of the body that a stripe is drawn wide
GROOVE_SHARE = 0.06  # of the length that a groove is, and that it is away from the end


def draw_view(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    """Everything to scale, without its numbers."""
    if view.v == "z":
        _board(pen, placed, view, frame)
    else:
        _holes(pen, placed)
    _room(pen, placed, view, frame)
    room = room_outline(placed, view)
    for stand in placed.stands:
        _leads(pen, stand, view)
        _body(pen, stand, view, room)


def _board(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    beyond = pen.mm(8)
    ends = frame.u[0] - beyond, frame.u[1] + beyond
    pen.outline("board", Outline(ends, (-BOARD_DRAWN_MM, 0.0)))
    for at in sorted({view.flat((hole, 0.0, 0.0))[0] for hole in _hole_places(placed)}):
        pen.line("centre", (at, pen.mm(5)), (at, -BOARD_DRAWN_MM - pen.mm(5)))


def _hole_places(placed: Placed) -> list[float]:
    half = placed.hole_spacing_mm / 2
    return [] if isnan(half) else [-half, half]


def _holes(pen: Pen, placed: Placed) -> None:
    for at in _hole_places(placed):
        radius = placed.hole_diameter_mm / 2
        if not isnan(radius):
            pen.outline("thin", Outline((at - radius, at + radius), (-radius, radius), True))
        arm = pen.mm(5) + (0.0 if isnan(radius) else radius)
        pen.line("centre", (at - arm, 0.0), (at + arm, 0.0))
        pen.line("centre", (at, -arm), (at, arm))


def _room(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    """The walls that lie within the picture; where a side is open the others run to its edge."""
    room, beyond = room_outline(placed, view), pen.mm(6)
    if room.rim_mm <= min(abs(end) for end in (*frame.u, *frame.v)) + 1e-9:
        pen.outline("room", Outline((-room.rim_mm, room.rim_mm), (-room.rim_mm, room.rim_mm), True))
    walls = []
    for wanted, drawn in ((room.u, frame.u), (room.v, frame.v)):
        low, high = (wall if abs(wall - end) < 1e-9 or within(wall, drawn) else None
                     for wall, end in zip(wanted, drawn, strict=True))  # fmt: skip
        walls.append((low, high))
    (left, right), (bottom, top) = walls
    u = frame.u[0] - beyond if left is None else left, frame.u[1] + beyond if right is None else right
    floor = 0.0 if view.v == "z" else frame.v[0] - beyond
    v = floor if bottom is None else bottom, frame.v[1] + beyond if top is None else top
    for wall in (left, right):
        if wall is not None:
            pen.line("room", (wall, v[0]), (wall, v[1]))
    for wall in (bottom, top):
        if wall is not None:
            pen.line("room", (u[0], wall), (u[1], wall))


def within(wall: float, ends: tuple[float, float]) -> bool:
    """Whether a wall lies in the picture."""
    return not isinf(wall) and ends[0] - 1e-9 <= wall <= ends[1] + 1e-9


def _leads(pen: Pen, stand: Stand, view: View) -> None:
    for lead in stand.leads:
        points = [view.flat(point) for point in lead.points]
        if len(set(points)) == 1:
            continue
        if isnan(lead.diameter_mm):
            pen.path("hidden", points)
        else:
            pen.path("lead", points, max(lead.diameter_mm, pen.mm(1.2)))


def _body(pen: Pen, stand: Stand, view: View, room: Outline) -> None:
    nominal, largest, taken = (view.outline(one) for one in (stand.nominal, stand.largest, stand.taken))
    if largest.known:
        pen.outline("most", largest)
    reaches = taken if taken.known and stand.largest.axis != "z" else largest
    if reaches.known:
        pen.hatch(reaches, room)
    if nominal.known:
        pen.outline("body", nominal)
        _middle_lines(pen, stand, view, nominal)
        _mark(pen, stand, view, nominal)
    if stand.vent_mm and view.v == "z" and largest.known:
        top = largest.v[1]
        pen.outline("vent", Outline(largest.u, (top, top + stand.vent_mm)))


def _middle_lines(pen: Pen, stand: Stand, view: View, shape: Outline) -> None:
    """Chain lines through the middle of round bodies."""
    axis, beyond = stand.nominal.axis, pen.mm(7)
    (left, right), (bottom, top) = shape.u, shape.v
    middle = (left + right) / 2, (bottom + top) / 2
    if axis and axis != view.v:
        pen.line("centre", (left - beyond, middle[1]), (right + beyond, middle[1]))
    if axis and axis != view.u:
        pen.line("centre", (middle[0], bottom - beyond), (middle[0], top + beyond))


def _mark(pen: Pen, stand: Stand, view: View, shape: Outline) -> None:
    """The stripe, groove or mark where it is on the side seen, with the sign that it stands for."""
    if stand.mark is None or stand.mark_faces not in (view.left, view.right, view.down, view.up, view.near):
        return
    faces = stand.mark_faces
    if shape.is_round and faces != view.near:
        pen.segment(shape, faces in (view.left, view.right), faces in (view.right, view.up), SHARE)
    else:
        pen.outline("mark", _bar(stand, view, shape))
    sign = "\N{MINUS SIGN}" if stand.mark.sign == MINUS else "+"
    at = _sign_at(stand, view, shape, pen.mm(9))
    pen.words((at[0], at[1] - pen.mm(4.5)), sign, points=13.0, bold=1.0)


def _bar(stand: Stand, view: View, shape: Outline) -> Outline:
    """The bar that stands for the mark: along an edge, a little away from it for a groove, or towards the eye."""
    (left, right), (bottom, top) = shape.u, shape.v
    groove = stand.mark == GROOVE
    wide, high = ((GROOVE_SHARE if groove else SHARE) * size for size in (right - left, top - bottom))
    off_u, off_v = (wide, high) if groove else (0.0, 0.0)
    edges = {
        view.left: ((left + off_u, left + off_u + wide), shape.v),
        view.right: ((right - off_u - wide, right - off_u), shape.v),
        view.down: (shape.u, (bottom + off_v, bottom + off_v + high)),
        view.up: (shape.u, (top - off_v - high, top - off_v)),
    }
    if stand.mark_faces in edges:
        return Outline(*edges[stand.mark_faces])
    u, v = (left + right) / 2, (bottom + top) / 2
    if stand.nominal.axis == view.u:
        return Outline(shape.u, (v - high / 2, v + high / 2))
    along_v = (u - wide / 2, u + wide / 2)
    return Outline((u - wide, u + wide), (v - high, v + high), True) if shape.is_round else Outline(along_v, shape.v)


def _sign_at(stand: Stand, view: View, shape: Outline, beside: float) -> tuple[float, float]:
    """Where the sign stands: in the segment of a circle and in a bar towards the eye, else beside the bar."""
    bar = _bar(stand, view, shape)
    u, v = sum(bar.u) / 2, sum(bar.v) / 2
    ways = {view.left: (1, 0), view.right: (-1, 0), view.down: (0, 1), view.up: (0, -1)}
    if shape.is_round or stand.mark_faces not in ways:
        return u, v
    to_u, to_v = ways[stand.mark_faces]
    off_u, off_v = ((end[1] - end[0]) / 2 + beside for end in (bar.u, bar.v))
    return (u + to_u * off_u, v + beside) if to_u else (u + beside, v + to_v * off_v)
