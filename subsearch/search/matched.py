"""One part for several positions at once: of all that fit every one of them, the one with the highest sum of scores."""

from collections.abc import Sequence
from dataclasses import dataclass

import duckdb

from subsearch.search.answers import part_name
from subsearch.search.asking import asked as asked_of
from subsearch.search.asking import rows_of
from subsearch.search.requirement import Requirement
from subsearch.search.stated import Stated
from subsearch.search.statements import scored
from subsearch.search.weights import Weights


def _matched(stated: Stated) -> str:
    """For each group of needs the best of the parts that all of them keep, and how many such parts there are."""
    return stated.written(
        *scored(stated, "", {}),
        "member as (select unnest($members, recursive := true))",
        """common as (
    select grouped, maker, part_number, round(sum(total), 9) as together
    from scored join member using (number) where answer
    group by grouped, maker, part_number having count(*) = any_value(members))""",
        last="""select grouped, maker, part_number, count(*) over (partition by grouped) as fits from common
qualify row_number() over (partition by grouped order by together desc, maker, part_number) = 1
order by grouped""",
    )


@dataclass(frozen=True)
class Common:
    """The best part that fits every position of a group, and how many parts do."""

    maker: str | None
    part_number: str
    fits: int

    @property
    def name(self) -> str:
        """Maker and part number: what the builder writes down."""
        return part_name(self.maker, self.part_number)


def matched(
    con: duckdb.DuckDBPyConnection, groups: Sequence[Sequence[Requirement]], weights: Weights | None = None
) -> list[Common | None]:
    """For each group the best part that fits all its positions, None where there is none: in one statement for all.

    Judged over all parts that fit, not the best of each position only. Best is the highest sum of the scores that the
    part has in each position; ties fall to maker and part number.

    Args:
        con: a catalog opened to read.
        groups: the requirements of each group, one or more.
        weights: the builder's own; else the usual ones of ranking.py.
    """
    found: list[Common | None] = [None] * len(groups)
    asked = [requirement for group in groups for requirement in group]
    of_group = [(at, len(group)) for at, group in enumerate(groups) for _ in group]
    members = [{"number": number, "grouped": at, "members": members} for number, (at, members) in enumerate(of_group)]
    if asked:
        bound = {"members": members, **(weights or Weights()).parameters()}
        for row in rows_of(con, *asked_of(_matched, asked, **bound)):
            found[row["grouped"]] = Common(row["maker"], row["part_number"], row["fits"])
    return found
