"""How long film parts last, and how much voltage they take when hot."""

from subsearch.formulas.carriers import Carrier, most, step

VOLTAGE_EXPONENTS = (7.0, 9.0)  # the lowest and the highest in use. Source: film voltage exponent
PULSE_EXPONENT = 13.1  # measured: high-crystalline polypropylene in pulse duty. Source: measured voltage exponent
USUAL_HALVING_K = 10.0  # as wet parts have it. Source: film life
MEASURED_HALVING_K = 8.0  # metallised film. Source: film halving
OPERATIONAL_LIFE_H = 300_000.0  # a maker's figure for metallised polyester. Source: film operational life
DC_FROM_C, AC_FROM_C = 85.0, 75.0  # the rated voltage holds up to here. Source: polyester derating
POLYESTER_PCT = 1.25  # of the rated voltage, for every degree more. Source: polyester derating
POLYPROPYLENE_PCT = 1.35  # likewise. Source: polypropylene derating


def film_voltage_factor(rated_v: Carrier, working_v: Carrier, exponent: Carrier) -> Carrier:
    """How many times longer a film part lasts below its rated voltage.

    Args:
        rated_v: [V] rated voltage; any carrier.
        working_v: [V] voltage that stands on it, not 0, of either polarity; any carrier.
        exponent: [none] by how steep a power life falls with voltage; any carrier.

    Returns:
        [none] the factor, 1 at the rated voltage; unknown where an input is.

    Raises:
        ValueError: a plain rated voltage of 0.
        ZeroDivisionError: a plain working voltage of 0.

    Holds for an option to be marked as such: exponents are known from memory (VOLTAGE_EXPONENTS) or for pulses only.
    Source: film voltage exponent

    >>> round(film_voltage_factor(100, 80, 7), 3)
    4.768
    """
    ratio = step(rated_v / working_v, "abs")  # either polarity; and as a power of 2, since 1 ** unknown would be 1
    return 2 ** (exponent * step(ratio, "log2"))


def film_life_h(  # noqa: PLR0913  each is a number of its own, and a carrier
    base_life_h: Carrier,
    rated_v: Carrier,
    working_v: Carrier,
    rated_c: Carrier,
    hot_spot_c: Carrier,
    exponent: Carrier,
    halving_k: Carrier = USUAL_HALVING_K,
) -> Carrier:
    """Life of a film part by its voltage and its hot spot.

    Args:
        base_life_h: [h] life at the rated voltage and temperature; any carrier.
        rated_v: [V] rated voltage; any carrier.
        working_v: [V] voltage that stands on it, not 0, of either polarity; any carrier.
        rated_c: [°C] temperature at which that life is stated; any carrier.
        hot_spot_c: [°C] hottest place inside the part; any carrier.
        exponent: [none] by how steep a power life falls with voltage; any carrier.
        halving_k: [K] degrees that halve the life, above 0: USUAL_HALVING_K or MEASURED_HALVING_K; any carrier.

    Returns:
        [h] the life, without a ceiling; unknown where an input is.

    Raises:
        ValueError: a plain rated voltage of 0.
        ZeroDivisionError: a plain working voltage of 0, or plain halving degrees of 0.

    Holds for an option to be marked as such: the law is known from memory, and film is not limited by a rule of life.
    Source: film life, film voltage exponent, film halving

    >>> film_life_h(1000, 100, 50, 85, 75, 7)
    256000.0
    """
    return base_life_h * film_voltage_factor(rated_v, working_v, exponent) * 2 ** ((rated_c - hot_spot_c) / halving_k)


def film_voltage_v(rated_v: Carrier, working_c: Carrier, from_c: Carrier, derating_pct: Carrier) -> Carrier:
    """The voltage that a film part takes when hot: so many hundredths of the rated one less for every degree.

    Args:
        rated_v: [V] rated voltage, d.c. or a.c. as is asked; any carrier.
        working_c: [°C] temperature at the part; any carrier.
        from_c: [°C] temperature up to which the rated voltage holds: DC_FROM_C or AC_FROM_C; any carrier.
        derating_pct: [%] of the rated voltage, per degree: POLYESTER_PCT or POLYPROPYLENE_PCT; any carrier.

    Returns:
        [V] the voltage allowed, never below 0; unknown where an input is.

    Holds for temperatures up to the part's highest one, which this law does not know.
    Source: polyester derating, polypropylene derating

    >>> film_voltage_v(63, 100, 85, 1.25)
    51.1875
    """
    return rated_v * most(1 - derating_pct / 100 * most(working_c - from_c, 0), 0)
