"""What the four lists look like: file, headings in order, units."""

from dataclasses import dataclass

HEADINGS = """
supplier_number    | Stock no.           | Bestellnummer         | Our code    | Lot
maker              | Manufacturer        | Hersteller            | Mfr         | Maker
part_number        | Part number         | Herstellernummer      | Mfr part no | Maker's number
series             | Series              | Baureihe              | Family      | Series
technology         | Technology          | Technologie           | Dielectric  | Kind
polarity           | Polarity            | Polung                | Polarity    | Polarity
capacitance_f      | Capacitance         | Kapazität             | Cap uF      | Capacitance [µF]
tolerance          | Tolerance           | Toleranz              | Tol %       | Tolerance
rated_v            | Rated voltage       | Nennspannung          | Voltage     | Voltage d.c. [V]
rated_ac_v         | AC voltage          | Wechselspannung       | V AC        | Voltage a.c. [V]
lowest_c           | Lowest temperature  | Temperatur min.       | Tmin C      | Temp. low [°C]
rated_c            | Highest temperature | Temperatur max.       | Tmax C      | Temp. high [°C]
life_h             | Life                | Lebensdauer           | Life h      | Life [h]
life_basis         | Life basis          | Lebensdauer gilt als  | Life basis  | Life means
life_reference     | Life taken at       | Bezugspunkt           |             |
tan_delta          | tan δ               | Verlustfaktor         | tan d       | Loss factor
tan_delta_hz       | tan δ frequency     | Verlustfaktor bei     | tan d Hz    | Loss factor at [Hz]
esr_ohm            | ESR                 | ESR                   | ESR mOhm    | ESR [Ω]
esr_hz             | ESR frequency       | ESR bei               | ESR at Hz   | ESR at [kHz]
ripple_a           | Ripple current      | Rippelstrom           | Ripple mA   | Ripple [A]
ripple_hz          | Ripple frequency    | Rippelfrequenz        | Ripple Hz   | Ripple at [Hz]
leakage_rule       | Leakage             | Reststrom             |             |
style              | Style               | Bauform               | Style       | Style
size               |                     |                       | Size mm     |
diameter           | Diameter            | Ø                     |             | Ø [mm]
length             | Length              | Länge                 |             | L [mm]
width              | Width               | Breite                |             | W [mm]
height             | Height              | Höhe                  |             | H [mm]
diameter_plus      | Diameter plus       | Ø plus                |             |
length_plus        | Length plus         | Länge plus            |             |
lead_spacing_mm    | Lead spacing        | Rastermaß             | Pitch mm    | Lead spacing [mm]
delivered_spacing_mm | Delivered spacing | Rastermaß geliefert   |             | As delivered [mm]
lead_diameter_mm   | Lead diameter       | Drahtdurchmesser      | Lead dia mm | Wire Ø [mm]
lead_form          | Lead form           | Anschlussform         |             |
lead_length_mm     | Lead length         | Drahtlänge            |             |
vent               | Vent                | Ventil                | Vent        |
safety_class       | Safety class        | Entstörklasse         | Safety      | Safety class
life_cycle         | Life cycle          | Status                | Status      |
condition          |                     |                       |             | Condition
date_code          |                     |                       |             | Date code
traceable          | Traceable           | Rückverfolgbar        |             | Traceable
stock              | Stock               | Bestand               | Stock       | Stock
minimum            | Minimum             | Mindestmenge          | MOQ         | Min. order
pack               | Pack                | Packung               | Pack        | Multiples of
lead_time_days     | Lead time [days]    | Lieferzeit [Tage]     | Lead days   |
1                  | Price 1+            | Preis ab 1            | Price       |
10                 | Price 10+           | Preis ab 10           | 10+         |
100                | Price 100+          | Preis ab 100          | 100+        |
500                |                     |                       | 500+        |
1000               | Price 1000+         |                       |             |
from_quantity      |                     |                       |             | From qty
unit_price         |                     |                       |             | Unit price
currency           | Currency            | Währung               | Currency    | Currency
date_seen          |                     |                       |             | Date seen
remark             | Remarks             | Bemerkung             | Aisle       | Bin
"""
INVENTED = "Invented demonstration data: no maker, part, supplier or price in this list exists."
ERFUNDEN = "Erfundene Beispieldaten: kein Hersteller, Teil, Lieferant oder Preis dieser Liste existiert."


@dataclass(frozen=True)
class Layout:
    """One list: its file, its slots with their headings in order, and how numbers are written."""

    index: int
    file: str
    preamble: tuple[str, ...]
    slots: dict[str, str]
    units_in_cells: bool
    comma: bool = False
    scale: tuple[tuple[str, int], ...] = ()

    @property
    def supplier(self) -> str:
        """The supplier's name: the file's stem as words."""
        return self.file.rpartition(".")[0].replace("_", " ")


def headings(index: int) -> dict[str, str]:
    """Slot → heading of one list, in the order of its columns."""
    lines = [[cell.strip() for cell in line.split("|")] for line in HEADINGS.strip().splitlines()]
    return {cells[0]: cells[1 + index] for cells in lines if cells[1 + index]}


LAYOUTS = (
    Layout(0, "Fernwhistle_Parts.csv", ("Fernwhistle Parts, price list", INVENTED), headings(0), True),
    Layout(1, "Kupferlaub_Versand.csv", (ERFUNDEN,), headings(1), True, comma=True),
    Layout(
        *(2, "Osierdown_Components.xlsx", (INVENTED, "Osierdown Components: all prices in pounds"), headings(2), False),
        scale=(("capacitance_f", 6), ("ripple_a", 3), ("esr_ohm", 3)),
    ),
    Layout(
        *(3, "Duskpenny_Surplus.csv", (INVENTED,), headings(3), False),
        scale=(("capacitance_f", 6), ("esr_hz", -3)),
    ),
)
