"""Where the folders that come with the program lie: inside the installed package, else beside it in a clone."""

from pathlib import Path


def shipped(name: str) -> Path:
    """The folder of that name that came with the program.

    >>> shipped("catalog_demo").is_dir()
    True
    """
    here = Path(__file__).parent
    return here / name if (here / name).is_dir() else here.parent / name
