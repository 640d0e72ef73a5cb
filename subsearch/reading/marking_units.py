"""How a capacitance is spelled, in any language and of any age, and the power of ten behind it."""

import re
from collections.abc import Mapping

from subsearch.reading.marking_numbers import LETTERS

MICRO, NANO, PICO, MILLI, WHOLE = -6, -9, -12, -3, 0
# Spellings in small letters. Common practice.
SPELLED: Mapping[int, str] = {
    MICRO: "µf uf µfd ufd µfds µ u mfd mfds mfd. mkf mkfd microfarad microfarads mikrofarad micro-farad microf "
    "microfarads. мкф мкф. мк микрофарад 微法 マイクロファラド 마이크로패럿",
    NANO: "nf n nfd nanofarad nanofarads kpf kpfd нф нанофарад 纳法 ナノファラド",
    PICO: "pf p pfd pfds pfd. mmf mmfd mmfds µµf uuf µµfd uufd µµ mµµf micromicrofarad micro-microfarad picofarad "
    "picofarads пф пф. пикофарад 皮法 ピコファラド",
    MILLI: "mf millifarad millifarads мф",
    WHOLE: "f farad farads ф фарад 法",
}
POWERS: Mapping[str, int] = {word: power for power, words in SPELLED.items() for word in words.split()}
BARE = ("µ", "u", "n", "p", "µµ", "мк")  # prefixes that are written alone
UNIT = "|".join(
    re.escape(word) for word in sorted((word for word in POWERS if word not in BARE), key=len, reverse=True)
)
PREFIX = "[µunp]|мк"
VALUED = re.compile(r"\d\s*(?:[µunp]|mf|мк|f\b|ф\b|нф|пф)", re.IGNORECASE)  # that some value stands in a text
CENTIMETRE_PF = "1.11"  # before the war capacitance was counted in cm: common practice
# Behind a unit no letter, but for the x of "100 µF x 16 V"; behind a bare prefix no digit, for 4u7 is another spelling.
UNIT_END = rf"(?:(?![{LETTERS}])|(?=[xXхХ]\s*\d))"
PREFIX_END = rf"(?![0-9{LETTERS}%°]|-[a-z]{{3}})"

# Text for a pattern that ignores case.
MADE_OF = rf"(?:{UNIT}){UNIT_END}|(?:{PREFIX}){PREFIX_END}"


def power_of(written: str) -> int:
    """Give the power of ten of a spelled unit; "mF" may be milli or micro, which is for the reader to weigh.

    >>> power_of("MFD"), power_of("µµF"), power_of("n"), power_of("мкФ")
    (-6, -12, -9, -6)
    """
    plain = written.lower()  # casefold would exchange one µ for the other
    if written[:2] in ("MF", "Mf"):
        return MICRO  # a capital M was never milli: 10 MF is an old spelling of 10 µF
    return POWERS[plain]


def is_unclear(written: str) -> bool:
    """Whether a spelled unit is the mF that old prints use for microfarad.

    >>> is_unclear("mF"), is_unclear("MF"), is_unclear("mfd")
    (True, False, False)
    """
    return written in ("mF", "mf", "m", "мФ", "мф")
