"""Text that stays text when a file is opened in a spreadsheet."""

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def text_only(cell: str) -> str:
    """A cell that a spreadsheet shows as it stands, never runs: a formula's first sign gets an apostrophe before it.

    >>> text_only("=1+1"), text_only("Ø 8 mm")
    ("'=1+1", 'Ø 8 mm')
    """
    return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell


def as_meant(cell: str) -> str:
    """The text that `text_only` made a cell of: without the apostrophe before a formula's first sign.

    >>> as_meant("'=1+1"), as_meant("'60s radio")
    ('=1+1', "'60s radio")
    """
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(FORMULA_STARTS) else cell
