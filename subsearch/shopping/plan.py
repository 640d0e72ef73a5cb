"""Which offers to buy: each chosen part, summed over its positions and cards, at its cheapest way to buy.

This is the one place to widen when several suppliers, postage and spares are weighed together.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import partial

import duckdb

from subsearch.catalog.rates import stored_rates
from subsearch.formulas.buying import Purchase, cheapest
from subsearch.repair.choosing import Choice
from subsearch.search.answers import Row
from subsearch.search.offers import Offer, offers_for
from subsearch.search.requirement import MOST_PIECES


@dataclass(frozen=True)
class Line:
    """One thing to order: the part, the offer, how many are needed and ordered, and for which positions.

    `cost` is in the offer's currency; `own_cost` in the builder's own, None where no rate is kept.
    """

    part: Row
    offer: Offer
    needed: int
    purchase: Purchase
    positions: tuple[str, ...]

    @property
    def own_cost(self) -> Decimal | None:
        """The cost in the builder's own currency."""
        return self.offer.own(self.purchase.cost)


@dataclass(frozen=True)
class ShoppingList:
    """What to order, in the order of suppliers; sentences for what can't be ordered; and the builder's own currency."""

    lines: tuple[Line, ...]
    short: tuple[str, ...]
    currency: str | None

    @property
    def total(self) -> Decimal:
        """Sum of the lines whose cost in the builder's own currency is known, to the cent."""
        known = (line.own_cost for line in self.lines if line.own_cost is not None)
        return sum(known, Decimal(0)).quantize(Decimal("0.01"), ROUND_HALF_UP)

    @property
    def without_rate(self) -> tuple[Line, ...]:
        """Lines in a currency for which no rate is kept: they are not in the total."""
        return tuple(line for line in self.lines if line.own_cost is None)


def plan(con: duckdb.DuckDBPyConnection, choices: Sequence[Choice]) -> ShoppingList:
    """The shopping list for the choices of a repair: one line a part, or several where no single offer has enough."""
    by_part: dict[tuple[str | None, str], list[Choice]] = {}
    for choice in choices:
        if choice.candidate is not None:
            part = choice.candidate.part
            by_part.setdefault((part["maker"], part["part_number"]), []).append(choice)
    offers = _shared_offers(con, by_part)
    lines: list[Line] = []
    short: list[str] = []
    for key, its_choices in by_part.items():
        lines += _buy(its_choices, offers[key], short)
    lines.sort(key=_printed_order)
    return ShoppingList(tuple(lines), tuple(short), _own_currency(con))


def _own_currency(con: duckdb.DuckDBPyConnection) -> str | None:
    return next((rate.currency for rate in stored_rates(con) if rate.worth == 1), None)


def _printed_order(line: Line) -> tuple[str, str, str, str]:
    offer, part = line.offer.printed, line.part
    return offer["supplier"], part["maker"] or "", part["part_number"], offer["supplier_number"] or ""


def _shared_offers(
    con: duckdb.DuckDBPyConnection, by_part: dict[tuple[str | None, str], list[Choice]]
) -> dict[tuple[str | None, str], list[Offer]]:
    """For each part, the offers that every one of its positions may be served from."""
    asked = [
        (choice.found.requirement, *key)
        for key, choices in by_part.items()
        for choice in choices
        if choice.found is not None
    ]
    shared: dict[tuple[str | None, str], list[Offer]] = {}
    for (_, maker, number), offers in zip(asked, offers_for(con, asked), strict=True):
        before = shared.get((maker, number))
        shared[maker, number] = offers if before is None else [offer for offer in before if offer in offers]
    return shared


def _buy(choices: list[Choice], offers: list[Offer], short: list[str]) -> list[Line]:
    """The lines for one part; what can't be had is said in `short`."""
    candidate = choices[0].candidate
    requirements = [choice.found.requirement for choice in choices if choice.found is not None]
    if candidate is None:
        return []
    missing, left = sum(one.pieces for one in requirements), list(offers)
    names = tuple(one.reference for one in requirements)
    lines: list[Line] = []
    while missing and left:
        offer, purchase = min(_ways(missing, left), key=partial(_rank, missing))
        left.remove(offer)
        if purchase is not None:
            needed = min(missing, purchase.ordered)
            lines.append(Line(candidate.part, offer, needed, purchase, names))
            missing -= needed
    if missing and not offers:
        short.append(f"{candidate.name}, for {', '.join(names)}: no offer of it can be bought. {_why_not(choices[0])}")
    elif missing:
        short.append(
            f"{candidate.name}: {missing} more are needed for {', '.join(names)} than its offers have in stock."
        )
    return lines


def _why_not(choice: Choice) -> str:
    """What stands against each offer of a chosen part."""
    if choice.found is None or choice.candidate is None:
        return ""
    part = choice.candidate.part
    return choice.found.why(part["maker"], part["part_number"])[-1].sentence + "."


def _ways(missing: int, offers: list[Offer]) -> list[tuple[Offer, Purchase | None]]:
    """From each offer all that is missing, where one of them has so many; else from each as many as it has."""
    whole = [(offer, purchase) for offer in offers if (purchase := _purchase(missing, offer)) is not None]
    return list(whole) or [(offer, _purchase(_in_whole_packs(offer), offer)) for offer in offers]


def _in_whole_packs(offer: Offer) -> int:
    """The pieces one can buy; a stock that is not stated is taken for enough, since only a pin leads here with one."""
    stock, pack = offer.printed["stock"], offer.printed["pack"] or 1
    return MOST_PIECES * pack if stock is None else int(stock // pack * pack)


def _purchase(pieces: int, offer: Offer) -> Purchase | None:
    """The cheapest way to buy so many from one offer without asking for more than it has; None: there is none."""
    stock = _in_whole_packs(offer)
    within = [(quantity, price) for quantity, price in offer.breaks if quantity <= stock]
    while within and pieces >= 1:
        purchase = cheapest(pieces, offer.printed["minimum"] or 1, offer.printed["pack"] or 1, within)
        if purchase.ordered <= stock:
            return purchase
        within = [one for one in within if one[0] < purchase.from_quantity]
    return None


def _rank(missing: int, way: tuple[Offer, Purchase | None]) -> tuple[bool, bool, int, Decimal, str, str]:
    """What can be bought before what can't, known money before unknown, the most of the missing, then the cheapest."""
    offer, purchase = way
    name = offer.printed["supplier"], offer.printed["supplier_number"] or ""
    if purchase is None:
        return True, True, 0, Decimal(0), *name
    own = offer.own(purchase.cost)
    return False, own is None, -min(missing, purchase.ordered), own or Decimal(0), *name
