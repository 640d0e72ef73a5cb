"""A layout file read: where it stands, and every error in it as a sentence with its key and the nearest right word."""

import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from subsearch.catalog.heading_cells import Column, hint_of, order_of
from subsearch.catalog.headings import NAMES, SPOKEN, UNITS
from subsearch.catalog.saved_layouts import SavedLayout
from subsearch.errors import ListError, QuantityError, nearest, one_of
from subsearch.reading.currencies import read_currency
from subsearch.reading.spelling import plain_words
from subsearch.reading.toml_files import read_toml
from subsearch.reading.words import read_word
from subsearch.units import EXAMPLES

KEYS = ("heading_line", "decimal_mark", "currency", "shape", "columns")
COLUMN_KEYS = ("heading", "term", "unit", "from_quantity", "leave_out")


def layout_file(catalog: Path, supplier: str) -> Path:
    """Give where the layout of a supplier's lists stands: beside the catalog file.

    >>> layout_file(Path("shop/subsearch.duckdb"), "Grey Shed & Sons").as_posix()
    'shop/layouts/grey-shed-sons.toml'
    """
    name = re.sub(r"[^\w]+", "-", supplier.casefold()).strip("-_") or "supplier"
    return catalog.parent / "layouts" / f"{name}.toml"


def standing_layout(catalog: Path, supplier: str) -> SavedLayout | None:
    """Give the layout that stands beside the catalog for this supplier, or None. Raises ListError for a wrong one."""
    file = layout_file(catalog, supplier)
    return read_layout(file) if file.is_file() else None


def read_layout(file: Path) -> SavedLayout:
    """Give what a layout file says. Raises ListError with the file, the key and the nearest right word.

    file: a TOML file as `subsearch layout` writes it.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "a.toml"
    ...     _ = file.write_text('columns = [{heading = "Wert", term = "capacitance", unit = "uF"}]')
    ...     read_layout(file).columns
    (Column(place=0, heading='Wert', kind='capacitance_f', hint='u', from_quantity=None),)
    """
    if not file.is_file():
        raise ListError(f'There is no layout "{file}". Check the name, or write one with subsearch layout.')
    try:
        said = read_toml(file)
    except ValueError as error:
        raise ListError(
            f'"{file}" is not a layout: {error}. Texts stand in quotation marks, lists in brackets.'
        ) from error
    _check_keys(f'"{file}"', said, KEYS)
    columns = said.get("columns")
    if not isinstance(columns, list) or not all(isinstance(one, dict) for one in columns):
        raise ListError(
            f'"{file}", columns: a list of columns is wanted, like {{ heading = "Wert", term = "capacitance_f" }}.'
        )
    return SavedLayout(
        file,
        _line(file, said),
        _mark(file, said),
        _currency(file, said),
        _shape(file, said),
        tuple(_column(f'"{file}", column {place + 1}', place, one) for place, one in enumerate(columns)),
    )


def _check_keys(where: str, said: Mapping[str, Any], allowed: Sequence[str]) -> None:
    for key in said:
        if key not in allowed:
            raise ListError(
                f'{where}: "{key}" is not a key of a layout.{nearest(key, allowed)} Allowed are {one_of(allowed)}.'
            )


def _line(file: Path, said: Mapping[str, Any]) -> int | None:
    line = said.get("heading_line")
    if line is not None and (type(line) is not int or line < 1):
        raise ListError(f'"{file}", heading_line: {line!r} is not a line of a list. Write its number, like 2.')
    return line


def _mark(file: Path, said: Mapping[str, Any]) -> str:
    mark = said.get("decimal_mark", "")
    if mark not in ("", ".", ","):
        raise ListError(f'"{file}", decimal_mark: {mark!r} is none. Write "," or ".", or take it out.')
    return str(mark)


def _currency(file: Path, said: Mapping[str, Any]) -> str | None:
    if "currency" not in said:
        return None
    try:
        return read_currency(str(said["currency"]))
    except QuantityError as error:
        raise ListError(f'"{file}", currency: {error}') from error


def _shape(file: Path, said: Mapping[str, Any]) -> str:
    try:
        return read_word("shape", str(said["shape"])) if "shape" in said else ""
    except QuantityError as error:
        raise ListError(f'"{file}", shape: {error}') from error


def _column(where: str, place: int, said: Mapping[str, Any]) -> Column:
    _check_keys(where, said, COLUMN_KEYS)
    heading = said.get("heading")
    if not isinstance(heading, str):
        raise ListError(f'{where}: heading is missing. Write it as it stands in the list, like heading = "Wert".')
    where = f'{where}, "{heading}"'
    if said.get("leave_out", False) is True or ("term" not in said and "leave_out" in said):
        return Column(place, heading, "")
    kind = _kind(where, said.get("term"))
    quantity = said.get("from_quantity")
    if quantity is not None and (type(quantity) is not int or quantity < 1 or kind != "unit_price"):
        raise ListError(
            f"{where}, from_quantity: {quantity!r} is wrong. It is a whole number, and of a unit_price only."
        )
    return Column(place, heading, kind, _hint(where, kind, said.get("unit", "")), quantity)


def _kind(where: str, term: object) -> str:
    if not isinstance(term, str):
        raise ListError(f"{where}: term is missing. Name what its cells state, or write leave_out = true.")
    if plain_words(term) not in NAMES:
        hint = nearest(term, (*SPOKEN, *NAMES))
        raise ListError(f'{where}, term: "{term}" is not a term of the catalog.{hint} Or write leave_out = true.')
    return NAMES[plain_words(term)][0]


def _hint(where: str, kind: str, unit: object) -> str:
    """What the unit says of bare numbers: a prefix, the order of a size, a currency and for how many pieces."""
    if unit == "":
        return ""
    hint = None
    if kind == "unit_price" and (found := re.fullmatch(r"(\D*?)\s*(?:/\s*(10|100|1000))?", str(unit))):
        hint = "" if not found[1] else _price_currency(where, found[1])
        return hint + (f"/{found[2]}" if found[2] else "")
    if kind == "size":
        hint = order_of(str(unit))
    hint = hint_of(kind, str(unit)) if hint is None else hint
    if hint is None:
        wanted = UNITS.get(kind, "")
        like = f" Write it like in {EXAMPLES[wanted]}." if wanted in EXAMPLES and wanted else " It has none."
        raise ListError(f'{where}, unit: "{unit}" is not a unit of {kind}.{like}')
    return hint


def _price_currency(where: str, written: str) -> str:
    try:
        return read_currency(written)
    except QuantityError as error:
        raise ListError(f"{where}, unit: {error}") from error
