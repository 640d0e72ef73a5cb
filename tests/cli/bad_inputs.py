"""Everything a builder can get wrong on the command line: the words, the files they find, and what must be said."""

import shlex
from dataclasses import dataclass, field

Files = dict[str, str | bytes]
TOML = 'name = "Radio"\n[sections."chassis"]\ntemperature_c = 40\n[cards."main"]\ncount = 2\n'
HEADINGS = "reference,marking,capacitance,rated_voltage"
ROW = "C1,47/25,47 µF,25 V"
LIST = "Order code,Part number,Cap uF,Voltage,Price\n1,Q 1,4.7,63 V,0.12\n"
BINARY = bytes(range(256)) * 20


@dataclass(frozen=True)
class Bad:
    """A command that can't be carried out: its words, the status it ends with, a part of what it says, its files."""

    words: str
    status: int
    sentence: str
    files: Files = field(default_factory=dict)

    @property
    def args(self) -> list[str]:
        return shlex.split(self.words)


def _load(text: str | bytes, sentence: str, name: str = "bad.csv") -> Bad:
    return Bad(f"load {name}", 3, sentence, {name: text})


def _rates(text: str | bytes, sentence: str) -> Bad:
    return Bad("rates bad.csv", 3, sentence, {"bad.csv": text})


def _find(words: str, status: int, sentence: str) -> Bad:
    return Bad(f"find --capacitance '47 µF' {words}", status, sentence)


def _toml(common: str | bytes, sentence: str, status: int = 5) -> Bad:
    files: Files = {"bad/repair.toml": common, "bad/positions.csv": f"{HEADINGS}\n{ROW}\n"}
    return Bad("repair bad", status, sentence, files)


def _positions(text: str | bytes, sentence: str, status: int = 5) -> Bad:
    return Bad("repair bad", status, sentence, {"bad/repair.toml": TOML, "bad/positions.csv": text})


def _cell(heading: str, cell: str, sentence: str, status: int = 5) -> Bad:
    """One more column beside a good position."""
    row = ROW if '"' in cell else ROW.replace('"', "")
    return _positions(f"{HEADINGS},{heading}\n{row},{cell}\n", sentence, status)


WORDS = {
    "no such command": Bad("lod shed.csv", 2, "No such command 'lod'"),
    "no such option": _find("--hight '12 mm'", 2, "No such option"),
    "load without a file": Bad("load", 2, "Missing argument"),
    "rates without a file": Bad("rates", 2, "Missing argument"),
    "repair without a folder": Bad("repair", 2, "Missing argument"),
    "bad day": Bad("load shed.csv --seen 2026-13-45", 2, '"2026-13-45" is not a day. Write it like 2026-10-01.'),
    "bad currency": Bad("load shed.csv --currency money", 2, "not a currency"),
    "no currency": Bad("load shed.csv --currency ''", 2, "not a currency"),
    "no supplier": Bad("load shed.csv --supplier ' '", 3, "The supplier's name is empty."),
    "kelvin": _find("--temperature '300 K'", 2, 'has the unit "K", but a quantity in °C is wanted here'),
    "currency of two signs": Bad("load shed.csv --currency e1", 2, "not a currency"),
    "find nothing": Bad("find", 6, "Nothing is asked. Give a --capacitance or a --voltage at least"),
    "find with room only": Bad("find --headroom '12 mm'", 6, "Nothing is asked."),
    "unreadable quantity": Bad("find --capacitance lots", 2, '"lots" is not a quantity in F. Write it like 4.7 µF.'),
    "another unit": Bad("find --capacitance '47 V'", 2, 'has the unit "V", but a quantity in F is wanted here'),
    "no unit": Bad("find --capacitance 47", 2, '"47" has no unit. Write it like 4.7 µF.'),
    "negative value": Bad("find --capacitance '-47 µF'", 6, "capacitance_f is -47 µF; it must be above 0"),
    "unreadable voltage": Bad("find --voltage high", 2, '"high" is not a quantity in V. Write it like 63 V.'),
    "voltage nought": Bad(
        "find --voltage '0 V'", 2, '"0 V" is not a voltage above 0. Write it like 63 V or 275 V a.c.'
    ),
    "unknown role": _find("--role resevoir", 6, 'is no role here. Did you mean "reservoir"? Allowed are coupling,'),
    "unknown lead style": _find("--lead-style axail", 6, 'is no lead style here. Did you mean "axial"?'),
    "unknown class": _find("--safety-class X7", 6, '"X7" is no safety class here.'),
    "negative size": _find("--headroom '-12 mm'", 6, "headroom_mm is -12 mm; it must be above 0"),
    "negative hole spacing": _find("--hole-spacing '-5 mm'", 6, "hole_spacing_mm is -5 mm; it must be above 0"),
    "no room along": _find("--along '0 mm'", 6, "left_mm is 0 mm; it must be above 0"),
    "no room across": _find("--across '0 mm'", 6, "front_mm is 0 mm; it must be above 0"),
    "no free diameter": _find("--free-diameter '0 mm'", 6, "free_diameter_mm is 0 mm; it must be above 0"),
    "size in another unit": _find("--headroom '12 cm'", 2, 'has the unit "cm", but a quantity in mm is wanted here'),
    "too hot": _find("--temperature '300 °C'", 6, "works at 300 °C; allowed is −55 to 150 °C"),
    "years over the ceiling": _find("--years 20", 6, "20 years of life are wanted, but no wet part is promised more"),
    "no years": _find("--years 0", 6, "life_wanted_y is 0; it must be above 0"),
    "years that are no number": _find("--years many", 2, "Invalid value for '--years'"),
    "no hours": _find("--hours-a-day 0", 6, "0 hours a day; allowed is above 0, up to 24"),
    "hours over 24": _find("--hours-a-day 25", 6, "25 hours a day; allowed is above 0, up to 24"),
    "hours that are no number": _find("--hours-a-day nan", 6, "nan hours a day; allowed is above 0, up to 24"),
    "no ripple": _find("--ripple '0 A'", 6, "ripple_a is 0 µA; it must be above 0"),
    "ripple in another unit": _find("--ripple '5 V'", 2, 'has the unit "V", but a quantity in A is wanted here'),
    "no ripple frequency": _find("--ripple-frequency '0 Hz'", 6, "ripple_hz is 0 Hz; it must be above 0"),
    "unknown weight": _find(
        "--weight lif=2", 6, '"lif" is not a contribution to the score. Did you mean "life"? Allowed are clearance,'
    ),
    "weight without a number": _find("--weight life", 2, '"life" is not a weight. Write it like life=2.'),
    "weight of words": _find("--weight life=lots", 2, '"life=lots" is not a weight. Write it like life=2.'),
    "weight below nought": _find("--weight life=-1", 6, "The weight of life is -1; allowed is 0 to 1,000,000."),
    "endless weight": _find("--weight life=inf", 6, "The weight of life is inf; allowed is 0 to 1,000,000."),
    "weight that is no number": _find("--weight life=nan", 6, "The weight of life is nan; allowed is 0 to 1,000,000."),
    "weight twice": _find("--weight life=1 --weight life=2", 6, "The weight of life is said twice. Say it once."),
    "uncertain below nought": _find(
        "--uncertain '-1 K'", 6, "the temperature is uncertain by -1 K; allowed is 0 to 40 K."
    ),
    "too uncertain": _find(
        "--uncertain '41 K'", 6, "uncertain by 41 K; allowed is 0 to 40 K. Measure it nearer than that."
    ),
    "uncertain in words": _find("--uncertain very", 2, '"very" is not a quantity in K. Write it like 8 K.'),
    "uncertain in degrees": _find("--uncertain '5 °C'", 2, 'has the unit "°C", but a quantity in K is wanted here'),
    "no pieces": _find("--pieces 0", 6, "0 pieces are asked; at least 1 must be"),
    "countless pieces": _find("--pieces 99999999999", 6, "99999999999"),
    "show none": _find("--best 0", 2, "Invalid value for '--best'"),
    "show countless": _find("--best 99999999999", 2, "--best"),
    "why half a name": _find("--why Mill", 2, "Option '--why' requires 2 arguments"),
    "why an unknown part": _find("--why Mill 'Hollow 11'", 6, 'Did you mean maker "Mill", part number "Hollow 1"?'),
    "why an unknown maker": _find("--why Zzz 999", 6, 'The catalog has no part "999" of the maker "Zzz". Look them up'),
    "nothing can meet it": _find("--voltage '9000 V'", 1, "Nothing fits. The nearest refusals: Mill Hollow"),
}
LISTS = {
    "layout of nothing": Bad("layout gone.csv", 3, 'There is no file "gone.csv". Check the name and the folder.'),
    "layout without a list": Bad("layout", 2, "Missing argument"),
    "layout over a layout": Bad(
        "layout shed.csv --out a.toml", 3, '"a.toml" stands there already, so nothing was written.', {"a.toml": ""}
    ),
    "missing layout": Bad("load shed.csv --layout a.toml", 3, 'There is no layout "a.toml".'),
    "wrong layout": Bad(
        "load shed.csv --layout a.toml", 3, '"a.toml": "colums" is not a key of a layout.', {"a.toml": "colums = 1"}
    ),
    "missing list": Bad("load gone.csv", 3, 'There is no file "gone.csv". Check the name and the folder.'),
    "folder for a list": Bad("load here", 3, '"here" is a folder, not a list.', {"here/x.txt": ""}),
    "second list missing": Bad("load shed.csv gone.csv", 3, 'There is no file "gone.csv".'),
    "empty list": _load("", '"bad.csv" is empty. Save the list again, with its heading line.'),
    "blank list": _load("\n \n,,\n", '"bad.csv" holds only blank lines.'),
    "binary list": _load(BINARY, '"bad.csv" is not text: it holds binary data.'),
    "PDF": _load(b"%PDF-1.7 x", '"bad.csv" is not text but a PDF; ask for the list as CSV or XLSX.'),
    "no spreadsheet": _load(LIST, '"bad.xlsx" is not an XLSX file, or it is damaged.', "bad.xlsx"),
    "another ending": _load(LIST, '"bad.ods" ends in ".ods". Lists are read from', "bad.ods"),
    "open quotation marks": _load(LIST + '2,"Q 2,1,1,1\n', "line 3: the quotation marks do not match"),
    "no price": _load(LIST.replace("Price", "Shelf"), '"bad.csv" has no heading for a price.'),
    "no voltage": _load(LIST.replace("Voltage", "Shelf"), "has no heading for a rated voltage (d.c. or a.c.)"),
    "no heading": _load("just a letter\nto a friend\n", "has no heading for a part number, a capacitance,"),
    "heading twice": _load(
        LIST.replace("Order code", "Cap nF"), "both mean capacitance_f. Rename the one that does not"
    ),
    "missing rates": Bad("rates gone.csv", 3, 'There is no file "gone.csv".'),
    "folder for rates": Bad("rates here", 3, '"here" is a folder, not a list.', {"here/x.txt": ""}),
    "binary rates": _rates(BINARY, "it holds binary data"),
    "rates without headings": _rates("EUR,1,\n", "must begin with the headings currency,worth,dated."),
    "rates without an own": _rates("currency,worth,dated\nEUR,2,\n", "must have the worth 1, your own; none has."),
    "two own": _rates("currency,worth,dated\nEUR,1,\nGBP,1,\n", "these have: EUR, GBP"),
    "rate twice": _rates("currency,worth,dated\nEUR,1,\nEUR,2,\n", "names EUR more than once"),
    "worth of words": _rates("currency,worth,dated\nEUR,one,\n", 'line 2: "one" is not a number.'),
    "worthless": _rates("currency,worth,dated\nEUR,1,\nGBP,0,\n", 'line 3: "0" can\'t be the worth of a currency'),
    "unknown currency": _rates(
        "currency,worth,dated\nmoney,1,\n", "is not a currency. Write its three letters, like EUR."
    ),
    "rate of a bad day": _rates("currency,worth,dated\nEUR,1,soon\n", 'line 2: "soon" is not a date'),
    "rate with a comma": _rates("currency,worth,dated\nEUR,1,,\n", "4 cells where 3 are allowed"),
}
PARTS = "Ref;Value\nC1;47u 25V\n"


def _draft(text: str | bytes, status: int, sentence: str, words: str = "--out new") -> Bad:
    return Bad(f"positions bad.csv {words}", status, sentence, {"bad.csv": text})


DRAFTS = {
    "positions without a list": Bad("positions", 2, "Missing argument"),
    "missing parts list": Bad("positions gone.csv", 3, 'There is no file "gone.csv". Check the name and the folder.'),
    "folder for a parts list": Bad("positions good", 3, '"good" is a folder, not a list.'),
    "empty parts list": _draft("", 3, '"bad.csv" is empty. Save the list again, with its heading line.'),
    "blank parts list": _draft(" ;\n;;\n", 3, '"bad.csv" holds only blank lines.'),
    "binary parts list": _draft(BINARY, 3, "it holds binary data"),
    "half a UTF-16 list": _draft("C1;47µ".encode("utf-16") + b"x", 3, "begins as UTF-16 text but can't be read so"),
    "senseless parts list": _draft(b"C1;\x81\x90\xfe\n", 3, "in no other encoding that is tried does it make sense"),
    "open quotation marks in a parts list": _draft('Ref;Value\nC1;"47u\n', 3, "the quotation marks do not match"),
    "another ending of a parts list": Bad("positions bad.ods", 3, "Lists are read from", {"bad.ods": PARTS}),
    "no capacitor": _draft("Ref;Value\nR1;10k\n", 1, "No capacitor was found in the list, so nothing is written."),
    "no parts list at all": _draft("just a letter\nto a friend\n", 1, "2 lines read, 0 taken, 2 left"),
    "endless range": _draft("Ref;Value\nC1-C999999;1u\n", 1, '"C1-C999999" would be 999999 positions; one range may'),
    "positions that are there": _draft(PARTS, 5, '"good/positions.csv" exists already and is not', "--out good"),
    "file for a draft's folder": _draft(PARTS, 7, "can't be read or written", "--out shed.csv"),
}
FOLDERS = {
    "missing folder": Bad("repair gone", 5, 'There is no folder "gone". Name the folder that holds repair.toml'),
    "file for a folder": Bad("repair shed.csv", 5, 'There is no folder "shed.csv".'),
    "no repair.toml": Bad("repair bad", 5, '"bad/repair.toml" is missing.', {"bad/positions.csv": HEADINGS}),
    "no positions.csv": Bad("repair bad", 5, 'There is no file "bad/positions.csv".', {"bad/repair.toml": TOML}),
    "folder for positions.csv": Bad(
        "repair bad", 5, '"bad/positions.csv" is a folder', {"bad/repair.toml": TOML, "bad/positions.csv/x": ""}
    ),
    "folder for repair.toml": Bad(
        "repair bad", 7, '"bad/repair.toml" can\'t be read or written', {"bad/repair.toml/x": ""}
    ),
    "broken toml": _toml('name = "Radio', '"bad/repair.toml" can\'t be read: '),
    "toml of another encoding": _toml(
        'name = "Kofferradio für Öse"'.encode("cp1252"), "not UTF-8; save the file as UTF-8. Correct that place."
    ),
    "toml with a byte order mark": _toml(b"\xef\xbb\xbfhours_a_day = 25", "25 hours a day", 6),
    "unknown key": _toml("hours_per_day = 4", 'has the key "hours_per_day". Did you mean "hours_a_day"? Allowed are'),
    "text for a number": _toml('hours_a_day = "4"', 'hours_a_day is "4". Write a number without quotation marks'),
    "hours nought in toml": _toml("hours_a_day = 0", "0 hours a day", 6),
    "hours over 24 in toml": _toml("hours_a_day = 25", "C1: 25 hours a day; allowed is above 0, up to 24.", 6),
    "years over the ceiling in toml": _toml("years_wanted = 16", "C1: 16 years of life are wanted", 6),
    "section without a temperature": _toml("[sections.a]\nname = 1", 'must be tables like [sections."NAME"]'),
    "sections no table": _toml("sections = 3", 'sections must be tables like [sections."NAME"] with temperature_c'),
    "text for a temperature": _toml('[sections.a]\ntemperature_c = "40"', 'temperature_c is "40". Write a number'),
    "card without a count": _toml('[cards.a]\nsection = "x"', 'cards must be tables like [cards."NAME"] with count'),
    "weights no table": _toml("weights = 3", "weights must be a table, [weights], with lines like life = 2."),
    "weights in a list": _toml(
        "[[weights]]\nlife = 2", "weights must be a table, [weights], with lines like life = 2."
    ),
    "unknown weight in toml": _toml(
        "[weights]\nlif = 2", 'repair.toml, [weights]: "lif" is not a contribution to the score. Did you mean "life"?'
    ),
    "text for a weight": _toml('[weights]\nlife = "2"', '[weights]: life is "2". Write a number, like life = 2.'),
    "yes for a weight": _toml("[weights]\nlife = true", '[weights]: life is "True". Write a number, like life = 2.'),
    "weight below nought in toml": _toml(
        "[weights]\nlife = -2", "[weights]: The weight of life is -2; allowed is 0 to"
    ),
    "endless weight in toml": _toml("[weights]\nlife = inf", "[weights]: The weight of life is inf; allowed is 0 to"),
    "text for an uncertainty": _toml('temperature_uncertain_k = "5"', 'temperature_uncertain_k is "5". Write a number'),
    "too uncertain in toml": _toml(
        "temperature_uncertain_k = 50", "C1: the temperature is uncertain by 50 K; allowed", 6
    ),
    "no cards": _toml("[cards.a]\ncount = 0", 'the count of the card "a" is 0. Write a whole number, 1'),
    "half a card": _toml("[cards.a]\ncount = 2.5", "2.5"),
    "section that is a list": _toml('[cards.a]\ncount = 2\nsection = ["y"]', 'the section of the card "a" is'),
    "key of a section": _toml("[sections.a]\ntemperature_c = 4\ntemprature = 3", 'Did you mean "temperature_c"?'),
    "endless cards": _toml("[cards.a]\ncount = inf", "inf"),
    "card in an unknown section": _toml(
        '[cards.a]\ncount = 2\nsection = "x"', 'the card "a": the section "x" is not in repair.toml.'
    ),
    "empty positions": _positions("", '"positions.csv" is empty.'),
    "no position": _positions(f"{HEADINGS}\n", "has a heading line but no position"),
    "binary positions": _positions(BINARY, '"positions.csv" is not text'),
    "unknown heading": _positions(
        f"{HEADINGS},headrom_mm\n", 'has the heading "headrom_mm", which is none of ours. Did you'
    ),
    "heading missing": _positions(
        "reference,capacitance\nC1,47 µF\n", "needs the headings reference and marking; it has"
    ),
    "heading doubled": _positions(f"{HEADINGS},capacitance\n{ROW},1 µF\n", '"capacitance"'),
    "ragged line": _positions(f"{HEADINGS}\n{ROW}\nC2,x,1 µF\n", "line 3: 3 cells under 4 headings. Add or remove"),
    "reference empty": _positions(f"{HEADINGS}\n{ROW}\n,x,1 µF,\n", '"positions.csv", line 3: the reference is empty.'),
    "reference doubled": _positions(f"{HEADINGS}\n{ROW}\n{ROW}\n", "C1 stands in positions.csv twice."),
    "open quotation marks there": _positions(f'{HEADINGS}\n"C1,x,1,1\n', "the quotation marks do not match"),
}
AT = '"positions.csv", line 2, '
CELLS = {
    "unknown section": _cell(
        "section", "chasis", 'the section "chasis" is not in repair.toml. Did you mean "chassis"?'
    ),
    "unknown card": _cell("card", "mian", 'the card "mian" is not in repair.toml. Did you mean "main"? It has main.'),
    "unreadable cell": _cell("headroom_mm", "tall", f'{AT}headroom_mm: "tall" is not a quantity in mm. Write it'),
    "other unit": _cell("hole_spacing_mm", "5 V", f'{AT}hole_spacing_mm: "5 V" has the unit "V"'),
    "negative cell": _cell("left_mm", "-3", f'{AT}left_mm: "-3" is not above 0. Write a positive size'),
    "size nought": _cell("free_diameter_mm", "0", f'{AT}free_diameter_mm: "0" is not above 0.'),
    "negative peak": _cell("ac_peak_v", "-20", f'{AT}ac_peak_v: "-20" is below 0.'),
    "negative heat": _cell("hot_part_k", "-30", f'{AT}hot_part_k: "-30" is below 0.'),
    "megafarads": _positions(f"{HEADINGS}\nC1,x,0.1 MF,25 V\n", f'{AT}capacitance: "0.1 MF" is more than'),
    "unknown role there": _cell("role", "decoupler", f'{AT}role: "decoupler" is not allowed. Did you mean'),
    "unknown polarity": _cell("polarity", "both", f'{AT}polarity: "both" is not allowed. Write polar or bipolar'),
    "unknown style": _cell("lead_style", "raidal", f'{AT}lead_style: "raidal" is not allowed. Did you mean "radial"?'),
    "unknown class there": _cell("safety_class", "Z1", f'{AT}safety_class: "Z1" is not allowed.'),
    "unknown measuring": _cell("measured", "yes", f'{AT}measured: "yes" is not allowed. Write in circuit, one lead'),
    "bad tolerance": _cell("old_tolerance", "few", f'{AT}old_tolerance: "few" is not a tolerance. Write it like ±20 %'),
    "bad rating": _cell("old_rating", "0 V", f'{AT}old_rating: "0 V" is not a voltage above 0.'),
    "yes or no of the mains": _cell("mains", "maybe", 'mains: "maybe" is not allowed'),
    "thousands": _cell("ripple_ma", '"1,400"', "may mean thousands or a decimal comma"),
    "too hot there": _cell("temperature_c", "300", "C1: works at 300 °C; allowed is −55 to 150 °C.", 6),
    "hot part": _cell("temperature_c,hot_part_k", "100,90", "C1: works at 190 °C", 6),
    "resistance without its frequency": _cell("esr_most_ohm", "1", "is asked without its frequency", 6),
    "resistances exchanged": _cell("esr_least_ohm,esr_most_ohm,esr_hz", "2,1,100 kHz", "nothing lies between", 6),
    "capacitance without a unit": _positions(f"{HEADINGS}\nC1,x,47,25 V\n", f"{AT}capacitance"),
}
WRONG_CATALOGS: list[tuple[str, str, str, Files]] = [
    ("not a catalog", "text.duckdb", "can't be opened as a catalog", {"text.duckdb": "words"}),
    ("empty file", "nil.duckdb", "can't be opened as a catalog", {"nil.duckdb": ""}),
    ("folder for a catalog", "here", "can't be opened as a catalog", {"here/x.txt": ""}),
    ("another database", "other.duckdb", "is a database, but not a catalog of ours", {}),
    ("half a catalog", "half.duckdb", "half.duckdb", {}),
    ("catalog's folder missing", "gone/x.duckdb", "gone", {}),
]
CATALOGS = {
    f"{what}: {words.split()[0]}": Bad(f"{words} --catalog {path}", 4, sentence, files)
    for words in ("load shed.csv", "rates rates.csv", "find --capacitance '47 µF'", "repair good")
    for what, path, sentence, files in WRONG_CATALOGS
    if (what, words) != ("half a catalog", "rates rates.csv")  # where its half is whole, nothing is wrong
} | {
    "catalog missing: find": _find("--catalog gone.duckdb", 4, 'There is no catalog "gone.duckdb". Load a supplier'),
    "catalog missing: repair": Bad("repair good --catalog gone.duckdb", 4, 'There is no catalog "gone.duckdb".'),
}
OUT = {
    "file for an out folder": Bad(
        "repair good --out shed.csv", 7, '"shed.csv" can\'t be read or written: File exists.'
    ),
    "out folder below a file": Bad("repair good --out shed.csv/deep", 7, "can't be read or written: Not a directory."),
    "folder for the shopping list": Bad(
        "repair good --out o", 7, '"o/shopping-list.csv" can\'t be read or written', {"o/shopping-list.csv/x": ""}
    ),
    "folder for the page": Bad(
        "repair good --out o", 7, '"o/report.html" can\'t be read or written', {"o/report.html/x": ""}
    ),
    "file for a demo folder": Bad("demo shed.csv", 7, '"shed.csv" can\'t be read or written'),
}
BAD = WORDS | LISTS | DRAFTS | FOLDERS | CELLS | CATALOGS | OUT
