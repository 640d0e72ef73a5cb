"""The numbers of a drawing: dimension lines of body, holes and height, and what is free and left on each side [mm]."""

from math import isinf, isnan

from subsearch.display.drawing_bodies import within
from subsearch.display.drawing_pen import Pen
from subsearch.display.drawing_views import View
from subsearch.display.outlines import Outline
from subsearch.formulas.geometry import NEAR_MM
from subsearch.repair.in_place import LEFT, Placed, Span, Stand
from subsearch.repair.room_left import HEADROOM, ROUND
from subsearch.units import show

LONG_ENOUGH_PT = 24.0  # a number is written along a line of at least that length
SCALES_MM = (10.0, 5.0)  # the shorter where the longer would not fit
LONGEST_BAR_PT = 230.0
AWAY, BACK_AGAIN = "\N{UPWARDS ARROW} ", "\N{DOWNWARDS ARROW} "  # turned words of the sides take their arrows along
TITLE_PT = {"y": 56.0, "z": 32.0}  # above the picture, by its upward axis


def number(size_mm: float) -> str:
    """A size in mm to a hundredth, as calipers show it, without its unit."""
    return show(round(size_mm, 2) + 0.0, "")


def spare(left_mm: float) -> str:
    """What is left on a side, or by how much it is passed.

    >>> spare(1.25), spare(-0.4)
    ('spare 1.25', 'over by 0.4')
    """
    if isnan(left_mm):
        return "spare not known"
    return f"over by {number(-left_mm)}" if left_mm < -NEAR_MM else f"spare {number(left_mm)}"


def nominal_to_most(nominal: Span, largest: Span, is_round: bool) -> str:
    """A size as stated and at its largest: "Ø 8, at most 8.5"."""
    most = f", at most {number(largest.size)}" if largest.known and largest.size > nominal.size + NEAR_MM else ""
    return f"{'Ø ' if is_round else ''}{number(nominal.size)}{most}"


def number_view(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    """All numbers and words of one view."""
    (left, right), (bottom, top) = frame.u, frame.v
    if view.v == "z":
        _heights(pen, placed, view, frame)
        _headroom(pen, placed, view, frame)
        _vent(pen, placed, view)
        for side, at, anchor in ((view.left, left - pen.mm(12), "start"), (view.right, right + pen.mm(12), "end")):
            pen.words((at, bottom - pen.mm(24)), side, anchor=anchor)
    else:
        _spacing(pen, placed, frame)
        _sides(pen, placed, view, frame)
        for stand in placed.stands[:1]:
            _from_above(pen, stand, frame)
    _plus(pen, placed, view, frame)
    pen.words(((left + right) / 2, top + pen.mm(TITLE_PT[view.v])), view.title, bold=1.0, points=12.0)
    if view.v == "z":
        scale_bar(pen, ((left + right) / 2, bottom - pen.mm(44)))


def scale_bar(pen: Pen, at: tuple[float, float]) -> None:
    """A bar that is 10 mm long, 5 mm for the smallest parts."""
    long_mm = next((one for one in SCALES_MM if one * pen.scale <= LONGEST_BAR_PT), SCALES_MM[-1])
    pen.measure((at[0] - long_mm / 2, at[1]), (at[0] + long_mm / 2, at[1]), f"{long_mm:g} mm")


def _spacing(pen: Pen, placed: Placed, frame: Outline) -> None:
    half, v = placed.hole_spacing_mm / 2, frame.v[1] + pen.mm(13)
    if not isnan(half):
        for at in (-half, half):
            pen.line("thin", (at, pen.mm(7)), (at, v + pen.mm(3)))
        pen.measure((-half, v), (half, v), f"holes {number(2 * half)}")


def _from_above(pen: Pen, stand: Stand, frame: Outline) -> None:
    x, y, axis = stand.nominal.x, stand.nominal.y, stand.nominal.axis
    if not (x.known and y.known):
        return
    v, u = frame.v[0] - pen.mm(12), frame.u[1] + pen.mm(12)
    for at in x:
        pen.line("thin", (at, y.middle if axis == "z" else y.low), (at, v - pen.mm(3)))
    pen.measure((x.low, v), (x.high, v), nominal_to_most(x, stand.largest.x, axis in ("y", "z")), after=True)
    if axis != "z":
        for at in y:
            pen.line("thin", (x.high, at), (u + pen.mm(3), at))
        pen.measure((u, y.low), (u, y.high), nominal_to_most(y, stand.largest.y, axis == "x"), after=True)


def _heights(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    for stand in placed.stands[:1]:
        z, u, most = stand.nominal.z, stand.nominal.span(view.u), stand.taken.z
        if z.known and u.known:
            at = frame.u[0] - pen.mm(22)
            for v in (*z, 0.0):
                pen.line("thin", (u.low if v else frame.u[0], v), (at - pen.mm(3), v))
            pen.measure(
                (at, z.low), (at, z.high), f"{'Ø ' if stand.nominal.axis in ('x', 'y') else ''}{number(z.size)}"
            )
            if pen.scale * z.low >= LONG_ENOUGH_PT:
                pen.measure((at, 0.0), (at, z.low), number(z.low))
        if most.known and stand.taken.span(view.u).known:
            at = frame.u[1] + pen.mm(16)
            pen.line("thin", (stand.taken.span(view.u).high, most.high), (at + pen.mm(3), most.high))
            pen.measure((at, 0.0), (at, most.high), f"at most {number(most.high)}", after=True)


def _headroom(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    free = placed.room.headroom_mm
    if isinf(free):
        return
    left = {gap.name: gap.left_mm for gap in placed.gaps}.get(HEADROOM)
    told = f"headroom {number(free)}" + ("" if left is None else f", {spare(left)}")
    beyond = "" if within(free, frame.v) else AWAY
    over = left is not None and left < -NEAR_MM
    pen.words((sum(frame.u) / 2, frame.v[1] + pen.mm(8)), beyond + told, bold=float(over))


def _sides(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    """What is free on each side and what is left of it, outside the walls; a wall out of the picture has an arrow."""
    gaps = {gap.name: gap.left_mm for gap in placed.gaps}
    room, (left, right), (bottom, top) = placed.room, frame.u, frame.v
    u, v = (left + right) / 2, (bottom + top) / 2
    for name, free, wall, arrow, columns in (
        (view.left, room.left_mm, -room.left_mm, AWAY, (left - pen.mm(19), left - pen.mm(6))),
        (view.right, room.right_mm, room.right_mm, BACK_AGAIN, (right + pen.mm(44), right + pen.mm(57))),
    ):
        told, bold = _side(name, free, gaps.get(name), "" if within(wall, frame.u) else arrow)
        for text, at in zip(told, columns[2 - len(told) :], strict=True):
            pen.words((at, v), text, turned=1.0, bold=bold)
    for name, free, wall, arrow, at in (
        (view.up, room.back_mm, room.back_mm, AWAY, top + pen.mm(35)),
        (view.down, room.front_mm, -room.front_mm, BACK_AGAIN, bottom - pen.mm(42)),
    ):
        told, bold = _side(name, free, gaps.get(name), "" if within(wall, frame.v) else arrow)
        pen.words((u, at), ", ".join(told), bold=bold)
    if not isinf(room.free_diameter_mm):
        told, bold = _side("free Ø", room.free_diameter_mm, gaps.get(ROUND), "")
        pen.words((u, bottom - pen.mm(56)), ", ".join(told), bold=bold)


def _side(name: str, free_mm: float, left_mm: float | None, arrow: str) -> tuple[list[str], float]:
    """The words of one side, and whether they are bold, since it is passed."""
    if isinf(free_mm):
        return [name], 0.0
    told = [f"{arrow}{name} {number(free_mm)}", *([] if left_mm is None else [spare(left_mm)])]
    return told, float(left_mm is not None and left_mm < -NEAR_MM)


def _plus(pen: Pen, placed: Placed, view: View, frame: Outline) -> None:
    """The sign at the hole for the plus: from above behind it, or before it where its lead runs to the back."""
    if not placed.plus_at or isnan(placed.hole_spacing_mm) or (view.v, view.u) == ("z", "y"):
        return
    is_left = placed.plus_at == LEFT
    u, v = placed.hole_spacing_mm / 2 * (-1 if is_left else 1), frame.v[0] - pen.mm(13)
    if view.v == "y":
        radius = 0.0 if isnan(placed.hole_diameter_mm) else placed.hole_diameter_mm / 2
        leads = [stand.leads[0 if is_left else -1] for stand in placed.stands if len(stand.leads) > 1]
        to_back = any(y > radius for lead in leads for _, y, _ in lead.points)
        v = -radius - pen.mm(16) if to_back else radius + pen.mm(4)
    pen.words((u, v), "+", points=17.0, bold=1.0)


def _vent(pen: Pen, placed: Placed, view: View) -> None:
    """What room a vent asks for, beside the rightmost of those drawn."""
    vented = [one for one in placed.stands if one.vent_mm and one.largest.span(view.u).known and one.largest.z.known]
    for stand in sorted(vented, key=lambda one: one.largest.span(view.u).high)[-1:]:
        at = stand.largest.span(view.u).high + pen.mm(4), stand.largest.z.high + stand.vent_mm / 2 - pen.mm(4)
        pen.words(at, f"vent {number(stand.vent_mm)}", anchor="start")
