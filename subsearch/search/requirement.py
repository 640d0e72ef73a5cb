"""What is asked of one position, frozen: a search takes a list of these. A changed requirement is a new one."""

from dataclasses import dataclass, field, fields

from subsearch.errors import RequirementError, UnknownNameError, nearest, one_of
from subsearch.formulas.life import CEILING_Y
from subsearch.search.roles import role_named, window_f
from subsearch.terms import TECHNOLOGIES, TERMS
from subsearch.units import show

MOST_PIECES = 1_000_000
MOST_UNCERTAIN_K = 40.0  # a life beyond that is anyone's guess
LEAD_STYLES = ("radial", "axial", "snap-in")
CLASSES_TAKEN = {  # an X position takes X of the same or a lower number, or Y; a Y position never takes X
    "X1": ("X1", "Y1", "Y2"),
    "X2": ("X1", "X2", "Y1", "Y2"),
    "Y1": ("Y1",),
    "Y2": ("Y1", "Y2"),
}


def _size(meaning: str, unit: str = "mm") -> float | None:
    return field(default=None, metadata={"unit": unit, "meaning": meaning, "positive": True})


@dataclass(frozen=True, kw_only=True)
class Requirement:
    """What a substitute must be. A field that is None asks nothing.

    The window of capacitance follows from the role unless it is given. Sizes of the space are measured from the
    midpoint of the two holes: `left_mm` and `right_mm` in the line of the holes, `front_mm` and `back_mm` across it.

    Raises:
        RequirementError: a value is not positive, limits are the wrong way round, or the wish is past the ceiling.
        UnknownNameError: a word is none of ours; the text names the nearest.

    >>> asked = Requirement(reference="C7", role="reservoir", capacitance_f=1000e-6, rated_v=25)
    >>> asked.capacitance_low_f, asked.capacitance_high_f
    (0.0009, 0.0015)
    """

    reference: str = "position"
    pieces: int = 1
    role: str | None = None
    capacitance_f: float | None = _size("nominal capacitance of the old part", "F")
    capacitance_low_f: float | None = _size("lowest nominal capacitance taken", "F")
    capacitance_high_f: float | None = _size("highest nominal capacitance taken", "F")
    old_tolerance_pct: tuple[float, float] | None = None
    rated_v: float | None = _size("d.c. voltage rating needed", "V")
    voltage_measured: bool = False
    rated_ac_v: float | None = _size("a.c. voltage rating needed", "V")
    reverses: bool = False
    technologies: tuple[str, ...] | None = None
    lead_style: str | None = None
    hole_spacing_mm: float | None = _size("distance between the two holes")
    hole_diameter_mm: float | None = _size("diameter of each hole")
    hole_plated: bool | None = None
    bent_nearer_mm: float | None = _size("by how much axial leads may be bent nearer to the body, both together")
    may_lie_flat: bool = False
    free_diameter_mm: float | None = _size("diameter of a round space centred on the holes")
    left_mm: float | None = _size("free to the left of the holes' midpoint")
    right_mm: float | None = _size("free to the right of the holes' midpoint")
    front_mm: float | None = _size("free in front of the line of the holes")
    back_mm: float | None = _size("free behind the line of the holes")
    headroom_mm: float | None = _size("free height above the board")
    working_c: float | None = None
    temperature_uncertain_k: float = 0.0  # up and down; widens the span of life that is shown, and refuses nothing
    hours_a_day: float = 24.0
    life_wanted_y: float | None = _size("years of life wanted", "")
    ripple_a: float | None = _size("ripple current, rms", "A")
    ripple_hz: float | None = _size("frequency of the ripple current", "Hz")
    esr_least_ohm: float | None = _size("least series resistance", "Ω")
    esr_most_ohm: float | None = _size("most series resistance", "Ω")
    esr_hz: float | None = _size("frequency of the series resistance", "Hz")
    leakage_most_a: float | None = _size("most leakage current, at rated voltage and 20 °C", "A")
    safety_class: str | None = None
    conditions: tuple[str, ...] = ("new", "old stock")
    in_stock: bool = True
    pinned_maker: str | None = None
    pinned_part_number: str | None = None

    def __post_init__(self) -> None:
        self._check_words()
        self._check_sizes()
        self._check_together()
        role = role_named(self.role)
        if self.technologies is None:
            object.__setattr__(self, "technologies", role.technologies)
        if self.capacitance_f is not None:
            low, high = window_f(self.capacitance_f, role, self.old_tolerance_pct)
            if self.capacitance_low_f is None:
                object.__setattr__(self, "capacitance_low_f", low)
            if self.capacitance_high_f is None:
                object.__setattr__(self, "capacitance_high_f", high)
        _in_order(self.reference, "capacitance", self.capacitance_low_f, self.capacitance_high_f, "F")

    def _check_words(self) -> None:
        _word(self.reference, "lead style", self.lead_style, LEAD_STYLES)
        _word(self.reference, "safety class", self.safety_class, tuple(CLASSES_TAKEN))
        for technology in self.technologies or ():
            _word(self.reference, "technology", technology, TECHNOLOGIES)
        for condition in self.conditions:
            _word(self.reference, "condition", condition, TERMS["condition"].words)

    def _check_sizes(self) -> None:
        for one in fields(self):
            value = getattr(self, one.name)
            if one.metadata.get("positive") and value is not None and not 0 < value < float("inf"):
                found = show(value, one.metadata["unit"])
                raise RequirementError(
                    f"{self.reference}: {one.name} is {found}; it must be above 0 ({one.metadata['meaning']})."
                )
        if not 1 <= self.pieces <= MOST_PIECES:
            raise RequirementError(
                f"{self.reference}: {self.pieces} pieces are asked; at least 1 must be, and {MOST_PIECES} at most."
            )

    def _check_together(self) -> None:
        name = self.reference
        if not 0 < self.hours_a_day <= 24:
            raise RequirementError(f"{name}: {self.hours_a_day:g} hours a day; allowed is above 0, up to 24.")
        if self.life_wanted_y is not None and self.life_wanted_y > CEILING_Y:
            raise RequirementError(
                f"{name}: {self.life_wanted_y:g} years of life are wanted, but no wet part is promised more than "
                f"{CEILING_Y:g}: its seal ages switched on or off. Ask for {CEILING_Y:g} or less."
            )
        if self.working_c is not None and not -55 <= self.working_c <= 150:
            raise RequirementError(f"{name}: works at {self.working_c:g} °C; allowed is −55 to 150 °C.")
        if not 0 <= self.temperature_uncertain_k <= MOST_UNCERTAIN_K:
            raise RequirementError(
                f"{name}: the temperature is uncertain by {self.temperature_uncertain_k:g} K; allowed is 0 to "
                f"{MOST_UNCERTAIN_K:g} K. Measure it nearer than that."
            )
        _in_order(name, "series resistance", self.esr_least_ohm, self.esr_most_ohm, "Ω")
        if (self.esr_least_ohm or self.esr_most_ohm) and self.esr_hz is None:
            raise RequirementError(
                f"{name}: a series resistance is asked without its frequency. It falls with frequency, so say at "
                "which one, like 100 kHz."
            )


def _word(reference: str, what: str, found: str | None, allowed: tuple[str, ...]) -> None:
    if found is not None and found not in allowed:
        hint = nearest(found, allowed)
        raise UnknownNameError(f'{reference}: "{found}" is no {what} here.{hint} Allowed are {one_of(allowed)}.')


def _in_order(reference: str, what: str, low: float | None, high: float | None, unit: str) -> None:
    if low is not None and high is not None and low > high:
        raise RequirementError(
            f"{reference}: {what} from {show(low, unit)} to {show(high, unit)}: nothing lies between. Swap them."
        )
