"""Ways of mounting: each one a row with its name, the margins it must leave, and its sentence.

A margin is a number made in derived.py, asked only where the need states the room on that side. A way holds if every
margin asked holds; a part fits if any way holds.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from subsearch.formulas.geometry import NEAR_MM
from subsearch.units import show

WITHIN_MM = NEAR_MM  # sizes on a grid of 0.1 mm would otherwise refuse what fits exactly


@dataclass(frozen=True)
class Margin:
    """The name of a number in derived.py, the field of the need that asks for it, and its words."""

    made: str
    asked_by: str
    words: str


@dataclass(frozen=True)
class Way:
    """A way of mounting a part."""

    name: str
    sentence: str
    margins: tuple[Margin, ...]

    def asked(self) -> str:
        """SQL that is true where the need states any of the room; never null."""
        return f"coalesce({', '.join(f'need.{margin.asked_by}' for margin in self.margins)}) is not null"

    def holds(self) -> str:
        """SQL that is true where every margin asked is left, null where one can't be told and none fails."""
        return " and ".join(f"(need.{m.asked_by} is null or {m.made} >= -{WITHIN_MM})" for m in self.margins)

    def tightest(self) -> str:
        """SQL for the smallest margin asked [mm]; null where one of them can't be told, or none is asked."""
        asked = ", ".join(f"case when need.{m.asked_by} is not null then {m.made} end" for m in self.margins)
        unknown = " or ".join(f"(need.{m.asked_by} is not null and ({m.made}) is null)" for m in self.margins)
        return f"case when {unknown} then null else least({asked}) end"

    def describe(self, made: Mapping[str, float | None], need: Mapping[str, object]) -> str:
        """The margins that are short or not stated, in words and mm, else all that are asked."""
        asked = [(margin.words, made[margin.made]) for margin in self.margins if need.get(margin.asked_by) is not None]
        wrong = [(words, left) for words, left in asked if left is None or left < -WITHIN_MM]
        return ", ".join(f"{words} {_spare(left)}" for words, left in wrong or asked)


def _spare(margin: float | None) -> str:
    if margin is None:
        return "not stated"
    size = show(abs(round(margin, 3)), "mm")
    return f"{size} to spare" if margin >= -WITHIN_MM else f"{size} short"


UPRIGHT = Way(
    "upright",
    "standing as it was made, centred on the two holes",
    (
        Margin("left_margin_mm", "left_mm", "left"),
        Margin("right_margin_mm", "right_mm", "right"),
        Margin("front_margin_mm", "front_mm", "front"),
        Margin("back_margin_mm", "back_mm", "back"),
        Margin("round_margin_mm", "free_diameter_mm", "across the free diameter"),
        Margin("headroom_margin_mm", "headroom_mm", "headroom"),
    ),
)
WAYS = (UPRIGHT,)
