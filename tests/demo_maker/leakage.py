"""What each leakage limit of the demo says in numbers: its words are these and no others."""

from decimal import Decimal

from demo_maker.values import Claims, Value

LIMITS = {  # words -> for each µF·V, on top, at least [µA]
    "0.01·C·V or 3 µA, the greater, after 2 min": ("0.01", "0", "3"),
    "0.01·C·V or 0.5 µA, the greater, after 3 min": ("0.01", "0", "0.5"),
    "0.06·C·V + 10 µA after 2 min": ("0.06", "10", "0"),
    "0.03·C·V + 3 µA after 5 min": ("0.03", "3", "0"),
    "0.2·C·V after 2 min": ("0.2", "0", "0"),
    "0.002·C·V after 5 min": ("0.002", "0", "0"),
}


def numbers(rule: Value) -> Claims:
    """The three numbers of a limit; None for each where none is stated."""
    if rule is None:
        return dict.fromkeys(("leakage_factor", "leakage_plus_a", "leakage_floor_a"))
    factor, plus, floor = (Decimal(text) for text in LIMITS[str(rule)])
    return {"leakage_factor": factor, "leakage_plus_a": plus.scaleb(-6), "leakage_floor_a": floor.scaleb(-6)}
