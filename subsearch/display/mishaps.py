"""What goes wrong while the notebook calls us back, in one sentence: nobody would see it raised."""

import logging
from collections.abc import Callable

from subsearch.catalog.store import in_words
from subsearch.errors import SubsearchError

LOG = logging.getLogger(__name__)


def guarded(act: Callable[[], None], say: Callable[[str], None]) -> None:
    """Do it; where it can't be done, say why in a sentence. What should not happen is also logged, with where it did.

    >>> guarded(lambda: open("none").close(), print)
    "none" can't be read or written: No such file or directory. Check the folder and the disk.
    """
    try:
        act()
    except SubsearchError as error:
        say(str(error))
    except OSError as error:
        which = f'"{error.filename}"' if error.filename else "A file"
        say(f"{which} can't be read or written: {error.strerror or error}. Check the folder and the disk.")
    except Exception as error:
        LOG.exception("the notebook")
        known = in_words(error)
        say(str(known or f"This should not happen ({type(error).__name__}: {error}). Run the notebook again."))
