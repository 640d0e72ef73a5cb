"""The positions of a repair drafted from a parts list: what its lines say, and for each line left out the reason."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from subsearch.reading.part_kinds import VARIABLE, holds, other_part
from subsearch.reading.parts_list_words import MAINS_WORDS, words_of
from subsearch.reading.parts_lists import Listed, read_parts_list
from subsearch.reading.reference_names import in_order, prefix_of, runs
from subsearch.repair.claims import Claims, claims_of
from subsearch.repair.draft import Draft, Left, Taken
from subsearch.repair.positions import COLUMNS, Position
from subsearch.repair.settling import Said, settled
from subsearch.units import counted

MAINS = "It looks like a part on the mains: look at the board, and fill in mains and safety_class."
AC = re.compile(r"a\.?c\.?$|~", re.IGNORECASE)
NOT_A_CAPACITOR, NO_VALUE, AGAIN = "not a capacitor", "no value", "given again"
Key = tuple[str, str]  # card and reference


@dataclass
class _Bench:
    """What was drafted so far: which lines speak of each position."""

    said: dict[Key, list[Said]] = field(default_factory=dict)
    taken: list[Taken] = field(default_factory=list)
    left: list[Left] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def draft_positions(file: Path | str) -> Draft:
    """The positions that a parts list describes, drafted for `positions.csv`.

    Args:
        file: CSV (commas, semicolons, tabs) or XLSX, with or without a heading line.

    What the list states of a field without doubt is filled in and named in the position's note; a doubt goes into the
    note, and its field stays empty. Nothing is filled in that the list does not say.

    Raises:
        ListError: the file can't be read as a list.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "radio.csv"
    ...     _ = file.write_text("Ref,Value,Qty\\nC1-C3,47uF 25V,3\\nR1,10k,1\\n", encoding="utf-8")
    ...     draft = draft_positions(file)
    >>> draft
    radio.csv: 3 positions from 1 of 3 lines, 2 left (1 headings, 1 not a capacitor); doubts about 0 positions
    >>> draft.positions[2].reference, draft.positions[2].capacitance_f
    ('C3', 4.7e-05)
    """
    listed = read_parts_list(Path(file))
    bench = _Bench(notes=list(listed.notes))
    for line in listed.lines:
        if line.left:
            bench.left.append(Left(line.line, line.text, line.left, line.reason))
        else:
            _judge(line, bench)
    keys = sorted(bench.said, key=lambda key: (key[0], in_order(key[1])))
    cells, doubts = [], {}
    for card, reference in keys:
        filled, doubted = settled(reference, card, bench.said[card, reference])
        cells.append(filled)
        if doubted:
            doubts[_position(filled).name] = doubted
    positions = tuple(_position(one) for one in cells)
    return Draft(
        listed.file, positions, tuple(bench.taken), tuple(bench.left), tuple(bench.notes), doubts, tuple(cells)
    )


def _judge(line: Listed, bench: _Bench) -> None:
    """Take a line for the capacitors among its references that no line before it named, or leave it with its reason."""
    words = " ".join(line.cells.get(kind, "") for kind in ("value", "description", "technology", "package"))
    kinds = {name: other_part(prefix_of(name), words) for name in line.references}
    claims = claims_of(line, by_reference="" in kinds.values())
    by_value = [name for name, kind in kinds.items() if kind != "" and _taken_for_its_value(name, kind, claims)]
    capacitors = [name for name, kind in kinds.items() if kind == "" or name in by_value]
    others = _told({name: kind for name, kind in kinds.items() if name not in capacitors})
    doubts = [*line.doubts, *([MAINS] if _on_the_mains(line, claims) else [])]
    if unusual := [name for name in by_value if prefix_of(name)]:
        doubts.append(f"{runs(unusual)}: taken for its value, since such letters are seldom a capacitor's.")
    if not capacitors:
        _leave(line, NOT_A_CAPACITOR, others, bench)
    elif not claims.marking:
        _leave(line, NO_VALUE, f"{runs(capacitors)}: no value stands on it.", bench)
    elif claims.another_part and not claims.sure:
        _leave(line, NOT_A_CAPACITOR, f"{runs(capacitors)}: {claims.another_part}", bench)
    else:
        _take(
            line,
            claims,
            capacitors,
            [*doubts, *([f"Also on this line, and left out: {others}"] if others else [])],
            bench,
        )


def _taken_for_its_value(name: str, kind: str | None, claims: Claims) -> bool:
    """Whether a reference that is not known as a capacitor's names one all the same, since its value is one's."""
    return claims.sure and kind != VARIABLE and (kind is None or prefix_of(name).startswith("C"))


def _told(others: Mapping[str, str | None]) -> str:
    """What the references are that are no capacitors'."""
    kinds = dict.fromkeys(others.values())
    told = {kind: runs([name for name, its in others.items() if its == kind]) for kind in kinds}
    unknown = "neither its letters nor its value say that it is a capacitor"
    return "; ".join(f"{names}: {kind or unknown}" for kind, names in told.items()) + ("." if told else "")


def _leave(line: Listed, kind: str, reason: str, bench: _Bench) -> None:
    bench.left.append(Left(line.line, line.text, kind, reason))


def _take(line: Listed, claims: Claims, names: list[str], doubts: list[str], bench: _Bench) -> None:
    card = line.cells.get("card", "")
    if told := _miscounted(line):
        doubts.append(told)
    new = [name for name in names if (card, name) not in bench.said]
    before = {one.line for name in names for one in bench.said.get((card, name), ())}
    for name in names:
        bench.said.setdefault((card, name), []).append(Said(line.line, claims, tuple(doubts)))
    if new:
        bench.taken.append(Taken(line.line, line.text, tuple(new)))
        return
    lines = " and ".join(map(str, sorted(before)[:3])) + (" and more" if len(before) > 3 else "")
    word = "line" if len(before) == 1 else "lines"
    _leave(line, AGAIN, f"{runs(names)}: drafted already from {word} {lines}.", bench)


def _on_the_mains(line: Listed, claims: Claims) -> bool:
    """Whether words, or a rating in a.c. only, speak of the mains, while no class is printed that would say so."""
    if any(claim.heading == "safety_class" for claim in claims.claims):
        return False
    rated = any(claim.heading == "rated_voltage" and AC.search(claim.text) for claim in claims.claims)
    return rated or holds(line.text, words_of(MAINS_WORDS))


def _miscounted(line: Listed) -> str:
    """What is to be said where the quantity is not the number of references."""
    found = re.match(r"\s*([0-9]{1,6})(?:\.0+)?(?![0-9.,])", line.cells.get("quantity", ""))
    if not found or int(found[1]) == len(line.references):
        return ""
    return f"The list says {counted(int(found[1]), 'piece')} for {counted(len(line.references), 'reference')}."


def _position(cells: Mapping[str, str]) -> Position:
    return Position(
        **{COLUMNS[heading].name: COLUMNS[heading].metadata["read"](text) for heading, text in cells.items()}
    )
