"""Clean and spoiled lines put together: what each file holds, in order."""

from decimal import Decimal
from functools import lru_cache

from demo_maker.dice import Dice
from demo_maker.layouts import LAYOUTS, Layout
from demo_maker.lists import Line, clean_lines, places, rising, spoiled
from demo_maker.offers import DUSKPENNY, Offer, make_offer, make_offers, numbered
from demo_maker.parts import make_parts
from demo_maker.spoils import spoils_of
from demo_maker.values import Claims

BASES = {"any": ("can",), "can": ("can",), "film": ("box",)}


@lru_cache(maxsize=4)
def build(seed: int) -> tuple[list[Line], ...]:
    """The data lines of the four lists."""
    stock = make_parts(seed)
    lists = make_offers(stock.listed, seed)
    spare = list(stock.held_back)
    return tuple(
        fill(layout, offers, spare, Dice(seed, f"lines {layout.index}"))
        for layout, offers in zip(LAYOUTS, lists, strict=True)
    )


def fill(layout: Layout, offers: list[Offer], spare: list[Claims], dice: Dice) -> list[Line]:
    """The lines of one list: offers in order, spoiled lines strewn between them, copies after their originals."""
    blocks = [clean_lines(layout, offer, dice) for offer in offers]
    extra = [[line] for line in held_back_lines(layout, spare, dice)]
    for group in extra:
        blocks.insert(dice.between(1, len(blocks) - 1), group)
    lines = [line for block in blocks for line in with_bad_break(layout, block, dice)]
    clean = [index for index, line in enumerate(lines) if not line.faults]
    original = lines[clean[len(clean) // 3]]
    lines.append(Line(list(original.cells), original.claims, original.prices, (("supplier_number", "repeated"),)))
    return lines


def held_back_lines(layout: Layout, spare: list[Claims], dice: Dice) -> list[Line]:
    """Spoiled lines of parts that no clean line names."""
    made: list[Line] = []
    spoils = spoils_of(layout.index)
    clean = [next_line(layout, spare, spoil.base, dice, 2 if "unit_price" in spoil.texts else 1) for spoil in spoils]
    made += [spoiled(layout, line, spoil) for line, spoil in zip(clean, spoils, strict=True)]
    if layout.index != 2:
        made += [broken(next_line(layout, spare, "any", dice), cut) for cut in (1, -1)]
    if layout.index != DUSKPENNY:
        made.append(rising(layout, next_line(layout, spare, "any", dice, 2)))
    return made


def next_line(layout: Layout, spare: list[Claims], base: str, dice: Dice, breaks: int = 1) -> Line:
    """A clean line of the next spare part of the wanted outline, under a number of its own."""
    part = next(part for part in spare if part["shape"] in BASES[base] and big_enough(part))
    spare.remove(part)
    while True:
        offer = make_offer(part, layout.index, dice)
        if len(offer.prices) >= breaks:
            break
    offer = numbered([offer], dice)[0]
    claims = offer.claims | {"supplier_number": f"{offer.claims['supplier_number']} X{len(spare)}"}
    return clean_lines(layout, Offer(offer.supplier, claims, offer.prices), dice)[0]


def big_enough(part: Claims) -> bool:
    """Whether every list can print the part and its lead spacing."""
    value = part["capacitance_f"]
    return isinstance(value, Decimal) and value >= Decimal("1e-10") and part.get("lead_spacing_mm") is not None


def broken(line: Line, cut: int) -> Line:
    """A copy with a cell too many, or one too few."""
    cells = [*line.cells, "spilled over"] if cut > 0 else line.cells[:-1]
    return Line(cells, line.claims, line.prices, (("", "cells"),))


def with_bad_break(layout: Layout, block: list[Line], dice: Dice) -> list[Line]:
    """For price breaks in rows: now and then one more break of a good offer, whose price nobody can read."""
    if layout.index != DUSKPENNY or block[0].faults or not dice.chance(0.005):
        return block
    last = block[-1]
    cells = list(last.cells)
    cells[places(layout, "from_quantity")[0]] = "5000"
    cells[places(layout, "unit_price")[0]] = "name it"
    return [*block, Line(cells, last.claims, last.prices, (("unit_price", "unreadable"),))]
