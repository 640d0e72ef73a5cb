"""subsearch: find parts sold today that can stand in for old capacitors, compare their lives, buy the whole set."""

from importlib.metadata import version

__version__ = version("subsearch")
