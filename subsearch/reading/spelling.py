"""One spelling for the signs of a cell, and for words that are compared without case, accents or punctuation."""

import re
import unicodedata

DEGREES = str.maketrans("\u00ba\u02da", "\u00b0\u00b0")  # else they would be read as a small o
DASHES = re.compile("[\u2010-\u2015\u2212]")
BETWEEN = re.compile(r"[\s_.,:;/\\()\[\]{}<>=!?*|'\"`\u00b4\u2018-\u201f\u2022\u00b7\u30fb-]+")
WITHOUT_ACCENTS = str.maketrans("łđ", "ld")  # letters of their own, which lose no accent by being taken apart


def one_spelling(text: str) -> str:
    """Give a text with full-width, squared and typographic signs as plain ones, and single spaces.

    >>> one_spelling("１０　㎜"), one_spelling("−40 ℃")
    ('10 mm', '-40 °C')
    """
    plain = unicodedata.normalize("NFKC", text.translate(DEGREES)).replace("\u03bc", "\u00b5")  # as our prefixes
    return " ".join(DASHES.sub("-", plain).split())


def plain_words(text: str) -> str:
    """Give the words of a text by which it is compared: small letters without accents, punctuation as one space.

    >>> plain_words(" Tension_nominale  (V) "), plain_words("NAPIĘCIE"), plain_words("Größe")
    ('tension nominale v', 'napiecie', 'grosse')
    """
    return " ".join(BETWEEN.sub(" ", small_letters(text)).split())


def small_letters(text: str) -> str:
    """Give a text in small letters without accents, its punctuation kept.

    >>> small_letters("Preis/Stück")
    'preis/stuck'
    """
    small = unicodedata.normalize("NFD", one_spelling(text).casefold().translate(WITHOUT_ACCENTS))
    return unicodedata.normalize("NFC", re.sub("[\u0300-\u036f]", "", small))
