"""The five commands, used as a builder uses them."""

import csv
import html
import os
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import typer
from cli.common import SHED, Demo, Said, Say, said_by_process, write_repair
from openpyxl import Workbook

from subsearch import __version__, cli
from subsearch.catalog.store import open_to_read
from subsearch.repair.folder import read_repair
from subsearch.shipped import shipped

TOML = '[sections."chassis"]\ntemperature_c = 45\n[cards."main"]\ncount = 3\n'
POSITIONS = "reference,marking,card,section,capacitance,rated_voltage\nC1,47/25,main,chassis,47 µF,25 V\n"


def rows(sql: str) -> list[tuple[Any, ...]]:
    with open_to_read(Path("subsearch.duckdb")) as con:
        return con.execute(sql).fetchall()


def test_demo_ends_well_and_says_what_it_did(demo_run: Demo) -> None:
    said = demo_run.said
    assert (said.status, said.err) == (0, "")
    assert said.out.startswith("All names, parts and prices of this demo are invented.\n")
    assert "Catalog: subsearch-demo/subsearch.duckdb" in said.out
    assert "Written: subsearch-demo/shopping-list.csv\nWritten: subsearch-demo/report.html\n" in said.out
    assert "read the cautions on the page" in said.out
    for supplier in (one.stem.replace("_", " ") for one in (demo_run.folder / "lists").iterdir()):
        assert said.out.count(f"{supplier}: ") >= 2, supplier


def test_demo_copies_all_that_is_shipped(demo_run: Demo) -> None:
    source = shipped("catalog_demo")
    files = {one.relative_to(source) for one in source.rglob("*") if one.is_file()}
    made = {Path("subsearch.duckdb"), Path("shopping-list.csv"), Path("report.html")}
    assert {one.relative_to(demo_run.folder) for one in demo_run.folder.rglob("*") if one.is_file()} == files | made
    assert all((demo_run.folder / file).read_bytes() == (source / file).read_bytes() for file in files)


def test_demo_names_every_position(demo_run: Demo) -> None:
    page = html.unescape((demo_run.folder / "report.html").read_text(encoding="utf-8"))
    positions = read_repair(demo_run.folder / "organ").positions
    assert len(positions) > 30
    for position in positions:
        assert f"<strong>{position.name}</strong>" in page
        assert f"\n{position.reference} " in demo_run.said.out or f"\n{position.reference}: " in demo_run.said.out


def test_demo_orders_what_it_chose(demo_run: Demo) -> None:
    with (demo_run.folder / "shopping-list.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    ordered = {name for line in lines for name in line["positions"].split("; ")}
    positions = read_repair(demo_run.folder / "organ").positions
    chosen = [one for one in positions if f"\n{one.reference} " in demo_run.said.out]
    assert f"A part is chosen for {len(chosen)}." in demo_run.said.out
    assert ordered == {one.name for one in chosen}
    assert all(int(line["order"]) >= int(line["needed"]) > 0 for line in lines)


def test_demo_run_again_keeps_what_was_changed(tmp_path: Path, say: Say) -> None:
    folder = tmp_path / "again"
    (folder / "lists").mkdir(parents=True)
    for file in sorted((shipped("catalog_demo") / "lists").glob("*.csv")):
        (folder / "lists" / file.name).write_text(SHED, encoding="utf-8")
    book = Workbook()
    for row in csv.reader(SHED.splitlines()):
        book.worksheets[0].append(row)
    book.save(folder / "lists" / "Osierdown_Components.xlsx")
    changed = "reference,marking,capacitance\nC1,47/25,47 µF\nC2,0.1/63,0.1 µF\n"
    positions = write_repair(folder / "organ", changed) / "positions.csv"
    assert say("demo", str(folder)).status == 0
    (folder / "README.md").unlink()
    said = say("demo", str(folder))
    assert (said.status, said.err) == (0, "")
    assert positions.read_text(encoding="utf-8") == changed
    assert all(one.read_text(encoding="utf-8") == SHED for one in (folder / "lists").glob("*.csv"))
    assert (folder / "README.md").exists()
    assert ": 2 positions, " in said.out
    assert said.out.count("The very same file was loaded before") == 4


def test_load_says_what_came_of_a_list(bench: Path, say: Say) -> None:
    (bench / "barn.csv").write_text(
        "Part number;Maker;Cap uF;Voltage;Preis;Shelf\nQ 1;Weir;4,7;63 V;0,12;3\nQ 2;Weir;4,7;63 A;0,12;3\n",
        encoding="utf-8",
    )
    said = say("load", "barn.csv", "shed.csv", "--seen", "2026-10-01")
    assert (said.status, said.err) == (0, "")
    assert "barn: 2 lines read, 1 kept, 1 refused (intake 2 of the catalog)" in said.out
    assert "headings not understood and left out: Shelf" in said.out
    assert "shed: 6 lines read, 6 kept, 0 refused (intake 3 of the catalog)" in said.out
    assert said.out.endswith("Catalog: subsearch.duckdb\n")


def test_load_keeps_what_is_said_of_a_list(bench: Path, say: Say) -> None:
    (bench / "barn.csv").write_text("Part number,Cap uF,Voltage,Price\nQ 1,4.7,63 V,0.12\n", encoding="utf-8")
    options = ("--supplier", "Weir Barn", "--seen", "2026-10-01", "--currency", "GBP")
    assert say("load", "barn.csv", "--catalog", "subsearch.duckdb", *options).status == 0
    claims = rows("select currency, date_seen from offer where supplier = 'Weir Barn'")
    assert claims == [("GBP", date(2026, 10, 1))]


def test_layout_says_what_it_recognised_and_load_follows_it(bench: Path, say: Say) -> None:
    text = "Art;Wert;Nennspannung;Preis ab 10;Fach\nQ 1;4,7;63;0,12;3\n"
    (bench / "barn.csv").write_text(text, encoding="utf-8")
    said = say("layout", "barn.csv")
    assert (said.status, said.err) == (0, "")
    assert said.out == (
        "barn: 3 of 5 headings of barn.csv are recognised, in line 1.\n"
        "  Wert          capacitance_f\n"
        "  Nennspannung  rated_v [V]\n"
        "  Preis ab 10   unit_price from 10 pieces\n"
        "  Art           left out: not understood\n"
        "  Fach          left out: not understood\n"
        "  Still missing: a part number. Say in the file which column states it.\n"
        "Written: layouts/barn.toml\n"
        "Correct it where it is wrong; the next load of this supplier's lists follows it.\n"
    )
    layout = bench / "layouts" / "barn.toml"
    text = layout.read_text(encoding="utf-8").replace('"Art", leave_out = true', '"Art", term = "part_number"')
    layout.write_text(text.replace('"capacitance_f" }', '"capacitance_f", unit = "nF" }'), encoding="utf-8")
    loaded = say("load", "barn.csv", "--currency", "EUR")
    assert 'Read by the layout "layouts/barn.toml".' in loaded.out
    assert rows("select part_number, capacitance_f from listing where supplier = 'barn'") == [("Q 1", 4.7e-9)]
    again = say("load", "barn.csv", "--supplier", "Weir", "--layout", "layouts/barn.toml")
    assert again.status == 0


def test_a_currency_in_small_letters_is_the_same_currency(bench: Path, say: Say) -> None:
    (bench / "barn.csv").write_text("Part number,Cap uF,Voltage,Price\nQ 1,4.7,63 V,0.12\n", encoding="utf-8")
    assert say("load", "barn.csv", "--currency", "gbp").status == 0
    assert rows("select currency from offer where supplier = 'barn'") == [("GBP",)]


def test_rates_are_kept_and_said(bench: Path, say: Say) -> None:
    (bench / "new.csv").write_text("currency,worth,dated\nEUR,0.9,2026-11-02\nGBP,1,\nCHF,0.8,\n", encoding="utf-8")
    said = say("rates", "new.csv")
    assert (said.status, said.err) == (0, "")
    assert said.out == (
        "1 EUR = 0.9 GBP (2026-11-02)\n1 CHF = 0.8 GBP\nYour own currency is GBP. Catalog: subsearch.duckdb\n"
    )
    assert rows("select currency from currency_rate order by currency") == [("CHF",), ("EUR",), ("GBP",)]


def test_find_shows_what_fits_and_what_is_open(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "47 µF", "--voltage", "25 V", "--headroom", "14 mm", "--temperature", "55 °C")
    assert (said.status, said.err) == (0, "")
    assert "Mill Hollow 1" in said.out.partition("Open, because")[0]
    assert "Mill Hollow 4: not stated is body in the space" in said.out.partition("Open, because")[2]
    assert "Fitting: 2. Open: 1. Refused: 3." in said.out
    assert "say with --years how long it should last" in said.out


def test_find_shows_no_more_than_asked(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "47 µF", "--best", "1")
    assert said.status == 0
    assert sum(line.startswith("Mill Hollow") and "47 µF" in line for line in said.out.splitlines()) == 1
    assert "Fitting: 3. Open: 0. Refused: 3." in said.out


def test_find_names_the_nearest_refusals(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "47 µF", "--voltage", "100 V")
    assert said.status == 1
    assert "Nothing fits. The nearest refusals:" in said.out
    assert "Mill Hollow 2: rated d.c. voltage: rated voltage 63 V; at least 100 V is needed" in said.words
    assert "Fitting: 0. Open: 0. Refused: 6." in said.out


def test_find_says_what_two_can_do_in_place_of_one(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "94 µF", "--voltage", "20 V", "--headroom", "13 mm", "--pieces", "2")
    assert said.status == 1
    assert "Two in place of one: Two in parallel: twice Mill Hollow 1 (47 µF 25 V, Ø 6.3 × 11 mm) make" in said.words
    assert "to mind: The leads of both go to one pair of holes" in said.words
    swings = say("find", "--capacitance", "22 µF", "--voltage", "20 V", "--bipolar")
    assert "Two in place of one: Two back to back: twice Mill Hollow" in swings.words
    assert "make 23.5 µF (+6.8 % of the 22 µF asked)" in swings.words and "Join equal poles" in swings.words
    assert "Two in place of one" not in say("find", "--capacitance", "47 µF").out


HOT = ("find", "--capacitance", "47 µF", "--temperature", "85 °C", "--ripple", "0.1 A")


def test_find_tells_life_as_a_span(bench: Path, say: Say) -> None:
    sure, unsure = say(*HOT).words, say(*HOT, "--uncertain", "5 K", "--years", "1").words
    assert "Life of Mill Hollow 1: 2.2 years; 2.1 to 4.1 by other published laws." in sure
    assert "Life of Mill Hollow 1: 2.2 years; 1.5 to 6.3 by published laws and 5 K either way." in unsure
    assert "The life wanted is asked of the first figure." in unsure
    assert "The life wanted" not in sure


def test_find_tells_how_firmly_the_first_stands(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "47 µF")
    assert "Mill Hollow 1 stays first when any one weight moves by 20 %" in said.words
    assert "* Nothing beats it: no other part that fits is at least as good in life, margin and cost" in said.words


def test_own_weights_change_the_order_of_find(bench: Path, say: Say) -> None:
    asked = ("find", "--capacitance", "47 µF", "--voltage", "20 V")
    weights = ("--weight", "price=0", "--weight", "lead spacing=0", "--weight", "voltage=3")
    orders = [
        [
            words.split()[2]
            for words in say(*asked, *own).out.splitlines()
            if words.startswith("Mill Hollow") and "V " in words
        ]
        for own in ((), weights)
    ]
    assert orders == [["4", "2", "1"], ["2", "4", "1"]]


def test_find_shows_what_adds_up_to_the_score(bench: Path, say: Say) -> None:
    asked = ("find", "--capacitance", "47 µF", "--weight", "price=2", "--score")
    lines = say(*asked).out.splitlines()
    table = lines[next(at for at, words in enumerate(lines) if words.startswith("Contribution")) :]
    assert table[0].split()[:4] == ["Contribution", "Weight", "Place", "1"]
    assert next(words for words in table if words.startswith("price")).split()[:3] == ["price", "2", "1.82"]
    assert next(words for words in table if words.startswith("together")).rstrip().endswith("the score")
    assert "Contribution" not in say(*asked[:-1]).out


ASKED = {
    "capacitance": (["47 µF"], "capacitance in the window: 47 µF nominal; 37.6 µF to 70.5 µF is taken"),
    "voltage": (["35 V"], "no rated d.c. voltage: rated voltage 25 V; at least 35 V is needed"),
    "role": (["bypass"], "capacitance in the window: 47 µF nominal; 47 µF to 94 µF is taken"),
    "bipolar": ([], "no polarity: polar;"),
    "lead_style": (["axial"], "no lead style: radial leads; axial is needed"),
    "hole_spacing": (
        ["8 mm"],
        "no lead spacing: lead spacing 2.5 mm, reach of formed leads 0.15 mm short; the holes are 8 mm apart",
    ),
    "hole_diameter": (
        ["0.5 mm", "--plated"],
        "not stated lead in its hole: lead diameter not stated; the hole is 0.5 mm wide",
    ),
    "plated": (["--hole-diameter", "0.5 mm"], "the hole is 0.5 mm wide, plated: yes"),
    "lie_flat": (
        ["--hole-spacing", "5 mm", "--headroom", "9 mm"],
        "yes body in the space: body Ø 6.3 × 11 mm: laid flat to",
    ),
    "free_diameter": (["7 mm"], "across the free diameter 0.2 mm to spare"),
    "along": (["7 mm"], "left 0.1 mm to spare, right 0.1 mm to spare"),
    "across": (["6 mm"], "front 0.4 mm short, back 0.4 mm short"),
    "headroom": (["13 mm"], "yes body in the space: body Ø 6.3 × 11 mm: headroom 0.5 mm to spare"),
    "temperature": (["110 °C"], "no upper category temperature: made for up to 105 °C; it works at 110 °C"),
    "hours_a_day": (["4", "--temperature", "95 °C", "--years", "5"], "years at 95 °C; 5 are wanted"),
    "years": (["2", "--temperature", "95 °C"], "no life at the working temperature: 1.1 years at 95 °C"),
    "ripple": (["0.4 A"], "no ripple current: rated ripple 300 mA at 120 Hz; 400 mA at not stated flows"),
    "ripple_frequency": (["50 Hz", "--ripple", "0.1 A"], "rated ripple 300 mA at 120 Hz; 100 mA at 50 Hz flows"),
    "leakage": (["5 µA"], "the maker's limit at rated voltage and 20 °C, when new: not stated (hot,"),
    "safety_class": (["X2"], "no safety class: class not stated, rated a.c. voltage not stated; class X2 or stricter"),
    "pieces": (["60"], "shed: in stock: 50; needed: 60"),
}
NO_CONDITION = {"best", "why", "catalog", "help", "weight", "score", "uncertain"}


def test_every_option_of_find_is_tried() -> None:
    commands: Any = typer.main.get_command(cli.app)
    names = {option.name for option in commands.commands["find"].params}
    assert names - NO_CONDITION == set(ASKED)


@pytest.mark.parametrize("option", ASKED)
def test_every_option_of_find_asks_its_condition(option: str, bench: Path, say: Say) -> None:
    values, sentence = ASKED[option]
    words = [f"--{option.replace('_', '-')}", *values]
    asked = [] if option == "capacitance" else ["--capacitance", "47 µF"]
    said = say("find", *asked, *words, "--why", "Mill", "Hollow 1")
    assert said.status == 0
    assert sentence in said.words


def test_what_is_not_asked_is_not_answered(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "47 µF", "--why", "Mill", "Hollow 1")
    assert [option for option, (_, sentence) in ASKED.items() if sentence in said.words] == ["capacitance"]


def test_why_of_an_ac_rating(bench: Path, say: Say) -> None:
    said = say("find", "--voltage", "300 V a.c.", "--why", "Mill", "Hollow 6")
    assert "no rated a.c. voltage: rated a.c. voltage 275 V; at least 300 V is needed" in said.words
    assert "d.c." not in said.words


def test_hours_a_day_count(bench: Path, say: Say) -> None:
    asked = ("find", "--capacitance", "47 µF", "--temperature", "95 °C", "--years", "5", "--why", "Mill", "Hollow 1")
    assert "no life" in say(*asked).words
    assert "yes life" in say(*asked, "--hours-a-day", "4").words


def test_repair_writes_into_its_own_folder(bench: Path, say: Say) -> None:
    said = say("repair", str(write_repair(bench / "radio", POSITIONS, TOML)))
    assert (said.status, said.err) == (0, "")
    assert "radio: 1 position, 3 capacitors asked for. A part is chosen for 1." in said.out
    assert "main, 3 of them" in said.out
    listed = (bench / "radio" / "shopping-list.csv").read_text(encoding="utf-8").splitlines()
    assert listed[1].endswith(",3,3,1,0.20,EUR,0.60,EUR,0.60,C1 (main)")
    assert "<strong>C1 (main)</strong> × 3" in (bench / "radio" / "report.html").read_text(encoding="utf-8")


def test_repair_writes_where_it_is_told(bench: Path, say: Say) -> None:
    write_repair(bench / "radio", POSITIONS, TOML)
    said = say("repair", "radio", "--out", "deep/down", "--catalog", "subsearch.duckdb")
    assert said.status == 0
    assert sorted(one.name for one in (bench / "deep" / "down").iterdir()) == [
        "report.html",
        "shopping-list.csv",
    ]
    assert sorted(one.name for one in (bench / "radio").iterdir()) == ["positions.csv", "repair.toml"]


def test_repair_without_any_choice_ends_with_1(bench: Path, say: Say) -> None:
    said = say("repair", str(write_repair(bench / "radio", POSITIONS.replace("25 V", "900 V"), TOML)))
    assert said.status == 1
    assert "C1: Nothing fits. Nearest is Mill Hollow 2, refused for rated d.c. voltage" in said.words
    assert "Nothing to order." in (bench / "radio" / "report.html").read_text(encoding="utf-8")


def test_repair_says_of_which_positions_something_was_not_asked(bench: Path, say: Say) -> None:
    text = "reference,marking,capacitance,rated_voltage\nC1,x,47 µF,\nC2,x,47 µF,\nC3,x,,25 V\nC4,x,47 µF,25 V\n"
    said = say("repair", str(write_repair(bench / "radio", text)))
    assert "The capacitance was not asked of C3: look at it before you take the part." in said.words
    assert "The voltage was not asked of C1, C2: look at it before you take the part." in said.words
    assert "asked of" not in say("repair", str(write_repair(bench / "whole", POSITIONS, TOML))).words


def test_a_price_of_ten_is_printed_as_ten(bench: Path, say: Say) -> None:
    (bench / "dear.csv").write_text(SHED.replace("12,GBP", "10,GBP"), encoding="utf-8")
    say("load", "dear.csv", "--supplier", "shed")
    say("repair", str(write_repair(bench / "radio", "reference,marking,capacitance\nC2,10/50,10 µF\n")))
    page = (bench / "radio" / "report.html").read_text(encoding="utf-8")
    assert '<td class="n">10.00 GBP</td>' in page
    assert '<td class="n">10' in page.replace('<td class="n">10.00 GBP</td>', "")
    assert "E+" not in page


def test_version_and_help(say: Say) -> None:
    assert say("--version") == Said(0, f"subsearch {__version__}\n", "")
    said = say()
    assert said.status == 2
    assert [name for name in ("load", "rates", "find", "repair", "demo") if f" {name} " not in said.words] == []


@pytest.mark.parametrize("command", ["load", "rates", "find", "repair", "demo"])
def test_each_command_has_help(command: str, say: Say) -> None:
    assert say(command, "--help").status == 0


@pytest.mark.parametrize("encoding", ["cp1252", "ascii"])
def test_output_goes_into_a_file_whatever_its_encoding(encoding: str, bench: Path) -> None:
    (bench / "barn.csv").write_bytes(SHED.encode("cp1252"))
    said = said_by_process("load", "barn.csv", cwd=bench, **{**os.environ, "PYTHONIOENCODING": encoding})
    assert "Traceback" not in said.err
    assert said.status == 0


def test_load_tells_the_first_reasons_and_ends_with_1_where_nothing_is_kept(bench: Path, say: Say) -> None:
    lines = "".join(f"Q {number},4.7,63 V,dear\n" for number in range(5))
    (bench / "odd.csv").write_text(f"Part number,Cap uF,Voltage,Price\n{lines}", encoding="utf-8")
    said = say("load", "odd.csv")
    assert said.status == 1
    assert "odd: 5 lines read, 0 kept, 5 refused" in said.out
    assert said.out.count('Price: "dear" is not a price.') == 3
    assert "and 2 more faults; all are kept in the catalog" in said.out


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--capacitance", "47 µF"], "The voltage was not asked"),
        (["--voltage", "25 V"], "The capacitance was not asked"),
        (["--voltage", "25 V", "--years", "10"], "Life was not asked: say with --temperature how hot it gets."),
    ],
)
def test_find_says_what_it_was_not_asked(bench: Path, say: Say, options: list[str], told: str) -> None:
    assert told in say("find", *options).out


def test_words_of_find_may_be_in_capitals(bench: Path, say: Say) -> None:
    said = say("find", "--capacitance", "0.1 µF", "--safety-class", "x2", "--role", "Interference Suppression")
    assert (said.status, "Mill Hollow 6" in said.out) == (0, True)


def test_an_unsafe_pin_is_told_on_the_terminal(bench: Path, say: Say) -> None:
    text = "reference,marking,capacitance,polarity,pinned_maker,pinned_part_number\nC1,x,47 µF,bipolar,Mill,Hollow 1\n"
    said = say("repair", str(write_repair(bench / "radio", text)))
    assert said.status == 1
    assert "C1: Pinned to Mill Hollow 1, but not taken, since it can hurt: polarity: no (polar;" in said.words
