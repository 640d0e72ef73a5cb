"""Laws meet facts, for the singles that stand in the place of one can: how wide a round place each of them has."""

from subsearch.formulas.inside_can import packing_ratio
from subsearch.formulas.spaces import round_in_sides_mm
from subsearch.search.requirement import Requirement

INFINITE = float("inf")


def place_mm(need: Requirement, singles: int) -> float | None:
    """The diameter [mm] of the round place that each of so many equal ones has; None where no room is asked.

    Source: equal circles in a circle, plane geometry

    >>> place_mm(Requirement(free_diameter_mm=35.0), 2)
    17.5
    """
    sides = (need.left_mm, need.right_mm, need.front_mm, need.back_mm)
    round_mm = round_in_sides_mm(*(INFINITE if side is None else side for side in sides))
    whole = min(round_mm, INFINITE if need.free_diameter_mm is None else need.free_diameter_mm)
    return None if whole == INFINITE else float(whole / packing_ratio(singles))
