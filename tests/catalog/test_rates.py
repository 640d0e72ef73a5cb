"""Currency rates: stored as the builder wrote them, a sentence for each file that can't be used."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from subsearch.catalog.rates import Rate, load_rates, stored_rates
from subsearch.catalog.store import open_to_read
from subsearch.errors import ListError

HELP = 'Write lines like "EUR,1," for your own currency and "GBP,1.17,2026-10-01" for others.'


def written(folder: Path, text: str) -> Path:
    file = folder / "rates.csv"
    file.write_text(text)
    return file


def test_rates_replace_the_earlier_ones(tmp_path: Path) -> None:
    path = tmp_path / "c"
    load_rates(path, written(tmp_path, "currency,worth,dated\nUSD,0.9,\nEUR,1,\n"))
    load_rates(path, written(tmp_path, "Currency;Worth;Dated\nGBP;1,17;2026-10-01\n€;1;\n"))
    with open_to_read(path) as con:
        assert stored_rates(con) == [
            Rate("EUR", Decimal(1), None),
            Rate("GBP", Decimal("1.17"), date(2026, 10, 1)),
        ]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("a,b,c\nEUR,1,\n", f'"rates.csv" must begin with the headings currency,worth,dated. {HELP}'),
        ("currency,worth,dated\nEUR,2,\n",
         f'"rates.csv": exactly one currency must have the worth 1, your own; none has. {HELP}'),
        ("currency,worth,dated\nEUR,1,\nGBP,1,\n",
         f'"rates.csv": exactly one currency must have the worth 1, your own; these have: EUR, GBP. {HELP}'),
        ("currency,worth,dated\nEUR,1,\nGBP,2,\nGBP,3,\n",
         '"rates.csv" names GBP more than once. Keep one line for each currency.'),
        ("currency,worth,dated\nEUR,one,\n", f'"rates.csv", line 2: "one" is not a number. {HELP}'),
        ("currency,worth,dated\nEUR,1,\n\nGBP,-2,\n",
         f'"rates.csv", line 4: "-2" can\'t be the worth of a currency; it must be above 0. {HELP}'),
        ("currency,worth,dated\nEUR,NaN,\n",
         f'"rates.csv", line 2: "NaN" can\'t be the worth of a currency; it must be above 0. {HELP}'),
        ("currency,worth,dated\n,1,\n", f'"rates.csv", line 2: the currency is missing. {HELP}'),
        ("currency,worth,dated\nmoney,1,\n",
         '"rates.csv", line 2: "money" is not a currency. Write its three letters, like EUR.'),
        ("currency,worth,dated\nEUR,1,soon\n",
         '"rates.csv", line 2: "soon" is not a date. Write it as year-month-day, like 2026-10-03.'),
        ("currency,worth,dated\nEUR,1,\nGBP,1,17,\n",
         f'"rates.csv", line 3: 4 cells where 3 are allowed. Write a decimal point in the worth. {HELP}'),
    ],
)  # fmt: skip
def test_each_error_has_its_sentence_and_stores_nothing(tmp_path: Path, text: str, sentence: str) -> None:
    with pytest.raises(ListError) as caught:
        load_rates(tmp_path / "c", written(tmp_path, text))
    assert str(caught.value) == sentence
    assert not (tmp_path / "c").exists()
