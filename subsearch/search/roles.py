"""What a position's role in the circuit asks of a substitute: how far the value may move, and what must not go there.

The windows are nominal against nominal, and common practice rather than a standard: where a position has a measured
need, the builder's own window goes before them.
"""

from dataclasses import dataclass

from subsearch.errors import UnknownNameError, nearest, one_of
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, HYBRID, POLYMER, ROLES, WET

USUAL = (WET, POLYMER, HYBRID, FILM_PET, FILM_PP, C0G)


@dataclass(frozen=True)
class Role:
    """The capacitance window around the old nominal [%], and the technologies that may go there."""

    low_pct: float
    high_pct: float
    technologies: tuple[str, ...] = (*USUAL, CLASS_2)
    within_old_tolerance: bool = False


# Class 2 ceramic loses capacitance under bias and is microphonic: never in the way of a signal or of a time constant.
# Tantalum and paper are left out everywhere: who wants one pins it.
BY_ROLE = {
    "coupling": Role(0, 100, USUAL),
    "bypass": Role(0, 100),
    "bootstrap": Role(0, 100),
    "feedback leg": Role(0, 100, USUAL),
    "rail decoupling": Role(-20, 100),
    "reservoir": Role(-10, 50),
    "regulator output": Role(-10, 50),
    "timing": Role(-5, 5, USUAL, within_old_tolerance=True),
    "filter or equaliser": Role(-5, 5, USUAL, within_old_tolerance=True),
    "loudspeaker crossover": Role(-5, 5, USUAL, within_old_tolerance=True),
    "interference suppression": Role(-20, 20, (FILM_PET, FILM_PP, C0G, CLASS_2)),
}
NO_ROLE = Role(-20, 50)
assert tuple(sorted(BY_ROLE)) == tuple(sorted(ROLES))


def role_named(name: str | None) -> Role:
    """What that role asks; no role asks a window of −20…+50 %.

    Raises:
        UnknownNameError: no such role; the text names the nearest.

    >>> role_named("coupling").high_pct, role_named(None).low_pct
    (100, -20)
    """
    if name is None:
        return NO_ROLE
    if name not in BY_ROLE:
        raise UnknownNameError(f'"{name}" is no role here.{nearest(name, ROLES)} Allowed are {one_of(ROLES)}.')
    return BY_ROLE[name]


def window_f(
    capacitance_f: float, role: Role, old_tolerance_pct: tuple[float, float] | None = None
) -> tuple[float, float]:
    """The lowest and highest nominal capacitance [F] that a role takes in place of an old nominal one [F].

    >>> window_f(10e-6, role_named("reservoir"))
    (9e-06, 1.5e-05)
    >>> window_f(1e-6, role_named("timing"), (-2.0, 2.0))
    (9.8e-07, 1.02e-06)
    """
    low, high = role.low_pct, role.high_pct
    if role.within_old_tolerance and old_tolerance_pct:
        low, high = max(low, old_tolerance_pct[0]), min(high, old_tolerance_pct[1])
    return capacitance_f * (100 + low) / 100, capacitance_f * (100 + high) / 100
