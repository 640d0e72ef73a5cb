"""The laws of life turned round lead back to the life that was wanted."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from subsearch.formulas.life import RATED_RISE_K, life_h, life_with_ripple_h, rise_k
from subsearch.formulas.life_wanted import cool_enough_c, ripple_for_life_a

HOURS = st.floats(100, 1e6)


@given(base_life_h=HOURS, working_c=st.floats(20, 105), wanted_h=HOURS)
def test_at_that_temperature_it_lasts_as_long_as_wanted(base_life_h: float, working_c: float, wanted_h: float) -> None:
    lasts_h = life_h(base_life_h, 105.0, working_c)
    assert life_h(base_life_h, 105.0, cool_enough_c(lasts_h, working_c, wanted_h)) == pytest.approx(wanted_h, rel=1e-9)


@given(lasts_h=HOURS, wanted_h=HOURS, rated_a=st.floats(0.05, 5), with_ripple=st.sampled_from([0.0, 1.0]))
def test_at_that_ripple_it_lasts_as_long_as_wanted(
    lasts_h: float, wanted_h: float, rated_a: float, with_ripple: float
) -> None:
    assume(wanted_h <= life_with_ripple_h(lasts_h, 0.0, RATED_RISE_K, with_ripple))
    ripple_a = ripple_for_life_a(lasts_h, wanted_h, RATED_RISE_K, rated_a, with_ripple)
    rise = rise_k(RATED_RISE_K, ripple_a, rated_a)
    assert life_with_ripple_h(lasts_h, rise, RATED_RISE_K, with_ripple) == pytest.approx(wanted_h, rel=1e-9)
