"""What a condition is: the SQL that answers it, when it is asked, and the sentence that says the answer."""

from dataclasses import dataclass

from subsearch.search.stated import EVERYTHING, Stated


@dataclass(frozen=True)
class Criterion:
    """One condition on a part, or on one offer of it.

    It is asked where the need states one of its `fields`, or all of them `together`, and not the one `unless` names.
    `exempt` is true where the question has no meaning for the part, which is then answered yes with a sentence of its
    own. One `on_claims` needs no number that must be made first.
    """

    name: str
    label: str
    fields: tuple[str, ...]
    holds: str
    sentence: str
    exempt: str = ""
    exempt_sentence: str = ""
    together: bool = False
    unless: str = ""
    on_claims: bool = False

    def asked(self, stated: Stated = EVERYTHING) -> str:
        """SQL that is true where the need asks it; never null."""
        asked = stated.asked(self.fields, self.together)
        return f"({asked}) and need.{self.unless} is null" if self.unless and asked != "false" else asked

    def answer(self, stated: Stated = EVERYTHING) -> str:
        """The SQL that gives true, false or null."""
        asked = self.asked(stated)
        if asked == "false":
            return "true"
        unasked = [] if asked == "true" else [f"not ({asked})"]
        exempt = [f"coalesce({self.exempt}, false)"] if self.exempt else []
        return f"({' or '.join([*unasked, *exempt, f'({self.holds})'])})"
