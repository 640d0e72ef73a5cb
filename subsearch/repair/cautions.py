"""Which cautions a position calls for: beside choosing, on the page and in print. None says that a part is safe."""

from datetime import date

from subsearch.formulas.carriers import Carrier
from subsearch.formulas.discharge import bleed_ohm, discharge_s, start_w
from subsearch.formulas.envelope import VENTED_FROM_MM, vent_clearance_mm
from subsearch.formulas.voltage import TOUCH_C, TOUCH_V
from subsearch.repair.asking import Asked, left_alone, words_of
from subsearch.repair.fitting import fitting_cautions, free_above_mm
from subsearch.repair.marks import mark_of, may_be_polar
from subsearch.repair.sections import section_values
from subsearch.repair.trade_cautions import trade_cautions
from subsearch.search.answers import Candidate
from subsearch.terms import PAPER
from subsearch.units import show

HOLD_CHARGE = ("reservoir",)
GENERAL = (
    "Local codes and licensed practice come first. Nothing here says that a part is safe.",
    "Mains and live-chassis sets: work behind an isolating transformer; a lamp or a variable transformer does not "
    "isolate.",
    "Reservoir capacitors stay charged. Discharge each through a resistor, never with a screwdriver, then measure; "
    "treat it as live until measured, and measure again before you touch it: some charge comes back.",
    "Polarity: the stripe on a radial can is minus, the groove end of an axial can is plus, the mark on a tantalum "
    "bead is plus. The print on the board can be wrong: trust the circuit.",
    "First power-up: eye protection on, current limited, hands off.",
    "Never block a vent, and keep the clearance above it. Vents point up or away from you.",
    "Clean off leaked electrolyte and old glue before you fit a new part: both conduct and eat copper.",
    "Insulating pads, bushes and paste under power transistors go back where they were, and are checked for "
    "insulation before power.",
    "Oil-filled parts of that age may hold PCB: do not open them; gloves, and disposal by the local rules.",
    "Old solder contains lead: ventilate, and wash your hands.",
)
NO_CLASS = "It stands on the mains and its safety class is not filled in: find out whether it must be X or Y."
MAYBE_CLASS = "If it stands across the mains, or from the mains to earth or chassis, only an X or Y part may be taken."


def cautions(asked: Asked, candidate: Candidate | None, today: date | None = None) -> tuple[str, ...]:
    """The cautions that one position calls for, with the part chosen for it if there is one; its age is told today."""
    said = [*_of_the_place(asked), *_charge(asked, candidate)]
    if candidate is not None:
        said += _of_the_part(asked, candidate, today or date.today())
    elif asked.position.polarity == "polar":
        said.append("Polarity: note which way the old part stands before you take it out.")
    return tuple(said)


def _of_the_place(asked: Asked) -> list[str]:
    position, said = asked.position, []
    if position.mains:
        said.append("Mains: unplug, and work behind an isolating transformer. Local codes and licensed practice first.")
    if position.safety_class:
        said.append(
            f"Class {position.safety_class} by the old marking: only a part of that class or stricter, with its "
            "approval marks, from a source that shows where it came from. Never an ordinary part."
        )
    elif position.mains:
        said.append(NO_CLASS if needs_its_class(asked) else MAYBE_CLASS)
    return said + _of_the_old_part(asked)


EACH_SECTION = " The can holds several: do so with each section, and measure each."


def needs_its_class(asked: Asked) -> bool:
    """Whether a part of a safety class belongs there, but nobody has recorded which: then no part may be taken."""
    position = asked.position
    return bool(position.mains) and position.role in (None, "interference suppression") and not position.safety_class


def _of_the_old_part(asked: Asked) -> list[str]:
    position, said = asked.position, []
    words = words_of(position.old_technology)
    if "oil" in words:
        said.append("The old part is oil-filled and may hold PCB: do not open it.")
    if kind := left_alone(position.old_technology):
        said.append(f"The old part is {kind}, which seldom fails: leave it unless it measures wrong.")
    if PAPER in words and position.mains:
        said.append("Paper parts on the mains are replaced whatever they read.")
    return said


def _charge(asked: Asked, candidate: Candidate | None) -> list[str]:
    """How to empty what stands there, the old part or the new one, whichever can hold more."""
    position, part = asked.position, {} if candidate is None else candidate.part
    measured = [abs(v) for v in (position.dc_lowest_v, position.dc_highest_v) if v is not None]
    held_v = max(abs(position.supply_rail_v or 0.0), max(measured, default=0.0) + (position.ac_peak_v or 0.0))
    sections = section_values(position)
    capacitance_f = max(position.capacitance_f or 0.0, part.get("capacitance_f") or 0.0, *sections)
    each = EACH_SECTION if position.sections else ""
    if position.role not in HOLD_CHARGE:
        dangerous = held_v > TOUCH_V and held_v * capacitance_f > TOUCH_C
        return [_discharge("Charge", held_v, capacitance_f) + each] if dangerous else []
    old = [one.volts * (2**0.5 if one.ac else 1) for one in (position.rated_voltage, position.old_rating) if one]
    start_v = held_v or max(*old, part.get("rated_v") or 0.0, 0.0)
    return [_discharge("Reservoir", start_v, capacitance_f) + each] if start_v and capacitance_f else []


def _of_the_part(asked: Asked, candidate: Candidate, today: date) -> list[str]:
    part, position, said = candidate.part, asked.position, []
    if may_be_polar(part["technology"], part["polarity"]):
        towards = f" The old plus faced {position.plus_towards}." if position.plus_towards else ""
        said.append(
            f"Polarity: {mark_of(part['technology'], part['shape']).words}.{towards} Trust the circuit, not the print."
        )
    fitting = fitting_cautions(asked.requirement, candidate)
    return [*said, *_vent(candidate), *fitting, *trade_cautions(asked, candidate, today)]


def _discharge(what: str, start_v: float, capacitance_f: float) -> str:
    """How to empty this very capacitor, and how long it takes."""
    if start_v <= TOUCH_V:
        return (
            f"{what}: it holds its charge at up to {show(start_v, 'V')}. Discharge it through a resistor, then "
            "measure: a short melts metal even where the voltage is low."
        )
    resistor: Carrier = bleed_ohm(start_v)
    seconds = discharge_s(resistor, capacitance_f, start_v, TOUCH_V)
    return (
        f"{what}: discharge it through {show(resistor, 'Ω')} ({start_w(start_v, resistor):.1f} W at the start); "
        f"from {show(start_v, 'V')} to {show(TOUCH_V, 'V')} takes {_time(seconds)}. Treat it as live until measured."
    )


def _time(seconds: float) -> str:
    return f"{seconds:.1f} s" if seconds >= 0.1 else "less than 0.1 s"


def _vent(candidate: Candidate) -> list[str]:
    """Whether a vented can has the clearance above it that it needs, where the headroom is known."""
    part, margin = candidate.part, free_above_mm(candidate)
    diameter = part["across_mm"]
    if part["shape"] != "can" or diameter is None or margin is None or part["vent"] == "none":
        return []
    if part["vent"] is None and diameter < VENTED_FROM_MM:
        return []
    needed = vent_clearance_mm(diameter)
    if margin >= needed:
        return []
    free = f"{show(round(margin, 2) + 0.0, 'mm')} does" if margin >= 0 else "nothing does"
    return [f"Vent: {show(needed, 'mm')} should stay free above this can; {free}."]
