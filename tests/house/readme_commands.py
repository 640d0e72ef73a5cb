"""README's commands, so that nobody types them a second time: prints the n-th block of shell lines."""

import re
import sys
from pathlib import Path

README = Path(__file__).parents[2] / "README.md"


def shell_blocks(text: str) -> list[str]:
    """The fenced blocks of shell lines, in the order they stand."""
    return re.findall(r"^```sh\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)


if __name__ == "__main__":
    sys.stdout.write(shell_blocks(README.read_text(encoding="utf-8"))[int(sys.argv[1]) - 1])
