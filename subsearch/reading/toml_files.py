"""Files that a builder writes by hand in TOML: a repair's settings, a supplier's layout."""

import tomllib
from pathlib import Path
from typing import Any


def read_toml(file: Path) -> dict[str, Any]:
    """What a TOML file says by its keys.

    Raises:
        ValueError: it is not UTF-8, or no TOML. The text is a part of a sentence that says where.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "repair.toml"
    ...     _ = file.write_text('name = "Hollow radio"', encoding="utf-8")
    ...     read_toml(file)
    {'name': 'Hollow radio'}
    """
    try:
        return tomllib.loads(file.read_text(encoding="utf-8-sig"))
    except UnicodeDecodeError as error:
        line = error.object[: error.start].count(b"\n") + 1
        raise ValueError(f"line {line} holds a sign that is not UTF-8; save the file as UTF-8") from error
