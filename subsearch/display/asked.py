"""What a position asks, in words: every condition of its requirement, each with a label."""

from subsearch.display.words import together
from subsearch.search.answers import printed
from subsearch.search.requirement import Requirement
from subsearch.terms import TECHNOLOGIES
from subsearch.units import show

SIDES = ("left", "right", "front", "back", "headroom", "free_diameter")


def conditions(need: Requirement) -> list[tuple[str, str]]:
    """Label and words of everything that is asked; what asks nothing is left out.

    >>> conditions(Requirement(rated_v=25, hole_spacing_mm=5))[:2]
    [('value', '25 V or more'), ('technology', 'all but tantalum, paper')]
    """
    told = {
        "value": "; ".join(one for one in (_capacitance(need), _voltage(need)) if one),
        "polarity": "bipolar: the voltage here may reverse" if need.reverses else "",
        "technology": _technology(need),
        "leads": _leads(need),
        "space": _space(need),
        "heat": _heat(need),
        "ripple": _at(need.ripple_a, "A", need.ripple_hz),
        "ESR": _esr(need),
        "leakage": "" if need.leakage_most_a is None else f"{show(need.leakage_most_a, 'A')} or less when new",
        "safety": f"class {need.safety_class} or stricter, traceable source" if need.safety_class else "",
        "offer": _offer(need),
    }
    return [(label, words) for label, words in told.items() if words]


def unasked(need: Requirement) -> list[str]:
    """What of value and voltage a builder might take for asked, and is not.

    >>> unasked(Requirement(capacitance_f=47e-6)), unasked(Requirement(safety_class="X2", capacitance_f=1e-7))
    (['voltage'], [])
    """
    free = need.rated_v is None and need.rated_ac_v is None and not need.safety_class and not need.voltage_measured
    return [*(["capacitance"] if need.capacitance_f is None else []), *(["voltage"] if free else [])]


def _capacitance(need: Requirement) -> str:
    low, high = need.capacitance_low_f, need.capacitance_high_f
    if low is None and high is None:
        return ""
    old = f" for {show(need.capacitance_f, 'F')}" if need.capacitance_f is not None else ""
    return f"{_between(low, high, 'F')}{old}"


def _voltage(need: Requirement) -> str:
    asked = [f"{show(need.rated_v, 'V')} or more"] if need.rated_v is not None else []
    return "; ".join(asked + ([f"{show(need.rated_ac_v, 'V')} a.c. or more"] if need.rated_ac_v is not None else []))


def _technology(need: Requirement) -> str:
    """The technologies taken, or those left out where they are fewer."""
    if need.technologies is None:
        return ""
    without = [one for one in TECHNOLOGIES if one not in need.technologies]
    if len(without) < len(need.technologies):
        return f"all but {', '.join(without)}" if without else ""
    return ", ".join(need.technologies)


def _leads(need: Requirement) -> str:
    holes = f"holes {show(need.hole_spacing_mm, 'mm')} apart" if need.hole_spacing_mm is not None else ""
    wide = f"of {show(need.hole_diameter_mm, 'mm')}" if need.hole_diameter_mm is not None else ""
    plated = {True: "plated", False: "not plated", None: ""}[need.hole_plated] if wide else ""
    lie = "may lie flat" if need.may_lie_flat else ""
    return ", ".join(one for one in (need.lead_style or "", holes, wide, plated, lie) if one)


def _space(need: Requirement) -> str:
    sizes = [(side.replace("_", " "), getattr(need, f"{side}_mm")) for side in SIDES]
    return together([(side, show(size, "")) for side, size in sizes if size is not None])


def _heat(need: Requirement) -> str:
    if need.working_c is None:
        return ""
    off = f", {show(need.temperature_uncertain_k, 'K')} up or down" if need.temperature_uncertain_k else ""
    return f"works at {printed('working_c', need.working_c)}{off}{_life(need)}"


def _life(need: Requirement) -> str:
    """The life wanted, which is asked only where the temperature is known too."""
    if need.life_wanted_y is None:
        return ""
    return f"; lasts {need.life_wanted_y:g} years or more, {need.hours_a_day:g} hours a day"


def _esr(need: Requirement) -> str:
    low, high = need.esr_least_ohm, need.esr_most_ohm
    return "" if low is None and high is None else f"{_between(low, high, 'Ω')} at {show(need.esr_hz, 'Hz')}"


def _at(value: float | None, unit: str, hz: float | None) -> str:
    """A value with its frequency, where one is given."""
    at = f" at {show(hz, 'Hz')}" if hz is not None else ""
    return "" if value is None else f"{show(value, unit)}{at}"


def _between(low: float | None, high: float | None, unit: str) -> str:
    if low is None or high is None:
        return f"{show(low, unit)} or more" if high is None else f"{show(high, unit)} or less"
    return f"{show(low, unit)} to {show(high, unit)}"


def _offer(need: Requirement) -> str:
    stock = f", {need.pieces} or more in stock" if need.in_stock else ""
    return f"{' or '.join(need.conditions)}{stock}"
