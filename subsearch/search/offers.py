"""Every offer of the chosen parts that a position may be served from: what a shopping list is planned from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

import duckdb

from subsearch.search.answers import Row, frozen
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.parts import PINNED
from subsearch.search.requirement import Requirement
from subsearch.search.stated import Stated
from subsearch.search.statements import offer_answer


def _offers(stated: Stated) -> str:
    answer = offer_answer(stated)
    return stated.written(
        last=f"""select need.number as number, offer, rate.worth, ({answer}) as answer
from {"part" if stated.alone else "need join part"} {"" if stated.alone else f"on {PINNED}"} join offer using (pk)
    left join currency_rate as rate using (currency)
where ({answer}) is not false and {PINNED}
order by number, offer.supplier, offer.supplier_number"""
    )


@dataclass(frozen=True)
class Offer:
    """One offer as printed, and what one unit of its currency is worth in the builder's own (None: no rate is kept)."""

    printed: Row
    worth: Decimal | None

    def own(self, cost: Decimal) -> Decimal | None:
        """A cost in the offer's currency as one in the builder's own; nothing costs nothing in any currency."""
        if cost == 0:
            return Decimal(0)
        return None if self.worth is None else cost * self.worth

    @property
    def breaks(self) -> list[tuple[int, Decimal]]:
        """From-quantity and unit price of each price break."""
        return [(one["from"], one["price"]) for one in self.printed["prices"]]


def offers_for(
    con: duckdb.DuckDBPyConnection, chosen: Sequence[tuple[Requirement, str | None, str]]
) -> list[list[Offer]]:
    """For each requirement with the maker and part number chosen for it, the offers that answer yes for one piece.

    How many pieces are needed in all is only known once all positions are chosen, so stock is asked for one. For a part
    that the builder has pinned, an offer that does not state something will do as well: they have asked the supplier.
    """
    asked = [
        replace(requirement, pieces=1, pinned_maker=maker, pinned_part_number=number)
        for requirement, maker, number in chosen
    ]
    found: list[list[Offer]] = [[] for _ in asked]
    if asked:
        rows: list[dict[str, Any]] = rows_of(con, *asked_of(_offers, asked))
        for row in rows:
            if row["answer"] or chosen[row["number"]][0].pinned_part_number is not None:
                found[row["number"]].append(Offer(frozen(row["offer"]), row["worth"]))
    return found
