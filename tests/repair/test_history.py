"""What is done can be undone and done again, and one drag of a slider is one step."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from subsearch.repair.history import MOST_STEPS, History

STATES = st.integers(0, 5)
KEYS = st.sampled_from(["", "headroom", "left"])
DOINGS = st.lists(st.tuples(STATES, KEYS), max_size=30)


def after(doings: list[tuple[int, str]], began: int = 0) -> History[int]:
    history = History(began)
    for state, key in doings:
        history = history.doing(state, key)
    return history


def test_undoing_and_doing_again() -> None:
    history = after([(1, ""), (2, "")])
    assert (history.now, history.can_undo, history.can_redo) == (2, True, False)
    once, twice = history.undone(), history.undone().undone()
    assert (once.now, twice.now, twice.can_undo, twice.can_redo) == (1, 0, False, True)
    assert twice.undone() == twice and history.redone() == history
    assert (twice.redone().now, twice.redone().redone()) == (1, history)
    assert once.doing(7).redone().now == 7


def test_one_drag_is_one_step() -> None:
    drag = after([(1, "headroom"), (2, "headroom"), (3, "headroom")])
    assert (drag.now, drag.undone().now) == (3, 0)
    assert after([(1, "headroom"), (2, "left")]).undone().now == 1
    assert after([(1, ""), (2, "")]).undone().now == 1
    assert drag.undone().doing(4, "headroom").undone().now == 0  # another drag


def test_a_drag_back_to_its_beginning_leaves_no_step() -> None:
    back = after([(9, ""), (1, "headroom"), (9, "headroom")])
    assert (back.now, back.undone().now) == (9, 0)
    assert back.doing(5, "headroom").undone().now == 9


def test_what_was_undone_is_gone_after_a_drag_goes_on() -> None:
    history = after([(1, "headroom"), (2, "left")]).undone().doing(3, "headroom")
    assert not history.can_redo
    assert history.undone().now == 1


def test_only_so_many_steps_are_kept() -> None:
    history = after([(state, "") for state in range(1, 500)])
    assert len(history.before) == MOST_STEPS == 200
    for _ in range(MOST_STEPS):
        history = history.undone()
    assert (history.now, history.can_undo) == (499 - MOST_STEPS, False)


@given(DOINGS)
def test_undo_and_redo_are_each_others_opposite(doings: list[tuple[int, str]]) -> None:
    history = after(doings)
    states = [history.now]
    while history.can_undo:
        assert history.undone().redone() == history
        history = history.undone()
        states.append(history.now)
    assert history.now == 0
    assert all(one != other for one, other in pairwise(states))  # every step is one that is seen
    for state in reversed(states[:-1]):
        history = history.redone()
        assert history.now == state
    assert not history.can_redo


@given(DOINGS, STATES, KEYS)
def test_a_new_state_is_now_and_ends_what_was_undone(doings: list[tuple[int, str]], state: int, key: str) -> None:
    history = after(doings).undone()
    done = history.doing(state, key)
    assert done.now == state
    assert done == history if state == history.now else not done.can_redo
