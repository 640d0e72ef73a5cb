"""One heading of a list: what kind of column it announces, and what it says of the bare numbers below it."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from subsearch.catalog.headings import NAMES, UNITS
from subsearch.catalog.price_headings import price_heading
from subsearch.reading.sizes import NAMED, ROUND
from subsearch.reading.spelling import one_spelling, plain_words
from subsearch.reading.stock_words import DAYS
from subsearch.reading.unit_words import our_unit
from subsearch.units import PREFIXES, SPELLINGS

ORDER = re.compile(r"[\[(]?\s*\b([DØLWHBT])\s*[x×*]\s*([DØLWHBT])(?:\s*[x×*]\s*([DØLWHBT]))?(?![A-Za-z])\s*[\])]?")
TRADE_UNITS = {"MFD": "µF", "mfd": "µF", "WV": "V", "WVDC": "V", "Vrms": "V", "VDCW": "V", "Vcc": "V", "Vca": "V"}
BRACKET = re.compile(r"[\[(]([^\])]*)[\])]")
APART = (
    re.compile(r"(.+?)\s*[,/;:]\s*(.+)"),
    re.compile(r"(.+?)\s+(?:in|en|w|v|в)\s+(.+)"),
    re.compile(r"(.+?)\s+-\s+(.+)"),
    re.compile(r"(.+)\s+(\S+)"),
    re.compile(r"(.+?)\s+(\S+ \S+)"),
    re.compile(r"([^\x00-\x7f]+)([A-Za-z%°Ωµμ]+)"),  # no space between characters and letters: 容量μF
)


@dataclass(frozen=True)
class Column:
    """One understood column: where it stands, what kind of cell it holds, what its heading says of bare numbers.

    `hint` is a prefix for quantities; for prices a currency and, behind a slash, for how many pieces they are; the
    letters of a size in their order; the unit of a time. `from_quantity` is set for price breaks in columns.
    """

    place: int
    heading: str
    kind: str
    hint: str = ""
    from_quantity: int | None = None


def read_heading(place: int, heading: str) -> Column | None:
    """Give what a heading says of its column, or None when it names nothing known.

    place: number of the column from 0. heading: as printed, in any of the languages of heading_words/.

    >>> read_heading(3, "Preis ab 10 [EUR]")
    Column(place=3, heading='Preis ab 10 [EUR]', kind='unit_price', hint='EUR', from_quantity=10)
    >>> read_heading(0, "Ёмкость, мкФ").hint, read_heading(0, "Size (L×W×H)").hint
    ('µ', 'LWH')
    """
    plain = plain_words(heading)
    if plain in NAMES:
        return Column(place, heading, NAMES[plain][0])
    if (price := price_heading(heading)) is not None:
        return Column(place, heading, "unit_price", *price)
    tidy = one_spelling(heading)
    if (order := ORDER.search(ROUND.sub("Ø", tidy).replace("×", "x"))) and _is_size(tidy, order):
        return Column(place, heading, "size", "".join(letter for letter in order.groups() if letter))
    for name, unit in _parted(tidy):
        for kind in NAMES.get(plain_words(name), ()):
            hint = hint_of(kind, unit)
            if hint is not None:
                return Column(place, heading, kind, hint)
    return None


def _is_size(tidy: str, order: re.Match[str]) -> bool:
    """Whether what stands around the letters is a word for a size, or nothing."""
    round_ = ROUND.sub("Ø", tidy).replace("×", "x")
    rest = plain_words(round_[: order.start()] + " " + round_[order.end() :]).removesuffix("mm").strip()
    return not rest or "size" in NAMES.get(rest, ())


def _parted(tidy: str) -> Iterator[tuple[str, str]]:
    """The ways to see a name and a unit in a heading: the unit in brackets, behind a sign, or as the last word."""
    for bracket in BRACKET.finditer(tidy):
        yield f"{tidy[: bracket.start()]} {tidy[bracket.end() :]}", bracket[1].strip()
    for pattern in APART:
        if found := pattern.fullmatch(tidy):
            yield found[1], found[2].strip(" ()[].")


def hint_of(kind: str, written: str) -> str | None:
    """Give what a unit beside a heading, or in a saved layout, says of bare numbers; None where it is of another kind.

    >>> hint_of("capacitance_f", "uF"), hint_of("lead_time_days", "weeks"), hint_of("capacitance_f", "V")
    ('u', 'weeks', None)
    """
    unit = UNITS.get(kind, "")
    if unit == "days":
        word = plain_words(written)
        return None if word not in DAYS else "" if DAYS[word] == 1 else word
    written = TRADE_UNITS.get(written) or our_unit(written, unit) or written
    if unit not in SPELLINGS:
        return None
    if unit in ("", "K") or written in SPELLINGS[unit]:
        return "" if written in SPELLINGS[unit] else None
    return written[:1] if written[:1] in PREFIXES and written[1:].strip() in SPELLINGS[unit] else None


def order_of(written: str) -> str | None:
    """Give the order of extents that letters say, like L×W×H; None where they are no such letters.

    >>> order_of("B x H x L"), order_of("mm")
    ('BHL', None)
    """
    letters = "".join(re.split(r"\s*[x×*]\s*", ROUND.sub("Ø", written.strip())))
    return letters if 2 <= len(letters) <= 3 and set(letters) <= NAMED.keys() else None
