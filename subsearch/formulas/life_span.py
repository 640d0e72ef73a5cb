"""The shortest and the longest life over the published laws that fit what the base life means.

The shortest life is the shortest by temperature times the least ripple factor, the longest likewise: each temperature
law goes with each ripple law. A ripple law that can never be the end of the span is left out.
"""

from subsearch.formulas.arrhenius import arrhenius_life_h
from subsearch.formulas.carriers import Carrier, least, most
from subsearch.formulas.case_rise import life_with_allowance_h
from subsearch.formulas.life import life_h, life_with_ripple_h
from subsearch.formulas.polymer import tenfold_life_h, twofold_life_h
from subsearch.formulas.ripple import bending_ripple_life_h, five_degree_life_h, steeper_ripple_life_h

PUBLISHED_EV = 0.94  # the only activation energy published for wet aluminium parts. Source: Arrhenius


def shortest_cool_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier) -> Carrier:
    """The shorter life by the two temperature laws of wet parts: the ten-degree rule and an activation energy.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.

    Returns:
        [h] the life before the ripple's heat counts, without a ceiling; unknown where an input is.

    Holds for wet aluminium and hybrid parts.
    Source: ten-degree rule, Arrhenius

    >>> shortest_cool_h(1000, 105, 85)
    4000.0
    """
    return least(
        life_h(base_life_h, rated_c, working_c), arrhenius_life_h(base_life_h, rated_c, working_c, PUBLISHED_EV)
    )


def longest_cool_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier) -> Carrier:
    """The longer life by the two temperature laws of wet parts: the ten-degree rule and an activation energy.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.

    Returns:
        [h] the life before the ripple's heat counts, without a ceiling; unknown where an input is.

    Holds for wet aluminium and hybrid parts.
    Source: ten-degree rule, Arrhenius

    >>> round(longest_cool_h(1000, 105, 85))
    5007
    """
    return most(
        life_h(base_life_h, rated_c, working_c), arrhenius_life_h(base_life_h, rated_c, working_c, PUBLISHED_EV)
    )


def least_factor_with_ripple(rise_k: Carrier, rated_rise_k: Carrier, rated_c: Carrier) -> Carrier:
    """The factor of the harshest of three ripple laws for a base life run with rated ripple.

    Args:
        rise_k: [K] rise of the core temperature at the ripple current that flows, 0 or more; any carrier.
        rated_rise_k: [K] that rise at the rated ripple current; any carrier.
        rated_c: [°C] rated temperature, which is the part's class; any carrier.

    Returns:
        [none] the factor on life; unknown where an input is.

    Holds for wet aluminium and hybrid parts, temperatures taken in the air.
    Source: ripple on the core, ripple factor, bending ripple law

    >>> least_factor_with_ripple(10, 5, 105)
    0.5
    """
    steeper = steeper_ripple_life_h(1.0, rise_k, rated_rise_k, rated_c)
    return least(steeper, bending_ripple_life_h(1.0, rise_k, rated_rise_k))


def most_factor_with_ripple(rise_k: Carrier, rated_rise_k: Carrier) -> Carrier:
    """The factor of the mildest of three ripple laws for a base life run with rated ripple.

    Args:
        rise_k: [K] rise of the core temperature at the ripple current that flows, 0 or more; any carrier.
        rated_rise_k: [K] that rise at the rated ripple current; any carrier.

    Returns:
        [none] the factor on life; unknown where an input is.

    Holds for wet aluminium and hybrid parts, temperatures taken in the air.
    Source: ripple on the core, ripple factor, bending ripple law

    >>> most_factor_with_ripple(15, 5)
    0.5
    """
    core = life_with_ripple_h(1.0, rise_k, rated_rise_k, 1.0)
    return most(core, bending_ripple_life_h(1.0, rise_k, rated_rise_k))


def least_factor_without_ripple(rise_k: Carrier) -> Carrier:
    """The factor of the harsher of two ripple laws for a base life run without ripple.

    Args:
        rise_k: [K] rise of the core temperature at the ripple current that flows, 0 or more; any carrier.

    Returns:
        [none] the factor on life; unknown where an input is.

    Holds for wet aluminium and hybrid parts, temperatures taken in the air.
    Source: ripple on the core, five-degree ripple law

    >>> least_factor_without_ripple(20)
    0.0625
    """
    return least(life_with_ripple_h(1.0, rise_k, 0.0, 0.0), five_degree_life_h(1.0, rise_k))


def most_factor_without_ripple(rise_k: Carrier) -> Carrier:
    """The factor of the milder of two ripple laws for a base life run without ripple.

    Args:
        rise_k: [K] rise of the core temperature at the ripple current that flows, 0 or more; any carrier.

    Returns:
        [none] the factor on life; unknown where an input is.

    Holds for wet aluminium and hybrid parts, temperatures taken in the air.
    Source: ripple on the core, five-degree ripple law

    >>> most_factor_without_ripple(20)
    0.25
    """
    return most(life_with_ripple_h(1.0, rise_k, 0.0, 0.0), five_degree_life_h(1.0, rise_k))


def longest_at_case_h(base_life_h: Carrier, rated_c: Carrier, case_c: Carrier) -> Carrier:
    """The longest life by the temperature at the can: by the two temperature laws, and with 10 K allowed for ripple.

    Args:
        base_life_h: [h] life at the rated temperature with rated ripple; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        case_c: [°C] temperature at the can, its own heat included; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for a base life run with rated ripple; the shortest is shortest_cool_h at the can's temperature.
    Source: case temperature rule, case allowance

    >>> longest_at_case_h(1000, 85, 75)
    4000.0
    """
    return most(longest_cool_h(base_life_h, rated_c, case_c), life_with_allowance_h(base_life_h, rated_c, case_c))


def shortest_polymer_h(base_life_h: Carrier, rated_c: Carrier, core_c: Carrier) -> Carrier:
    """The shorter life of a polymer part by two laws: twofold for 10 degrees, tenfold for 20.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        core_c: [°C] working temperature and what the ripple's heat adds to it; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for solid polymer parts; twofold is the shorter one below the rated temperature.
    Source: twofold polymer rule, twenty-degree rule

    >>> shortest_polymer_h(2000, 105, 85)
    8000.0
    """
    return least(twofold_life_h(base_life_h, rated_c, core_c), tenfold_life_h(base_life_h, rated_c, core_c))


def longest_polymer_h(base_life_h: Carrier, rated_c: Carrier, core_c: Carrier) -> Carrier:
    """The longer life of a polymer part by two laws: twofold for 10 degrees, tenfold for 20.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        core_c: [°C] working temperature and what the ripple's heat adds to it; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for solid polymer parts; tenfold is the longer one below the rated temperature.
    Source: twofold polymer rule, twenty-degree rule

    >>> longest_polymer_h(2000, 105, 85)
    20000.0
    """
    return most(twofold_life_h(base_life_h, rated_c, core_c), tenfold_life_h(base_life_h, rated_c, core_c))
