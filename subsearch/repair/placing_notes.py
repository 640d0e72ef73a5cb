"""What a drawing can't show of one part in its position, in sentences: sizes not stated, leads that do not meet."""

from collections.abc import Iterator
from math import isnan

from subsearch.formulas.geometry import NEAR_MM
from subsearch.repair.body_sizes import Sized
from subsearch.repair.in_place import Placed, Room, Stand
from subsearch.search.ways import UPRIGHT
from subsearch.units import show

NO_HOLES = "The hole spacing is not asked: no holes are drawn."
NO_ROOM = "No room is asked: no walls are drawn."
NO_SHAPE = "The shape of its body is not stated: its outline is drawn with corners."
NO_SPACING = "Its lead spacing is not stated: its leads are not drawn."
NO_THICKNESS = "The diameter of its leads is not stated: they are drawn as thin broken lines."
NO_REACH = "How thick its leads are is not known, so how far their bends reach can't be told: the body is not drawn."


def empty_notes(position: Placed) -> Iterator[str]:
    """What is not known of a position in which nothing stands."""
    if isnan(position.hole_spacing_mm):
        yield NO_HOLES
    if position.room == Room():
        yield NO_ROOM


def sized_notes(part: Sized, stand: Stand, position: Placed) -> Iterator[str]:
    """What is not known of a part, and where its leads miss their holes."""
    sizes = zip(("length along", "width across", "height"), part.nominal, strict=True)
    missing = [name for name, size in sizes if isnan(size)]
    if missing:
        yield f"Not stated, so not drawn: {', '.join(missing)}."
    elif not all(span.known for span in stand.largest[:3]) and part.shape is not None:
        yield NO_REACH
    if part.shape is None:
        yield NO_SHAPE
    if isnan(position.hole_spacing_mm):
        yield NO_HOLES
    yield from _leads(part, stand, position)
    if part.formed:
        yield f"Its leads come formed to {show(part.spacing_mm, 'mm')}: it may stand higher than is drawn."
    if stand.vent_faces:
        yield f"Its vent, in the end away from the leads, faces the {stand.vent_faces}."
    if stand.rise_mm > 0:
        floor = "at least " if isnan(part.lead_mm) else ""
        yield f"Its formed leads lift it by {floor}{show(round(stand.rise_mm, 2), 'mm')}."


def _leads(part: Sized, stand: Stand, position: Placed) -> Iterator[str]:
    if isnan(part.spacing_mm) and part.shape != "axial":
        yield NO_SPACING
        return
    if not stand.leads:
        if part.shape == "axial" and not isnan(position.hole_spacing_mm):
            yield "Its holes are nearer to each other than its ends: its leads are not drawn."
        return
    if isnan(part.lead_mm):
        yield NO_THICKNESS
    if position.way != UPRIGHT.name and not (position.way == "" and stand.lead_sides):
        return
    off = abs(part.spacing_mm - position.hole_spacing_mm) / 2
    ends = {round(abs(lead.points[-1][0]), 6) for lead in stand.leads}
    if off > NEAR_MM and ends == {round(part.spacing_mm / 2, 6)}:
        yield f"Each lead misses its hole by {show(round(off, 2), 'mm')}."
