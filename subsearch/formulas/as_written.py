"""Numbers as they are written, so that a limit is the limit that is printed; and how near counts as equal."""

from decimal import Decimal

SLACK = 1e-9  # a limit is met within this share of it, for numbers come out of float arithmetic. Source: float noise


def as_written(number: float) -> Decimal:
    """The decimal number that a float is printed as: 4.7e-6 is 47 ten-millionths and nothing beside it.

    Args:
        number: [none] any finite number.

    Returns:
        [none] the decimal number.

    Holds for numbers of up to 15 figures, which come back as they were written.
    Source: float noise

    >>> as_written(4.7e-6) * 10
    Decimal('0.0000470')
    """
    return Decimal(repr(float(number)))
