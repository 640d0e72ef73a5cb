"""The laws of life turned round: how cool it must be, or how little ripple may flow, for the life that is wanted."""

from subsearch.formulas.carriers import Carrier, pick, step


def cool_enough_c(life_h: Carrier, working_c: Carrier, wanted_h: Carrier) -> Carrier:
    """The working temperature at which a part lasts as long as wanted.

    Args:
        life_h: [h] life at the working temperature, without a ceiling; any carrier.
        working_c: [°C] that temperature; any carrier.
        wanted_h: [h] life that is wanted, above 0; any carrier.

    Returns:
        [°C] the temperature; unknown where an input is.

    Raises:
        ValueError: a plain life of 0.
        ZeroDivisionError: a plain 0 wanted.

    Holds for parts of the ten-degree rule.
    Source: ten-degree rule

    >>> cool_enough_c(8000, 65, 16000)
    55.0
    """
    return working_c + 10 * step(life_h / wanted_h, "log2")


def ripple_for_life_a(
    life_h: Carrier, wanted_h: Carrier, rated_rise_k: Carrier, rated_ripple_a: Carrier, with_ripple: Carrier
) -> Carrier:
    """The ripple current up to which a part lasts as long as wanted.

    Args:
        life_h: [h] life at the working temperature without ripple and without a ceiling; any carrier.
        wanted_h: [h] life that is wanted, above 0; any carrier.
        rated_rise_k: [K] rise of the core temperature at the rated ripple current; any carrier.
        rated_ripple_a: [A] rated ripple current, rms; any carrier.
        with_ripple: [1 or 0] 1 where the base life was run with rated ripple, else 0; any carrier.

    Returns:
        [A] the current; unknown where an input is, and where it would not last so long without any ripple.

    Raises:
        ValueError: a plain life of 0.
        ZeroDivisionError: a plain 0 wanted.

    Holds for parts of the ten-degree rule, up to about the rated ripple current.
    Source: ten-degree rule, ripple on the core, core rise

    >>> ripple_for_life_a(24000, 6000, 5, 1, 0)
    2.0
    """
    rise_k = with_ripple * rated_rise_k + 10 * step(life_h / wanted_h, "log2")
    return rated_ripple_a * (pick(rise_k >= 0, rise_k) / rated_rise_k) ** 0.5
