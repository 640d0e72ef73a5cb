"""The panel's controls as one form: each with its label, its hint and the sentence that says what is wrong with it.

One widget for all of them, with the browser's own controls in it: labels, hints and faults then belong to their control
for who hears the screen, empty means "not asked", every control is reached by keys, and a change is one message.
"""

from typing import Any

import anywidget
import traitlets

from subsearch.display.beside import beside


class Form(anywidget.AnyWidget):
    """Groups of controls; what they hold comes back as texts by name, "yes" or "" of one to tick.

    A group has a title, whether it is open, and its controls, each with name, label, hint and kind: "text"; "measure",
    a text with a slider from `low` to `high` in steps of `step` of its `unit`; "choice" among `options`; or "yes".

    >>> Form(groups=[], values={"headroom_mm": "12 mm"}).values
    {'headroom_mm': '12 mm'}
    """

    _esm = beside("shared.js", "form.js")
    _css = beside("form.css")
    groups: traitlets.List[Any] = traitlets.List().tag(sync=True)
    values: "traitlets.Dict[str, str]" = traitlets.Dict().tag(sync=True)
    faults: "traitlets.Dict[str, str]" = traitlets.Dict().tag(sync=True)
