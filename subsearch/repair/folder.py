"""One repair's folder: `repair.toml` says what is common to all, `positions.csv` lists the positions."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from subsearch.errors import ListError, QuantityError, RepairError, RequirementError, UnknownNameError, nearest, one_of
from subsearch.reading.rows import Row, read_table
from subsearch.reading.toml_files import read_toml
from subsearch.repair.positions import COLUMNS, Position
from subsearch.search.weights import Weights

KEYS = ("name", "story", "hours_a_day", "years_wanted", "temperature_uncertain_k", "sections", "cards", "weights")

TABLE_KEYS = {"sections": ("temperature_c",), "cards": ("count", "section")}  # the first is needed


@dataclass(frozen=True)
class Repair:
    """One piece of equipment under repair: hours a day, years of life wanted, temperatures [°C] by section, cards.

    Its temperatures are right to `temperature_uncertain_k` [K], up and down; `weights` are those of the ranking.
    """

    folder: Path
    name: str
    story: str
    hours_a_day: float
    years_wanted: float | None
    section_c: Mapping[str, float]
    card_counts: Mapping[str, int]
    positions: tuple[Position, ...]
    temperature_uncertain_k: float = 0.0
    weights: Weights = field(default_factory=Weights)

    def pieces(self, position: Position) -> int:
        """How many of a position there are: one for each card of its kind."""
        return self.card_counts.get(position.card or "", 1)


def read_repair(folder: Path) -> Repair:
    """The repair that a folder describes.

    Raises:
        RepairError: a file is missing or can't be read, a key or heading is unknown, a cell can't be read, a card or
            section is named that repair.toml does not have, or there is no position. The text names file and line.
    """
    if not folder.is_dir():
        raise RepairError(f'There is no folder "{folder}". Name the folder that holds repair.toml and positions.csv.')
    common = _common(folder / "repair.toml")
    positions = _positions(folder / "positions.csv")
    cards = _tables(common, "cards")
    sections = {name: values["section"] for name, values in cards if "section" in values}
    for card, section in sections.items():
        if not isinstance(section, str):
            raise RepairError(f'repair.toml: the section of the card "{card}" is {section}. Write one name in quotes.')
    repair = Repair(
        folder,
        str(common.get("name") or folder.resolve().name),
        str(common.get("story", "")),
        _number(common, "hours_a_day", 24.0),
        _number(common, "years_wanted") if "years_wanted" in common else None,
        {name: _number(values, "temperature_c") for name, values in _tables(common, "sections")},
        {name: _count(name, values) for name, values in cards},
        tuple(_in_section(position, sections) for position in positions),
        _number(common, "temperature_uncertain_k", 0.0),
        _weights(common.get("weights", {})),
    )
    _check(repair, sections)
    return repair


def _common(file: Path) -> dict[str, Any]:
    if not file.exists():
        raise RepairError(f'"{file}" is missing. It holds name, hours_a_day and years_wanted of the repair.')
    try:
        common = read_toml(file)
    except ValueError as error:
        raise RepairError(f'"{file}" can\'t be read: {error}. Correct that place.') from error
    for key in common:
        if key not in KEYS:
            raise RepairError(f'"{file.name}" has the key "{key}".{nearest(key, KEYS)} Allowed are {one_of(KEYS)}.')
    return common


def _number(values: Mapping[str, Any], key: str, default: float | None = None) -> float:
    value = values.get(key, default)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise RepairError(f'repair.toml: {key} is "{value}". Write a number without quotation marks, like {key} = 4.')
    return float(value)


def _weights(found: Any) -> Weights:
    if not isinstance(found, dict):
        raise RepairError("repair.toml: weights must be a table, [weights], with lines like life = 2.")
    for name, weight in found.items():
        if isinstance(weight, bool) or not isinstance(weight, (int, float)):
            raise RepairError(f'repair.toml, [weights]: {name} is "{weight}". Write a number, like life = 2.')
    try:
        return Weights(found)
    except (RequirementError, UnknownNameError) as error:
        raise RepairError(f"repair.toml, [weights]: {error}") from error


def _count(card: str, values: Mapping[str, Any]) -> int:
    count = values["count"]
    if isinstance(count, bool) or not isinstance(count, int) or count < 1:
        raise RepairError(f'repair.toml: the count of the card "{card}" is {count}. Write a whole number, 1 or more.')
    return count


def _in_section(position: Position, sections: Mapping[str, str]) -> Position:
    """A position that names no section stands in that of its card."""
    section = sections.get(position.card or "")
    return position if position.section or section is None else replace(position, section=section)


def _tables(common: Mapping[str, Any], key: str) -> list[tuple[str, dict[str, Any]]]:
    """The tables of one kind, each with the key it needs and no other than those it may have."""
    tables, (needed, *_) = common.get(key, {}), TABLE_KEYS[key]
    if not isinstance(tables, dict) or not all(isinstance(one, dict) and needed in one for one in tables.values()):
        raise RepairError(f'repair.toml: {key} must be tables like [{key}."NAME"] with {needed} = 40 in each.')
    for name, found in ((name, found) for name, one in tables.items() for found in one):
        if found not in TABLE_KEYS[key]:
            hint, allowed = nearest(found, TABLE_KEYS[key]), one_of(TABLE_KEYS[key])
            raise RepairError(f'repair.toml: [{key}."{name}"] has the key "{found}".{hint} Allowed: {allowed}.')
    return list(tables.items())


def _positions(file: Path) -> tuple[Position, ...]:
    try:
        table = read_table(file)
    except ListError as error:
        raise RepairError(f"The list of positions: {error}") from error
    headings = [cell.strip() for cell in table.rows[0].cells]
    for heading in headings:
        if heading not in COLUMNS:
            hint = nearest(heading, COLUMNS)
            raise RepairError(f'"{file.name}" has the heading "{heading}", which is none of ours.{hint}')
        if headings.count(heading) > 1:
            raise RepairError(f'"{file.name}" has the heading "{heading}" twice. Keep one of the two columns.')
    if "reference" not in headings or "marking" not in headings:
        raise RepairError(f'"{file.name}" needs the headings reference and marking; it has {", ".join(headings)}.')
    positions = tuple(_position(file, row, headings) for row in table.rows[1:])
    if not positions:
        raise RepairError(f'"{file.name}" has a heading line but no position. Write one line for each capacitor.')
    return positions


def _position(file: Path, row: Row, headings: list[str]) -> Position:
    where = f'"{file.name}", line {row.line}'
    if len(row.cells) != len(headings):
        raise RepairError(f"{where}: {len(row.cells)} cells under {len(headings)} headings. Add or remove separators.")
    values: dict[str, Any] = {}
    for heading, cell in zip(headings, row.cells, strict=True):
        if text := cell.strip():
            try:
                values[COLUMNS[heading].name] = COLUMNS[heading].metadata["read"](text)
            except QuantityError as error:
                raise RepairError(f"{where}, {heading}: {error}") from error
    if "reference" not in values:
        raise RepairError(f"{where}: the reference is empty. Give each position the name printed on the board.")
    return Position(**values)


def _check(repair: Repair, sections: Mapping[str, str]) -> None:
    for card, section in sections.items():
        _known("section", section, repair.section_c, f'the card "{card}"')
    seen: set[str] = set()
    for position in repair.positions:
        _known("card", position.card, repair.card_counts, position.reference)
        _known("section", position.section, repair.section_c, position.reference)
        if position.name in seen:
            raise RepairError(f"{position.name} stands in positions.csv twice. Give each position its own reference.")
        seen.add(position.name)


def _known(what: str, name: Any, known: Mapping[str, Any], whose: str) -> None:
    if name is not None and name not in known:
        allowed = f"It has {one_of(known)}." if known else f'Add [{what}s."{name}"] to it.'
        hint = nearest(str(name), known)
        raise RepairError(f'{whose}: the {what} "{name}" is not in repair.toml.{hint} {allowed}')
