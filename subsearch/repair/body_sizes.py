"""The sizes of one part as the laws of mounting take them: as stated, at its largest, its leads; unknown is NaN.

It chooses the laws as search/derived.py does for the whole catalog, which a test compares part by part. Here a part
comes by itself, without the numbers of a search: one of a pair, or one typed in by hand.
"""

from collections.abc import Callable, Mapping
from math import nan
from typing import Any, NamedTuple

from subsearch.formulas.axials import axial_lead_mm
from subsearch.formulas.cans import can_lead_max_mm
from subsearch.formulas.carriers import Carrier
from subsearch.formulas.envelope import (
    box_plus_mm,
    can_plus_mm,
    can_tall_plus_mm,
    envelope_mm,
    snap_in_plus_mm,
    vent_clearance_mm,
)
from subsearch.formulas.fits import Body
from subsearch.formulas.mounting_cautions import is_vented


class Sizes(NamedTuple):
    """Along, across and tall of a body with its leads down [mm]."""

    along_mm: float
    across_mm: float
    tall_mm: float


class Sized(NamedTuple):
    """One part: sizes as stated and at the largest, lead spacing, leads as stated and as thick as bends count [mm].

    `formed`: its leads are delivered at another spacing than they leave the body.
    """

    shape: str | None
    nominal: Sizes
    largest: Sizes
    spacing_mm: float
    lead_mm: float
    thick_mm: float
    formed: bool
    vented: bool | None
    vent_mm: float


def number(value: float | None) -> float:
    """A claim as the laws take it: NaN where it is not stated."""
    return nan if value is None else float(value)


def sized(part: Mapping[str, Any]) -> Sized:
    """The sizes of a part from its claims.

    >>> from collections import defaultdict
    >>> part = defaultdict(lambda: None, shape="can", along_mm=8.0, across_mm=8.0, tall_mm=11.0, lead_diameter_mm=0.6)
    >>> sized(part).largest, sized(part).vent_mm
    (Sizes(along_mm=8.5, across_mm=8.5, tall_mm=12.5), 2.0)
    """
    shape, snap_in = part["shape"], part["lead_form"] == "snap-in"
    nominal = Sizes(*(number(part[name]) for name in Sizes._fields))
    largest = Sizes(*(_largest(part, name, snap_in) for name in Sizes._fields))
    lead_mm, spacing = number(part["lead_diameter_mm"]), part["delivered_spacing_mm"]
    vented = {"vented": True, "none": False}.get(part["vent"])
    body = Body(*largest, shape, nominal_across_mm=nominal.across_mm, vented=vented)
    return Sized(
        shape=shape,
        nominal=nominal,
        largest=largest,
        spacing_mm=number(part["lead_spacing_mm"] if spacing is None else spacing),
        lead_mm=lead_mm,
        thick_mm=_usual_lead_mm(shape, nominal.across_mm) if part["lead_diameter_mm"] is None else lead_mm,
        formed=spacing is not None and part["lead_spacing_mm"] not in (None, spacing),
        vented=is_vented(body),
        vent_mm=float(vent_clearance_mm(nominal.across_mm)),
    )


def _largest(part: Mapping[str, Any], name: str, snap_in: bool) -> float:
    nominal, plus = number(part[name]), part[name.replace("_mm", "_plus_mm")]
    if plus is not None:
        return float(envelope_mm(nominal, plus))
    if part["shape"] is None:
        return nan
    law: Callable[[Carrier], Carrier] = box_plus_mm
    if part["shape"] == "can":
        law = can_tall_plus_mm if name == "tall_mm" else snap_in_plus_mm if snap_in else can_plus_mm
    return float(envelope_mm(nominal, law(nominal)))


def _usual_lead_mm(shape: str | None, across_mm: float) -> float:
    usual: Carrier = can_lead_max_mm(across_mm) if shape == "can" else nan
    return float(axial_lead_mm(across_mm) if shape == "axial" else usual)
