"""The seeded maker of the demonstration data: everything it writes is invented.

`python -m demo_maker FOLDER` writes the lists, the rates and the repair; `truth()` says what
a reader must find in them.
"""

from demo_maker.truth import Truth, truth

__all__ = ["Truth", "truth"]
