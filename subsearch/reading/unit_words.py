"""Units as other languages and scripts write them, and the spelling of ours that `units.read_quantity` takes."""

import re
from collections.abc import Mapping

from subsearch.reading.spelling import one_spelling

UNIT_WORDS: Mapping[str, str] = {
    "F": "Ф 法 ファラド farad farads",
    "V": "В 伏 ボルト volt volts вольт",
    "A": "А 安 ampere amperes",
    "Ω": "Ом 欧 オーム ohms",
    "Hz": "Гц 赫兹 ヘルツ hertz",
    "mm": "мм 毫米 ミリ milímetros millimètres",
    "°C": "°С С 度 ° grad gradi",
    "h": "ч час часа часов 小时 小時 時間 시간 heure heures ora ore horas hora uur uren godz godz. godzin hod hodin "
    "std stunde stunden hour hours hrs hr H",
    "%": "Prozent процентов pct pct.",
}
PREFIX_WORDS: Mapping[str, str] = {"мк": "µ", "н": "n", "п": "p", "м": "m", "к": "k", "微": "µ", "纳": "n", "皮": "p"}
SPELT = {word.casefold(): ours for ours, words in UNIT_WORDS.items() for word in words.split()}


def in_our_units(text: str, unit: str) -> str:
    """Give a quantity with its unit in our spelling, where another language writes it; any other text as it is.

    text: the cell. unit: the unit wanted. Nothing else is changed, so a wrong unit stays a wrong unit.

    >>> in_our_units("4,7 мкФ", "F"), in_our_units("2 000 ч", "h"), in_our_units("63 lots", "V")
    ('4,7 µF', '2 000 h', '63 lots')
    """
    tidy = one_spelling(text)
    found = re.fullmatch(r"(.*\d)\s*([^\d\s].*)", tidy)
    if not found:
        return tidy
    ours = our_unit(found[2], unit)
    return f"{found[1]} {ours}" if ours else tidy


def our_unit(written: str, unit: str) -> str:
    """Give a unit that another language writes, prefix and all, in our spelling; "" where it is none of this kind.

    >>> our_unit("мкФ", "F"), our_unit("小时", "h"), our_unit("мкФ", "V")
    ('µF', 'h', '')
    """
    bare = written.strip()
    if SPELT.get(bare.casefold()) == unit:
        return unit
    for word, prefix in PREFIX_WORDS.items():
        if bare.startswith(word) and SPELT.get(bare.removeprefix(word).casefold()) == unit and unit in "FVAΩHz":
            return prefix + unit
    return ""
