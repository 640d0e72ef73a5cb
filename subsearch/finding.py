"""The command that finds parts for one position: its options, and what they ask."""

from pathlib import Path
from typing import Annotated, Any

import typer

from subsearch.errors import RequirementError
from subsearch.options import DEFAULT_CATALOG, parsed, quantity, rating, weigh, weights


def find(
    capacitance: Annotated[float | None, quantity("F", "Old value.")] = None,
    voltage: Annotated[Any, rating("Rating needed, d.c. unless it says a.c.")] = None,
    role: Annotated[str | None, parsed(str.lower, "ROLE", "What it does, like coupling or reservoir.")] = None,
    bipolar: Annotated[bool, typer.Option("--bipolar", help="The voltage may reverse.")] = False,
    lead_style: Annotated[str | None, parsed(str.lower, "STYLE", "radial, axial or snap-in.")] = None,
    hole_spacing: Annotated[float | None, quantity("mm", "Between the two holes.")] = None,
    hole_diameter: Annotated[float | None, quantity("mm", "Of each hole.")] = None,
    plated: Annotated[bool | None, typer.Option("--plated/--unplated", help="Whether the holes are plated.")] = None,
    lie_flat: Annotated[bool, typer.Option("--lie-flat", help="It may be laid flat; give --hole-spacing too.")] = False,
    free_diameter: Annotated[float | None, quantity("mm", "Of a round space centred on the holes.")] = None,
    along: Annotated[float | None, quantity("mm", "Free in the line of the holes, centred on them.")] = None,
    across: Annotated[float | None, quantity("mm", "Free across the line of the holes, centred on them.")] = None,
    headroom: Annotated[float | None, quantity("mm", "Free height above the board.")] = None,
    temperature: Annotated[float | None, quantity("°C", "At the part while it works.")] = None,
    uncertain: Annotated[float | None, quantity("K", "By how much that may be wrong, up and down.")] = None,
    hours_a_day: Annotated[float, typer.Option(help="Hours switched on a day.")] = 24,
    years: Annotated[float | None, typer.Option(help="Years of life wanted, up to 15.")] = None,
    ripple: Annotated[float | None, quantity("A", "Ripple current.")] = None,
    ripple_frequency: Annotated[float | None, quantity("Hz", "Its frequency.")] = None,
    leakage: Annotated[float | None, quantity("A", "Leakage allowed, as makers state it, like 5 µA.")] = None,
    safety_class: Annotated[str | None, parsed(str.upper, "CLASS", "X1, X2, Y1 or Y2.")] = None,
    pieces: Annotated[int, typer.Option(help="How many are needed.")] = 1,
    best: Annotated[int, typer.Option(help="How many to show.", min=1, max=1000)] = 10,
    weight: Annotated[list[Any] | None, weigh("What a contribution to the score counts, like life=2.")] = None,
    score: Annotated[bool, typer.Option("--score", help="Show what adds up to the score.")] = False,
    why: Annotated[tuple[str, str] | None, typer.Option(metavar="MAKER NUMBER", help="Explain one part.")] = None,
    catalog: Annotated[Path, typer.Option("--catalog", help="The catalog file.")] = DEFAULT_CATALOG,
) -> None:
    """Find parts for one position."""
    from subsearch.catalog.store import open_to_read
    from subsearch.display.summary import print_found, print_why
    from subsearch.search import candidates
    from subsearch.search.requirement import Requirement

    if capacitance is None and voltage is None:
        raise RequirementError(
            "Nothing is asked. Give a --capacitance or a --voltage at least, like '47 µF' or '25 V'."
        )
    side, depth = (None if size is None else size / 2 for size in (along, across))
    requirement = Requirement(
        pieces=pieces, role=role, capacitance_f=capacitance, reverses=bipolar, leakage_most_a=leakage,
        rated_v=voltage.volts if voltage and not voltage.ac else None, lead_style=lead_style,
        rated_ac_v=voltage.volts if voltage and voltage.ac else None,
        hole_spacing_mm=hole_spacing, hole_diameter_mm=hole_diameter, hole_plated=plated, may_lie_flat=lie_flat,
        free_diameter_mm=free_diameter, left_mm=side, right_mm=side, front_mm=depth,
        back_mm=depth, headroom_mm=headroom, working_c=temperature, hours_a_day=hours_a_day, life_wanted_y=years,
        temperature_uncertain_k=uncertain or 0, ripple_a=ripple, ripple_hz=ripple_frequency, safety_class=safety_class,
    )  # fmt: skip
    with open_to_read(catalog) as con:
        # More than are shown cost nothing, and where all are here the first place is judged without asking again.
        found = candidates.find(con, [requirement], max(best, candidates.BEST), weights(weight))[0]
        if why is not None:
            print_why(why, found.why(why[0] or None, why[1]))
        else:
            print_found(found, catalog, best, score)
            raise typer.Exit(0 if found.kept else 1)
