"""Life over temperature as a chart: a function from a table to a chart."""

from collections.abc import Sequence
from typing import Any

import altair as alt

from subsearch.display.chart_marks import COLOURS, QUIET, level, upright
from subsearch.display.words import span_text, years_text
from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import Candidate
from subsearch.search.requirement import Requirement
from subsearch.search.sweep import COOLEST_C, LifeAt

ABOVE_Y = 3  # room above the ceiling for the words of the working point


def life_chart(
    lives: Sequence[LifeAt],
    working_c: float | None,
    looked_at: str = "",
    wanted_y: float | None = None,
    width: int = 440,
) -> alt.LayerChart:
    """One line a part, told apart by dash and point as well as by colour; the span of the one looked at as a band.

    Args:
        lives: of each part at several temperatures.
        working_c: where the part works [°C]: an upright line, and a ring on the line of the part looked at.
        looked_at: the name of that part; where it has no line, the first that has one takes its place.
        wanted_y: the life wanted [years]: a level line.
        width: of the chart, in pixels.

    >>> life_chart([LifeAt("A", 85.0, 2.0)], 55).to_dict()["layer"][0]["encoding"]["y"]["title"]
    'Life [years]'
    """
    drawn = [one for one in lives if one.years is not None]
    names = list(dict.fromkeys(one.name for one in drawn))
    first = looked_at if looked_at in names else "".join(names[:1])
    rows = [
        {
            "part": one.name,
            "at_c": one.working_c,
            "years": one.years,
            "shortest_y": one.shortest_y,
            "longest_y": one.longest_y,
            "looked_at": one.name == first,
        }
        for one in sorted(drawn, key=lambda one: one.name == first)  # the last lies on top of the others
    ]
    layers = [*_lines(rows, names, width), *_levels(drawn, wanted_y, width), *_here(drawn, working_c, first)]
    return alt.LayerChart(layer=layers, width=width, height=220, background="transparent")


def _lines(rows: list[dict[str, Any]], in_order: list[str], width: int) -> list[alt.Chart]:
    """The band of the part looked at, a line for each part, and a point at each temperature."""
    # Colour and shape with the same order and the same legend become one legend; one without entries has no end.
    told = alt.Legend(title=None, orient="bottom", columns=1, labelLimit=width, symbolOpacity=1, symbolDash=[1, 0])
    legend = told if rows else None
    colour = alt.Color("part:N", legend=legend, scale=alt.Scale(domain=in_order, range=COLOURS))
    top = alt.Scale(domain=[0, CEILING_Y + ABOVE_Y])
    axis = alt.Axis(**QUIET, values=[0, 5, 10, 15])
    along = alt.Scale(zero=False) if rows else alt.Scale(domain=[COOLEST_C, 105])
    base = alt.Chart(alt.InlineData(values=rows)).encode(
        x=alt.X("at_c:Q", title="Temperature at the part [°C]", scale=along, axis=alt.Axis(**QUIET)),
        y=alt.Y("years:Q", title="Life [years]", scale=top, axis=axis),
        color=colour,
        tooltip=[
            alt.Tooltip("part:N", title="Part"),
            alt.Tooltip("at_c:Q", title="Temperature [°C]"),
            alt.Tooltip("shortest_y:Q", title="Shortest by the published laws [years]", format=".1f"),
            alt.Tooltip("years:Q", title="Life [years]", format=".1f"),
            alt.Tooltip("longest_y:Q", title="Longest by the published laws [years]", format=".1f"),
        ],
    )
    band = (
        base.mark_area(opacity=0.25)
        .transform_filter("datum.looked_at")
        .encode(y=alt.Y("shortest_y:Q", title="Life [years]", scale=top, axis=axis), y2="longest_y:Q")
    )
    told_apart = alt.Scale(domain=in_order)
    lines = base.mark_line().encode(strokeDash=alt.StrokeDash("part:N", scale=told_apart, legend=None))
    points = base.mark_point(filled=True, size=45, opacity=1).encode(
        shape=alt.Shape("part:N", legend=legend, scale=told_apart)
    )
    return [band, lines, points]


def _levels(drawn: Sequence[LifeAt], wanted_y: float | None, width: int) -> list[alt.Chart]:
    """The calendar's ceiling, and the life that is wanted where that is another."""
    if not drawn:
        return []
    ceiling = level("years", CEILING_Y, f"calendar ceiling, {CEILING_Y:g} years", right=width)
    if wanted_y is None or wanted_y >= CEILING_Y:
        return ceiling
    return [*ceiling, *level("years", wanted_y, f"wanted: {wanted_y:g} years", (2, 4), width, below=True)]


def _here(drawn: Sequence[LifeAt], working_c: float | None, looked_at: str) -> list[alt.Chart]:
    """Where the parts work, and a ring around the point of the part looked at."""
    if working_c is None or not drawn:
        return []
    its = _at(drawn, working_c, looked_at)
    temperatures = [one.working_c for one in drawn]
    right_half = working_c > (min(temperatures) + max(temperatures)) / 2
    told = f"works at {working_c:g} °C{'' if its is None or its.years is None else f': {years_text(its.years)}'}"
    rings = [] if its is None else [{"at_c": working_c, "years": its.years}]
    ring = alt.Chart(alt.InlineData(values=rings)).mark_point(size=200, strokeWidth=2.5, color="gray", opacity=1)
    return [*upright(working_c, told, "right" if right_half else "left"), ring.encode(x="at_c:Q", y="years:Q")]


def _at(lives: Sequence[LifeAt], working_c: float, name: str) -> LifeAt | None:
    return next((one for one in lives if one.name == name and one.working_c == working_c), None)


def what_to_see_in_lives(lives: Sequence[LifeAt], need: Requirement, parts: Sequence[Candidate]) -> str:
    """The chart in words: how long the part looked at lasts where it works, who lasts longest, who has no line and why.

    Args:
        lives: those that the chart is drawn from.
        need: what is asked, with the temperature at which the parts work.
        parts: those that the chart was asked for, the one looked at first.
    """
    with_a_line = {one.name for one in lives if one.years is not None}
    lined = [one for one in parts if one.name in with_a_line]
    said = _where_they_work(lives, need, lined)
    if lined:
        has_span = any(one.name == lined[0].name and one.shortest_y is not None for one in lives)
        band = [f"The band is the span over the published laws for {lined[0].name}."] if has_span else []
        said += [*band, "Where a line lies on the ceiling, the calendar ends it and not the heat."]
    without = [one for one in parts if one.name not in with_a_line]
    unlimited = [one.name for one in without if one.made["not_worn_by_heat"]]
    unknown = [one.name for one in without if not one.made["not_worn_by_heat"]]
    return " ".join([*said, *_no_line(unlimited, "not limited by heat"), *_no_line(unknown, "life not stated")])


def _no_line(names: Sequence[str], reason: str) -> list[str]:
    return [f"{_and(names)} {'have' if names[1:] else 'has'} no line: {reason}."] if names else []


def _where_they_work(lives: Sequence[LifeAt], need: Requirement, parts: Sequence[Candidate]) -> list[str]:
    """How long the first lasts at the working temperature, and which of all that have a line lasts longest."""
    years = {one.name: one.years for one in lives if one.working_c == need.working_c and one.years is not None}
    first = parts[0] if parts else None
    told = []
    if first is not None and first.name in years:
        span = span_text(first, need.temperature_uncertain_k)
        told.append(
            f"{first.name} lasts {years_text(years[first.name])} at {need.working_c:g} °C{f', {span}' if span else ''}."
        )
    if len(years) > 1:
        most = max(years.values())
        longest = [one.name for one in parts if years.get(one.name) == most]
        verb = "last" if longest[1:] else "lasts"
        equally = len(longest) == len(years)
        told.append(f"{'All last equally long' if equally else f'{_and(longest)} {verb} longest'}: {years_text(most)}.")
    return told


def _and(names: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)
