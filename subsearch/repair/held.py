"""What is not said of a position itself, but holds for it in its repair."""

from subsearch.repair.folder import Repair
from subsearch.repair.positions import COLUMNS, Position, values_of
from subsearch.repair.trial import UNNAMED, Trial
from subsearch.units import show


def held_by(repair: Repair, trial: Trial) -> dict[str, str]:
    """The texts of what the repair says of a position: its section's temperature, how many, hours a day, years wanted.

    >>> from pathlib import Path
    >>> organ = Repair(Path(), "", "", 4.0, None, {"amplifier": 55.0}, {"main": 2}, ())
    >>> held_by(organ, Trial({"card": "main", "section": "amplifier"}))
    {'temperature_c': '55 °C', 'pieces': '2', 'hours_a_day': '4', 'years_wanted': ''}
    """
    known, _ = values_of({name: text for name, text in trial.cells.items() if name in COLUMNS})
    position = repair.placed(Position(**{"reference": UNNAMED} | known))
    around, wanted = repair.section_c.get(position.section or ""), repair.years_wanted
    return {
        "temperature_c": "" if around is None else show(around, "°C"),
        "pieces": str(repair.pieces(position)),
        "hours_a_day": show(repair.hours_a_day, ""),
        "years_wanted": "" if wanted is None else show(wanted, ""),
    }
