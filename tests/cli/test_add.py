"""One part typed in at the command line: by options, by questions, and what is said when something is wrong."""

import io
import shlex
from pathlib import Path
from typing import Any

import pytest
import typer
from cli.common import Said, Say, said_by_process

from subsearch import cli
from subsearch.catalog.store import open_to_read
from subsearch.catalog.typed import FIELDS

ROD = (
    "add", "--drawer", "--part-number", "Rod 1", "--maker", "Mill", "--technology", "film PP", "--capacitance",
    "100 nF", "--voltage", "63 V", "--shape", "box", "--size", "7.2x2.5x6.5", "--lead-spacing", "5 mm", "--stock",
    "4", "--condition", "old stock",
)  # fmt: skip
SEVERAL = {
    "technology": ("PP-Folie", "technology", "film PP"),
    "polarity": ("bipolar", "polarity", "bipolar"),
    "tolerance": ("-10/+50 %", "tolerance_low_pct", -10),
    "ac_voltage": ("40 V", "rated_ac_v", 40),
    "lowest_temperature": ("-40 °C", "lowest_c", -40),
    "highest_temperature": ("105", "rated_c", 105),
    "life": ("2000 h", "life_h", 2000),
    "life_means": ("endurance", "life_basis", "endurance"),
    "ripple": ("350 mA", "ripple_a", 0.35),
    "loss_factor": ("0.12", "tan_delta", 0.12),
    "order_code": ("tray 1", "supplier_number", "tray 1"),
    "traceable": ("yes", "traceable", True),
}


class Terminal(io.StringIO):
    """A terminal at which these lines are typed."""

    def isatty(self) -> bool:
        return True


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch, say: Say) -> Say:
    """Runs the command with answers typed line by line; the first argument holds them."""

    def saying(answers: str, *args: str) -> Said:
        monkeypatch.setattr("sys.stdin", Terminal(answers))
        return say("add", *args)

    return saying


def rows(sql: str) -> list[tuple[Any, ...]]:
    with open_to_read(Path("subsearch.duckdb")) as con:
        return con.execute(sql).fetchall()


def test_a_part_of_the_drawer_is_found_and_costs_nothing(bench: Path, say: Say) -> None:
    said = say(*ROD)
    assert (said.status, said.err) == (0, "")
    assert said.out.startswith("Recorded for own drawer (intake 2 of the catalog):\n  Part number: Rod 1\n  Maker: Mil")
    assert said.out.endswith("\n  Condition: old stock\nCatalog: subsearch.duckdb\n")
    found = say("find", "--capacitance", "100 nF", "--voltage", "63 V", "--pieces", "4").out.splitlines()
    (rod,) = [line for line in found if line.startswith("Mill Rod 1")]
    assert " 0.00 " in rod


def test_every_field_has_its_option() -> None:
    commands: Any = typer.main.get_command(cli.app)
    options = {option for parameter in commands.commands["add"].params for option in parameter.opts}
    assert options == {field.option for field in FIELDS} | {"--drawer", "--supplier", "--seen", "--catalog"}


@pytest.mark.parametrize("option", SEVERAL)
def test_an_option_states_its_term(option: str, bench: Path, say: Say) -> None:
    text, term, value = SEVERAL[option]
    needed = ("--drawer", "--part-number", "Q", "--capacitance", "1 µF", "--voltage", "63 V")
    assert say("add", *needed, f"--{option.replace('_', '-')}", text).status == 0
    assert rows(f"select {term} from listing where intake = 2") == [(value,)]


def test_where_and_when_are_said(bench: Path, say: Say) -> None:
    price = ("--supplier", "Weir Barn", "--price", "0,35", "--currency", "gbp", "--seen", "2026-10-01")
    said = say("add", "--part-number", "Q", "--capacitance", "1 µF", "--voltage", "63", *price, "--catalog", "x.duckdb")
    assert said.status == 0
    assert said.out.endswith("Catalog: x.duckdb\n")
    with open_to_read(Path("x.duckdb")) as con:
        found = con.execute("select supplier, currency, prices[1].price::varchar, date_seen::varchar from offer")
        assert found.fetchall() == [("Weir Barn", "GBP", "0.350000", "2026-10-01")]


REFUSED = {
    "nothing": (
        (),
        "No part can be recorded without --part-number; --capacitance; --voltage or --ac-voltage; whose it is: "
        "--drawer, or --supplier and --price. Give these options too.",
    ),
    "price": (
        ("--part-number", "Q", "--capacitance", "1 µF", "--ac-voltage", "275 V", "--supplier", "Barn"),
        "No part can be recorded without --price. Give these options too.",
    ),
    "both": (("--drawer", "--supplier", "Barn"), "Your own drawer is a supplier itself. Give either --drawer or --sup"),
    "text": (
        ("--drawer", "--part-number", "Q", "--capacitance", "1 µF", "--voltage", "63 A", "--stock", "few"),
        'Stock: "few" is not a plain number. Write it like 10. Voltage: "63 A" has the unit "A", but',
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_wrong_is_one_sentence(name: str, bench: Path) -> None:
    args, sentence = REFUSED[name]
    before = (bench / "subsearch.duckdb").read_bytes()
    said = said_by_process("add", *args, cwd=bench)
    assert (said.status, said.out) == (3, "")
    assert said.err.startswith("error: ")
    assert said.err.count("\n") == 1
    assert all(piece in said.err for piece in sentence.split(" Voltage: "))
    assert (bench / "subsearch.duckdb").read_bytes() == before


ANSWERS = {
    "Supplier": "",
    "Part number": "Rod 2",
    "Maker": "Mill",
    "Technology": "film PP",
    "Capacitance": "100 nF",
    "Tolerance": "",
    "Voltage": "63 V",
    "Safety class": "",
    "Shape": "",
    "Lowest temperature": "",
    "Highest temperature": "105",
    "Stock": "4",
    "Condition": "new",
    "Bought": "2026-10-03",
}


def lines(**changed: str) -> str:
    answers = {**ANSWERS, **{name.replace("_", " "): text for name, text in changed.items()}}
    return "".join(f"{text}\n" for text in answers.values())


def test_questions_lead_to_a_part(bench: Path, typed: Say) -> None:
    said = typed(lines())
    assert (said.status, said.err) == (0, "")
    places = [said.out.find(question) for question in ANSWERS]
    assert places == sorted(set(places) - {-1})
    assert not [name for name in ("Polarity", "Size", "Life", "ESR", "Price", "Currency", "Vent") if name in said.out]
    assert "Technology (wet aluminium, polymer aluminium, " in said.out
    assert "Capacitance (like 4.7 µF), needed: " in said.out
    assert rows("select supplier, rated_c, stock, condition, date_bought::varchar from listing where intake = 2") == [
        ("own drawer", 105, 4, "new", "2026-10-03")
    ]


def test_a_wrong_answer_is_asked_again(bench: Path, typed: Say) -> None:
    said = typed(lines(Part_number="\nRod 2", Capacitance="100\n100 nF", Stock="few\n4", Condition="odd\nused"))
    assert said.status == 0
    for sentence in (
        "  No part is recorded without it. Type it, or end with Ctrl-C.\n",
        '  "100" has no unit. Write it like 4.7 µF.\n',
        '  "few" is not a plain number. Write it like 10.\n',
        '  "odd" is not a known word for condition (what state the parts are in). Use new, old stock or pulled.\n',
    ):
        assert sentence in said.out
    assert rows("select capacitance_f, stock, condition from listing where intake = 2") == [(1e-7, 4, "pulled")]


def test_only_what_no_option_states_is_asked(bench: Path, typed: Say) -> None:
    given = [word for field in FIELDS if field.name != "voltage" for word in (field.option, "")]
    said = typed("50 V\n", "--drawer", *given, "--part-number", "Rod 3", "--capacitance", "1 µF")
    assert said.status == 0
    assert said.out.count(", needed: ") == 1
    assert rows("select part_number, rated_v, maker from listing where intake = 2") == [("Rod 3", 50, None)]


def test_what_contradicts_itself_is_asked_again(bench: Path, typed: Say) -> None:
    said = typed(lines(Bought="2026-10-03\n"), "--polarity", "polar")
    assert "  Polarity: The line says polar, but a film PP part has no polarity." in said.out
    assert (said.status, rows("select polarity from listing where intake = 2")) == (0, [(None,)])


def test_what_was_typed_is_not_lost(bench: Path, typed: Say, say: Say) -> None:
    before = (bench / "subsearch.duckdb").read_bytes()
    said = typed("own drawer\nRod 'n 2\nMill\nfilm PP\n100 nF\n\n63 V\n", "--stock", "4", "--seen", "2026-10-01")
    command = said.out.splitlines()[-1]
    assert said.status
    assert "\nNothing was recorded. What you typed:\n" in said.out
    assert (bench / "subsearch.duckdb").read_bytes() == before
    assert say(*shlex.split(command)[1:]).status == 0
    assert rows("select supplier, part_number, rated_v, stock from listing where intake = 2") == [
        ("own drawer", "Rod 'n 2", 63, 4)
    ]
    assert rows("select seen::varchar from intake where intake = 2") == [("2026-10-01",)]


def test_a_catalog_that_can_not_be_written_loses_nothing(bench: Path, typed: Say) -> None:
    (bench / "bad.duckdb").write_text("no catalog", encoding="utf-8")
    said = typed(lines(), "--catalog", "bad.duckdb")
    assert said.status == 4
    assert said.err.startswith("error: ")
    assert said.out.splitlines()[-1].startswith(
        "subsearch add --drawer --part-number 'Rod 2' --maker Mill --technology"
    )
    assert said.out.splitlines()[-1].endswith(" --catalog bad.duckdb")


def test_the_drawer_may_be_written_with_a_capital(bench: Path, say: Say) -> None:
    given = ("--part-number", "Q", "--capacitance", "1 µF", "--voltage", "63 V", "--price", "0")
    said = say("add", "--supplier", "Own  Drawer", *given)
    assert (said.status, said.out.startswith("Recorded for own drawer (")) == (0, True), said.err
