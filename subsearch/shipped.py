"""The folders that come with the program: where they lie, and copied out so that they stay as they came."""

import shutil
from pathlib import Path


def shipped(name: str) -> Path:
    """The folder of that name that came with the program.

    >>> shipped("catalog_demo").is_dir()
    True
    """
    here = Path(__file__).parent
    return here / name if (here / name).is_dir() else here.parent / name


def copied_out(name: str, folder: Path, pattern: str = "**/*") -> list[Path]:
    """The files of a shipped folder in a folder of the builder's own, each copied there unless it is there already."""
    source, targets = shipped(name), []
    for file in sorted(one for one in source.glob(pattern) if one.is_file()):
        target = folder / file.relative_to(source)
        if not target.exists():  # what the builder changed there stays as it is
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(file, target)
        targets.append(target)
    return targets
