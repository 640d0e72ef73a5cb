"""Which older encoding a text is in: the one in which it holds words and signs of the trade.

A general guesser of encodings needs running text. On parts lists, which hold a handful of signs beyond ASCII, the usual
one named the right encoding in 4 of 12 tries; the words of the trade tell them apart.
"""

import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from subsearch.reading.marking_vocabulary import OTHERS, WORDS
from subsearch.reading.marking_vocabulary import SIGNS as EASTERN_WORDS
from subsearch.reading.parts_list_words import CAPACITOR_WORDS, HEADINGS, NOT_FITTED, VARIABLE_WORDS, words_of
from subsearch.reading.words import MEANT

WESTERN = "äöüßÄÖÜàâçéèêëîïôùûÿœæñáíóúìòåøãõÀÉÈÇÑÁÍÓÚ¿¡«»"
CENTRAL = "ąćęłńóśźżĄĆĘŁŃÓŚŹŻáčďéěíňřšťúůýžÁČĎÉĚÍŇŘŠŤÚŮÝŽäöüßÄÖÜőűŐŰşţăâî"
CYRILLIC = "".join(map(chr, range(0x410, 0x450))) + "ёЁ№«»іїєґ"
FREQUENT = "оеаинтсрвлкмдпу"  # in Russian; two sets have all its letters in the same places, but in another order
SIGNS = "µμΩ±×Ø°²³–—…•’‘“”„€£§®©½¼"
TRIED: Sequence[tuple[str, str, str]] = (  # the more usual first
    ("cp1252", "Windows-1252", WESTERN),
    ("cp1250", "Windows-1250", CENTRAL),
    ("cp1251", "Windows-1251", CYRILLIC),
    ("cp932", "Shift-JIS", ""),
    ("gb18030", "GB18030", ""),
    ("cp949", "EUC-KR", ""),
    ("big5", "Big5", ""),
    ("euc_jp", "EUC-JP", ""),
    ("koi8-r", "KOI8-R", CYRILLIC),
    ("cp866", "code page 866", CYRILLIC),
    ("cp850", "code page 850", WESTERN),
    ("cp852", "code page 852", CENTRAL),
    ("iso8859-2", "ISO 8859-2", CENTRAL),
    ("cp1253", "Windows-1253", "Ω"),
    ("cp1254", "Windows-1254", WESTERN + "ğışİĞŞ"),
    ("mac_roman", "Mac Roman", WESTERN),
)
UNITS = re.compile(
    r"(?<![^\W\d])(?:[µμ]F|мкФ|пФ|нФ|мкф|пф|нф|В|Ом|кОм|Ω|[kM]Ω|°C|℃|Ø)(?![^\W\d])|[±Ø⌀]\s?\d|\d\s?[±×Ω°µ](?![^\W\d])|\d[µμ]\d"
    r"|[€£]\s?\d|\d\s?[€£](?![^\W\d])|\d\s?[–—]\s?\d"
)
MOST_WORDS = 3000
CLOSE = 1.5  # a rival that is so near may be the right one
POOR = -1.0  # what a word may be worth at least, in the mean


@dataclass(frozen=True)
class Guess:
    """The encoding taken, words that show it, whether they make no sense, and another that may be meant instead."""

    encoding: str
    spoken: str
    words: tuple[str, ...]
    poor: bool = False
    rival: str = ""
    rival_words: str = ""


def guessed(raw: bytes) -> Guess:
    """The encoding in which a text that is not UTF-8 makes most sense.

    raw: the bytes. All are looked at, but only different lines count. Result: Guess; its encoding reads all bytes.

    >>> guessed("Обозначение;Номинал".encode("cp1251")).spoken, guessed("位号,耐压".encode("gb18030")).spoken
    ('Windows-1251', 'GB18030')
    """
    pieces = _foreign(raw)
    worth: dict[str, float] = {}
    texts: dict[str, tuple[str, ...]] = {}
    for encoding, _, usual in TRIED:
        try:
            texts[encoding] = tuple(piece.decode(encoding) for piece in pieces)
        except UnicodeDecodeError:
            continue
        worth[encoding] = sum(_worth(text, usual, encoding) for text in texts[encoding])
    ranked = sorted(worth, key=lambda encoding: -worth[encoding])  # the first of several that are worth the same
    best = next(encoding for encoding in ranked if _reads(raw, encoding))  # Mac Roman reads anything
    spoken = {encoding: name for encoding, name, _ in TRIED}
    others = [one for one in worth if texts[one] != texts[best] and worth[best] - worth[one] < CLOSE]
    rival = max(others, key=lambda one: worth[one], default="")
    shown = tuple(dict.fromkeys(word for text in texts[best] for word in _shown(text)))[:2]
    poor = worth[best] < POOR * len(pieces)
    said = _told(texts[best], texts[rival]) if rival else ""
    return Guess(best, spoken[best], shown, poor, spoken.get(rival, ""), said)


def _reads(raw: bytes, encoding: str) -> bool:
    try:
        raw.decode(encoding)
    except UnicodeDecodeError:
        return False
    return True


def _foreign(raw: bytes) -> list[bytes]:
    """The different lines that hold more than ASCII."""
    found: dict[bytes, None] = {}
    for line in raw.splitlines():
        if not line.isascii():
            found.setdefault(line.strip())
        if len(found) >= MOST_WORDS:
            break
    return list(found)


KNOWN = {piece for words in HEADINGS.values() for word in words_of(words) for piece in word.split()}
KNOWN |= {piece for meant in MEANT.values() for word in meant for piece in word.split()}
KNOWN |= {piece for words in (CAPACITOR_WORDS, VARIABLE_WORDS, NOT_FITTED) for piece in words.replace(",", " ").split()}
KNOWN |= {word for words in (*WORDS.values(), *OTHERS.values()) for word in words.split()}
KNOWN |= {word for word in EASTERN_WORDS if len(word) > 1}
FOREIGN_WORDS = frozenset(  # one letter, like the Cyrillic for "with", stands in any set; one character does not
    word.rstrip("*").casefold() for word in KNOWN if not word.isascii() and (len(word) > 1 or word >= "\u2e80")
)
STEMS = frozenset(word.rstrip("*").casefold() for word in KNOWN if word.endswith("*") and not word.isascii())
SYLLABLES = frozenset(  # Korean ones that stand in many words
    "이다는의에가을를은로하고지도한기서사리대자인어시라나만정부수일해전그제아보상장여유주원구공스화동관성모경비조신세오내미선계생회교위과실"
    "소개문무용안방국물중당등적체입출압류량품번호종치면단간연결주파색작은큰형식극재교체음향청녹백흑적황"
) | frozenset("".join(word for word in KNOWN if "\uac00" <= word[0] <= "\ud7a3"))
TOKEN = re.compile(r"(?:[^\W\d_]|[^\x00-\x7f\s])+")
EASTERN = ("cp932", "gb18030", "cp949", "big5", "euc_jp")


def _worth(text: str, usual: str, encoding: str) -> float:
    """What a decoded line is worth: words and units of the trade count for it, odd signs and mixtures against it."""
    total = 4.0 * len(set(UNITS.findall(text)))
    return total + sum(_of_token(token, usual, encoding) for token in TOKEN.findall(text) if not token.isascii())


@lru_cache(maxsize=1 << 16)  # the same words stand in line after line
def _of_token(token: str, usual: str, encoding: str) -> float:
    if _is_known(token.casefold()):
        return 6
    if encoding in EASTERN:
        return 4 * _inside(token) + _eastern(token, encoding)
    return _western(token, usual)


def _is_known(word: str) -> bool:
    return word in FOREIGN_WORDS or any(word[:length] in STEMS for length in range(3, len(word)))


def _inside(token: str) -> int:
    """How many words of the trade a run of signs holds, where words are not kept apart."""
    return sum(word in token for word in FOREIGN_WORDS if 1 < len(word) < len(token))


def _western(token: str, usual: str) -> float:
    if token in "–—…•€£":
        return 0.5  # alone it is punctuation; a letter alone is less likely
    foreign = [char for char in token if not char.isascii()]
    total = sum(0.3 if char in usual else 0.0 if char in SIGNS else -2.0 for char in foreign)
    total += 0.1 * sum(char.casefold() in FREQUENT for char in foreign)
    scripts = {_script(char) for char in token if char.isalpha() and char not in "µμΩ"}
    total -= 3 * (len(scripts) > 1)
    total -= 2 * any(first.islower() and then.isupper() for first, then in pairwise(token) if then not in "FVΩ")
    total -= 2 * any(char in SIGNS for char in foreign if len(token) > 3 and char not in "µμ’")
    return total - 20 * any(unicodedata.category(char) in ("Cc", "Co", "Cn") for char in foreign)


def _eastern(token: str, encoding: str) -> float:
    kinds = [_script(char) for char in token if not char.isascii()]
    kana, narrow, hangul, han = (kinds.count(one) for one in ("KANA", "HALFWIDTH", "HANGUL", "CJK"))
    odd = len(kinds) - kana - narrow - hangul - han - sum(char in SIGNS for char in token)
    total = -1.0 * odd - 3.0 * any(char.isascii() for char in token)
    if encoding in ("cp932", "euc_jp"):
        return total + kana + 0.2 * narrow + 0.3 * _common(token, "euc_jp", 0xCF)
    if encoding == "cp949":
        usual = sum(char in SYLLABLES for char in token)
        return total + usual - 0.5 * (hangul - usual) - 2 * han - kana - narrow
    most = max(_common(token, "gb2312", 0xD7), _common(token, "big5", 0xC6))
    return total + 0.3 * most - kana - narrow - 2 * hangul


def _common(token: str, encoding: str, last: int) -> int:
    """How many signs are among the common ones, which the older sets list first."""
    first = 0xA4 if encoding == "big5" else 0xB0
    leads = [char.encode(encoding, "ignore")[:1] for char in token if _script(char) == "CJK"]
    return sum(first <= lead[0] <= last for lead in leads if lead)


SCRIPTS: Mapping[str, str] = {"HIRAGANA": "KANA", "KATAKANA": "KANA", "KATAKANA-HIRAGANA": "KANA", "IDEOGRAPHIC": "CJK"}


def _script(char: str) -> str:
    first = unicodedata.name(char, "").partition(" ")[0]
    return SCRIPTS.get(first, first)


def _shown(text: str) -> list[str]:
    return [token for token in re.findall(r"[^\W_]*[^\x00-\x7f][^\W_]*", text) if token.strip()]


def _told(taken: Sequence[str], other: Sequence[str]) -> str:
    for mine, theirs in zip(taken, other, strict=True):
        for word, instead in zip(_shown(mine), _shown(theirs), strict=False):
            if word != instead:
                return f', and "{word}" then "{instead}"'
    return ""
