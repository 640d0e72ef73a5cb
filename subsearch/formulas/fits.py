"""What a way of mounting takes and gives: a body, its holes, and whether it fits, with every margin by name."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import inf, isinf, isnan, nan

from subsearch.errors import known_word
from subsearch.formulas.geometry import NEAR_MM, headroom_margin_mm
from subsearch.formulas.spaces import (
    Space,
    shifted_can_round_margin_mm,
    shifted_outline_round_margin_mm,
    shifted_side_margin_mm,
)

SHAPES = ("can", "box", "axial")
Margins = tuple[tuple[str, float], ...]


@dataclass(frozen=True)
class Body:
    """A part's largest sizes [mm] as it is made, its leads down; NaN and None where not stated.

    An infinite lead length asks nothing of the leads. The nominal length counts for the hole span of axial parts, the
    nominal diameter for vents; where that is not stated, the largest one.
    """

    along_mm: float
    across_mm: float
    tall_mm: float
    shape: str | None = "can"
    spacing_mm: float = nan
    lead_diameter_mm: float = nan
    lead_length_mm: float = inf
    nominal_along_mm: float = nan
    nominal_across_mm: float = nan
    vented: bool | None = None

    def __post_init__(self) -> None:
        if self.shape is not None:
            known_word(self.shape, SHAPES, "a shape")


@dataclass(frozen=True)
class HolePair:
    """The spacing of two holes, and the thickness of the board with what is to stand out of it [mm]."""

    spacing_mm: float
    board_mm: float


@dataclass(frozen=True)
class Fit:
    """Whether a body fits in one way of mounting.

    `fits` is None where a margin is not known and none is short. The margins [mm] are those that are asked. `added_mm`
    is the standing height that the way adds to the body's own, `shift_mm` where the body stands beside the midpoint,
    to the right and to the back.
    """

    way: str
    margins: Margins
    fits: bool | None
    tightest_mm: float
    cautions: tuple[str, ...] = ()
    added_mm: float = 0.0
    shift_mm: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True)
class Footprint:
    """What a mounted body takes of the space [mm]: seen from above, its height, and where its midpoint stands."""

    along_mm: float
    across_mm: float
    tall_mm: float
    is_round: bool | None = False
    shift_mm: tuple[float, float] = (0.0, 0.0)


def counted_mm(nominal_mm: float, largest_mm: float) -> float:
    """The size that counts where a rule is made for nominal ones.

    Args:
        nominal_mm: [mm] nominal size.
        largest_mm: [mm] largest size.

    Returns:
        [mm] the nominal size, or the largest where that is not stated.

    Holds for every size of a body.
    Source: plane geometry

    >>> counted_mm(18, 18.5), counted_mm(nan, 18.5)
    (18, 18.5)
    """
    return largest_mm if isnan(nominal_mm) else nominal_mm


def fit_of(
    way: str,
    margins: Iterable[tuple[str, float]],
    cautions: Iterable[str] = (),
    added_mm: float = 0.0,
    shift_mm: tuple[float, float] = (0.0, 0.0),
) -> Fit:
    """The answer of three, from the margins of one way of mounting.

    Args:
        way: the name of the way.
        margins: [mm] each with its name; infinite ones are not asked and left out.
        cautions: [none] sentences.
        added_mm: [mm] standing height that the way adds.
        shift_mm: [mm] where the body stands beside the midpoint of the holes.

    Returns:
        The fit, its tightest margin [mm] unknown where one of them is, infinite where none is asked.

    Holds for every way: all margins must be left within NEAR_MM.
    Source: plane geometry

    >>> fit_of("upright", [("left", 0.5), ("headroom", -0.25)]).fits
    False
    """
    asked = tuple((name, float(margin)) for name, margin in margins if margin != inf)
    values = [margin for _, margin in asked]
    unknown = any(map(isnan, values))
    fits = False if any(value < -NEAR_MM for value in values) else None if unknown else True
    tightest = nan if unknown else min(values, default=inf)
    return Fit(way, asked, fits, tightest, tuple(cautions), added_mm, shift_mm)


def room_margins(space: Space, taken: Footprint) -> Iterator[tuple[str, float]]:
    """What a mounted body leaves of the space, on every side that is asked.

    Args:
        space: [mm] the free room about the midpoint of the holes.
        taken: [mm] what the body takes of it.

    Returns:
        The margins [mm] with their names.

    Holds for every way of mounting.
    Source: plane geometry

    >>> dict(room_margins(Space(left_mm=6, headroom_mm=20), Footprint(10, 10, 18)))["left"]
    1.0
    """
    along, across = taken.shift_mm
    sides = (
        ("left", space.left_mm, taken.along_mm, along),
        ("right", space.right_mm, taken.along_mm, -along),
        ("front", space.front_mm, taken.across_mm, across),
        ("back", space.back_mm, taken.across_mm, -across),
    )
    for name, side, size, away in sides:
        if not isinf(side):
            yield name, shifted_side_margin_mm(side, size, away)
    if not isinf(space.free_diameter_mm):
        yield "free diameter", _round_margin_mm(space.free_diameter_mm, taken)
    if not isinf(space.headroom_mm):
        yield "headroom", headroom_margin_mm(space.headroom_mm, taken.tall_mm)


def _round_margin_mm(free_diameter_mm: float, taken: Footprint) -> float:
    if taken.is_round is None:
        return nan
    if taken.is_round:
        return float(shifted_can_round_margin_mm(free_diameter_mm, taken.across_mm, *taken.shift_mm))
    sizes = (taken.along_mm, taken.across_mm, *taken.shift_mm)
    return float(shifted_outline_round_margin_mm(free_diameter_mm, *sizes))


def lead_length_margins(body: Body, needed_mm: float) -> Iterator[tuple[str, float]]:
    """What the leads of a body leave over the length needed, where that is asked.

    Args:
        body: [mm] the body.
        needed_mm: [mm] length of lead needed, from the body on.

    Returns:
        The margin [mm] with its name; none where the lead length is infinite.

    Holds for every way of mounting.
    Source: plane geometry

    >>> list(lead_length_margins(Body(8, 8, 12, lead_length_mm=15), 4))
    [('lead length', 11.0)]
    """
    if body.lead_length_mm != inf:
        yield "lead length", float(body.lead_length_mm - needed_mm)


def best_first(fits: Iterable[Fit]) -> tuple[Fit, ...]:
    """Fits in order: those that hold before those not known, then by the tightest margin.

    Args:
        fits: [mm] the fits.

    Returns:
        The same fits [mm].

    Holds for every way of mounting.
    Source: plane geometry

    >>> [fit.way for fit in best_first([fit_of("one", [("left", 1)]), fit_of("other", [("left", 2)])])]
    ['other', 'one']
    """

    def rank(fit: Fit) -> tuple[int, float]:
        return {True: 0, None: 1, False: 2}[fit.fits], 0.0 if isnan(fit.tightest_mm) else -fit.tightest_mm

    return tuple(sorted(fits, key=rank))
