"""The conditions on body and leads: the largest body against the room, the leads against the holes, way by way."""

import inspect
from typing import Any

from brute import laws
from brute.conditions import Need
from brute.laws import Answer, Number
from brute.ways import Leads, Way, body_of, laid, leads_of, lying, standing, usual_lead


def envelope(
    shape: str | None,
    lead_form: str | None,
    along_mm: Number,
    across_mm: Number,
    tall_mm: Number,
    along_plus_mm: Number,
    across_plus_mm: Number,
    tall_plus_mm: Number,
) -> tuple[Number, Number, Number]:
    """The largest body: along, across, tall [mm]."""
    usual = laws.size_plus(shape, lead_form, along_mm)
    return (
        laws.largest(along_mm, along_plus_mm, usual),
        laws.largest(across_mm, across_plus_mm, usual),
        laws.largest(tall_mm, tall_plus_mm, laws.height_plus(shape, tall_mm)),
    )


def round_room(shape: str | None, along: Number, across: Number) -> Number:
    """The diameter [mm] of the round space that the largest body needs."""
    if shape is None or across is None:
        return None
    if shape == "can":
        return across
    return None if along is None else (along * along + across * across).sqrt()


def ways(
    need: Need,
    shape: str | None,
    lead_form: str | None,
    along_mm: Number,
    across_mm: Number,
    tall_mm: Number,
    along_plus_mm: Number,
    across_plus_mm: Number,
    tall_plus_mm: Number,
    lead_spacing_mm: Number,
    delivered_spacing_mm: Number,
    lead_diameter_mm: Number,
    lead_length_mm: Number,
) -> list[Way]:
    """Every way of mounting a part of these claims."""
    sizes = envelope(shape, lead_form, along_mm, across_mm, tall_mm, along_plus_mm, across_plus_mm, tall_plus_mm)
    part = dict(zip(("along", "across", "tall"), sizes, strict=True))
    thick = usual_lead(shape, across_mm) if lead_diameter_mm is None else lead_diameter_mm
    spacing = lead_spacing_mm if delivered_spacing_mm is None else delivered_spacing_mm
    leads = Leads(spacing, lead_diameter_mm, thick, lead_length_mm, lead_form == "cut")
    if shape == "axial":
        return list(lying(need, along_mm, part, leads))
    style = None if shape is None else "snap-in" if lead_form == "snap-in" else "radial"
    stands = standing(need, part, shape, style, leads)
    return [*stands, *(laid(need, part, shape, leads) if style == "radial" else ())]


CLAIMS = tuple(inspect.signature(ways).parameters)[1:]


def body(need: Need, *claims: Any) -> Answer:
    """Whether it finds room in one of its ways."""
    return body_of(need, ways(need, *claims))


def lead_spacing(need: Need, *claims: Any) -> Answer:
    """Whether its leads meet the holes in one of its ways."""
    return leads_of(ways(need, *claims))
