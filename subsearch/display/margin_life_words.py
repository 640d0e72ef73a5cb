"""What the chart of room, life and cost shows, in words; and which parts have a place in it."""

from collections import Counter
from collections.abc import Sequence

from subsearch.display.words import life_text, margin_text
from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import Candidate


def _missing(one: Candidate) -> str:
    """What a part lacks to have a place in the chart."""
    if one.made["tightest_mm"] is None:
        return "room"
    if one.made["years"] is None and not one.made["not_worn_by_heat"]:
        return "life"
    return "cost" if one.made["cost"] is None else ""


def placed(candidates: Sequence[Candidate]) -> list[Candidate]:
    """The parts whose room, life and cost are all known."""
    return [one for one in candidates if not _missing(one)]


def what_to_see_in_margins(candidates: Sequence[Candidate], currency: str | None) -> str:
    """The chart in words: how to read it, which parts nothing beats, and how many are not drawn and why."""
    drawn = placed(candidates)
    said = []
    if len(drawn) > 1:
        said.append(f"{len(drawn)} parts: further right leaves more room, higher lasts longer, smaller costs less.")
        said.append(_all_at_the_ceiling(drawn))
    if drawn:
        said.append(_best([one for one in drawn if one.unbeaten], currency))
    if lacking := Counter(_missing(one) for one in candidates if _missing(one)):
        what = ", ".join(f"{count} without {name}" for name, count in sorted(lacking.items()))
        said.append(f"Not drawn, since that is not stated or not asked: {what}.")
    return " ".join(one for one in said if one)


def _all_at_the_ceiling(drawn: Sequence[Candidate]) -> str:
    if all(_lasts(one) >= CEILING_Y for one in drawn):
        return f"All of them last {CEILING_Y:g} years or are not limited by heat: room and cost decide."
    return ""


def _best(unbeaten: Sequence[Candidate], currency: str | None) -> str:
    """What nothing beats: how many, and which of them comes first in each of the three."""
    if not unbeaten:
        return ""
    roomy = max(unbeaten, key=lambda one: float(one.made["tightest_mm"]))
    lasting = max(unbeaten, key=_lasts)
    cheap = min(unbeaten, key=lambda one: float(one.made["cost"]))
    cost = f"{cheap.made['cost']:.2f} {currency or '(currency not stated)'}"
    if len(unbeaten) == 1:
        return f"Nothing beats {roomy.name}: {margin_text(roomy)} to spare, {life_text(roomy)}, {cost}."
    return (
        f"Nothing beats {len(unbeaten)} of them: {roomy.name} leaves the most room ({margin_text(roomy)}), "
        f"{lasting.name} lasts longest ({life_text(lasting)}), {cheap.name} costs least ({cost})."
    )


def _lasts(one: Candidate) -> float:
    """Years to compare; what heat does not limit comes before all."""
    return float("inf") if one.made["not_worn_by_heat"] else float(one.made["years"])
