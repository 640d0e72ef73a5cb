"""What suppliers write above a column, by language, and the kind of cell it announces: read from heading_words/."""

import tomllib
from collections.abc import Mapping
from pathlib import Path

from subsearch.reading.quantities import BODY, BODY_PLUS
from subsearch.reading.spelling import plain_words
from subsearch.terms import TERMS

FOLDER = Path(__file__).with_name("heading_words")
FIRST = ("english", "german")  # of two languages that share a word the earlier one says what it means
UMLAUTS = (("ä", "ae"), ("ö", "oe"), ("ü", "ue"))


def _languages() -> Mapping[str, Mapping[str, Mapping[str, str]]]:
    names = sorted((file.stem for file in FOLDER.glob("*.toml")), key=lambda name: (name not in FIRST, name))
    return {name: tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8")) for name in names}


LANGUAGES = _languages()
OWN = ("unit_price", "from_quantity")  # headings of prices, which hold numbers and currencies too


def _spoken() -> Mapping[str, tuple[str, ...]]:
    kinds: dict[str, list[str]] = {kind: [] for kind in (*TERMS, *(k for k in LANGUAGES["english"]["headings"]))}
    for words in LANGUAGES.values():
        for kind, spoken in words["headings"].items():
            kinds[kind] += spoken.replace("\n", " ").split(", ")
        kinds["unit_price"] += words["price"]["words"].replace("\n", " ").split(", ")
    return {kind: tuple(" ".join(word.split()) for word in words) for kind, words in kinds.items()}


SPOKEN = _spoken()
"""Every way to say each kind of column, our own word left out."""


def price_words(part: str) -> tuple[str, ...]:
    """Give the words, in plain spelling and longest first, of one part of a price heading.

    part: words, from, pieces or per.

    >>> "ab" in price_words("from"), "per" in price_words("from")
    (True, False)
    """
    spoken = ", ".join(words["price"][part] for words in LANGUAGES.values())
    return tuple(sorted({plain_words(word) for word in spoken.split(",")}, key=lambda word: (-len(word), word)))


def _spellings(word: str) -> set[str]:
    written = word
    for sign, two in UMLAUTS:
        written = written.replace(sign, two)
    return {plain_words(word), plain_words(written)}


def _names() -> Mapping[str, tuple[str, ...]]:
    names: dict[str, list[str]] = {}
    for kind, spoken in SPOKEN.items():
        for word in (kind, *spoken):
            for name in sorted(_spellings(word)):
                kinds = names.setdefault(name, [])
                if kind not in kinds:
                    kinds.append(kind)
    return {name: tuple(kinds) for name, kinds in names.items()}


NAMES = _names()
UNITS: Mapping[str, str] = {
    **{name: term.unit for name, term in TERMS.items()},
    **dict.fromkeys((*BODY, *BODY_PLUS, "size"), "mm"),
    "temperatures": "°C",
    "tolerance": "%",
    "lead_time_days": "days",
}
