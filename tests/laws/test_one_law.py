"""A float, an array, a frame column and a stored column give each law the same number, and the same unknown.

10,000 random rows, 15 % unknown in each input. Agreeing on a wrong number is no proof: unknown must also be exactly
where an input is, and the published rows check the numbers themselves.
"""

import inspect
import random
from collections.abc import Callable, Mapping
from decimal import Decimal
from math import isnan, nan
from typing import Any

import duckdb
import numpy as np
import numpy.typing as npt
import pandas as pd
import pytest

import subsearch.search.derived  # noqa: F401  teaches the laws what a stored column is
from subsearch.formulas import buying, carriers, coupling, discharge, envelope, geometry, life, loss

Array = npt.NDArray[Any]
Columns = Mapping[str, Array]
ROWS = 10_000
UNKNOWN = 0.15
STEPS = ((6.3, 0.23), (10.0, 0.20), (16.0, 0.16), (25.0, 0.14), (35.0, 0.12))
MODULES = (buying, coupling, discharge, envelope, geometry, life, loss)
NOT_ONE_LAW = {"cheapest"}  # plain whole numbers and decimals only: exact money
COUNTS = {"pieces", "minimum", "pack", "from_quantity"}  # stored as whole numbers

# Sizes fall on the bounds of the tables as often as between them.
INPUTS: Mapping[str, Callable[[random.Random], float]] = {
    "a": lambda r: r.choice([-1.0, 0.0, 1.0, r.uniform(-2, 2)]),
    "b": lambda r: r.choice([-1.0, 0.0, 1.0, r.uniform(-2, 2)]),
    "x": lambda r: r.choice([0.0, 6.3, 10.0, 16.0, 25.0, 35.0, 40.0, r.uniform(0, 45)]),
    "base_life_h": lambda r: r.choice([1e3, 2e3, 5e3, 1e4]),
    "life_h": lambda r: 10 ** r.uniform(3, 6),
    "rated_c": lambda r: r.choice([85.0, 105.0, 125.0]),
    "working_c": lambda r: r.uniform(20, 90),
    "rated_rise_k": lambda r: r.choice([3.5, 5.0, 10.0]),
    "rise_k": lambda r: r.uniform(0, 20),
    "ripple_a": lambda r: r.choice([0.0, r.uniform(0, 3)]),
    "rated_ripple_a": lambda r: r.uniform(0.05, 3),
    "with_ripple": lambda r: r.choice([0.0, 1.0]),
    "hours_a_day": lambda r: r.choice([1.0, 8.0, 24.0]),
    "ceiling_y": lambda r: r.choice([10.0, 15.0]),
    "tan_delta": lambda r: r.uniform(0.001, 0.3),
    "esr_ohm": lambda r: 10 ** r.uniform(-3, 3),
    "frequency_hz": lambda r: r.choice([20.0, 100.0, 120.0, 1e5]),
    "capacitance_f": lambda r: 10 ** r.uniform(-9, -1),
    "resistance_ohm": lambda r: 10 ** r.uniform(0, 6),
    "corner_hz": lambda r: 10 ** r.uniform(-2, 3),
    "start_v": lambda r: r.choice([0.0, 60.0, r.uniform(0, 500)]),
    "threshold_v": lambda r: r.choice([10.0, 60.0]),
    "rated_v": lambda r: r.choice([6.3, 63.0, 450.0]),
    "diameter_mm": lambda r: r.choice([5.0, 6.3, 16.0, 20.0, 40.0, r.uniform(3, 60)]),
    "size_mm": lambda r: r.uniform(1, 50),
    "nominal_mm": lambda r: r.uniform(1, 50),
    "plus_mm": lambda r: r.choice([0.5, 1.0]),
    "along_mm": lambda r: r.uniform(1, 50),
    "across_mm": lambda r: r.uniform(1, 50),
    "tall_mm": lambda r: r.choice([11.0, 20.0, r.uniform(5, 60)]),
    "side_mm": lambda r: r.uniform(1, 30),
    "headroom_mm": lambda r: r.uniform(5, 60),
    "free_diameter_mm": lambda r: r.uniform(5, 60),
    "spacing_mm": lambda r: r.choice([2.0, 2.5, 5.0, 7.5, 10.0]),
    "hole_spacing_mm": lambda r: r.choice([2.5, 5.0, 5.08, 7.62, 10.16, 30.0]),
    "pieces": lambda r: float(r.randint(1, 300)),
    "minimum": lambda r: r.choice([1.0, 5.0, 100.0]),
    "pack": lambda r: r.choice([1.0, 3.0, 5.0, 7.0, 10.0]),
    "from_quantity": lambda r: r.choice([1.0, 10.0, 100.0]),
    "unit_price": lambda r: round(r.uniform(0, 5), 4),
}

Law = Callable[..., carriers.Carrier]
LAWS: dict[str, Law] = {
    name: law
    for module in MODULES
    for name, law in inspect.getmembers(module, inspect.isfunction)
    if law.__module__ == module.__name__ and not name.startswith("_") and name not in NOT_ONE_LAW
} | {
    "least": carriers.least,
    "most": carriers.most,
    "staircase": lambda x: carriers.staircase(x, STEPS),
    "abs": lambda x: carriers.step(x - 20, "abs"),
    "ceil": lambda x: carriers.step(x - 20, "ceil"),
    "log2": lambda x: carriers.step(x + 1, "log2"),
}
# Where a law is unknown though no input is, with the place.
ALSO_UNKNOWN: Mapping[str, Callable[[Columns], Array]] = {
    "staircase": lambda columns: columns["x"] > STEPS[-1][0],  # the table ends there
}


def random_columns(law: Law, seed: int) -> Columns:
    r = random.Random(seed)
    names = inspect.signature(law).parameters
    return {n: np.array([nan if r.random() < UNKNOWN else INPUTS[n](r) for _ in range(ROWS)]) for n in names}


def stored(law: Law, columns: Columns) -> Array:
    """The law on columns of a table; unknown comes back as NaN, but must be NULL in the database."""
    frame = pd.DataFrame(columns)
    types = ", ".join(f'"{n}"::{"INTEGER" if n in COUNTS else "DOUBLE"} as "{n}"' for n in columns)
    with duckdb.connect() as connection:
        connection.register("drawn", frame)
        connection.execute(f"create table part as select row_number() over () as pk, {types} from drawn")
        expression = law(**{n: duckdb.ColumnExpression("part", n) for n in columns})
        rows = connection.execute(f"select ({expression})::double from part order by pk").fetchall()
    values = [row[0] for row in rows]
    assert not any(value is not None and isnan(value) for value in values), "NaN in the database"
    return np.array([nan if value is None else value for value in values])


@pytest.mark.parametrize("name", LAWS)
def test_one_law_every_carrier(name: str) -> None:
    law = LAWS[name]
    columns = random_columns(law, seed=len(name))
    rows = zip(*(column.tolist() for column in columns.values()), strict=True)
    one = np.array([float(law(*row)) for row in rows])
    framed = law(**{n: pd.Series(column) for n, column in columns.items()})
    for other in (law(**columns), np.asarray(framed, float), stored(law, columns)):
        np.testing.assert_allclose(other, one, rtol=1e-9, atol=0, equal_nan=True)
    unknown = np.isnan(np.array(list(columns.values()))).any(axis=0)
    also = ALSO_UNKNOWN[name](columns) if name in ALSO_UNKNOWN else False
    assert (np.isnan(one) == (unknown | also)).all()


def test_every_input_has_random_values() -> None:
    for name, law in LAWS.items():
        missing = inspect.signature(law).parameters.keys() - INPUTS.keys()
        assert not missing, f"{name} takes {missing}"


def test_the_two_roads_to_a_cost_agree() -> None:
    """The least over the breaks, by the law, is what `cheapest` pays, while no larger quantity has a higher price."""
    r = random.Random(7)
    for _ in range(2_000):
        pieces, minimum, pack = r.randint(1, 300), r.choice([1, 5, 100]), r.choice([1, 3, 10])
        prices = sorted((r.randint(1, 500) for _ in range(3)), reverse=True)
        breaks = list(zip((1, 10, 100), prices, strict=True))
        exact = buying.cheapest(pieces, minimum, pack, [(start, Decimal(cents)) for start, cents in breaks])
        costs = [buying.break_cost(pieces, minimum, pack, start, cents) for start, cents in breaks]
        assert min(costs) == exact.cost
