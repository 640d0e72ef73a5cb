"""What several charts draw alike: quiet axes, the upright where a part works, levels, and colours for both themes."""

from typing import Any, Literal

import altair as alt

QUIET: dict[str, Any] = {"gridColor": "gray", "gridOpacity": 0.3, "domainColor": "gray", "tickColor": "gray"}
"""Axes that keep back, on a light page and on a dark one."""
COLOURS = ["#3f7fbf", "#c9651a", "#3a9448", "#b25aac", "#96783a", "#2a9292"]
"""Each stands out from a light and from a dark page; no meaning hangs on them alone."""
TAKES_THEME = "gray"  # text that a page with a theme of its own dresses by its style sheet


def upright(at_c: float, words: str, align: Literal["left", "right"] = "left") -> list[alt.Chart]:
    """A dashed upright line at a temperature [°C], its words at the top.

    >>> upright(42, "works at 42 °C")[1].to_dict()["encoding"]["text"]["field"]
    'words'
    """
    here = alt.Chart(alt.InlineData(values=[{"at_c": at_c, "words": words}])).encode(x="at_c:Q")
    aside = 4 if align == "left" else -4
    return [
        here.mark_rule(strokeDash=[2, 2], size=2, color="gray"),
        here.mark_text(baseline="top", align=align, dx=aside, dy=4, color=TAKES_THEME).encode(
            y=alt.value(0), text="words:N"
        ),
    ]


def level(
    field: str, value: float, words: str, dash: tuple[int, int] = (6, 3), right: int = 0, below: bool = False
) -> list[alt.Chart]:
    """A dashed level line; its words above or below it, at the left end, or at the right one, `right` pixels off."""
    there = alt.Chart(alt.InlineData(values=[{field: value, "words": words}])).encode(y=f"{field}:Q")
    told = there.mark_text(
        align="right" if right else "left",
        baseline="top" if below else "bottom",
        dx=-4 if right else 4,
        dy=4 if below else -3,
        color=TAKES_THEME,
    )
    level_line = there.mark_rule(strokeDash=list(dash), size=2, color="gray")
    return [level_line, told.encode(x=alt.value(right), text="words:N")]
