"""How a claim is written in a cell of each list, and what of a part a list states at all."""

from datetime import date
from decimal import Decimal

from demo_maker.layouts import Layout
from demo_maker.offers import Offer
from demo_maker.values import Claims, Value, number, plain
from demo_maker.words import ON_ORDER, WORDS

Cell = str | Decimal | date
PREFIXES = {"F": ((-6, "µ"), (-9, "n"), (-12, "p")), "A": ((0, ""), (-3, "m")), "Ω": ((0, ""), (-3, "m"))}
UNITS = {"f": "F", "v": "V", "c": "°C", "h": "h", "hz": "Hz", "ohm": "Ω", "a": "A", "mm": "mm"}
SIZES = {
    **{("can", "diameter"): "along_mm", ("can", "length"): "tall_mm", ("axial", "diameter"): "across_mm"},
    **{("axial", "length"): "along_mm", ("box", "length"): "along_mm", ("box", "width"): "across_mm"},
    **{("box", "height"): "tall_mm", ("can", "diameter_plus"): "along_plus_mm", ("can", "length_plus"): "tall_plus_mm"},
}
SIZE_SLOTS = {slot for _, slot in SIZES}
BY_STYLE = ("shape", "along_mm", "across_mm", "tall_mm")


def stated(layout: Layout, offer: Offer) -> Claims:
    """What the list states of an offer: the terms it has columns for."""
    carried = {*layout.slots, *BY_STYLE, "tolerance_low_pct", "tolerance_high_pct", "condition"}
    if "diameter_plus" in layout.slots:
        carried |= {"along_plus_mm", "across_plus_mm", "tall_plus_mm"}
    claims = {term: value for term, value in offer.claims.items() if term in carried}
    if layout.index in (1, 3) and str(offer.claims["technology"]).startswith(("film", "ceramic")):
        claims["polarity"] = None
    if offer.claims.get("lead_form") == "snap-in":
        claims["lead_form"] = "snap-in"
    return claims | {"supplier": layout.supplier}


def style(claims: Claims) -> str:
    """The word for outline and leads together."""
    if claims.get("lead_form") == "snap-in":
        return "snap-in"
    return "radial" if claims["shape"] == "can" else str(claims["shape"])


def cell(layout: Layout, slot: str, claims: Claims) -> Cell:
    """The cell of one slot that is not a price."""
    if slot == "tolerance":
        return tolerance(layout, claims)
    if slot == "size":
        return size_cell(claims)
    if slot in SIZE_SLOTS:
        term = SIZES.get((str(claims["shape"]), slot), "")
        return quantity(layout, term, claims.get(term))
    value = style(claims) if slot == "style" else claims.get(slot)
    if slot == "stock":
        return stock(layout, value)
    if slot in WORDS:
        return WORDS[slot][str(value)][layout.index] if value else ""
    return quantity(layout, slot, value) if isinstance(value, Decimal) else value or ""


def stock(layout: Layout, value: Value) -> Cell:
    """Pieces, more than a thousand, or on order."""
    if value == 0:
        return ON_ORDER[layout.index]
    if value == 1000 and layout.index in (1, 3):
        return ">1000"
    return quantity(layout, "stock", value)


def tolerance(layout: Layout, claims: Claims) -> Cell:
    """Both tolerances in one cell."""
    if claims.get("tolerance_low_pct") is None:
        return ""
    low, high = number(claims, "tolerance_low_pct"), number(claims, "tolerance_high_pct")
    sign = "" if layout.index == 2 else " %"
    if -low != high:
        return f"{plain(low)}/+{plain(high)}{sign}"
    return high if layout.index == 2 else f"±{decimal_text(layout, high)}{sign}"


def size_cell(claims: Claims) -> str:
    """Ø×L or L×W×H in one cell; the diameter alone when the length is not given."""
    along, across, tall = (claims.get(term) for term in ("along_mm", "across_mm", "tall_mm"))
    if claims["shape"] == "can":
        return f"{along}x{tall}" if tall else f"Ø{along}"
    return f"{across}x{along}" if claims["shape"] == "axial" else f"{along}x{across}x{tall}"


def quantity(layout: Layout, term: str, value: Value) -> Cell:
    """A number as the list writes it: with its unit, or bare in the heading's unit."""
    if not isinstance(value, Decimal):
        return ""
    if layout.index == 2 and term == "rated_v":
        digits = plain(value)
        return digits.replace(".", "V") if "." in digits else f"{digits}V"
    if not layout.units_in_cells:
        bare = value.scaleb(dict(layout.scale).get(term, 0))
        return bare if layout.index == 2 else plain(bare)
    ending = term.rpartition("_")[2]
    unit = UNITS.get(ending, "") if "_" in term else ""
    return with_unit(layout, value, unit)


def with_unit(layout: Layout, value: Decimal, unit: str) -> str:
    """A number with prefix and unit."""
    prefixes = ((3, "k"),) if unit == "Hz" and value >= 1000 else PREFIXES.get(unit, ((0, ""),))
    least = Decimal(1) if unit == "A" else Decimal("0.1")
    exponent, prefix = next((one for one in prefixes if value.scaleb(-one[0]) >= least), prefixes[-1])
    text = decimal_text(layout, value.scaleb(-exponent))
    written = f"{text} {prefix}{unit}".rstrip()
    return written.replace("µF", "uF").replace("Ω", "Ohm") if layout.index == 1 else written


def decimal_text(layout: Layout, value: Decimal) -> str:
    """Digits with the list's decimal sign."""
    return plain(value).replace(".", ",") if layout.comma else plain(value)
