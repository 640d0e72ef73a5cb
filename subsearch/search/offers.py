"""Every offer of the chosen parts that a position may be served from: what a shopping list is planned from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

import duckdb

from subsearch.search.answers import Row, frozen
from subsearch.search.asking import needs, rows_of
from subsearch.search.criteria import OFFER_CRITERIA
from subsearch.search.requirement import Requirement
from subsearch.search.statements import NEED, PINNED

ANSWER = " and ".join(criterion.answer() for criterion in OFFER_CRITERIA)
OFFERS = f"""with {NEED}
select need.number, offer, rate.worth
from need join part on {PINNED} join offer using (pk) left join currency_rate as rate using (currency)
where {ANSWER}
order by number, offer.supplier, offer.supplier_number"""


@dataclass(frozen=True)
class Offer:
    """One offer as printed, and what one unit of its currency is worth in the builder's own (None: no rate is kept)."""

    printed: Row
    worth: Decimal | None

    @property
    def breaks(self) -> list[tuple[int, Decimal]]:
        """From-quantity and unit price of each price break."""
        return [(one["from"], one["price"]) for one in self.printed["prices"]]


def offers_for(
    con: duckdb.DuckDBPyConnection, chosen: Sequence[tuple[Requirement, str | None, str]]
) -> list[list[Offer]]:
    """For each requirement with the maker and part number chosen for it, the offers that answer yes for one piece.

    How many pieces are needed in all is only known once all positions are chosen, so stock is asked for one.
    """
    asked = [
        replace(requirement, pieces=1, pinned_maker=maker, pinned_part_number=number)
        for requirement, maker, number in chosen
    ]
    found: list[list[Offer]] = [[] for _ in asked]
    if asked:
        rows: list[dict[str, Any]] = rows_of(con, OFFERS, {"needs": needs(asked)})
        for row in rows:
            found[row["number"]].append(Offer(frozen(row["offer"]), row["worth"]))
    return found
