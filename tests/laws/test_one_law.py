"""A float, an array, a frame column and a stored column give each law the same number, and the same unknown.

10,000 random rows, 15 % unknown in each input. Agreeing on a wrong number is no proof: unknown must also be exactly
where an input is, and the published rows check the numbers themselves.
"""

import importlib
import inspect
import pkgutil
import random
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from functools import partial
from itertools import product
from math import isnan, nan
from typing import Any

import duckdb
import numpy as np
import numpy.typing as npt
import pandas as pd
import pytest
from laws.ends_of_tables import ENDS_OF_TABLES
from laws.inputs import WORDS, draw

import subsearch.formulas as room
import subsearch.search.derived  # noqa: F401  teaches the laws what a stored column is
from subsearch.formulas import buying, carriers

Array = npt.NDArray[Any]
Columns = Mapping[str, Array]
ROWS = 10_000
UNKNOWN = 0.15
STEPS = ((6.3, 0.23), (10.0, 0.20), (16.0, 0.16), (25.0, 0.14), (35.0, 0.12))
COUNTS = {"pieces", "minimum", "pack", "from_quantity"}  # stored as whole numbers

Law = Callable[..., carriers.Carrier]


def laws() -> Iterator[tuple[str, Law]]:
    """Every function of the room that gives a carrier, once for each of the words that one of its inputs takes."""
    for found in pkgutil.iter_modules(room.__path__):
        module = importlib.import_module(f"{room.__name__}.{found.name}")
        for name, law in inspect.getmembers(module, inspect.isfunction):
            made_here = law.__module__ == module.__name__ and not name.startswith("_")
            if found.name == "carriers" or not made_here or law.__annotations__["return"] is not carriers.Carrier:
                continue
            words = [n for n, one in inspect.signature(law).parameters.items() if one.annotation is str]
            for chosen in product(*(WORDS[n] for n in words)):
                yield " ".join((name, *chosen)), partial(law, **dict(zip(words, chosen, strict=True)))


LAWS: dict[str, Law] = dict(laws()) | {
    "least": carriers.least,
    "most": carriers.most,
    "staircase": lambda x: carriers.staircase(x, STEPS),
    "abs": lambda x: carriers.step(x - 20, "abs"),
    "ceil": lambda x: carriers.step(x - 20, "ceil"),
    "log2": lambda x: carriers.step(x + 1, "log2"),
}
# Where a law is unknown though no input is, with the place.
ALSO_UNKNOWN: Mapping[str, Callable[[Columns], Array]] = {
    **ENDS_OF_TABLES,
    **dict.fromkeys(
        ("can_spacing_mm", "can_lead_mm", "can_lead_max_mm"),
        lambda columns: (columns["diameter_mm"] < 4) | (columns["diameter_mm"] > 25),  # the table begins and ends
    ),
    "snap_in_spacing_mm": lambda columns: (columns["diameter_mm"] < 22) | (columns["diameter_mm"] > 35),
    "axial_lead_mm": lambda columns: (columns["diameter_mm"] > 8) & (columns["diameter_mm"] < 10),  # a gap in it
    **dict.fromkeys(
        (f"film_box_mm {size}" for size in WORDS["box_size"]),
        lambda columns: ~np.isin(columns["spacing_mm"], (5, 7.5, 10, 10.2, 27.5)),  # of those drawn
    ),
    **dict.fromkeys(("packing_ratio", "inside_can_margin_mm"), lambda columns: columns["cans"] > 4),  # not reckoned
    "staircase": lambda columns: columns["x"] > STEPS[-1][0],  # the table ends there
    "core_ratio": lambda columns: columns["diameter_mm"] > 35,  # the table ends there
    "ripple_coefficient 85 °C low-cost": lambda columns: columns["working_c"] > 85,  # the class ends there
    "ripple_coefficient 85 °C": lambda columns: columns["working_c"] > 85,
    "ripple_coefficient 105 °C": lambda columns: columns["working_c"] > 105,
    **dict.fromkeys(
        ("voltage_power_factor", "voltage_linear_factor", *(f"voltage_factor {build}" for build in WORDS["build"])),
        lambda columns: columns["working_v"] / columns["rated_v"] > 1,  # no law of life holds above the rated voltage
    ),
    "ripple_for_life_a": lambda columns: (  # it would not last so long without any ripple
        columns["with_ripple"] * columns["rated_rise_k"] + 10 * np.log2(columns["life_h"] / columns["wanted_h"]) < 0
    ),
    "series_partner_f": lambda columns: columns["one_f"] <= columns["target_f"],  # it can only make less
    "next_rated_v": lambda columns: columns["need_v"] > 1250,  # the last standard rating
    "old_as_modern_v": lambda columns: columns["old_v"] > 1250,
    "surge_to_100_v": lambda columns: (
        ((columns["rated_v"] > 100) & (columns["rated_v"] < 160)) | (columns["rated_v"] > 450)
    ),
}


def random_columns(law: Law, seed: int) -> Columns:
    r = random.Random(seed)
    given = law.keywords if isinstance(law, partial) else {}
    names = [n for n in inspect.signature(law).parameters if n not in given]
    return {n: np.array([nan if r.random() < UNKNOWN else draw(n)(r) for _ in range(ROWS)]) for n in names}


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
    one = np.array([float(law(**dict(zip(columns, row, strict=True)))) for row in rows])
    framed = law(**{n: pd.Series(column) for n, column in columns.items()})
    for other in (law(**columns), np.asarray(framed, float), stored(law, columns)):
        np.testing.assert_allclose(other, one, rtol=1e-9, atol=0, equal_nan=True)
    unknown = np.isnan(np.array(list(columns.values()))).any(axis=0)
    also = ALSO_UNKNOWN[name](columns) if name in ALSO_UNKNOWN else False
    assert (np.isnan(one) == (unknown | also)).all()


def test_no_law_is_left_out() -> None:
    assert {"life_h", "break_cost", "loss_db"} <= LAWS.keys()
    assert "cheapest" not in LAWS  # exact money: plain whole numbers and decimals only


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
