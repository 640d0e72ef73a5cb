"""Who lists which part, at which prices, in which state; and the suppliers who contradict each other."""

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from demo_maker.dice import Dice
from demo_maker.values import Claims, Value, number, tidy

FERNWHISTLE, KUPFERLAUB, OSIERDOWN, DUSKPENNY = range(4)
WEIGHTS = (0.36, 0.27, 0.24, 0.13)
LEVEL = (1.0, 0.93, 0.96, 0.7)
BREAKS = ((1, 10, 100, 1000), (1, 10, 100), (1, 10, 100, 500), (1, 25, 100))
CONTRADICTIONS = 48
Prices = list[tuple[int, Decimal]]


@dataclass(frozen=True)
class Offer:
    """One supplier's offer of one part, with the part's claims as that supplier prints them."""

    supplier: int
    claims: Claims
    prices: Prices


def make_offers(parts: list[Claims], seed: int) -> list[list[Offer]]:
    """The offers of each of the four suppliers."""
    dice = Dice(seed, "offers")
    lists: list[list[Offer]] = [[], [], [], []]
    for part in parts:
        wide = 1 if dice.chance(0.54) else 2 if dice.chance(0.8) else 3
        known = [one for one in range(4) if one != OSIERDOWN or number(part, "capacitance_f") >= Decimal("1e-10")]
        for supplier in dice.some(known, [WEIGHTS[one] for one in known], wide):
            lists[supplier].append(make_offer(part, supplier, dice))
            if supplier == DUSKPENNY and dice.chance(0.15):
                lists[supplier].append(make_offer(part, supplier, dice, used=True))
    contradict(lists, Dice(seed, "contradictions"))
    return [numbered(dice.shuffled(offers), dice) for offers in lists]


def numbered(offers: list[Offer], dice: Dice) -> list[Offer]:
    """The offers with the supplier's own running numbers."""
    last = dice.between(1000, 3000)
    result: list[Offer] = []
    for offer in offers:
        last += dice.between(1, 6)
        claims = offer.claims | {"supplier_number": f"{'FKOD'[offer.supplier]} {last}"}
        result.append(Offer(offer.supplier, claims, offer.prices))
    return result


def make_offer(part: Claims, supplier: int, dice: Dice, used: bool = False) -> Offer:
    """An offer with its stock, quantities, state and prices."""
    state = state_of(supplier, dice, used)
    pack = Decimal(dice.pick((1, 1, 1, 1, 1, 1, 5, 10) if supplier != DUSKPENNY else (1, 1, 1, 5)))
    minimum = pack * (dice.pick((1, 1, 1, 2)) if pack > 1 else 1)
    terms: Claims = {
        "currency": "GBP" if supplier == OSIERDOWN else "EUR",
        "stock": stock(supplier, dice),
        "minimum": minimum,
        "pack": pack,
        "lead_time_days": Decimal(dice.pick((5, 7, 14, 28, 56))) if dice.chance(0.8) else None,
        "traceable": traceable(supplier, state, dice),
        "condition": state,
    }
    if supplier == DUSKPENNY:
        terms |= surplus_terms(state, dice)
    return Offer(supplier, part | terms, prices(part, supplier, state, minimum, dice))


def state_of(supplier: int, dice: Dice, used: bool) -> str:
    """New, but for the surplus dealer."""
    if supplier != DUSKPENNY or (not used and dice.chance(0.6)):
        return "new"
    return "pulled" if dice.chance(0.35) else "old stock"


def surplus_terms(state: str, dice: Dice) -> Claims:
    """Date code, day seen and, for a few, a currency without a rate."""
    year = dice.between(22, 26) if state == "new" else dice.between(3, 19)
    code = f"{year:02d}{dice.between(1, 52):02d}" if dice.chance(0.85) else None
    terms: Claims = {"date_code": code, "date_seen": date(2026, 9, 1) + timedelta(days=dice.between(0, 40))}
    return terms | ({"currency": "CHF"} if dice.chance(0.02) else {})


def stock(supplier: int, dice: Dice) -> Value:
    """Pieces in stock; two suppliers print only that there are more than a thousand."""
    if dice.chance(0.03):
        return None
    if dice.chance(0.1):
        return Decimal(0)
    most = 220 if supplier == DUSKPENNY else dice.pick((150, 600, 1800, 6000))
    pieces = dice.between(1, most)
    return Decimal(min(pieces, 1000) if supplier in (KUPFERLAUB, DUSKPENNY) else pieces)


def traceable(supplier: int, state: str, dice: Dice) -> Value:
    """Whether the supplier shows where the parts came from."""
    draw = dice.between(1, 100)
    if supplier == DUSKPENNY:
        return "yes" if state == "new" and draw <= 40 else "no" if draw <= 80 else None
    return "yes" if draw <= 92 else None if draw <= 97 else "no"


def prices(part: Claims, supplier: int, state: str, minimum: Decimal, dice: Dice) -> Prices:
    """Falling unit prices, bigger and rarer parts dearer."""
    technology = str(part["technology"])
    dear = {"polymer aluminium": 3.0, "hybrid aluminium": 4.0, "tantalum": 6.0, "film PP": 1.6}.get(technology, 1.0)
    tall = part.get("tall_mm") if isinstance(part.get("tall_mm"), Decimal) else part["across_mm"]
    volume = float(number(part, "along_mm") * number(part, "across_mm") * Decimal(str(tall)))
    base = dear * (0.05 + 0.00016 * volume) * LEVEL[supplier] * dice.factor(0.2)
    base *= {"pulled": 0.5, "old stock": 0.8}.get(state, 1) / (1.17 if supplier == OSIERDOWN else 1)
    found: Prices = []
    for index, quantity in enumerate(BREAKS[supplier][: dice.between(1, 4)]):
        price = base * (1, 0.8, 0.6, 0.48)[index] * dice.factor(0.05)
        exact = tidy(max(Decimal(f"{price:.2f}" if price >= 2 else f"{price:.3f}"), Decimal("0.012")))
        found.append((quantity, min(exact, found[-1][1]) if found else exact))
    if supplier != OSIERDOWN and minimum >= 10 and len(found) > 1:
        found = found[1:]
    return found


def contradict(lists: list[list[Offer]], dice: Dice) -> None:
    """Change one claim in one of two offers of a few dozen parts."""
    places: dict[Value, list[tuple[int, int]]] = {}
    for supplier, offers in enumerate(lists):
        for index, offer in enumerate(offers):
            places.setdefault(offer.claims["part_number"], []).append((supplier, index))
    shared = [spots for spots in places.values() if len({spot[0] for spot in spots}) > 1]
    done = 0
    for spots in dice.shuffled(shared):
        supplier, index = spots[-1]
        offer = lists[supplier][index]
        term, factor = (("life_h", "0.5"), ("tall_mm", "1.25"), ("ripple_a", "0.8"))[done % 3]
        if offer.claims["shape"] != "can" or not offer.claims.get(term):
            continue
        claims = offer.claims | {term: tidy(number(offer.claims, term) * Decimal(factor))}
        lists[supplier][index] = Offer(supplier, claims, offer.prices)
        done += 1
        if done == CONTRADICTIONS:
            return
