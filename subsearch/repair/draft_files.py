"""A draft of positions written into a repair's folder; what stands there already is never written over unasked."""

import csv
import json
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path

from subsearch.errors import RepairError
from subsearch.reading.spreadsheet_text import text_only
from subsearch.reading.toml_files import read_toml
from subsearch.repair.positions import COLUMNS

NUMBERS = ("old_tolerance",)  # a cell that may begin with a minus and is no text


def write_draft(folder: Path, name: str, cells: Sequence[Mapping[str, str]], replace: bool) -> tuple[Path, ...]:
    """Write positions.csv, and a repair.toml with the repair's name and cards where none stands; give what was written.

    Args:
        folder: the repair's folder, made where there is none.
        name: what the repair is called in a new repair.toml.
        cells: one position each, by heading of positions.csv.
        replace: whether a positions.csv that is there goes.

    Raises:
        RepairError: a positions.csv is there and is to stay; there is no position; or one reference stands on several
            boards, and the repair.toml that is there does not name them as cards.
    """
    listed, common = folder / "positions.csv", folder / "repair.toml"
    if not cells:
        raise RepairError("No position was drafted, so nothing is written. Look at the reasons of the lines left out.")
    if listed.exists() and not replace:
        raise RepairError(
            f'"{listed}" exists already and is not written over. Name another folder (--out), or say that it may go '
            "(--replace; in a notebook replace=True)."
        )
    if common.exists():
        cells = _on_known_cards(cells, common)
    folder.mkdir(parents=True, exist_ok=True)
    with listed.open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(COLUMNS)
        writer.writerows([_cell(heading, one.get(heading, "")) for heading in COLUMNS] for one in cells)
    if common.exists():
        return (listed,)
    common.write_text(_common(name, cells), encoding="utf-8")
    return listed, common


def _on_known_cards(cells: Sequence[Mapping[str, str]], common: Path) -> list[Mapping[str, str]]:
    """The cells with boards that the builder's own repair.toml does not have told in the note instead."""
    try:
        known = read_toml(common).get("cards", {})
    except ValueError as error:
        raise RepairError(f'"{common}" can\'t be read: {error}. Correct that place.') from error
    moved = [
        one
        if one.get("card", "") in ("", *known)
        else {**one, "card": "", "note": f"Board: {one['card']}. {one['note']}"}
        for one in cells
    ]
    names = Counter((one.get("card", ""), one["reference"]) for one in moved)
    if twice := next((reference for (_, reference), count in names.items() if count > 1), ""):
        card = next(one["card"] for one in cells if one["reference"] == twice and one["card"] not in known)
        raise RepairError(
            f'{twice} stands on several boards, but "{common}" does not have the board "{card}". Add '
            f"[cards.{_quoted(card)}] with count = 1 to it."
        )
    return moved


def _cell(heading: str, text: str) -> str:
    return text if heading in NUMBERS else text_only(text)


def _common(name: str, cells: Sequence[Mapping[str, str]]) -> str:
    """What a repair needs in common: its name, and each card once. All else may be left out."""
    cards = dict.fromkeys(one["card"] for one in cells if one.get("card"))
    lines = [
        f"name = {_quoted(name)}",
        "# Add what is known: hours_a_day, years_wanted, and temperature_c of its sections.",
        *(f"\n[cards.{_quoted(text_only(card))}]\ncount = 1" for card in cards),
    ]
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
