"""A history of states that can be undone and done again, whatever a state is."""

from dataclasses import dataclass, field, replace
from typing import Generic, TypeVar

State = TypeVar("State")
MOST_STEPS = 200


@dataclass(frozen=True)
class History(Generic[State]):
    """A state, what came before it (at most MOST_STEPS, the oldest first), and what was undone (the last first).

    >>> tried = History(1).doing(2).doing(3).undone()
    >>> tried.now, tried.can_undo, tried.redone().now, tried.undone().now
    (2, True, 3, 1)
    """

    now: State
    before: tuple[State, ...] = ()
    after: tuple[State, ...] = ()
    key: str = field(default="", compare=False)

    def doing(self, state: State, key: str = "") -> "History[State]":
        """With another state; what was undone is gone.

        A state with the key of the one before it takes its place, so that a slider's drag is one step; one that is no
        other than now is no step.

        >>> History(1).doing(2, "headroom").doing(3, "headroom").undone().now
        1
        """
        if state == self.now:
            return self
        if key and key == self.key:
            if state == self.before[-1]:  # dragged back to where it began: no step is left of it
                return History(state, self.before[:-1])
            return replace(self, now=state)  # nothing is undone while a key lasts
        return History(state, (*self.before, self.now)[-MOST_STEPS:], (), key)

    def undone(self) -> "History[State]":
        """One step back, where there is one."""
        if not self.before:
            return self
        return History(self.before[-1], self.before[:-1], (self.now, *self.after))

    def redone(self) -> "History[State]":
        """The step that was undone last, done again, where there is one."""
        if not self.after:
            return self
        return History(self.after[0], (*self.before, self.now), self.after[1:])

    @property
    def can_undo(self) -> bool:
        """Whether there is a step back."""
        return bool(self.before)

    @property
    def can_redo(self) -> bool:
        """Whether a step was undone."""
        return bool(self.after)
