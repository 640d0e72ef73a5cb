"""What can be typed in of one part and its offer: the headings of a list of one line, and what is asked of each.

Light on purpose: the command line makes its options of it, so it loads no database.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from subsearch.errors import ListError, QuantityError, one_of
from subsearch.reading.cells import Stated, reader_of
from subsearch.terms import TERMS, WITHOUT_POLARITY
from subsearch.units import EXAMPLES

DRAWER = "own drawer"
TYPED_IN = "typed in"  # stands in the catalog where a list has the name of its file
NEEDED = "No part is recorded without it."
NO_SUPPLIER = f'The supplier\'s name is empty. Give a name, or "{DRAWER}" for what is your own.'


def supplier_named(text: str) -> str:
    """Give a typed supplier's name without needless spaces; the builder's own drawer is known in any letters.

    >>> supplier_named(" Weir  Barn "), supplier_named("Own Drawer")
    ('Weir Barn', 'own drawer')
    """
    name = " ".join(text.split())
    return DRAWER if name.casefold() == DRAWER else name


class TypedError(ListError):
    """A part that was typed in can't be recorded.

    `faults` are the sentences by the heading to type again, as far as those are known; `headings` these headings.
    """

    def __init__(self, message: str, faults: Mapping[str, str] | Sequence[str] = ()) -> None:
        super().__init__(message)
        self.faults = dict(faults) if isinstance(faults, Mapping) else dict.fromkeys(faults, message)
        self.headings = tuple(self.faults)


@dataclass(frozen=True)
class Field:
    """One thing that can be typed in.

    heading: as over a column of a list; the option is the same in small letters. kind: what the column holds.
    like: an example. after: heading that must be stated before this means anything. asked: it has a question of its
    own, else only an option. only: asked of the builder's own drawer ("drawer"), of other suppliers ("bought"), or of
    parts that have a polarity ("polar").
    """

    heading: str
    kind: str
    like: str = ""
    needed: bool = False
    after: str = ""
    asked: bool = True
    only: str = ""

    @property
    def name(self) -> str:
        """The heading as a name of Python's."""
        return self.heading.casefold().replace(" ", "_")

    @property
    def option(self) -> str:
        """The option of the command line."""
        return f"--{self.name.replace('_', '-')}"

    @property
    def meaning(self) -> str:
        """What it means, where that needs saying."""
        term = TERMS.get(self.kind)
        return term.meaning if term else ""

    @property
    def words(self) -> tuple[str, ...]:
        """The words it takes; none where it takes a text or a quantity."""
        term = TERMS.get(self.kind)
        return term.words if term else ()

    @property
    def allowed(self) -> str:
        """The words it takes, or how it is written; "" where anything is taken.

        >>> Field("Polarity", "polarity").allowed, Field("Life", "life_h").allowed
        ('polar or bipolar', 'like 2000 h')
        """
        if self.words:
            return one_of(self.words)
        term = TERMS.get(self.kind)
        like = self.like or (EXAMPLES[term.unit] if term and term.unit else "")
        return f"like {like}" if like else ""

    def fault(self, text: str) -> str | None:
        """Why a text can't be taken, in a sentence, or None.

        >>> Field("Stock", "stock").fault("12"), Field("Currency", "currency").fault("1")
        (None, '"1" is not a currency. Write its three letters, like EUR.')
        """
        try:
            reader_of(self.kind)(text)
        except QuantityError as error:
            return str(error)
        return None

    def has_meaning(self, supplier: str, cells: Mapping[str, str]) -> bool:
        """Whether it can be asked of this supplier and of what is typed so far, texts by heading."""
        if self.only in ("drawer", "bought") and (supplier == DRAWER) != (self.only == "drawer"):
            return False
        if self.kind == "currency" and "currency" in _stated("Price", cells):
            return False
        if self.only == "polar" and _stated("Technology", cells).get("technology") in WITHOUT_POLARITY:
            return False
        return not self.after or bool(cells.get(self.after))


FIELDS = (
    Field("Part number", "part_number", needed=True),
    Field("Maker", "maker"),
    Field("Series", "series", asked=False),
    Field("Technology", "technology"),
    Field("Capacitance", "capacitance_f", needed=True),
    Field("Tolerance", "tolerance", "±20 % or -10/+50 %"),
    Field("Voltage", "rated_v", "63 V, or 275 V a.c.", needed=True),
    Field("AC voltage", "rated_ac_v", "275 V a.c.", asked=False),
    Field("Polarity", "polarity", only="polar"),
    Field("Safety class", "safety_class"),
    Field("Shape", "shape"),
    Field("Size", "size", "6.3x11 (diameter × length), or 18x9x15 (length × width × height) for a box", after="Shape"),
    Field("Lead spacing", "lead_spacing_mm", "5 mm", after="Shape"),
    Field("Delivered spacing", "delivered_spacing_mm", "5 mm", asked=False),
    Field("Lead diameter", "lead_diameter_mm", "0.6 mm", asked=False),
    Field("Lead form", "lead_form", after="Shape"),
    Field("Lead length", "lead_length_mm", "20 mm", asked=False),
    Field("Vent", "vent", asked=False),
    Field("Lowest temperature", "lowest_c", "-40 °C"),
    Field("Highest temperature", "rated_c", "105 °C"),
    Field("Life", "life_h", only="polar"),
    Field("Life means", "life_basis", after="Life"),
    Field("Life taken at", "life_reference", asked=False),
    Field("Ripple", "ripple_a", only="polar"),
    Field("Ripple frequency", "ripple_hz", after="Ripple"),
    Field("ESR", "esr_ohm", only="polar"),
    Field("ESR frequency", "esr_hz", after="ESR"),
    Field("Loss factor", "tan_delta", "0.12", asked=False),
    Field("Loss factor at", "tan_delta_hz", "120 Hz", asked=False),
    Field("Leakage", "leakage_rule", asked=False),
    Field("Status", "life_cycle", asked=False),
    Field("Order code", "supplier_number", only="bought"),
    Field("Price", "unit_price", "0.35 EUR", needed=True, only="bought"),
    Field("Currency", "currency", "EUR", only="bought"),
    Field("Stock", "stock", "10"),
    Field("Minimum", "minimum", "10", asked=False),
    Field("Pack", "pack", "5", asked=False),
    Field("Lead time", "lead_time_days", "14", asked=False),
    Field("Condition", "condition"),
    Field("Bought", "date_bought", "2026-10-03", only="drawer"),
    Field("Date code", "date_code", asked=False),
    Field("Traceable", "traceable", asked=False),
)


def _stated(heading: str, cells: Mapping[str, str]) -> Stated:
    """What a cell states; nothing where it can't be read."""
    field = next(field for field in FIELDS if field.heading == heading)
    text = cells.get(heading, "")
    return {} if field.fault(text) else reader_of(field.kind)(text)


def missing(supplier: str, cells: Mapping[str, str]) -> list[Field]:
    """Give the needed things that are not typed yet; cells: texts by heading. An a.c. voltage serves for a d.c. one.

    >>> [field.option for field in missing(DRAWER, {"Part number": "Hollow 1", "AC voltage": "275 V"})]
    ['--capacitance']
    """
    stated = {heading for heading, text in cells.items() if text.strip()}
    stated |= {"Voltage"} if "AC voltage" in stated else set()
    stated |= {"Price"} if supplier == DRAWER else set()
    return [field for field in FIELDS if field.needed and field.heading not in stated]


def told(supplier: str, number: int, cells: Mapping[str, str], notes: Iterable[str]) -> list[str]:
    """Say what was recorded: for whom and as which intake, then each heading with its text, then the notes.

    >>> told(DRAWER, 2, {"Maker": "Mill", "Part number": "Hollow 1", "Series": " "}, ["It has no currency."])[1:]
    ['Part number: Hollow 1', 'Maker: Mill', 'It has no currency.']
    """
    texts = ((field.heading, cells.get(field.heading, "")) for field in FIELDS)
    typed = [f"{heading}: {text}" for heading, text in texts if text.strip()]
    return [f"Recorded for {supplier} (intake {number} of the catalog)", *typed, *notes]
