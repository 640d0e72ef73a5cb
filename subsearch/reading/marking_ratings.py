"""Voltages in a marking: the rating, d.c. or a.c., and what is a surge voltage or the rail beside the part."""

import re

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, NUM, START, number
from subsearch.reading.marking_units import VALUED
from subsearch.units import show

AC = r"~|a\.?c\.?|перем\w*\.?|wechsel\w*|交流"
DC = r"=|⎓|d\.?c\.?|пост\w*\.?|gleich\w*|直流"
WORKING = r"w\.?(?:kg|orking|v)?\.?|nom\.?|l(?:av)?\.?|serv\.?"
VOLT = rf"(?:(?:{WORKING}|d\.?c\.?|a\.?c\.?)\s?)*(?:v(?:olts?)?|вольт|в|伏)\.?"
VOLT_END = rf"(?:(?![{LETTERS}])|(?=[xх]\s*\d))"
PLACED = re.compile(rf"{START}(?P<w>\d{{1,2}})[Vv](?P<d>\d)(?![0-9.,%*{LETTERS}]|\s*[µunp]F?\b)")
RATING = re.compile(
    rf"(?:(?<![{LETTERS}0-9])(?P<before>(?:{AC}|{DC}|wv(?:dc)?|w\.v\.|vdc|vac)\s*[:=]?)\s*)?(?<![0-9{LETTERS}.])(?<![0-9],)(?<![0-9]-)"
    rf"(?P<n>{NUM})\s*(?P<k>k)?\s?(?P<kind>{VOLT}(?:\s?(?:{AC}|{DC}|{WORKING}))*){VOLT_END}",
    re.IGNORECASE,
)
LABELLED = re.compile(
    rf"(?<![{LETTERS}0-9])(?:w\.?v\.?(?:d\.?c\.?)?|vdcw|vdc|u[rn]?\s?=|volts?\s?[:=]?)\s*[:=]?\s*(?P<n>{NUM})(?![0-9{LETTERS}%°])",
    re.IGNORECASE,
)
PAIR = re.compile(
    rf"{START}(?P<n>{NUM})\s*(?:V\s?(?=/|-\d))?(?:[/-]|to|bis)\s*"
    rf"(?:{NUM}\s*/\s*)?(?P<n2>{NUM})\s*{VOLT}{VOLT_END}(?!\s?[~=])",
    re.IGNORECASE,
)
# What a part is tried with, not what it is rated for, in several languages. Common practice.
TRIED = (
    r"surge|peak|spitzen?\w*|sv|t\.?v\.?|test\w*|prüf\w*\.?|pruef\w*\.?|essai|prova|prueba|próba|zkuš\w*|испыт\w*"
    r"|beproev\w*"
)
SURGE = re.compile(
    rf"{START}{NUM}\s*k?v\.?\s*(?:{TRIED})\b\.?(?=\s*[,/]?\s*{NUM}\s*V\.?\s*(?:d\.?c\.?\s*)?w)"  # 525 V surge 450 V wkg
    rf"|\b(?:{TRIED})\s*[:=]?\s*{NUM}\s*k?{VOLT}\s?=?{VOLT_END}|{START}{NUM}\s*(?:k?v)?\.?[=~]?\s*(?:{TRIED})\b\.?(?!\s*[:=]?\s*{NUM}\s*(?:k?V|$))",
    re.IGNORECASE,
)
# 250~ and 63-: the sign of the kind stands in place of the V
SIGNED = re.compile(rf"{START}(?P<n>{NUM})\s?(?P<kind>[~=-])(?=\s*$|\s+[\0{LETTERS}]|[)/])")
RAIL_WORD = r"(?:rail|supply|line|bus|schiene|versorgung|alimentation|netzteil|питани\w*)"
RAIL = re.compile(
    rf"(?:(?<=[\s(\0])|(?<=^))(?:±|\+/-|[+-])(?P<n>{NUM})\s*V(?![{LETTERS}0-9])(?P<said>\s*-?\s*{RAIL_WORD})?"
    rf"|(?P<said2>\b(?:vcc|vdd|vss|vee|b\+|ub|ubat|{RAIL_WORD})\s*(?:is|of|[:=])?\s*)(?:±|\+/-|[+-])?{NUM}\s*V(?![{LETTERS}0-9])"
    rf"|{START}{NUM}\s*V(?:\s*dc)?(?P<said3>\s*-?\s*{RAIL_WORD})",
    re.IGNORECASE,
)
VOLT_LETTERS = ("v", "в", "伏", "u")  # without one of these no voltage has its unit
RAIL_HINTS = (
    "+",
    "-",
    "±",
    "vcc",
    "vdd",
    "vss",
    "vee",
    "b+",
    "ub",
    "rail",
    "supply",
    "line",
    "bus",
    "schiene",
    "aliment",
    "netz",
    "питан",
)
TRIED_HINTS = ("surge", "peak", "spitz", "sv", "tv", "t.v", "test", "pr", "essai", "pró", "zkuš", "испыт", "beproev")
SURGE_FROM, SURGE_TO = 1.04, 1.35  # so far above the rating lies a surge voltage. Common practice
MAINS_V = (125.0, 240.0, 250.0, 253.0, 275.0, 300.0, 305.0, 310.0, 330.0, 400.0, 440.0, 480.0, 500.0, 760.0)
ONLY_MAINS_V = (275.0, 305.0, 310.0)  # no d.c. rating is made so
FIGURES = {2.5, 4, 5, 5.5, 6, 6.3, 6.4, 10, 12, 12.5, 15, 16, 20, 25, 30, 35, 40, 50, 60, 63, 64, 70, 75, 80, 100, 125,
           150, 160, 180, 200, 220, 250, 300, 315, 330, 350, 385, 400, 420, 450, 475, 500, 550, 600, 630, 700, 750, 800,
           1000, 1250, 1500, 1600, 2000, 2500, 3000, 4000, 5000, 6000, 10000}  # fmt: skip
"""The voltages that parts are rated for, old ones too: by these a number without a unit is known. Common practice."""


def ratings(draft: Draft) -> None:
    """Read every voltage; the first rating of a kind stands, and what is none is told apart."""
    while draft.holds(RAIL_HINTS) and (found := RAIL.search(draft.rest)):
        piece = draft.take(found)
        if not any(found.group("said", "said2", "said3")):
            draft.doubt(f'"{piece}" was taken as the rail beside the part, not as its rating.', "rated_v", piece)
    while draft.holds(TRIED_HINTS) and (found := SURGE.search(draft.rest)):
        draft.take(found)
    while draft.holds("~=-") and (found := SIGNED.search(draft.rest)):
        _signed(draft, found)
    if not draft.holds(VOLT_LETTERS):
        return
    while found := PLACED.search(draft.rest):
        draft.state("rated_v", float(f"{found['w']}.{found['d']}"), draft.take(found))
    if found := PAIR.search(draft.rest):
        _pair(draft, found)
    for found in RATING.finditer(draft.rest):
        kind = f"{found['before'] or ''} {found['kind']}"
        name = "rated_ac_v" if re.search(AC, kind, re.IGNORECASE) else "rated_v"
        _state(draft, name, _volts(draft, found["n"], found["k"]), draft.take(found))
    if found := LABELLED.search(draft.rest):
        _state(draft, "rated_v", _volts(draft, found["n"]), draft.take(found))


def _signed(draft: Draft, found: re.Match[str]) -> None:
    """63- and 250~ beside a value; anything else so written is left without its sign."""
    volts = _volts(draft, found["n"])
    around = draft.rest[: found.start()] + draft.rest[found.end() :]
    usual = volts in FIGURES or (volts in MAINS_V and found["kind"] == "~")
    if usual and (VALUED.search(around) or re.search(r"[µunp]\d", around)):
        _state(draft, "rated_ac_v" if found["kind"] == "~" else "rated_v", volts, draft.take(found))
    else:
        draft.take(found, "kind")


def _volts(draft: Draft, text: str, thousand: str | None = None) -> float:
    return float(number(text, draft.mark).value) * (1000 if thousand else 1)


def _state(draft: Draft, name: str, volts: float, piece: str) -> None:
    if 0.5 <= volts <= 100_000:
        draft.state(name, volts, piece, show(volts, "V"))
    else:
        draft.doubt(f'"{piece}" is no voltage that a part is rated for.', name, piece)


def _pair(draft: Draft, found: re.Match[str]) -> None:
    """Beside a value 450/550 V is working and surge voltage, and 16/25 V is open; else 47/63V holds a value."""
    first, second = (_volts(draft, found[name]) for name in ("n", "n2"))
    around = draft.rest[: found.start()] + draft.rest[found.end() :]
    if first not in FIGURES or not VALUED.search(around):
        return
    piece = draft.take(found)
    draft.state("rated_v", first, piece)
    if not SURGE_FROM <= second / first <= SURGE_TO:
        draft.doubt(f'"{piece}" names two voltages; {show(first, "V")} was taken.', "rated_v", piece, show(second, "V"))


def mains(draft: Draft) -> None:
    """Where a safety class is printed, a voltage without a kind is the a.c. one; 275 V is made for mains only."""
    volts = draft.stated.get("rated_v")
    if volts is None or "rated_ac_v" in draft.stated:
        return
    classed = "safety_class" in draft.stated and volts in MAINS_V
    if not classed and volts not in ONLY_MAINS_V:
        return
    piece = next(text for name, text in draft.pieces if name == "rated_v")
    if re.search(r"=|d\.?c", piece, re.IGNORECASE):
        return
    draft.pieces = [("rated_ac_v", text) if name == "rated_v" else (name, text) for name, text in draft.pieces]
    draft.stated["rated_ac_v"] = draft.stated.pop("rated_v")
    if not classed:
        draft.doubt(
            f'"{piece}" was taken as an a.c. rating, which only parts for the mains have; it does not say so.',
            "rated_v rated_ac_v", piece, f"{show(volts, 'V')} d.c.",
        )  # fmt: skip
