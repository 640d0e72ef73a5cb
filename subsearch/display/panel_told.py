"""What the panel's widgets show of a position, a part and a list: answers in, markup and sentences out."""

from collections.abc import Sequence
from html import escape

from subsearch.display.compare import compare_table
from subsearch.display.drawing import drawing, side_by_side
from subsearch.display.explained import (
    before_you_take,
    cost_sentence,
    in_python,
    its_score,
    listed,
    taken_sentences,
    text,
    two_in_place,
    why_it_fits,
)
from subsearch.display.life_chart import life_chart, what_to_see_in_lives
from subsearch.display.margin_life_chart import margin_life_chart
from subsearch.display.margin_life_words import what_to_see_in_margins
from subsearch.display.panel_box import PanelBox
from subsearch.repair.asking import Asked
from subsearch.repair.choosing import Choice
from subsearch.repair.conceding import Conceded
from subsearch.repair.desk import Desk
from subsearch.repair.inquiry import About, Around, Searched
from subsearch.repair.placing import placed, placed_pair
from subsearch.search.answers import Candidate
from subsearch.search.candidates import BEST, Found
from subsearch.search.requirement import Requirement
from subsearch.shopping.taken import Bought
from subsearch.units import counted

MOST_DRAWN = 6  # lines that a reader can still tell apart
NO_PART = "No part fits, or may fit, what is asked."
OF_BEFORE = "Near misses of what was asked before"
NONE_NEAR = "No single concession, nor two together, would let in another part."


def show_asked(box: PanelBox, asked: Asked, kept: str) -> None:
    """What was decided on the way from the controls to the question, what is kept, and the line of Python."""
    said = [*([kept] if kept else []), *asked.notes]
    box.notes.value = text("<h4>Decided on the way</h4>", listed(said)) if said else ""
    line = "" if asked.requirement is None else escape(in_python(asked.requirement, BEST))
    box.line.value = text("<h4>The same in Python</h4>", f"<pre>{line}</pre>") if line else ""


def show_conceded(box: PanelBox, conceded: Sequence[Conceded]) -> None:
    """What was conceded, each with its button."""
    box.conceded.show([(f"{one.sentence[:1].upper()}{one.sentence[1:]}.", "Take back") for one in conceded])


def kept(desk: Desk) -> str:
    """That what was done before is there again, as long as it is; or that nothing is kept."""
    if desk.trouble or desk.left is None or desk.can_undo:
        return desk.trouble
    said = f"{desk.left.astimezone():%d %B %Y at %H:%M}".lstrip("0")
    return f"As you left it on {said}; Start again goes back to what the cell or positions.csv says."


def show_part(box: PanelBox, need: Requirement, choice: Choice) -> None:
    """The part that is looked at, drawn in its place, with the cautions that stand beside taking it."""
    box.show_part(True)
    box.drawing.value = text(drawing(placed(need, choice.candidate, choice.asked.position.plus_towards)))
    box.cautions.value = before_you_take(choice)


def show_no_part(box: PanelBox, asked: Asked | None, searched: Searched | None) -> None:
    """The place without a part, or with the refused one that comes nearest."""
    box.show_part(False)
    box.show_lives(None)
    if asked is None or asked.requirement is None:
        for one in (box.why, box.compared, box.drawing, box.two, box.notes, box.line):
            one.value = ""
        box.show_near([])
        return
    box.why.value = box.compared.value = text(f"<p>{NO_PART}</p>")
    nearest = None if searched is None else searched.nearest
    said = "" if nearest is None else f"<p>Refused, and drawn as the nearest: {escape(nearest.name)}.</p>"
    box.drawing.value = text(said, drawing(placed(asked.requirement, nearest, asked.position.plus_towards)))


def show_about(box: PanelBox, standing: str, found: Found, drawn: Sequence[Candidate], about: About) -> None:
    """Why it fits, how long it lasts, and how it compares with those drawn with it."""
    candidate, need = drawn[0], found.requirement
    everyone = (*found.kept, *found.open)
    box.why.value = why_it_fits(candidate, about.answers, standing)
    box.score.value = its_score(candidate)
    has_a_line = any(one.years is not None for one in about.lives)
    lives = life_chart(about.lives, need.working_c, candidate.name, need.life_wanted_y) if has_a_line else None
    box.show_lives(lives)
    box.lives_said.value = text(f"<p>{escape(what_to_see_in_lives(about.lives, need, drawn))}</p>")
    names = [one.name for one in drawn]
    box.margins.chart = margin_life_chart(everyone, about.currency, names)
    box.margins_said.value = text(f"<p>{escape(what_to_see_in_margins(everyone, about.currency))}</p>")
    more = f"<p>Pick others in the table to compare them; at most {MOST_DRAWN} are shown.</p>"
    small = zip(names, side_by_side([placed(need, one) for one in drawn]), strict=True) if len(drawn) > 1 else ()
    named = "".join(f"<div><b>{escape(name)}</b>{one}</div>" for name, one in small)
    box.compared.value = text(more, f'<div class="subs-row">{named}</div>') + compare_table(drawn, need)


def still_looking(box: PanelBox) -> None:
    """The near misses of another question stay to be read until the new ones are there, but can't be pressed."""
    box.show_near([(one["text"], "") for one in box.near.items], title=OF_BEFORE)


def show_around(box: PanelBox, asked: Asked, around: Around) -> None:
    """What a concession would let in, each with its button; what stands firm; and what two parts could do."""
    firm = [f"{str(one)[:1].upper()}{str(one)[1:]}." for one in around.near.misses if one.firm and one.alone]
    conceding = [(one.sentence, "Concede") for one in around.near.concessions]
    box.show_near([*conceding, *((one, "") for one in firm)], "" if conceding else NONE_NEAR)
    need = asked.requirement
    drawings = (
        [] if need is None else [drawing(placed_pair(need, way.best[0])) for way in around.several.ways if way.best]
    )
    box.two.value = two_in_place(around.several, drawings)


def show_bought(box: PanelBox, bought: Bought, written: str) -> None:
    """The list: what was taken, what it comes to, and where it was written."""
    sentences = [*taken_sentences(bought.choices), *(f"Not in the sum: {one}" for one in bought.gone.values())]
    box.listed.title = f"Your list: {counted(len(sentences), 'position')}" if sentences else "Your list"
    box.listed.note = " ".join(filter(None, (cost_sentence(bought.shopping), written)))
    box.listed.show([(one, "Take off") for one in sentences])
