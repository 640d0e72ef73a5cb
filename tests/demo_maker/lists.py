"""The four lists as lines of cells, each with what a reader must keep or refuse of it."""

from dataclasses import dataclass, field
from decimal import Decimal

from demo_maker.dice import Dice
from demo_maker.layouts import Layout
from demo_maker.offers import Offer, Prices
from demo_maker.spoils import Fault, Spoil
from demo_maker.values import Claims, plain
from demo_maker.words import WORDS
from demo_maker.writing import Cell, cell, decimal_text, stated

REMARKS = ("please ask for samples", "from several makers' lots", "", "", "", "", "", "", "")
UNIT_OF_SLOT = {
    **{"capacitance_f": "µF", "rated_v": "V", "rated_c": "°C", "length": "mm", "width": "mm", "lead_spacing_mm": "mm"},
}


@dataclass
class Line:
    """One line of a list: its cells, what it states, its prices, and its faults (none: it is kept)."""

    cells: list[Cell]
    claims: Claims
    prices: Prices
    faults: tuple[Fault, ...] = field(default=())


def clean_lines(layout: Layout, offer: Offer, dice: Dice) -> list[Line]:
    """The lines of one offer: one, or one for each price break."""
    claims = stated(layout, offer)
    if "from_quantity" not in layout.slots:
        return [Line(row(layout, claims, offer.prices, dice), claims, offer.prices)]
    return [Line(row(layout, claims, [price], dice), claims, [price]) for price in offer.prices]


def row(layout: Layout, claims: Claims, prices: Prices, dice: Dice) -> list[Cell]:
    """All cells of a line."""
    remark = dice.pick(REMARKS) if layout.index < 2 else f"{dice.pick('ABCDEF')}{dice.between(1, 40)}"
    known: dict[str, Cell] = {"remark": remark}
    if "from_quantity" in layout.slots:
        known |= {"from_quantity": str(prices[0][0]), "unit_price": plain(prices[0][1])}
    found = {str(quantity): price for quantity, price in prices}
    for slot in layout.slots:
        if slot not in known:
            known[slot] = price_cell(layout, found.get(slot)) if slot.isdigit() else cell(layout, slot, claims)
    return [known[slot] for slot in layout.slots]


def price_cell(layout: Layout, price: Decimal | None) -> Cell:
    """A price in its own column."""
    if price is None:
        return ""
    return price if layout.index == 2 else decimal_text(layout, price)


def places(layout: Layout, slot: str) -> list[int]:
    """The columns of a slot; prices stand in several where each break has its own."""
    names = list(layout.slots)
    if slot == "unit_price" and slot not in names:
        return [index for index, name in enumerate(names) if name.isdigit()]
    return [names.index(slot)]


def spoiled(layout: Layout, line: Line, spoil: Spoil) -> Line:
    """A copy of a clean line with texts that nobody can read as the thing they stand for."""
    cells = list(line.cells)
    for slot, text in spoil.texts.items():
        columns = places(layout, slot)
        filled = [column for column in columns if cells[column] != ""]
        for column in columns if not text else (filled or columns)[-1:]:
            cells[column] = written(layout, slot, text)
        if slot == "style":
            for other in ("size", "diameter", "length", "width", "height", "diameter_plus", "length_plus"):
                for column in places(layout, other) if other in layout.slots else []:
                    cells[column] = ""
    if "rated_v" in spoil.texts and not spoil.texts["rated_v"]:
        cells[places(layout, "rated_ac_v")[0]] = ""
    return Line(cells, line.claims, line.prices, spoil.faults)


def written(layout: Layout, slot: str, text: str) -> Cell:
    """A spoiled text in the list's own decimal sign and units."""
    if layout.units_in_cells and text.lstrip("-").isdigit() and slot in UNIT_OF_SLOT:
        text = f"{text} {UNIT_OF_SLOT[slot]}"
    if layout.index == 1:
        text = text.replace(".", ",").replace("Ω", "Ohm").replace("µF", "uF")
    if layout.index == 2 and slot == "rated_v" and text.lstrip("-").isdigit():
        return f"{text} V"
    if layout.index == 2 and text.lstrip("-").replace(".", "").isdigit():
        return Decimal(text)
    if text == "polar":
        return WORDS["polarity"]["polar"][layout.index]
    return text


def rising(layout: Layout, line: Line) -> Line:
    """A copy whose price rises with the quantity."""
    cells = list(line.cells)
    quantities = [str(quantity) for quantity, _ in line.prices]
    last = line.prices[-1][1]
    cells[places(layout, quantities[-1])[0]] = price_cell(layout, last + line.prices[0][1] * 2)
    return Line(cells, line.claims, line.prices, (("unit_price", "breaks"),))
