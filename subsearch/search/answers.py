"""Candidates and answers, frozen, and the words they are told in."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from types import MappingProxyType
from typing import Any

from subsearch.formulas.voltage import TANTALUM_TIMES
from subsearch.search.criteria import LABELS, NOBODY, OFFER, OFFER_CRITERIA, PART_CRITERIA
from subsearch.search.criterion import Criterion
from subsearch.search.derived_life import years
from subsearch.search.numbers import NOT_MADE
from subsearch.search.requirement import Requirement
from subsearch.search.told_ways import told_leads, told_room
from subsearch.terms import TANTALUM, TERMS
from subsearch.units import show

Row = Mapping[str, Any]
SAID = {True: "yes", False: "no", None: "not stated"}


def part_name(maker: str | None, part_number: str) -> str:
    """Maker, where the list states one, and part number."""
    return part_number if maker is None else f"{maker} {part_number}"


def made_of(row: Mapping[str, Any], need: Requirement) -> dict[str, Any]:
    """The numbers made of a part and a need, and the years they come to; None for one that nobody asks or can tell."""
    made = NOT_MADE | {name: row[name] for name in NOT_MADE if name in row}
    return {**made, "years": years(made["life_at_work_h"], need)}


def not_stated(row: Mapping[str, Any]) -> tuple[str, ...]:
    """The conditions that a part leaves open."""
    on_part = (c.name for c in PART_CRITERIA if row.get(f"is_{c.name}", True) is None)
    return (*on_part, *([OFFER] if row["offers_answer"] is None else []))


def frozen(row: Mapping[str, Any]) -> Row:
    """A row nobody can change."""
    return MappingProxyType(dict(row))


@dataclass(frozen=True)
class Candidate:
    """A part that fits (answer true) or may fit (None), or is pinned: its facts, best offer, numbers, contributions.

    `unbeaten`: no other part that fits is at least as good in life, margin and cost and better in one; None where that
    can't be told, because one of the three is not stated or the part is not certain to fit.
    """

    answer: bool | None
    pinned: bool
    place: int
    total: float
    contributions: Row
    part: Row
    offer: Row
    made: Row
    not_stated: tuple[str, ...]
    unbeaten: bool | None = None

    @property
    def name(self) -> str:
        """Maker and part number: what the builder writes down."""
        return part_name(self.part["maker"], self.part["part_number"])


@dataclass(frozen=True)
class Answer:
    """What one condition answers on one part: yes (true), no (false) or not stated (None), and the sentence."""

    name: str
    answer: bool | None
    sentence: str

    def __str__(self) -> str:
        return f"{LABELS[self.name]}: {SAID[self.answer]} ({self.sentence})"


def sentences(row: Mapping[str, Any], need: Requirement) -> tuple[Answer, ...]:
    """The answers of one part in words, in the order of the criteria, out of a row of `explaining.explain`."""
    made = made_of(row, need)
    row = {**row, "part": row["fact"], "made": made, "need": asdict(need)}
    words = {
        "part": Words({**row["part"], "size": body(row["part"])}),
        "need": Words(row["need"]),
        "made": Words(
            {
                **made,
                "margins": told_room(row),
                "leads": told_leads(row),
                "volts": _volts(row),
                "leaks": _leaks(row),
            }
        ),
    }
    said = [_answer(c, row, words) for c in PART_CRITERIA if row["asked"][c.name]]
    return (*said, _offers(row, words))


def _answer(criterion: Criterion, row: Mapping[str, Any], words: Mapping[str, Any]) -> Answer:
    sentence = criterion.exempt_sentence if row["exempt"][criterion.name] else criterion.sentence
    return Answer(criterion.name, row["answers"][criterion.name], sentence.format_map(words))


def _offers(row: Mapping[str, Any], words: Mapping[str, Any]) -> Answer:
    """One answer for all offers, and what stands against each."""
    offers = row["offers"] or []
    if not offers:
        return Answer(OFFER, False, NOBODY)
    each = [_joined(one["answers"].values()) for one in offers]
    answer = True if True in each else None if None in each else False
    told = []
    for one, its in zip(offers, each, strict=True):
        against = [
            c.sentence.format_map({**words, "offer": Words(one["offer"])})
            for c in OFFER_CRITERIA
            if one["answers"][c.name] is not True
        ]
        told.append(f"{one['offer']['supplier']}: {'; '.join(against) if its is not True else 'can be bought'}")
    return Answer(OFFER, answer, " | ".join(told))


def _joined(answers: Any) -> bool | None:
    answers = list(answers)
    return False if False in answers else None if None in answers else True


def body(part: Mapping[str, Any]) -> str:
    """The nominal body as the trade writes it: ⌀ and length of a can or an axial, three sides of a box."""
    along, across, tall = (part[f"{side}_mm"] for side in ("along", "across", "tall"))
    sizes = {
        "can": (along, tall),
        "axial": (across, along),
    }.get(part["shape"] or "", (along, across, tall))
    text = " × ".join("?" if size is None else show(size, "") for size in sizes)
    if part["shape"] is None:
        return f"{text} mm of a shape not stated"
    return f"{'' if part['shape'] == 'box' else 'Ø '}{text} mm"


def value_text(part: Row) -> str:
    """Capacitance and rated voltage, d.c. unless it says a.c., with the safety class where there is one.

    >>> value_text({"capacitance_f": 1e-7, "rated_v": 630.0, "rated_ac_v": 275.0, "safety_class": "X2"})
    '0.1 µF 275 V a.c. X2'
    """
    value = printed("capacitance_f", part["capacitance_f"])
    safety = part["safety_class"] if part["safety_class"] not in (None, "none") else ""
    if part["rated_v"] is None and part["rated_ac_v"] is None:
        return f"{value}, voltage not stated {safety}".rstrip()
    if safety or part["rated_v"] is None:
        return f"{value} {printed('rated_ac_v', part['rated_ac_v'])} a.c. {safety}".rstrip()
    return f"{value} {printed('rated_v', part['rated_v'])}"


def volts_needed(technology: str | None, asked_v: float | None) -> float | None:
    """The rated voltage [V] that a part of a technology must have where so much is asked: tantalum more than others.

    >>> volts_needed("tantalum", 25.0), volts_needed("film PP", None)
    (50.0, None)
    """
    return asked_v if asked_v is None or technology != TANTALUM else TANTALUM_TIMES * asked_v


def _volts(row: Mapping[str, Any]) -> str:
    """The rated voltage that this part must have: a tantalum one more than others."""
    technology, asked = row["part"]["technology"], row["need"]["rated_v"]
    needed = show(volts_needed(technology, asked), "V")
    if asked is None or technology != TANTALUM:
        return needed
    return f"{needed} ({TANTALUM_TIMES:g} × {show(asked, 'V')}, since it is tantalum)"


def _leaks(row: Mapping[str, Any]) -> str:
    """The maker's limit of the leakage current, or its words where they give no number."""
    limit, rule = row["made"]["leakage_a"], row["part"]["leakage_rule"]
    return f'"{rule}", which gives no number' if limit is None and rule is not None else printed("leakage_a", limit)


class Words:
    """The values of a row as the trade prints them, for the sentences: `{part.rated_v}` gives "63 V"."""

    def __init__(self, row: Mapping[str, Any]) -> None:
        self._row = row

    def __getattr__(self, name: str) -> str:
        return printed(name, self._row[name])


UNIT_OF_SUFFIX = {"f": "F", "v": "V", "a": "A", "ohm": "Ω", "hz": "Hz", "mm": "mm", "c": "°C", "h": "h", "pct": "%"}


def printed(name: str, value: Any) -> str:
    """One value as the trade prints it, by the unit that ends its name.

    >>> printed("rated_v", 63.0), printed("tall_mm", None), printed("technologies", ("film PP", "film PET"))
    ('63 V', 'not stated', 'film PP, film PET')
    """
    if value is None:
        return "not stated"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if name == "years":
        return f"{value:.1f} years"
    if isinstance(value, (list, tuple)):
        return ", ".join(map(str, value))
    if isinstance(value, (int, float)):
        term = TERMS.get(name)
        unit = term.unit if term else UNIT_OF_SUFFIX.get(name.rsplit("_", 1)[-1], "")
        return show(float(value), unit)
    return str(value)
