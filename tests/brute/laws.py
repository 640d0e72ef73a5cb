"""The laws that the conditions need, with Decimal; None is "not stated"."""

from collections.abc import Iterable
from decimal import Decimal
from functools import cache

DIGITS = 40  # set where the oracle is asked, not here: other tests count with Decimal too

Answer = bool | None
Number = Decimal | None

MM_NEAR = Decimal("1e-6")
NEAR = Decimal("1e-9")
PI = Decimal("3.141592653589793238462643383279502884197")
CEILING_Y = 15
FILMS = ("film PET", "film PP")
CERAMICS = ("ceramic C0G", "ceramic class 2")
HALF_MM = Decimal("0.5")


def all_of(answers: Iterable[Answer]) -> Answer:
    """No if any says no; else not stated if any is; else yes."""
    told = list(answers)
    if False in told:
        return False
    return None if None in told else True


def any_of(answers: Iterable[Answer]) -> Answer:
    """Yes if any says yes; else not stated if any is; else no."""
    told = list(answers)
    if True in told:
        return True
    return None if None in told else False


def fits(room: Number, size: Number) -> Answer:
    """Whether a size [mm] finds room [mm]."""
    return None if room is None or size is None else room + MM_NEAR >= size


def reaches(value: Number, limit: Number) -> Answer:
    """Whether a value is at least the limit."""
    return None if value is None or limit is None else value >= limit - abs(limit) * NEAR


def within(value: Number, limit: Number) -> Answer:
    """Whether a value is at most the limit."""
    return None if value is None or limit is None else value <= limit + abs(limit) * NEAR


@cache
def two_to(exponent: Decimal) -> Decimal:
    """A power of two."""
    return Decimal(2) ** exponent


def size_plus(shape: str | None, lead_form: str | None, along: Number) -> Number:
    """What is added to a size along or across [mm] whose maker states no plus tolerance."""
    if shape == "can":
        if lead_form == "snap-in":
            return Decimal(1)
        return None if along is None else HALF_MM if along < 20 else Decimal(1)
    return HALF_MM if shape in ("box", "axial") else None


def height_plus(shape: str | None, tall: Number) -> Number:
    """What is added to a height [mm] whose maker states no plus tolerance."""
    if shape == "can":
        return None if tall is None else Decimal("1.5") if tall < 20 else Decimal(2)
    return HALF_MM if shape in ("box", "axial") else None


def largest(nominal: Number, stated: Number, usual: Number) -> Number:
    """The largest size [mm]: the nominal one and the maker's plus tolerance, else the usual one."""
    plus = usual if stated is None else stated
    return None if nominal is None or plus is None else nominal + plus


def usable_ripple(ripple_a: Number, ripple_hz: Number, asked_hz: Number) -> Number:
    """The rated ripple current [A] where it may be used at the frequency that is asked."""
    if asked_hz is None:
        return ripple_a
    if ripple_hz is None or ripple_hz > asked_hz * Decimal("1.25"):
        return None
    return ripple_a


def series_resistance(
    hz: Decimal, esr_ohm: Number, esr_hz: Number, tan_delta: Number, tan_delta_hz: Number, capacitance_f: Number
) -> Number:
    """The series resistance [Ω] stated at a frequency, or what the loss factor stated there comes to.

    A frequency without a resistance states no resistance, so the loss factor is asked then too.
    """
    if esr_hz == hz and esr_ohm is not None:
        return esr_ohm
    if tan_delta_hz != hz or tan_delta is None or capacitance_f is None:
        return None
    return tan_delta / (2 * PI * hz * capacitance_f)


def worn_life_h(life_h: Number, rated_c: Number, working_c: Decimal) -> Number:
    """Life [h] at the working temperature, without ripple."""
    return None if life_h is None or rated_c is None else life_h * two_to((rated_c - working_c) / 10)


def ripple_factor(wanted_a: Decimal, usable_a: Number, with_ripple: bool) -> Number:
    """What a ripple current makes of a life."""
    if usable_a is None:
        return None
    rated_rise = 5 if with_ripple else 0
    return two_to((rated_rise - 5 * (wanted_a / usable_a) ** 2) / 10)
