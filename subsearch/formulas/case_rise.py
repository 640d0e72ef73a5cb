"""How warm a can's surface gets, and the core behind it."""

from math import pi

from subsearch.formulas.carriers import Carrier, pick, staircase
from subsearch.formulas.life import life_h

# Diameter [mm] and how many times the surface's rise the core's is, up to it. Source: core over case
CORE_RATIOS = ((8.0, 1.0), (12.5, 1.1), (18.0, 1.2), (22.0, 1.3), (25.0, 1.4), (30.0, 1.5), (35.0, 1.6))
CORE_RATIO_AT_35_MM = 1.64  # what another note prints for 35 mm. Source: core over case again
CASE_ALLOWANCE_K = 10.0  # of a life run with rated ripple, stated at the case. Source: case allowance
BOTTOM_IS_CORE_MM = 25.0  # up to it the can's bottom is as warm as the core, within reason. Source: bottom of the can
FORCED_AIR_PCT = 40.0  # by about so much moving air raises the ripple current at most. Source: bottom of the can


def _above_0(size: Carrier) -> Carrier:
    """The size itself; unknown where no body can have it."""
    return pick(size > 0, size)


def core_ratio(diameter_mm: Carrier) -> Carrier:
    """How many times the rise of a can's surface the rise of its core is.

    Args:
        diameter_mm: [mm] nominal diameter, above 0; any carrier.

    Returns:
        [none] the ratio; for a diameter between two printed ones that of the larger; unknown where the input is or is
        not above 0, and above 35 mm.

    Holds for cans in still air.
    Source: core over case

    >>> core_ratio(16), core_ratio(9)
    (1.2, 1.1)
    """
    return staircase(_above_0(diameter_mm), CORE_RATIOS)


def can_surface_cm2(diameter_mm: Carrier, tall_mm: Carrier) -> Carrier:
    """The surface of a can that gives off heat: its side and its top, without the base.

    Args:
        diameter_mm: [mm] nominal diameter, above 0; any carrier.
        tall_mm: [mm] nominal height, above 0; any carrier.

    Returns:
        [cm²] the surface; unknown where an input is or is not above 0.

    Holds for cans that stand on a board.
    Source: can surface

    >>> round(can_surface_cm2(10, 20), 4)
    7.0686
    """
    diameter_mm, tall_mm = _above_0(diameter_mm), _above_0(tall_mm)
    return pi / 4 * diameter_mm * (diameter_mm + 4 * tall_mm) / 100


def heat_transfer(surface_cm2: Carrier) -> Carrier:
    """How much heat a square centimetre of a can gives off for each degree it is warmer than the air.

    Args:
        surface_cm2: [cm²] the can's surface without its base, above 0; any carrier.

    Returns:
        [W/(K cm²)] the heat transfer; unknown where the input is or is not above 0.

    Holds for still air.
    Source: surface rise

    >>> round(heat_transfer(32), 5)
    0.00115
    """
    return 2.3e-3 * _above_0(surface_cm2) ** -0.2


def surface_rise_k(ripple_a: Carrier, esr_ohm: Carrier, surface_cm2: Carrier) -> Carrier:
    """Rise of a can's surface over the air around it at a ripple current.

    Args:
        ripple_a: [A] ripple current that flows, rms; any carrier.
        esr_ohm: [Ω] equivalent series resistance at the ripple's frequency, warm; any carrier.
        surface_cm2: [cm²] the can's surface without its base, above 0; any carrier.

    Returns:
        [K] the rise of the surface; unknown where an input is, and where the surface is not above 0.

    Holds for cans in still air, with no hot part beside them.
    Source: surface rise

    >>> round(surface_rise_k(1, 0.1, 32), 3)
    2.717
    """
    return ripple_a**2 * esr_ohm / (heat_transfer(surface_cm2) * surface_cm2)


def core_rise_k(case_c: Carrier, ambient_c: Carrier, core_ratio: Carrier) -> Carrier:
    """Rise of the core over the air, from the temperature measured on the can.

    Args:
        case_c: [°C] temperature of the can's surface; any carrier.
        ambient_c: [°C] temperature of the air around it; any carrier.
        core_ratio: [none] how many times the surface's rise the core's is; any carrier.

    Returns:
        [K] the rise of the core over the air; unknown where an input is.

    Holds for heat that comes from the ripple current alone.
    Source: core over case

    >>> core_rise_k(50, 40, 1.2)
    12.0
    """
    return core_ratio * (case_c - ambient_c)


def life_with_allowance_h(base_life_h: Carrier, rated_c: Carrier, case_c: Carrier) -> Carrier:
    """Life from the temperature at the can, with 10 K allowed for the ripple that the base life was run with.

    Args:
        base_life_h: [h] life at the highest temperature with rated ripple; any carrier.
        rated_c: [°C] highest temperature, at which that life is stated; any carrier.
        case_c: [°C] temperature at the can, its own heat included; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for screw and snap-in types.
    Source: case allowance

    >>> life_with_allowance_h(1000, 85, 75)
    4000.0
    """
    return life_h(base_life_h, rated_c + CASE_ALLOWANCE_K, case_c)
