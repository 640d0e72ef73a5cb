"""Film boxes, interference suppressors, rolled film, ceramics and tantalum beads."""

from dataclasses import dataclass
from decimal import Decimal

from demo_maker import bodies
from demo_maker.cans import fate
from demo_maker.dice import Dice
from demo_maker.values import Claims, preferred

AC_OF_DC = {
    **{"50": "30", "63": "40", "100": "63", "160": "90", "250": "160", "400": "200", "630": "220"},
    "1000": "250",
}


@dataclass(frozen=True)
class Film:
    """One series of boxes: volume = start + k·C·V^1.3 for d.c. parts, start + k·C for suppressors (C in µF)."""

    maker: str
    series: str
    technology: str
    volts: tuple[str, ...]
    low_uf: str
    high_uf: str
    values: str
    pitches: tuple[str, ...]
    k: float
    tolerances: tuple[str, ...] = ("5", "10")
    loss: str = "0.008"
    rated_c: str = "100"
    safety: str | None = "none"
    ac_v: str | None = None
    life: str | None = None


PET, PP = "film PET", "film PP"
NEAR, FAR = ("5",), ("15", "22.5", "27.5", "37.5")
FILMS = (
    Film("Oatmere", "Foilwater", PET, ("63", "100", "250", "400"), "0.001", "10", "E6", NEAR, 1.1),
    Film("Tidewick", "Leafstead", PET, ("63", "100", "250", "400", "630"), "0.001", "10", "E6", ("7.5", "10"), 1.2),
    Film("Quernby", "Sheetrow", PET, ("100", "250", "400", "630"), "0.01", "22", "E6", FAR, 1.3),
    Film("Brackenhall", "Thinvale", PET, ("63", "100", "250"), "0.01", "2.2", "E12", NEAR, 1.2, ("5",), rated_c="125"),
    Film(
        "Oatmere",
        "Clearsedge",
        PP,
        ("100", "160", "250"),
        "0.0001",
        "1",
        "E6",
        ("5", "10"),
        2.6,
        ("2.5", "5"),
        "0.0006",
    ),
    Film(
        "Tidewick", "Pollenway", PP, ("160", "250", "400", "630", "1000"), "0.001", "47", "E6", FAR, 2.8, loss="0.0005"
    ),
    Film(
        "Umbrafell",
        "Driftpane",
        PP,
        ("250", "400", "630", "1000"),
        "0.01",
        "22",
        "E12",
        FAR,
        3.0,
        ("5",),
        "0.0004",
        "85",
    ),
)
SUPPRESSORS = (
    Film(
        "Quernby", "Wardlace", PP, ("630",), "0.001", "4.7", "E6", FAR, 8000, ("10", "20"), "0.001", "105", "X2", "275"
    ),
    Film(
        "Harrowfen",
        "Hushgrove",
        PET,
        ("630",),
        "0.01",
        "2.2",
        "E6",
        FAR,
        7500,
        ("20",),
        "0.01",
        "100",
        "X2",
        "305",
        "1000",
    ),
    Film("Quernby", "Stillmantle", PP, ("1000",), "0.001", "1", "E6", FAR, 13000, ("20",), "0.001", "105", "X1", "440"),
    Film(
        *(
            "Harrowfen",
            "Quietspar",
            PP,
            ("1000",),
            "0.001",
            "0.22",
            "E6",
            ("10", "15", "22.5", "27.5"),
            38000,
            ("10", "20"),
        ),
        *("0.001", "110", "Y2", "300"),
    ),
    Film(
        "Quernby", "Doubleward", PP, ("1600",), "0.001", "0.01", "E6", FAR, 150000, ("20",), "0.001", "105", "Y1", "500"
    ),
)
ROLLED = (("0.1", "4.7"), ("160", "250", "400"))


def film_parts(film: Film, dice: Dice) -> list[Claims]:
    """Every box of a series, without part numbers yet."""
    made: list[Claims] = []
    for volts in film.volts:
        for uf in preferred(film.values, film.low_uf, film.high_uf):
            volume = 90 + film.k * float(uf) * (1 if film.ac_v else float(volts) ** 1.3)
            fitting = [box for box in bodies.boxes(film.pitches) if bodies.box_volume(box) >= volume]
            for tolerance in film.tolerances if fitting else ():
                made.append(film_part(film, uf, volts, fitting[0], tolerance) | fate(dice))
    return made


def film_part(film: Film, uf: Decimal, volts: str, box: tuple[str, str, str, str], tolerance: str) -> Claims:
    """The claims a maker prints for one box."""
    return {
        **{"maker": film.maker, "series": film.series, "technology": film.technology, "polarity": "bipolar"},
        **{"rated_v": Decimal(volts), "rated_ac_v": Decimal(film.ac_v or AC_OF_DC[volts])},
        **{"lowest_c": Decimal(-55 if film.technology == PP else -40), "rated_c": Decimal(film.rated_c)},
        **({"life_h": Decimal(film.life), "life_basis": "endurance"} if film.life else {}),
        **{"tan_delta": Decimal(film.loss), "tan_delta_hz": Decimal(1000), "safety_class": film.safety},
        **{"lead_form": "straight", "lead_length_mm": Decimal(17 if film.safety == "none" else 6), "vent": "none"},
        "lead_diameter_mm": Decimal(bodies.BOXES[box[0]][2]),
        **boxed(uf, box, tolerance),
    }


def boxed(uf: Decimal, box: tuple[str, str, str, str], tolerance: str) -> Claims:
    """Capacitance, tolerance and the outline of a box (spacing, length, width, height)."""
    spacing, along, across, tall = (Decimal(size) for size in box)
    return {
        **{"capacitance_f": uf.scaleb(-6), "shape": "box", "lead_spacing_mm": spacing},
        **{"tolerance_low_pct": -Decimal(tolerance), "tolerance_high_pct": Decimal(tolerance)},
        **{"along_mm": along, "across_mm": across, "tall_mm": tall},
    }


def rolled_parts(dice: Dice) -> list[Claims]:
    """Axial film parts, for old tag strips and crossovers."""
    made: list[Claims] = []
    for volts in ROLLED[1]:
        for uf in preferred("E6", *ROLLED[0]):
            volume = 200 + 3.2 * float(uf) * float(volts) ** 1.3
            size = bodies.smallest(bodies.AXIAL, volume)
            if size is None:
                continue
            diameter, length = Decimal(size[0]), Decimal(size[1])
            made.append(
                {
                    **{"maker": "Tidewick", "series": "Rollbarrow", "technology": PP, "polarity": "bipolar"},
                    **boxed(uf, ("1", size[1], size[0], size[0]), "5"),
                    **{"shape": "axial", "lead_spacing_mm": None, "along_mm": length, "tall_mm": diameter},
                    **{"rated_v": Decimal(volts), "rated_ac_v": Decimal(AC_OF_DC[volts]), "safety_class": "none"},
                    **{"lowest_c": Decimal(-40), "rated_c": Decimal(85), "vent": "none", "lead_form": "straight"},
                    **{"tan_delta": Decimal("0.0005"), "tan_delta_hz": Decimal(1000)},
                    **{"lead_diameter_mm": Decimal("0.8"), "lead_length_mm": Decimal(35)},
                    **fate(dice),
                }
            )
    return made
