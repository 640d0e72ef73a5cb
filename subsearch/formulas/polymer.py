"""How long polymer parts last: two published laws, equal at the rated temperature and far apart below it.

Hybrid parts (polymer with some liquid) age as wet ones do: for them take the ten-degree rule of `life.py`.
"""

from subsearch.formulas.carriers import Carrier
from subsearch.formulas.life import life_h


def tenfold_life_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier) -> Carrier:
    """Life of a polymer part: ten times as long for every 20 degrees cooler.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for solid polymer parts, not for hybrid ones; the hopeful one of two laws below the rated temperature.
    Source: twenty-degree rule

    >>> tenfold_life_h(2000, 105, 85)
    20000.0
    """
    return base_life_h * 10 ** ((rated_c - working_c) / 20)


def twofold_life_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier) -> Carrier:
    """Life of a polymer part by the ten-degree rule of wet parts: the lower of two laws below the rated temperature.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Holds for solid polymer parts where no maker promises more, and for hybrid parts.
    Source: twofold polymer rule, hybrid rule

    >>> twofold_life_h(2000, 105, 85)
    8000.0
    """
    return life_h(base_life_h, rated_c, working_c)
