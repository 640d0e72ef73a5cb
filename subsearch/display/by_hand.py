"""A part typed in by hand in the notebook: its controls, the sentences at them, and what came of it.

What can be typed in, what is needed and what a text means stands in catalog/typed.py, as for the command line.
"""

from collections.abc import Callable, Iterable, Mapping
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets
from IPython.display import display

from subsearch.catalog.recording import record
from subsearch.catalog.typed import (
    DRAWER,
    FIELDS,
    NEEDED,
    NO_SUPPLIER,
    Field,
    TypedError,
    missing,
    supplier_named,
    told,
)
from subsearch.display.explained import listed, text
from subsearch.display.form import Form
from subsearch.display.mishaps import guarded
from subsearch.reading.spaces import tidy
from subsearch.search.answers import part_name
from subsearch.terms import BREAK_TERMS, OFFER_TERMS

ELSEWHERE = "a supplier"
WHOSE: dict[str, Any] = {"name": "whose", "label": "Whose it is", "hint": "where it lies", "kind": "choice"}
SUPPLIER: dict[str, Any] = {"name": "supplier", "label": "Supplier", "hint": "who sells it", "kind": "text"}
OF_AN_OFFER = {term.name for term in (*OFFER_TERMS, *BREAK_TERMS)}
Values = Mapping[str, str]


class ByHand:
    """A box in which one part and its offer are typed in and recorded in the catalog.

    catalog: the file, made if absent. recorded: called with the part's name once it is recorded. before: called before
    the catalog is opened to be written, so that whoever holds it open can close it; not called where a text is at
    fault. Then the box is empty for the next part, which is taken to come from the same place.
    """

    def __init__(
        self, catalog: Path, recorded: Callable[[str], None], before: Callable[[], None] | None = None
    ) -> None:
        self.catalog, self._recorded, self._before = Path(catalog), recorded, before
        self._pressed = self._done = False
        self.form = Form(values={"whose": DRAWER})
        self.button = widgets.Button(description="Record this part", button_style="primary")
        self.said = widgets.HTML()
        self.box = widgets.VBox([self.form, self.button, self.said])
        self._show()
        self.form.observe(self._typed, names="values")
        self.button.on_click(lambda _: self._press())

    def _ipython_display_(self) -> None:
        display(self.box)  # type: ignore[no-untyped-call]

    def _typed(self, _: Any) -> None:
        guarded(self._show, self._fail)  # what the catalog refused may be mended: said below the button only

    def _fail(self, sentence: str) -> None:
        self._say("alert", ["Nothing was recorded.", sentence])

    def _show(self, refused: Mapping[str, str] | None = None) -> None:
        """The controls that mean something now, and what is wrong with each; refused: by heading."""
        names = {field.heading: field.name for field in FIELDS}
        by_name = {names[heading]: fault for heading, fault in (refused or {}).items() if heading in names}
        self.form.faults = faults(self.form.values, self._pressed) | by_name
        self.form.groups = groups(self.form.values)

    def _press(self) -> None:
        if self._done and not cells(self.form.values):
            return  # pressed twice: what was recorded stays in sight
        self._pressed, self._done = True, False
        guarded(self._try, self._fail)

    def _try(self) -> None:
        self._show()
        try:
            self._record(dict(self.form.values))
        except TypedError as error:
            self._show(error.faults)
            raise

    def _record(self, values: Values) -> None:
        if self.form.faults:
            raise TypedError(" ".join(f"{_label(name)}: {fault}" for name, fault in self.form.faults.items()))
        if self._before is not None:
            self._before()
        typed = cells(values)
        taken = record(self.catalog, whose(values), typed)
        self._pressed, self._done = False, True
        self.form.values = {name: values.get(name, "") for name in ("whose", "supplier")}
        said = [*told(taken.supplier, taken.number, typed, taken.notes), f"Catalog: {self.catalog}"]
        self._say("status", said)
        name = part_name(tidy(typed.get("Maker", "")) or None, tidy(typed["Part number"]))
        guarded(lambda: self._recorded(name), lambda sentence: self._say("alert", [*said, sentence]))

    def _say(self, role: str, sentences: list[str]) -> None:
        first, *rest = sentences
        self.said.value = text(f'<div role="{role}"><p><b>{escape(first)}</b></p>{listed(rest)}</div>')


def whose(values: Values) -> str:
    """The supplier that is stated, or the builder's own drawer.

    >>> whose({"whose": "a supplier", "supplier": " Weir  Barn "}), whose({"supplier": "Weir Barn"})
    ('Weir Barn', 'own drawer')
    """
    return supplier_named(values.get("supplier", "")) if values.get("whose") == ELSEWHERE else DRAWER


def cells(values: Values) -> dict[str, str]:
    """What is typed of the part and its offer: texts by heading, without those left empty."""
    return {field.heading: typed for field in FIELDS if (typed := values.get(field.name, "")).strip()}


def faults(values: Values, pressed: bool) -> dict[str, str]:
    """What is wrong with each control, by name; that something needed is missing only once it was to be recorded.

    >>> faults({"capacitance": "4.7 V", "voltage": "63 V"}, False)
    {'capacitance': '"4.7 V" has the unit "V", but a quantity in F is wanted here, like 4.7 µF.'}
    """
    typed, lacking = cells(values), {}
    if pressed:
        lacking = {"supplier": NO_SUPPLIER} if not whose(values) else {}
        lacking |= {field.name: NEEDED for field in missing(whose(values), typed)}
    unread = {field.name: field.fault(typed.get(field.heading, "")) for field in FIELDS}
    return lacking | {name: fault for name, fault in unread.items() if fault}


def groups(values: Values) -> list[dict[str, Any]]:
    """The controls that mean something now, as a form takes them; what is typed stays in sight even where it means
    nothing any more, so that nothing is lost or left out unseen.
    """
    typed = cells(values)
    now = [field for field in FIELDS if field.has_meaning(whose(values), typed) or field.heading in typed]
    first = [WHOSE | {"options": [DRAWER, ELSEWHERE]}, *([SUPPLIER] if values.get("whose") == ELSEWHERE else [])]
    known = [field for field in now if field.asked and not field.needed]
    told_apart = {
        "Needed": (field for field in now if field.needed),
        "The part, as far as you know it": (field for field in known if field.kind not in OF_AN_OFFER),
        "How many, and in what state": (field for field in known if field.kind in OF_AN_OFFER),
        "Seldom stated": (field for field in now if not field.asked and not field.needed),
    }
    made = [_group(title, map(_control, fields)) for title, fields in told_apart.items()]
    return [_group("Where it comes from", first), *made]


def _group(title: str, controls: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
    return {"title": title, "open": title != "Seldom stated", "controls": [dict(one) for one in controls]}


def _control(field: Field) -> dict[str, Any]:
    """One control: a word to choose, or a text with an example."""
    control = {"name": field.name, "label": field.heading, "kind": "choice" if field.words else "text"}
    if field.words:
        return control | {"hint": field.meaning, "options": [["", "not stated"], *([one, one] for one in field.words)]}
    return control | {"hint": field.allowed or field.meaning}


def _label(name: str) -> str:
    headings = {field.name: field.heading for field in FIELDS}
    return headings.get(name, "Supplier")
