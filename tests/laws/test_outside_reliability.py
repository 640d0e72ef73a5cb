"""The Arrhenius laws against a library written by others, on a grid; and the ten-degree rule by that library alone."""

from itertools import product
from math import log2

import matplotlib
import pytest

matplotlib.use("Agg")  # before the library asks for a screen

from reliability.PoF import acceleration_factor

from subsearch.formulas.arrhenius import acceleration, ten_degree_c, ten_degree_ev

# Its Boltzmann constant is cut after 8.617333262145e-5, 2e-14 below ours; factors up to 2 ** 43 raise that to 1e-12.
CLOSE = 1e-11
ENERGIES_EV = [step / 100 for step in range(30, 125, 5)]
TEMPERATURES_C = range(-40, 155, 15)


def theirs(energy: float, use: float, test: float) -> float:
    return float(acceleration_factor(Ea=energy, T_use=use, T_acc=test, print_results=False).AF)


def their_doubling_ev(use: float, test: float) -> float:
    return float(acceleration_factor(AF=2, T_use=use, T_acc=test, print_results=False).Ea)


def test_acceleration_is_theirs() -> None:
    for energy, use, test in product(ENERGIES_EV, TEMPERATURES_C, TEMPERATURES_C):
        assert acceleration(energy, use, test) == pytest.approx(theirs(energy, use, test), rel=CLOSE)


def test_the_energy_of_a_doubling_is_theirs() -> None:
    for use in TEMPERATURES_C:
        assert ten_degree_ev(use, use + 10) == pytest.approx(their_doubling_ev(use, use + 10), rel=CLOSE)


def test_the_energy_of_the_whole_rule_is_theirs() -> None:
    for use, test in product(TEMPERATURES_C, TEMPERATURES_C):
        if use != test:
            found = acceleration_factor(AF=2 ** ((test - use) / 10), T_use=use, T_acc=test, print_results=False)
            assert ten_degree_ev(use, test) == pytest.approx(float(found.Ea), rel=CLOSE)


def test_the_temperature_of_a_doubling_is_theirs() -> None:
    for energy in ENERGIES_EV:
        middle = ten_degree_c(energy)
        assert theirs(energy, middle - 5, middle + 5) == pytest.approx(2, rel=CLOSE)


def test_which_energies_the_rule_asks_for() -> None:
    """From 65 to 95 °C doubling in 10 K takes 0.70 to 0.79 eV; the published 0.94 eV doubles so only near 124 °C."""
    energies = [their_doubling_ev(use, use + 10) for use in range(65, 86)]
    assert (round(energies[0], 2), round(energies[-1], 2)) == (0.70, 0.79)
    assert energies == sorted(energies)
    assert log2(theirs(0.94, 119, 129)) == pytest.approx(1, abs=0.003)
    assert theirs(0.94, 75, 85) > 2.3


def test_the_comparison_can_fail() -> None:
    assert acceleration(0.94, 65.01, 105) != pytest.approx(theirs(0.94, 65, 105), rel=1e-4)
