"""What the panel's table and its lines say: found parts in cells and sentences."""

import json
from collections.abc import Sequence
from html import escape
from typing import Any

from subsearch.display.words import life_text, margin_text
from subsearch.search.answers import Candidate, body, part_name, value_text
from subsearch.search.candidates import Found
from subsearch.search.criteria import LABELS

COLUMNS = [
    {"label": label, "right": label in ("Place", "Room left", "Cost of all", "Score")}
    for label in ("Place", "Part", "Value", "Body", "Room left", "Life", "Cost of all", "Score", "Supplier")
]


def key(candidate: Candidate) -> str:
    """What names a part between Python and the browser, the same in every search."""
    return json.dumps([candidate.part["maker"], candidate.part["part_number"]], ensure_ascii=False)


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
        f"{one.total:.2f}",
        str(one.offer["supplier"]),
    ]
    return {"id": key(one), "cells": cells, "open": one.answer is not True}


def counts_sentence(found: Found) -> str:
    """How many fit, are open and are refused; with the nearest refusal where nothing fits.

    The catalog must still be open, to be asked for that refusal.
    """
    counts = (
        f"{found.kept_count} fit, {found.open_count} open (something is not stated), {found.refused_count} refused."
    )
    near = [] if found.kept or found.open else found.nearest(1)
    if not near:
        return counts
    against = [one for one in found.why(*near[0]) if one.answer is False]
    told = "; ".join(f"{LABELS[one.name]} ({one.sentence})" for one in against)
    return f"{counts} Nearest is {part_name(*near[0])}, refused for {told}."


def not_drawn(drawn: Sequence[Candidate], with_a_line: set[str], picked: int) -> str:
    """Which parts have no line in the chart and why, and that more are compared than can be told apart."""
    said = []
    for one in drawn:
        if one.name not in with_a_line:
            reason = "not limited by heat" if one.made["not_worn_by_heat"] else "its life is not stated"
            said.append(f"{one.name} has no line: {reason}.")
    if picked > len(drawn):
        said.append(f"Only {len(drawn)} of the parts are drawn; more could not be told apart.")
    return "".join(f"<p>{escape(one)}</p>" for one in said)
