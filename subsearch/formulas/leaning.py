"""How far a lead leans that takes an offset without being formed."""

from math import atan2, degrees

from subsearch.errors import RequirementError


def lead_angle_deg(offset_mm: float, straight_height_mm: float) -> float:
    """How far a lead leans when it takes an offset over a straight height.

    Args:
        offset_mm: [mm] offset of the lead, 0 or above.
        straight_height_mm: [mm] height over which it leans, 0 or above.

    Returns:
        [°] the angle from upright; unknown where an input is.

    Raises:
        RequirementError: an offset or a height below 0.

    Holds for a lead that is straight from the body to the board.
    Source: plane geometry

    >>> round(lead_angle_deg(1.5, 3), 1)
    26.6
    """
    if offset_mm < 0 or straight_height_mm < 0:
        text = f"The offset is {offset_mm:g} mm over {straight_height_mm:g} mm, but neither can be negative. "
        raise RequirementError(text + "Give 0 or more for both.")
    return degrees(atan2(offset_mm, straight_height_mm))
