"""The maker's words on leakage from a list to an answer: read into a number, or said as they stand."""

from pathlib import Path

import pytest

from subsearch.catalog.intake import load
from subsearch.catalog.store import open_to_read
from subsearch.search.candidates import find
from subsearch.search.requirement import Requirement

LIST = """Part number;Kind;Cap uF;Voltage;Leakage;Price;Currency;Stock;Polarity
Hollow 1;Elko;10;25 V;0,01 CV oder 3 µA, der größere Wert;0,10;EUR;9;polar
Hollow 2;Elko;100;25 V;0,01 CV oder 3 µA, der größere Wert;0,10;EUR;9;polar
Hollow 3;Elko;10;25 V;0,02 CV oder 3 mA, der kleinere Wert;0,10;EUR;9;polar
Hollow 4;Elko;10;25 V;;0,10;EUR;9;polar
Hollow 5;PP-Folie;10;25 V;;0,10;EUR;9;
Hollow 6;Tantal;10;25 V;I = 0,01 CV + 10 µA;0,10;EUR;9;polar
"""
SAID = {
    "Hollow 1": (True, "3 µA (hot, it leaks more); 3 µA is allowed"),
    "Hollow 2": (False, "25 µA (hot, it leaks more); 3 µA is allowed"),
    "Hollow 3": (None, '"0,02 CV oder 3 mA, der kleinere Wert", which gives no number (hot'),
    "Hollow 4": (None, "not stated (hot, it leaks more)"),
    "Hollow 5": (True, "film PP leaks next to nothing"),
    "Hollow 6": (False, "12.5 µA (hot, it leaks more)"),
}


@pytest.fixture(scope="module")
def catalog(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("leaking")
    (folder / "grey-shed.csv").write_text(LIST, encoding="utf-8")
    (intake,) = load(folder / "c", [folder / "grey-shed.csv"])
    assert (intake.kept, intake.refused) == (6, 0)
    return folder / "c"


def test_from_the_list_to_the_answer(catalog: Path) -> None:
    with open_to_read(catalog) as con:
        found = find(con, [Requirement(rated_v=10, leakage_most_a=3e-6, technologies=None)])[0]
        for number, (answer, words) in SAID.items():
            (told,) = (one for one in found.why(None, number) if one.name == "leakage")
            assert told.answer is answer, number
            assert words in told.sentence
        assert {one.name for one in found.kept} == {"Hollow 1", "Hollow 5"}
        assert {one.name for one in found.open} == {"Hollow 3", "Hollow 4"}
        assert all(one.not_stated == ("leakage",) for one in found.open)
