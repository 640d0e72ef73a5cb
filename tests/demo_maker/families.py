"""The invented families of aluminium capacitors: which maker, how big, how hot, how long.

Every maker and series word is made up.
"""

from dataclasses import dataclass

LOW_VOLTS = ("6.3", "10", "16", "25", "35", "50", "63", "100")
HIGH_VOLTS = ("160", "200", "250", "350", "400", "450")


@dataclass(frozen=True)
class Family:
    """One series of cans: k grows the can for the same C·V; life by diameter to 6.3 mm, to 10 mm, above."""

    maker: str
    series: str
    k: float
    rated_c: str
    life: tuple[str, str, str]
    volts: tuple[str, ...] = LOW_VOLTS
    low_uf: str = "0.47"
    high_uf: str = "10000"
    values: str = "E3"
    bodies: str = "small"
    basis: str | None = "endurance"
    reference: str | None = "ambient"
    hz: str = "120"
    low_esr: bool = False
    technology: str = "wet aluminium"
    polarity: str = "polar"
    lowest_c: str = "-40"
    tolerance: tuple[str, str] = ("-20", "20")
    plus: tuple[str, str] | None = None
    forms: tuple[str, ...] = ("straight", "formed")
    leakage: str = "0.01·C·V or 3 µA, the greater, after 2 min"


HIGH_LEAK = "0.06·C·V + 10 µA after 2 min"
BIPOLAR_LEAK = "0.03·C·V + 3 µA after 5 min"
POLYMER_LEAK = "0.2·C·V after 2 min"
TWO, FIVE = ("2000", "2000", "2000"), ("5000", "7000", "10000")
ALL_FORMS = ("straight", "formed", "cut")
STANDARD = (
    Family("Brackenhall", "Lumenfold", 0.85, "85", TWO, values="E6", plus=("0.5", "1"), forms=ALL_FORMS),
    Family("Oatmere", "Slatewing", 0.9, "85", ("1000", "2000", "2000"), hz="100", basis="load life"),
    Family("Pellwright", "Mossgate", 0.95, "85", TWO, basis=None, reference=None),
    Family("Harrowfen", "Tallowmere", 0.88, "85", TWO, values="E6", hz="100", low_uf="1", high_uf="15000"),
    Family("Brackenhall", "Copperwren", 1.0, "105", ("1000", "2000", "2000"), values="E6", forms=ALL_FORMS),
    Family("Tidewick", "Fallowbell", 0.95, "105", TWO, basis="load life", plus=("0.5", "1")),
    Family("Oatmere", "Ashlantern", 1.05, "105", TWO, values="E6", hz="100", lowest_c="-55"),
    Family("Umbrafell", "Gorsewain", 1.02, "105", ("2000", "3000", "3000"), basis="load life", tolerance=("-10", "10")),
    Family("Silberweide", "Haldenmoos", 0.98, "105", TWO, hz="100", values="E6", plus=("0.5", "1.5")),
)
LONG = (
    Family("Pellwright", "Dovetarn", 1.15, "105", FIVE, values="E6", basis="load life", forms=ALL_FORMS),
    Family("Silberweide", "Ryebarrow", 1.15, "105", ("4000", "6000", "8000"), hz="100", basis="useful life"),
    Family("Tidewick", "Oldersway", 1.2, "105", ("5000", "5000", "10000"), reference="case", plus=("0.5", "1")),
    Family("Harrowfen", "Larkstile", 1.5, "125", ("2000", "3000", "5000"), basis="load life", lowest_c="-55"),
)
LESS_OHMS = (
    Family("Oatmere", "Winterloam", 1.25, "105", ("2000", "3000", "5000"), low_uf="10", values="E6", low_esr=True),
    Family("Umbrafell", "Hazelquay", 1.2, "105", ("4000", "7000", "10000"), low_uf="10", low_esr=True, lowest_c="-55"),
    Family(
        "Brackenhall", "Peatglow", 1.3, "105", ("2000", "4000", "5000"), low_uf="4.7", low_esr=True, plus=("0.5", "1")
    ),
)
LOWEST = (
    Family("Harrowfen", "Stonewhit", 1.05, "85", ("1000", "1000", "2000"), bodies="low", high_uf="470"),
    Family(
        "Silberweide", "Willowpin", 1.15, "105", TWO, bodies="low", high_uf="470", plus=("0.5", "1"), basis="load life"
    ),
)
HIGH = (
    Family("Pellwright", "Kettlefrost", 2.0, "85", TWO, HIGH_VOLTS, "1", "470", leakage=HIGH_LEAK, lowest_c="-25"),
    Family("Tidewick", "Saltmarrow", 2.3, "105", FIVE, HIGH_VOLTS, "1", "330", "E6", leakage=HIGH_LEAK, lowest_c="-25"),
)
BIPOLAR = (
    Family(
        *("Quernby", "Twinmarsh", 1.9, "85", TWO, ("16", "25", "35", "50", "63", "100"), "1", "470", "E6"),
        polarity="bipolar",
        leakage=BIPOLAR_LEAK,
        forms=("straight",),
    ),
    Family(
        "Oatmere",
        "Evenbrook",
        2.0,
        "105",
        TWO,
        ("16", "25", "50"),
        "1",
        "220",
        polarity="bipolar",
        leakage=BIPOLAR_LEAK,
    ),
    Family(
        *("Quernby", "Evenpebble", 2.0, "85", ("1000",) * 3, ("16", "25", "50"), "0.47", "47", "E3", "low"),
        polarity="bipolar",
        leakage=BIPOLAR_LEAK,
    ),
)
AXIALS = (
    Family(
        *("Quernby", "Spindlewick", 1.6, "85", TWO, ("16", "25", "40", "63", "100"), "1", "4700", "E3", "axial"),
        hz="100",
        tolerance=("-10", "50"),
        forms=("straight",),
    ),
    Family(
        *("Umbrafell", "Reedspan", 1.9, "105", FIVE, ("25", "40", "63", "100"), "4.7", "2200", "E3", "axial"),
        hz="100",
        forms=("straight",),
    ),
)
SNAPS = (
    Family(
        "Harrowfen", "Boulderay", 0.95, "85", TWO, ("25", "35", "50", "63", "80", "100"), "1000", "47000", bodies="snap"
    ),
    Family(
        "Pellwright", "Cairnfold", 1.15, "105", FIVE, ("35", "50", "63", "100"), "1000", "33000", "E6", bodies="snap"
    ),
    Family("Pellwright", "Kilnshadow", 2.0, "105", TWO, HIGH_VOLTS, "47", "1000", "E6", "snap", leakage=HIGH_LEAK),
)
SOLID = (
    Family(
        *("Silberweide", "Glasswold", 0.75, "105", TWO, ("4", "6.3", "10", "16", "25"), "10", "1500", "E6", "polymer"),
        low_esr=True,
        technology="polymer aluminium",
        lowest_c="-55",
        leakage=POLYMER_LEAK,
    ),
    Family(
        *("Umbrafell", "Brightfen", 0.9, "105", ("5000",) * 3, ("6.3", "10", "16", "25", "35"), "10", "1000", "E3"),
        bodies="polymer",
        low_esr=True,
        technology="polymer aluminium",
        lowest_c="-55",
        leakage=POLYMER_LEAK,
    ),
    Family(
        *(
            "Silberweide",
            "Mingleford",
            0.8,
            "125",
            ("4000",) * 3,
            ("25", "35", "50", "63"),
            "10",
            "330",
            "E6",
            "polymer",
        ),
        low_esr=True,
        technology="hybrid aluminium",
        lowest_c="-55",
    ),
)
FAMILIES = (*STANDARD, *LONG, *LESS_OHMS, *LOWEST, *HIGH, *BIPOLAR, *AXIALS, *SNAPS, *SOLID)
