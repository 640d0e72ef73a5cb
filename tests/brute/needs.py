"""Requirements drawn by seed around real parts, so that few parts answer them: plain words and Decimal numbers."""

from collections.abc import Callable, Sequence
from decimal import Decimal, localcontext
from random import Random
from typing import Any

from brute.body import envelope
from brute.laws import DIGITS, Number
from brute.limits import heat, leaking, resistance
from brute.merged import Claims
from brute.oracle import WINDOWS, Oracle

Asked = dict[str, Any]
TECHNOLOGIES = (
    *("wet aluminium", "polymer aluminium", "hybrid aluminium", "tantalum", "film PET", "film PP"),
    *("ceramic C0G", "ceramic class 2", "paper"),
)
TENTH = Decimal("0.1")
KINDS: tuple[Callable[[Claims], bool], ...] = (
    lambda part: part["shape"] == "can",
    lambda part: part["shape"] == "can" and part["esr_ohm"] is not None,
    lambda part: part["polarity"] == "bipolar",
    lambda part: part["shape"] == "axial",
    lambda part: part["lead_form"] == "snap-in",
    lambda part: part["safety_class"] not in (None, "none"),
    lambda part: part["shape"] == "box",
    lambda part: part["shape"] == "can" and part["technology"] != "wet aluminium",
    lambda part: part["contradictions"] > 0 or part["tall_mm"] is None,
    lambda part: part["technology"] == "wet aluminium",
    lambda part: part["technology"] == "tantalum",
    lambda part: part["life_reference"] == "case",
    lambda part: part["shape"] == "can" and part["along_mm"] in (18, 20),
)


def draw(parts: Sequence[Claims], seed: int, many: int = 300) -> list[Asked]:
    """That many requirements, always the same for the same parts and seed."""
    ordered = sorted(parts, key=lambda part: (part["maker"], part["part_number"]))
    pools = [[part for part in ordered if kind(part)] for kind in KINDS]
    with localcontext(prec=DIGITS):
        return [one(Random(f"{seed} {number}"), pools[number % len(pools)], number) for number in range(many)]


def one(dice: Random, pool: Sequence[Claims], number: int) -> Asked:
    """One requirement around one part; four in five are drawn until they do not refuse that part."""
    part = dice.choice(pool)
    alone = Oracle([part])
    tries = 200 if dice.random() < 0.8 else 1
    for _ in range(tries):
        asked = questions(dice, part, number)
        told = alone.told(asked)
        if told.kept or told.left_open:
            break
    return asked


def questions(dice: Random, part: Claims, number: int) -> Asked:
    """Some of all the questions, around one part."""
    asked: Asked = {"reference": f"B{number}"}
    for question in (value, volts, words, holes, room, heat, resistance, buying, leaking):
        asked |= question(dice, part)
    return asked


def times(dice: Random, size: Number, *factors: str) -> Number:
    """A size times one of the factors."""
    return None if size is None else size * Decimal(dice.choice(factors))


def more(dice: Random, size: Number, *steps: str) -> Number:
    """A size plus one of the steps, where the sum is a size."""
    if size is None:
        return None
    moved = size + Decimal(dice.choice(steps))
    return moved if moved > 0 else size


def value(dice: Random, part: Claims) -> Asked:
    """A window of capacitance: both ends, one end, or what a role takes; often met exactly."""
    draw, nominal = dice.random(), part["capacitance_f"]
    if draw < 0.04:
        return {}
    low, high = times(dice, nominal, "1", "0.8", "0.95", "0.5"), times(dice, nominal, "1", "1.2", "1.05", "1.5")
    if draw < 0.1:
        return {"capacitance_low_f": low}
    if draw < 0.16:
        return {"capacitance_high_f": high}
    if draw < 0.6:
        return {"capacitance_low_f": low, "capacitance_high_f": high}
    role = dice.choice(list(WINDOWS))
    asked: Asked = {"role": role, "capacitance_f": times(dice, nominal, "1", "1", "0.8", "1.25", "1.1", "0.5")}
    if dice.random() < 0.4:
        asked["old_tolerance_pct"] = dice.choice([(-2, 2), (-10, 10), (-10, 50), (-3, 4)])
    return asked | ({"capacitance_low_f": times(dice, nominal, "0.4", "0.5")} if dice.random() < 0.2 else {})


def volts(dice: Random, part: Claims) -> Asked:
    """Voltage ratings and the safety class, at the part's own or below."""
    asked: Asked = {}
    rated, safety = part["rated_ac_v"], part["safety_class"]
    if dice.random() < 0.75:
        half = ("0.5", "0.5", "0.4", "0.505") if part["technology"] == "tantalum" else ()
        asked["rated_v"] = times(dice, part["rated_v"], "1", "1", "0.8", "0.63", "1.01", *half)
    if dice.random() < (0.6 if rated is not None else 0.04):
        asked["rated_ac_v"] = times(dice, rated or Decimal(63), "1", "1", "0.8", "0.5", "1.02")
    if dice.random() < (0.95 if safety not in (None, "none") else 0.04):
        asked["safety_class"] = dice.choice(
            ["X1", "X2", "Y1", "Y2", *([] if safety in (None, "none") else [safety] * 4)]
        )
    return asked


def words(dice: Random, part: Claims) -> Asked:
    """Sign of the voltage, technologies, lead style."""
    asked: Asked = {}
    if dice.random() < (0.15 if part["polarity"] == "polar" else 0.6):
        asked["reverses"] = True
    if dice.random() < 0.35:
        asked["technologies"] = tuple(
            dict.fromkeys([part["technology"] or "paper", *dice.sample(TECHNOLOGIES, dice.randint(0, 4))])
        )
    if dice.random() < 0.6:
        style = "axial" if part["shape"] == "axial" else "snap-in" if part["lead_form"] == "snap-in" else "radial"
        asked["lead_style"] = style if dice.random() < 0.9 else dice.choice(["radial", "axial", "snap-in"])
    return asked


def holes(dice: Random, part: Claims) -> Asked:
    """Holes as the leads stand, as far off as may be, and a little further."""
    asked: Asked = {}
    if dice.random() < 0.4:
        asked["hole_diameter_mm"] = more(dice, part["lead_diameter_mm"] or Decimal("0.6"), "0.15", "0.15", "0.1", "0.4")
        asked["hole_plated"] = dice.choice([True, True, False, None])
    if dice.random() < 0.4:
        asked["may_lie_flat"] = True
    if dice.random() < 0.35:
        return asked
    if part["shape"] == "axial":
        return asked | {"hole_spacing_mm": more(dice, part["along_mm"], "5", "5", "4.9", "5.1", "7", "12")}
    spacing = part["delivered_spacing_mm"] or part["lead_spacing_mm"] or Decimal(5)
    return asked | {
        "hole_spacing_mm": more(
            dice,
            spacing,
            "0",
            "0",
            "0.6",
            "-0.6",
            "0.7",
            "-0.7",
            "0.5",
            "0.1",
            "-0.3",
            "1.2",
            "-2",
            "3.2",
            "-3.2",
            "3.3",
            "5",
            "5.2",
            "-5.2",
            "5.3",
        )
    }


def room(dice: Random, part: Claims) -> Asked:
    """The space, often to the tenth of a millimetre what the largest body takes."""
    names = ("shape", "lead_form", "along_mm", "across_mm", "tall_mm")
    along, across, tall = envelope(
        *(part[name] for name in (*names, "along_plus_mm", "across_plus_mm", "tall_plus_mm"))
    )
    tall = Decimal(15) if tall is None else tall
    steps = ("0", "0", "0", "0.1", "-0.1", "0.5", "1", "2", "3")
    asked: Asked = {}
    if dice.random() < 0.6:
        asked["headroom_mm"] = more(dice, tall if across is None or dice.random() < 0.7 else across, *steps)
    for names_of_sides, size in ((("left_mm", "right_mm"), along), (("front_mm", "back_mm"), across)):
        for name in names_of_sides:
            if dice.random() < 0.3 and size is not None:
                asked[name] = more(dice, size / 2, *steps)
    if dice.random() < 0.2:  # room to lie to one side
        asked[dice.choice(["left_mm", "right_mm", "front_mm", "back_mm"])] = more(dice, tall, "1.4", "1.8", "4", "9")
    if dice.random() < 0.25 and along is not None and across is not None:
        wide = across if part["shape"] == "can" else (along * along + across * across).sqrt().quantize(TENTH)
        asked["free_diameter_mm"] = more(dice, wide, *steps)
    return asked


def buying(dice: Random, part: Claims) -> Asked:
    """Pieces, often all that one offer has; states; in stock or not."""
    stocks = [int(stock) for _, stock, _ in part["offers"] if stock]
    asked: Asked = {}
    if dice.random() < 0.6:
        asked["pieces"] = dice.choice([1, 2, 12, 96, 1000, *stocks, *(stock + 1 for stock in stocks)])
    if dice.random() < 0.3:
        states = [("new",), ("old stock",), ("pulled",), ("new", "pulled"), ("new", "old stock", "pulled")]
        asked["conditions"] = dice.choice(states)
    if dice.random() < 0.25:
        asked["in_stock"] = dice.random() < 0.2
    return asked
