"""How chemistry speeds up with heat: the law behind the ten-degree rule, which is exact at one temperature only."""

from math import log

from subsearch.formulas.carriers import Carrier

BOLTZMANN_EV_PER_K = 1.380649e-23 / 1.602176634e-19  # exact by definition of the units. Source: Boltzmann constant
ZERO_C_IN_K = 273.15  # by definition of the degree Celsius. Source: kelvin and Celsius
LN_2 = log(2)  # turns the law's exp(x) into 2 ** (x / ln 2), which every carrier can. Source: powers of two


def acceleration(activation_ev: Carrier, use_c: Carrier, test_c: Carrier) -> Carrier:
    """How many times faster ageing goes at the test temperature than in use.

    Args:
        activation_ev: [eV] activation energy of the ageing; any carrier.
        use_c: [°C] temperature in use, above absolute zero; any carrier.
        test_c: [°C] temperature of the test, above absolute zero; any carrier.

    Returns:
        [none] the acceleration factor: below 1 where the use is hotter than the test; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain temperature of absolute zero.

    Holds for ageing by one mechanism. The one activation energy published for wet aluminium parts is 0.94 eV; smaller
    ones follow from the ten-degree rule (ten_degree_ev).
    Source: Arrhenius, Boltzmann constant

    >>> round(acceleration(0.94, 85, 105), 3)
    5.007
    """
    inverse = 1 / (use_c + ZERO_C_IN_K) - 1 / (test_c + ZERO_C_IN_K)
    return 2 ** (activation_ev * inverse / (BOLTZMANN_EV_PER_K * LN_2))


def arrhenius_life_h(base_life_h: Carrier, rated_c: Carrier, working_c: Carrier, activation_ev: Carrier) -> Carrier:
    """Life at the working temperature by the activation energy of the ageing.

    Args:
        base_life_h: [h] life at the rated temperature; any carrier.
        rated_c: [°C] temperature at which that life is stated, above absolute zero; any carrier.
        working_c: [°C] temperature at the capacitor, taken where the base life's is; any carrier.
        activation_ev: [eV] activation energy of the ageing; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain temperature of absolute zero.

    Holds for ageing by one mechanism. Published is 0.94 eV; 0.70 to 0.79 eV is what the ten-degree rule amounts to
    from 65 to 95 °C.
    Source: Arrhenius, ten-degree energy

    >>> round(arrhenius_life_h(1000, 105, 85, 0.94))
    5007
    """
    return base_life_h * acceleration(activation_ev, working_c, rated_c)


def ten_degree_ev(use_c: Carrier, test_c: Carrier) -> Carrier:
    """The activation energy at which the ten-degree rule holds exactly between two temperatures.

    Args:
        use_c: [°C] one temperature; any carrier.
        test_c: [°C] the other, in either order; any carrier.

    Returns:
        [eV] the activation energy, at two equal temperatures that of the rule's slope; unknown where an input is.

    Holds for temperatures above absolute zero, however far apart they are.
    Source: ten-degree energy, Boltzmann constant

    >>> round(ten_degree_ev(75, 85), 4)
    0.7448
    """
    return BOLTZMANN_EV_PER_K * LN_2 / 10 * (use_c + ZERO_C_IN_K) * (test_c + ZERO_C_IN_K)


def ten_degree_c(activation_ev: Carrier) -> Carrier:
    """The temperature around which an activation energy doubles the speed in 10 K.

    Args:
        activation_ev: [eV] activation energy of the ageing, 0 or more; any carrier.

    Returns:
        [°C] the middle of the ten degrees: from 5 K below it to 5 K above it; unknown where the input is.

    Holds for every activation energy; below that temperature it is steeper than the ten-degree rule, above it flatter.
    Source: ten-degree energy, Boltzmann constant

    >>> round(ten_degree_c(0.94), 1)
    123.6
    """
    return (5**2 + 10 * activation_ev / (BOLTZMANN_EV_PER_K * LN_2)) ** 0.5 - ZERO_C_IN_K
