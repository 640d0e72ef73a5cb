"""Charts: each a function from a table to a chart, every axis title with its unit; drawn as SVG without a network."""

import re
from math import isfinite

import altair as alt
import pandas as pd
import vl_convert

from subsearch.display.chart_marks import QUIET
from subsearch.formulas.life import CEILING_Y

INK, PALE, FONT = "#222", "#8fa3b5", "Liberation Sans, Arial, sans-serif"
COLUMNS = ("position", "years", "life", "margin_mm", "margin")
ROW = 15  # the height of a bar's place [pixels]
BESIDE = 1.35  # how far an axis goes past its bars, for the words beside them


def life_and_margin(table: pd.DataFrame) -> alt.HConcatChart:
    """Life and margin of every position's choice, in the order of the table.

    The table has a position's name, years of life (none where there is no such number), the life in words, the
    tightest margin [mm] (none where none is asked) and the margin in words.
    """
    years = (
        alt.X("years:Q", title="life at its working temperature [years]")
        .scale(domain=[0, CEILING_Y + 6])
        .axis(values=[0, 5, 10, 15])
    )
    ends = min(0.0, table.margin_mm.min()), max(1.0, table.margin_mm.max())
    room = alt.X("margin_mm:Q", title="tightest margin around the body [mm]").scale(
        domain=[end * BESIDE for end in ends if isfinite(end)] or [0, 1]
    )
    ceiling = alt.Chart(pd.DataFrame({"years": [CEILING_Y]})).mark_rule(strokeDash=[4, 3], color="gray").encode(x=years)
    life = alt.layer(*_bars(table, years, "life"), ceiling).properties(width=270, height=alt.Step(ROW))
    margin = alt.layer(*_bars(table, room, "margin", names=False)).properties(width=180, height=alt.Step(ROW))
    beside = alt.hconcat(life, margin, spacing=12, background="transparent")
    both: alt.HConcatChart = beside.configure(font=FONT).configure_view(stroke="gray").configure_axis(**QUIET)
    return both


def _bars(table: pd.DataFrame, x: alt.X, words: str, names: bool = True) -> tuple[alt.Chart, alt.Chart]:
    """Bars, with the words beside each, or in its place where there is no number."""
    value = x.shorthand.removesuffix(":Q")
    axis = alt.Axis(labelLimit=190, labelColor=INK, labelFontSize=10) if names else None
    y = alt.Y("position:N", sort=None, title=None, axis=axis)
    base = alt.Chart(table).encode(y=y)
    bars = base.mark_bar(color=PALE, stroke=INK, strokeWidth=0.6, height={"band": 0.62}).encode(x=x)
    told = base.transform_calculate(**{value: f"isValid(datum.{value}) ? datum.{value} : 0"})
    text = told.mark_text(align="left", dx=4, fontSize=9, color=INK).encode(x=x, text=f"{words}:N")
    return bars, text


def svg(chart: alt.TopLevelMixin) -> str:
    """The chart drawn, to stand inside a page: no address in it, not even that of the format's own name."""
    drawn: str = vl_convert.vegalite_to_svg(chart.to_dict(), allowed_base_urls=[])
    return re.sub(r'\sxmlns(:\w+)?="[^"]*"', "", drawn)
