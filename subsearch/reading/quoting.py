"""How a text that was found is quoted in a sentence."""

LONGEST = 30


def quoted(text: str) -> str:
    """A text between quotation marks, cut short where it is long.

    >>> quoted("474"), len(quoted("4" * 1000))
    ('"474"', 33)
    """
    return f'"{text}"' if len(text) <= LONGEST else f'"{text[:LONGEST]}…"'
