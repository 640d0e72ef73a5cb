"""What the panel's table and its lines say: found parts in cells and sentences."""

import json
from typing import Any

from subsearch.display.scored import score_text
from subsearch.display.words import life_text, margin_text
from subsearch.repair.inquiry import PartKey, Searched
from subsearch.search.answers import Candidate, body, value_text
from subsearch.search.criteria import LABELS
from subsearch.search.ways import AS_MADE

HEADINGS = ("Place", "Part", "Value", "Body", "Room left", "Life", "Cost of all", "Score", "Mounted", "Supplier")
COLUMNS = [{"label": label, "right": label in ("Place", "Room left", "Cost of all", "Score")} for label in HEADINGS]


def key(candidate: Candidate) -> str:
    """What names a part between Python and the browser, the same in every search."""
    return named((candidate.part["maker"], candidate.part["part_number"]))


def named(part: PartKey) -> str:
    """The same of maker and part number."""
    return json.dumps(part, ensure_ascii=False)


def part_of(name: str) -> PartKey:
    """Maker and part number again.

    >>> part_of(named((None, "Tray 12")))
    (None, 'Tray 12')
    """
    maker, number = json.loads(name)
    return maker, number


def row(candidate: Candidate) -> dict[str, Any]:
    """A part as a row of the table."""
    one, cost = candidate, candidate.made["cost"]
    cells = [
        str(one.place) if one.answer else "open",
        one.name,
        value_text(one.part),
        body(one.part),
        margin_text(one),
        life_text(one),
        "not stated" if cost is None else f"{cost:.2f}",
        score_text(one),
        "as made" if one.made["way"] in (None, *AS_MADE) else one.made["way"],
        str(one.offer["supplier"]),
    ]
    return {"id": key(one), "cells": cells, "open": one.answer is not True}


def counts_sentence(searched: Searched) -> str:
    """How many fit, are open and are refused; with the nearest refusal where nothing fits or may fit."""
    found, nearest = searched.found, searched.nearest
    counts = (
        f"{found.kept_count} fit, {found.open_count} open (something is not stated), {found.refused_count} refused."
    )
    if found.kept_count > len(found.kept) or found.open_count > len(found.open):
        counts += f" The table has the best {max(len(found.kept), len(found.open))}."
    if nearest is None:
        return counts
    told = "; ".join(f"{LABELS[one.name]} ({one.sentence})" for one in searched.against)
    return f"{counts} Nearest is {nearest.name}, refused for {told}."
