"""Positions whose old can holds several capacitors: a single part can't stand in for it."""

import duckdb

from subsearch.errors import QuantityError
from subsearch.reading.sections import read_sections
from subsearch.repair.asking import Asked
from subsearch.repair.positions import Position
from subsearch.search.sections import singles
from subsearch.search.weights import Weights


def section_values(position: Position) -> tuple[float, ...]:
    """The capacitance of each section [F]; none where the position has none, or what is written can't be read."""
    try:
        return read_sections(position.sections) if position.sections else ()
    except QuantityError:  # `told_of_sections` says so; here only what is known counts
        return ()


def told_of_sections(con: duckdb.DuckDBPyConnection, asked: Asked, weights: Weights | None) -> str:
    """What can stand in for the sections, or why that can't be read; empty where the position has none."""
    text = asked.position.sections
    if not text or asked.requirement is None:
        return ""
    try:
        values = read_sections(text)
    except QuantityError as error:
        return f"Nothing is chosen, since the can holds several: {error}"
    said = singles(con, asked.requirement, values, weights).sentence
    return f"Nothing is chosen by itself, since the can holds several: {said}"
