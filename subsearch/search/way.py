"""One way of mounting: its name, its sentence, the parts it suits, and the margins it must leave.

A margin is a number made in derived_ways.py, asked only where the need states what it is measured against. The margins
of the room and those of the leads stand apart, so that a report can tell one from the other; a way holds if all hold.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from subsearch.formulas.cans import LONGER_LEAD_MM
from subsearch.formulas.geometry import NEAR_MM
from subsearch.search.stated import Stated
from subsearch.units import show

USUAL_LEAD_MM = LONGER_LEAD_MM[0]
WITHIN_MM = NEAR_MM  # sizes on a grid of 0.1 mm would otherwise refuse what fits exactly


@dataclass(frozen=True)
class Margin:
    """The name of a number in derived_ways.py, the field of the need that asks for it, and its words.

    One that asks `of_stated` of a part that does not state it is taken as left, but not of cut leads, nor where more is
    `needed` than leads usually have.
    """

    made: str
    asked_by: str
    words: str
    of_stated: str = ""
    needed: str = ""

    def left(self, stated: Stated) -> str:
        """SQL that is true where the margin is left or not asked, null where it can't be told."""
        left = f"{self.made} >= -{WITHIN_MM}"
        if self.of_stated:
            usual = f" and {self.needed} <= {USUAL_LEAD_MM}" if self.needed else ""
            uncut = f"part.lead_form is distinct from 'cut'{usual}"
            left = f"case when part.{self.of_stated} is not null then {left} when {uncut} then true end"
        return stated.where(self.asked_by, left)


@dataclass(frozen=True)
class Way:
    """A way of mounting a part: `key` ends the names of its columns, `suits` is SQL that is never null.

    It is looked at where the need states all of the fields it is `asked_by`, and differs from the ways before it only
    where some need states one of those that `matters`.
    """

    key: str
    name: str
    sentence: str
    suits: str
    margins: tuple[Margin, ...]
    leads: tuple[Margin, ...]
    asked_by: tuple[str, ...] = ()
    matters: tuple[str, ...] = ()

    def asked(self, stated: Stated) -> str:
        """SQL that is true where the need asks to look at this way; never null."""
        asked = [stated.asked(self.asked_by, together=True)] if self.asked_by else []
        asked += [stated.asked(self.matters)] if self.matters else []
        if "false" in asked:
            return "false"
        return " and ".join(f"({one})" for one in asked if one != "true") or "true"

    def suiting(self, stated: Stated) -> str:
        """SQL that is true where the part can be mounted so, whatever its size; never null."""
        asked = self.asked(stated)
        return f"({self.suits})" if asked == "true" else f"({self.suits}) and {asked}"

    def columns(self, stated: Stated) -> dict[str, str]:
        """SQL of two columns: whether the leads meet the holes in this way, and whether the body fits the room.

        Each is true where every margin asked is left, null where one can't be told and none fails.
        """
        suits = self.suiting(stated)
        return {
            f"leads_{self.key}": _all_left(suits, self.leads, stated),
            f"room_{self.key}": _all_left(suits, self.margins, stated),
        }

    def tightest(self, stated: Stated) -> str:
        """SQL for the smallest margin of the room asked [mm]; null where one can't be told, or none is asked."""
        asked = [margin for margin in self.margins if stated.says(margin.asked_by)]
        if not asked:
            return "null::double"
        always = [stated.asked((m.asked_by,)) == "true" for m in asked]
        sizes = ", ".join(
            m.made if it_is else f"case when need.{m.asked_by} is not null then {m.made} end"
            for m, it_is in zip(asked, always, strict=True)
        )
        unknown = " or ".join(
            f"{m.made} is null" if it_is else f"(need.{m.asked_by} is not null and {m.made} is null)"
            for m, it_is in zip(asked, always, strict=True)
        )
        return f"case when {unknown} then null else least({sizes}) end"

    def describe(self, made: Mapping[str, float | None], need: Mapping[str, object]) -> str:
        """The margins of the room that are short or not stated, in words and mm, else all that are asked."""
        return _told(self.margins, made, need)

    def describe_leads(self, made: Mapping[str, float | None], need: Mapping[str, object]) -> str:
        """The same of the leads."""
        return _told(self.leads, made, need)


def _all_left(suits: str, margins: tuple[Margin, ...], stated: Stated) -> str:
    left = [margin.left(stated) for margin in margins]
    return " and ".join([suits, *(one for one in left if one != "true")])


def _told(margins: tuple[Margin, ...], made: Mapping[str, float | None], need: Mapping[str, object]) -> str:
    asked = [(margin, made[margin.made]) for margin in margins if need.get(margin.asked_by) is not None]
    wrong = [one for one in asked if (not one[0].of_stated if one[1] is None else one[1] < -WITHIN_MM)]
    unknown = [one for one in asked if one[1] is None]
    return ", ".join(f"{margin.words} {_spare(left)}" for margin, left in wrong or unknown or asked)


def _spare(margin: float | None) -> str:
    if margin is None:
        return "can't be told"
    size = show(abs(round(margin, 3)), "mm")
    return f"{size} to spare" if margin >= -WITHIN_MM else f"{size} short"
