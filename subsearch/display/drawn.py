"""A chart as a picture in a notebook: drawn here, so that nothing is asked of the network, and stored with the page."""

from dataclasses import dataclass
from html import escape

import altair as alt

from subsearch.display.charts import svg

INK = "<style>.subs-drawn svg text { fill: var(--jp-ui-font-color1, black) !important; }</style>"


@dataclass(frozen=True)
class Drawn:
    """A chart and the sentence that says what to see in it; a notebook shows both."""

    chart: alt.TopLevelMixin
    to_see: str

    def _repr_html_(self) -> str:
        said = f"<figcaption>{escape(self.to_see)}</figcaption>"
        return f'{INK}<figure class="subs-drawn">{svg(self.chart)}{said}</figure>'
