"""The staged lines of one list as terms: pieces of cells joined to their lines, body sizes by shape, price breaks."""

from collections.abc import Sequence

import duckdb

from subsearch.catalog.layouts import Layout
from subsearch.catalog.staging import LISTING_TYPES, OTHER_TYPES, Piece
from subsearch.reading.cells import BODY, BODY_PLUS, SIZES
from subsearch.terms import OFFER_TERMS, PART_TERMS

# A can stands on its length; an axial part lies along it. Sizes in one cell are Ø×L, or L×W×H for a box.
BY_SHAPE = {
    "along_mm": """case shape when 'can' then coalesce(diameter_mm, size_1_mm)
        when 'axial' then coalesce(length_mm, size_2_mm) when 'box' then coalesce(length_mm, size_1_mm)
        else if(size_3_mm is null, if(width_mm is null, null, length_mm), size_1_mm) end""",
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
BESIDE = ("from_quantity", "price_breaks", "value_doubt", "life_at_c")  # what cells state beside the terms
AS_BREAKS = """list_transform(string_split(price_breaks, ' '), lambda one: {'from': split_part(one, ':', 1)::integer,
    'price': split_part(one, ':', 2)::decimal(14, 6)})"""


def say(con: duckdb.DuckDBPyConnection, supplier: str, currency: str | None) -> None:
    """Put what holds where a line does not say into the temporary table `said`."""
    con.execute(
        "create or replace temp table said as select $1::varchar as its_supplier, $2::varchar as its_currency",
        [supplier, currency],
    )


def typed_sql(con: duckdb.DuckDBPyConnection, layout: Layout, pieces: Sequence[Piece], lines: str = "staged") -> str:
    """Give the query for lines as terms: for each its cells, terms and price breaks, and whether any cell is unread.

    con: connection on which the list was staged and `said` made. pieces: what its columns state. lines: the lines
    asked for, a relation with the columns of `staged`. It is a query and no table: at a million lines it would hold
    half a gigabyte, and each line is asked for twice at most.
    """
    types = OTHER_TYPES | dict(con.execute(LISTING_TYPES).fetchall())
    width = len(con.execute("describe staged").fetchall()) - 1
    printed = ", ".join(f"s.c{place}" for place in range(width))
    names = [*(term.name for term in (*PART_TERMS, *OFFER_TERMS)), *BODY, *BODY_PLUS, *SIZES, *BESIDE]
    joins = "\n".join(
        f"left join reading_{column.place} r{column.place} on s.c{column.place} = r{column.place}.text"
        for column in layout.columns
    )
    unread = " or ".join(["false", *(f"r{column.place}.fault is not null" for column in layout.columns)])
    firsts = {name: _first(name, pieces) for name in names}
    if layout.shape:
        firsts["shape"] = f"coalesce({firsts['shape']}, '{layout.shape}')"
    claims = ",\n".join(f"{first}::{types.get(name, 'DOUBLE')} as {name}" for name, first in firsts.items())
    terms = ",\n".join(_term(term.name, layout) for term in (*PART_TERMS, *OFFER_TERMS))
    in_cells = any(piece.name == "price_breaks" for piece in pieces)
    prices = f"if(price_breaks is null, in_columns, list_concat(in_columns, {AS_BREAKS}))" if in_cells else "in_columns"
    return f"""with claimed as (
            select s.line, [{printed}] as printed, {claims}, {_prices(pieces)} as in_columns,
                {_currencies(pieces)} as currencies, {unread} as unread, said.*
            from {lines} s {joins} cross join said),
        priced as (select *, {prices} as prices from claimed)
        select line, printed, {terms}, prices, size_3_mm, value_doubt, life_at_c, currencies,
            coalesce(prices[1]."from", from_quantity::integer) as first_quantity, unread
        from priced"""


def _first(name: str, pieces: Sequence[Piece]) -> str:
    """The first column that states it: its own column before others, a description last."""
    found = sorted(
        (piece for piece in pieces if piece.name == name),
        key=lambda piece: (piece.column.kind == "description", piece.column.kind != name),
    )
    return f"coalesce({', '.join(_told(piece, pieces) for piece in found)})" if found else "null"


def _told(piece: Piece, pieces: Sequence[Piece]) -> str:
    """What a column states; of a description the extents only where no column of their own states any."""
    own = [one.sql for one in pieces if one.name in (*BODY, *SIZES) and one.column.kind != "description"]
    if piece.column.kind == "description" and piece.name in BODY and own:
        return f"if(coalesce({', '.join(own)}) is null, {piece.sql}, null)"
    return piece.sql


def _term(name: str, layout: Layout) -> str:
    if name in BY_SHAPE:
        return f"coalesce({name}, {BY_SHAPE[name]}) as {name}"
    if name in ("supplier", "currency"):
        return f"coalesce({name}, its_{name}) as {name}"
    if name == "rated_c":
        return "coalesce(rated_c, life_at_c) as rated_c"
    if name == "condition" and name not in layout.kinds:
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


def _currencies(pieces: Sequence[Piece]) -> str:
    """What the cells of a line say of its currency, each once; nothing where only one cell can say it."""
    said = [piece.sql for piece in pieces if piece.name == "currency"]
    return f"list_sort(list_distinct([{', '.join(said)}]))" if len(said) > 1 else "[]::varchar[]"
