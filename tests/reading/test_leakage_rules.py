"""Leakage limits as makers print them, read into numbers; what is of another form states none."""

import pytest

from subsearch.reading.cells import reader_of
from subsearch.reading.leakage_rules import LeakageLimit, read_leakage_limit

READ = [
    ("0.01·C·V or 3 µA, the greater, after 2 min", 0.01, 0.0, 3e-6),
    ("0.01·C·V or 0.5 µA, the greater, after 3 min", 0.01, 0.0, 0.5e-6),
    ("0.06·C·V + 10 µA after 2 min", 0.06, 10e-6, 0.0),
    ("0.2·C·V after 2 min", 0.2, 0.0, 0.0),
    ("0,01·C·V oder 3 µA, der größere Wert, nach 2 min", 0.01, 0.0, 3e-6),
    ("I ≤ 0.01CV or 3 (µA), whichever is greater", 0.01, 0.0, 3e-6),
    ("I ≤ 0.01CV or 4 uA (whichever is larger) (2 min)", 0.01, 0.0, 4e-6),
    ("I(µA) = 0.03 × C(µF) × V(V) + 15", 0.03, 15e-6, 0.0),
    ("Reststrom: 0,002 CR·UR + 500 nA nach 5 Minuten", 0.002, 0.5e-6, 0.0),
    ("0.01 CV, at least 0.004 mA after 1 minute at 20 °C", 0.01, 0.0, 4e-6),
    ("max. 5 µA at 20 °C", 0.0, 0.0, 5e-6),
    ("≤ 0.01 x C x U", 0.01, 0.0, 0.0),
]
NOT_READ = [
    "0.02CV or 3 mA, whichever is smaller", "0.02 CV, max. 3 mA", "0.01CV or 3 µA, the lesser", "3√(CV)",
    "0.3(CV)^0.7+4", "0.03CV+15 (CV≤1000), 0.02CV+25 (CV>1000)", "low leakage", "3", "C/100", "0.01 CV 3",
    "0.01CV + 3 V", "0.01·C·V or 3 µA or 5 µA", "0.01·C + 3 µA", "1000 CV", "0.01 CV + 5 A", "5 A", "0.01 C·V²", "?",
    "+",
]  # fmt: skip


@pytest.mark.parametrize(("text", "factor", "plus_a", "floor_a"), READ)
def test_read(text: str, factor: float, plus_a: float, floor_a: float) -> None:
    limit = LeakageLimit(factor, plus_a, floor_a)
    assert read_leakage_limit(text) == limit
    assert reader_of("leakage_rule")(f" {text}") == {"leakage_rule": text, **vars(limit)}


@pytest.mark.parametrize("text", NOT_READ)
def test_another_form_stays_a_text_and_refuses_nothing(text: str) -> None:
    assert read_leakage_limit(text) is None
    assert reader_of("leakage_rule")(text) == {"leakage_rule": text}


def test_an_empty_cell_states_nothing() -> None:
    assert reader_of("leakage_rule")("  ") == {}
