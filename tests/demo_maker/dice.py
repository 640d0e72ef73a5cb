"""Seeded chance that is the same on every platform and Python: only Random.random() is ever drawn."""

from collections.abc import Sequence
from random import Random
from typing import TypeVar

T = TypeVar("T")


class Dice:
    """One stream of chance; each subject has its own, so that a change in one leaves the others alone."""

    def __init__(self, seed: int, subject: str) -> None:
        self._random = Random(f"{seed} {subject}")

    def chance(self, share: float) -> bool:
        """True with the given share."""
        return self._random.random() < share

    def between(self, low: int, high: int) -> int:
        """A whole number from low to high, both included."""
        return low + int(self._random.random() * (high - low + 1))

    def factor(self, spread: float) -> float:
        """A factor around 1, at most the spread away."""
        return 1 + spread * (2 * self._random.random() - 1)

    def pick(self, choices: Sequence[T]) -> T:
        """One of the choices."""
        return choices[self.between(0, len(choices) - 1)]

    def some(self, choices: Sequence[T], weights: Sequence[float], pieces: int) -> list[T]:
        """So many different choices, the heavier ones more often, in the order of the choices."""
        left = list(range(len(choices)))
        taken: list[int] = []
        for _ in range(min(pieces, len(left))):
            mark = self._random.random() * sum(weights[index] for index in left)
            for index in left:
                mark -= weights[index]
                if mark < 0:
                    break
            left.remove(index)
            taken.append(index)
        return [choices[index] for index in sorted(taken)]

    def shuffled(self, things: Sequence[T]) -> list[T]:
        """The things in another order."""
        keys = [self._random.random() for _ in things]
        return [things[index] for index in sorted(range(len(things)), key=lambda index: keys[index])]
