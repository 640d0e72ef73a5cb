"""One spelling for the signs of a marking, sign by sign, so that every piece can be quoted as it was printed."""

import html
import re
import unicodedata

from subsearch.reading.marking_draft import Draft

HALVES = {"\u00bd": ".5", "\u00bc": ".25", "\u00be": ".75"}
# 47UF6.3VX5R1206: where one thing ends and the next begins without a space
RUN_TOGETHER = re.compile(
    r"(?<=\d)(?:[uU\u00b5nNpP][fF]|V)(?=\d\d|\d\.\d|[XYZ][4-9][A-Z]|C0G|NP0)|(?:C0G|NP0|[XYZ][4-9][A-Z])(?=\d)"
    r"|(?<=\d)(?:85|105|125)C(?=\d)|(?<=V)(?:85|105|125)C(?=\d)"
)
SPACES = re.compile(r"\s{2,}")
SQUARED = re.compile("[\u3300-\u33ff\ufb00-\ufb06]")  # one sign that stands for several: ㎌, ㎜
FULL_WIDTH = {code: chr(code - 0xFEE0) for code in range(0xFF01, 0xFF5F)}  # of Japanese and Chinese lists
SAME = (  # several signs, and the one that is read
    ("\u00a0\u2002\u2003\u2007\u2009\u200a\u202f\u3000\t\r\n\v\f_|\0", " "),
    ("\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u2500\u2026", "-"),
    ("\u00d7\u2715\u2716\u2a2f", "*"),
    ("\u00f8\u2300\u03a6\u03c6\u03d5\u2205", "\u00d8"),
    ("\u00ba\u02da\u2218", "\u00b0"),
    ("\u2019\u02bc\u00b4`", "'"),
    ("\u03bc", "\u00b5"),
    ("\u039c", "M"),
    ("\u3001", ","),
    ("\u301c\u23e6", "~"),
    ("\u2393", "="),
    ("\u00c2", " "),  # what is left before µ and ° of a text that was read in the wrong encoding
)
SAME_SIGN = FULL_WIDTH | {ord(sign): meant for signs, meant in SAME for sign in signs}
CHIP = re.compile(r"(?<!\d)(?:0[1-9]\d\d|1206|1210|1808|1812|2010|2220|2225),(?=\d)")  # a list's comma, no decimal
CYRILLIC = re.compile(r"(?<![^\W_])(\d{0,3})([нНпП])(\d{0,2})(?![^\W_])")  # 4н7, 47Н, н22: marks of old Russian parts
OTHER_DIGIT = re.compile(r"(?![0-9])\d")  # of another script: a pattern takes it for a digit, our tables do not know it
TIMES = re.compile(r"(?<=[0-9FfФфu\u00b5npVВмm)])[xXхХ](?=\s?[\d(])(?![X][12]\b)|(?<=\s)[xXхХ](?=\s\d)")  # no letter
# In brackets what was there before: not what the text is about, in several languages
BEFORE = re.compile(
    r"(?i)\((?:was|orig|instead|formerly|statt|vorher|früher|ersetzt|replaces|était|era|antes|był|было)\b[^)]*\)"
)
NOUGHT = re.compile(
    r"(?<![A-Za-z0-9.,])(?=[\dOo.,]*[Oo])(?=[\dOo.,]*\d|[Oo][.,])[\dOo]+(?:[.,][\dOo]+)?(?=\s*(?:[u\u00b5nNpPU]|[mM][fF]|V))"
)
SLIPS = (  # what fingers do, what is meant, and what must stand in the text in small letters
    (re.compile(r"(?<=\d)(\s*[u\u00b5])U(?![A-Za-z])"), "F", ("uu", "µu", "u u", "µ u")),
    (re.compile(r"(?<=\d)(\s*)[u\u00b5](?=UF(?![A-Za-z]))"), " ", ("uuf", "µuf")),
    (re.compile(r"(?<=\d)(\s*[u\u00b5np][Ff])[Ff](?![A-Za-z])"), " ", ("ff",)),
    (re.compile(r"(?<=\d)(\s*)[\ufffd?ìæ](?=[Ff](?![A-Za-z]))"), "\u00b5", ("\ufffd", "?", "ì", "æ")),
    (re.compile(r"(?<![A-Za-z0-9])()[lI](?=\d+\s*[u\u00b5np]F?(?![A-Za-z]))"), "1", ("l", "i")),
    (re.compile(r"(?<=\d)(\s*V)V(?![A-Za-z])"), " ", ("vv",)),
)


def begin(marking: str) -> Draft:
    """Give the draft of a marking: signs in one spelling, slips of the fingers put right and doubted.

    >>> begin("1O\u03bcF").rest, begin("8 \u00d7 11").rest
    ('10µF', '8 * 11')
    """
    marking = html.unescape(marking) if "&" in marking else marking
    marking = RUN_TOGETHER.sub(lambda found: f"{found[0]} ", _halves(marking.replace("Î¼", " µ")))
    printed = SQUARED.sub(lambda found: unicodedata.normalize("NFKC", found[0]), SPACES.sub(" ", marking))
    rest = printed.translate(SAME_SIGN)
    if not rest.isascii():
        rest = OTHER_DIGIT.sub(lambda found: str(unicodedata.decimal(found[0])), rest)
        rest = CYRILLIC.sub(_latin, rest)
    draft = Draft(printed, rest)
    if "(" in draft.rest:
        draft.rest = BEFORE.sub(lambda found: "\0" * len(found[0]), draft.rest)
    draft.rest = TIMES.sub("*", draft.rest)
    draft.rest = CHIP.sub(lambda found: found[0].replace(",", " "), draft.rest)
    for found in NOUGHT.finditer(draft.rest) if draft.holds("o") else ():
        put = re.sub("[Oo]", "0", found[0])
        draft.rest = draft.rest[: found.start()] + put + draft.rest[found.end() :]
        _say(draft, draft.piece(found), put)
    for pattern, meant, hints in SLIPS:
        for slip in pattern.finditer(draft.rest) if draft.holds(hints) else ():
            place, end = slip.end(1), slip.end() + 1
            draft.rest = draft.rest[:place] + meant + draft.rest[place + 1 :]
            while end < len(printed) and printed[end].isalpha():
                end += 1
            start = max(printed.rfind(sign, 0, slip.start()) + 1 for sign in " /(,;")
            _say(draft, printed[start:end].strip(), "".join(draft.rest[start:end].split()))
    return draft


def _latin(found: re.Match[str]) -> str:
    """The prefix in the other alphabet, where figures stand beside it."""
    whole, prefix, part = found.groups()
    return f"{whole}{'n' if prefix in 'нН' else 'p'}{part}" if whole or part else found[0]


def _halves(marking: str) -> str:
    for sign, meant in HALVES.items():
        marking = re.sub(rf"(?<!\d){sign}", f"0{meant}", marking).replace(sign, meant) if sign in marking else marking
    return marking


def _say(draft: Draft, piece: str, put: str) -> None:
    fields = "rated_v" if "V" in put else "capacitance_f"
    draft.doubt(f'"{piece}" was taken as a slip for "{put}".', fields, piece)
