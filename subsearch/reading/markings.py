"""What is printed on a capacitor, read piece by piece; what can't be read is said, and nothing is guessed silently."""

import re
from dataclasses import dataclass, field

from subsearch.errors import QuantityError
from subsearch.reading.cells import reader_of
from subsearch.units import show

LONGEST = 200
NUMBER = r"\d+(?:[.,]\d+)?"
START, END = r"(?<![\w.,])", r"(?![\w%])"
BIPOLAR = re.compile(
    rf"{START}(?:bi[- ]?polar(?:i[sz]ed)?|bi|b[./]?p\.?|n[./]?p\.?|non[- ]?polar(?:i[sz]ed)?|un[- ]?polari[sz]ed"
    rf"|ungepolt){END}",
    re.IGNORECASE,
)
NOT_NO = r"(?<!bi[- ])(?<!non[- ])(?<!un[- ])"  # "polar" alone; behind such a word the part is bipolar
POLAR = re.compile(rf"{START}{NOT_NO}(?:polar(?:i[sz]ed)?|gepolt){END}", re.IGNORECASE)
TOLERANCE = re.compile(rf"(?:±|\+/-|\+-)\s*{NUMBER}\s*%|[-+]{NUMBER}\s*%?\s*/\s*[-+]{NUMBER}\s*%|{START}{NUMBER}\s*%")
VOLTAGE = re.compile(
    rf"{START}(\d+V\d+|{NUMBER}\s*(?:k|W)?V(?![a-z]*\d))\s*(~|=|a\.?c\.?|d\.?c\.?)?{END}", re.IGNORECASE
)
CAPACITANCE = re.compile(
    rf"{START}({NUMBER}\s*[pnuµμm]F?|\d*[pnuµμm]\d+F?|{NUMBER}\s*F|{NUMBER}\s*(?:MFD|mfd|Mfd)){END}"
)
TWO_NUMBERS = re.compile(rf"{START}({NUMBER})\s*/\s*({NUMBER}){END}")
ONE_NUMBER = re.compile(rf"{START}({NUMBER}){END}")


@dataclass(frozen=True)
class Reading:
    """What a marking states, the pieces of text it came from, and every doubt about it; None is "not stated"."""

    capacitance_f: float | None = None
    rated_v: float | None = None
    rated_ac_v: float | None = None
    polarity: str | None = None
    tolerance: tuple[float, float] | None = None
    pieces_of_text: tuple[tuple[str, str], ...] = ()
    doubts: tuple[str, ...] = ()


@dataclass
class _Draft:
    """A marking on its way: what is still unread, and what was found."""

    rest: str
    numbers: dict[str, float] = field(default_factory=dict)
    pieces: list[tuple[str, str]] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    polarity: str | None = None
    tolerance: tuple[float, float] | None = None

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """The first place that matches, taken out of what is unread."""
        if found := pattern.search(self.rest):
            self.rest = f"{self.rest[: found.start()]} {self.rest[found.end() :]}"
        return found

    def claim(self, term: str, text: str, hint: str = "") -> None:
        """Keep what this piece states, or the doubt about it."""
        try:
            stated = reader_of(term, hint)(text)
        except QuantityError as error:
            self.doubts.append(str(error))
            return
        for name, value in stated.items():
            if isinstance(value, float):
                self.numbers[name] = value
                self.pieces.append((name, text.strip()))


def read_marking(marking: str) -> Reading:
    """Give what the marking of a capacitor states, with the piece of text behind each claim.

    marking: as printed, such as "330u 6V3". Result: capacitance [F], voltages [V], tolerance low and high [%]. What
    is no capacitor's marking gives a Reading with a doubt and no capacitance. Raises nothing.

    >>> reading = read_marking("2.2uF 50V bipolar")
    >>> reading.capacitance_f, reading.rated_v, reading.polarity, reading.doubts
    (2.2e-06, 50.0, 'bipolar', ())
    >>> read_marking("47/16").doubts
    ('"47/16" was taken as 47 µF 16 V: no unit is printed.',)
    """
    if len(marking) > LONGEST:
        return Reading(
            doubts=(f"The marking has {len(marking)} characters, more than {LONGEST}. Give one part's only.",)
        )
    draft = _Draft(" ".join(marking.replace("\u2212", "-").split()))
    for step in (_tolerance, _polarity, _voltage, _capacitance, _bare_numbers):
        step(draft)
    if "capacitance_f" not in draft.numbers:
        draft.doubts.insert(0, f'No capacitance can be read in "{marking}". Write it like 4.7 µF 63 V.')
    if unread := " ".join(draft.rest.split()).strip(" /,;·|-+"):
        draft.doubts.append(f'"{unread}" was not understood.')
    return Reading(
        **draft.numbers,
        polarity=draft.polarity,
        tolerance=draft.tolerance,
        pieces_of_text=tuple(draft.pieces),
        doubts=tuple(draft.doubts),
    )


def _tolerance(draft: _Draft) -> None:
    if not (found := draft.take(TOLERANCE)):
        return
    try:
        stated = reader_of("tolerance")(found[0])
    except QuantityError as error:
        draft.doubts.append(str(error))
        return
    low, high = (stated[f"tolerance_{end}_pct"] for end in ("low", "high"))
    if isinstance(low, float) and isinstance(high, float):
        draft.tolerance = (low, high)
        draft.pieces.append(("tolerance", found[0].strip()))


def _polarity(draft: _Draft) -> None:
    for pattern, word in ((BIPOLAR, "bipolar"), (POLAR, "polar")):
        if found := draft.take(pattern):
            draft.polarity = word
            draft.pieces.append(("polarity", found[0]))
            return


def _voltage(draft: _Draft) -> None:
    if found := draft.take(VOLTAGE):
        kind = (found[2] or "").casefold().replace(".", "")
        number = re.sub(r"\s*[wW]?v$", "V", found[1], flags=re.IGNORECASE)
        draft.claim("rated_ac_v" if kind in ("~", "ac") else "rated_v", number.replace("v", "V").replace("KV", "kV"))


def _capacitance(draft: _Draft) -> None:
    if found := draft.take(CAPACITANCE):
        text = re.sub(r"(?i)\s*mfd$", " µF", found[1])
        if re.search(r"\d\s*mF?$", text):
            draft.doubts.append(f'"{found[1]}" was taken as millifarad; on old parts it may mean microfarad.')
        draft.claim("capacitance_f", text)


def _bare_numbers(draft: _Draft) -> None:
    """Numbers without a unit mean microfarad, then volts; taken so, but never without saying it."""
    value, volts = "capacitance_f" not in draft.numbers, not {"rated_v", "rated_ac_v"} & draft.numbers.keys()
    patterns: dict[tuple[bool, bool], re.Pattern[str]] = {
        (True, True): TWO_NUMBERS,
        (True, False): ONE_NUMBER,
        (False, True): ONE_NUMBER,
    }
    pattern = patterns.get((value, volts))
    if not pattern or not (found := draft.take(pattern)):
        return
    if value:
        draft.claim("capacitance_f", found[1], "µ")
    if volts:
        draft.claim("rated_v", found[pattern.groups])
    shown = [show(draft.numbers.get("capacitance_f"), "F")] * value + [show(draft.numbers.get("rated_v"), "V")] * volts
    draft.doubts.append(f'"{found[0]}" was taken as {" ".join(shown)}: no unit is printed.')
