"""What stands beside the table of the parts found: its marks, the first one's life as a span, the sum of each score."""

from collections.abc import Sequence

from rich.table import Table

from subsearch.display.words import life_text, mounted_texts, span_text
from subsearch.search.answers import Candidate
from subsearch.search.candidates import Found

COLUMNS = 5  # so many parts are summed side by side
MARK = "*"
UNBEATEN = (
    f"{MARK} Nothing beats it: no other part that fits is at least as good in life, margin and cost and better in one."
)


def score_text(one: Candidate) -> str:
    """The score, marked where nothing beats the part."""
    return f"{one.total:.2f} {MARK if one.unbeaten else ' '}"


def beside_the_table(found: Found, shown: Sequence[Candidate]) -> list[str]:
    """Sentences below the table of the kept parts: the mark, the span of the first one's life, how firmly it stands."""
    first, said = shown[0], []
    if any(one.unbeaten for one in shown):
        said.append(UNBEATEN)
    if span := span_text(first, found.requirement.temperature_uncertain_k):
        figure = " The life wanted is asked of the first figure." if found.requirement.life_wanted_y else ""
        said.append(f"Life of {first.name}: {life_text(first)}; {span}.{figure}")
    return [*mounted_texts(shown), *said, str(found.stability())]


def score_table(found: Found, shown: Sequence[Candidate]) -> Table:
    """Every contribution with its weight and what it adds to the score of the first parts, down to the total."""
    first = shown[:COLUMNS]
    table = Table(box=None, pad_edge=False)
    for heading in ("Contribution", "Weight", *(f"Place {one.place}" for one in first), "Meaning"):
        right = heading == "Weight" or heading.startswith("Place")
        table.add_column(heading, justify="right" if right else "left", overflow="fold")
    for row in found.contributions():
        added = ("not stated" if worth is None else f"{worth + 0.0:.2f}" for worth in row.added[: len(first)])
        table.add_row(row.name, f"{row.weight:g}", *added, row.meaning)
    table.add_row("together", "", *(f"{one.total:.2f}" for one in first), "the score")
    return table
