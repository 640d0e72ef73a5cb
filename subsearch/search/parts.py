"""The parts that a statement looks at, with their numbers, their ways of mounting and their answers, as SQL.

Only names written in this room's own files stand in the text of a statement; every value is bound.
"""

from collections.abc import Iterable

from subsearch.search import mounted
from subsearch.search.criteria import PART_CRITERIA
from subsearch.search.criterion import Criterion
from subsearch.search.numbers import claims, with_numbers
from subsearch.search.stated import Stated, columns

PINNED = """coalesce(
    part.maker is not distinct from need.pinned_maker and part.part_number = need.pinned_part_number, false)"""
ALWAYS = ("maker", "part_number", "pk")
(CAPACITANCE,) = (criterion for criterion in PART_CRITERIA if criterion.name == "capacitance")


def asked(stated: Stated, criteria: Iterable[Criterion] = PART_CRITERIA) -> list[Criterion]:
    """The criteria that some need may ask."""
    return [criterion for criterion in criteria if criterion.asked(stated) != "false"]


def answer(stated: Stated) -> str:
    """SQL of what all conditions on the part come to."""
    return " and ".join(f"is_{criterion.name}" for criterion in asked(stated)) or "true"


def ways_and_answers(stated: Stated) -> list[str]:
    """The SQL of the ways of mounting and of every condition, for the names in it."""
    ways = [sql for layer in mounted.layers(stated) for sql in layer.values()]
    return [*ways, *(criterion.answer(stated) for criterion in asked(stated))]


def judged(stated: Stated, rows: str, refused_too: bool = False) -> str:
    """Those parts, which have their numbers, with their ways of mounting and `is_…` for each condition."""
    answers = {f"is_{criterion.name}": criterion.answer(stated) for criterion in asked(stated)}
    for layer in (*mounted.layers(stated, refused_too), answers):
        asks = any("need." in sql for sql in layer.values())
        source = f"{rows} as part"
        rows = f"(select part.*, {columns(layer)} from {stated.joined(source) if asks else source})"
    return rows.removeprefix("(").removesuffix(")")


def wanted(stated: Stated, used: str) -> list[str]:
    """Common table expressions that end in `part`: the parts whose claims do not refuse them, and the pinned ones.

    They carry the claims and numbers that the rest of the statement uses. Of many needs each looks at the values in its
    window only, so that the database need not compare every part with each.
    """
    used = " ".join([used, *ways_and_answers(stated)])
    fits = " and ".join(
        f"{c.answer(stated)} is not false" for c in asked(stated) if c.on_claims and c is not CAPACITANCE
    )
    fits, window = fits or "true", "true"
    if CAPACITANCE in asked(stated):
        window = f"({CAPACITANCE.holds} or part.capacitance_f is null)"
    carried = ", ".join(f"part.{name}" for name in sorted({*ALWAYS, *claims(stated, used)}))
    pins = stated.says("pinned_part_number")
    windows, source = [], "main.part as part"
    if not stated.alone:
        windows, source = [WINDOWS.format(window=window)], OF_WINDOWS
    rows = f"""select need.number as number, {PINNED if pins else "false"} as pinned, {carried}
    from {source} where {window if stated.alone else "true"} and {fits}"""
    if pins:
        everywhere = "main.part as part" if stated.alone else f"main.part as part join need on {PINNED}"
        rows += f"""
    union all select need.number as number, true as pinned, {carried} from {everywhere}
    where {PINNED} and not ({CAPACITANCE.answer(stated)} is not false and {fits})"""
    return [*windows, f"part as materialized ({with_numbers(stated, used, rows)})"]


WINDOWS = """windows as materialized (
    select need.number, part.capacitance_f as value
    from need join (select distinct capacitance_f from main.part) as part on {window})"""
OF_WINDOWS = """windows join need using (number)
        join main.part as part on part.capacitance_f is not distinct from windows.value"""
