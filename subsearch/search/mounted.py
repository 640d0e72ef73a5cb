"""The answers of all ways of mounting joined: whether leads and body fit in one of them, and in which."""

from dataclasses import replace

from subsearch.search.stated import Stated, struct
from subsearch.search.way import Margin, Way
from subsearch.search.ways import ASIDE, HOLES, LAID_NAMES, LIE, OFFSETS, WAYS


def ways(stated: Stated) -> tuple[Way, ...]:
    """The ways that these needs ask to look at."""
    return tuple(way for way in WAYS if way.asked(stated) != "false")


def layers(stated: Stated, refused_too: bool = False) -> tuple[dict[str, str], ...]:
    """SQL of the two answers of every way, of what they come to, and of what that leaves; each of those before it.

    `refused_too`: a part that fits in no way is told of, and so its likeliest way.
    """
    return (
        {name: sql for way in ways(stated) for name, sql in way.columns(stated).items()},
        {"leads_meet": any_way("leads_{0}", stated), "way": chosen(stated, refused_too)},
        {"body_fits": body_fits(stated), "worked_mm": _worked(stated), "tightest_mm": tightest(stated)},
    )


def any_way(answers: str, stated: Stated) -> str:
    """SQL that joins an answer of every way, in which `{0}` stands for the way's key, by or."""
    return " or ".join(f"({answers.format(way.key)})" for way in ways(stated))


def body_fits(stated: Stated) -> str:
    """SQL of whether the body fits.

    The room counts in the ways whose leads meet the holes. Where none do, the body is judged by itself, so that a
    refusal tells the leads from the body; where that can't be told, in the ways in which they still may.
    """
    return (
        f"case when leads_meet then {any_way('leads_{0} and room_{0}', stated)} "
        f"when leads_meet is null then {any_way('leads_{0} is not false and room_{0}', stated)} "
        f"else {any_way('room_{0}', stated)} end"
    )


def chosen(stated: Stated, refused_too: bool) -> str:
    """SQL of the name of the way that is offered: the first that holds, else the first that may, else the likeliest."""
    likely: tuple[str, ...] = ("leads_{0} and room_{0}", "(leads_{0} and room_{0}) is not false")
    if refused_too:
        likely = (*likely, "leads_{0} is not false", "room_{0} is not false")
    whens = [f"when {one.format(way.key)} then '{way.name}'" for one in likely for way in ways(stated)]
    suits = [f"when {way.suiting(stated)} then '{way.name}'" for way in ways(stated)]
    return f"case {' '.join([*whens, *suits])} end"


def _worked(stated: Stated) -> str:
    """SQL of how far each lead must move to meet its hole in the way that is offered [mm]."""
    whens = [f"when '{way.name}' then {OFFSETS[way.name]}" for way in ways(stated) if way.name in OFFSETS]
    if not stated.says("hole_spacing_mm"):
        return "null::double"
    return f"case way {' '.join(whens)} else offset_mm end" if whens else "offset_mm"


def tightest(stated: Stated) -> str:
    """SQL for the smallest margin of the room in the way that is offered [mm]."""
    return "case way " + " ".join(f"when '{way.name}' then {way.tightest(stated)}" for way in ways(stated)) + " end"


def room_left(stated: Stated) -> str:
    """SQL of a list: the margins of each way in which the leads meet the holes, by the field of the need [mm].

    One that is not asked is null, one that can't be told without limit below 0. `moves`: more room at a side would
    also move the body and its leads, so that the margins do not tell how much is needed.
    """
    each = [
        f"case when leads_{way.key} then "
        + struct({m.asked_by: _margin(m, stated) for m in way.margins} | {"moves": str(way is ASIDE).lower()})
        + " end"
        for way in ways(stated)
    ]
    return f"list_filter([{', '.join(each)}], lambda one: one is not null)"


def _margin(margin: Margin, stated: Stated) -> str:
    asked = stated.asked((margin.asked_by,))
    left = f"coalesce({margin.made}, '-infinity'::double)"
    return {"true": left, "false": "null::double"}.get(asked, f"case when {asked} then {left} end")


def lies(stated: Stated) -> str:
    """SQL that is true where the part fits lying flat, whether or not the position gives leave for it."""
    leave = replace(stated, some=stated.some | {LIE}, every=stated.every | {LIE})
    each = (" and ".join(way.columns(leave).values()) for way in WAYS if way.name in LAID_NAMES)
    return " or ".join(f"({one})" for one in each) if stated.says(HOLES) else "false"
