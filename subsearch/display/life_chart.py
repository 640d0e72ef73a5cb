"""Life over temperature as a chart: a function from a table to a chart."""

from collections.abc import Sequence
from typing import Any

import altair as alt

from subsearch.search.sweep import LifeAt


def life_chart(lives: Sequence[LifeAt], working_c: float | None, width: int = 400) -> alt.LayerChart:
    """One line a part, told apart by colour, dash and point; an upright line where it works, if that is asked.

    >>> life_chart([LifeAt("A", 85.0, 2.0)], 55).to_dict()["layer"][0]["encoding"]["y"]["title"]
    'Life [years]'
    """
    rows = [{"part": one.name, "at_c": one.working_c, "years": one.years} for one in lives if one.years is not None]
    in_order = alt.Scale(domain=list(dict.fromkeys(one.name for one in lives if one.years is not None)))
    # Colour and shape with the same order and the same legend become one legend.
    told_apart: dict[str, Any] = {
        "legend": alt.Legend(title=None, orient="bottom", columns=1, labelLimit=width),
        "scale": in_order,
    }
    quiet = alt.Axis(gridColor="gray", gridOpacity=0.3, domainColor="gray", tickColor="gray")  # on light and dark
    base = alt.Chart(alt.InlineData(values=rows)).encode(
        x=alt.X("at_c:Q", title="Temperature at the part [°C]", scale=alt.Scale(zero=False), axis=quiet),
        y=alt.Y("years:Q", title="Life [years]", scale=alt.Scale(zero=True), axis=quiet),
        tooltip=[
            alt.Tooltip("part:N", title="Part"),
            alt.Tooltip("at_c:Q", title="Temperature [°C]"),
            alt.Tooltip("years:Q", title="Life [years]", format=".1f"),
        ],
    )
    lines = base.mark_line().encode(
        color=alt.Color("part:N", **told_apart), strokeDash=alt.StrokeDash("part:N", scale=in_order, legend=None)
    )
    points = base.mark_point(filled=True, size=50, opacity=1).encode(
        color=alt.Color("part:N", **told_apart), shape=alt.Shape("part:N", **told_apart)
    )
    here = [] if working_c is None or not rows else [{"at_c": working_c}]
    rule = alt.Chart(alt.InlineData(values=here)).mark_rule(strokeDash=[2, 2], size=2, color="gray").encode(x="at_c:Q")
    return alt.LayerChart(layer=[lines, points, rule], width=width, height=200, background="transparent")
