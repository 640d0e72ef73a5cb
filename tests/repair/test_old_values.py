"""Every legacy value in every role: nearest inside the window, or a sentence that says why there is none."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from subsearch.errors import RequirementError, UnknownNameError
from subsearch.formulas.preferred import preferred_values_f
from subsearch.repair.old_values import ModernValue, modern_value, usual_series
from subsearch.search.roles import role_named, window_f
from subsearch.terms import ROLES, TECHNOLOGIES, WITHOUT_POLARITY

# The legacy values in µF, and what stands for each in E6 where the window is 0…+100 %, −20…+100 % and −10…+50 %.
LEGACY = """
2 2.2 2.2 2.2, 2.5 3.3 2.2 3.3, 4 4.7 4.7 4.7, 5 6.8 4.7 4.7, 8 10 6.8 10, 16 22 15 15, 20 22 22 22, 25 33 22 33,
32 33 33 33, 40 47 47 47, 50 68 47 47, 64 68 68 68, 100 100 100 100, 125 150 150 150, 200 220 220 220,
250 330 220 330, 400 470 470 470, 500 680 470 470, 640 680 680 680, 1000 1000 1000 1000, 2000 2200 2200 2200,
2500 3300 2200 3300, 5000 6800 4700 4700
"""
ROWS = [row.split() for row in LEGACY.replace("\n", " ").split(",")]


def uf(number: str) -> float:
    return float(f"{number}e-6")


@pytest.mark.parametrize("row", ROWS, ids=[f"{row[0]} uF" for row in ROWS])
def test_the_rule_of_use(row: list[str]) -> None:
    for role, wanted in zip(("coupling", "rail decoupling", "reservoir"), row[1:], strict=True):
        assert modern_value(uf(row[0]), role=role).capacitance_f == uf(wanted), role
    assert uf(row[1]) >= uf(row[0])  # coupling never goes below


# In timing positions, within ±5 %: E6 has something for three of them, E12 for five more.
TIMING = {
    "E6": {"32": "33", "100": "100", "1000": "1000"},
    "E12": {"4": "3.9", "8": "8.2", "32": "33", "40": "39", "100": "100", "125": "120", "400": "390", "1000": "1000"},
}


@pytest.mark.parametrize("series", TIMING)
def test_timing_stays_within_five_per_cent_or_the_old_tolerance(series: str) -> None:
    for old, *_ in ROWS:
        wanted = TIMING[series].get(old)
        found = modern_value(uf(old), role="timing", series=series)
        assert found.capacitance_f == (uf(wanted) if wanted else None), old
        assert ("Choose from a closer series" in found.sentences[0]) == (wanted is None)
        closer = modern_value(uf(old), role="timing", old_tolerance_pct=(-2, 2), series=series).capacitance_f
        assert closer == (uf(old) if wanted == old else None)
        wider = modern_value(uf(old), role="timing", old_tolerance_pct=(-20, 50), series=series)
        assert wider.capacitance_f == found.capacitance_f  # a wide old tolerance does not widen the window


def test_sentences() -> None:
    assert modern_value(8e-6, 350, "rail decoupling") == ModernValue(
        6.8e-6,
        350,
        "E6",
        (
            "6.8 µF is the nearest E6 value to 8 µF (−15 %) within 6.4 µF to 16 µF. "
            "The next one up, 10 µF (+25 %), lies there too.",
        ),
    )
    assert modern_value(8e-6, 12, "timing") == ModernValue(
        None,
        16,
        "E6",
        (
            "No E6 value lies within 7.6 µF to 8.4 µF: the nearest are 6.8 µF (−15 %) and 10 µF (+25 %). "
            "Choose from a closer series, put two in parallel, or give a window of your own.",
            "The old 12 V counts as 16 V.",
        ),
    )
    assert modern_value(100e-6, 64) == ModernValue(
        100e-6, 63, "E6", ("100 µF is an E6 value itself.", "The old 64 V counts as 63 V.")
    )
    assert modern_value(64e-6).sentences[0].startswith("68 µF is the nearest E6 value to 64 µF (+6.2 %)")
    assert modern_value(None) == ModernValue(None, None, "E6", ())
    assert modern_value(None, 2000) == ModernValue(
        None,
        None,
        "E6",
        (
            "No standard rating reaches 2000 V: the highest is 1250 V. Look for a part made for this voltage. Two in "
            "series need balancing resistors, and the voltage is dangerous.",
        ),
    )


def test_the_usual_series() -> None:
    assert {technology: usual_series(technology) for technology in TECHNOLOGIES} == {
        technology: "E12" if technology in WITHOUT_POLARITY else "E6" for technology in TECHNOLOGIES
    }
    assert usual_series(None) == "E6"
    with pytest.raises(UnknownNameError, match=r'^"film PTE" is not a technology\. Did you mean "film PET"\? Allowed'):
        usual_series("film PTE")


def test_nonsense_is_refused() -> None:
    with pytest.raises(RequirementError, match="Give one above 0"):
        modern_value(-1e-6)
    with pytest.raises(UnknownNameError, match='"coupler" is no role here'):
        modern_value(1e-6, role="coupler")
    with pytest.raises(UnknownNameError, match='"E7" is not a preferred series'):
        modern_value(1e-6, series="E7")


some_series = some.sampled_from(("E3", "E6", "E12", "E24"))


@given(some.floats(1e-11, 0.1), some.sampled_from((*ROLES, None)), some_series)
def test_what_is_chosen_lies_in_the_window_and_none_there_is_said(old: float, role: str | None, series: str) -> None:
    low, high = window_f(old, role_named(role))
    inside = preferred_values_f(series, low, high)
    found = modern_value(old, None, role, None, series)
    assert (found.capacitance_f in inside) if inside else (found.capacitance_f is None)
    assert len(found.sentences) == 1 and found.sentences[0].startswith("No ") == (not inside)


@given(some.floats(1e-11, 0.1), some.floats(1, 1250), some.sampled_from((*ROLES, None)))
def test_value_and_rating_do_not_touch_each_other(old: float, volts: float, role: str | None) -> None:
    both, value, rating = modern_value(old, volts, role), modern_value(old, None, role), modern_value(None, volts, role)
    assert both == replace(value, rated_v=rating.rated_v, sentences=(*value.sentences, *rating.sentences))
    assert rating.rated_v is not None and (rating.rated_v >= volts or volts in (6.4, 64))
