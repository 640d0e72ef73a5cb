"""Text files that can be cut line by line, told in one pass that keeps only their beginning.

A large list then need not stand in memory as rows. What is told here is only what a reading line by line needs; any
file of which it can't be told is read as rows, to the same result.
"""

import codecs
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from itertools import islice
from pathlib import Path
from tempfile import TemporaryDirectory

from subsearch.errors import ListError
from subsearch.reading.decoding import LOST, SAMPLE, check_text, saved_twice, text_of
from subsearch.reading.rows import HEAD_TEXT, TEXT_FILES, Row, csv_rows, delimiter_of

BLOCK = 1 << 19  # bytes; each holds the end of a line, so that no line is longer than two of them
HEAD_ROWS = 100
TAIL = 4  # characters; a twisted sign may reach from one block into the next
INSIDE = "\x1f"  # stands for a delimiter inside quotation marks while a line is cut
NOWHERE = "\x01"  # in no such file


@dataclass(frozen=True)
class PlainFile:
    """A list of lines that all end alike: its delimiter, its first rows, and whether it has quotation marks.

    content: where its text stands in UTF-8; the file itself, or a copy.
    """

    file: Path
    content: Path
    delimiter: str
    quoted: bool
    rows: list[Row]
    notes: tuple[str, ...] = ()
    ragged: bool = True


@contextmanager
def plain_file(file: Path) -> Iterator[PlainFile | None]:
    """Give what a reading of a text file line by line needs, or None where it is to be read as rows.

    file: a path. A text in another encoding, or with other ends of lines, is copied for the time being. Raises
    ListError for a file that holds no text, as reading its rows does.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     file = Path(folder) / "list.csv"
    ...     _ = file.write_text("number;value\\n\\nA 1;4,7 uF\\n")
    ...     with plain_file(file) as plain:
    ...         plain.delimiter, plain.quoted, plain.rows[1]
    (';', False, Row(line=3, cells=('A 1', '4,7 uF')))
    """
    file = Path(file)
    if file.suffix.lower() not in TEXT_FILES or not file.is_file() or not file.stat().st_size:
        yield None
        return
    with file.open("rb") as bytes_of:
        check_text(bytes_of.read(SAMPLE), file.name)
    if plain := _told(file):
        yield plain
    else:
        text, notes = text_of(file.read_bytes(), file.name)
        with TemporaryDirectory() as folder:
            copy = Path(folder) / file.name
            copy.write_text(text.replace("\r\n", "\n").replace("\r", "\n"), encoding="utf-8-sig", newline="")
            del text
            plain = _told(copy)
            yield replace(plain, file=file, notes=notes) if plain else None


def _told(file: Path) -> PlainFile | None:
    try:
        begun = _scanned(file)
    except UnicodeDecodeError:
        return None
    if begun is None:
        return None
    head, whole, quoted = begun
    delimiter = delimiter_of(head)
    sure = head if whole else head[: head.rfind("\n") + 1]
    try:
        rows = list(islice(csv_rows(sure, delimiter, file.name), HEAD_ROWS))
    except ListError:
        return None
    if not rows or (not whole and len(rows) < HEAD_ROWS):
        return None
    return PlainFile(file, file, delimiter, quoted, rows)


def _scanned(file: Path) -> tuple[str, bool, bool] | None:
    """The beginning of the text, whether it is all, and whether there are quotation marks; None: not to be cut."""
    decoder = codecs.getincrementaldecoder("utf-8-sig")()
    head, length, whole, quoted, inside, returns, pairs, ends = [], 0, True, False, False, 0, 0, 0
    last, tail = b"", ""
    with file.open("rb") as bytes_of:
        while block := bytes_of.read(BLOCK):
            if b"\0" in block or NOWHERE.encode() in block or (len(block) == BLOCK and b"\n" not in block):
                return None
            text = decoder.decode(block)
            if not text.isascii() and (LOST in text or saved_twice(tail + text)):
                return None
            tail = text[-TAIL:]
            if length < HEAD_TEXT:
                head.append(text)
                length += len(text)
            else:
                whole = False
            quoted, inside = quoted or b'"' in block, inside or INSIDE.encode() in block
            if b"\r" in block or last == b"\r":
                returns, pairs = returns + block.count(b"\r"), pairs + (last + block).count(b"\r\n")
            ends += block.count(b"\n")
            last = block[-1:]
    decoder.decode(b"", final=True)
    if returns != pairs or pairs not in (0, ends) or (quoted and inside):
        return None
    return "".join(head), whole, quoted
