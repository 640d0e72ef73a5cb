"""python -m demo_maker FOLDER: write the demonstration data into a folder."""

import sys
from pathlib import Path

from demo_maker.everything import write_everything

if len(sys.argv) != 2:
    sys.exit("Say where to: python -m demo_maker FOLDER")
write_everything(Path(sys.argv[1]))
