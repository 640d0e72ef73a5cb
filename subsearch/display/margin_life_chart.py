"""Room against life with the cost as size, for every part found: a function from a table to a chart."""

from collections.abc import Sequence
from typing import Any

import altair as alt

from subsearch.display.chart_marks import COLOURS, QUIET, TAKES_THEME, level
from subsearch.display.margin_life_words import placed
from subsearch.display.words import life_text, margin_text
from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import Candidate, body, value_text

UNBEATEN, FITS, OPEN = "fits, and nothing beats it", "fits", "open: something is not stated"
BLUE = COLOURS[0]
KINDS = {UNBEATEN: ("diamond", BLUE), FITS: ("circle", f"{BLUE}66"), OPEN: ("square", "transparent")}  # shape, filling
ROW_Y, TOP_Y = CEILING_Y + 2, CEILING_Y + 3  # above the ceiling a row for what heat does not limit: a place, no life
LABELS = (
    f"datum.value == {ROW_Y} ? ['not limited', 'by heat'] : datum.value == {CEILING_Y} ? 'ceiling 15' : datum.label"
)
NEAR_Y, NEAR_PART = 2.0, 0.4  # names of marks so near each other [years, part of the width] stand below each other
BESIDE, LINE = 14, 12  # from a mark to its name, and from line to line [pixels]
LARGEST, RING = 400, 550  # the dearest mark, and the ring around one that is named [square pixels]


def margin_life_chart(
    candidates: Sequence[Candidate],
    currency: str | None,
    named: Sequence[str] = (),
    width: int = 440,
    height: int = 260,
) -> alt.LayerChart:
    """A mark for each part: more room to the right, longer life higher up, lower cost smaller.

    What heat does not limit stands in a row of its own at the top, which has no number. Shape and filling tell what
    nothing beats, what fits and what is open; what has no margin, life or cost is not drawn.

    Args:
        candidates: the parts found, kept and open.
        currency: of their cost; None where no rates are kept.
        named: names of the parts that get a ring and their name: those looked at and compared.
        width, height: of the chart, in pixels.

    >>> margin_life_chart([], "EUR").to_dict()["layer"][0]["encoding"]["size"]["title"]
    'Cost of all pieces [EUR]'
    """
    rows = [_row(one) for one in sorted(placed(candidates), key=_dearest_first)]
    labelled = [row for row in rows if row["part"] in named]
    labels = _labels(labelled, _span(rows), height)
    axis = alt.Axis(**QUIET, values=[0, 5, 10, CEILING_Y, ROW_Y], labelExpr=LABELS)
    years = alt.Y("years:Q", title="Life [years]", scale=alt.Scale(domain=[0, TOP_Y]), axis=axis)
    at_top = alt.value(height * (TOP_Y - ROW_Y) / TOP_Y)
    layers = [
        *(_marks(_limited(rows, limited), y, currency) for limited, y in ((True, years), (False, at_top))),
        *(_rings(_limited(labelled, limited), y) for limited, y in ((True, years), (False, at_top))),
        *level("years", CEILING_Y, "")[:1],
        *(_names(_limited(labels, limited), y) for limited, y in ((True, years), (False, at_top))),
    ]
    return alt.LayerChart(layer=layers, width=width, height=height, background="transparent")


def _dearest_first(one: Candidate) -> float:
    """So that smaller marks lie on larger ones."""
    return -float(one.made["cost"])


def _limited(rows: Sequence[dict[str, Any]], limited: bool) -> list[dict[str, Any]]:
    return [row for row in rows if (row["years"] is not None) is limited]


def _row(one: Candidate) -> dict[str, Any]:
    return {
        "part": one.name,
        "margin_mm": round(one.made["tightest_mm"], 2) + 0.0,
        "years": None if one.made["not_worn_by_heat"] else one.made["years"],
        "cost": one.made["cost"],
        "kind": UNBEATEN if one.unbeaten else FITS if one.answer else OPEN,
        "value": value_text(one.part),
        "body": body(one.part),
        "room": margin_text(one),
        "life": life_text(one),
    }


def _span(rows: Sequence[dict[str, Any]]) -> float:
    """How far the room goes from 0 [mm], where the axis begins."""
    return max((abs(row["margin_mm"]) for row in rows), default=0.0) or 1.0


def _labels(rows: Sequence[dict[str, Any]], span_mm: float, height: int) -> list[dict[str, Any]]:
    """The names beside their marks, toward the middle; those of marks that are near each other in one label."""
    groups: list[list[dict[str, Any]]] = []
    for row in sorted(rows, key=lambda row: -_height(row)):
        near = next((one for one in groups if _near(one[0], row, span_mm)), None)
        groups.append([row]) if near is None else near.append(row)
    return [
        {
            **group[0],
            "names": "\n".join(row["part"] for row in group),
            "align": "left" if group[0]["margin_mm"] <= span_mm / 2 else "right",
            "dy": _below(group, height),
        }
        for group in groups
    ]


def _below(group: Sequence[dict[str, Any]], height: int) -> float:
    """How far the top of a label stands below the highest of its marks [pixels].

    Its middle is a little above that of the marks, so that it hides none beside them; but it keeps off the line of
    the ceiling, and above the axis.
    """
    highest, *_, lowest = (height * (1 - _height(row) / TOP_Y) for row in (*group, group[-1]))
    tall = LINE * len(group)
    if _height(group[0]) > CEILING_Y - NEAR_Y:
        return BESIDE
    return min((highest + lowest - tall) / 2 - LINE / 2, height - tall) - highest


def _height(row: dict[str, Any]) -> float:
    return ROW_Y if row["years"] is None else float(row["years"])


def _near(one: dict[str, Any], other: dict[str, Any], span_mm: float) -> bool:
    apart = abs(one["margin_mm"] - other["margin_mm"])
    return abs(_height(one) - _height(other)) <= NEAR_Y and apart <= NEAR_PART * span_mm


def _x() -> alt.X:
    return alt.X("margin_mm:Q", title="Tightest margin around the body [mm]", axis=alt.Axis(**QUIET, tickCount=8))


def _marks(rows: list[dict[str, Any]], y: Any, currency: str | None) -> alt.Chart:
    cost = f"Cost of all pieces [{currency or 'currency not stated'}]"
    shapes, fillings = zip(*KINDS.values(), strict=True)
    kinds = alt.Legend(title=None, orient="top", labelLimit=260)
    costs = alt.Legend(orient="bottom", symbolFillColor="transparent", symbolStrokeColor="gray", tickCount=4)
    said = {
        "part": "Part",
        "value": "Value",
        "body": "Body",
        "room": "Tightest margin",
        "life": "Life",
        "kind": "State",
    }
    marks: alt.Chart = (
        alt.Chart(alt.InlineData(values=rows))
        .mark_point(strokeWidth=1.5, opacity=1)
        .encode(
            x=_x(),
            y=y,
            size=alt.Size("cost:Q", title=cost, legend=costs, scale=alt.Scale(range=[25, LARGEST], zero=True)),
            shape=alt.Shape("kind:N", legend=kinds, scale=alt.Scale(domain=list(KINDS), range=shapes)),
            fill=alt.Fill("kind:N", legend=kinds, scale=alt.Scale(domain=list(KINDS), range=fillings)),
            stroke=alt.Stroke("kind:N", legend=kinds, scale=alt.Scale(domain=list(KINDS), range=[BLUE])),
            tooltip=[
                *(alt.Tooltip(f"{name}:N", title=title) for name, title in said.items()),
                alt.Tooltip("cost:Q", title=cost, format=".2f"),
            ],
        )
    )
    return marks


def _rings(rows: list[dict[str, Any]], y: Any) -> alt.Chart:
    """A ring around each mark that is named."""
    ring = alt.Chart(alt.InlineData(values=rows)).mark_point(size=RING, strokeWidth=2, color="gray", opacity=1)
    rings: alt.Chart = ring.encode(x=_x(), y=y)
    return rings


def _names(labels: list[dict[str, Any]], y: Any) -> alt.Chart:
    names: alt.Chart = (
        alt.Chart(alt.InlineData(values=labels))
        .mark_text(
            align=alt.expr("datum.align"),
            dx=alt.expr(f"datum.align == 'left' ? {BESIDE} : -{BESIDE}"),
            dy=alt.expr("datum.dy"),
            baseline="top",
            lineHeight=LINE,
            lineBreak="\n",
            color=TAKES_THEME,
            fontWeight="bold",
        )
        .encode(x=_x(), y=y, text="names:N")
    )
    return names
