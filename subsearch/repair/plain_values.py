"""Plain values as JSON gives them, taken one by one as what they must be."""

from typing import Any, TypeVar

from subsearch.errors import RepairError
from subsearch.reading.quoting import quoted

Kind = TypeVar("Kind")


def of_kind(found: Any, kind: type[Kind]) -> Kind:
    """The value itself where it is of that kind.

    Raises:
        RepairError: it is of another kind.

    >>> of_kind("47 µF", str)
    '47 µF'
    """
    if not isinstance(found, kind):
        raise RepairError(f"{quoted(repr(found))} stands where {NAMES[kind]} must stand")
    return found


NAMES = {str: "a text", list: "a list", dict: "a table", int: "a whole number"}


def member(found: Any, name: str, kind: type[Kind]) -> Kind:
    """The value of that name in a table, where it is of that kind.

    Raises:
        RepairError: there is no such table or value.

    >>> member({"cells": {}}, "cells", dict)
    {}
    """
    table = of_kind(found, dict)
    if name not in table:
        raise RepairError(f'"{name}" is missing')
    return of_kind(table[name], kind)


def several(found: Any, number: int) -> list[Any]:
    """The values of a list of so many.

    Raises:
        RepairError: it is no list, or one of another length.

    >>> several(["headroom_mm", 12.5], 2)
    ['headroom_mm', 12.5]
    """
    values = of_kind(found, list)
    if len(values) != number:
        raise RepairError(f"{quoted(repr(found))} stands where a list of {number} must stand")
    return values
