"""A file that is replaced as a whole or not at all, whatever happens while it is written."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory


@contextmanager
def replacing(file: Path) -> Iterator[Path]:
    """A file of the same name to write beside that one; it takes its place once the block has ended without an error.

    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "list.csv"
    ...     with replacing(file) as new:
    ...         _ = new.write_text("C1")
    ...     file.read_text(), [one.name for one in Path(folder).iterdir()]
    ('C1', ['list.csv'])
    """
    file = file.resolve()  # the file that a link leads to
    with TemporaryDirectory(prefix=".", dir=file.parent) as folder:
        new = Path(folder) / file.name
        yield new
        if file.exists():
            shutil.copymode(file, new)
        with new.open("rb+") as written:
            os.fsync(written.fileno())  # its text is on the disk before its name is
        new.replace(file)
