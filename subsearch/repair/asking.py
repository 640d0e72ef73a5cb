"""Each position turned into a requirement, with a note for everything that was decided on the way."""

import re
from dataclasses import dataclass

from subsearch.formulas.voltage import TOUCH_V, keeps_its_sign, modern_v, needed_v
from subsearch.reading.markings import read_marking
from subsearch.repair.folder import Repair
from subsearch.repair.old_values import counts_as
from subsearch.repair.positions import Position, Rating
from subsearch.search.requirement import Requirement
from subsearch.units import show

UNPOLARISED = {"film", "paper", "ceramic", "polystyrene", "polyester", "mica"}
SAME_VALUE = 0.011  # rounding between a marking and what is typed
LEFT_ALONE = ("polystyrene", "silver mica")  # old kinds that seldom fail: common practice
AS_RECORDED = (
    "role", "capacitance_f", "old_tolerance_pct", "lead_style", "hole_spacing_mm", "hole_diameter_mm",
    "free_diameter_mm", "left_mm", "right_mm", "front_mm", "back_mm", "headroom_mm", "ripple_a", "ripple_hz",
    "esr_least_ohm", "esr_most_ohm", "esr_hz", "leakage_most_a", "safety_class", "pinned_maker", "pinned_part_number",
)  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """A position, what it asks (None: not asked), and the notes on how that came about."""

    position: Position
    requirement: Requirement | None
    notes: tuple[str, ...]


def ask(repair: Repair, position: Position) -> Asked:
    """What one position of a repair asks.

    Raises:
        RequirementError: the position contradicts itself, or wants more life than the ceiling.
    """
    if position.capacitance_f is None and position.rated_voltage is None:
        return Asked(
            position, None, (f"Not asked: neither capacitance nor rated voltage is filled in.{_read(position)}",)
        )
    notes: list[str] = _against_marking(position)
    if position.capacitance_f is None:
        notes.append("The capacitance is empty and therefore not asked: look at it before you take a part.")
    if position.role is None:
        notes.append("No role is given: a window of −20…+50 % is taken for the capacitance.")
    volts, ac_volts = _ratings(position, notes)
    own_k = position.temperature_uncertain_k
    requirement = Requirement(
        reference=position.name,
        pieces=repair.pieces(position),
        rated_v=volts,
        voltage_measured=position.dc_lowest_v is not None and position.dc_highest_v is not None,
        rated_ac_v=ac_volts,
        reverses=_reverses(position, notes),
        hole_plated=position.plated,
        may_lie_flat=bool(position.may_lie_flat),
        working_c=_working_c(repair, position, notes),
        temperature_uncertain_k=repair.temperature_uncertain_k if own_k is None else own_k,
        hours_a_day=repair.hours_a_day,
        life_wanted_y=repair.years_wanted,
        **{name: getattr(position, name) for name in AS_RECORDED},
    )
    if position.ripple_a is None and position.role in ("reservoir", "regulator output"):
        notes.append("No ripple current is given, so life is reckoned without its heat.")
    return Asked(position, requirement, tuple(notes))


def _read(position: Position) -> str:
    """What the marking proposes: said, never filled in by itself."""
    reading = read_marking(position.marking or "")
    if reading.capacitance_f is None:
        return f' Nothing certain can be read in the marking "{position.marking}".' if position.marking else ""
    volts = reading.rated_v or reading.rated_ac_v
    value = " ".join([show(reading.capacitance_f, "F"), *([show(volts, "V")] if volts else [])])
    doubts = "".join(f" {doubt}" for doubt in reading.doubts)
    return f' The marking "{position.marking}" reads as {value}: fill that in if you agree.{doubts}'


def _against_marking(position: Position) -> list[str]:
    """A doubt where the value filled in is not the one printed on the old part."""
    printed = read_marking(position.marking or "").capacitance_f
    if printed is None or position.capacitance_f is None or abs(printed / position.capacitance_f - 1) < SAME_VALUE:
        return []
    return [
        f'The marking "{position.marking}" reads as {show(printed, "F")}, but {show(position.capacitance_f, "F")} is '
        "filled in and asked: look at it again."
    ]


def _ratings(position: Position, notes: list[str]) -> tuple[float | None, float | None]:
    """The d.c. and the a.c. rating needed [V]."""
    rating = position.rated_voltage
    if position.safety_class:
        return None, _old_ac_v(position, notes)
    if rating is not None and rating.ac:
        return None, rating.volts
    marked = None if rating is None else _as_marked(rating, notes)
    measured = position.dc_lowest_v is not None and position.dc_highest_v is not None
    volts = _measured(position, marked, notes) if measured else _at_least(position, marked, notes)
    if volts is None and not measured:
        notes.append("The rated voltage is empty and therefore not asked: look at it before you take a part.")
    rail = abs(position.supply_rail_v or 0.0)
    if volts is not None and rail > volts and position.fault_v is None:
        notes.append(f"The rail is {show(rail, 'V')}: measure whether it can arrive here, and then fill in fault_v.")
    return volts, None


def _measured(position: Position, marked: float | None, notes: list[str]) -> float | None:
    """The rating that the measured voltages need [V]; None where nothing stands across the part."""
    lowest, highest = position.dc_lowest_v or 0.0, position.dc_highest_v or 0.0
    peak, fault = position.ac_peak_v or 0.0, abs(position.fault_v or 0.0)
    needed: float = needed_v(lowest, highest, peak, fault)
    if needed == 0:
        notes.append("Measured 0 V d.c. and nothing on top, so any rated voltage will do.")
        return None
    on_top = f", {show(peak, 'V')} a.c. peak" if peak else ""
    reason = f"{show(fault, 'V')} can arrive in a fault" if needed == fault else "a quarter in reserve"
    old = "" if marked is None else f" The old part was rated {show(marked, 'V')}."
    warm = " If it is higher while the set warms up, fill in fault_v." if marked and TOUCH_V < needed < marked else ""
    notes.append(
        f"Measured {show(lowest, 'V')} to {show(highest, 'V')} d.c.{on_top}: {show(needed, 'V')} is needed "
        f"({reason}).{old}{warm}"
    )
    return needed


def _at_least(position: Position, marked: float | None, notes: list[str]) -> float | None:
    """The old rating [V], or more where what little was measured asks for it."""
    given = position.dc_highest_v if position.dc_lowest_v is None else position.dc_lowest_v
    if given is not None:
        notes.append("Only one of lowest and highest d.c. is filled in, so it can raise the need but not lower it.")
    needed: float = needed_v(given or 0.0, given or 0.0, position.ac_peak_v or 0.0, position.fault_v or 0.0)
    if needed > (marked or 0.0):
        notes.append(f"What was measured needs {show(needed, 'V')}.")
    return max(needed, marked or 0.0) or None


def _old_ac_v(position: Position, notes: list[str]) -> float | None:
    """The a.c. rating [V] that a part of a safety class must have: at least the old one's."""
    ratings = [one.volts for one in (position.rated_voltage, position.old_rating) if one is not None and one.ac]
    if not ratings:
        notes.append("No old a.c. rating is recorded, so only the class is asked: look at the old part or the mains.")
    return max(ratings, default=None)


def _as_marked(rating: Rating, notes: list[str]) -> float:
    volts: float = modern_v(rating.volts)
    if volts != rating.volts:
        notes.append(counts_as(rating.volts, volts))
    return volts


def _reverses(position: Position, notes: list[str]) -> bool:
    """Whether a bipolar part is needed."""
    lowest, highest = position.dc_lowest_v, position.dc_highest_v
    if lowest is not None and highest is not None and (lowest or highest or position.polarity != "bipolar"):
        dips = lowest < 0 < highest
        if keeps_its_sign(lowest, highest, position.ac_peak_v or 0.0) != 1 or (dips and position.polarity == "bipolar"):
            notes.append("The voltage changes its sign here: only a part without polarity is taken.")
            return True
        if dips:
            notes.append("The voltage dips a little to the other sign: a polar part stands that, a bipolar one better.")
        return False
    if position.polarity == "bipolar":
        notes.append("The old part was bipolar and no d.c. of one sign was measured: polar parts are refused.")
        return True
    if position.polarity is None and not _without_polarity(position.old_technology):
        notes.append("The polarity found is not recorded, so it is not asked: look which way the old part stood.")
    return False


def words_of(old_technology: str | None) -> set[str]:
    """The words in which the builder wrote what the old part is."""
    return set(re.findall(r"[a-z]+", (old_technology or "").lower()))


def left_alone(old_technology: str | None) -> str | None:
    """The old kind that seldom fails, where the old part is one."""
    return next((kind for kind in LEFT_ALONE if words_of(old_technology) >= set(kind.split())), None)


def _without_polarity(old_technology: str | None) -> bool:
    return bool(words_of(old_technology) & UNPOLARISED)


def _working_c(repair: Repair, position: Position, notes: list[str]) -> float | None:
    """The temperature at the part [°C]: its own, else its section's, with what a hot part beside it adds."""
    own = position.temperature_c
    around = own if own is not None else repair.section_c.get(position.section or "")
    if around is None:
        notes.append("No temperature is known here, so neither it nor the life is asked.")
        return None
    if position.hot_part_k:
        notes.append(f"A hot part beside it adds {show(position.hot_part_k, 'K')} to {show(around, '°C')}.")
    return around + (position.hot_part_k or 0.0)


def unchecked(position: Position) -> tuple[str, ...]:
    """What is recorded of a position but no condition asks for yet: said, so that nobody takes it for checked."""
    recorded = {
        "plated holes without their diameter": position.plated if position.hole_diameter_mm is None else None,
        "leave to lie flat without the hole spacing": (position.may_lie_flat and position.hole_spacing_mm is None)
        or None,
        "source and load": None if position.role == "coupling" else position.source_ohm or position.load_ohm,
        "readings": position.reading_capacitance_f
        or position.reading_esr_ohm
        or position.reading_tan_delta
        or position.reading_leakage_a,
    }
    return tuple(name for name, value in recorded.items() if value is not None)
