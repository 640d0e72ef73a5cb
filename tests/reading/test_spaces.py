"""Spaces as the patterns know them are those that Python knows, in Python's patterns and in the database's."""

import re
from collections.abc import Iterator

import duckdb
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from subsearch.reading.cells import OWN_WORDS, reader_of
from subsearch.reading.spaces import NEEDLESS, SPACES, tidy
from subsearch.terms import TERMS

ALL = [chr(code) for code in range(1, 0x110000) if not 0xD800 <= code < 0xE000]
SPACED = st.text(st.sampled_from("ab \t\n\x1c\x1f\x85\u00a0\u2003\u200b\u3000\ufeff\u00b5"), max_size=6)


@pytest.fixture(scope="module")
def con() -> Iterator[duckdb.DuckDBPyConnection]:
    with duckdb.connect() as con:
        yield con


def test_every_character(con: duckdb.DuckDBPyConnection) -> None:
    spaces = [sign for sign in ALL if sign.isspace()]
    assert [sign for sign in ALL if re.match(f"[{SPACES}]", sign)] == spaces
    found = con.execute(
        "select sign from (select unnest($all) as sign) where regexp_matches(sign, $some)",
        {"all": ALL, "some": f"[{SPACES}]"},
    ).fetchall()
    assert [sign for (sign,) in found] == spaces


@given(text=SPACED)
@example(text="a\n")
def test_a_text_has_needless_spaces_where_tidying_changes_it(con: duckdb.DuckDBPyConnection, text: str) -> None:
    assert bool(re.search(NEEDLESS, text)) == (tidy(text) != text)
    assert con.execute("select regexp_matches($1, $2)", [text, NEEDLESS]).fetchall() == [(tidy(text) != text,)]


@pytest.mark.parametrize("kind", OWN_WORDS)
@given(text=SPACED)
def test_a_cell_without_needless_spaces_states_its_own_words(kind: str, text: str) -> None:
    assert reader_of(kind)(text) == ({kind: tidy(text)} if text.strip() else {})
    assert not TERMS[kind].unit and not TERMS[kind].words
