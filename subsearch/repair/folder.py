"""One repair's folder: `repair.toml` says what is common to all, `positions.csv` lists the positions."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from subsearch.errors import RepairError, RequirementError, UnknownNameError, nearest, one_of
from subsearch.reading.toml_files import read_toml
from subsearch.repair.position_rows import POSITIONS, PositionRow, position_rows
from subsearch.repair.positions import Position, values_of
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
    card_sections: Mapping[str, str] = field(default_factory=dict)

    def pieces(self, position: Position) -> int:
        """How many of a position there are: one for each card of its kind."""
        return self.card_counts.get(position.card or "", 1)

    def placed(self, position: Position) -> Position:
        """A position that names no section, in that of its card."""
        section = self.card_sections.get(position.card or "")
        return position if position.section or section is None else replace(position, section=section)


def read_repair(folder: Path, listed: Path | None = None) -> Repair:
    """The repair that a folder describes.

    Args:
        folder: with repair.toml and positions.csv.
        listed: another list of positions to read in place of the folder's own.

    Raises:
        RepairError: a file is missing or can't be read, a key or heading is unknown, a cell can't be read, a card or
            section is named that repair.toml does not have, or there is no position. The text names file and line.
    """
    if not folder.is_dir():
        raise RepairError(f'There is no folder "{folder}". Name the folder that holds repair.toml and positions.csv.')
    common = _common(folder / "repair.toml")
    positions = _positions(listed or folder / POSITIONS)
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
        (),
        _number(common, "temperature_uncertain_k", 0.0),
        _weights(common.get("weights", {})),
        sections,
    )
    repair = replace(repair, positions=tuple(map(repair.placed, positions)))
    _check(repair)
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
    positions = tuple(_position(file, row) for row in position_rows(file).rows)
    if not positions:
        raise RepairError(f'"{file.name}" has a heading line but no position. Write one line for each capacitor.')
    return positions


def _position(file: Path, row: PositionRow) -> Position:
    where = f'"{file.name}", line {row.line}'
    values, faults = values_of(row.cells)
    for heading, fault in faults.items():
        raise RepairError(f"{where}, {heading}: {fault}")
    if "reference" not in values:
        raise RepairError(f"{where}: the reference is empty. Give each position the name printed on the board.")
    return Position(**values)


def _check(repair: Repair) -> None:
    for card, section in repair.card_sections.items():
        _known("section", section, repair.section_c, f'the card "{card}"')
    seen: set[str] = set()
    for position in repair.positions:
        _known("card", position.card, repair.card_counts, position.reference)
        _known("section", position.section, repair.section_c, position.reference)
        if position.name in seen:
            raise RepairError(f"{position.name} stands in positions.csv twice. Give each position its own reference.")
        seen.add(position.name)


def _known(what: str, name: str | None, known: Mapping[str, Any], whose: str) -> None:
    if said := unknown(what, name, known):
        raise RepairError(f"{whose}: {said}")


def unknown(what: str, name: str | None, known: Mapping[str, Any]) -> str:
    """Why the name of a card or section may not stand there; empty where it may.

    >>> unknown("card", "mian", {"main": 2}), unknown("card", None, {})
    ('the card "mian" is not in repair.toml. Did you mean "main"? It has main.', '')
    """
    if name is None or name in known:
        return ""
    allowed = f"It has {one_of(known)}." if known else f'Add [{what}s."{name}"] to it.'
    return f'the {what} "{name}" is not in repair.toml.{nearest(name, known)} {allowed}'
