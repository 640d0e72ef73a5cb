"""Decimal marks and thousands separators, where the text or the whole list leaves no doubt which is which."""

import re
from collections.abc import Iterable


def without_thousands(text: str) -> str:
    """Give a number that has no decimals without its separators: there, a mark before three digits leaves no doubt.

    >>> without_thousands("1.000"), without_thousands("2,000 h"), without_thousands("2,5")
    ('1000', '2000 h', '2,5')
    """
    return re.sub(r"(?<=\d)[.,' \u00a0\u202f](?=\d{3}(?!\d))", "", text)


def may_be_code(text: str) -> bool:
    """Whether a bare number looks like a code of three digits in pF, whose values nobody makes in full.

    >>> may_be_code("104"), may_be_code("473"), may_be_code("470"), may_be_code("125")
    (True, True, False, False)
    """
    return bool(re.fullmatch(r"\s*(?:10|12|15|18|22|27|33|39|47|56|68|82)[34]\s*", text))


def decimal_mark(texts: Iterable[str]) -> str:
    """Give the decimal mark a whole list writes, "," or ".", or "" where its numbers leave that open.

    texts: cells that hold numbers. A mark before three digits may mean thousands and proves nothing.

    >>> decimal_mark(["0,47 uF", "1,250"]), decimal_mark(["0.47", "1,250"]), decimal_mark(["1,250"])
    (',', '.', '')
    """
    proof = re.compile(r"(?<!\d)0?([.,])\d|(?<![.,\d])\d+([.,])(?:\d{1,2}|\d{4,})(?![\d.,])")
    marks = {found[1] or found[2] for text in texts for found in proof.finditer(text)}
    return marks.pop() if len(marks) == 1 else ""


def settled(text: str, mark: str) -> str:
    """Give a cell with a decimal point and without thousands separators, as far as the list's decimal mark is known.

    >>> settled("1,250 h", ","), settled("1.250 h", ","), settled("1,250 h", "."), settled("1,250 h", "")
    ('1.250 h', '1250 h', '1250 h', '1,250 h')
    """
    if not mark:
        return text
    thousands = "." if mark == "," else ","
    text = re.sub(
        rf"(?<![\d.,])([1-9]\d{{0,2}}(?:\{thousands}\d{{3}})+)(?!\d)", lambda m: m[1].replace(thousands, ""), text
    )
    return re.sub(r",(?=\d)", ".", text) if mark == "," else text  # a comma before a space parts two things
