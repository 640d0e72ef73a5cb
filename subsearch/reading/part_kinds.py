"""What kind of part a line of a parts list names: by the letters of its reference, then by the words beside it."""

import re
from collections.abc import Iterable, Mapping

from subsearch.reading.marking_vocabulary import BEFORE_A_NEIGHBOUR, SIGNS
from subsearch.reading.marking_vocabulary import OTHERS as OTHER_WORDS
from subsearch.reading.parts_list_headings import plain
from subsearch.reading.parts_list_words import CAPACITOR_WORDS, OTHER_PREFIXES, VARIABLE_WORDS, words_of

PREFIXES: Mapping[str, str] = {
    prefix: what for what, prefixes in reversed(list(OTHER_PREFIXES.items())) for prefix in words_of(prefixes)
}
SURELY_OTHER = ("R", "L", "D", "Q", "U", "IC", "T", "ZD", "LED", "VR", "RV", "TR", "SW", "F", "RL", "TP", "XTAL")
VARIABLE = "a variable capacitor"
NEIGHBOUR = re.compile(
    rf"\b(?:{'|'.join(BEFORE_A_NEIGHBOUR.split())})\s+(?:\w+\s+){{0,2}}\w+", re.IGNORECASE
)  # parallel to trimmer
NAMED: Mapping[str, tuple[str, ...]] = {
    what: (*spoken.split(), *(sign for sign, meaning in SIGNS.items() if meaning == ("other", what)))
    for what, spoken in OTHER_WORDS.items()
}


def other_part(prefix: str, words: str) -> str | None:
    """What a part is that is no capacitor; "" where it is one, None where neither letters nor words tell.

    prefix: the letters of the reference. words: what the line says of it.

    >>> other_part("R", "10k"), other_part("C", "47 µF"), other_part("C", "trimmer 5-30p"), other_part("EL", "Elko 50µ")
    ('a resistor', '', 'a variable capacitor', '')
    >>> other_part("C", "22p parallel to trimmer")
    ''
    >>> other_part("EL", "50") is None
    True
    """
    if holds(NEIGHBOUR.sub(" ", words), words_of(VARIABLE_WORDS)):
        return VARIABLE
    if prefix in SURELY_OTHER:
        return PREFIXES[prefix]
    if holds(words, words_of(CAPACITOR_WORDS)) or (prefix not in PREFIXES and prefix.startswith("C")):
        return ""
    named = next((what for what, spoken in NAMED.items() if holds(words, spoken)), None)
    return named or PREFIXES.get(prefix)


def holds(text: str, words: Iterable[str]) -> bool:
    """Whether a text holds one of some words: whole ones in Latin or Cyrillic print, anywhere in other.

    text: as printed. words: with a star for any ending.

    >>> holds("Elkos, stehend", ["elko*"]), holds("telko", ["elko*"]), holds("電解コンデンサ用", ["コンデンサ"])
    (True, False, True)
    """
    padded = f" {plain(text)} "
    for word in words:
        bare = plain(word)
        if (bare if ord(word[0]) >= 0x2E80 else f" {bare}" if word.endswith("*") else f" {bare} ") in padded:
            return True
    return False
