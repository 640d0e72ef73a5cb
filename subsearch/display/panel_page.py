"""What the panel shows now as one page to print."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from subsearch.display.answers_shown import Answers
from subsearch.display.charts import svg
from subsearch.display.drawing import drawing
from subsearch.display.explained import in_python
from subsearch.display.life_chart import life_chart
from subsearch.display.position_page import PositionPage, write_position_page
from subsearch.errors import RequirementError
from subsearch.repair.conceding import Conceded
from subsearch.repair.inquiry import PartKey
from subsearch.repair.placing import placed
from subsearch.search.candidates import BEST
from subsearch.shopping.files import unused


def write_page(
    answers: Answers, conceded: tuple[Conceded, ...], is_taken: Callable[[PartKey], bool], catalog: Path, folder: Path
) -> Path:
    """Write the page of the part that is looked at into a folder, under a name that is free; give the file.

    is_taken: whether a part is taken for this position.

    Raises:
        RequirementError: no part is looked at.
    """
    choice, about = answers.looked_at, answers.about
    if choice is None or choice.found is None or choice.candidate is None or about is None:
        raise RequirementError("No part is looked at yet. Wait for the search, or ask for what some part can be.")
    need = choice.found.requirement
    lives = life_chart(about.lives, need.working_c, choice.candidate.name, need.life_wanted_y)
    page = PositionPage(
        choice=choice,
        catalog=catalog,
        today=date.today(),
        taken=is_taken((choice.candidate.part["maker"], choice.candidate.part["part_number"])),
        answers=about.answers,
        near=() if answers.around is None else answers.around.near.sentences,
        two=() if answers.around is None else answers.around.several.sentences,
        conceded=[one.sentence for one in conceded],
        compared=answers.drawn if len(answers.drawn) > 1 else (),
        drawing=drawing(placed(need, choice.candidate, choice.asked.position.plus_towards)),
        chart=svg(lives) if any(one.years is not None for one in about.lives) else "",
        code=in_python(need, BEST),
    )
    name = "".join(one if one.isalnum() else "-" for one in choice.name).strip("-")[:60] or "position"
    file = unused(folder / f"{name}.html")
    write_position_page(page, file)
    return file
