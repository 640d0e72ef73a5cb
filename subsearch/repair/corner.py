"""What a coupling capacitor does to the lowest tones, where the resistances on its sides are recorded."""

from subsearch.formulas.coupling import corner_hz
from subsearch.repair.positions import Position
from subsearch.search.answers import Candidate
from subsearch.units import show


def corner_note(position: Position, candidate: Candidate | None) -> tuple[str, ...]:
    """Its corner frequency with the chosen part and with the old one; nothing where no resistance is recorded."""
    new_f = None if candidate is None else candidate.part["capacitance_f"]
    resistance_ohm = (position.source_ohm or 0.0) + (position.load_ohm or 0.0)
    if position.role != "coupling" or not resistance_ohm or new_f is None:
        return ()
    at = f"{show(new_f, 'F')} and {show(resistance_ohm, 'Ω')} ({_sides(position)})"
    told = f"Low tones: with {at} they are 3 dB down at {show(corner_hz(resistance_ohm, new_f), 'Hz')}"
    old_f = position.capacitance_f
    if old_f is None:
        return (f"{told}.",)
    if new_f == old_f:
        return (f"{told}, as with the old part.",)
    return (f"{told}; with the old {show(old_f, 'F')} at {show(corner_hz(resistance_ohm, old_f), 'Hz')}.",)


def _sides(position: Position) -> str:
    """Which resistances are known; one that is not lies in series too, and lowers the corner."""
    if position.source_ohm is None:
        return "the load; the source, which is not recorded, can only lower it"
    return "the source; the load, which is not recorded, lowers it" if position.load_ohm is None else "source and load"
