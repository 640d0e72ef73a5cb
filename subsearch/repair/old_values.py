"""The modern value and rating that stand for an old capacitor's in its position: a proposal, with its reason."""

from dataclasses import dataclass
from math import isnan

from subsearch.errors import known_word
from subsearch.formulas.as_written import SLACK
from subsearch.formulas.preferred import (
    nearest_preferred_within_f,
    preferred_at_or_above_f,
    preferred_at_or_below_f,
)
from subsearch.formulas.ratings import STANDARD_V, old_as_modern_v
from subsearch.search.roles import role_named, window_f
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, PAPER, TECHNOLOGIES
from subsearch.units import show

CLOSER_SERIES = (FILM_PET, FILM_PP, PAPER, C0G, CLASS_2)


@dataclass(frozen=True)
class ModernValue:
    """What stands for an old value: capacitance and rating, None where nothing does or none was given; and why."""

    capacitance_f: float | None
    rated_v: float | None
    series: str
    sentences: tuple[str, ...]


def usual_series(technology: str | None = None) -> str:
    """The preferred series in which a technology is commonly made: E12 for film and ceramic, else E6.

    Electrolytics are made in E3 and E6. A technology that is not stated counts as one: every E6 value is in E12 too,
    so what is proposed stands in both series. Paper is replaced by film.

    Raises:
        UnknownNameError: no such technology; the text names the nearest.

    >>> usual_series("film PP"), usual_series("wet aluminium"), usual_series()
    ('E12', 'E6', 'E6')
    """
    if technology is not None:
        known_word(technology, TECHNOLOGIES, "a technology")
    return "E12" if technology in CLOSER_SERIES else "E6"


def counts_as(old_v: float, rated_v: float) -> str:
    """The sentence that an old rating [V] counts as another one [V].

    >>> counts_as(64.0, 63.0)
    'The old 64 V counts as 63 V.'
    """
    return f"The old {show(old_v, 'V')} counts as {show(rated_v, 'V')}."


def modern_value(
    old_f: float | None,
    old_v: float | None = None,
    role: str | None = None,
    old_tolerance_pct: tuple[float, float] | None = None,
    series: str = "E6",
) -> ModernValue:
    """The preferred value nearest to an old one inside the capacitance window of its role, and the modern rating.

    Args:
        old_f, old_v: the old capacitance [F] and d.c. rating [V]; None where not stated.
        role: as in the terms; None asks the window of no role.
        old_tolerance_pct: lower and upper [%]; it narrows the window of some roles.
        series: the preferred series to choose from, such as `usual_series` gives.

    Raises:
        UnknownNameError: no such role or series; the text names the nearest.
        RequirementError: the capacitance is not above 0.

    >>> modern = modern_value(8e-6, 350, "coupling")
    >>> modern.capacitance_f, modern.rated_v
    (1e-05, 350.0)
    >>> modern.sentences[0]
    '10 µF is the nearest E6 value to 8 µF (+25 %) within 8 µF to 16 µF.'
    """
    sentences: list[str] = []
    value = None
    if old_f is not None:
        low, high = window_f(old_f, role_named(role), old_tolerance_pct)
        value = nearest_preferred_within_f(old_f, series, low, high)
        sentences.append(_chosen(old_f, value, series, low, high) if value else _none(old_f, series, low, high))
    volts = None if old_v is None else old_as_modern_v(old_v)
    if volts is not None and isnan(volts):
        sentences.append(
            f"No standard rating reaches {show(old_v, 'V')}: the highest is {show(STANDARD_V[-1], 'V')}. "
            "Look for a part made for this voltage. Two in series need balancing resistors, and the voltage is "
            "dangerous."
        )
        volts = None
    elif old_v is not None and volts is not None and volts != old_v:
        sentences.append(counts_as(old_v, volts))
    return ModernValue(value, volts, series, tuple(sentences))


def _chosen(old_f: float, value: float, series: str, low: float, high: float) -> str:
    change = _change(old_f, value)
    if not change:
        return f"{show(value, 'F')} is an {series} value itself."
    text = f"{show(value, 'F')} is the nearest {series} value to {show(old_f, 'F')}{change}"
    text += f" within {show(low, 'F')} to {show(high, 'F')}."
    above = preferred_at_or_above_f(old_f, series)
    if value < old_f and above <= high * (1 + SLACK):  # practice leans upward
        text += f" The next one up, {show(above, 'F')}{_change(old_f, above)}, lies there too."
    return text


def _none(old_f: float, series: str, low: float, high: float) -> str:
    below, above = preferred_at_or_below_f(old_f, series), preferred_at_or_above_f(old_f, series)
    return (
        f"No {series} value lies within {show(low, 'F')} to {show(high, 'F')}: the nearest are {show(below, 'F')}"
        f"{_change(old_f, below)} and {show(above, 'F')}{_change(old_f, above)}. Choose from a closer series, put two "
        "in parallel, or give a window of your own."
    )


def _change(old_f: float, value: float) -> str:
    """How far a value is from the old one, in brackets; nothing where it is the same."""
    change = round(100 * (value / old_f - 1), 6)  # 6.25 % reads the same in every decade
    return f" ({change:+.1f} %)".replace(".0 %", " %").replace("-", "\u2212") if abs(change) >= 0.05 else ""
