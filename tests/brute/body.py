"""The condition on the body: its largest size against the room there is."""

from brute import laws
from brute.conditions import Need
from brute.laws import Answer, Number, all_of, fits


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


def body(
    need: Need,
    shape: str | None,
    lead_form: str | None,
    along_mm: Number,
    across_mm: Number,
    tall_mm: Number,
    along_plus_mm: Number,
    across_plus_mm: Number,
    tall_plus_mm: Number,
) -> Answer:
    along, across, tall = envelope(
        shape, lead_form, along_mm, across_mm, tall_mm, along_plus_mm, across_plus_mm, tall_plus_mm
    )
    half_along, half_across = (None if size is None else size / 2 for size in (along, across))
    sizes = {
        "left_mm": half_along,
        "right_mm": half_along,
        "front_mm": half_across,
        "back_mm": half_across,
        "headroom_mm": tall,
        "free_diameter_mm": round_room(shape, along, across),
    }
    return all_of(fits(need[room], size) for room, size in sizes.items() if need[room] is not None)
