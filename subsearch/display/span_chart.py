"""How long a part lasts over temperature, with the span of the published laws: a function from a table to a chart."""

from collections.abc import Mapping, Sequence

import altair as alt

from subsearch.display.chart_marks import COLOURS, QUIET, level, upright
from subsearch.formulas.lifetime import Lifetime


def span_chart(lives: Mapping[float, Lifetime], working_c: float, ceiling_h: float, width: int = 520) -> alt.LayerChart:
    """A line for the figure, a band from the shortest to the longest, and where the part works.

    Args:
        lives: the lifetime at each temperature [°C].
        working_c: where the upright line stands [°C].
        ceiling_h: where the level line of the calendar stands [h].
        width: of the chart, in pixels.

    >>> from subsearch.formulas.lifetime import wet_lifetime
    >>> from subsearch.formulas.lifetime_inputs import Duty, StatedLife
    >>> lives = {float(c): wet_lifetime(StatedLife(2000, 105), Duty(c, 8)) for c in (45, 55)}
    >>> span_chart(lives, 55, 43_800).to_dict()["layer"][1]["encoding"]["y"]["title"]
    'Life [h]'
    """
    rows = [
        {"at_c": at_c, "life_h": one.life_h, "shortest_h": one.shortest_h, "longest_h": one.longest_h}
        for at_c, one in lives.items()
    ]
    quiet = alt.Axis(**QUIET, format="~s")
    x = alt.X("at_c:Q", title="Temperature at the part [°C]", scale=alt.Scale(zero=False), axis=quiet)
    hours = alt.Scale(type="log", nice=False)
    ticks = alt.Axis(**QUIET, format="~s", values=_ones_and_threes(rows))
    base = alt.Chart(alt.InlineData(values=rows)).encode(x=x)
    band = base.mark_area(opacity=0.25, color=COLOURS[0]).encode(
        y=alt.Y("shortest_h:Q", title="Life [h]", scale=hours, axis=ticks), y2="longest_h:Q"
    )
    line = base.mark_line(color=COLOURS[0], point=True).encode(
        y=alt.Y("life_h:Q", title="Life [h]", scale=hours, axis=ticks),
        tooltip=[
            alt.Tooltip("at_c:Q", title="Temperature [°C]"),
            alt.Tooltip("shortest_h:Q", title="Shortest [h]", format=",.0f"),
            alt.Tooltip("life_h:Q", title="Figure [h]", format=",.0f"),
            alt.Tooltip("longest_h:Q", title="Longest [h]", format=",.0f"),
        ],
    )
    here = f": {lives[working_c].life_h:,.0f} h" if working_c in lives else ""
    ceiling = f"calendar ceiling, {ceiling_h:,.0f} h"
    marks = [*upright(working_c, f"works at {working_c:g} °C{here}"), *level("life_h", ceiling_h, ceiling)]
    return alt.LayerChart(layer=[band, line, *marks], width=width, height=260, background="transparent")


def _ones_and_threes(rows: Sequence[Mapping[str, float]]) -> list[float]:
    """Where a logarithmic axis has its words: 1, 3, 10, 30 and so on, as far as the rows go [h]."""
    low, high = (edge(row[name] for row in rows) for edge, name in ((min, "shortest_h"), (max, "longest_h")))
    steps = (first * 10.0**decade for decade in range(8) for first in (1, 3))
    return [one for one in steps if low <= one <= high]
