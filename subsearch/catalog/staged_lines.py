"""The data lines of a list as the temporary tables `staged`, a column a cell, and `damaged`, with too few or too many.

Rows that were read are handed over; a plain file is cut by the database itself, in half the time and memory. Both ways
give the same lines, which is tested.
"""

import re
from collections.abc import Iterator, Sequence
from itertools import count
from pathlib import Path

import duckdb

from subsearch.catalog.frames import into_table
from subsearch.catalog.layouts import Layout
from subsearch.errors import ListError
from subsearch.reading.plain_files import INSIDE, NOWHERE, PlainFile
from subsearch.reading.rows import Row, Table, csv_rows
from subsearch.reading.spaces import SPACES

AT_ONCE = 20_000  # lines handed over at once: bounds what is held in memory twice
LONGEST_LINE = 4_000_000  # bytes; a plain file has none longer than two of its blocks
LINES_OF_FILE = f"""select row_number() over () as line, text from read_csv($file, columns = {{'text': 'VARCHAR'}},
    auto_detect = false, header = false, delim = '{NOWHERE}', quote = '', escape = '', comment = '', nullstr = '',
    max_line_size = {LONGEST_LINE}, compression = 'none', hive_partitioning = false, encoding = 'utf-8')"""
# Inside quotation marks a delimiter is put aside, then the line is cut, then it is put back.
WITHOUT_MARKS = """list_transform(string_split(array_to_string(list_transform(string_split(text, '"'),
    lambda piece, place: if(place % 2 = 0, replace(piece, $delimiter, $inside), piece)), ''), $delimiter),
    lambda cell: replace(cell, $inside, $delimiter))"""
CELLS = f"""case how when 'bare' then string_split(text, $delimiter) when 'marked' then {WITHOUT_MARKS} end"""


def stage_lines(con: duckdb.DuckDBPyConnection, source: Table | PlainFile, layout: Layout) -> int | None:
    """Put the lines below the heading line into `staged` (line, c0, c1, …) and `damaged` (line, cells); their number.

    con: connection to a catalog, inside a transaction. source: the list. layout: which line is the heading line.
    None, and nothing staged: the quotation marks of a plain file reach over lines or don't match; read it as rows.
    """
    width = len(layout.headings)
    if isinstance(source, PlainFile):
        _cut_file(con, source, layout.line, width)
        if not _cut_odd_lines(con, source, width):
            con.execute("drop table staged")
            return None
    else:
        rows = [row for row in source.rows if row.line > layout.line]
        width = width if source.ragged else max([width, *(len(row.cells) for row in rows)])
        _cut_rows(con, rows, width, pad=not source.ragged)
    return _put_damaged_aside(con)


def _cut(lines: str, cells: str, width: int, odd: str = "null") -> str:
    """Lines (line, text, …) as columns; the cells of a damaged line in `torn`, a line that is cut later in `odd`."""
    columns = ", ".join(f"cells[{place + 1}] as c{place}" for place in range(width))
    return f"""select line::integer as line, {columns}, if(len(cells) = {width}, null, cells) as torn, odd
        from (select line, {cells} as cells, {odd}::varchar as odd from ({lines}))"""


def _cut_file(con: duckdb.DuckDBPyConnection, plain: PlainFile, heading: int, width: int) -> None:
    """All lines but the blank ones; those with quotation marks that stand otherwise than around cells are odd."""
    sign = re.escape(plain.delimiter)
    something = f'[^{SPACES}{sign}"]'
    simple = f'(?:[^"{sign}]*|"[^"]*")(?:{sign}(?:[^"{sign}]*|"[^"]*"))*'
    whole = f"""(from ({LINES_OF_FILE})
        where line > $heading and (regexp_matches(text, $something) or contains(text, '"')))"""
    values = {
        "file": _as_name(plain.content), "heading": heading, "something": something, "delimiter": plain.delimiter,
    }  # fmt: skip
    if plain.quoted:
        how = """case when not contains(text, '"') then 'bare' when regexp_matches(text, $something)
            and regexp_full_match(text, $simple) then 'marked' else 'odd' end"""
        cut = _cut(f"select line, text, {how} as how from {whole}", CELLS, width, odd="if(how = 'odd', text, null)")
        values |= {"inside": INSIDE, "simple": simple}
    else:
        cut = _cut(f"from {whole}", "string_split(text, $delimiter)", width)
    con.execute(f"create or replace temp table staged as {cut}", values)


def _as_name(file: Path) -> str:
    """The path of a file, not a pattern of several."""
    return re.sub(r"([*?\[])", r"[\1]", str(file.absolute()))


def _cut_odd_lines(con: duckdb.DuckDBPyConnection, plain: PlainFile, width: int) -> bool:
    """Cut these as rows are cut, each line by itself; whether that can be done."""
    odd = con.execute("select line, odd from staged where odd is not null").fetchall() if plain.quoted else []
    if not odd:
        return True
    try:
        rows = [Row(line, row.cells) for line, text in odd for row in csv_rows(text, plain.delimiter, plain.file.name)]
    except ListError:
        return False
    con.execute("delete from staged where odd is not null")
    _cut_rows(con, rows, width, pad=False, more=True)
    con.execute("create or replace temp table staged as from staged order by line")
    return True


def _cut_rows(con: duckdb.DuckDBPyConnection, rows: Sequence[Row], width: int, pad: bool, more: bool = False) -> None:
    """Rows as lines of text, cut again by the database: quicker than handing over cell by cell."""
    types = {"line": "INTEGER", "text": "VARCHAR"}
    for start in range(0, len(rows) or 1, AT_ONCE):
        some = rows[start : start + AT_ONCE]
        sign = _sign_in_none(some)
        texts = [sign.join(row.cells) + sign * (width - len(row.cells) if pad else 0) for row in some]
        into_table(con, "handed", types, {"line": [row.line for row in some], "text": texts})
        cut = _cut("from handed", "string_split(text, $sign)", width)
        begin = "insert into staged" if more or start else "create or replace temp table staged as"
        con.execute(f"{begin} {cut}", {"sign": sign})
    con.execute("drop table handed")


def _sign_in_none(rows: Sequence[Row]) -> str:
    """A character that stands in no cell of these rows."""
    used = set("".join("".join(row.cells) for row in rows))
    signs: Iterator[str] = (chr(code) for code in count(1) if not 0xD800 <= code < 0xE000)
    return next(sign for sign in signs if sign not in used)


def _put_damaged_aside(con: duckdb.DuckDBPyConnection) -> int:
    con.execute("create or replace temp table damaged as select line, torn as cells from staged where torn is not null")
    (lines,) = con.execute("select count(*) from staged").fetchall()[0]
    con.execute("delete from staged where torn is not null")
    con.execute("alter table staged drop column torn")
    con.execute("alter table staged drop column odd")
    return int(lines)
