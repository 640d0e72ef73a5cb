"""Each caution stands exactly where it is called for, and none says that a part is safe."""

import ast
import re
from math import log
from pathlib import Path
from typing import Any

import pytest
from repair.common import asked, candidate

import subsearch
from subsearch.repair.cautions import GENERAL, cautions
from subsearch.repair.positions import Rating
from subsearch.terms import CLASS_2, FILM_PET, FILM_PP, HYBRID, PAPER, POLYMER, ROLES, TANTALUM, WET
from subsearch.units import read_quantity

PACKAGE = Path(subsearch.__file__).parent
STARTS = {
    "class?": "It stands on the mains and its safety class is not filled in",
    "maybe": "If it stands across the mains",
    "charge": "Charge: ",
    "note": "Polarity: note which way",
    "mains": "Mains: unplug, and work behind an isolating transformer. Local codes and licensed practice first.",
    "class 2": "Class 2 ceramic: ",
    "class": "Class ",
    "oil": "The old part is oil-filled and may hold PCB: do not open it.",
    "leave": "The old part is ",
    "paper": "Paper parts on the mains are replaced whatever they read.",
    "reservoir": "Reservoir: ",
    "polarity": "Polarity: ",
    "tantalum": "Tantalum burns when it fails or is fitted the wrong way round: limit the current.",
    "vent": "Vent: ",
    "old stock": "Old stock: measure it before you fit it.",
    "bipolar": "Bipolar part in a polar position: ",
    "larger": "Larger reservoir: ",
    "pulled": "Pulled from used equipment: ",
}
V25 = Rating(25.0, False)


def said(place: dict[str, Any], part: dict[str, Any] | None) -> tuple[str, ...]:
    values: dict[str, Any] = {"capacitance_f": 47e-6, "rated_voltage": V25}
    position = asked(**(values | place))
    return cautions(position, None if part is None else candidate(**part))


def kinds(texts: tuple[str, ...]) -> list[str]:
    """What each caution is about."""
    return [next(kind for kind, start in STARTS.items() if text.startswith(start)) for text in texts]


def one(kind: str, place: dict[str, Any], part: dict[str, Any] | None) -> str:
    texts = said(place, part)
    assert kinds(texts).count(kind) == 1
    return texts[kinds(texts).index(kind)]


PLACES: list[tuple[dict[str, Any], list[str]]] = [
    ({}, []),
    ({"mains": True}, ["mains", "class?"]),
    ({"mains": True, "role": "interference suppression"}, ["mains", "class?"]),
    ({"mains": True, "role": "rail decoupling"}, ["mains", "maybe"]),
    ({"mains": False}, []),
    ({"safety_class": "X2"}, ["class"]),
    ({"safety_class": "Y1", "mains": True}, ["mains", "class"]),
    ({"old_technology": "oil-filled paper"}, ["oil"]),
    ({"old_technology": "Paper in OIL"}, ["oil"]),
    ({"old_technology": "polystyrene"}, ["leave"]),
    ({"old_technology": "silver mica"}, ["leave"]),
    ({"old_technology": WET}, []),
    ({"old_technology": FILM_PET, "mains": True}, ["mains", "class?"]),
    ({"old_technology": PAPER}, []),
    ({"old_technology": PAPER, "mains": False}, []),
    ({"old_technology": PAPER, "mains": True}, ["mains", "class?", "paper"]),
    ({"old_technology": "polyester foil"}, []),
    ({"old_technology": "metallised paper", "mains": True}, ["mains", "class?", "paper"]),
    ({"old_technology": "wax paper", "mains": True}, ["mains", "class?", "paper"]),
    ({"old_technology": "Paper", "mains": True}, ["mains", "class?", "paper"]),
    ({"old_technology": "Polystyrene"}, ["leave"]),
    ({"old_technology": "silver-mica"}, ["leave"]),
]
PARTS: list[tuple[dict[str, Any], list[str]]] = [
    ({}, ["polarity"]),
    ({"polarity": "bipolar"}, []),
    ({"technology": HYBRID}, ["polarity"]),
    ({"technology": POLYMER, "shape": None}, ["polarity"]),
    ({"technology": TANTALUM, "shape": "box"}, ["polarity", "tantalum"]),
    ({"technology": TANTALUM, "polarity": "bipolar", "shape": "box"}, ["tantalum"]),
    ({"technology": FILM_PET, "polarity": None, "shape": "box"}, []),
    ({"technology": FILM_PP, "polarity": "polar", "shape": "box"}, []),
    ({"technology": CLASS_2, "polarity": None, "shape": "box"}, ["class 2"]),
    ({"condition": "old stock"}, ["polarity", "old stock"]),
    ({"condition": "old stock", "technology": FILM_PET, "polarity": None}, ["old stock"]),
    ({"condition": "pulled"}, ["polarity", "pulled"]),
    ({"condition": None}, ["polarity"]),
]


@pytest.mark.parametrize(("place", "expected"), PLACES)
def test_cautions_of_the_place(place: dict[str, Any], expected: list[str]) -> None:
    assert kinds(said(place, None)) == expected
    assert kinds(said(place, {})) == [*expected, "polarity"]


@pytest.mark.parametrize(("part", "expected"), PARTS)
def test_cautions_of_the_part(part: dict[str, Any], expected: list[str]) -> None:
    assert kinds(said({}, part)) == expected
    assert kinds(said({"mains": True}, part)) == ["mains", "class?", *expected]


def test_safety_classes_are_named() -> None:
    for name in ("X1", "X2", "Y1", "Y2"):
        text = one("class", {"safety_class": name}, {})
        assert text == (
            f"Class {name} by the old marking: only a part of that class or stricter, with its approval marks, from a "
            "source that shows where it came from. Never an ordinary part."
        )


@pytest.mark.parametrize("kind", ["polystyrene", "silver mica"])
def test_what_seldom_fails_is_left(kind: str) -> None:
    text = one("leave", {"old_technology": kind}, {})
    assert text == f"The old part is {kind}, which seldom fails: leave it unless it measures wrong."


@pytest.mark.parametrize(
    ("technology", "shape", "mark"),
    [
        (WET, "can", "the stripe on the sleeve is minus"),
        (WET, "axial", "the groove end of an axial can is plus"),
        (HYBRID, "axial", "the groove end of an axial can is plus"),
        (HYBRID, "can", "look up what the mark on the case means"),
        (POLYMER, "can", "look up what the mark on the case means"),
        (None, "can", "look up what the mark on the case means"),
        (TANTALUM, "can", "the mark on a tantalum bead is plus"),
        (TANTALUM, "box", "the mark on a tantalum bead is plus"),
        (TANTALUM, None, "the mark on a tantalum bead is plus"),
        (WET, None, "look up what the mark on the case means"),
    ],
)
def test_polarity_by_shape_and_technology(technology: str | None, shape: str | None, mark: str) -> None:
    part = {"technology": technology, "shape": shape}
    assert one("polarity", {}, part) == f"Polarity: {mark}. Trust the circuit, not the print."
    assert one("polarity", {"plus_towards": "edge"}, part) == (
        f"Polarity: {mark}. The old plus faced edge. Trust the circuit, not the print."
    )


def test_a_wet_part_of_unknown_polarity_has_a_caution() -> None:
    assert kinds(said({}, {"polarity": None})) == ["polarity"]


@pytest.mark.parametrize("technology", [WET, HYBRID, POLYMER, TANTALUM, FILM_PET, PAPER, None])
def test_only_wet_old_stock_is_reformed(technology: str | None) -> None:
    text = one("old stock", {}, {"condition": "old stock", "technology": technology})
    reformed = "Reforming does not cure a part that has dried out." in text
    assert reformed == (technology == WET)
    assert ("at dangerous voltage behind a shield" in text) == reformed
    assert text.startswith(f"{STARTS['old stock']} Its date is not stated, so it may be over three years old.")


VENTS = [
    ("can", "vented", 10.0, 1.9, True), ("can", "vented", 10.0, 2.0, False), ("can", "vented", 5.0, 1.9, True),
    ("can", "vented", 16.0, 1.99, True), ("can", "vented", 18.0, 2.5, True), ("can", "vented", 18.0, 3.0, False),
    ("can", "vented", 40.0, 4.9, True), ("can", "vented", 40.0, 5.0, False), ("can", "none", 18.0, 0.5, False),
    ("can", None, 6.3, 1.9, True), ("can", None, 6.0, 0.5, False), ("can", None, 8.0, None, False),
    ("axial", "vented", 10.0, 0.5, False), ("box", "vented", 10.0, 0.5, False), (None, "vented", 10.0, 0.5, False),
    ("can", "vented", None, 0.5, False),
]  # fmt: skip
CLEARANCE = {5.0: 2, 6.3: 2, 10.0: 2, 16.0: 2, 18.0: 3, 40.0: 5}


@pytest.mark.parametrize(("shape", "vent", "across", "margin", "warns"), VENTS)
def test_vents(shape: str | None, vent: str | None, across: float | None, margin: float | None, warns: bool) -> None:
    part = {"shape": shape, "vent": vent, "across_mm": across, "made": {"headroom_margin_mm": margin}}
    texts = [text for text in said({}, part) if text.startswith("Vent: ")]
    if warns:
        needed = CLEARANCE[across or 0]
        assert texts == [f"Vent: {needed} mm should stay free above this can; {margin:g} mm does."]
    else:
        assert texts == []


def test_no_clearance_below_nothing_is_told() -> None:
    part = {"across_mm": 10.0, "made": {"headroom_margin_mm": -1.5}}
    assert not [text for text in said({}, part) if "-1.5" in text]


RESERVOIRS = [
    ({"supply_rail_v": 400.0}, 450.0, 400.0), ({"supply_rail_v": -75.0}, 100.0, 75.0), ({}, 350.0, 350.0),
    ({"dc_lowest_v": 0.0, "dc_highest_v": 325.0}, 400.0, 325.0), ({"supply_rail_v": 61.0}, 63.0, 61.0),
    ({"supply_rail_v": 100.0, "dc_lowest_v": -140.0, "dc_highest_v": 0.0}, 160.0, 140.0),
]  # fmt: skip


@pytest.mark.parametrize("capacitance_f", [47e-6, 470e-6, 4700e-6])
@pytest.mark.parametrize(("place", "rated_v", "start_v"), RESERVOIRS)
def test_discharge_of_this_very_capacitor(
    place: dict[str, Any], rated_v: float, start_v: float, capacitance_f: float
) -> None:
    text = one("reservoir", {"role": "reservoir", **place}, {"rated_v": rated_v, "capacitance_f": capacitance_f})
    found = re.fullmatch(
        r"Reservoir: discharge it through (.+) \((.+) W at the start\); from (.+) to 60 V takes (.+) s\. "
        r"Treat it as live until measured\.",
        text,
    )
    assert found is not None
    resistance = read_quantity(found[1], "Ω")
    assert 5 <= resistance / start_v <= 50
    assert read_quantity(found[3], "V") == start_v
    assert float(found[2]) == pytest.approx(start_v**2 / resistance, abs=0.051)
    seconds = resistance * capacitance_f * log(start_v / 60)
    if seconds < 0.1:
        assert found[4] == "less than 0.1"
    else:
        assert float(found[4]) == pytest.approx(seconds, abs=0.051)


@pytest.mark.parametrize(("place", "rated_v", "shown"), [({"supply_rail_v": 24.0}, 63.0, "24 V"), ({}, 60.0, "60 V")])
def test_a_low_reservoir_still_holds_its_charge(place: dict[str, Any], rated_v: float, shown: str) -> None:
    assert one("reservoir", {"role": "reservoir", **place}, {"rated_v": rated_v}) == (
        f"Reservoir: it holds its charge at up to {shown}. Discharge it through a resistor, then measure: a short "
        "melts metal even where the voltage is low."
    )


@pytest.mark.parametrize("role", [*ROLES, None])
def test_only_reservoirs_call_for_discharge(role: str | None) -> None:
    assert ("reservoir" in kinds(said({"role": role}, {"rated_v": 400.0}))) == (role == "reservoir")


def test_a_reservoir_without_a_choice_is_told_of() -> None:
    assert kinds(said({"role": "reservoir", "supply_rail_v": 400.0}, None)) == ["reservoir"]


def test_nought_alone_is_no_voltage_of_a_reservoir() -> None:
    text = one("reservoir", {"role": "reservoir", "dc_lowest_v": 0.0}, {"rated_v": 450.0})
    assert "from 450 V to 60 V" in text


def test_a_reservoir_holds_its_peak() -> None:
    place = {"role": "reservoir", "dc_lowest_v": 0.0, "dc_highest_v": 55.0, "ac_peak_v": 15.0}
    assert "from 70 V to 60 V" in one("reservoir", place, {"rated_v": 100.0})


SECTION_6 = {
    "mains and live-chassis sets": ("Mains and live-chassis sets", "isolating transformer"),
    "reservoirs": ("through a resistor, never with a screwdriver", "then measure", "live until measured"),
    "radial polarity": ("the stripe on a radial can is minus",),
    "axial polarity": ("the groove end of an axial can is plus",),
    "bead polarity": ("the mark on a tantalum bead is plus",),
    "print on the board": ("The print on the board can be wrong: trust the circuit",),
    "first power-up": ("eye protection on, current limited",),
    "vents": ("Never block a vent",),
    "leaks and glue": ("Clean off leaked electrolyte and old glue", "both conduct"),
    "insulating pads": ("Insulating pads", "power transistors", "checked"),
    "oil": ("PCB: do not open them",),
    "solder": ("Old solder contains lead",),
    "codes": ("Local codes and licensed practice come first.",),
    "no promise": ("Nothing here says that a part is safe.",),
}


@pytest.mark.parametrize("matter", SECTION_6)
def test_what_always_stands_on_the_page(matter: str) -> None:
    assert [text for text in GENERAL if all(words in text for words in SECTION_6[matter])]


def words_of_the_package() -> dict[str, list[str]]:
    """All texts that the package may print: every string that is no docstring, and the page."""
    found = {}
    for file in (one for one in PACKAGE.rglob("*.py") if one.name != "sources.py"):  # titles of other people's books
        tree = ast.parse(file.read_text(encoding="utf-8"))
        told = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        texts = [n.value for n in ast.walk(tree) if isinstance(n, ast.Constant) and id(n) not in told]
        found[str(file)] = [text for text in texts if isinstance(text, str)]
    pages = PACKAGE.rglob("*.html")
    return found | {str(page): page.read_text(encoding="utf-8").splitlines() for page in pages}


def test_nothing_says_that_a_part_is_safe() -> None:
    claims = re.compile(r"\b(?:safe|safely|harmless|riskless|no danger|cannot hurt|without risk)\b", re.IGNORECASE)
    said_so = [text for texts in words_of_the_package().values() for text in texts if claims.search(text)]
    assert said_so == ["Local codes and licensed practice come first. Nothing here says that a part is safe."]


def test_an_old_reservoir_holds_what_it_was_rated_for() -> None:
    place = {"role": "reservoir", "capacitance_f": 1e-3, "rated_voltage": Rating(450.0, False)}
    assert "from 450 V to 60 V" in one("reservoir", place, {"rated_v": 35.0, "capacitance_f": 1e-3})
    mains = {"role": "reservoir", "old_rating": Rating(250.0, True)}
    assert "from 353.6 V to 60 V" in one("reservoir", mains, {"rated_v": 35.0})


@pytest.mark.parametrize(
    ("place", "told"),
    [
        ({"dc_lowest_v": 0.0, "dc_highest_v": 310.0, "capacitance_f": 8e-6}, True),
        ({"dc_lowest_v": 0.0, "dc_highest_v": 310.0, "capacitance_f": 1e-7}, False),  # 31 µC: below what counts
        ({"dc_lowest_v": 0.0, "dc_highest_v": 59.0, "capacitance_f": 1e-2}, False),
        ({"supply_rail_v": 150.0, "capacitance_f": 3.1e-7}, True),
        ({"supply_rail_v": 150.0, "capacitance_f": 2.9e-7}, False),  # IEC 61010-1: 45 µC, 300 nF at 150 V
    ],
)
def test_charge_is_told_of_wherever_it_can_hurt(place: dict[str, Any], told: bool) -> None:
    assert ("charge" in kinds(said({"role": "rail decoupling", **place}, None))) == told


def test_the_old_polarity_is_noted_where_nothing_is_chosen() -> None:
    assert kinds(said({"polarity": "polar"}, None)) == ["note"]
    assert kinds(said({"polarity": "bipolar"}, None)) == []
