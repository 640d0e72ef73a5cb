"""Whatever is wrong, a command ends with its status and one sentence, never in a traceback, and spoils nothing."""

import csv
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import duckdb
import pytest
from cli.bad_inputs import BAD, HEADINGS, LIST, ROW, TOML, Bad
from cli.common import SHED, Said, Say, said_by_process, write_repair

COMMANDS = {
    "load": ("load", "shed.csv"),
    "rates": ("rates", "rates.csv"),
    "find": ("find", "--capacitance", "47 µF"),
    "repair": ("repair", "good"),
}
HOLD = "import duckdb, sys; con = duckdb.connect(sys.argv[1]); print('held', flush=True); sys.stdin.read()"


def lay_out(bench: Path, bad: Bad) -> None:
    write_repair(bench / "good", f"{HEADINGS}\n{ROW}\n", TOML)
    whole = (bench / "subsearch.duckdb").read_bytes()
    (bench / "half.duckdb").write_bytes(whole[: len(whole) // 2])
    duckdb.connect(bench / "other.duckdb").execute("create table part (pk integer)").close()
    for name, text in bad.files.items():
        (bench / name).parent.mkdir(parents=True, exist_ok=True)
        (bench / name).write_bytes(text if isinstance(text, bytes) else text.encode())


def as_it_is(folder: Path) -> dict[str, bytes]:
    return {str(file.relative_to(folder)): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def check(said: Said, bad: Bad) -> None:
    assert "Traceback" not in said.out + said.err
    assert bad.sentence in said.words
    assert said.status == bad.status
    if said.status >= 3:
        assert said.out == ""
        assert said.err.startswith("error: ")
        assert said.err.count("\n") == 1


CASES = [pytest.param(bad, id=name) for name, bad in BAD.items()]


@pytest.mark.parametrize("bad", CASES)
def test_what_is_said_of_it(bad: Bad, bench: Path, say: Say) -> None:
    lay_out(bench, bad)
    before = as_it_is(bench)
    check(say(*bad.args), bad)
    left = as_it_is(bench)
    left.pop("o/shopping-list.csv", None)  # the list is written before the page
    assert left == before


def test_names_with_brackets_are_said_as_they_are(bench: Path, say: Say) -> None:
    said = say("load", "[bold]gone[/bold].csv")
    assert (said.status, said.err) == (
        3,
        'error: There is no file "[bold]gone[/bold].csv". Check the name and the folder.\n',
    )
    assert '"[red]47[/red]"' in say("find", "--capacitance", "[red]47[/red]").words


@pytest.fixture
def held(bench: Path) -> Iterator[Path]:
    """A catalog that another process has open to write."""
    catalog = bench / "subsearch.duckdb"
    with subprocess.Popen(
        [sys.executable, "-c", HOLD, str(catalog)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        yield catalog
        holder.communicate()


def test_a_catalog_held_by_another_process(held: Path, bench: Path, say: Say) -> None:
    write_repair(bench / "good", f"{HEADINGS}\n{ROW}\n", TOML)
    for words in COMMANDS.values():
        said = say(*words)
        assert said.status == 4
        assert 'The catalog "subsearch.duckdb" is held by another process (PID ' in said.err
        assert "Wait until its load has ended, or close it there." in said.err


LATE = {
    "missing": "gone.csv",
    "no price": "bad.csv",
    "binary": "bad.xlsx",
}


@pytest.mark.parametrize("last", LATE.values(), ids=LATE)
def test_a_load_that_fails_half_way_changes_nothing(last: str, bench: Path, say: Say) -> None:
    (bench / "good.csv").write_text(LIST, encoding="utf-8")
    (bench / "bad.csv").write_text(LIST.replace("Price", "Shelf"), encoding="utf-8")
    (bench / "bad.xlsx").write_bytes(b"PK\x03\x04 and no more")
    before = as_it_is(bench)
    assert say("load", "good.csv", "shed.csv", last).status == 3
    assert as_it_is(bench) == before
    assert say("load", "good.csv", last, "--catalog", "new.duckdb").status == 3
    assert as_it_is(bench) == before


def test_rates_that_fail_change_nothing(bench: Path, say: Say) -> None:
    (bench / "bad.csv").write_text("currency,worth,dated\nEUR,1,\nGBP,,\n", encoding="utf-8")
    before = as_it_is(bench)
    assert say("rates", "bad.csv").status == 3
    assert say("rates", "bad.csv", "--catalog", "new.duckdb").status == 3
    assert as_it_is(bench) == before


HOSTILE = (
    "<script>alert(1)</script>", '"><img src=x onerror="alert(1)">', "'); drop table part; --", "{{ 7 * 7 }}",
    "=cmd|' /C calc'!A0", "+1+1", "-2+3", "@SUM(A1)", "[red]bold[/red]", "&amp; \\ %s {0}",
)  # fmt: skip


class Tags(HTMLParser):
    """The names and attributes of all tags of a page, and its text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.attributes: set[str] = set()
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        self.attributes |= {name for name, _ in attrs}

    def handle_data(self, data: str) -> None:
        self.text += data


@pytest.fixture
def hostile(bench: Path, say: Say) -> tuple[Path, Said]:
    """A repair and a list in which every text is a trap."""
    traps = [(f"{trap}", number) for number, trap in enumerate(HOSTILE)]
    with (bench / "=trap.csv").open("w", encoding="utf-8", newline="") as out:
        rows = list(csv.reader(SHED.splitlines()))
        writer = csv.writer(out)
        writer.writerow(rows[0])
        writer.writerows([trap, trap, trap, *rows[1][3:5], 10 + 2 * number, *rows[1][6:]] for trap, number in traps)
    folder = bench / "traps"
    folder.mkdir()
    (folder / "repair.toml").write_text(f"name = '''{HOSTILE[0]}'''\nstory = '''{HOSTILE[1]}'''\n", encoding="utf-8")
    with (folder / "positions.csv").open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out)
        texts = ("reference", "marking", "sections", "plus_towards", "match_group", "visual", "note")
        writer.writerow([*texts, "capacitance", "pinned_maker", "pinned_part_number"])
        writer.writerows([trap] * 7 + [f"{10 + 2 * number} µF", trap, trap] for trap, number in traps)
    assert say("load", "=trap.csv").status == 0
    return folder, say("repair", "traps")


def test_hostile_text_stays_text(hostile: tuple[Path, Said], bench: Path, say: Say) -> None:
    folder, said = hostile
    assert (said.status, said.err) == (0, "")
    page = (folder / "report.html").read_text(encoding="utf-8")
    tags = Tags(page)
    assert not tags.names & {"script", "img", "link", "iframe", "object"}
    assert not {name for name in tags.attributes if name.startswith("on") or name in ("src", "href")}
    for trap in HOSTILE:
        assert tags.text.count(trap) >= 3, trap
    with (folder / "shopping-list.csv").open(encoding="utf-8", newline="") as file:
        cells = [cell for line in csv.reader(file) for cell in line]
    assert not [cell for cell in cells if cell[:1] in ("=", "+", "-", "@", "\t", "\r")]
    for trap in HOSTILE:
        assert cells.count(trap) + cells.count(f"'{trap}") == 4, trap
    assert "[red]bold[/red]" in said.out


def test_hostile_names_are_asked_as_they_are(hostile: tuple[Path, Said], say: Say) -> None:
    for trap in HOSTILE[:5]:
        said = say("find", "--capacitance", "20 µF", f"--why={trap}", trap)
        assert (said.status, trap in said.out) == (0, True), said.err


def test_a_list_without_makers_is_answered_too(bench: Path, say: Say) -> None:
    """A supplier who names no maker is still a supplier."""
    (bench / "plain.csv").write_text(LIST, encoding="utf-8")
    say("load", "plain.csv", "--catalog", "plain.duckdb")
    said = say("find", "--voltage", "100 V", "--catalog", "plain.duckdb")
    assert (said.status, "Q 1: rated d.c. voltage: rated voltage 63 V" in said.words) == (1, True)


def test_a_part_without_a_maker_can_be_ordered(bench: Path, say: Say) -> None:
    text = LIST.replace("Price", "Stock,Kind,Price").replace("0.12", "9,Elko,0.12")
    (bench / "plain.csv").write_text(text, encoding="utf-8")
    say("load", "plain.csv", "--catalog", "plain.duckdb")
    write_repair(bench / "radio", "reference,marking,capacitance\nC1,4.7,4.7 µF\n")
    said = say("repair", "radio", "--catalog", "plain.duckdb")
    assert said.status == 0
    assert "None" not in said.out
    assert "plain: 1 line, 1 piece" in said.out


def test_no_traceback_from_a_process_of_its_own(bench: Path) -> None:
    for bad in ("load gone.csv", "find", "repair gone", "nonsense"):
        said = said_by_process(*bad.split(), cwd=bench)
        assert said.status > 1
        assert said.out == ""
        assert "Traceback" not in said.err
