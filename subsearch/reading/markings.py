"""What is printed on a capacitor or written of it in a list, read piece by piece; nothing is guessed silently."""

import re
from dataclasses import dataclass

from subsearch.reading.marking_bare import bare_numbers, unsure
from subsearch.reading.marking_bodies import alone, bodies, listed_sizes, named_sizes
from subsearch.reading.marking_codes import bare_codes, codes
from subsearch.reading.marking_conditions import conditions, spread
from subsearch.reading.marking_draft import Doubt, Draft
from subsearch.reading.marking_numbers import LETTERS, mark_of
from subsearch.reading.marking_others import absent, dates_and_names, decide, others
from subsearch.reading.marking_ratings import mains, ratings
from subsearch.reading.marking_several import bare_cans, count_behind, one_can_or_two, several
from subsearch.reading.marking_signs import begin
from subsearch.reading.marking_unmarked import old_letters, unmarked
from subsearch.reading.marking_values import values
from subsearch.reading.marking_words import neutral_or_ceramic, plain_words, words

LONGEST = 300
STEPS = (
    listed_sizes, conditions, dates_and_names, named_sizes, words, ratings, unmarked, old_letters, others, bare_cans,
    bodies, several, values, codes, spread, alone, bare_codes, count_behind, plain_words, bare_numbers, unsure,
    neutral_or_ceramic, mains, one_can_or_two,
)  # fmt: skip
UNREAD = re.compile(rf"[.,]?[0-9{LETTERS}\u3040-\u30ff\u4e00-\u9fff\uac00-\ud7a3][^\0]*")
INNER = ("capacitor", "double")  # what the steps tell each other


@dataclass(frozen=True, repr=False)
class Reading:
    """What a marking states, the pieces of text it came from, and every doubt about it; None is "not stated".

    tolerance is low and high [%]; sections are the capacitances [F] of a can that holds several, and capacitance_f
    is then the first one's. family is wider than technology: film, ceramic, mica. height_mm is that of a can as it
    stands. unread: what was not understood. not_a_capacitor: why it is none, in a sentence, or "".
    """

    capacitance_f: float | None = None
    tolerance: tuple[float, float] | None = None
    rated_v: float | None = None
    rated_ac_v: float | None = None
    polarity: str | None = None
    technology: str | None = None
    family: str | None = None
    lead_style: str | None = None
    diameter_mm: float | None = None
    height_mm: float | None = None
    length_mm: float | None = None
    width_mm: float | None = None
    lead_spacing_mm: float | None = None
    rated_c: float | None = None
    life_h: float | None = None
    safety_class: str | None = None
    count: int | None = None
    sections: tuple[float, ...] = ()
    pieces_of_text: tuple[tuple[str, str], ...] = ()
    doubts: tuple[Doubt, ...] = ()
    unread: str = ""
    not_a_capacitor: str = ""

    def __repr__(self) -> str:
        """Only what is stated, so that a notebook's cell can be read."""
        stated = (f"{name}={value!r}" for name, value in vars(self).items() if value not in (None, (), ""))
        return f"Reading({', '.join(stated)})"

    def doubted(self, name: str) -> bool:
        """Whether a doubt touches this field."""
        return any(name in doubt.fields for doubt in self.doubts)


def read_marking(marking: str, decimal_mark: str = "") -> Reading:
    """Give what the marking of a capacitor states, with the piece of text behind each claim.

    marking: as printed, or as a list says it, such as "330u 6V3". decimal_mark: "," or "." where the list it stands in
    leaves no doubt of it; what the text itself shows goes first. Result: capacitance [F], voltages [V], tolerance
    [%], sizes [mm], temperature [°C], life [h]. Where the trade would not agree, the likeliest reading, and a doubt
    that tells the other. What is no capacitor's states no capacitance, and `not_a_capacitor` says why. Raises nothing.

    >>> reading = read_marking("2.2uF 50V bipolar")
    >>> reading.capacitance_f, reading.rated_v, reading.polarity, reading.doubts
    (2.2e-06, 50.0, 'bipolar', ())
    >>> [str(doubt) for doubt in read_marking("47/16").doubts]
    ['"47/16" was taken as 47 µF 16 V: no unit is printed.']
    """
    draft = begin(marking[: LONGEST + 1])
    if (length := max(len(marking), len(draft.printed))) > LONGEST:  # one sign may stand for several: ½, ㎌
        sentence = f"The marking has {length} characters, more than {LONGEST}. Give one part's only."
        return Reading(doubts=(Doubt(sentence),), unread=marking, not_a_capacitor=sentence)
    draft.mark = mark_of(draft.rest) or decimal_mark
    if not absent(draft):
        for step in STEPS:
            step(draft)
        decide(draft)
    return _reading(draft, marking)


def _reading(draft: Draft, marking: str) -> Reading:
    unread = " ".join(
        " ".join(draft.printed[m.start() : m.end()].split()).strip(" /,;·|-+()")
        for m in UNREAD.finditer(draft.rest)
        if len(m[0].strip(" /,;·|-+()")) > 1 or m[0].isdigit()
    )
    if draft.against:
        return Reading(unread=unread, not_a_capacitor=draft.against)
    if "capacitance_f" not in draft.stated:
        draft.against = f'No capacitance can be read in "{marking}". Write it like 4.7 µF 63 V.'
    stated = {name: value for name, value in draft.stated.items() if name not in INNER}
    return Reading(
        **stated,
        pieces_of_text=tuple(draft.pieces),
        doubts=tuple(draft.doubts),
        unread=unread,
        not_a_capacitor=draft.against,
    )
