"""Which mark tells the plus of a part from its minus, and on which side of the body it stands."""

from typing import NamedTuple

from subsearch.terms import TANTALUM, WET, WITHOUT_POLARITY

PLUS, MINUS = "plus", "minus"


class Mark(NamedTuple):
    """What is printed or pressed on the body, the sign of the lead that it stands at, and the sentence that says it."""

    kind: str
    sign: str
    words: str


STRIPE = Mark("stripe", MINUS, "the stripe on the sleeve is minus")
GROOVE = Mark("groove", PLUS, "the groove end of an axial can is plus")
BEAD = Mark("mark", PLUS, "the mark on a tantalum bead is plus")
LOOK_UP = Mark("", "", "look up what the mark on the case means")


def mark_of(technology: str | None, shape: str | None) -> Mark:
    """The mark of a polar part; its kind is empty where no rule of the trade names one.

    >>> mark_of("wet aluminium", "can").words, mark_of("polymer aluminium", "can").kind
    ('the stripe on the sleeve is minus', '')
    """
    if technology == TANTALUM:
        return BEAD
    if shape == "axial":
        return GROOVE
    return STRIPE if technology == WET and shape == "can" else LOOK_UP


def may_be_polar(technology: str | None, polarity: str | None) -> bool:
    """Whether a part must be taken as polar: all but those that are bipolar or of a kind that has no polarity.

    >>> may_be_polar("wet aluminium", None), may_be_polar("film PET", None)
    (True, False)
    """
    return polarity != "bipolar" and technology not in WITHOUT_POLARITY
