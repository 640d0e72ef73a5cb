"""What the benchmarks ask, and what of an answer must be equal."""

from collections.abc import Iterable
from dataclasses import replace
from random import Random

from subsearch.search.candidates import Found
from subsearch.search.requirement import Requirement
from subsearch.search.roles import BY_ROLE

Key = tuple[tuple[bool | None, int, str, float, str], ...]
Answered = tuple[Key, tuple[int, int]]

NARROW = Requirement(
    role="timing", capacitance_f=100e-9, rated_v=100, pieces=4, hole_spacing_mm=10, headroom_mm=9, working_c=45,
    life_wanted_y=10,
)  # fmt: skip
TYPICAL = Requirement(
    role="rail decoupling", capacitance_f=47e-6, rated_v=25, pieces=10, hole_spacing_mm=5, headroom_mm=30,
    working_c=55, life_wanted_y=10,
)  # fmt: skip
WIDE = Requirement(
    role="rail decoupling", capacitance_f=47e-6, capacitance_low_f=1e-6, capacitance_high_f=1e-3, pieces=1,
    rated_v=10, hole_spacing_mm=5, headroom_mm=80, working_c=40, life_wanted_y=2,
)  # fmt: skip
SCARCE = replace(TYPICAL, headroom_mm=9)  # nothing fits: near misses are told
ASKED = {"narrow": NARROW, "typical": TYPICAL, "wide": WIDE}


def repair(positions: int, different: int, seed: int = 1) -> list[Requirement]:
    """Give so many positions, of which so many are different; each asks the same eight conditions as TYPICAL."""
    dice, kinds = Random(seed), dict[Requirement, None]()
    while len(kinds) < different:
        one = Requirement(
            role=dice.choice(sorted(set(BY_ROLE) - {"interference suppression"})),
            capacitance_f=float(f"{dice.choice((10, 15, 22, 33, 47, 68))}e{dice.randint(-9, -6)}"),
            rated_v=float(dice.choice((10, 16, 25, 35, 63, 100))),
            hole_spacing_mm=float(dice.choice((2.5, 5, 7.5, 10))),
            headroom_mm=float(dice.choice((12, 16, 25, 40))),
            working_c=float(dice.choice((40, 55, 65))),
            life_wanted_y=float(dice.choice((5, 10))),
            pieces=dice.choice((1, 2, 4, 10)),
        )
        kinds[one] = None
    every = list(kinds)
    return [replace(every[number % different], reference=f"C{number}") for number in range(positions)]


def answered(found: Found) -> Answered:
    """What of an answer of ours must be equal to a rival's."""
    key = tuple(
        (one.answer, one.place, one.part["part_number"], round(one.total, 6), one.offer["supplier_number"])
        for one in (*found.kept, *found.open)
    )
    return key, (found.kept_count, found.open_count)


def answered_rows(rows: Iterable[tuple[bool | None, int, int, float, str, str]]) -> Answered:
    """The same of a rival's rows: answer, place, count in all, total, part number, supplier's number."""
    listed = sorted(rows, key=lambda row: (row[0] is not True, row[1]))
    counts = {row[0]: int(row[2]) for row in listed}
    key = tuple((row[0], int(row[1]), row[4], round(row[3], 6), row[5]) for row in listed)
    return key, (counts.get(True, 0), counts.get(None, 0))
