"""What one or several lines of a parts list say of a position, made one: agreed fields filled, doubts told."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from subsearch.errors import QuantityError
from subsearch.repair.claims import Claim, Claims
from subsearch.repair.positions import COLUMNS

TOLD_WITH = {"old_rating": "rated_voltage"}  # fields that are named in the note with another one
VALUES = {"capacitance", "sections"}


@dataclass(frozen=True)
class Said:
    """What one line of a list says of a position."""

    line: int
    claims: Claims
    doubts: tuple[str, ...] = ()


def settled(reference: str, card: str, said: Sequence[Said]) -> tuple[Mapping[str, str], tuple[str, ...]]:
    """The cells of a position by heading of positions.csv, and the doubts about it.

    Args:
        reference, card: its name on the board, and the board's ("" where the list names none).
        said: what each line says of it, the first line first.

    A field is filled in where nothing that is said of it is in doubt or differs. Without a value the rated voltage
    stays the old part's: asked alone, any capacitor that stands it would be taken.

    >>> one = Claims("47 µF", (Claim("capacitance", "47 µF"),), (), (), "")
    >>> two = Claims("100 µF", (Claim("capacitance", "100 µF"),), (), (), "")
    >>> settled("C1", "", [Said(2, one)])[0]["note"]
    'From line 2 of the parts list: capacitance 47 µF.'
    >>> settled("C1", "", [Said(2, one), Said(5, two)])[1]
    ('The list says capacitance 47 µF (line 2) and 100 µF (line 5): look at the part.',)
    """
    doubts = [doubt for one in said for doubt in (*one.claims.doubts, *one.doubts)]
    cells = {"reference": reference, "card": card, "marking": said[0].claims.marking}
    every: dict[str, list[tuple[int, Claim]]] = {}
    for line, claim in ((one.line, claim) for one in said for claim in one.claims.claims):
        every.setdefault(claim.heading, []).append((line, claim))
    for heading, found in every.items():
        claims = [claim for _, claim in found]
        texts = list(dict.fromkeys(claim.text for claim in claims))
        if len(texts) > 1 and heading in TOLD_WITH:
            continue
        if len(texts) > 1:
            doubts.append(f"The list says {_spoken(heading)} {_where(found)}: look at the part.")
        elif any(not claim.doubt for claim in claims):
            if fault := _fault(heading, texts[0]):
                doubts.append(fault)
            else:
                cells[heading] = texts[0]
    if not cells.keys() & VALUES:
        cells.pop("rated_voltage", None)
    doubts = list(dict.fromkeys(doubts))
    cells["note"] = _note(cells, said, doubts)
    return {heading: cells[heading] for heading in COLUMNS if cells.get(heading)}, tuple(doubts)


def _fault(heading: str, text: str) -> str:
    """What speaks against a text under a heading; empty where nothing does."""
    try:
        COLUMNS[heading].metadata["read"](text)
    except QuantityError as error:
        return f"{_spoken(heading).capitalize()}: {error}"
    return ""


def _where(found: Sequence[tuple[int, Claim]]) -> str:
    """Each different text with the line it stands on, where that is not the same one."""
    lines = {claim.text: line for line, claim in reversed(found)}
    texts = dict.fromkeys(claim.text for _, claim in found)
    return " and ".join(f"{text} (line {lines[text]})" if len(set(lines.values())) > 1 else text for text in texts)


def _spoken(heading: str) -> str:
    return heading.removesuffix("_mm").replace("_", " ")


def _note(cells: Mapping[str, str], said: Sequence[Said], doubts: Sequence[str]) -> str:
    """What was read from the list, what else stands there, and the doubts."""
    lines = [str(one.line) for one in said]
    where = f"line {lines[0]}" if len(lines) == 1 else f"lines {', '.join(lines[:-1])} and {lines[-1]}"
    filled = [
        f"{_spoken(heading)} {text}{' mm' if heading.endswith('_mm') else ''}"
        for heading, text in cells.items()
        if heading not in ("reference", "card", "marking") and TOLD_WITH.get(heading) not in cells and text
    ]
    also = list(dict.fromkeys(text for one in said for text in one.claims.also))
    read = ", ".join(filled) or "nothing that is certain"
    sentences = [f"From {where} of the parts list: {read.removesuffix('.')}."]
    if also:
        sentences.append(f"Also there: {', '.join(also)}.")
    return " ".join([*sentences, *(f"Doubt: {doubt}" for doubt in doubts)])
