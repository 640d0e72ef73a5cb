"""The terminal's console: sentences as one line each, without signs from a list that would steer it."""

from rich.console import Console

FULL_WIDTH = 140


def console() -> Console:
    """A console as wide as the terminal, or FULL_WIDTH where the output goes into a file."""
    own = Console(highlight=False, emoji=False, markup=False)
    return own if own.is_terminal else Console(highlight=False, emoji=False, markup=False, width=FULL_WIDTH)


def say(text: str) -> None:
    """Print a sentence as one line, which the terminal may fold but a file keeps whole."""
    console().print(visible(text), soft_wrap=True)


def visible(text: str) -> str:
    """Text from a list or a folder without the signs that would steer a terminal.

    >>> visible("C1\x1b[31m")
    'C1�[31m'
    """
    return "".join(sign if sign.isprintable() or sign == "\n" else "\N{REPLACEMENT CHARACTER}" for sign in text)
