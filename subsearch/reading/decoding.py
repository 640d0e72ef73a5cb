"""The text of a file, whatever encoding it was saved in; what was not plain UTF-8 is said."""

import codecs
import re
from collections.abc import Sequence

from subsearch.errors import ListError
from subsearch.reading.encodings import Guess, guessed

MARKED = (  # the longer marks first: that of UTF-32 begins like that of UTF-16
    (codecs.BOM_UTF32_LE, "utf-32-le", "UTF-32"),
    (codecs.BOM_UTF32_BE, "utf-32-be", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16-le", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16-be", "UTF-16"),
)
FOREIGN = {
    b"PK\x03\x04": "a zip file or spreadsheet; save it with the ending .xlsx if it is one",
    b"\xd0\xcf\x11\xe0": "an old or password-protected office file; save it as CSV (UTF-8) or XLSX",
    b"%PDF": "a PDF; ask for the list as CSV or XLSX",
}
SAMPLE = 65_536
FEW = 20  # of so many signs one control sign may be: more is no text
BEHIND = r"[\u0080-\u00bf\u0152\u0153\u0160\u0161\u0178\u017d\u017e\u0192\u02c6\u02dc\u2013-\u203a\u20ac\u2122]"
TWICE = re.compile(rf"[ÂÃÄÅÎÏÐÑ]{BEHIND}|â{BEHIND}{{2}}|(?:[ãäåæçèéêëì]{BEHIND}{{2}}){{2,}}")
LEADS = "ÂÃÅÎÏÐÑâãåæçìêë"  # the quick look: without one of these, no text was saved twice
MANY = 1000  # lines that are not UTF-8; with so many the whole file is not
LOST = "\N{REPLACEMENT CHARACTER}"


def text_of(raw: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """The text of a file's bytes, and what is to be said of its encoding.

    raw: all bytes. name: the file's name, for sentences. UTF-8, UTF-16 and UTF-32 are known by their marks and their
    form; for any other encoding each one that the trade uses is tried and the one that gives words of the trade is
    taken, with a note. Raises ListError: no text, or none that makes sense in any of them.

    >>> text_of("C1;47 µF".encode("utf-16"), "list.csv")
    ('C1;47 µF', ())
    >>> text_of("C1;47 µF".encode("cp1252"), "list.csv")[1]
    ('The file is not UTF-8; it was read as Windows-1252, with "µF" in it. Look at such signs.',)
    """
    check_text(raw, name)
    for mark, encoding, spoken in MARKED:
        if raw.startswith(mark):
            return _strictly(raw[len(mark) :], encoding, spoken, name), ()
    if wide := _wide(raw):
        return _strictly(raw, wide, "UTF-16", name), ("The file is UTF-16 without a mark at its start.",)
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return _other(raw, name)
    return (text, ()) if text.isascii() else _put_right(text)


def _strictly(raw: bytes, encoding: str, spoken: str, name: str) -> str:
    try:
        return raw.decode(encoding)
    except UnicodeDecodeError as error:
        raise ListError(
            f'"{name}" begins as {spoken} text but can\'t be read so (byte {error.start + 1}). Save it as CSV (UTF-8).'
        ) from error


def _wide(raw: bytes) -> str:
    """UTF-16 without a mark: every second byte of a delimiter, a digit or a line end is 0."""
    sample = raw[:SAMPLE]
    low, high = sample[1::2].count(0), sample[0::2].count(0)
    if len(raw) % 2 or min(low, high) or max(low, high) < len(sample) / 20:
        return ""
    encoding = "utf-16-le" if low else "utf-16-be"
    return encoding if set(sample.decode(encoding, "replace")) & set(",;\t\n") else ""


def check_text(raw: bytes, name: str) -> None:
    """Raise ListError where bytes, or the first ones of a file, are no text in any encoding.

    raw: the bytes. name: the file's, for the sentence.

    >>> check_text(bytes(range(9)) * 9, "list.csv")
    Traceback (most recent call last):
    subsearch.errors.ListError: "list.csv" is not text: it holds binary data. Save the list as CSV (UTF-8) or XLSX.
    """
    for start, what in FOREIGN.items():
        if raw.startswith(start):
            raise ListError(f'"{name}" is not text but {what}.')
    if any(raw.startswith(mark) for mark, _, _ in MARKED) or _wide(raw):
        return
    sample = raw[:SAMPLE]
    control = sum(map(sample.count, (bytes([code]) for code in range(32) if code not in b"\t\r\n\f")))
    if control > len(sample) / FEW:
        raise ListError(f'"{name}" is not text: it holds binary data. Save the list as CSV (UTF-8) or XLSX.')


def _other(raw: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """Text that is not UTF-8 as a whole: a few lines of it may be, else all is in one older encoding."""
    lines = raw.splitlines(keepends=True)
    strange, right = _strange(lines)
    if right >= 2 * len(strange):
        guess = guessed(b"".join(lines[number] for number in strange))
        mixed = {number: lines[number].decode(guess.encoding) for number in strange}
        text = "".join(mixed.get(number) or line.decode("utf-8-sig") for number, line in enumerate(lines))
        return text, (f"{_lines(strange)} not UTF-8 as the rest is; read as {guess.spoken}{_look(guess)}",)
    guess = guessed(raw)
    if guess.poor:
        raise ListError(
            f'"{name}" is not UTF-8, and in no other encoding that is tried does it make sense (as {guess.spoken} it '
            f"would hold {' and '.join(_quoted(guess.words))}). Save it as CSV (UTF-8)."
        )
    return raw.decode(guess.encoding), (f"The file is not UTF-8; it was read as {guess.spoken}{_look(guess)}",)


def _strange(lines: Sequence[bytes]) -> tuple[list[int], int]:
    """The places of lines that are not UTF-8, and how many lines beyond ASCII are."""
    strange, right = [], 0
    for place, line in enumerate(lines):
        if line.isascii():
            continue
        if _is_utf8(line):
            right += 1
        else:
            strange.append(place)
            if len(strange) > MANY and right < len(strange):
                break
    return strange, right


def _is_utf8(line: bytes) -> bool:
    try:
        line.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True


def _lines(places: Sequence[int]) -> str:
    shown = ", ".join(str(place + 1) for place in places[:5]) + (" and more" if len(places) > 5 else "")
    return f"Line {shown} is" if len(places) == 1 else f"Lines {shown} are"


def _quoted(words: Sequence[str]) -> list[str]:
    return [f'"{word}"' for word in words]


def _look(guess: Guess) -> str:
    seen = f", with {' and '.join(_quoted(guess.words))} in it" if guess.words else ""
    other = f" It may be {guess.rival} instead{guess.rival_words}." if guess.rival else ""
    return f"{seen}.{other} Look at such signs."


def _put_right(text: str) -> tuple[str, tuple[str, ...]]:
    """Text that was saved as UTF-8 twice over, put right: "47ÂµF" is 47µF; and what is to be said of such signs."""
    notes = []
    if twisted := saved_twice(text):
        notes.append(
            f'The file was saved with mistaken signs: "{twisted[0]}" was read as "{_untwisted(twisted)}". Look at '
            "such signs."
        )
        text = TWICE.sub(_untwisted, text)
    if LOST in text:
        notes.append(f'The file holds "{LOST}" where a sign was lost before: fill in what stood there.')
    return text, tuple(notes)


def saved_twice(text: str) -> re.Match[str] | None:
    """The first sign of a text that was saved as UTF-8 twice over; None where there is none.

    text: decoded from UTF-8.

    >>> saved_twice("47ÂµF")[0], saved_twice("47 µF, côté")
    ('Âµ', None)
    """
    found = TWICE.finditer(text) if any(sign in text for sign in LEADS) else iter(())
    return next((one for one in found if _untwisted(one) != one[0]), None)


def _untwisted(found: re.Match[str]) -> str:
    for encoding in ("cp1252", "latin-1"):
        try:
            return found[0].encode(encoding).decode("utf-8")
        except UnicodeError:
            continue
    return found[0]
