"""The staged lines of one list as terms: pieces of cells joined to their lines, body sizes by shape, price breaks."""

from collections.abc import Sequence

import duckdb

from subsearch.catalog.layouts import Layout
from subsearch.catalog.staging import LISTING_TYPES, Piece
from subsearch.reading.cells import BODY, BODY_PLUS, SIZES
from subsearch.terms import OFFER_TERMS, PART_TERMS

# A can stands on its length; an axial part lies along it. Sizes in one cell are Ø×L, or L×W×H for a box.
BY_SHAPE = {
    "along_mm": """case shape when 'can' then coalesce(diameter_mm, size_1_mm)
        when 'axial' then coalesce(length_mm, size_2_mm) when 'box' then coalesce(length_mm, size_1_mm)
        else if(size_3_mm is null, null, size_1_mm) end""",
    "across_mm": """case when shape in ('can', 'axial') then coalesce(diameter_mm, size_1_mm)
        when shape = 'box' then coalesce(width_mm, size_2_mm)
        else coalesce(diameter_mm, width_mm, if(size_3_mm is null, null, size_2_mm)) end""",
    "tall_mm": """case shape when 'can' then coalesce(length_mm, height_mm, size_2_mm)
        when 'axial' then coalesce(diameter_mm, size_1_mm) else coalesce(height_mm, size_3_mm) end""",
    "along_plus_mm": """case shape when 'can' then diameter_plus_mm when 'axial' then length_plus_mm
        when 'box' then length_plus_mm end""",
    "across_plus_mm": "if(shape in ('can', 'axial'), diameter_plus_mm, null)",
    "tall_plus_mm": "case shape when 'can' then length_plus_mm when 'axial' then diameter_plus_mm end",
}
# The term that a size cell would have stated, for the refusal.
TERM_BY_SHAPE = """case fault_term
    when 'diameter_mm' then if(typed.shape = 'axial', 'across_mm', 'along_mm')
    when 'length_mm' then if(typed.shape = 'can', 'tall_mm', 'along_mm')
    when 'width_mm' then 'across_mm' when 'height_mm' then 'tall_mm'
    when 'diameter_plus_mm' then if(typed.shape = 'axial', 'across_plus_mm', 'along_plus_mm')
    when 'length_plus_mm' then if(typed.shape = 'can', 'tall_plus_mm', 'along_plus_mm')
    else fault_term end"""


def join_lines(
    con: duckdb.DuckDBPyConnection, layout: Layout, pieces: Sequence[Piece], supplier: str, currency: str | None
) -> None:
    """Make the temporary table `typed`: for each staged line its cells, its terms and its price breaks.

    con: connection on which the list was staged. supplier, currency: what holds where a line does not say.
    """
    types = dict(con.execute(LISTING_TYPES).fetchall())
    width = len(con.execute("describe staged").fetchall()) - 1
    printed = ", ".join(f"s.c{place}" for place in range(width))
    names = [*(term.name for term in (*PART_TERMS, *OFFER_TERMS)), *BODY, *BODY_PLUS, *SIZES, "from_quantity"]
    joins = "\n".join(
        f"left join reading_{column.place} r{column.place} on s.c{column.place} = r{column.place}.text"
        for column in layout.columns
    )
    claims = ",\n".join(f"{_first(name, pieces)}::{types.get(name, 'DOUBLE')} as {name}" for name in names)
    terms = ",\n".join(_term(term.name, layout) for term in (*PART_TERMS, *OFFER_TERMS))
    con.execute(
        f"""create or replace temp table typed as
        with claimed as (
            select s.line, [{printed}] as printed, {claims}, {_prices(pieces)} as prices from staged s {joins}
        )
        select line, printed, {terms}, prices, size_3_mm,
            coalesce(prices[1]."from", from_quantity::integer) as first_quantity
        from claimed""",
        {"supplier": supplier, "currency": currency},
    )


def _first(name: str, pieces: Sequence[Piece]) -> str:
    """The first column that states it, its own column before others."""
    found = sorted((piece for piece in pieces if piece.name == name), key=lambda piece: piece.column.kind != name)
    return f"coalesce({', '.join(piece.sql for piece in found)})" if found else "null"


def _term(name: str, layout: Layout) -> str:
    kinds = {column.kind for column in layout.columns}
    if name in BY_SHAPE:
        return f"coalesce({name}, {BY_SHAPE[name]}) as {name}"
    if name in ("supplier", "currency"):
        return f"coalesce({name}, ${name}) as {name}"
    if name == "condition" and name not in kinds:
        return "'new' as condition"
    return name


def _prices(pieces: Sequence[Piece]) -> str:
    """The price breaks of a line as a list, ascending; a price without a quantity holds from the line's, or from 1."""
    held = _first("from_quantity", pieces)
    breaks = [
        f"""{{'from': {piece.column.from_quantity or f"coalesce({held}, 1)"}::integer, 'price': {piece.sql}}}"""
        for piece in sorted(pieces, key=lambda piece: piece.column.from_quantity or 0)
        if piece.name == "unit_price"
    ]
    if not breaks:
        return """[]::struct("from" integer, price decimal(14, 6))[]"""
    return f"list_filter([{', '.join(breaks)}], lambda b: b.price is not null)"
