"""A pen for drawings to scale: coordinates in millimetres, line widths and letters in picture points.

Lines are of the kinds that drawing offices use: solid, dashed, dotted and chain lines. Ink is the page's own colour of
text, so that a drawing is read in light and dark themes and on paper.
"""

from html import escape

from subsearch.display.outlines import Outline, outside

LETTERS_PT = 11.0
WARN = "var(--jp-error-color1, currentColor)"
# Width in points, dashes in points, what else; later kinds lie above earlier ones.
KINDS: dict[str, tuple[float, str, str]] = {
    "board": (1.0, "", ' fill="currentColor" fill-opacity=".16"'),
    "thin": (0.6, "", ""),
    "centre": (0.6, "10 3 2 3", ""),
    "lead": (1.2, "", ' stroke-opacity=".6" stroke-linejoin="round"'),
    "hidden": (1.0, "2.5 2", ""),
    "room": (1.7, "0.1 4", ' stroke-linecap="round"'),
    "most": (1.1, "5 3", ""),
    "body": (1.8, "", ' fill="currentColor" fill-opacity=".07"'),
    "mark": (0.8, "", ' fill="currentColor" fill-opacity=".3"'),
    "vent": (0.9, "8 2 1 2 1 2", ""),
    "over": (1.3, "", ""),
}


def figures(size_mm: float) -> str:
    """A coordinate in mm, to a thousandth.

    >>> figures(4.5), figures(-0.00001), figures(1 / 3)
    ('4.5', '0', '0.333')
    """
    text = f"{size_mm:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


class Pen:
    """Collects what is drawn. `scale` is points per mm; up is up, as on paper."""

    def __init__(self, scale: float) -> None:
        self.scale = scale
        self._drawn: dict[str, list[str]] = {}
        self._lines: dict[str, str] = {}  # of each kind in one path, which keeps the text short
        self._words: list[str] = []

    @property
    def drawn(self) -> str:
        """All of it as SVG, the letters on top."""
        kinds = "".join(self._group(kind) for kind in KINDS if kind in self._drawn or kind in self._lines)
        words = f'<g fill="currentColor" stroke="none" text-anchor="middle">{"".join(self._words)}</g>'
        return kinds + words

    def _group(self, kind: str) -> str:
        points, dashes, more = KINDS[kind]
        dashed = " ".join(figures(self.mm(float(one))) for one in dashes.split())
        dashed = f' stroke-dasharray="{dashed}"' if dashed else ""
        ink = f' style="stroke:{WARN}"' if kind == "over" else ""
        width = figures(self.mm(points))
        lines = f'<path d="{self._lines[kind]}"/>' if kind in self._lines else ""
        shapes = lines + "".join(self._drawn.get(kind, ()))
        return f'<g data-kind="{kind}" stroke-width="{width}"{dashed}{ink}{more}>{shapes}</g>'

    def mm(self, points: float) -> float:
        """So many points in mm."""
        return points / self.scale

    def line(self, kind: str, start: tuple[float, float], end: tuple[float, float]) -> None:
        """A straight line."""
        (a, b), (c, d) = start, end
        self._lines[kind] = self._lines.get(kind, "") + f"M{figures(a)},{figures(-b)}L{figures(c)},{figures(-d)}"

    def path(self, kind: str, points: list[tuple[float, float]], wide_mm: float = 0.0) -> None:
        """A line through points, as wide as is said or as its kind is."""
        through = " ".join(f"{figures(u)},{figures(-v)}" for u, v in points)
        wide = f' stroke-width="{figures(wide_mm)}"' if wide_mm else ""
        self._add(f'<polyline points="{through}"{wide}', kind)

    def outline(self, kind: str, shape: Outline) -> None:
        """A rectangle or a circle."""
        (low, high), (bottom, top) = shape.u, shape.v
        if shape.is_round:
            middle = f'cx="{figures((low + high) / 2)}" cy="{figures(-(bottom + top) / 2)}"'
            self._add(f'<circle {middle} r="{figures((high - low) / 2)}"', kind)
        else:
            size = f'width="{figures(high - low)}" height="{figures(top - bottom)}"'
            self._add(f'<rect x="{figures(low)}" y="{figures(-top)}" {size}', kind)

    def segment(self, circle: Outline, sideways: bool, high: bool, share: float) -> None:
        """The part of a circle beyond a chord, so much of its diameter wide, at one of four sides."""
        radius = (circle.u[1] - circle.u[0]) / 2
        u, v = (circle.u[0] + circle.u[1]) / 2, (circle.v[0] + circle.v[1]) / 2
        away = radius * (1 - 2 * share) * (1 if high else -1)
        half = (radius**2 - away**2) ** 0.5
        upright, flat = ((u + away, v - half), (u + away, v + half)), ((u - half, v + away), (u + half, v + away))
        (a, b), (c, d) = upright if sideways else flat
        sweep = int(high != sideways)
        arc = f"A{figures(radius)},{figures(radius)} 0 0 {sweep} {figures(c)},{figures(-d)}"
        self._add(f'<path d="M{figures(a)},{figures(-b)} {arc} Z"', "mark")

    def hatch(self, shape: Outline, room: Outline) -> None:
        """Slanting lines over what of a shape lies outside the room."""
        size = max(shape.u[1] - shape.u[0], shape.v[1] - shape.v[0])
        for start, end in outside(shape, room, max(self.mm(4.5), size / 50)):
            self.line("over", start, end)

    def words(self, at: tuple[float, float], text: str, **how: str | float) -> None:
        """Letters at a point: `anchor` start, middle or end, `turned` to be read from the right, `bold`, `points`."""
        u, v = figures(at[0]), figures(-at[1])
        size = figures(self.mm(float(how.get("points", LETTERS_PT))))
        turn = f' transform="rotate(-90 {u} {v})"' if how.get("turned") else ""
        bold = ' font-weight="700"' if how.get("bold") else ""
        anchor = f' text-anchor="{how["anchor"]}"' if "anchor" in how else ""
        self._words.append(f'<text x="{u}" y="{v}" font-size="{size}"{anchor}{bold}{turn}>{escape(text)}</text>')

    def measure(self, start: tuple[float, float], end: tuple[float, float], text: str, after: bool = False) -> None:
        """A line of a dimension with a short slanting stroke at both ends, and its number beside it.

        It stands above a line and to the left of an upright one, or `after` it: below, and to the right.
        """
        self.line("thin", start, end)
        tick = self.mm(3.0)
        for u, v in (start, end):
            self.line("thin", (u - tick, v - tick), (u + tick, v + tick))
        u, v, beside = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2, self.mm(-13.0 if after else 4.0)
        if start[0] == end[0]:
            self.words((u - beside, v), text, turned=1.0)
        else:
            self.words((u, v + beside), text)

    def _add(self, opened: str, kind: str) -> None:
        self._drawn.setdefault(kind, []).append(f"{opened}/>")
