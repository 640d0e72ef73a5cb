"""The panel's whole state: what is tried where, what is compared and taken; and its file, which is never lost."""

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from repair.test_trial import TRIALS

from subsearch.errors import RepairError
from subsearch.repair.bench import Bench, Taken
from subsearch.repair.saved_bench import read, save, set_aside
from subsearch.repair.trial import Trial

FOUND = Trial({"reference": "C7", "headroom_mm": "12"})
HIGHER = Trial({"reference": "C7", "headroom_mm": "14"})
OTHER = Trial({"reference": "C8"})
PARTS = st.tuples(st.none() | st.text(max_size=4), st.text(max_size=4))
TAKEN = st.builds(lambda trial, part: Taken(trial, *part), TRIALS, PARTS)
NAMES = st.text(max_size=4)
BENCHES = st.builds(
    Bench,
    NAMES,
    st.dictionaries(NAMES, TRIALS, max_size=2),
    st.lists(PARTS, max_size=2).map(tuple),
    st.dictionaries(NAMES, TAKEN, max_size=2),
)


def test_only_what_was_touched_is_kept() -> None:
    bench = Bench("C7")
    assert bench.trial(FOUND) == FOUND
    tried = bench.trying(HIGHER, FOUND)
    assert tried.trial(FOUND) == HIGHER and dict(tried.trials) == {"C7": HIGHER}
    assert tried.trying(FOUND, FOUND) == bench
    assert tried.showing("C8").trial(FOUND) == FOUND
    assert tried.showing("C8").showing("C7").trial(FOUND) == HIGHER


def test_parts_are_compared_at_one_position() -> None:
    bench = Bench("C7").comparing(("Mill", "Hollow 1"), (None, "Hollow 2"), ("Mill", "Hollow 1"))
    assert bench.compared == (("Mill", "Hollow 1"), (None, "Hollow 2"))
    assert bench.showing("C7") == bench
    assert bench.showing("C8").compared == ()
    assert bench.comparing().compared == ()


def test_a_part_is_taken_and_given_back() -> None:
    bench = Bench("C7").taking(FOUND, "Mill", "Hollow 1").taking(OTHER, None, "Hollow 2")
    assert dict(bench.taken) == {"C7": Taken(FOUND, "Mill", "Hollow 1"), "C8": Taken(OTHER, None, "Hollow 2")}
    assert bench.taking(OTHER, None, "Hollow 3").taken["C8"].part_number == "Hollow 3"
    assert list(bench.giving_back("C7").taken) == ["C8"]
    assert bench.giving_back("C9") == bench


def test_a_bench_is_never_changed_in_place() -> None:
    trials = {"C7": FOUND}
    bench = Bench("C7", trials)
    trials["C7"] = HIGHER
    assert bench.trials["C7"] == FOUND
    with pytest.raises(TypeError):
        bench.taken["C7"] = Taken(FOUND, None, "x")  # type: ignore[index]


@given(BENCHES)
def test_a_bench_comes_back_from_json(bench: Bench) -> None:
    back = Bench.from_json(json.loads(json.dumps(bench.to_json(), sort_keys=True)))
    assert back == bench and hash(back) == hash(bench)


@settings(deadline=None, max_examples=50)  # the disk takes its time
@given(BENCHES, st.dictionaries(NAMES, NAMES, max_size=2))
def test_a_bench_comes_back_from_its_file(
    tmp_path_factory: pytest.TempPathFactory, bench: Bench, given_texts: dict[str, str]
) -> None:
    folder = tmp_path_factory.mktemp("radio")
    assert read(folder) is None
    save(folder, Bench("before"), {})
    save(folder, bench, given_texts)
    saved = read(folder)
    assert saved is not None and (saved.bench, saved.given) == (bench, given_texts)
    assert timedelta(0) <= datetime.now(UTC) - saved.at < timedelta(minutes=5)
    assert [one.name for one in folder.iterdir()] == ["panel.json"]


def test_a_changed_cell_of_the_notebook_wins(tmp_path: Path) -> None:
    save(tmp_path, Bench(), {"headroom_mm": "12", "role": "reservoir", "left_mm": "5"})
    saved = read(tmp_path)
    assert saved is not None
    assert saved.changed({"headroom_mm": "12", "role": "reservoir", "left_mm": "5"}) == {}
    assert saved.changed({"headroom_mm": "14", "role": "reservoir", "plated": "no", "right_mm": ""}) == {
        "headroom_mm": "14", "left_mm": "", "plated": "no",
    }  # fmt: skip


def test_the_file_can_be_read_by_a_person(tmp_path: Path) -> None:
    text = save(tmp_path, Bench("C7 (Netzteil groß)"), {}).read_text(encoding="utf-8")
    assert '"shown": "C7 (Netzteil groß)"' in text
    assert list(json.loads(text)) == ["at", "bench", "edition", "found", "given"]


def edited(**values: object) -> str:
    whole = {"edition": 1, "at": "2026-11-30T12:00:00+00:00", "given": {}, "found": {}, "bench": Bench().to_json()}
    return json.dumps(whole | values)


DAMAGED = {
    "cut short": (edited()[:40], "Unterminated string"),
    "empty": ("", "Expecting value"),
    "not UTF-8": ("\udcff", "'utf-8' codec can't decode"),
    "another edition": (edited(edition=2), "it is of edition 2, and this program reads edition 1."),
    "no table": ("[]", '"[]" stands where a table must stand.'),
    "no bench": (edited(bench=None), '"None" stands where a table must stand.'),
    "a number for a text": (edited(given={"note": 3}), '"3" stands where a text must stand.'),
    "a list for what was found": (edited(found={"C1": []}), '"[]" stands where a table must stand.'),
    "no time": (edited(at="noon"), "Invalid isoformat string: 'noon'."),
    "an unknown heading": (
        edited(bench=Bench().to_json() | {"trials": {"C1": {"cells": {"hight": "1"}, "conceded": []}}}),
        '"hight" is not a heading.',
    ),
    "half a part": (edited(bench=Bench().to_json() | {"compared": [["Mill"]]}), "stands where a list of 2 must stand."),
    "nested without end": ("[" * 100_000, "maximum recursion depth"),
}


@pytest.mark.parametrize(("text", "reason"), DAMAGED.values(), ids=DAMAGED)
def test_a_damaged_file_is_kept_until_it_is_set_aside(text: str, reason: str, tmp_path: Path) -> None:
    file = tmp_path / "panel.json"
    file.write_bytes(text.encode("utf-8", "surrogateescape"))
    for act in (lambda: read(tmp_path), lambda: save(tmp_path, Bench("C7"), {})):
        with pytest.raises(RepairError) as caught:
            act()
        assert str(caught.value).startswith(f'"{file}", the saved state of the panel, can\'t be read: ')
        assert reason in str(caught.value)
        assert str(caught.value).endswith("It is kept as it is. Correct it, or start anew: then it is set aside.")
        assert file.read_bytes() == text.encode("utf-8", "surrogateescape")
    assert set_aside(tmp_path) == tmp_path / "panel-damaged.json"
    assert (tmp_path / "panel-damaged.json").read_bytes() == text.encode("utf-8", "surrogateescape")
    save(tmp_path, Bench("C7"), {})
    saved = read(tmp_path)
    assert saved is not None and saved.bench == Bench("C7")


def test_a_folder_in_its_place_is_set_aside_too(tmp_path: Path) -> None:
    (tmp_path / "panel.json").mkdir()
    with pytest.raises(
        RepairError, match=r"panel.json\", the saved state of the panel, can't be read: .+\. It is kept"
    ):
        read(tmp_path)
    assert set_aside(tmp_path).is_dir() and read(tmp_path) is None


def test_nothing_set_aside_is_written_over(tmp_path: Path) -> None:
    for at, name in enumerate(["panel-damaged.json", "panel-damaged-2.json", "panel-damaged-3.json"]):
        (tmp_path / "panel.json").write_text(str(at), encoding="utf-8")
        assert set_aside(tmp_path).name == name
        assert (tmp_path / name).read_text(encoding="utf-8") == str(at)
    assert (tmp_path / "panel-damaged.json").read_text(encoding="utf-8") == "0"
    with pytest.raises(RepairError, match=r'There is no ".*panel.json" to set aside. Start the panel as it is.'):
        set_aside(tmp_path)
