"""How numbers that a person compares are put into words, the same on the screen and in print."""

from collections.abc import Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal
from math import floor

from subsearch.formulas.life import CEILING_Y
from subsearch.search.answers import Candidate, printed
from subsearch.search.ways import AS_MADE


def life_text(candidate: Candidate) -> str:
    """Years of life at the working temperature, or why there is no such number."""
    if candidate.made["not_worn_by_heat"]:
        return "not limited by heat"
    years = candidate.made["years"]
    return "not stated" if years is None else years_text(years)


def years_text(years: float) -> str:
    """Years of life, with the word where the calendar ends it.

    >>> years_text(12.34), years_text(15.0)
    ('12.3 years', '15 years (ceiling)')
    """
    return f"{years:.0f} years (ceiling)" if years >= CEILING_Y else f"{years:.1f} years"


def span_text(candidate: Candidate, uncertain_k: float = 0.0) -> str:
    """The span of life over the published laws and a temperature's uncertainty [K]; empty where there is none to tell.

    Gives "9.1 to 15 years by other published laws", under the same ceiling as the figure.
    """
    shortest, longest = candidate.made["shortest_y"], candidate.made["longest_y"]
    if shortest is None or longest is None:
        return ""
    over = "published laws" + (f" and {uncertain_k:g} K either way" if uncertain_k else "")
    ends = [f"{one:.1f}".removesuffix(".0") for one in (shortest, longest)]
    if ends[0] == ends[1]:
        return f"the same by all {over}"
    return f"{ends[0]} to {ends[1]} by {'' if uncertain_k else 'other '}{over}"


def margin_text(candidate: Candidate) -> str:
    """The tightest margin around the body; empty where none is asked or can be told."""
    tightest = candidate.made["tightest_mm"]
    return "" if tightest is None else printed("tightest_mm", round(tightest, 2) + 0.0)


def mounted_texts(candidates: Sequence[Candidate]) -> list[str]:
    """A sentence for each way of mounting in which some fit other than standing or lying as they are made to."""
    by_way: dict[str, list[str]] = {}
    for one in candidates:
        if one.made["way"] is not None and one.made["way"] not in AS_MADE:
            by_way.setdefault(one.made["way"], []).append(one.name)
    return [f"{way[0].upper()}{way[1:]}: {', '.join(names)}." for way, names in by_way.items()]


def money_text(amount: Decimal, currency: str | None) -> str:
    """Money to the cent with its currency.

    >>> money_text(Decimal("12.345"), "EUR")
    '12.35 EUR'
    """
    return f"{amount.quantize(Decimal('0.01'), ROUND_HALF_UP)} {currency or '(currency not stated)'}"


def uncapped_text(candidate: Candidate) -> str:
    """The hours of life without the ceiling, to three figures; empty where heat does not limit it or it is not stated.

    Hours with a narrow space between thousands read faster than a bare row of digits.
    """
    hours = candidate.made["life_at_work_h"]
    return "" if hours is None else f"{float(f'{hours:.3g}'):,.0f} h".replace(",", "\N{NARROW NO-BREAK SPACE}")


def together(sides: Sequence[tuple[str, str]]) -> str:
    """Sizes [mm] by side in one phrase; opposite sides with the same size are named together.

    >>> together([("left", "5"), ("right", "5"), ("front", "4"), ("back", "not stated"), ("headroom", "9")])
    'left and right 5, front 4, back not stated, headroom 9 mm'
    """
    sizes = dict(sides)
    for one, other in (("left", "right"), ("front", "back")):
        if one in sizes and sizes[one] == sizes.get(other):
            sizes = {
                f"{one} and {other}" if side == one else side: size for side, size in sizes.items() if side != other
            }
    return f"{', '.join(f'{side} {size}' for side, size in sizes.items())}{' mm' if sizes else ''}"


def adding_up(contributions: Mapping[str, float | None]) -> dict[str, str]:
    """Contributions to three places so that the printed ones add up to the printed total, each within 0.001 of its own.

    What was rounded down the most gives way first. A contribution that can't be told stays "not stated".

    >>> adding_up({"a": 0.3333, "b": 0.3333, "c": 0.3334, "d": None})
    {'a': '0.333', 'b': '0.333', 'c': '0.334', 'd': 'not stated'}
    """
    thousandths = {name: round(1000 * worth, 6) for name, worth in contributions.items() if worth is not None}
    whole = {name: floor(worth) for name, worth in thousandths.items()}
    most_cut = sorted(whole, key=lambda name: whole[name] - thousandths[name])
    for name in most_cut[: round(sum(thousandths.values())) - sum(whole.values())]:
        whole[name] += 1
    told = {name: f"{worth / 1000 + 0.0:.3f}" for name, worth in whole.items()}
    return {name: told.get(name, "not stated") for name in contributions}
