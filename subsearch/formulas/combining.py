"""What two or more capacitors make together: in parallel, in series, back to back; and how long a set lasts.

How a series pair shares the voltage stands in `sharing`, how tolerances combine in `pair_tolerance`.
"""

from collections.abc import Sequence
from functools import reduce

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import Carrier, least


def parallel_f(one_f: Carrier, other_f: Carrier) -> Carrier:
    """Capacitance of two in parallel: the sum.

    Args:
        one_f, other_f: [F] the two capacitances; any carrier.

    Returns:
        [F] the capacitance of both; unknown where an input is.

    Holds for every two; three are two and one more.
    Source: parallel and series

    >>> parallel_f(10, 22)
    32
    """
    return one_f + other_f


def series_f(one_f: Carrier, other_f: Carrier) -> Carrier:
    """Capacitance of two in series.

    Args:
        one_f, other_f: [F] the two capacitances, above 0; any carrier.

    Returns:
        [F] the capacitance of both, below either; unknown where an input is.

    Raises:
        ZeroDivisionError: two plain capacitances of 0.

    Holds for every two, back to back included, while neither conducts.
    Source: parallel and series

    >>> series_f(10, 22)
    6.875
    """
    return one_f * other_f / (one_f + other_f)


def equal_parallel_f(capacitance_f: Carrier, pieces: Carrier) -> Carrier:
    """Capacitance of so many equal ones in parallel.

    Args:
        capacitance_f: [F] capacitance of each; any carrier.
        pieces: [none] how many, 1 or more; any carrier.

    Returns:
        [F] the capacitance of all; unknown where an input is.

    Holds for whole numbers of pieces.
    Source: parallel and series

    >>> equal_parallel_f(10, 3)
    30
    """
    return capacitance_f * pieces


def equal_series_f(capacitance_f: Carrier, pieces: Carrier) -> Carrier:
    """Capacitance of so many equal ones in series.

    Args:
        capacitance_f: [F] capacitance of each; any carrier.
        pieces: [none] how many, 1 or more; any carrier.

    Returns:
        [F] the capacitance of all; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain 0 pieces.

    Holds for whole numbers of pieces.
    Source: parallel and series

    >>> equal_series_f(30, 3)
    10.0
    """
    return capacitance_f / pieces


def back_to_back_f(capacitance_f: Carrier) -> Carrier:
    """Capacitance of two equal polar parts in series with like poles joined: half of one.

    Args:
        capacitance_f: [F] capacitance of each; any carrier.

    Returns:
        [F] the capacitance of the pair; unknown where the input is.

    Holds for signals that do not make the reversed part conduct; one engineer reports values up to that of one part.
    Source: back to back

    >>> back_to_back_f(22)
    11.0
    """
    return capacitance_f / 2


def each_back_to_back_f(target_f: Carrier) -> Carrier:
    """What each of two equal polar parts must have, so that the pair back to back makes a value.

    Args:
        target_f: [F] the value that the pair is to have; any carrier.

    Returns:
        [F] the capacitance of each; unknown where the input is.

    Holds for the signals that `back_to_back_f` holds for.
    Source: back to back

    >>> each_back_to_back_f(4.7)
    9.4
    """
    return 2 * target_f


def back_to_back_v(one_rated_v: Carrier, other_rated_v: Carrier) -> Carrier:
    """Voltage that a pair back to back withstands in either direction: about the rating of one part, not of both.

    Args:
        one_rated_v, other_rated_v: [V] the two rated voltages; any carrier.

    Returns:
        [V] the lower of the two; unknown where an input is.

    Holds for polar parts with like poles joined: the reversed one takes next to none of the voltage.
    Source: voltage back to back

    >>> back_to_back_v(50, 63)
    50
    """
    return parallel_v(one_rated_v, other_rated_v)  # as there, either may meet the whole voltage


def parallel_v(one_rated_v: Carrier, other_rated_v: Carrier) -> Carrier:
    """Voltage that two in parallel withstand.

    Args:
        one_rated_v, other_rated_v: [V] the two rated voltages; any carrier.

    Returns:
        [V] the lower of the two; unknown where an input is.

    Holds for every two.
    Source: parallel and series

    >>> parallel_v(63, 50)
    50
    """
    return least(one_rated_v, other_rated_v)


def set_life_h(lives_h: Sequence[float]) -> float:
    """How long a set lasts in which every part is needed: as long as its shortest-lived one.

    Args:
        lives_h: [h] life of each part.

    Returns:
        [h] the shortest; unknown where one is.

    Raises:
        RequirementError: no life at all.

    Holds for lives that are limits; of lives that scatter, the first of many ends sooner.
    Source: life of a set

    >>> set_life_h([64000, 24000, 48000])
    24000
    """
    if not lives_h:
        raise RequirementError("A set of no parts has no life. Give at least one.")
    shortest: float = reduce(least, lives_h)
    return shortest
