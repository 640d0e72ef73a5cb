"""What the tests of the bench share: positions, repairs and candidates made of a few values."""

from pathlib import Path
from typing import Any

from subsearch.repair.asking import Asked, ask
from subsearch.repair.folder import Repair, read_repair
from subsearch.repair.positions import Position
from subsearch.search.answers import Candidate
from subsearch.terms import OFFER_TERMS, PART_TERMS, WET

TOML = """\
name = "Radio"
story = "It hums."
hours_a_day = 4
years_wanted = 10
[sections."chassis"]
temperature_c = 40
[sections."lid"]
temperature_c = 25.5
[cards."main"]
count = 2
[cards."side"]
count = 1
"""


def write(folder: Path, positions: str, common: str = TOML) -> Path:
    (folder / "repair.toml").write_text(common, encoding="utf-8")
    (folder / "positions.csv").write_text(positions, encoding="utf-8")
    return folder


def read(folder: Path, positions: str, common: str = TOML) -> Repair:
    return read_repair(write(folder, positions, common))


def repair(*positions: Position, **values: Any) -> Repair:
    """A repair as `read_repair` gives it."""
    usual: dict[str, Any] = {
        "folder": Path("radio"), "name": "Radio", "story": "", "hours_a_day": 4.0, "years_wanted": 10.0,
        "section_c": {"chassis": 40.0}, "card_counts": {"main": 2}, "positions": positions,
    }  # fmt: skip
    return Repair(**(usual | values))


def position(**values: Any) -> Position:
    return Position(**({"reference": "C1", "marking": "47/25"} | values))


def asked(repair_: Repair | None = None, **values: Any) -> Asked:
    return ask(repair_ or repair(), position(**values))


def candidate(made: dict[str, Any] | None = None, condition: str | None = "new", **part: Any) -> Candidate:
    """A part that was chosen: a wet polar can unless other facts are named."""
    facts: dict[str, Any] = dict.fromkeys(term.name for term in PART_TERMS)
    facts |= {
        "maker": "Mill", "part_number": "Hollow 1", "technology": WET, "polarity": "polar", "capacitance_f": 47e-6,
        "rated_v": 25.0, "shape": "can", "along_mm": 6.0, "across_mm": 6.0, "tall_mm": 11.0,
    }  # fmt: skip
    offer: dict[str, Any] = dict.fromkeys(term.name for term in OFFER_TERMS)
    return Candidate(
        answer=True, pinned=False, place=1, total=1.0, contributions={}, not_stated=(), part=facts | part,
        offer=offer | {"supplier": "shed", "condition": condition},
        made={"way": "upright", "headroom_margin_mm": None} | (made or {}),
    )  # fmt: skip
