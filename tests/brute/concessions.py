"""The smallest concession of each kind and how many parts it lets in, in plain Python with Decimal.

A concession's name and value are the field of the need that changes and what it changes to; for room, the fields that
grow and by how many millimetres; for words, the word taken as well and 0.
"""

from collections.abc import Callable, Iterator
from decimal import Decimal

from brute import laws
from brute.body import CLAIMS, ways
from brute.conditions import Need, leaks, one_offer, years
from brute.laws import CERAMICS, FILMS, Number
from brute.merged import Claims, words
from brute.oracle import CONDITIONS, Answers, completed
from brute.ways import Way, room_of

LIFE_CLAIMS = words("life_h rated_c life_basis life_reference ripple_a ripple_hz")
ESR_CLAIMS = words("esr_ohm esr_hz tan_delta tan_delta_hz capacitance_f")
LEAKAGE_CLAIMS = words("capacitance_f rated_v leakage_factor leakage_plus_a leakage_floor_a")
WORN = ("wet aluminium", "polymer aluminium", "hybrid aluminium")
SIDES = words("left_mm right_mm front_mm back_mm free_diameter_mm headroom_mm")
TOGETHER = (
    *((side,) for side in SIDES),
    *(SIDES[:2], SIDES[2:4], SIDES[:4], (*SIDES[:2], SIDES[5]), (*SIDES[2:4], SIDES[5]), (*SIDES[:4], SIDES[5])),
    SIDES[4:],
)
Name = tuple[str, str | None]
Smallest = dict[Name, tuple[Decimal, int]]
Value = Callable[[Need, Claims], Number]


def capacitance_low_f(need: Need, part: Claims) -> Number:
    value, low = part["capacitance_f"], need["capacitance_low_f"]
    return value if value is not None and value <= low <= 2 * value else None


def capacitance_high_f(need: Need, part: Claims) -> Number:
    value, high = part["capacitance_f"], need["capacitance_high_f"]
    if value is None or need["safety_class"] in ("Y1", "Y2"):
        return None
    return value if high <= value <= 2 * high else None


def rated_v(need: Need, part: Claims) -> Number:
    if part["rated_v"] is None:
        return None
    return Decimal(part["rated_v"]) / (2 if part["technology"] == "tantalum" else 1)


def rated_ac_v(need: Need, part: Claims) -> Number:
    rated = part["rated_ac_v"]
    return None if need["safety_class"] is not None or rated is None else Decimal(rated)


def bent_nearer_mm(need: Need, part: Claims) -> Number:
    (lying, *_) = mounted(need, part)
    if lying.name != "lying" or part["along_mm"] is None or room_of(need, lying) is not True:
        return None
    lacking = Decimal(part["along_mm"]) + 5 - need["hole_spacing_mm"]
    return lacking if 0 < lacking <= 5 + laws.MM_NEAR else None


def may_lie_flat(need: Need, part: Claims) -> Number:
    if need["may_lie_flat"]:
        return None
    flat = [way for way in mounted({**need, "may_lie_flat": True}, part) if way.name.startswith(("laid", "folded"))]
    return Decimal(0) if any(way.leads and room_of(need, way) for way in flat) else None


def mounted(need: Need, part: Claims) -> list[Way]:
    return ways(need, *(part[name] for name in CLAIMS))


def worn_h(need: Need, part: Claims, ripple_a: Number) -> Number:
    """Life [h] at the temperature and that ripple current; None for a part that heat does not wear, too."""
    if part["technology"] not in WORN:
        return None
    asked = {**need, "ripple_a": ripple_a}
    hours = laws.worn_life_h(part["life_h"], part["rated_c"], need["working_c"])
    if ripple_a is None or hours is None:
        return hours
    usable = laws.usable_ripple(part["ripple_a"], part["ripple_hz"], asked["ripple_hz"])
    with_ripple = part["life_basis"] in ("load life", "useful life") and part["life_reference"] != "case"
    factor = laws.ripple_factor(ripple_a, usable, with_ripple)
    return None if factor is None else hours * factor


def asks_life(need: Need, part: Claims) -> bool:
    exempt = part["technology"] in (*FILMS, *CERAMICS)
    return not exempt and need["life_wanted_y"] is not None and need["working_c"] is not None


def doublings(need: Need, hours: Decimal) -> Decimal:
    """How often the life doubles to more than is wanted; below 0 where it is shorter."""
    wanted: Decimal = need["life_wanted_y"] * 365 * need["hours_a_day"]
    return (hours / wanted).ln() / Decimal(2).ln()


def working_c(need: Need, part: Claims) -> Number:
    rated = part["rated_c"]
    if rated is None or not asks_life(need, part):
        return None if rated is None else Decimal(rated)
    hours = worn_h(need, part, need["ripple_a"])
    cool = None if hours is None else min(Decimal(rated), need["working_c"] + 10 * doublings(need, hours))
    return None if cool is None or cool < -55 else cool


def life_wanted_y(need: Need, part: Claims) -> Number:
    if not asks_life(need, part) or part["technology"] not in WORN:
        return None
    return years(need, *(part[name] for name in LIFE_CLAIMS))


def ripple_a(need: Need, part: Claims) -> Number:
    usable = laws.usable_ripple(part["ripple_a"], part["ripple_hz"], need["ripple_hz"])
    if usable is None or not asks_life(need, part):
        return usable
    hours = worn_h(need, part, None)
    if hours is None:
        return None
    with_ripple = part["life_basis"] in ("load life", "useful life") and part["life_reference"] != "case"
    rise = (5 if with_ripple else 0) + 10 * doublings(need, hours)
    return min(Decimal(usable), usable * (rise / 5).sqrt()) if rise > 0 else None


def resistance(need: Need, part: Claims) -> Number:
    return laws.series_resistance(need["esr_hz"], *(part[name] for name in ESR_CLAIMS))


def esr_least_ohm(need: Need, part: Claims) -> Number:
    found = resistance(need, part)
    return found if found is not None and found <= need["esr_least_ohm"] else None


def esr_most_ohm(need: Need, part: Claims) -> Number:
    found = resistance(need, part)
    return found if found is not None and found >= need["esr_most_ohm"] else None


def leakage_most_a(need: Need, part: Claims) -> Number:
    found = leaks(*(part[name] for name in LEAKAGE_CLAIMS))
    return found if found is not None and found >= need["leakage_most_a"] else None


def lead_style(need: Need, part: Claims) -> Number:
    return Decimal(0)


def offers_that(need: Need, part: Claims) -> list[Number]:
    """The stock of each offer against which only the stock can stand."""
    source = need["safety_class"] is None
    return [s for c, s, t in part["offers"] if c in need["conditions"] and (source or t is True)]


def pieces(need: Need, part: Claims) -> Number:
    known = [stock for stock in offers_that(need, part) if stock is not None and stock > 0]
    return Decimal(max(known)) if known and need["in_stock"] else None


def in_stock(need: Need, part: Claims) -> Number:
    return Decimal(0) if need["in_stock"] and offers_that(need, part) else None


# A kind, whether its smallest value is the smallest concession (1) or its largest is (-1), and what it eases.
KINDS: tuple[tuple[Value, int, tuple[str, ...]], ...] = (
    (capacitance_low_f, -1, ("capacitance",)),
    (capacitance_high_f, 1, ("capacitance",)),
    (rated_v, -1, ("voltage",)),
    (rated_ac_v, -1, ("voltage_ac",)),
    (bent_nearer_mm, 1, ("lead_spacing",)),
    (may_lie_flat, 1, ("body", "lead_spacing")),
    (lead_style, 1, ("lead_style",)),
    (working_c, -1, ("temperature", "life")),
    (life_wanted_y, -1, ("life",)),
    (ripple_a, -1, ("ripple", "life")),
    (esr_least_ohm, -1, ("esr",)),
    (esr_most_ohm, 1, ("esr",)),
    (leakage_most_a, 1, ("leakage",)),
    (pieces, -1, ("offer",)),
    (in_stock, 1, ("offer",)),
)
OF_HOLES = ("bent_nearer_mm", "may_lie_flat")


def alone(rows: list[Answers]) -> dict[str, int]:
    """How many parts each condition alone keeps out."""
    counts = {
        name: sum(row[at] is False and row.count(True) == len(row) - 1 for row in rows)
        for at, name in enumerate(CONDITIONS)
    }
    return {name: count for name, count in counts.items() if count}


def smallest(asked: Need, parts: list[Claims], rows: list[Answers]) -> Smallest:
    """Each concession that lets a part in: its smallest value, and how many parts come in at it."""
    need, names = completed(asked), tuple(CONDITIONS)
    failing = [
        (part, {name for name, answer in zip(names, row, strict=True) if answer is not True})
        for part, row in zip(parts, rows, strict=True)
    ]
    near = [(part, fails) for part, fails in failing if 0 < len(fails) <= 2]
    found: Smallest = {}
    for kind, nearest, eases in KINDS:
        field = "hole_spacing_mm" if kind.__name__ in OF_HOLES else kind.__name__
        if need[field] is not None:
            values = [kind(need, part) for part, fails in near if fails <= set(eases)]
            found |= told((kind.__name__, None), values, nearest, kind.__name__ in OF_HOLES)
    for name, value in (*room(need, near), *word(need, near)):
        found |= told(name, value, 1, True)
    return found


def told(name: Name, values: list[Number], nearest: int, mm: bool) -> Smallest:
    known = [value for value in values if value is not None and (value > 0 or nearest == 1 or name[0] == "working_c")]
    if not known:
        return {}
    least = min(known, key=lambda value: nearest * value)
    within = laws.MM_NEAR if mm else abs(least) * laws.NEAR
    return {name: (least, sum(abs(value - least) <= within for value in known))}


def room(need: Need, near: list[tuple[Claims, set[str]]]) -> Iterator[tuple[Name, list[Number]]]:
    """Millimetres more on each side, and on several at once."""
    bodies = [mounted(need, part) for part, fails in near if fails == {"body"}]
    for sides in TOGETHER:
        if all(need[side] is not None for side in sides):
            each = [[lacking(need, way, sides) for way in its if way.leads] for its in bodies]
            yield (" ".join(sides), None), [min((one for one in its if one is not None), default=None) for its in each]


def lacking(need: Need, way: Way, sides: tuple[str, ...]) -> Number:
    rest = [side for side in SIDES if side not in sides and need[side] is not None]
    if not all(laws.fits(need[side], way.takes[side]) for side in rest) or any(
        way.takes[side] is None for side in sides
    ):
        return None
    if way.name == "aside" and not set(SIDES[:4]).isdisjoint(sides):
        return None  # more room at a side also moves the body and its leads
    short: list[Decimal] = [(way.takes[side] or Decimal(0)) - need[side] for side in sides]
    return max(short)


def word(need: Need, near: list[tuple[Claims, set[str]]]) -> Iterator[tuple[Name, list[Number]]]:
    """One word more: a technology that the role takes, or a state of the parts."""
    taken = completed({"role": need["role"]})["technologies"]
    for technology in taken:
        if technology not in need["technologies"]:
            its = [part for part, fails in near if fails == {"technology"} and part["technology"] == technology]
            yield ("technologies", technology), [Decimal(0)] * len(its)
    for state in ("new", "old stock", "pulled"):
        if state not in need["conditions"]:
            its = [part for part, fails in near if fails == {"offer"} and in_state(need, part, state)]
            yield ("conditions", state), [Decimal(0)] * len(its)


def in_state(need: Need, part: Claims, state: str) -> bool:
    """Whether an offer of it answers all else, and is in that state."""
    wanted = {**need, "conditions": (state,)}
    return any(one_offer(wanted, *offer) is True for offer in part["offers"])
