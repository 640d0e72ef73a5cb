"""Invented needs that between them call for every way of mounting."""

from typing import Any

from subsearch.search.requirement import Requirement


def need(hole_spacing_mm: float, sides: str, headroom_mm: float | None = None, **more: Any) -> Requirement:
    """A need with its free sides in one text: left, right, front and back in mm, "-" for one that is not asked."""
    names = ("left_mm", "right_mm", "front_mm", "back_mm")
    free: dict[str, Any] = {
        name: None if size == "-" else float(size) for name, size in zip(names, sides.split(), strict=True)
    }
    return Requirement(hole_spacing_mm=hole_spacing_mm, headroom_mm=headroom_mm, in_stock=False, **free, **more)


EVERY_WAY = [
    need(2.5, "5.5 5.5 4.5 -", 14.0),
    need(5.0, "5.5 7 - 6", 25.0, free_diameter_mm=14.0),
    need(2.5, "2.5 9 3 9", 20.0, free_diameter_mm=24.0),  # to one side
    need(2.5, "2.2 2.2 6 6", 16.0, technologies=("ceramic C0G", "ceramic class 2")),  # turned
    need(25.0, "14 14 5 6", 12.0, lead_style="axial"),
    need(30.0, "- 18 - 9", None, lead_style="axial", free_diameter_mm=60.0),
    need(10.0, "12 8 5 -", 30.0, lead_style="axial"),  # on end over the left hole
    need(10.0, "8 12 5 6", 30.0, lead_style="axial", free_diameter_mm=25.0),
    need(5.0, "8 8 25 3", 9.0, may_lie_flat=True),
    need(5.0, "8 - 3 25", 9.0, may_lie_flat=True),
    need(5.0, "30 8 6 6", 9.0, may_lie_flat=True, free_diameter_mm=60.0),
    need(5.0, "8 30 6 6", 9.0, may_lie_flat=True),
    need(25.0, "16 16 7 7", 11.0, may_lie_flat=True, lead_style="radial", free_diameter_mm=40.0),
    need(10.0, "- - - -", 60.0, lead_style="snap-in", free_diameter_mm=40.0),
]
