"""One part and its offer, typed in by hand: a list of one line, taken in, checked and merged as any other list."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from hashlib import sha256
from pathlib import Path

import duckdb

from subsearch.catalog.facts import refusals
from subsearch.catalog.faults import OFFER_KEY
from subsearch.catalog.heading_cells import read_heading
from subsearch.catalog.intake import Intake, take_in
from subsearch.catalog.layouts import NEEDED
from subsearch.catalog.merging import rebuild
from subsearch.catalog.rates import stored_rates
from subsearch.catalog.store import open_to_write
from subsearch.catalog.typed import DRAWER, FIELDS, NO_SUPPLIER, TYPED_IN, TypedError, supplier_named
from subsearch.errors import nearest
from subsearch.reading.rows import Row, Table


def record(path: Path, supplier: str, cells: Mapping[str, str], *, seen: date | None = None) -> Intake:
    """Give what came of one typed part; the offer replaces the one this supplier had for this part and condition.

    path: the catalog file, made if absent. supplier: who sells it; "own drawer" is the builder's, where the price is
    0 in the builder's own currency. cells: texts by term or heading; an empty one is not stated. seen: the day the
    offer was seen. Anything raised leaves the catalog as it was: TypedError with a sentence for each fault,
    CatalogError for the catalog file.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     cells = {"Part number": "Hollow 1", "Capacitance": "4,7 µF", "Voltage": "63 V", "Stock": "3"}
    ...     done = record(Path(folder) / "c", "own drawer", cells)
    ...     done.number, done.supplier, done.kept
    (1, 'own drawer', 1)
    """
    supplier = supplier_named(supplier)
    if not supplier:
        raise TypedError(NO_SUPPLIER)
    kinds = _kinds(cells)
    _check_kinds(supplier, kinds)
    table = _table(supplier, kinds, cells)
    mark = sha256(repr((supplier, table.rows)).encode()).hexdigest()
    with open_to_write(path) as con:
        own = next((rate.currency for rate in stored_rates(con)), None) if supplier == DRAWER else None
        taken = take_in(con, table, mark, supplier, seen, own)
        _check_taken(con, taken)
        notes = _notes(con, taken, "condition" in kinds)
        rebuild(con)
    return replace(taken, notes=notes)


def _kinds(cells: Mapping[str, str]) -> dict[str, str]:
    """The heading of each kind that is stated."""
    kinds: dict[str, str] = {}
    for heading, text in cells.items():
        column = read_heading(0, heading)
        if column is None:
            hint = nearest(heading, [field.heading.lower() for field in FIELDS])
            raise TypedError(f'"{heading}" names nothing that can be recorded.{hint}')
        if text.strip() and (first := kinds.setdefault(column.kind, heading)) is not heading:
            raise TypedError(f'"{first}" and "{heading}" both mean {column.kind}. Leave one out.', [first, heading])
    return kinds


def _check_kinds(supplier: str, kinds: Mapping[str, str]) -> None:
    if "size" in kinds and "shape" not in kinds:
        raise TypedError(
            "A size means nothing without the shape of the body. Say can, box or axial too, or leave the size out.",
            ["Shape", kinds["size"]],
        )
    if "date_bought" in kinds and supplier != DRAWER:
        raise TypedError(
            f'Only your own drawer has a day on which a part was bought; the supplier here is "{supplier}". '
            "Leave that day out.",
            [kinds["date_bought"]],
        )


def _table(supplier: str, kinds: Mapping[str, str], cells: Mapping[str, str]) -> Table:
    """The list of one line: what is stated, and an empty cell for what is needed, so that the intake refuses it."""
    line = {heading: cells[heading] for heading in kinds.values()}
    if supplier == DRAWER:
        line |= {} if "unit_price" in kinds else {"Price": "0"}
        line |= {} if "condition" in kinds else {"Condition": ""}  # old parts lie there: never taken for new unasked
    held = {*kinds, *(["rated_v"] if "rated_ac_v" in kinds else []), *(["unit_price"] if supplier == DRAWER else [])}
    headings = {field.kind: field.heading for field in FIELDS}
    line |= {headings[kind]: "" for kind in NEEDED if kind not in held}
    return Table(Path(TYPED_IN), [Row(1, tuple(line)), Row(2, tuple(line.values()))], (), ragged=False)


def _check_taken(con: duckdb.DuckDBPyConnection, taken: Intake) -> None:
    if faults := refusals(con, taken.number):
        said = " ".join(f"{fault.heading}: {fault.reason}" if fault.heading else fault.reason for fault in faults)
        by_heading: dict[str, list[str]] = {}
        for fault in faults:
            for heading in fault.heading.split(" / "):
                by_heading.setdefault(heading, []).append(fault.reason)
        raise TypedError(said, {heading: " ".join(reasons) for heading, reasons in by_heading.items()})
    (price,) = con.execute("select prices[1].price from listing where intake = $1", [taken.number]).fetchall()[0]
    if taken.supplier == DRAWER and price:
        raise TypedError(
            f"What lies in your own drawer costs nothing, not {price.normalize():f}. Leave the price out, or name "
            "the supplier who asks it.",
            ["Price"],
        )
    other = con.execute(
        """select supplier_number, concat_ws(' ', part.maker, part.part_number)
        from offer join part using (pk) join listing using (supplier, supplier_number)
        where intake = $1 and (part.part_number <> listing.part_number or part.maker is distinct from listing.maker)
        order by all limit 1""",
        [taken.number],
    ).fetchall()
    for number, part in other:  # the newest line with a supplier's number lives: the other part would be gone
        raise TypedError(
            f'The order code "{number}" of {taken.supplier} already belongs to {part}. Give another, or leave it out.',
            ["Order code"],
        )


def _notes(con: duckdb.DuckDBPyConnection, taken: Intake, said: bool) -> tuple[str, ...]:
    condition, stock, currency, before = con.execute(
        f"""with keyed as (
            select listing.*, {OFFER_KEY} as key,
                if(file = $2 and supplier_number is null, part_number, null) as by_hand
            from listing join intake using (intake)),
        new as (from keyed where intake = $1)
        select new.condition, new.stock, new.currency, max(old.intake)
        from new left join keyed old on old.supplier = new.supplier and old.intake < new.intake
            and (old.key = new.key or (old.by_hand = new.by_hand and old.maker is not distinct from new.maker))
        group by all""",
        [taken.number, TYPED_IN],
    ).fetchall()[0]
    notes = {
        f"It replaces this supplier's offer of intake {before}.": before is not None,
        "The condition is not stated, so searches show the part as open.": condition is None,
        "No condition was typed, so it counts as new.": condition == "new" and not said,
        "The stock is not stated, so searches show the part as open.": stock is None,
        "It has no currency, so its cost is never compared. Load rates or name one, and add it again.": not currency,
    }
    return tuple(note for note, holds in notes.items() if holds)
