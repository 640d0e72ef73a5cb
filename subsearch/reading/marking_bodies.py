"""Sizes in a marking: diameter, height, length, width and lead spacing, labelled or in their usual order."""

import re
from collections.abc import Mapping, Sequence

from subsearch.reading.marking_draft import Draft
from subsearch.reading.marking_numbers import LETTERS, NUM, START, number
from subsearch.reading.marking_units import MADE_OF, VALUED

MM = r"(?:\s*(?:[mM]{2}|мм|毫米))"
AFTER = rf"(?![0-9{LETTERS}%°])"
# Words for a size, in small letters and several languages. Common practice.
CALLED: Mapping[str, str] = {
    "lead_spacing_mm": r"lead spacing|lead space|lead pitch|pin spacing|pin pitch|spacing|pitch|l\.?s\.?|r\.?m\.?"
    "|raster(?:ma(?:ß|ss))?|entraxe|pas|passo|paso|steek|rozstaw|rozteč|roztec|шаг|脚距|脚距离|间距|引脚间距|ピッチ"
    "|リード間隔|피치|간격|리드간격",
    "diameter_mm": "diameter|diam|dia|durchmesser|diamètre|diametre|diametro|diámetro|średnica|srednica|průměr|prumer"
    "|диаметр|直径|지름|직경|\u00d8",
    "height_mm": "height|high|tall|hoch|höhe|hoehe|hauteur|altezza|altura|alto|hoogte|wysokość|wysokosc|výška"
    "|vyska|высота|高さ|高度|높이",
    "length_mm": "length|long|lang|länge|laenge|longueur|lunghezza|longitud|lengte|długość|dlugosc|délka|delka|длина"
    "|長さ|长度|길이",
    "width_mm": "width|breite|largeur|larghezza|anchura|ancho|breedte|szerokość|szerokosc|šířka|sirka|ширина|幅|宽度"
    "|폭",
}
LETTER = {
    "d": "diameter_mm", "h": "height_mm", "p": "lead_spacing_mm", "l": "length_mm", "w": "width_mm", "b": "width_mm",
}  # fmt: skip
ANY = "|".join(CALLED.values()).replace("|\u00d8", "")
FIRST = re.compile(  # the first size, with its number in front only where the next one has it there too
    rf"(?P<n>{START}{NUM}){MM}?\s*(?:{ANY})\s+{NUM}{MM}?\s*(?:{ANY})(?![{LETTERS}])"
    rf"|(?<![{LETTERS}])(?:{ANY})(?![{LETTERS}])",
    re.IGNORECASE,
)
AHEAD = {  # the word before the size, which is looked for first: in "5x11mm raster 2mm" the raster is 2 mm
    name: re.compile(rf"(?<![{LETTERS}])(?:{words})\s*[:=.]?\s*(?P<n>{NUM}){MM}?{AFTER}", re.IGNORECASE)
    for name, words in CALLED.items()
}
BEHIND = {
    name: re.compile(rf"{START}(?P<n>{NUM}){MM}?\s*(?:{words})(?![{LETTERS}0-9])", re.IGNORECASE)
    for name, words in CALLED.items()
}
HINTS = {name: tuple(re.sub(r"\\.\?|\(.*?\)\)?\?", "", words.lower()).split("|")) for name, words in CALLED.items()}
EVERY_HINT = tuple(hint for hints in HINTS.values() for hint in hints)
BETWEEN = r"\s*[-/x,]\s*"
LIST = re.compile(
    rf"\(?\s*(?P<names>[dhplwb](?:{BETWEEN}[dhplwb]){{1,3}})\s*[=:]\s*"
    rf"(?P<sizes>{NUM}(?:{BETWEEN}{NUM}){{1,3}}){MM}?\s*\)?",
    re.IGNORECASE,
)
LETTERED = re.compile(rf"(?<![{LETTERS}0-9])(?P<l>[DHPLWBdhplwb])\s*[=:]?\s*(?P<n>{NUM}){MM}?{AFTER}")
LETTER_BEHIND = re.compile(rf"{START}(?P<n>{NUM}){MM}?\s?(?P<l>[DHPLWB])(?![{LETTERS}0-9])")
TIMES = r"\s*(?:[xX*хХ]|by)\s*"
ACROSS = re.compile(  # what a unit of capacitance or voltage follows is a count or a value
    rf"(?:(?<![{LETTERS}0-9])(?<![0-9][.,/])|(?<=[\u00d8Dd])|(?<=\dV)|(?<=[\u00b5unp][Ff]))(?P<dia>[\u00d8])?(?P<a>{NUM}){MM}?(?P<said>\s*(?:[Dd]|(?i:dia(?:m(?:eter)?)?)\.?)(?=\s*[xX*]))?{TIMES}[LHlh]?\s*"
    rf"(?P<b>{NUM}){MM}?(?:\s?[LHlh](?![{LETTERS}0-9]))?(?:{TIMES}[LHlhP]?\s*(?P<c>{NUM}){MM}?)?"
    rf"(?![0-9{LETTERS}%°\"]|[.,]\d|/(?:2|4|8|16)\b(?![.,])|\s*(?:(?i:{MADE_OF})(?!\s*[=:\d])|k?V|in(?:ch(?:es)?)?\b|\"|''))"
)
ROUND = re.compile(rf"[\u00d8]\s*(?P<n>{NUM}){MM}?")
ALONE = re.compile(rf"{START}(?P<n>{NUM}){MM}{AFTER}")
SPACING = re.compile(
    rf"(?<![{LETTERS}0-9])[Pp]\s?(?P<n>2[.,]5|3[.,]5|7[.,]5|22[.,]5|27[.,]5|37[.,]5|5|10|15)(?:[.,]0)?{AFTER}"
)
LEAST_MM, MOST_MM = 0.1, 300
LEAST_SPACING_MM, MOST_SPACING_MM = 1, 60
MM_IN_INCH = 25.4
# Up to such a diameter, the usual lead spacing of a can [mm]. Common practice
CAN_SPACING = ((5, 2.0), (6.3, 2.5), (8, 3.5), (13, 5.0), (18, 7.5), (35, 10.0))
BOX_SPACING = (2.5, 5.0, 7.5, 10.0, 15.0, 22.5, 27.5, 37.5)
BOX = ("length_mm", "width_mm", "height_mm")


def listed_sizes(draft: Draft) -> None:
    """Read sizes whose letters stand in a row before them, like d-h-p = 22-30-10."""
    if found := LIST.search(draft.rest):
        _list(draft, found)


def named_sizes(draft: Draft) -> None:
    """Read the sizes that a word, a letter or a sign names."""
    first = FIRST.search(draft.rest) if draft.holds(EVERY_HINT) else None
    order = (BEHIND, AHEAD) if first and first["n"] else (AHEAD, BEHIND)
    for name, hints in HINTS.items():
        if not draft.holds(hints) or (name == "diameter_mm" and _stands_across(draft)):
            continue
        if found := order[0][name].search(draft.rest) or order[1][name].search(draft.rest):
            _size(draft, name, found["n"], draft.take(found))
    _lettered(draft)


def _stands_across(draft: Draft) -> bool:
    """Whether the diameter is for a later step: Ø 8 × 12, but not 8 dia × 12 high, whose height has its word too."""
    found = ACROSS.search(draft.rest)
    return found is not None and not (found["said"] and draft.holds((*HINTS["height_mm"], *HINTS["length_mm"])))


def bodies(draft: Draft) -> None:
    """Read sizes in a row; three are length, width and height of a box, or diameter, height and spacing of a can."""
    if found := ACROSS.search(draft.rest):
        _across(draft, found)
    if found := ROUND.search(draft.rest):
        _size(draft, "diameter_mm", found["n"], draft.take(found))
    if VALUED.search(draft.rest) and (found := SPACING.search(draft.rest)):
        _size(draft, "lead_spacing_mm", found["n"], draft.take(found))
    _length_is_height(draft)


def alone(draft: Draft) -> None:
    """Read a single size in mm that nothing names: most print the lead spacing so, which is doubted."""
    found = ALONE.search(draft.rest)
    if found and "lead_spacing_mm" not in draft.stated and number(found["n"]).value <= MOST_SPACING_MM:
        behind = re.search(r"[xX*хХ]\s*$", draft.rest[: found.start()])
        piece = draft.take(found)
        if behind and "diameter_mm" in draft.stated and not {"height_mm", "length_mm"} & draft.stated.keys():
            axial = draft.stated.get("lead_style") == "axial"
            _size(draft, "length_mm" if axial else "height_mm", found["n"], piece)
            return
        _size(draft, "lead_spacing_mm", found["n"], piece)
        boxed = draft.stated.get("family") in ("film", "ceramic", "paper") or "safety_class" in draft.stated
        if not boxed or draft.stated.get("lead_spacing_mm") not in BOX_SPACING:
            sentence = f'"{piece}" was taken as the lead spacing: nothing says which size it is.'
            draft.doubt(sentence, "lead_spacing_mm", piece)


def _size(draft: Draft, name: str, text: str, piece: str) -> None:
    size = float(number(text, draft.mark).value)
    if name == "lead_spacing_mm" and size < LEAST_SPACING_MM:
        sentence = f'"{piece}" is no lead spacing in mm; in inches it would be {size * MM_IN_INCH:g} mm.'
        draft.doubt(sentence, name, piece, f"{size * MM_IN_INCH:g} mm")
    elif LEAST_MM <= size <= MOST_MM:
        draft.state(name, size, piece, f"{size:g} mm")
    else:
        draft.doubt(f'"{piece}" is no size of a part in mm.', name, piece)


def _list(draft: Draft, found: re.Match[str]) -> None:
    names = re.findall("[a-z]", found["names"].casefold())
    sizes = re.findall(NUM, found["sizes"])
    if len(names) == len(sizes):
        piece = draft.take(found)
        for letter, size in zip(names, sizes, strict=True):
            _size(draft, LETTER[letter], size, piece)


def _lettered(draft: Draft) -> None:
    """D10 H16 P5 or 10D 16H, of which one alone says too little unless the unit stands there."""
    for pattern in (LETTERED, LETTER_BEHIND):
        every = list(pattern.finditer(draft.rest))
        letters = {one["l"].casefold() for one in every}
        if (
            len(letters) < 2
            and "diameter_mm" not in draft.stated
            and not any("mm" in one[0] or "=" in one[0] for one in every)
        ):
            continue
        for one in every:
            _size(draft, LETTER[one["l"].casefold()], one["n"], draft.take(one))


def _length_is_height(draft: Draft) -> None:
    """A standing can is as tall as it is long; an axial one keeps its length."""
    can = {"length_mm", "diameter_mm"} <= draft.stated.keys() and "height_mm" not in draft.stated
    if can and draft.stated.get("lead_style") != "axial":
        draft.pieces = [("height_mm", text) if name == "length_mm" else (name, text) for name, text in draft.pieces]
        draft.stated["height_mm"] = draft.stated.pop("length_mm")


def _box(draft: Draft, sizes: Sequence[float], piece: str) -> tuple[str, ...]:
    """A length below the width is none: then the width stands first, as in 2,5 × 6,5 × 7,2."""
    if sizes[0] >= sizes[1]:
        return BOX
    names = ("width_mm", "height_mm", "length_mm")
    draft.doubt(f'"{piece}" was taken as width, height and length; which is which is open.', " ".join(names), piece)
    return names


def _across(draft: Draft, found: re.Match[str]) -> None:
    sizes = [float(number(text, draft.mark).value) for text in found.group("a", "b", "c") if text]
    if not all(LEAST_MM <= size <= MOST_MM for size in sizes):
        return
    piece = draft.take(found)
    axial, box = draft.stated.get("lead_style") == "axial", draft.stated.get("family") in ("film", "ceramic", "paper")
    names: tuple[str, ...] = ("diameter_mm", "length_mm" if axial else "height_mm")
    if len(sizes) == 3:
        spacing = next((usual for upto, usual in CAN_SPACING if sizes[0] <= upto), None)
        can = found["dia"] or found["said"] or draft.stated.get("family") in ("electrolytic", "tantalum")
        names = (*names, "lead_spacing_mm") if can or (sizes[2] == spacing and not box) else _box(draft, sizes, piece)
    elif box and not (found["dia"] or found["said"]):
        names = ("length_mm", "width_mm")
        draft.doubt(
            f'"{piece}" gives two sizes of a body that may have three; which is open.', "length_mm width_mm", piece
        )
    for name, size in zip(names, sizes, strict=True):
        draft.state(name, size, piece, f"{size:g} mm")
