"""What stands where in one position, in millimetres: frozen, for a drawing to show.

The origin is the midpoint of the two holes on the upper face of the board: x in the line of the holes (above 0 to the
right), y across it (above 0 to the back), z up. What is not known is NaN.
"""

from dataclasses import dataclass
from math import dist, inf, isnan, nan
from typing import NamedTuple

from subsearch.formulas.geometry import NEAR_MM
from subsearch.repair.marks import Mark
from subsearch.search.derived_ways import BOARD_MM

LEFT, RIGHT, FRONT, BACK, DOWN, UP = "left", "right", "front", "back", "down", "up"
Point = tuple[float, float, float]


class Span(NamedTuple):
    """From where to where something reaches on one axis [mm]."""

    low: float
    high: float

    @property
    def known(self) -> bool:
        """Whether both ends are known."""
        return not isnan(self.low) and not isnan(self.high)

    @property
    def size(self) -> float:
        """How long it is [mm]."""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """Its midpoint [mm]."""
        return (self.low + self.high) / 2


def about(middle_mm: float, size_mm: float) -> Span:
    """A size about its middle [mm].

    >>> about(1, 4)
    Span(low=-1.0, high=3.0)
    """
    return Span(middle_mm - size_mm / 2, middle_mm + size_mm / 2)


UNKNOWN = Span(nan, nan)


class Solid(NamedTuple):
    """A body along the axes [mm]; of a can or an axial body `axis` is the one that it is round about."""

    x: Span
    y: Span
    z: Span
    axis: str = ""

    def span(self, axis: str) -> Span:
        """Its reach on one axis [mm]."""
        return {"x": self.x, "y": self.y, "z": self.z}[axis]


NOWHERE = Solid(UNKNOWN, UNKNOWN, UNKNOWN)


@dataclass(frozen=True)
class Lead:
    """The midline of one lead from the body on [mm], and its diameter, NaN where it is not stated."""

    points: tuple[Point, ...]
    diameter_mm: float

    @property
    def length_mm(self) -> float:
        """How long it is as it is drawn, bends taken as corners [mm]."""
        steps = zip(self.points, self.points[1:], strict=False)
        return sum(dist(one, other) for one, other in steps)

    @property
    def known(self) -> bool:
        """Whether all of its points are known."""
        return not any(isnan(size) for point in self.points for size in point)


def through_board(diameter_mm: float, *points: Point) -> Lead:
    """A lead along these points and from the last one straight down: through the board, with what stands out of it.

    >>> through_board(0.6, (2.0, 0.0, 5.0), (2.0, 0.0, 0.0)).length_mm
    8.0
    """
    x, y, _ = points[-1]
    kept = [one for at, one in enumerate(points) if at == 0 or one != points[at - 1]]
    return Lead((*kept, (x, y, -BOARD_MM)), diameter_mm)


@dataclass(frozen=True)
class Room:
    """The free room about the midpoint of the holes [mm], infinite where it is not asked."""

    left_mm: float = inf
    right_mm: float = inf
    front_mm: float = inf
    back_mm: float = inf
    headroom_mm: float = inf
    free_diameter_mm: float = inf


@dataclass(frozen=True)
class Stand:
    """One body as it is mounted: as stated, at its largest, and what it takes of the room with its leads.

    `size` is the body as the trade writes it, `lead_sides` are the sides at which the leads for the left and the right
    hole leave it. `rise_mm` is how much higher it stands because its leads are formed, `vent_mm` the clearance above a
    vented one, 0 where none is asked; `vent_faces` is where the vent of a lying can points to, `looks_from` the side
    from which the side view shows the most, `mark_faces` the side at which its mark is, empty where that is not known.
    """

    name: str
    nominal: Solid
    largest: Solid
    taken: Solid
    leads: tuple[Lead, ...] = ()
    lead_sides: tuple[str, str] = (LEFT, RIGHT)
    size: str = ""
    rise_mm: float = 0.0
    vent_mm: float = 0.0
    vent_faces: str = ""
    looks_from: str = FRONT
    polar: bool = False
    mark: Mark | None = None
    mark_faces: str = ""


@dataclass(frozen=True)
class Gap:
    """What is left of the room at one place [mm]: below 0 by how much it is passed, NaN where that can't be told."""

    name: str
    left_mm: float


@dataclass(frozen=True)
class Placed:
    """One position with what stands in it. `plus_at` is the hole for the plus, empty where it is not known.

    `way` is how it is mounted, empty where nothing stands; `notes` are the sentences that the picture can't say.
    """

    reference: str
    hole_spacing_mm: float
    hole_diameter_mm: float
    room: Room
    way: str = ""
    stands: tuple[Stand, ...] = ()
    gaps: tuple[Gap, ...] = ()
    plus_at: str = ""
    notes: tuple[str, ...] = ()

    @property
    def excess(self) -> tuple[Gap, ...]:
        """Where the body at its largest leaves the room."""
        return tuple(gap for gap in self.gaps if gap.left_mm < -NEAR_MM)
