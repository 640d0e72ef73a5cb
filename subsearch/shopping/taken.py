"""The parts that the builder took, one position after the other, asked again together, and what they come to."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import duckdb

from subsearch.errors import RequirementError
from subsearch.repair.asking import Asked
from subsearch.repair.choosing import Choice
from subsearch.repair.inquiry import PartKey, pinned
from subsearch.repair.single import taken
from subsearch.search.candidates import Found, find
from subsearch.shopping.plan import ShoppingList, plan


@dataclass(frozen=True)
class Bought:
    """A choice for each position whose part can still be taken, their shopping list, and by name why others can't."""

    choices: tuple[Choice, ...]
    shopping: ShoppingList
    gone: Mapping[str, str]


def bought(con: duckdb.DuckDBPyConnection, wanted: Sequence[tuple[Asked, PartKey]]) -> Bought:
    """Ask for what was taken in the catalog as it is now.

    Args:
        con: a catalog opened to read.
        wanted: what each position asked when its part was taken, and the part.
    """
    asked = [(one, key, one.requirement) for one, key in wanted if one.requirement is not None]
    answers = find(con, [pinned(requirement, key) for _, key, requirement in asked], 1)
    choices: list[Choice] = []
    gone: dict[str, str] = {}
    for (one, (_, number), _), found in zip(asked, answers, strict=True):
        try:
            choices.append(_taken(one, number, found))
        except RequirementError as error:
            gone[one.position.name] = str(error)
    return Bought(tuple(choices), plan(con, choices), gone)


def _taken(asked: Asked, number: str, found: Found) -> Choice:
    if found.pinned is None:
        raise RequirementError(
            f"{asked.position.name}: the catalog has no {number} any more. Load its list, or take another part."
        )
    return taken(found, found.pinned, asked)
