"""What is said of two parts together, as a builder at the bench understands it."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from subsearch.formulas.life import CEILING_Y
from subsearch.formulas.mounting_together import JOINED
from subsearch.search.answers import body, value_text
from subsearch.search.derived_pairs import BACK_TO_BACK
from subsearch.search.requirement import Requirement
from subsearch.terms import WET, WITHOUT_POLARITY
from subsearch.units import show

if TYPE_CHECKING:
    from subsearch.search.several import Joined, Member, Way

JUNCTION = (
    "Join equal poles, minus to minus or plus to plus, and insulate that junction: only the two other leads go to the "
    "holes."
)
OF_ONE = "Both together stand the voltage of one, not twice it."
SHUNTED = "With little voltage across it the pair may read more than half of one: that is no fault."
SAME_WAY = "Plus to plus and minus to minus: each stands the way that the old part stood."
WHOLE = "Each of the two must stand the whole voltage, since both meet it."
UNEQUAL = "Unequal ones share the ripple current by their capacitance: the larger carries more."
CASES = "A wet can's case is not insulated from its minus: keep it from touching metal and the other one."


def cautions(pair: "Joined") -> tuple[str, ...]:
    """What to mind when these two are joined."""
    polar = [one for one in pair.members if _is_polar(one)]
    said = [JOINED]
    if pair.way == BACK_TO_BACK:
        said += [JUNCTION, OF_ONE, SHUNTED]
    else:
        said += [WHOLE, *([SAME_WAY] if polar else [])]
        said += [UNEQUAL] if len({one.carries_a for one in pair.members}) > 1 else []
    if any(one.part["technology"] == WET and one.part["shape"] in ("can", "axial", None) for one in pair.members):
        said.append(CASES)
    return tuple(said)


def _is_polar(member: "Member") -> bool:
    return member.part["polarity"] != "bipolar" and member.part["technology"] not in WITHOUT_POLARITY


def sentence(pair: "Joined", need: Requirement) -> str:
    """The two parts, what they make together, the room they leave, how long they last and what they cost."""
    parts = " and ".join(_named(one) for one in pair.members)
    told = [f"{parts} make {_value(pair, need)}", *_room(pair), *_ripple(pair), *_lasts(pair, need), _costs(pair, need)]
    return f"{pair.way[0].upper()}{pair.way[1:]}: {'; '.join(told)}."


def _named(member: "Member") -> str:
    twice = "twice " if member.times == 2 else ""
    return f"{twice}{member.name} ({value_text(member.part)}, {body(member.part)})"


def _value(pair: "Joined", need: Requirement) -> str:
    low, high = pair.tolerance_pct
    within = "" if low is None or high is None else f" {_signed(low)}/{_signed(high)} %"
    if low is not None and high is not None and -low == high:
        within = f" ±{show(round(high, 1), '')} %"
    volts = "" if pair.rated_v is None else f", {show(pair.rated_v, 'V')}"
    ohm = "" if pair.esr_ohm is None or pair.esr_hz is None else (
        f", {show(float(f'{pair.esr_ohm:.3g}'), 'Ω')} at {show(pair.esr_hz, 'Hz')}"
    )  # fmt: skip
    return f"{show(float(f'{pair.capacitance_f:.4g}'), 'F')}{_off(pair, need)}{within}{volts}{ohm}"


def _signed(pct: float) -> str:
    return f"{'−' if pct < 0 else '+'}{show(abs(round(pct, 1)), '')}"


def _off(pair: "Joined", need: Requirement) -> str:
    if need.capacitance_f is None:
        return ""
    pct = round(100 * (pair.capacitance_f / need.capacitance_f - 1), 1) + 0.0
    asked = show(need.capacitance_f, "F")
    return f" (as the {asked} asked)" if pct == 0 else f" ({_signed(pct)} % of the {asked} asked)"


def _room(pair: "Joined") -> Iterator[str]:
    spare = {name: show(max(round(margin, 2), 0.0), "mm") for name, margin in pair.margins}
    if "around and between" in spare:
        yield f"{spare['around and between']} free around and between them"
    if "headroom" in spare:
        yield f"{spare['headroom']} of headroom left"


def _ripple(pair: "Joined") -> Iterator[str]:
    carried = [show(float(f"{one.carries_a:.3g}"), "A") for one in pair.members if one.carries_a is not None]
    if carried:
        each = carried[0] if len(set(carried)) == 1 else " and ".join(carried)
        yield f"{'each carries' if len(set(carried)) == 1 else 'they carry'} {each} of ripple"


def _lasts(pair: "Joined", need: Requirement) -> Iterator[str]:
    shorter = ", the shorter of both" if len(pair.members) > 1 else ""
    if not pair.worn_by_heat:
        yield "heat does not limit them"
    elif need.working_c is not None and pair.years is None:
        yield "how long they last is not stated"
    elif pair.years is not None:
        years = f"{CEILING_Y:.0f} years (ceiling)" if pair.years >= CEILING_Y else f"{pair.years:.1f} years"
        yield f"lasts {years}{shorter}"


def _costs(pair: "Joined", need: Requirement) -> str:
    pieces = f"{2 * need.pieces} pieces"
    return f"cost of {pieces} not known" if pair.cost is None else f"{pair.cost:.2f} for {pieces}"


def of_way(way: "Way", most: int) -> Iterator[str]:
    """The first pairs of one way, the first with how many fit, and what to mind with them."""
    for place, pair in enumerate(way.best[:most]):
        others = "" if place or way.kept_count == 1 else f" It is the best of {way.kept_count} such pairs that fit."
        yield f"{pair.sentence}{others}"
    said = dict.fromkeys(caution for pair in way.best[:most] for caution in pair.cautions)
    if said:
        yield f"{way.name[0].upper()}{way.name[1:]}, to mind: {' '.join(said)}"
