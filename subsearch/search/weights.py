"""How much each contribution counts: the visible weights of ranking.py, or the builder's own in their place."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from subsearch.errors import RequirementError, known_word
from subsearch.search.ranking import CONTRIBUTIONS

USUAL = MappingProxyType({one.name: one.weight for one in CONTRIBUTIONS})
MOST = 1e6  # scores are compared to nine places; beyond this a double no longer holds them


@dataclass(frozen=True)
class Weighed:
    """One contribution: its weight, what it means, and what it adds to each part (None: not stated)."""

    name: str
    weight: float
    meaning: str
    added: tuple[float | None, ...]


@dataclass(frozen=True)
class Weights:
    """A weight for every contribution: those given, 0 or more, and the usual ones for the rest.

    Raises:
        UnknownNameError: a name that no contribution has; the text names the nearest.
        RequirementError: a weight below 0, or none that can be reckoned with.

    >>> weights = Weights({"life": 2})
    >>> weights.by_name["life"], weights.by_name["price"]
    (2.0, 1.0)
    """

    by_name: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for name, weight in self.by_name.items():
            known_word(name, USUAL, "a contribution to the score")
            if not 0 <= weight <= MOST:
                raise RequirementError(
                    f"The weight of {name} is {weight:g}; allowed is 0 to {MOST:,.0f}. 0 leaves it out, "
                    f"{USUAL[name]:g} is usual."
                )
        own = {name: float(self.by_name.get(name, usual)) for name, usual in USUAL.items()}
        object.__setattr__(self, "by_name", MappingProxyType(own))

    def parameters(self) -> dict[str, float]:
        """The weights as they are bound to a statement."""
        return {one.parameter: self.by_name[one.name] for one in CONTRIBUTIONS}

    def changed(self) -> dict[str, float]:
        """The weights that are not the usual ones.

        >>> Weights({"life": 2, "price": 1}).changed()
        {'life': 2.0}
        """
        return {name: weight for name, weight in self.by_name.items() if weight != USUAL[name]}
