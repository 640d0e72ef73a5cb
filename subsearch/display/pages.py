"""Templates filled with what a page tells; every text is escaped unless it is markup of our own."""

from collections.abc import Mapping
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from subsearch.display.words import money_text
from subsearch.repair.reasons import FEW
from subsearch.search.criteria import LABELS
from subsearch.units import counted


def filled(template: str, told: Mapping[str, Any]) -> str:
    """The page that a template of `templates/` makes of what is told.

    >>> filled("cautions.html", {"cautions": ["a < b"]}).split()
    ['<ul', 'class="cautions">', '<li>a', '&lt;', 'b</li>', '</ul>']
    """
    pages = Environment(
        loader=PackageLoader("subsearch.display"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    pages.globals.update(money=money_text, counted=counted, labels=LABELS, few=FEW)
    return pages.get_template(template).render(told)
