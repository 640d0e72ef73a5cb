"""What in a marking says that it is no capacitor at all: other units, other codes, words, dates, and nothing."""

import re
from itertools import permutations

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, NUM, START, WORD_END
from subsearch.reading.marking_units import MADE_OF, VALUED
from subsearch.reading.marking_vocabulary import CERTAIN, OTHERS
from subsearch.reading.voltage_codes import LISTED

NOT_FITTED = (  # in several languages; common practice
    r"dnp|dnf|dni|dns|dnm|not? (?:fitted|populated|mounted|placed|stuffed|used|assembled|connected|installed)"
    r"|n\.?b\.?|do not (?:fit|populate|place|mount|stuff|install)"
    r"|nicht bestückt|unbestückt|entfällt|non monté|non montato"
    r"|no montar|niet geplaatst|nie montować|neosazovat|не устанавливать|не ставить|未実装|实装なし|不贴|不焊|미실장"
)
NOTHING = r"nf|n/f|n\.?c\.?|n/?a|none|open|empty|leer|-+|\?+|\.+"
ABSENT = re.compile(rf"\s*\(?(?:{NOT_FITTED}|{NOTHING})\)?\s*", re.IGNORECASE)
DNP = re.compile(rf"(?<![{LETTERS}0-9])(?:{NOT_FITTED}){WORD_END}", re.IGNORECASE)
MONTH = r"jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez"
DATE = re.compile(
    rf"{START}(?:\d{{1,2}}(?P<by>[./-])\d{{1,2}}(?P=by)(?:\d\d|(?:19|20)\d\d)|(?:19|20)\d\d[-/.]\d{{1,2}}(?:[-/.]\d{{1,2}})?"
    rf"|\d{{1,2}}[/.](?:19|20)\d\d){WORD_END}(?!\s*(?:(?i:{MADE_OF})|V))"
    rf"|(?<![{LETTERS}])(?:{MONTH})[a-z]*\.?[ -](?:19|20)?\d\d{WORD_END}",
    re.IGNORECASE,
)
REFERENCE = re.compile(
    rf"^\s*C(?:\d{{1,4}}[a-zA-Z]?\s*[:=,]?(?=\s)|\d{{1,4}}\s*[:=]|\s\d{{1,4}}(?=\s.*?{VALUED.pattern}))", re.IGNORECASE
)
OHMS = r"[kKM]?\s?(?:\u03a9|\u2126|ohms?|Ohms?|OHMS?|Ом)"
CODED_OHMS = (
    rf"{START}(?:\d{{1,3}}[kKM]\d{{1,2}}|\d{{1,2}}[kKR]|\d{{3}}[kR]"
    rf"|\d{{1,3}}[.,]\d{{1,2}}[kKRM]|[12]M){WORD_END}"
)
UNITS = (  # what it is, the letters without which none stands there, the pattern
    ("a resistor", "ωohmkrм", re.compile(rf"{START}{NUM}\s*{OHMS}|{CODED_OHMS}")),
    ("an inductor", "h", re.compile(rf"{START}{NUM}\s*[unpµm]?H{WORD_END}|{START}\d{{1,3}}[uµ]H\d{WORD_END}")),
    (
        "a part with a power in W",
        "wvв",
        re.compile(rf"{START}(?:\d\s*/\s*\d|{NUM})\s*(?:[mk]?W|VA|[Ww]att|Вт){WORD_END}"),
    ),
    ("a part with a current", "aа", re.compile(rf"{START}{NUM}\s*[mµu]?(?:Ah?|Amp\.?|А){WORD_END}")),
    ("a part with a frequency", "zц", re.compile(rf"{START}{NUM}\s*[kMG]?(?:Hz|HZ|hz|Гц){WORD_END}")),
    ("a varistor", "dnsk", re.compile(rf"{START}\d{{1,2}}[DNSK]\d{{3}}[KLMJ]?{WORD_END}")),
    ("a semiconductor", "n", re.compile(rf"{START}[1-6]N\d{{2,4}}[A-Z]{{0,2}}{WORD_END}")),
)
CODED = re.compile(rf"{START}[1-9]\d\d[JKMZ]{WORD_END}")  # beside it 2A is 100 V and no current, 1H no inductor
RIPPLE = re.compile(
    r"(?:ripple|rippel\w*|esr|impedan[cz]e?\b|\bz\s*=|ondulation|пульсац\w*)|@\s*\d+\s*k?Hz", re.IGNORECASE
)
BESIDE = ("a part with a current", "a part with a frequency", "a resistor")
HARMLESS = ("hardware", "a connector", "an integrated circuit")  # words that may stand beside one: screw terminals
PREFIXED = re.compile(r"[a-zµмR]")
EXPLICIT = re.compile(r"(?i)f|ф")


def absent(draft: Draft) -> bool:
    """Whether nothing is there, or what is there is not fitted; the reason is kept."""
    if not draft.rest.strip(" \0"):
        draft.refuse("The text is empty.")
    elif ABSENT.fullmatch(draft.rest) or DNP.search(draft.rest):
        draft.refuse(f'"{draft.printed.strip()}" says that nothing is fitted there.')
    return bool(draft.against)


def dates_and_names(draft: Draft) -> None:
    """Set dates and the name of the position aside: their numbers are no values."""
    for date in DATE.finditer(draft.rest):
        numbers = [int(text) for text in re.findall(r"\d+", date[0])]
        if len(numbers) < 3 or any(1 <= day <= 31 and 1 <= month <= 12 for day, month in permutations(numbers, 2)):
            draft.take(date)
    if found := REFERENCE.search(draft.rest):
        draft.take(found)
        draft.stated["capacitor"] = True


def others(draft: Draft) -> None:
    """Note quantities of other units and codes of other parts; they are taken, so that nothing else reads them."""
    for what, letters, pattern in UNITS:
        start = 0
        while draft.holds(letters) and (found := pattern.search(draft.rest, start)):
            start = found.end()
            if found[0] in LISTED and CODED.search(draft.rest):
                continue
            draft.others.setdefault(what, draft.take(found))


def decide(draft: Draft) -> None:
    """Take back what was read where it is no capacitor after all; another unit beside a capacitance is a doubt."""
    value = next((text for name, text in draft.pieces if name == "capacitance_f"), "")
    rated = "rated_v" in draft.stated or "rated_ac_v" in draft.stated
    for what, piece in draft.others.items():
        if value and what == BESIDE[2] and _of_its_own(draft, piece, value):
            sentence = f'"{piece}" beside "{value}" is a resistor of its own; a capacitor stands in for one of the two.'
            draft.doubt(sentence, "capacitance_f", piece)
            continue
        if value and what in BESIDE and (RIPPLE.search(draft.printed) or rated):
            continue  # its ripple current and series resistance
        said = draft.stated.get("capacitor") or rated
        if what in CERTAIN or what == BESIDE[1] or not (EXPLICIT.search(value) or (PREFIXED.search(value) and said)):
            draft.refuse(f'"{piece}" speaks of {what}, not of a capacitor.')
        elif what not in HARMLESS and not (what in OTHERS and said):
            sentence = f'"{piece}" speaks of {what}, "{value}" of a capacitor; the capacitor was taken.'
            draft.doubt(sentence, "capacitance_f", piece)


def _of_its_own(draft: Draft, piece: str, value: str) -> bool:
    """Whether a plus joins a resistance to the value: 0.1 µF + 100 Ω."""
    pieces = (re.escape(piece), re.escape(value))
    return any(re.search(rf"{one}\s*\+\s*{two}", draft.printed) for one, two in permutations(pieces))
