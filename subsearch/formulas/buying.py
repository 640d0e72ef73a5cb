"""What a number of pieces costs, with minimum, pack and price breaks."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from subsearch.errors import RequirementError
from subsearch.formulas.carriers import Carrier, most, step


@dataclass(frozen=True)
class Purchase:
    """What to order and what it costs: pieces, the break they are bought at, price of one piece, cost of all."""

    ordered: int
    from_quantity: int
    unit_price: Decimal
    cost: Decimal


def ordered_pieces(pieces: Carrier, minimum: Carrier, pack: Carrier, from_quantity: Carrier) -> Carrier:
    """The fewest pieces one can order at one price break.

    Args:
        pieces: [none] pieces needed; any carrier.
        minimum: [none] fewest pieces one can buy; any carrier.
        pack: [none] pieces are sold in multiples of this, above 0; any carrier.
        from_quantity: [none] the break's price holds from this many pieces; any carrier.

    Returns:
        [none] the pieces to order, at least each and a whole number of packs; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain pack of 0.

    Holds for whole numbers.
    Source: price breaks

    >>> ordered_pieces(7, 1, 5, 1)
    10.0
    """
    return step(most(most(pieces, minimum), from_quantity) / pack, "ceil") * pack


def break_cost(
    pieces: Carrier, minimum: Carrier, pack: Carrier, from_quantity: Carrier, unit_price: Carrier
) -> Carrier:
    """What the needed pieces cost when they are bought at one price break.

    Args:
        pieces: [none] pieces needed; any carrier.
        minimum: [none] fewest pieces one can buy; any carrier.
        pack: [none] pieces are sold in multiples of this, above 0; any carrier.
        from_quantity: [none] the break's price holds from this many pieces; any carrier.
        unit_price: [currency] price of one piece at that break; any carrier.

    Returns:
        [currency] the cost of the ordered pieces; unknown where an input is.

    Raises:
        ZeroDivisionError: a plain pack of 0.

    Holds for ranking, in double; money is summed by `cheapest`, in decimal. The least over the breaks of an offer is
    its cost as long as no larger quantity has a higher unit price.
    Source: price breaks

    >>> break_cost(7, 1, 5, 1, 0.25)
    2.5
    """
    return ordered_pieces(pieces, minimum, pack, from_quantity) * unit_price


def cheapest(pieces: int, minimum: int, pack: int, breaks: Sequence[tuple[int, Decimal]]) -> Purchase:
    """The cheapest way to buy at least so many pieces of one offer, exact to the last decimal.

    More pieces than needed are bought where a lower price makes that cheaper; of equal costs, the fewest pieces.

    Args:
        pieces: [none] pieces needed, 1 or more.
        minimum: [none] fewest pieces one can buy, 1 or more.
        pack: [none] pieces are sold in multiples of this, 1 or more.
        breaks: [none and currency] from-quantity and unit price of each break, in any order.

    Returns:
        What to order, and its cost [currency].

    Raises:
        RequirementError: a number below 1, a negative price, no break, or two prices from one quantity.

    Holds for every list of breaks: each quantity costs the price of the highest break not above it.
    Source: price breaks

    >>> cheapest(90, 1, 1, [(1, Decimal("0.50")), (100, Decimal("0.40"))])
    Purchase(ordered=100, from_quantity=100, unit_price=Decimal('0.40'), cost=Decimal('40.00'))
    """
    rising = sorted(breaks)
    _check(pieces, minimum, pack, rising)
    ends = [from_quantity for from_quantity, _ in rising[1:]]
    found = []
    for (from_quantity, price), end in zip(rising, [*ends, None], strict=True):
        ordered = int(ordered_pieces(pieces, minimum, pack, from_quantity))
        if end is None or ordered < end:  # from the next break on, this price no longer holds
            found.append(Purchase(ordered, from_quantity, price, ordered * price))
    return min(found, key=lambda purchase: (purchase.cost, purchase.ordered))


def _check(pieces: int, minimum: int, pack: int, rising: Sequence[tuple[int, Decimal]]) -> None:
    for name, number in {"The number of pieces": pieces, "The minimum": minimum, "The pack": pack}.items():
        if number < 1:
            raise RequirementError(f"{name} is {number}, but pieces are bought from 1 up. Give 1 or more.")
    if not rising:
        raise RequirementError("The offer has no price, so it can't be bought. Give at least one price break.")
    if rising[0][0] < 1:
        raise RequirementError(f"A price holds from {rising[0][0]} pieces, but the first can be 1. Give 1 or more.")
    for (quantity, _), (following, _) in pairwise(rising):
        if quantity == following:
            raise RequirementError(f"Two prices hold from {quantity} pieces, but one can. Take one of them out.")
    for quantity, price in rising:
        if price < 0:
            raise RequirementError(f"The price from {quantity} pieces is {price}, but the lowest is 0. Correct it.")
