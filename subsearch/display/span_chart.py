"""How long a part lasts over temperature, with the span of the published laws: a function from a table to a chart."""

from collections.abc import Mapping

import altair as alt

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
    quiet = alt.Axis(gridColor="gray", gridOpacity=0.3, domainColor="gray", tickColor="gray", format="~s")
    x = alt.X("at_c:Q", title="Temperature at the part [°C]", scale=alt.Scale(zero=False), axis=quiet)
    hours = alt.Scale(type="log", nice=False)
    base = alt.Chart(alt.InlineData(values=rows)).encode(x=x)
    band = base.mark_area(opacity=0.25, color="steelblue").encode(
        y=alt.Y("shortest_h:Q", title="Life [h]", scale=hours, axis=quiet), y2="longest_h:Q"
    )
    line = base.mark_line(color="steelblue", point=True).encode(
        y=alt.Y("life_h:Q", title="Life [h]", scale=hours, axis=quiet),
        tooltip=[
            alt.Tooltip("at_c:Q", title="Temperature [°C]"),
            alt.Tooltip("shortest_h:Q", title="Shortest [h]", format=",.0f"),
            alt.Tooltip("life_h:Q", title="Figure [h]", format=",.0f"),
            alt.Tooltip("longest_h:Q", title="Longest [h]", format=",.0f"),
        ],
    )
    return alt.LayerChart(
        layer=[band, line, *_marks(working_c, ceiling_h)], width=width, height=260, background="transparent"
    )


def _marks(working_c: float, ceiling_h: float) -> list[alt.Chart]:
    """Where the part works, and where the calendar ends every life: told apart by their words."""
    here = alt.Chart(alt.InlineData(values=[{"at_c": working_c, "words": f"works at {working_c:g} °C"}]))
    level = alt.Chart(alt.InlineData(values=[{"h": ceiling_h, "words": "calendar ceiling"}]))
    return [
        here.mark_rule(strokeDash=[2, 2], size=2, color="gray").encode(x="at_c:Q"),
        here.mark_text(baseline="top", align="left", dx=4, dy=4, color="gray").encode(
            x="at_c:Q", y=alt.value(0), text="words:N"
        ),
        level.mark_rule(strokeDash=[6, 3], size=2, color="gray").encode(y="h:Q"),
        level.mark_text(baseline="bottom", align="left", dx=4, dy=-3, color="gray").encode(
            x=alt.value(0), y="h:Q", text="words:N"
        ),
    ]
