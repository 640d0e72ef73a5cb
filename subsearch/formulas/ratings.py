"""Standard rated voltages: the next one up, what stands for an old rating, and surge voltages.

How far a surge may go above the rating is printed in three ways; each is a law here, and none goes before the others.
"""

from subsearch.formulas.carriers import Carrier, pick, staircase, step
from subsearch.formulas.voltage import modern_v

# Source: rated voltages
RATED_V = (4.0, 6.3, 10.0, 16.0, 25.0, 35.0, 40.0, 50.0, 63.0, 80.0, 100.0, 125.0, 160.0, 200.0, 250.0, 315.0, 350.0,
           400.0, 420.0, 450.0, 500.0, 630.0)  # fmt: skip
CODED_V = (2.5, 800.0, 1000.0, 1250.0)  # beyond that list, but with a voltage code of their own. Source: voltage codes
STANDARD_V = tuple(sorted((*RATED_V, *CODED_V)))
# Standard, but in few lists: nobody is sent to look for an 80 V part in place of a 70 V one. Source: old voltages
SELDOM_V = (80.0, 125.0, 315.0, 420.0)
USUAL_V = tuple(volts for volts in STANDARD_V if volts not in SELDOM_V)


def next_rated_v(need_v: Carrier) -> Carrier:
    """The lowest standard rated voltage that is not below a voltage.

    Args:
        need_v: [V] the voltage; any carrier.

    Returns:
        [V] the rated voltage; unknown where the input is, and above the last standard one.

    Holds for d.c. ratings from 2.5 to 1250 V.
    Source: rated voltages, voltage codes

    >>> next_rated_v(17.5), next_rated_v(63)
    (25.0, 63.0)
    """
    return staircase(need_v, tuple((volts, volts) for volts in STANDARD_V))


def old_as_modern_v(old_v: Carrier) -> Carrier:
    """The modern rated voltage that stands for an old one: the next usual one that is not below it.

    Args:
        old_v: [V] the old rated voltage; any carrier.

    Returns:
        [V] the modern one, never below the old but for 6.4 and 64 V, which count as 6.3 and 63 V; unknown where the
            input is, and above the last standard one.

    Holds for d.c. ratings up to 1250 V; standard ratings that few lists name are passed over.
    Source: old voltages, rated voltages

    >>> old_as_modern_v(12), old_as_modern_v(64), old_as_modern_v(70)
    (16.0, 63.0, 100.0)
    """
    return staircase(modern_v(old_v), tuple((volts, volts) for volts in USUAL_V))


def surge_quarter_v(rated_v: Carrier) -> Carrier:
    """Surge voltage where the maker lets it go a quarter above the rating, before any rounding.

    Args:
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [V] the surge voltage; unknown where the input is.

    Holds for makers who print this ratio; others print less.
    Source: surge by a quarter

    >>> surge_quarter_v(16)
    20.0
    """
    return 1.25 * rated_v


def surge_quarter_printed_v(rated_v: Carrier) -> Carrier:
    """The surge voltage of a quarter above the rating as it is printed: in whole volts, rounded up.

    Args:
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [V] the surge voltage as printed; unknown where the input is.

    Holds for ratings from 6.3 to 100 V, for which it was seen: 31.25 is printed as 32, and 62.5 as 63.
    Source: surge by a quarter

    >>> surge_quarter_printed_v(25)
    32.0
    """
    return step(surge_quarter_v(rated_v), "ceil")


def surge_to_100_v(rated_v: Carrier) -> Carrier:
    """Surge voltage where the share changes at 100 V: 1.15 times up to there, 1.1 times from 160 V.

    Args:
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [V] the surge voltage; unknown where the input is, between 100 and 160 V, and above 450 V.

    Holds for the ratings it is printed for: up to 100 V, and from 160 to 450 V.
    Source: surge by rating

    >>> surge_to_100_v(160)
    176.0
    """
    return pick(rated_v <= 100, 1.15 * rated_v, pick(rated_v >= 160, pick(rated_v <= 450, 1.1 * rated_v)))


def surge_to_315_v(rated_v: Carrier) -> Carrier:
    """Surge voltage where the share changes at 315 V: 1.15 times up to there, 1.1 times above.

    Args:
        rated_v: [V] rated voltage; any carrier.

    Returns:
        [V] the surge voltage; unknown where the input is.

    Holds for wet aluminium parts to IEC 60384-4.
    Source: surge ratio

    >>> surge_to_315_v(350)
    385.00000000000006
    """
    return pick(rated_v <= 315, 1.15 * rated_v, pick(rated_v > 315, 1.1 * rated_v))
