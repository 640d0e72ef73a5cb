"""What the ways of mounting leave of room and leads, in words and mm, out of a row of the EXPLAIN statement."""

from collections.abc import Mapping
from typing import Any

from subsearch.formulas.geometry import AXIAL_LEADS_MM, NEAR_MM, STRAIGHT_OFFSET_MM
from subsearch.search.way import Way
from subsearch.search.ways import BENT_NAMES, BY_NAME, FORMED, UPRIGHT, WAYS
from subsearch.units import show

Row = Mapping[str, Any]
MOST_WAYS = 3  # those that come nearest


def told_room(row: Row) -> str:
    """The margins of the way that is offered; where none holds, those of every way that may, else of every way."""
    answer = row["answers"]["body"]
    offered = BY_NAME[row["made"]["way"]]
    if answer is True:
        return _with_name(offered, row, True)
    leads = [way for way in WAYS if row.get(f"leads_{way.key}", False) is not False]
    ways = [way for way in leads if row[f"room_{way.key}"] is answer] or [offered]
    ways = sorted(ways, key=lambda way: _lacks_mm(way, row))  # of equal ones the first stays first
    first = {way.describe(row["made"], row["need"]): way for way in reversed(ways)}  # the same words need no second way
    told = [way for way in ways if way in first.values()][:MOST_WAYS]
    return "; ".join(_with_name(way, row, len(told) == 1) for way in told)


def _lacks_mm(way: Way, row: Row) -> float:
    """How much the worst margin that is asked lacks [mm]."""
    asked = (row["made"][margin.made] for margin in way.margins if row["need"][margin.asked_by] is not None)
    return max((-left for left in asked if left is not None), default=0.0)


def _with_name(way: Way, row: Row, alone: bool) -> str:
    margins = way.describe(row["made"], row["need"])
    return margins if alone and way is UPRIGHT else f"{way.name}: {margins}"


def told_leads(row: Row) -> str:
    """How the leads stand to the holes, and what must be done to them."""
    part, made = row["part"], row["made"]
    if part["shape"] is None:
        return "whether the leads leave it radially or axially is not stated"
    if part["shape"] == "axial" and made["way"] in BENT_NAMES:
        return f"axial body {made['way']}"
    if part["shape"] == "axial":
        length = "of a length not stated" if part["along_mm"] is None else f"{show(part['along_mm'], 'mm')} long"
        return f"axial body {length}, which asks for holes {show(AXIAL_LEADS_MM, 'mm')} further apart"
    spacing = part["delivered_spacing_mm"] if part["delivered_spacing_mm"] is not None else part["lead_spacing_mm"]
    return f"lead spacing {show(spacing, 'mm')}{_worked(row, made)}"


def _worked(row: Row, made: Row) -> str:
    offset = made["worked_mm"]
    if offset is None:
        return ""
    if row["answers"]["lead_spacing"] is True and made["way"] in BENT_NAMES:
        return f", {made['way']}"
    if row["answers"]["lead_spacing"] is True:
        formed = offset > STRAIGHT_OFFSET_MM + NEAR_MM
        return f", each lead formed by {show(round(offset, 3), 'mm')}" if formed else ""
    tried = FORMED if made["style"] == "radial" else UPRIGHT  # the way that goes furthest
    return f", {tried.describe_leads(made, row['need'])}"
