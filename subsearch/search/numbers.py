"""The numbers that a statement uses, made in stages around its parts: only those that its text names.

A number that can't be made, because no need states what it is measured against, is unknown.
"""

import re

from subsearch.search import derived, derived_ways
from subsearch.search.stated import Stated

STAGES = derived_ways.STAGES
LAYERS = (derived.OF_PART, *STAGES[:-1], STAGES[-1] | derived.OF_PAIR, derived.OF_NEAR_MISS)
SIMPLER = derived.SIMPLER | derived_ways.SIMPLER
MADE = {name: sql for layer in LAYERS for name, sql in layer.items()}
NOT_MADE = dict.fromkeys([*MADE, "way", "worked_mm", "tightest_mm", "years", "cost"])
"""Every number that may stand with a part, as if none could be made."""
OF_NEED = re.compile(r'"need"\."(\w+)"')
NOT_NEEDED = re.compile(r'"need"\."(\w+)" IS (?:NOT )?NULL')  # fields that a number can do without
CLAIM = re.compile(r'\bpart"?\."?(\w+)')
WORD = re.compile(r"\w+")


def layers(stated: Stated, text: str) -> list[dict[str, str]]:
    """The numbers of each stage that the text names, or a later number is made of."""
    wanted = set(WORD.findall(text))
    simpler = {name: sql for (name, field), sql in SIMPLER.items() if not stated.says(field)}
    kept: list[dict[str, str]] = []
    for layer in reversed(LAYERS):
        whole = layer | {name: sql for name, sql in simpler.items() if name in layer}
        its = {name: _made(stated, sql) for name, sql in whole.items() if name in wanted}
        wanted |= {name for sql in its.values() for name in CLAIM.findall(sql)}
        kept.insert(0, its)
    return kept


def _made(stated: Stated, sql: str) -> str:
    measured_against = set(OF_NEED.findall(sql)) - set(NOT_NEEDED.findall(sql))
    return sql if measured_against <= stated.some else "null::double"


def claims(stated: Stated, text: str) -> set[str]:
    """The claims of a part that the text names, or that its numbers are made of."""
    sql = [text, *(sql for layer in layers(stated, text) for sql in layer.values())]
    return {name for one in sql for name in CLAIM.findall(one)} - set(MADE)


def with_numbers(stated: Stated, text: str, rows: str) -> str:
    """The rows of parts with all numbers that the text names."""
    for layer in layers(stated, text):
        if layer:
            made = ", ".join(f"{sql} as {name}" for name, sql in layer.items())
            asks = any("need" in sql for sql in layer.values())
            source = f"({rows}) as part"
            rows = f"select part.*, {made} from {stated.joined(source) if asks else source}"
    return rows
