"""Scripts and styles that stand beside the widgets' modules."""

from importlib.resources import files


def beside(*names: str) -> str:
    """The text of these files of this room, one after the other."""
    return "\n".join((files("subsearch.display") / name).read_text(encoding="utf-8") for name in names)
