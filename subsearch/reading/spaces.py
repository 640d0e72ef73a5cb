"""Which characters are spaces, and which texts have needless ones: patterns for Python and the database."""

SPACES = "\t-\r\x1c- \x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000"  # those that str.split knows
ODD_SPACES = SPACES.replace("- ", "-\x1f")
NEEDLESS = f"^[{SPACES}]|[{SPACES}]$|[{SPACES}][{SPACES}]|[{ODD_SPACES}]"  # in a text that is not its own tidy form


def tidy(text: str) -> str:
    """Give a text with one space for each run of spaces, and none at its ends.

    >>> tidy(" Weir \u00a0 Barn ")
    'Weir Barn'
    """
    return " ".join(text.split())
