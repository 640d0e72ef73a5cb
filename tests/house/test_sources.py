"""Publishers' and makers' names have one home, and no file speaks of a machine or of how it was written."""

import csv
import html
import re
import zipfile
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path

from house.common import ROOT, Fault, assert_none, kept_files

from subsearch.formulas.sources import NONE, SOURCES

HOME = ROOT / "subsearch" / "formulas" / "sources.py"
PUBLISHED = sorted((ROOT / "tests" / "published").glob("*.csv"))
PICTURES = (".png", ".jpg", ".gif", ".ico", ".woff2")
ORDINARY = set(
    re.findall(
        r"\w+",
        "all aluminum arithmetic bench capacitor cpu definition der division elektronik elko emc engineering esr exp "
        "faq first halving hobby hole how japanese lifetime manual noise notes order plus safe technical v0 db "
        "com de htm jp net or org din ipc mil hdbk notice simulation 217f storage general pcb "
        "mkp",  # the short sign of a standard (DIN 41379) for metallised polypropylene
    )
)
# Each pattern has a bracket inside, so that it does not match the line it stands in.
MACHINE = re.compile(
    r"(?<![\w.~])/(?:work|root|farm|home|tmp|Users)/|\b[A-Z]:\\Users|(?i:\b[p]ypi\.org|python[h]osted|[a]naconda\.(?:org|com)"
    r"|[c]onda-forge|[n]pmjs|[r]egistry\.npm|proxy\.[g]olang|[i]ndex-url|[t]rusted-host|[a]rtifactory)"
)
MAKING = re.compile(
    r"(?i:\b(?:[a]gents?|[s]ubagents?|[a]ssistants?|[h]elpers?|[i]ssues?|[b]riefs?|[c]ontracts?|[m]ilestones?"
    r"|[l]anguage models?|[c]hatbots?|[c]opilot|[c]laude|[a]nthropic|[o]penai|\w*[g]pt|[c]o-authored|[g]enerated by"
    r"|[a]s (?:requested|instructed)|[t]he user (?:asked|wants)|(?:[f]acts|[d]esign|[s]creen|[s]peed)\.md)\b)"
    r"|\b(?:[A]I|[L]LMs?|[T]ODO|[F]IXME)\b"
)


def names_in(source: str) -> Iterator[str]:
    """The words of a source that are names: capitalised ones and parts of addresses, but for ordinary words."""
    for piece in source.split():
        if re.search(r"[A-Z]|[a-z]\.[a-z]{2}", piece):
            for word in words_of(piece):
                if len(word) > 1 and not word.isdigit() and word.casefold() not in ORDINARY:
                    yield word


def words_of(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text)


def rows_of(file: Path) -> list[dict[str, str]]:
    with file.open(newline="", encoding="utf-8") as text:
        return list(csv.DictReader(text))


def all_names() -> set[str]:
    published = [source for source in SOURCES.values() if source.publisher != NONE]  # other titles are our own words
    sources = [f"{source.publisher} {source.title}" for source in published]
    sources += [row["source"] for file in PUBLISHED for row in rows_of(file)]
    return {name for source in sources for name in names_in(source)}


def named(text: str, names: set[str]) -> Iterator[Fault]:
    """Lines with one of the names; those of up to three letters as written, longer ones in any case."""
    long = {name.casefold() for name in names if len(name) > 3}
    short = {name for name in names if len(name) <= 3}
    for number, line in enumerate(text.splitlines(), 1):
        words = words_of(line)
        for word in sorted({word.casefold() for word in words} & long | set(words) & short):
            yield number, f"names {word}"


def telling(text: str, pattern: re.Pattern[str]) -> Iterator[Fault]:
    """Lines that match a pattern."""
    for number, line in enumerate(text.splitlines(), 1):
        yield from ((number, f'says "{found[0]}"') for found in pattern.finditer(line))


@cache
def text_of(file: Path) -> str:
    """What a person reads in a file; a spreadsheet's cells and properties; a notebook without its pictures."""
    if file.suffix == ".xlsx":
        with zipfile.ZipFile(file) as parts:
            tagged = "\n".join(parts.read(name).decode("utf-8") for name in parts.namelist())
        return html.unescape(re.sub(r"<[^>]*>", "\n", tagged))
    raw = file.read_bytes()
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError:
        text = raw.decode("cp1252")
    return re.sub(r"[A-Za-z0-9+/=]{200,}", "", text)


def beside_its_sources(file: Path) -> str:
    """The text in which no publisher may be named."""
    if file in PUBLISHED:  # one line for the headings, one for each row
        return "\n" + "\n".join(" ".join(v for k, v in row.items() if k != "source") for row in rows_of(file))
    return "" if file == HOME else text_of(file)


def faults_of_texts(check: Callable[[str], Iterable[Fault]], read: Callable[[Path], str] = text_of) -> Iterator[str]:
    for file in kept_files():
        if file.suffix not in PICTURES:
            yield from (f"{file.relative_to(ROOT)}:{line} {what}" for line, what in check(read(file)))


def test_publishers_are_named_in_their_home_only() -> None:
    names = all_names()
    assert len(names) > 20
    assert_none(faults_of_texts(lambda text: named(text, names), beside_its_sources))


def test_no_machine_and_no_registry() -> None:
    assert_none(faults_of_texts(lambda text: telling(text, MACHINE)))


def test_no_word_of_how_it_was_written() -> None:
    assert_none(faults_of_texts(lambda text: telling(text, MAKING)))


def test_names_can_be_found() -> None:
    assert list(names_in("Technical notes on life, Quillmoor Q7 (quillmoor.example) page 12")) == [
        *("Quillmoor", "Q7", "quillmoor", "example")
    ]
    assert list(named("fine\nlike QUILLMOOR_x and Q7", {"Quillmoor", "Q7"})) == [
        (2, "names Q7"),
        (2, "names quillmoor"),
    ]
    assert not list(named("q7 is no code here", {"Quillmoor", "Q7"}))
    assert all(list(named(f"as in {name}'s list", {name})) for name in all_names())


def test_spreadsheets_and_old_encodings_are_read(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "a.xlsx", "w") as parts:
        parts.writestr("sharedStrings.xml", "<t>Quill&amp;moor</t>")
    (tmp_path / "b.csv").write_bytes("Größe".encode("cp1252"))
    assert text_of(tmp_path / "a.xlsx").strip() == "Quill&moor"
    assert text_of(tmp_path / "b.csv") == "Größe"
    published = beside_its_sources(PUBLISHED[0])
    assert rows_of(PUBLISHED[0])[0]["id"] in published
    assert not any(row["source"] in published for row in rows_of(PUBLISHED[0]) if any(names_in(row["source"])))


def test_telling_can_fail() -> None:
    for spoilt in ("/ro ot/x", "see (/wo rk/main)", "C:\\Us ers\\me", "https://py pi.org/simple", "--ind ex-url x"):
        assert list(telling(spoilt.replace(" ", ""), MACHINE)), spoilt
    for spoilt in ("an A/I wrote it", "see the iss/ue", "Hel/pers did", "as in des/ign.md", "Chat/G/PT", "TO/DO"):
        assert list(telling(spoilt.replace("/", ""), MAKING)), spoilt
    assert not list(telling("frame/work/x is at https://a.example/home/", MACHINE))
    assert not list(telling("Al electrolytic, briefly reissued", MAKING))
