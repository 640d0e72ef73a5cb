"""What is wrong with the staged lines of one list: one row a fault, with a sentence each."""

from collections.abc import Sequence

import duckdb

from subsearch.catalog.layouts import Layout
from subsearch.catalog.lines import TERM_BY_SHAPE
from subsearch.reading.rows import Row
from subsearch.terms import WITHOUT_POLARITY

FAULTS = """create or replace temp table faults (
    line integer, heading varchar, term varchar, found varchar, fault varchar, reason varchar)"""
OFFER_KEY = """coalesce('#' || supplier_number, concat_ws(chr(31), '=', coalesce(maker, ''), part_number,
    coalesce(condition, '')))"""

MISSING = {  # term: what it is, the columns that can state it, when it counts as absent
    "part_number": ("number of the maker's", ("part_number",), "part_number is null"),
    "capacitance_f": ("nominal capacitance", ("capacitance_f",), "capacitance_f is null"),
    "rated_v": (
        "rated d.c. voltage, nor an a.c. one",
        ("rated_v", "rated_ac_v"),
        "rated_v is null and rated_ac_v is null",
    ),
    "unit_price": ("price", ("unit_price",), "len(prices) = 0"),
}
CONTRADICTIONS = {  # term: the columns it concerns, what is wrong, what was found, the sentence
    "polarity": (
        ("polarity",),
        "polarity = 'polar' and list_contains($without_polarity, technology)",
        "polarity || ', ' || technology",
        "format('The line says polar, but a {} part has no polarity. Correct the one that is wrong.', technology)",
    ),
    "rated_c": (
        ("rated_c", "temperatures"),
        "lowest_c >= rated_c",
        "lowest_c || ' to ' || rated_c || ' °C'",
        "format('The lower category temperature, {} °C, is not below the upper one, {} °C. Look whether they were "
        "exchanged.', lowest_c, rated_c)",
    ),
    "lead_spacing_mm": (
        ("lead_spacing_mm",),
        "shape in ('can', 'box') and lead_spacing_mm >= along_mm",
        "lead_spacing_mm || ' mm, body ' || along_mm || ' mm'",
        "format('The leads would leave the {} {} mm apart, outside its {} mm. A spacing after forming belongs in a "
        'column "Delivered spacing".\', shape, lead_spacing_mm, along_mm)',
    ),
    "shape": (
        ("shape", "style"),
        "shape in ('can', 'axial') and size_3_mm is not null",
        "shape || ', three sizes'",
        "format('The line says {}, but its size has three extents as a box has. Correct the one that is wrong.', "
        "shape)",
    ),
}


def find_faults(con: duckdb.DuckDBPyConnection, layout: Layout, damaged: Sequence[Row]) -> None:
    """Make the temporary table `faults` for the list that stands in `staged`, `reading_<place>` and `typed`.

    con: connection on which the list was staged. damaged: rows with another number of cells than the heading line,
    which are not staged.
    """
    con.execute(FAULTS)
    _cells(con, layout, damaged)
    _readings(con, layout)
    _missing(con, layout)
    _breaks(con, layout)
    _contradictions(con, layout)
    _repeated(con, layout)


def _cells(con: duckdb.DuckDBPyConnection, layout: Layout, damaged: Sequence[Row]) -> None:
    wanted = len(layout.headings)
    for row in damaged:
        reason = (
            f"The line has {len(row.cells)} cells, the heading line has {wanted}. "
            "Look for a missing cell, or a separator inside a cell that should stand in quotation marks."
        )
        con.execute(
            "insert into faults values ($1, '', '', $2, 'cells', $3)", [row.line, " | ".join(row.cells), reason]
        )


def _readings(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    for column in layout.columns:
        con.execute(
            f"""insert into faults
            select line, $1, {TERM_BY_SHAPE}, text, fault, reason
            from staged join reading_{column.place} on c{column.place} = text join typed using (line)
            where fault is not null""",
            [column.heading],
        )


def _missing(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    for term, (what, kinds, absent) in MISSING.items():
        reason = f"The line states no {what}, and no line is kept without it. Fill the cell in the list."
        con.execute(
            f"""insert into faults select line, $1, $2, '', 'missing', $3 from typed
            where {absent} and not exists (
                select 1 from faults where faults.line = typed.line and list_contains($4, faults.term))""",
            [layout.headings_of(*kinds), term, reason, list(kinds)],
        )


def _breaks(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    pair = """prices[i + 1].price > prices[i].price or prices[i + 1]."from" <= prices[i]."from" """
    con.execute(
        f"""insert into faults
        select line, $1, 'unit_price',
            array_to_string(list_transform(prices, lambda b: b."from" || '+: ' || b.price), ', '), 'breaks',
            'The price of one piece may not rise, and quantities must, from one price break to the next. '
            || 'Look for exchanged price cells.'
        from typed where len(list_filter(range(1, len(prices)), lambda i: {pair})) > 0""",
        [layout.headings_of("unit_price")],
    )


def _contradictions(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    for term, (kinds, wrong, found, reason) in CONTRADICTIONS.items():
        values: dict[str, object] = {"heading": layout.headings_of(*kinds), "term": term}
        if "$without_polarity" in wrong:
            values["without_polarity"] = list(WITHOUT_POLARITY)
        con.execute(
            f"""insert into faults select line, $heading, $term, {found}, 'contradiction', {reason}
            from typed where {wrong}""",
            values,
        )


def _repeated(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    """Only a line that is kept can be repeated: of lines with one key the first without a fault is kept."""
    con.execute(
        f"""insert into faults
        with keyed as (
            select line, supplier, {OFFER_KEY} as key, first_quantity,
                if(supplier_number is null, part_number, supplier_number) as number,
                if(supplier_number is null, 'part_number', 'supplier_number') as term
            from typed),
        kept as (
            select supplier, key, first_quantity, min(line) as first_line from keyed
            where line not in (select line from faults) group by all)
        select line, if(term = 'supplier_number', $1, $2), term, number, 'repeated',
            format('"{{}}" from {{}} pieces already stands in line {{}} of this list. Take one of the lines out.',
                number, first_quantity, first_line)
        from keyed join kept using (supplier, key, first_quantity) where line > first_line""",
        [layout.headings_of("supplier_number"), layout.headings_of("part_number")],
    )
