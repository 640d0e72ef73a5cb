"""The panel's controls: each a label, what it means, and how its text becomes a part of what is asked."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import ipywidgets as widgets

from subsearch.errors import SubsearchError, UnknownNameError, nearest, one_of
from subsearch.repair.positions import read_rating
from subsearch.terms import ROLES
from subsearch.units import read_quantity

Asked = dict[str, Any]
SIDES = ("left_mm", "right_mm", "front_mm", "back_mm")


@dataclass(frozen=True)
class Knob:
    """A control: its name in Python, its label, an example or what it means, and its reader."""

    name: str
    label: str
    hint: str
    read: Callable[[Any], Asked]
    kind: str = "text"


def _size(field: str, unit: str) -> Callable[[Any], Asked]:
    return lambda text: {field: read_quantity(text, unit)}


def _rating(text: str) -> Asked:
    rating = read_rating(text)
    return {"rated_ac_v" if rating.ac else "rated_v": rating.volts}


def _width(text: str) -> Asked:
    return dict.fromkeys(SIDES, read_quantity(text, "mm") / 2)


KNOBS = (
    Knob("position", "Position", "its name on the board", lambda text: {"reference": text}),
    Knob("pieces", "Pieces", "how many of them", lambda number: {"pieces": number}, "count"),
    Knob("capacitance", "Capacitance", "of the old part, like 47 µF", _size("capacitance_f", "F")),
    Knob("voltage", "Voltage", "rating needed, like 25 V or 275 V a.c.", _rating),
    Knob("role", "Role", "what it does in the circuit", lambda role: {"role": role}, "role"),
    Knob("hole_spacing", "Hole spacing", "between the two holes, like 2.5 mm", _size("hole_spacing_mm", "mm")),
    Knob("headroom", "Headroom", "free height above the board, like 12 mm", _size("headroom_mm", "mm")),
    Knob("width", "Free width", "both ways, centred on the holes, like 9 mm", _width),
    Knob("temperature", "Temperature", "at the part while it works, like 55 °C", _size("working_c", "°C")),
    Knob("hours_a_day", "Hours a day", "switched on, like 4; empty is 24", _size("hours_a_day", "")),
    Knob("years", "Years wanted", "of life, 15 at most", _size("life_wanted_y", "")),
    Knob("bipolar", "Bipolar", "the voltage may reverse", lambda yes: {"reverses": yes}, "yes"),
)


class Knobs:
    """The controls as one box, and what they ask.

    Raises:
        UnknownNameError: a value is given for no control of ours; the text names the nearest.

    >>> Knobs({"capacitance": "47 µF", "width": "9 mm"}).asked()["left_mm"]
    4.5
    """

    def __init__(self, given: dict[str, Any]) -> None:
        names = [knob.name for knob in KNOBS]
        for name in given:
            if name not in names:
                raise UnknownNameError(
                    f'The panel has no "{name}".{nearest(name, names)} It takes {one_of(names)}, each as text.'
                )
        self.widgets = {knob.name: _widget(knob, given.get(knob.name)) for knob in KNOBS}
        self.box = widgets.GridBox(
            list(self.widgets.values()),
            layout=widgets.Layout(grid_template_columns="repeat(auto-fill, minmax(255px, 1fr))", grid_gap="2px 10px"),
        )

    def asked(self) -> Asked:
        """What the controls ask, as the fields of a requirement; an empty control asks nothing.

        Raises:
            SubsearchError: a text can't be read; the sentence begins with the label of its control.
        """
        asked: Asked = {}
        for knob in KNOBS:
            value = self.widgets[knob.name].value
            value = value.strip() if isinstance(value, str) else value
            if value:
                try:
                    asked |= knob.read(value)
                except SubsearchError as error:
                    raise SubsearchError(f"{knob.label}: {error}") from error
        return asked

    def on_change(self, act: Callable[[], None]) -> None:
        """Call this whenever the builder changes a control."""
        for widget in self.widgets.values():
            widget.observe(lambda _: act(), names="value")


def _widget(knob: Knob, value: Any) -> Any:
    common = {"description": knob.label, "tooltip": knob.hint, "description_allow_html": False}
    common |= {"style": {"description_width": "92px"}, "layout": widgets.Layout(width="auto")}
    if knob.kind == "count":
        return widgets.BoundedIntText(value=value or 1, min=1, max=10_000, **common)
    if knob.kind == "role":
        return widgets.Dropdown(options=[("not said", None), *((role, role) for role in ROLES)], value=value, **common)
    if knob.kind == "yes":
        return widgets.Checkbox(
            value=bool(value), **common | {"description": f"{knob.label}: {knob.hint}", "indent": False}
        )
    return widgets.Text(value=value or "", placeholder=knob.hint, **common)
