"""Text that stays text when a file is opened in a spreadsheet."""

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def text_only(cell: str) -> str:
    """A cell that a spreadsheet shows as it stands, never runs: a formula's first sign gets an apostrophe before it.

    >>> text_only("=1+1"), text_only("Ø 8 mm")
    ("'=1+1", 'Ø 8 mm')
    """
    return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell
