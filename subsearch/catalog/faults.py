"""What is wrong with the staged lines of one list: one row a fault, with a sentence each."""

from collections.abc import Mapping, Sequence

import duckdb

from subsearch.catalog.contradictions import CONTRADICTIONS
from subsearch.catalog.layouts import Layout
from subsearch.catalog.lines import TERM_BY_SHAPE, typed_sql
from subsearch.catalog.staging import Piece
from subsearch.terms import WITHOUT_POLARITY

FAULTS = """create or replace temp table faults (
    line integer, heading varchar, term varchar, found varchar, fault varchar, reason varchar)"""
OFFER_KEY = """coalesce('#' || supplier_number, concat_ws(chr(31), '=', coalesce(maker, ''), part_number,
    coalesce(condition, '')))"""

BAD_BREAKS = """len(list_filter(range(1, len(prices)), lambda i:
    prices[i + 1].price > prices[i].price or prices[i + 1]."from" <= prices[i]."from")) > 0"""
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
IN_DESCRIPTIONS = ("capacitance_f", "rated_v")


def find_faults(con: duckdb.DuckDBPyConnection, layout: Layout, pieces: Sequence[Piece]) -> None:
    """Make the temporary table `faults` for the list that stands in `staged`, `damaged` and `reading_<place>`.

    con: connection on which the list was staged. pieces: what its columns state. Only the doubtful lines are kept as
    terms and looked at: one pass over all of them tells whether anything is wrong, or may be said twice.
    """
    con.execute(FAULTS)
    pass_over(con, layout, pieces)
    _cells(con, layout)
    _readings(con, layout)
    _missing(con, layout)
    _breaks(con, layout)
    _contradictions(con, layout)
    _repeated(con, layout)


def _needed(layout: Layout) -> Mapping[str, tuple[str, tuple[str, ...], str]]:
    """What a line may not lack; a size table has no prices: its parts are known without an offer."""
    return {term: one for term, one in MISSING.items() if term != "unit_price" or term in layout.kinds}


def pass_over(con: duckdb.DuckDBPyConnection, layout: Layout, pieces: Sequence[Piece]) -> None:
    """Make the temporary table `doubtful`, those with a fault or with the key of another line, as terms."""
    wrong = " or ".join(
        [
            "unread",
            BAD_BREAKS,
            *(absent for _, _, absent in _needed(layout).values()),
            *(w for _, w, _, _ in CONTRADICTIONS.values()),
        ]
    )
    values = {"without_polarity": list(WITHOUT_POLARITY)}
    con.execute(
        f"""create or replace temp table passed as
        select line, hash(supplier, {OFFER_KEY}, first_quantity) as mark, ({wrong}) is true as wrong
        from ({typed_sql(con, layout, pieces)})""",
        values,
    )
    asked = """(from staged where line in (
        select line from passed where wrong or mark in (select mark from passed group by mark having count(*) > 1)))"""
    con.execute(f"create or replace temp table doubtful as {typed_sql(con, layout, pieces, asked)}")
    con.execute("drop table passed")


def _cells(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    con.execute(
        """insert into faults select line, '', '', array_to_string(cells, ' | '), 'cells',
            format('The line has {} cells, the heading line has {}. Look for a missing cell, or a separator inside '
                'a cell that should stand in quotation marks.', len(cells), $1)
        from damaged""",
        [len(layout.headings)],
    )


def _readings(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    for column in layout.columns:
        con.execute(
            f"""insert into faults
            select line, $1, {TERM_BY_SHAPE}, text, fault, reason
            from doubtful as typed join reading_{column.place} on printed[{column.place + 1}] = text
            where fault is not null""",
            [column.heading],
        )


def _missing(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    """What a line lacks; where a description should have stated it and leaves a doubt, that is the reason."""
    described = next((column for column in layout.columns if column.kind == "description"), None)
    for term, (what, kinds, absent) in _needed(layout).items():
        doubted = described is not None and term in IN_DESCRIPTIONS
        cell = f"coalesce(printed[{described.place + 1}], '')" if described and doubted else "''"
        reason = f"The line states no {what}, and no line is kept without it. Fill the cell in the list."
        con.execute(
            f"""insert into faults select line, if(is_doubt, $5, $1), $2, if(is_doubt, {cell}, ''),
                if(is_doubt, 'unreadable', 'missing'), if(is_doubt, value_doubt, $3)
            from (select *, $6 and value_doubt is not null as is_doubt from doubtful) as typed
            where {absent} and not exists (
                select 1 from faults where faults.line = typed.line
                    and (list_contains($4, faults.term) or (is_doubt and faults.reason = value_doubt)))""",
            [layout.headings_of(*kinds), term, reason, list(kinds), layout.headings_of("description"), doubted],
        )


def _breaks(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    con.execute(
        f"""insert into faults
        select line, $1, 'unit_price',
            array_to_string(list_transform(prices, lambda b: b."from" || '+: ' || b.price), ', '), 'breaks',
            'The price of one piece may not rise, and quantities must, from one price break to the next. '
            || 'Look for exchanged price cells.'
        from doubtful where {BAD_BREAKS}""",
        [layout.headings_of("unit_price")],
    )


def _contradictions(con: duckdb.DuckDBPyConnection, layout: Layout) -> None:
    for term, (kinds, wrong, found, reason) in CONTRADICTIONS.items():
        values: dict[str, object] = {"heading": layout.headings_of(*kinds), "term": term}
        if "$without_polarity" in wrong:
            values["without_polarity"] = list(WITHOUT_POLARITY)
        con.execute(
            f"""insert into faults select line, $heading, $term, {found}, 'contradiction', {reason}
            from doubtful where {wrong}""",
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
            from doubtful),
        kept as (
            select supplier, key, first_quantity, min(line) as first_line from keyed
            where line not in (select line from faults) group by all)
        select line, if(term = 'supplier_number', $1, $2), term, number, 'repeated',
            format('"{{}}" from {{}} pieces already stands in line {{}} of this list. Take one of the lines out.',
                number, first_quantity, first_line)
        from keyed join kept using (supplier, key, first_quantity) where line > first_line""",
        [layout.headings_of("supplier_number"), layout.headings_of("part_number")],
    )
