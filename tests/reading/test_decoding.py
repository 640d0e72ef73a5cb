"""Text in any usual encoding (ours): read right, and said wherever the file did not say it itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from subsearch.errors import ListError
from subsearch.reading.decoding import text_of

GERMAN = "Referenz;Wert;Größe\nC1;47µF;Ø8\nC2;1µF ±10 %;früher müde\n"
FRENCH = "Repère;Valeur;Tension\nC1;47µF;25 V\nC2;1µF;céramique, côté droit\n"
SPANISH = "Posición;Valor;Tensión\nC1;47;25\n"
POLISH = "Oznaczenie;Wartość;Napięcie\nC1;47;25 V\nC2;żółty, mały;25 V\n"
CZECH = "Označení;Hodnota;Napětí\nC1;47;25 V\nC2;měkký, žlutý;25 V\n"
RUSSIAN = "Обозначение;Номинал;Напряжение\nС1;47 мкФ;25 В\n"
RUSSIAN_LINE = "С1;47мкФ;25В\n"
JAPANESE = "部品番号,定数,耐圧\nC1,47μF,25V\nC2,0.1μF,フィルム\n"
JAPANESE_LINE = "C1,47μF,電解\nC2,1μF,フィルム\n"
NARROW = "C1,47μF,ﾃﾞﾝｶｲ ｺﾝﾃﾞﾝｻ\n"
CHINESE = "位号,数值,耐压\nC1,47μF,25V\nC2,0.1μF,电解电容\n"
CHINESE_LINE = "C1,47μF,电解\nC2,1μF,薄膜\n"
TAIWANESE = "位號,數值,耐壓\nC1,47μF,25V\nC2,1μF,電解電容\n"
KOREAN = "부품번호,값,전압\nC1,47μF,25V\nC2,1μF,전해 콘덴서\n"
KOREAN_LINE = "C1,47μF,전해\nC2,1μF,필름\n"
OLDER = [
    ("cp1252", "Windows-1252", GERMAN), ("cp1252", "Windows-1252", FRENCH), ("cp1252", "Windows-1252", SPANISH),
    ("latin-1", "Windows-1252", GERMAN), ("cp1252", "Windows-1252", "Ref;Value\nC1;47µF\n"),
    ("cp1252", "Windows-1252", "C1;4,7uF ±10%\n"), ("cp1252", "Windows-1252", "Number;Price\nHollow 1;0,35 €\n"),
    ("cp1252", "Windows-1252", "Number;Price\nHollow 1;£0.35\n"), ("cp1252", "Windows-1252", "C1 – C4;47\n"),
    ("cp850", "code page 850", "Ref;V\nC1;47±5%\n"), ("cp866", "code page 866", "Поз;Ток\nC1;5 А\n"),
    ("cp1250", "Windows-1250", POLISH), 
    ("cp1250", "Windows-1250", CZECH),
    ("iso8859-2", "ISO 8859-2", POLISH), ("cp852", "code page 852", CZECH), ("cp1251", "Windows-1251", RUSSIAN),
    ("cp1251", "Windows-1251", RUSSIAN_LINE), ("koi8-r", "KOI8-R", RUSSIAN), ("koi8-r", "KOI8-R", RUSSIAN_LINE),
    ("cp866", "code page 866", RUSSIAN), ("cp866", "code page 866", RUSSIAN_LINE), ("shift_jis", "Shift-JIS", JAPANESE),
    ("shift_jis", "Shift-JIS", JAPANESE_LINE), ("cp932", "Shift-JIS", NARROW), ("euc_jp", "EUC-JP", JAPANESE),
    ("euc_jp", "EUC-JP", JAPANESE_LINE), ("gb18030", "GB18030", CHINESE), ("gb2312", "GB18030", CHINESE_LINE),
    ("big5", "Big5", TAIWANESE), ("euc_kr", "EUC-KR", KOREAN), ("cp949", "EUC-KR", KOREAN_LINE),
    ("cp850", "code page 850", "Referenz;Wert\nC1;47µF\nC2;4,7µF ±20%\n"), ("mac_roman", "Mac Roman", FRENCH),
]  # fmt: skip
FEW_WORDS = {  # one or two words beyond ASCII must do
    "Označení;C1\n": "cp1250", "Pojemność;C1\n": "cp1250", "wzmacniacz główny, prąd\n": "iso8859-2",
    "zesilovač, přední\n": "cp852", "C1;cerámico\n": "cp1252", "Netzgerät, Lüfter\n": "cp1252",
    "près, évent\n": "mac_roman",
    "Netzteil, Lüfter, Gerät\n": "cp850", "Плата питания\n": "cp1251", "ПЛАТА ПИТАНИЯ\n": "koi8-r",
    "Сопротивление\n": "koi8-r", "Плата питания; блок\n": "cp866", "C1;керамика\n": "koi8-r",
    "C1,电解电容器\n": "gb18030",
    "C1,瓷片\n": "gb18030", "C1,電解電容器\n": "big5", "電源板\nC1,濾波\n": "big5", "C1,電解\n": "cp932",
    "C1,平滑用\n": "cp932",
    "C2,電解\n": "euc_jp", "電源基板\nC1,平滑用\n": "euc_jp", "C1,積層セラミック\n": "cp932",
    "C1,전해콘덴서용\n": "cp949",
    "C1,세라믹\n": "cp949", "전원 보드\n": "cp949", "4,7µF\n": "cp1252", "4,7µF ±5%\n": "cp850",
}  # fmt: skip
ALL = [GERMAN, FRENCH, SPANISH, POLISH, CZECH, RUSSIAN, JAPANESE, NARROW, CHINESE, TAIWANESE, KOREAN]


@pytest.mark.parametrize("text", ALL)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-32"])
def test_unicode_is_read_without_a_word(text: str, encoding: str) -> None:
    assert text_of(text.encode(encoding), "list.csv") == (text, ())


@pytest.mark.parametrize("text", ALL)
@pytest.mark.parametrize(("encoding", "mark"), [("utf-16-le", b"\xff\xfe"), ("utf-16-be", b"\xfe\xff")])
def test_both_orders_of_utf_16(text: str, encoding: str, mark: bytes) -> None:
    assert text_of(mark + text.encode(encoding), "list.csv") == (text, ())
    assert text_of(text.encode(encoding), "list.csv") == (text, ("The file is UTF-16 without a mark at its start.",))


@pytest.mark.parametrize(("encoding", "spoken", "text"), OLDER)
def test_older_encodings_are_told_by_words_of_the_trade(encoding: str, spoken: str, text: str) -> None:
    found, (note,) = text_of(text.encode(encoding), "list.csv")
    assert found == text
    assert note.startswith(f'The file is not UTF-8; it was read as {spoken}, with "')
    assert note.endswith(" Look at such signs.")


@pytest.mark.parametrize("text", FEW_WORDS)
def test_few_words_tell_the_encoding(text: str) -> None:
    assert text_of(text.encode(FEW_WORDS[text]), "list.csv")[0] == text


@pytest.mark.parametrize("text", ["C1;cerámico\n", "C1;керамический\n", "C1,电解\n", "C1,전해\n", "Größe\n"])
def test_a_known_word_leaves_no_rival(text: str) -> None:
    encoding = next(one for one in ("cp1252", "cp1251", "gb2312", "euc_kr") if _takes(text, one))
    assert "instead" not in text_of(text.encode(encoding), "list.csv")[1][0]


def _takes(text: str, encoding: str) -> bool:
    return text == text.encode(encoding, "ignore").decode(encoding)


def test_another_encoding_that_may_be_meant_is_told() -> None:
    found, (note,) = text_of(b"a;b\n\xfd;2\n", "list.csv")
    assert found == "a;b\ný;2\n"
    assert note == (
        'The file is not UTF-8; it was read as Windows-1250, with "ý" in it. It may be Windows-1251 instead, and "ý" '
        'then "э". Look at such signs.'
    )


def test_single_lines_in_another_encoding() -> None:
    raw = "C1;Größe\nC2;47 µF\nC3;±5 %\nC4;Ø8\n".encode() + "C5;47µF\n".encode("cp1252")
    found, notes = text_of(raw, "list.csv")
    assert found == "C1;Größe\nC2;47 µF\nC3;±5 %\nC4;Ø8\nC5;47µF\n"
    assert notes == (
        'Line 5 is not UTF-8 as the rest is; read as Windows-1252, with "47µF" in it. Look at such signs.',
    )


def test_text_saved_as_utf_8_twice_is_put_right_and_said() -> None:
    twice = "C1;47µF;Größe;±10%;25°C\n".encode().decode("cp1252").encode()
    found, notes = text_of(twice, "list.csv")
    assert found == "C1;47µF;Größe;±10%;25°C\n"
    assert notes == ('The file was saved with mistaken signs: "Âµ" was read as "µ". Look at such signs.',)


def test_signs_that_were_lost_before_are_said() -> None:
    assert text_of("C1;47�F\n".encode(), "list.csv")[1] == (
        'The file holds "�" where a sign was lost before: fill in what stood there.',
    )


@pytest.mark.parametrize(
    ("raw", "sentence"),
    [
        (
            b"a;b\n\x81\x90\xfe;2\n",
            '"list.csv" is not UTF-8, and in no other encoding that is tried does it make sense (as code page 866 it '
            'would hold "БР■"). Save it as CSV (UTF-8).',
        ),
        (
            b"\xff\xfea\0b",
            '"list.csv" begins as UTF-16 text but can\'t be read so (byte 3). Save it as CSV (UTF-8).',
        ),
        (bytes(range(32)) * 9, '"list.csv" is not text: it holds binary data. Save the list as CSV (UTF-8) or XLSX.'),
        (
            b"a\x00\x01\x02\x03b" * 9,
            '"list.csv" is not text: it holds binary data. Save the list as CSV (UTF-8) or XLSX.',
        ),
    ],
)
def test_what_makes_no_sense_is_refused(raw: bytes, sentence: str) -> None:
    with pytest.raises(ListError) as caught:
        text_of(raw, "list.csv")
    assert str(caught.value) == sentence


@given(raw=st.binary(max_size=200))
def test_any_bytes_are_read_with_a_note_or_refused(raw: bytes) -> None:
    try:
        text, notes = text_of(raw, "list.csv")
    except ListError:
        return
    assert notes or text.encode() in (raw, raw.removeprefix(b"\xef\xbb\xbf")) or raw[:2] in (b"\xff\xfe", b"\xfe\xff") \
        or raw[:4] == b"\0\0\xfe\xff"  # fmt: skip


@given(text=st.text(alphabet="abcC123,;\n µΩ±äöüßéèąćżřžБГДжю電解电容전압", max_size=80))
def test_unicode_comes_back(text: str) -> None:
    assert text_of(text.encode(), "list.csv")[0] == text
    assert text_of(text.encode("utf-16"), "list.csv")[0] == text
