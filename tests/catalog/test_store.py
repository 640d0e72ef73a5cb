"""Opening the catalog: a sentence for each file that is not one, and nothing left behind by what fails."""

import subprocess
import sys
from pathlib import Path

import duckdb
import pytest

from subsearch.catalog.store import EDITION, open_to_read, open_to_write
from subsearch.errors import CatalogError


def made(path: Path) -> Path:
    with open_to_write(path):
        pass
    return path


def test_a_new_file_has_the_tables_and_can_be_read_only(tmp_path: Path) -> None:
    with open_to_read(made(tmp_path / "c")) as con:
        assert con.execute("select edition from catalog_edition").fetchall() == [(EDITION,)]
        with pytest.raises(duckdb.InvalidInputException, match="read-only"):
            con.execute("delete from part")


def test_a_missing_file(tmp_path: Path) -> None:
    with pytest.raises(CatalogError) as caught:
        open_to_read(tmp_path / "none")
    assert str(caught.value) == (
        f'There is no catalog "{tmp_path / "none"}". Load a supplier\'s list first, or check the path.'
    )


def test_a_missing_folder(tmp_path: Path) -> None:
    with (
        pytest.raises(CatalogError, match=r"^There is no folder \".*away\" for the catalog. Make it first"),
        open_to_write(tmp_path / "away" / "c"),
    ):
        pass


@pytest.mark.parametrize("content", [b"not a database", b"x" * 5000])
def test_a_file_that_is_no_database(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "c"
    path.write_bytes(content)
    with pytest.raises(
        CatalogError, match=r"can't be opened as a catalog \(.*\). Check the path, or load into a new file."
    ):
        open_to_read(path)
    with pytest.raises(CatalogError, match="can't be opened as a catalog"), open_to_write(path):
        pass
    assert path.read_bytes() == content


def test_a_database_that_is_not_ours(tmp_path: Path) -> None:
    path = tmp_path / "c"
    with duckdb.connect(path) as con:
        con.execute("create table part (pk integer)")
    before = path.read_bytes()
    sentence = f'"{path}" is a database, but not a catalog of ours. Load into a new file.'
    with pytest.raises(CatalogError) as caught:
        open_to_read(path)
    assert str(caught.value) == sentence
    with pytest.raises(CatalogError) as caught, open_to_write(path):
        pass
    assert str(caught.value) == sentence
    assert path.read_bytes() == before


def test_a_catalog_of_another_edition(tmp_path: Path) -> None:
    path = made(tmp_path / "c")
    with duckdb.connect(path) as con:
        con.execute("update catalog_edition set edition = 99")
    with pytest.raises(CatalogError) as caught:
        open_to_read(path)
    assert str(caught.value) == (
        f'The catalog "{path}" follows edition 99 of the tables, this program edition {EDITION}. '
        "Load the lists again into a new file."
    )


def test_a_catalog_that_another_process_holds(tmp_path: Path) -> None:
    path = made(tmp_path / "c")
    hold = f"import duckdb; con = duckdb.connect({str(path)!r}); print('held', flush=True); input()"
    with subprocess.Popen(
        [sys.executable, "-c", hold], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout
        assert other.stdout.readline() == "held\n"
        sentence = rf"^The catalog \".*\" is held by another process \(PID {other.pid}\). Wait until its load has ended"
        with pytest.raises(CatalogError, match=sentence):
            open_to_read(path)
        with pytest.raises(CatalogError, match=sentence), open_to_write(path):
            pass
        other.communicate("\n")


def test_what_fails_leaves_the_file_as_it_was_or_absent(tmp_path: Path) -> None:
    path = made(tmp_path / "c")
    before = path.read_bytes()
    for target in (path, tmp_path / "new"):
        with pytest.raises(ZeroDivisionError), open_to_write(target) as con:
            con.execute("insert into currency_rate select 'EUR', 1, null from range(200000)")
            raise ZeroDivisionError
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_a_path_that_holds_the_word_lock_is_not_a_lock(tmp_path: Path) -> None:
    file = tmp_path / "clock.duckdb"
    file.write_text("words")
    with pytest.raises(CatalogError, match="can't be opened as a catalog"):
        open_to_read(file)


def test_a_load_holds_little_in_memory(tmp_path: Path) -> None:
    with open_to_write(tmp_path / "c") as con:
        held = con.execute(
            "select current_setting('memory_limit'), current_setting('write_buffer_row_group_count')"
        ).fetchall()
    assert held == [("1.8 GiB", 1)]


def test_the_database_draws_no_bar_of_its_own(tmp_path: Path) -> None:
    asked = """import sys; from pathlib import Path; from subsearch.catalog.store import open_to_read, open_to_write
with open_to_write(Path(sys.argv[1])) as con:
    print(con.execute("select current_setting('enable_progress_bar')").fetchall())
print(open_to_read(Path(sys.argv[1])).execute("select current_setting('enable_progress_bar')").fetchall())"""
    command = [sys.executable, "-c", asked, str(tmp_path / "c")]  # without a file it counts as typed, which has a bar
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stdout == "[(False,)]\n" * 2
