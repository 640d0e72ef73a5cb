"""Headings in twelve languages (ours, invented lists): each list's headings in a row, and what they mean."""

import pytest

from subsearch.catalog.heading_cells import read_heading
from subsearch.catalog.headings import FIRST, LANGUAGES, NAMES
from subsearch.catalog.layouts import best_layout, two_rows
from subsearch.reading.rows import Row
from subsearch.reading.spelling import plain_words
from subsearch.terms import TERMS

KINDS = (
    "part_number, capacitance_f, rated_v, tolerance, rated_c, size, lead_spacing_mm, stock, lead_time_days, unit_price"
)
LISTS = {
    "english": "MPN | Capacitance (µF) | Rated Voltage [V] | Tol. | Max. temp. | "
    "Dimensions, mm | Pitch/mm | In stock | Lead time (weeks) | Price 10+",
    "german": "Herst.-Nr. | KAPAZITAET [uF] | Nennspannung in V | Toleranz, % | Temperatur max. °C | "
    "Abmessungen (mm) | Rastermass | Verfuegbarkeit | Lieferzeit (Wochen) | Preis ab 10 Stk.",
    "french": "Réf. fabricant | Capacite (µF) | Tension nominale, V | Tolérance (%) | Température max. (°C) | "
    "Dimensions | Entraxe [mm] | Disponibilité | Délai (semaines) | Prix unitaire dès 10",
    "italian": "Codice produttore | Capacità [uF] | Tensione (V) | Tolleranza % | Temperatura massima | "
    "Dimensioni mm | Passo (mm) | Giacenza | Tempo di consegna (settimane) | Prezzo da 10 pz",
    "spanish": "Ref. fabricante | Capacidad (µF) | Tensión nominal (V) | Tolerancia | Temperatura máx. | "
    "Medidas (mm) | Paso, mm | Existencias | Plazo de entrega (semanas) | Precio desde 10 uds.",
    "dutch": "Typenummer | Capaciteit (µF) | Spanning [V] | Tolerantie | Temperatuur max | "
    "Afmetingen (mm) | Steek mm | Voorraad | Levertijd (weken) | Prijs vanaf 10 stuks",
    "polish": "Kod producenta | Pojemność [µF] | Napięcie w V | Tolerancja | Temperatura maksymalna | "
    "Wymiary [mm] | Raster | Stan magazynowy | Czas dostawy (tygodnie) | Cena od 10 szt.",
    "czech": "Kód výrobce | Kapacita [uF] | Napětí v V | Tolerance | Teplota max. | "
    "Rozměry (mm) | Rozteč | Skladem | Dodací lhůta (týdny) | Cena od 10 ks",
    "russian": "Артикул производителя | Ёмкость, мкФ | Напряжение, В | Допуск, % | Температура макс., °С | "
    "Размеры, мм | Шаг, мм | Остаток | Срок поставки, недель | Цена от 10 шт.",
    "japanese": "型番 | 静電容量（μF） | 定格電圧(V) | 許容差 | 最高温度（℃） | "
    "サイズ(mm) | リード間隔 mm | 在庫数 | 納期（週間） | 単価 10個以上",
    "chinese": "型号 | 容值(uF) | 耐压（V） | 精度 | 最高温度 | 尺寸(mm) | 脚距/mm | 库存 | 交期（周） | 单价 10个以上",
    "korean": "부품번호 | 정전용량(uF) | 정격전압(V) | 허용오차 | 최고온도(℃) | "
    "크기(mm) | 리드간격 | 재고 | 납기(주) | 단가 10개 이상",
}


def test_every_language_has_its_list() -> None:
    assert LISTS.keys() == LANGUAGES.keys()


@pytest.mark.parametrize("language", LISTS)
def test_a_list_is_understood_whole(language: str) -> None:
    headings = [heading.strip() for heading in LISTS[language].split("|")]
    columns = [read_heading(place, heading) for place, heading in enumerate(headings)]
    assert [column and column.kind for column in columns] == KINDS.split(", ")
    by_kind = {column.kind: column for column in columns if column}
    assert by_kind["capacitance_f"].hint in ("µ", "u")
    assert by_kind["unit_price"].from_quantity == 10
    assert plain_words(by_kind["lead_time_days"].hint)


@pytest.mark.parametrize("language", LISTS)
def test_case_accents_and_punctuation_do_not_matter(language: str) -> None:
    for word in NAMES:
        for written in (word.upper(), f" {word.title()}. ", word.replace(" ", "_"), word.replace(" ", "-")):
            found = read_heading(0, written)
            assert found, written
            assert found.kind == NAMES[word][0], written


@pytest.mark.parametrize(
    ("heading", "hint", "from_quantity"),
    [
        ("Price", "", None),
        ("Unit price €", "EUR", None),
        ("Price (£)", "GBP", None),
        ("Price ($)", "", None),
        ("Price per 100", "/100", None),
        ("Unit price (excl. VAT) [EUR]", "EUR", None),
        ("Preis netto ab 10", "", 10),
        ("Price 2026", "", None),  # a year
        ("Price 2026+", "", 2026),
        ("Price 2000", "", 2000),
        ("Price/1000", "/1000", None),
        ("Price per 1,000 pcs", "/1000", None),
        ("Preis ‰", "/1000", None),
        ("Preis je 100 Stk [EUR]", "EUR/100", None),
        ("Preis % Stück", "/100", None),
        ("EUR/100", "EUR/100", None),
        ("€ / Stk", "EUR", None),
        ("Prix HT (€)", "EUR", None),
        ("Prix les 100", "/100", None),
        ("Prix aux 100 (EUR)", "EUR/100", None),
        ("Preis für 100", "/100", None),
        ("Cena [zł]", "PLN", None),
        ("Cena za 100 ks", "/100", None),
        ("Цена, руб.", "RUB", None),
        ("单价(元)", "CNY", None),
        ("単価（円）", "JPY", None),
        ("단가(원)", "KRW", None),
        ("1+", "", 1),
        ("1.000+", "", 1000),
        ("1k+", "", 1000),
        ("Price 10-99", "", 10),
        ("Price 10 to 99", "", 10),
        ("ab 100", "", 100),
        ("dès 10", "", 10),
        ("100個以上", "", 100),
        ("≥ 50", "", 50),
        ("Price @ 25", "", 25),
        ("USD 10+", "USD", 10),
    ],
)
def test_headings_of_prices(heading: str, hint: str, from_quantity: int | None) -> None:
    found = read_heading(0, heading)
    assert found
    assert (found.kind, found.hint, found.from_quantity) == ("unit_price", hint, from_quantity)


@pytest.mark.parametrize(
    ("heading", "hint"),
    [
        ("Size", ""),
        ("Size (mm)", ""),
        ("Size LxWxH", "LWH"),
        ("Size (L × W × H)", "LWH"),
        ("Maße BxHxL [mm]", "BHL"),
        ("D x L", "DL"),
        ("ØxL (mm)", "ØL"),
    ],
)
def test_headings_of_sizes_may_say_the_order(heading: str, hint: str) -> None:
    found = read_heading(0, heading)
    assert found
    assert (found.kind, found.hint) == ("size", hint)


@pytest.mark.parametrize(
    "heading",
    [
        "Shelf",
        "Bemerkung",
        "Quantity",
        "Menge",
        "数量",
        "Type",
        "Prix par 100",
        "Capacitence",
        "Voltage [mm]",
        "10",
        "Size [V]",
    ],
)
def test_what_is_not_known_or_may_mean_two_things_is_left_out(heading: str) -> None:
    assert read_heading(0, heading) is None


def test_no_word_means_two_things() -> None:
    """But for the two pairs where the unit tells the value from its frequency."""
    assert {name for name, kinds in NAMES.items() if len(kinds) > 1} == {"tan δ", "tan d", "ripple"}
    assert FIRST[0] == next(iter(LANGUAGES))


def test_every_language_names_kinds_that_exist() -> None:
    kinds = TERMS.keys() | LANGUAGES["english"]["headings"].keys()
    for language, words in LANGUAGES.items():
        assert words["headings"].keys() <= kinds, language
        assert words["price"].keys() == {"words", "from", "pieces", "per"}, language


TWO = {
    "units below": (["Part number", "Cap.", "Voltage", "Price"], ["", "[nF]", "[V]", ""], ["a", "47", "63", "1"]),
    "words below": (["Part", "Cap.", "Rated", "Unit"], ["number", "nF", "voltage", "price"], ["a", "47", "63", "1"]),
}


@pytest.mark.parametrize("rows", TWO.values(), ids=TWO)
def test_a_heading_line_may_go_over_two_rows(rows: tuple[list[str], ...]) -> None:
    layout = best_layout([Row(number, tuple(cells)) for number, cells in enumerate(rows, 1)])
    assert [column.kind for column in layout.columns] == ["part_number", "capacitance_f", "rated_v", "unit_price"]
    assert (layout.line, layout.columns[1].hint) == (2, "n")


def test_numbers_of_pieces_may_stand_below_the_word_for_the_price() -> None:
    rows = [Row(1, ("MPN", "Price [EUR]", "", "")), Row(2, ("", "1+", "10+", "100+")), Row(3, ("a", "3", "2", "1"))]
    layout = best_layout(rows)
    assert [(column.hint, column.from_quantity) for column in layout.columns[1:]] == [
        ("EUR", 1),
        ("EUR", 10),
        ("EUR", 100),
    ]


def test_a_line_of_data_is_no_second_heading_row() -> None:
    layout = best_layout([Row(1, ("MPN", "Cap uF", "Price")), Row(2, ("Hollow 1", "47", "1"))])
    assert layout.line == 1
    assert two_rows(Row(1, ("Cap.", "Price")), Row(2, ("47", "1"))) == ()


def test_beside_another_price_one_for_a_hundred_is_what_a_hundred_cost() -> None:
    both = best_layout([Row(1, ("MPN", "Price each", "Price per 100"))])
    assert [(column.hint, column.from_quantity) for column in both.columns[1:]] == [("", None), ("/100", 100)]
    alone = best_layout([Row(1, ("MPN", "Price per 100"))])
    assert alone.columns[1].from_quantity is None


def test_of_two_descriptions_the_plainer_is_read() -> None:
    layout = best_layout([Row(1, ("Product name", "Description", "MPN"))])
    assert [(column.kind, column.place) for column in layout.columns] == [("description", 1), ("part_number", 2)]
    assert layout.skipped == ("Product name",)
