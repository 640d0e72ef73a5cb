"""A position drawn to scale, from above and from the side at one scale: the same text on the screen and in print."""

from collections.abc import Sequence
from html import escape

from subsearch.display.drawing_bodies import draw_view
from subsearch.display.drawing_pen import Pen, figures
from subsearch.display.drawing_sizes import number_view, scale_bar
from subsearch.display.drawing_views import ABOVE, View, bounds, side_view
from subsearch.display.drawing_words import legend, sentence
from subsearch.display.outlines import Outline
from subsearch.repair.in_place import Placed

WIDE_PT, HIGH_PT = 356.0, 240.0  # of one view; its height without what stands around it
LARGEST_SCALE = 32.0  # points per mm: the smallest parts are shown no larger
PADS = {"y": (38.0, 66.0, 62.0, 70.0), "z": (44.0, 40.0, 50.0, 46.0)}  # left, right, below, above, by upward axis
SMALL_PT, SMALL_PAD = 150.0, 10.0
PAGE = (
    'class="subs-drawing" style="color:var(--jp-ui-font-color1, inherit);'
    'font:12px/1.4 var(--jp-ui-font-family, sans-serif)"'
)
BESIDE = "display:flex;flex-wrap:wrap;align-items:flex-start;gap:4px 12px"
ON_ONE_BOARD = "display:flex;align-items:flex-end;gap:4px"
ON_PAPER = "<style>@media print{.subs-drawing{color:#000!important}}</style>"


def drawing(placed: Placed) -> str:
    """Both views of a position side by side, with their numbers, and what they say in words: HTML.

    >>> from subsearch.repair.placing import placed
    >>> from subsearch.search.requirement import Requirement
    >>> drawing(placed(Requirement(hole_spacing_mm=5.0, left_mm=4.0), None)).count("<svg")
    2
    """
    views = (ABOVE, side_view(placed))
    frames = [bounds(placed, view) for view in views]
    scale = min(LARGEST_SCALE, *(_scale(frame, view) for frame, view in zip(frames, views, strict=True)))
    pictures = "".join(_picture(placed, view, frame, scale) for frame, view in zip(frames, views, strict=True))
    said = "".join(f"<p style='margin:2px 0'>{escape(one)}</p>" for one in legend(placed))
    return (
        f'<div {PAGE}>{ON_PAPER}<div role="img" aria-label="{escape(sentence(placed))}" style="{BESIDE}">'
        f"{pictures}</div>{said}</div>"
    )


def side_by_side(placed: Sequence[Placed]) -> list[str]:
    """Each position drawn small, all at one scale, without numbers but with a bar of 10 mm: HTML for each."""
    if not placed:
        return []
    inner = SMALL_PT - 2 * SMALL_PAD
    each = [[(view, bounds(one, view)) for view in (ABOVE, side_view(one))] for one in placed]
    sizes = [end[1] - end[0] for views in each for _, frame in views for end in (frame.u, frame.v)]
    scale = min(LARGEST_SCALE, inner / max(sizes))
    return [
        f'<div {PAGE}>{ON_PAPER}<div role="img" aria-label="{escape(sentence(one))}" style="{ON_ONE_BOARD}">'
        + "".join(_small(one, view, frame, scale) for view, frame in views)
        + "</div></div>"
        for one, views in zip(placed, each, strict=True)
    ]


def _scale(frame: Outline, view: View) -> float:
    left, right, *_ = PADS[view.v]
    return min((WIDE_PT - left - right) / (frame.u[1] - frame.u[0]), HIGH_PT / (frame.v[1] - frame.v[0]))


def _picture(placed: Placed, view: View, frame: Outline, scale: float) -> str:
    pen = Pen(scale)
    draw_view(pen, placed, view, frame)
    number_view(pen, placed, view, frame)
    left, right, below, above = PADS[view.v]
    more = WIDE_PT - left - right - scale * (frame.u[1] - frame.u[0])  # what is free on both sides together
    return _svg(pen, frame, (left + more / 2, right + more / 2, below, above))


def _small(placed: Placed, view: View, frame: Outline, scale: float) -> str:
    pen = Pen(scale)
    draw_view(pen, placed, view, frame)
    pad = (SMALL_PT - scale * (frame.u[1] - frame.u[0])) / 2
    if view.v == "z":
        scale_bar(pen, (sum(frame.u) / 2, frame.v[0] - pen.mm(20)))
    return _svg(pen, frame, (pad, pad, 26.0, SMALL_PAD))


def _svg(pen: Pen, frame: Outline, pads: tuple[float, float, float, float]) -> str:
    left, right, below, above = (pen.mm(pad) for pad in pads)
    wide, high = frame.u[1] - frame.u[0] + left + right, frame.v[1] - frame.v[0] + below + above
    box = " ".join(figures(one) for one in (frame.u[0] - left, -frame.v[1] - above, wide, high))
    size = f'width="{pen.scale * wide:.0f}" height="{pen.scale * high:.0f}"'
    return (
        f'<svg viewBox="{box}" {size} style="max-width:100%;height:auto" aria-hidden="true" '
        f'fill="none" stroke="currentColor">{pen.drawn}</svg>'
    )
