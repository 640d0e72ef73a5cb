"""Plant each fault in a copy of the tree and see its test go red: `PYTHONPATH=tests python -m planted [WORD ...]`.

With words, only the faults whose description or file has one of them. Nothing in the tree itself is changed.
"""

import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from queue import Queue

from planted.copies import GREEN, RED, answers, copy_tree
from planted.faults import Fault, read_faults

MOST = 2  # copies at work beside each other


def complaint(fault: Fault, tree: Path) -> str | None:
    """What is wrong with a planted fault: None where its test went red."""
    file = tree / fault.file
    sound = file.read_text(encoding="utf-8")
    file.write_text(fault.planted(sound), encoding="utf-8")
    try:
        ended, said = answers(tree, *fault.test)
    finally:
        file.write_text(sound, encoding="utf-8")
    if ended == RED:
        return None
    return f"{fault.red} {'stayed green' if ended == GREEN else f'ran no test ({ended})'}\n{said[-1500:]}"


def unseen(faults: Iterable[Fault], trees: Iterable[Path]) -> Iterator[str]:
    """The faults that no test sees, each with what happened instead."""
    free: Queue[Path] = Queue()
    for tree in trees:
        free.put(tree)

    def judge(fault: Fault) -> str | None:
        tree = free.get()
        try:
            found = complaint(fault, tree)
        finally:
            free.put(tree)
        return found and f"{fault.what} ({fault.file}): {found}"

    with ThreadPoolExecutor(free.qsize()) as workers:
        yield from filter(None, workers.map(judge, faults))


def main(words: list[str]) -> int:
    faults = [one for one in read_faults() if not words or any(word in f"{one.what} {one.file}" for word in words)]
    started = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        trees = [copy_tree(Path(folder) / str(number)) for number in range(MOST)]
        ended, said = answers(trees[0], *sorted({fault.test[0] for fault in faults}))
        if ended != GREEN:
            print(f"The tests are not green before a fault is planted:\n{said[-3000:]}")
            return 1
        missed = list(unseen(faults, trees))
    print(*missed, sep="\n")
    print(f"{len(faults) - len(missed)} of {len(faults)} planted faults seen in {time.monotonic() - started:.0f} s.")
    return 1 if missed or not faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
