"""What suppliers write above a column, in plain lower case without dots, and the kind of cell it announces."""

from collections.abc import Mapping

from subsearch.reading.cells import BODY, BODY_PLUS
from subsearch.terms import TERMS

PRICE_WORDS = ("price", "unit price", "price each", "each", "preis", "stückpreis", "einzelpreis", "price per piece")

SPOKEN: Mapping[str, str] = {
    "supplier": "distributor, seller, lieferant, händler",
    "supplier_number": "stock no, stock number, order code, order no, our code, lot, sku, bestellnummer, bestell-nr, "
    "artikelnummer, artikel-nr, item no, item number",
    "maker": "manufacturer, mfr, brand, made by, hersteller, marke",
    "part_number": "part no, mfr part no, mfr part number, manufacturer part number, maker's number, mpn, "
    "herstellernummer, hersteller-nr, hersteller-teilenummer",
    "series": "family, baureihe, serie, reihe",
    "technology": "dielectric, kind, construction, technologie, bauart, dielektrikum",
    "polarity": "polung, polarität",
    "capacitance_f": "capacitance, cap, value, capacity, kapazität, wert",
    "tolerance": "tol, cap tol, toleranz",
    "tolerance_low_pct": "tolerance low, tolerance minus, toleranz minus",
    "tolerance_high_pct": "tolerance high, tolerance plus, toleranz plus",
    "rated_v": "rated voltage, voltage, volts, v dc, dc voltage, voltage dc, voltage d c, vdc, working voltage, v, "
    "nennspannung, spannung, nenngleichspannung",
    "rated_ac_v": "ac voltage, voltage ac, voltage a c, v ac, vac, rated ac voltage, wechselspannung, "
    "nennwechselspannung",
    "temperatures": "temperature range, category temperature, temperaturbereich",
    "lowest_c": "lowest temperature, tmin, temp low, temp min, min temperature, temperatur min, temperature min",
    "rated_c": "highest temperature, tmax, temp high, temp max, max temperature, temperature, temp, temperatur max, "
    "temperature max, temperatur, rated temperature",
    "life_h": "life, endurance, lifetime, load life, useful life, lebensdauer",
    "life_basis": "life means, life is, lebensdauer gilt als",
    "life_reference": "life taken at, temperature taken at, bezugspunkt",
    "tan_delta": "tan δ, tan d, loss factor, dissipation factor, df, verlustfaktor, tan delta",
    "tan_delta_hz": "tan δ frequency, tan d, tan δ, tan δ at, tan d at, loss factor at, loss factor frequency, "
    "verlustfaktor bei",
    "esr_ohm": "esr, series resistance, serienwiderstand, ersatzserienwiderstand",
    "esr_hz": "esr frequency, esr at, esr bei",
    "ripple_a": "ripple, ripple current, rated ripple, rated ripple current, rippelstrom, nennrippelstrom",
    "ripple_hz": "ripple frequency, ripple at, ripple, rippelfrequenz, rippelstrom bei",
    "leakage_rule": "leakage, leakage current, reststrom, leckstrom",
    "leakage_factor": "leakage per cv",
    "leakage_plus_a": "leakage plus",
    "leakage_floor_a": "leakage at least",
    "shape": "outline, gehäuseform",
    "style": "lead style, mounting, bauform, ausführung",
    "diameter_mm": "diameter, dia, ø, d, durchmesser",
    "length_mm": "length, l, body length, länge",
    "width_mm": "width, w, breite, b",
    "height_mm": "height, h, höhe",
    "diameter_plus_mm": "diameter plus, ø plus, durchmesser plus",
    "length_plus_mm": "length plus, länge plus",
    "size": "body size, dimensions, case size, dim, maße, abmessungen, größe",
    "along_mm": "size along, body along",
    "across_mm": "size across, body across",
    "tall_mm": "size tall, body height",
    "along_plus_mm": "size along plus",
    "across_plus_mm": "size across plus, width plus, breite plus",
    "tall_plus_mm": "size tall plus, height plus, höhe plus",
    "lead_spacing_mm": "lead spacing, pitch, spacing, rastermaß, raster, rm",
    "delivered_spacing_mm": "delivered spacing, as delivered, spacing as delivered, rastermaß geliefert",
    "lead_diameter_mm": "lead diameter, lead dia, wire diameter, wire ø, lead ø, drahtdurchmesser, draht-ø",
    "lead_form": "leads, lead forming, anschlussform",
    "lead_length_mm": "lead length, drahtlänge",
    "vent": "relief, ventil, sollbruchstelle",
    "safety_class": "safety, class, x/y class, entstörklasse, sicherheitsklasse",
    "life_cycle": "status, lifecycle",
    "currency": "währung",
    "stock": "in stock, available, quantity in stock, bestand, lager, lagerbestand, verfügbar",
    "minimum": "moq, min order, minimum order, minimum quantity, min qty, mindestmenge, mindestbestellmenge",
    "pack": "multiples of, multiple, pack size, packing unit, packung, packungseinheit, ve",
    "lead_time_days": "lead time, lead days, lieferzeit",
    "date_seen": "seen, seen on, gesehen am",
    "date_bought": "bought, bought on, gekauft am",
    "condition": "zustand",
    "date_code": "d/c, datumscode",
    "traceable": "traceability, rückverfolgbar",
    "from_quantity": "from qty, from, qty from, break, break qty, ab menge, ab stück",
    "unit_price": ", ".join(PRICE_WORDS),
}


def _names() -> Mapping[str, tuple[str, ...]]:
    names: dict[str, list[str]] = {}
    for kind, spoken in SPOKEN.items():
        own = kind.replace("_", " ")
        for name in (own, *spoken.casefold().split(", ")):
            kinds = names.setdefault(name, [])
            if kind not in kinds:
                kinds.append(kind)
    return {name: tuple(kinds) for name, kinds in names.items()}


NAMES = _names()
UNITS: Mapping[str, str] = {
    **{name: term.unit for name, term in TERMS.items()},
    **dict.fromkeys((*BODY, *BODY_PLUS, "size"), "mm"),
    "temperatures": "°C",
    "tolerance": "%",
    "lead_time_days": "days",
}
