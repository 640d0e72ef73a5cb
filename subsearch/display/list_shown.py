"""The panel's list: what was taken, asked again in the catalog as it is now, shown, and written."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from subsearch.catalog.background import Background
from subsearch.catalog.kept_open import KeptOpen
from subsearch.display.panel_box import PanelBox
from subsearch.display.panel_told import show_bought
from subsearch.errors import RequirementError
from subsearch.repair.asking import Asked
from subsearch.repair.inquiry import PartKey
from subsearch.shopping.files import unused, write_csv
from subsearch.shopping.taken import Bought, bought

Wanted = Sequence[tuple[Asked, PartKey]]


class ListShown:
    """What is on the list now; None until it is known."""

    def __init__(self, catalog: KeptOpen, box: PanelBox, failed: Callable[[Exception], None]) -> None:
        self._box = box
        self._asking = Background(catalog, failed)
        self._written: Path | None = None
        self._wanted: Wanted = []
        self._gone: Mapping[str, str] = {}
        self.now: Bought | None = None

    @property
    def names(self) -> list[str]:
        """The positions that stand on it, in its order, those whose part can't be taken any more last."""
        return [] if self.now is None else [*(one.name for one in self.now.choices), *self.now.gone]

    def ask(self, wanted: Wanted, gone: Mapping[str, str], at_once: bool = False) -> None:
        """Ask for what was taken, beside the notebook or at once; `gone` says by position why it can't be asked."""
        self._wanted, self._gone = wanted, gone
        start = self._asking.now if at_once else self._asking.start
        start(partial(bought, wanted=wanted), self._show)

    def rest(self) -> None:
        """End all work on the catalog."""
        self._asking.stop()

    def write(self, folder: Path) -> None:
        """Write the list into a folder; again into the same file, but never over one of an earlier day.

        Raises:
            RequirementError: nothing is on it.
        """
        if self._asking.busy:  # what is shown is not what was taken
            before = self.now
            self.ask(self._wanted, self._gone, at_once=True)
            if self.now is before:
                return  # it could not be asked, and that is said
        if self.now is None or not self.now.choices:
            raise RequirementError("The list is empty. Take a part first.")
        self._written = self._written or unused(folder / "shopping-list.csv")
        write_csv(self.now.shopping, self._written)
        show_bought(self._box, self.now, f"Written: {self._written.resolve()}")

    def _show(self, now: Bought) -> None:
        self.now = replace(now, gone={**now.gone, **self._gone})
        show_bought(self._box, self.now, "")
