"""The preferred series of the international standard IEC 60063, in which capacitors and resistors are made."""

from collections.abc import Mapping

from subsearch.errors import known_word

# The first figures of the values of each series; E48 and E96 have three. Source: preferred values, closer series
PREFERRED_SERIES: Mapping[str, tuple[int, ...]] = {
    "E3": (10, 22, 47),
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
    "E48": tuple(round(100 * 10 ** (step / 48)) for step in range(48)),
    "E96": tuple(round(100 * 10 ** (step / 96)) for step in range(96)),
}


def decade(series: str) -> tuple[int, ...]:
    """The figures of a preferred series, from one power of ten to the next.

    Args:
        series: E3, E6, E12, E24, E48 or E96.

    Returns:
        [none] two figures each, rising; three figures each for E48 and E96.

    Raises:
        UnknownNameError: no such series; the text names the nearest.

    Holds for every decade alike.
    Source: preferred values, closer series

    >>> decade("E6")
    (10, 15, 22, 33, 47, 68)
    """
    return PREFERRED_SERIES[known_word(series, PREFERRED_SERIES, "a preferred series")]


def per_decade(series: str) -> int:
    """How many values a preferred series has in a decade.

    Args:
        series: E3, E6, E12, E24, E48 or E96.

    Returns:
        [none] the count.

    Raises:
        UnknownNameError: no such series; the text names the nearest.

    Holds for every decade alike.
    Source: preferred values, closer series

    >>> per_decade("E12")
    12
    """
    return len(decade(series))
