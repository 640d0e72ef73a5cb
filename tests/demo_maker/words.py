"""The words each list uses for our words: list 1 to 4, in this order."""

SAME = ("", "", "", "")
WORDS: dict[str, dict[str, tuple[str, str, str, str]]] = {
    "technology": {
        "wet aluminium": ("Al electrolytic", "Elektrolyt (nass)", "aluminium electrolytic", "Elko"),
        "polymer aluminium": ("polymer Al", "Polymer-Elko", "solid polymer", "polymer"),
        "hybrid aluminium": ("hybrid Al", "Hybrid-Elko", "hybrid polymer", "hybrid"),
        "tantalum": ("tantalum", "Tantal", "tantalum bead", "tantalum"),
        "film PET": ("PET film", "PET-Folie", "polyester film", "polyester"),
        "film PP": ("PP film", "PP-Folie", "polypropylene film", "polypropylene"),
        "ceramic C0G": ("C0G ceramic", "Keramik C0G", "ceramic C0G", "C0G"),
        "ceramic class 2": ("class 2 ceramic", "Keramik Klasse 2", "ceramic class 2", "class 2"),
    },
    "polarity": {
        "polar": ("polar", "gepolt", "polarised", "polar"),
        "bipolar": ("bipolar", "ungepolt", "non-polarised", "bipolar"),
    },
    "style": {
        "radial": ("radial", "radial", "radial", "radial"),
        "axial": ("axial", "axial", "axial", "axial"),
        "snap-in": ("snap-in", "snap-in", "snap-in", "snap-in"),
        "box": ("box", "Quader", "box", "box"),
    },
    "life_basis": {
        "endurance": ("endurance", "Dauerprüfung", "endurance", "endurance"),
        "load life": ("load life", "Lastprüfung", "load life", "load life"),
        "useful life": ("useful life", "Brauchbarkeitsdauer", "useful life", "useful life"),
    },
    "life_reference": {"ambient": ("ambient", "Umgebung", "", ""), "case": ("case", "Gehäuse", "", "")},
    "lead_form": {
        "straight": ("straight", "gerade", "", ""),
        "formed": ("taped and formed", "geformt", "", ""),
        "cut": ("cut", "gekürzt", "", ""),
        "snap-in": SAME,
    },
    "vent": {"vented": ("vented", "mit Ventil", "vented", ""), "none": ("none", "ohne", "none", "")},
    "safety_class": {
        **{name: (name, name, name, name) for name in ("X1", "X2", "Y1", "Y2")},
        "none": ("none", "keine", "none", "none"),
    },
    "life_cycle": {
        "active": ("active", "aktiv", "active", ""),
        "not for new designs": ("not for new designs", "nicht für Neuentwicklungen", "NRND", ""),
        "discontinued": ("discontinued", "abgekündigt", "obsolete", ""),
    },
    "traceable": {"yes": ("yes", "ja", "", "yes"), "no": ("no", "nein", "", "no")},
}
ON_ORDER = ("on order", "auf Bestellung", "on order", "on order")
