"""Temperatures, hours and tolerances in a marking."""

import re

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, NUM, START, number
from subsearch.reading.numerals import without_thousands

# Upper category temperatures that are printed with a C alone. Common practice.
UPPER_C = "55|60|65|70|75|85|95|100|105|110|115|120|125|130|135|140|145|150|155|175|200"
DEGREE = r"(?:\s*(?:°\s*[CcСс]?|deg\.?\s*C?|℃|'\s?C|grad\s?C?|st\.?\s?C|度|도)|\s?[CС])"
SPAN = re.compile(
    rf"(?P<low>-\s*\d{{2}}){DEGREE}?\s*(?:-|~|/|to|bis|\.{{2,3}}|\s)\s*"
    rf"(?P<high>\+?\s*\d{{2,3}}){DEGREE}?(?![0-9{LETTERS}%.,])"
)
UPPER = re.compile(
    rf"(?:tmax|t\s*max|max\.?)?\s*(?<![0-9.,{LETTERS}])\+?(?:(?P<n>\d{{2,3}})\s*(?:°\s*[CcСс]?|deg\.?\s*C?|℃|'\s?C|grad\s?C?|st\.?\s?C|度|도)"
    rf"|(?P<n2>{UPPER_C})\s?[CС])(?![0-9{LETTERS}])",
    re.IGNORECASE,
)
HOURS = re.compile(
    rf"{START}(?P<n>\d{{1,3}}[.,' ]\d{{3}}|\d{{3,6}}|\d{{1,2}}(?P<k>\s?k))\s*"
    rf"(?:h(?:ours?|rs?\.?)?|std\.?|stunden|heures|ore|horas|uur|godz\.?|hod\.?|ч(?:ас\w*)?|時間|小时|시간)(?![{LETTERS}0-9])",
    re.IGNORECASE,
)
# The climatic category: lowest and highest temperature, days of damp heat. Source: climatic category (IEC 60068-1)
CLIMATE = re.compile(
    rf"{START}(?P<low>10|25|40|55|65)/(?P<high>0?70|0?85|100|105|125)/(?:04|10|21|42|56)(?![0-9{LETTERS}])"
)
FAHRENHEIT = re.compile(r"\+?(?P<n>\d{3})\s*°\s*F(?![a-z])")
PLUS = r"(?:±|\+\s?/\s?-|\+-|-/\+)"
USUAL = "5|10|20|30|40|50|75|80|100"  # ends of a tolerance. Common practice
PERCENT = re.compile(
    rf"(?P<two>[-+]\s*(?P<a>{NUM})\s*%?\s*[/~,]?\s*[-+]\s*(?P<b>{NUM})\s*%)|{PLUS}\s*(?P<one>{NUM})\s*(?:%|pct|prozent|percent)"
    rf"|(?P<ends>[-+](?:{USUAL})\s*/\s*[-+](?:{USUAL}))(?![0-9{LETTERS}.,])"  # +50/-20, the sign of % left out
    rf"|(?P<zero>{START}0\s*%?\s*[/~,]?\s*\+\s*(?P<c>{NUM})\s*%)|{START}(?P<bare>{NUM})\s*(?:%|pct)",
    re.IGNORECASE,
)
SPREAD = re.compile(rf"{PLUS}\s*(?P<n>{NUM})\s*[pP][fF]?(?![{LETTERS}0-9])")  # ±0.5 pF is no value
LEAST_PCT, MOST_PCT = -100, 300
LOWEST_LIFE_H, HIGHEST_LIFE_H = 100, 200_000


def conditions(draft: Draft) -> None:
    """Read the temperatures and the life, the tolerance in % or in pF."""
    if draft.holds(("%", "pct", "prozent", "percent", "/-", "/+")):
        _percent(draft)
    if found := SPREAD.search(draft.rest):
        draft.stated["spread_pf"] = float(number(found["n"], draft.mark).value), draft.take(found)
    if found := CLIMATE.search(draft.rest):
        draft.state("rated_c", float(found["high"]), draft.take(found))
    if found := FAHRENHEIT.search(draft.rest):
        draft.state("rated_c", float(round((int(found["n"]) - 32) / 1.8)), draft.take(found))
    if found := SPAN.search(draft.rest):
        _span(draft, found)
    for found in UPPER.finditer(draft.rest):
        upper = float(found["n"] or found["n2"])
        if 40 <= upper <= 250:
            draft.state("rated_c", upper, draft.take(found), f"{upper:g} °C")
    if found := HOURS.search(draft.rest):
        bare = re.sub(r"\D", "", without_thousands(found["n"]))
        hours = float(bare) * (1000 if found["k"] else 1)
        if LOWEST_LIFE_H <= hours <= HIGHEST_LIFE_H:
            draft.state("life_h", hours, draft.take(found), f"{hours:g} h")


def _span(draft: Draft, found: re.Match[str]) -> None:
    low, high = (float(re.sub(r"\s", "", found[name])) for name in ("low", "high"))
    if -80 <= low < 0 and 40 <= high <= 250:
        piece = draft.take(found)
        draft.state("rated_c", high, piece, f"{high:g} °C")


def _percent(draft: Draft) -> None:
    """±20 %, -10+50%, +80/-20 %, 0/+100 %."""
    while found := PERCENT.search(draft.rest):
        piece = draft.take(found)
        if found["two"] or found["zero"] or found["ends"]:
            signed = [re.sub(r"\s", "", text).replace(",", ".") for text in re.findall(rf"[-+]?\s*{NUM}", found[0])]
            low, high = sorted(map(float, signed))
        else:
            high = float(number(found["one"] or found["bare"], draft.mark).value)
            low = -high
        if LEAST_PCT <= low <= 0 <= high <= MOST_PCT:
            draft.state("tolerance", (low + 0.0, high), piece, f"{low:g}/+{high:g} %")
        else:
            draft.doubt(f'"{piece}" is no tolerance: it goes from {LEAST_PCT} to +{MOST_PCT} %.', "tolerance", piece)


def spread(draft: Draft) -> None:
    """Turn a tolerance in pF into %, now that the value is known."""
    if stated := draft.stated.pop("spread_pf", None):
        size_pf, piece = stated
        if capacitance_f := draft.stated.get("capacitance_f"):
            percent = round(size_pf * 1e-12 / capacitance_f * 100, 6)
            draft.state("tolerance", (-percent, percent), piece)
