"""Words in a marking: technology, polarity, style, safety class, and what says that it is something else."""

import re
import unicodedata
from functools import cache

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, WORD_END, WORD_START
from subsearch.reading.marking_vocabulary import (
    BEFORE_A_NEIGHBOUR,
    FAMILY,
    JOINED,
    NOT,
    OTHERS,
    PLAIN,
    SIGNS,
    WORDS,
    Meaning,
)
from subsearch.terms import C0G, CLASS_2, FILM_PP, PAPER, WET

WORD = re.compile(rf"{WORD_START}[{LETTERS}][{LETTERS}0]*(?:-[{LETTERS}]{{2,}})*{WORD_END}")
BOTH = re.compile(rf"{WORD_START}(?P<a>[{LETTERS}]+)(?= (?P<b>[{LETTERS}]+){WORD_END})")
CLASS = re.compile(rf"{WORD_START}([XY][12])(?:\s*/?\s*([XY][12]))?{WORD_END}")
SMALL_CLASS = re.compile(rf"{WORD_START}([xy][12])(?:\s*/?\s*([xy][12]))?{WORD_END}")
MAINS = re.compile(r"(?i)2[4-7][05]\s*v|30[05]\s*v|31[05]\s*v|~|ac|class|klasse")
DIELECTRIC = re.compile(rf"{WORD_START}(?:[XYZ][4-9][P-V]|2[BEF]4|hi-?k|y5v|z5u){WORD_END}", re.IGNORECASE)
NEUTRAL = re.compile(rf"{WORD_START}(?:N[./]\s?P\.?|NP|B[./]\s?P\.?|BP|BI){WORD_END}", re.IGNORECASE)
NP0 = re.compile(rf"{WORD_START}(?:NP[0O]|C[0O]G){WORD_END}", re.IGNORECASE)
POLAR: Meaning = ("polarity", "polar")
BIPOLAR: Meaning = ("polarity", "bipolar")
DOTTED = (  # abbreviations with points
    (re.compile(rf"{WORD_START}M\.\s?P\.?{WORD_END}"), ("technology", PAPER)),
    (re.compile(rf"{WORD_START}P\.\s?P\.?{WORD_END}"), ("technology", FILM_PP)),
)
# "across the relay coil", "parallel to trimmer": between the two may stand an article and one more word
NEIGHBOUR = re.compile(
    rf"{WORD_START}(?:{'|'.join(BEFORE_A_NEIGHBOUR.split())})\s+(?:[{LETTERS}]+\s+){{0,2}}$", re.IGNORECASE
)
WIDE = re.compile("[\u3040-\u30ff\u4e00-\u9fff\uac00-\ud7a3]")
SMALL_F = 47e-9  # a bipolar electrolytic is never so small: there NP means the ceramic NP0
LARGEST_C0G_F = 0.9e-6  # common practice


@cache
def _vocabulary() -> tuple[dict[str, Meaning], dict[str, Meaning]]:
    """Whole words and beginnings of words, in small letters without accents."""
    whole: dict[str, Meaning] = {}
    stems: dict[str, Meaning] = {}
    every = [*WORDS.items(), *((("other", what), words) for what, words in OTHERS.items())]
    for meaning, words in every:
        for word in words.split():
            (stems if word.endswith("*") else whole).setdefault(_plain(word.rstrip("*")), meaning)
    return whole, stems


def _plain(word: str) -> str:
    small = word.casefold()
    if small.isascii():
        return small
    return "".join(sign for sign in unicodedata.normalize("NFKD", small) if not unicodedata.combining(sign))


def meaning_of(word: str) -> Meaning | None:
    """Give what a word states: the name of a field and its value, or None for a word that is not known.

    >>> meaning_of("Elko"), meaning_of("плёночный"), meaning_of("Hollow")
    (('technology', 'wet aluminium'), ('family', 'film'), None)
    """
    whole, stems = _vocabulary()
    plain = _plain(word)
    if plain in whole:
        return whole[plain]
    if plain.endswith(("elko", "elkos", "elco", "elcos")):
        return "technology", WET  # a compound word
    return next((stems[plain[:end]] for end in range(len(plain), 2, -1) if plain[:end] in stems), None)


def words(draft: Draft) -> None:
    """Read every word that is known; what is not stays unread."""
    _classes(draft)
    while found := NP0.search(draft.rest):
        _state(draft, ("technology", C0G), draft.take(found))
    while found := DIELECTRIC.search(draft.rest):
        _state(draft, ("technology", CLASS_2), draft.take(found))
    for pattern, meaning in DOTTED:
        while dotted := pattern.search(draft.rest):
            _state(draft, meaning, draft.take(dotted))
    for found in BOTH.finditer(draft.rest):
        if joined := JOINED.get(_plain(f"{found['a']} {found['b']}")) or _denied(found["a"], found["b"]):
            _state(draft, joined, f"{draft.take(found)} {draft.take(found, 'b')}")
    for found in WORD.finditer(draft.rest):
        if len(found[0]) > 1 and (single := meaning_of(found[0])) and single != PLAIN:
            piece = draft.take(found)
            if single[0] != "other" or not NEIGHBOUR.search(draft.printed, 0, found.start()):
                _state(draft, single, piece)
    while found := NEUTRAL.search(draft.rest):
        _state(draft, ("polarity", "bipolar"), draft.take(found))
    if WIDE.search(draft.rest):
        _signs(draft)


def _denied(first: str, second: str) -> Meaning | None:
    """A word for polarity that is denied: "non polarisé", "ohne Polarität", "not bipolar"."""
    if _plain(first) not in NOT:
        return None
    if meaning_of(second) == BIPOLAR:
        return POLAR
    return BIPOLAR if meaning_of(second) == POLAR or _plain(second).startswith("polar") else None


def _signs(draft: Draft) -> None:
    for sign, meaning in SIGNS.items():
        while (start := draft.rest.find(sign)) >= 0:
            _state(draft, meaning, draft.take_span(start, start + len(sign)))


def _state(draft: Draft, meaning: Meaning, piece: str) -> None:
    name, value = meaning
    if name == "other":
        draft.others.setdefault(value, piece)
    elif name in ("capacitor", "double"):
        draft.stated[name] = True
    elif name == "technology":
        _technology(draft, value, piece)
    elif name != "plain":
        draft.state(name, value, piece, value)


def plain_words(draft: Draft) -> None:
    """Set aside the words that say nothing by themselves, once every other step had the use of them."""
    for found in WORD.finditer(draft.rest):
        if meaning_of(found[0]) == PLAIN:
            draft.take(found)


def _technology(draft: Draft, value: str, piece: str) -> None:
    """A closer word replaces a wider one: "aluminium polymer", "polymer hybrid"."""
    order = ("wet aluminium", "polymer aluminium", "hybrid aluminium")
    before = draft.stated.get("technology")
    if before in order and value in order:
        if order.index(value) > order.index(before):
            draft.stated["technology"] = value
            draft.pieces.append(("technology", piece))
        return
    draft.state("technology", value, piece, value)
    if value == draft.stated["technology"]:
        draft.state("family", FAMILY[value], piece, FAMILY[value])


def _classes(draft: Draft) -> None:
    """X1/Y2 counts as what it is in the stricter letter, Y."""
    pattern = SMALL_CLASS if SMALL_CLASS.search(draft.rest) and MAINS.search(draft.rest) else CLASS  # x2 may count
    while found := pattern.search(draft.rest):
        named = sorted((one.upper() for one in found.groups() if one), reverse=True)
        draft.state("safety_class", named[0], draft.take(found), named[0])


def neutral_or_ceramic(draft: Draft) -> None:
    """NP beside so small a value is the ceramic NP0 with its last sign lost, not "no polarity"."""
    capacitance_f = draft.stated.get("capacitance_f")
    piece = next((text for name, text in draft.pieces if name == "polarity"), "")
    if capacitance_f and capacitance_f < SMALL_F and re.fullmatch(r"(?i)n[./]?p\.?", piece):
        draft.pieces = [(name, text) for name, text in draft.pieces if name != "polarity"]
        del draft.stated["polarity"]
        _technology(draft, C0G, piece)
        sentence = f'"{piece}" was taken as the ceramic NP0; it may mean bipolar.'
        draft.doubt(sentence, "technology polarity", piece, "bipolar")
    elif (capacitance_f or 0.0) > LARGEST_C0G_F and draft.stated.get("technology") == C0G:
        _not_ceramic(draft)


def _not_ceramic(draft: Draft) -> None:
    """NP0 beside so large a value is a slip for NP, "no polarity"."""
    piece = next(text for name, text in draft.pieces if name == "technology")
    draft.pieces = [pair for pair in draft.pieces if pair[0] not in ("technology", "family")]
    del draft.stated["technology"], draft.stated["family"]
    draft.state("polarity", "bipolar", piece)
    sentence = f'"{piece}" was taken as bipolar: no ceramic of that name is made so large.'
    draft.doubt(sentence, "technology polarity", piece, C0G)
