"""The ranked table of the notebook's panel: reached by keys, read by screen readers, drawn in the notebook's theme.

It also holds the two lines that speak: the status, and the one sentence that says what is wrong.
"""

from typing import Any

import anywidget
import traitlets

from subsearch.display.beside import beside


class PartsTable(anywidget.AnyWidget):
    """Rows to look at (Enter or a click) and to compare (space); both come back as the rows' own ids.

    >>> PartsTable(columns=[{"label": "Place", "right": True}]).picked
    []
    """

    _esm = beside("shared.js", "table_widget.js")
    _css = beside("panel.css")
    columns: traitlets.List[Any] = traitlets.List().tag(sync=True)
    rows: traitlets.List[Any] = traitlets.List().tag(sync=True)
    picked: traitlets.List[str] = traitlets.List().tag(sync=True)
    looked_at = traitlets.Unicode("").tag(sync=True)
    status = traitlets.Unicode("").tag(sync=True)
    alert = traitlets.Unicode("").tag(sync=True)
