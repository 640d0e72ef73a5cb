"""The list of planted faults is sound. That each is seen takes minutes: `python -m planted`, with every landing."""

import os
from pathlib import Path

import pytest
from planted.__main__ import complaint
from planted.copies import GREEN, answers, copy_tree
from planted.faults import ROOT, Fault, read_faults

FAULTS = list(read_faults())
LAW_FILES = {f"subsearch/formulas/{file.name}" for file in (ROOT / "subsearch" / "formulas").glob("*.py")}
NO_LAW = {"subsearch/formulas/__init__.py", "subsearch/formulas/sources.py"}


@pytest.mark.parametrize("fault", FAULTS, ids=[fault.what for fault in FAULTS])
def test_a_fault_can_be_planted_and_names_a_test(fault: Fault) -> None:
    sound = (ROOT / fault.file).read_text(encoding="utf-8")
    compile(fault.planted(sound), fault.file, "exec")
    assert (ROOT / fault.test[0].partition("::")[0]).is_file()


def test_every_file_of_laws_has_one_and_there_are_twenty_in_all() -> None:
    assert {fault.file for fault in FAULTS} >= LAW_FILES - NO_LAW
    assert len(FAULTS) >= 20
    assert len({fault.what for fault in FAULTS}) == len(FAULTS)


@pytest.mark.skipif(not hasattr(os, "fork"), reason="this system can't fork, which the planting needs for its speed")
def test_a_change_that_is_no_fault_is_told(tmp_path: Path) -> None:
    tree = copy_tree(tmp_path / "tree")
    red = "tests/published/test_published.py -k LIFE01"
    harmless = Fault("none", "subsearch/formulas/life.py", "How long a capacitor lasts", "How long it lasts", red)
    assert answers(tree, *harmless.test)[0] == GREEN
    assert "stayed green" in (complaint(harmless, tree) or "")
    nowhere = Fault("none", harmless.file, harmless.old, harmless.new, "tests/published/test_published.py -k NOTHING")
    assert "ran no test" in (complaint(nowhere, tree) or "")
    slip = Fault("slip", harmless.file, "(rated_c - working_c) / 10", "(working_c - rated_c) / 10", red)
    assert complaint(slip, tree) is None
    with pytest.raises(LookupError, match="stands 0 times"):
        complaint(Fault("gone", harmless.file, "no such text", "", red), tree)
